"""What is changed in the Logbook: rows of any session, the bin, joining and splitting, also of what is on the table."""

from datetime import timedelta
from pathlib import Path

import pytest

from cookstove_gui.desk import Changed, Desk
from cookstove_gui.desk.logbook import changing
from cookstove_gui.desk.logbook.photos import add_photo, photos, remove_photo
from cookstove_gui.errors import InputProblem, SurroundingsProblem
from cookstove_gui.logbook.logbook import Logbook
from cookstove_gui.stove.entries import fold
from tests.held_clock import HeldClock

from .made import keep


@pytest.fixture
def number(held_desk: Desk, held_clock: HeldClock) -> int:
    return keep(held_desk, "Rye", held_clock() - timedelta(days=9))


def values(desk: Desk, number: int) -> list[str]:
    return [row.value for row in fold(desk.logbook.session(number).entries) if row.value]


def test_a_row_of_an_old_session_is_corrected_there(held_desk: Desk, number: int) -> None:
    told: list[Changed] = []
    held_desk.subscribe(told.append)
    changing.correct_row(held_desk, number, 4, "230", "")
    assert values(held_desk, number) == ["80", "230", "330", "400"]
    assert told == [Changed(session=True)]
    assert held_desk.session is None


def test_its_clock_is_meant_on_the_day_of_the_session(held_desk: Desk, number: int) -> None:
    before = next(row for row in held_desk.logbook.session(number).entries if row.number == 4)
    changing.correct_row(held_desk, number, 4, "", "10:20")
    moved = next(row for row in fold(held_desk.logbook.session(number).entries) if row.value == before.value)
    assert moved.at.date() == before.at.date()
    assert (moved.at - before.at) == timedelta(minutes=-8)


def test_what_has_no_meaning_is_refused_and_nothing_is_changed(held_desk: Desk, number: int) -> None:
    with pytest.raises(InputProblem):
        changing.correct_row(held_desk, number, 4, "warm", "")
    assert values(held_desk, number) == ["80", "200", "330", "400"]


def test_a_row_is_taken_back_and_that_is_undone(held_desk: Desk, number: int) -> None:
    changing.take_back_row(held_desk, number, 4)
    assert values(held_desk, number) == ["80", "330", "400"]
    changing.undo_row(held_desk, number)
    assert values(held_desk, number) == ["80", "200", "330", "400"]


def test_a_row_on_the_table_is_corrected_through_the_desk(burning_desk: Desk) -> None:
    assert burning_desk.session is not None
    row = next(row for row in burning_desk.entries if row.spot == "oven_centre")
    changing.correct_row(burning_desk, burning_desk.session.number, row.number, "125", "")
    assert "125" in [one.value for one in burning_desk.entries]
    changing.take_back_row(burning_desk, burning_desk.session.number, burning_desk.entries[-1].number)
    changing.undo_row(burning_desk, burning_desk.session.number)
    assert burning_desk.rows == burning_desk.logbook.session(burning_desk.session.number).entries


def test_a_session_on_the_table_leaves_it_with_the_bin(burning_desk: Desk) -> None:
    assert burning_desk.session is not None
    number = burning_desk.session.number
    changing.put_in_bin(burning_desk, [number])
    assert burning_desk.session is None
    assert burning_desk.sessions == ()
    changing.take_out(burning_desk, [number])
    assert [one.number for one in burning_desk.sessions] == [number]


def test_joined_with_the_one_on_the_table_the_whole_is_on_it(burning_desk: Desk, held_clock: HeldClock) -> None:
    assert burning_desk.session is not None
    old = keep(burning_desk, "Morning", held_clock() - timedelta(hours=5))
    made = changing.join(burning_desk, [burning_desk.session.number, old])
    assert burning_desk.session is not None
    assert burning_desk.session.number == made.number
    assert burning_desk.session.title == "Morning"


def test_split_on_the_table_the_later_part_stays_there(burning_desk: Desk) -> None:
    assert burning_desk.session is not None
    row = burning_desk.entries[10]
    first, second = changing.split(burning_desk, burning_desk.session.number, row)
    assert burning_desk.session.number == second.number
    assert burning_desk.entries[0].at == row.at
    assert len(first.entries) == 9  # what was read at the same moment stays together


def test_photos_lie_in_a_folder_of_the_session_and_go_with_it(tmp_path: Path, held_clock: HeldClock) -> None:
    logbook = Logbook.open(tmp_path / "data" / "logbook.sqlite")
    desk = Desk(logbook, held_clock)
    number = keep(desk, "Rye", held_clock() - timedelta(days=9))
    picture = tmp_path / "loaf.JPG"
    picture.write_bytes(b"made up")
    first, second = (add_photo(logbook, number, picture) for _ in range(2))
    assert [path.name for path in photos(logbook, number)] == ["loaf 2.JPG", "loaf.JPG"]
    assert first.read_bytes() == b"made up"
    remove_photo(second)
    assert photos(logbook, number) == (first,)
    changing.put_in_bin(desk, [number])
    assert photos(logbook, number) == (first,)
    changing.empty_bin(desk, [number])
    assert photos(logbook, number) == ()
    assert picture.exists()
    logbook.close()


def test_a_photo_that_cannot_be_taken_gets_one_sentence(held_desk: Desk, tmp_path: Path, held_clock: HeldClock) -> None:
    with pytest.raises(SurroundingsProblem, match="in memory"):
        add_photo(held_desk.logbook, 1, tmp_path / "loaf.png")
    logbook = Logbook.open(tmp_path / "logbook.sqlite")
    with pytest.raises(InputProblem, match="isn't a picture"):
        add_photo(logbook, 1, tmp_path / "loaf.txt")
    with pytest.raises(SurroundingsProblem, match="can't be copied"):
        add_photo(logbook, 1, tmp_path / "missing.png")
    logbook.close()


def test_a_correction_that_says_the_same_changes_and_tells_nothing(held_desk: Desk, number: int) -> None:
    before = held_desk.logbook.session(number).entries
    told: list[Changed] = []
    held_desk.subscribe(told.append)
    changing.correct_row(held_desk, number, 4, "", "  ")
    assert held_desk.logbook.session(number).entries == before
    assert told == []


def test_what_is_taken_back_is_dated_by_the_stoves_clock_and_told(held_desk: Desk, number: int) -> None:
    told: list[Changed] = []
    held_desk.subscribe(told.append)
    changing.take_back_row(held_desk, number, 4)
    row = held_desk.logbook.session(number).entries[-1]
    assert (row.at, row.offset_minutes) == (held_desk.clock(), -300)
    changing.undo_row(held_desk, number)
    assert held_desk.logbook.session(number).entries[-1].offset_minutes == -300
    assert told == [Changed(session=True)] * 2


def test_what_comes_and_goes_with_the_bin_is_studied_again_and_what_only_reads_is_not(
    held_desk: Desk, number: int
) -> None:
    told: list[Changed] = []
    held_desk.subscribe(told.append)
    changing.set_tags(held_desk, number, "rye,  Windy ,")
    assert told.pop() == Changed(session=True)
    assert held_desk.logbook.keeping.tags()[number] == ("rye", "windy")
    changing.put_in_bin(held_desk, [number])
    assert told.pop() == Changed(session=True, study=True)
    changing.take_out(held_desk, [number])
    assert told.pop() == Changed(session=True, study=True)
    changing.put_in_bin(held_desk, [number])
    changing.empty_bin(held_desk, [number])
    assert told.pop() == Changed(session=True)
    assert held_desk.logbook.keeping.binned(held_desk.stove.name) == ()


def test_what_is_done_to_other_sessions_leaves_the_one_on_the_table(burning_desk: Desk, held_clock: HeldClock) -> None:
    assert burning_desk.session is not None
    own = burning_desk.session.number
    first, second = (keep(burning_desk, "Old", held_clock() - timedelta(days=days)) for days in (9, 8))
    changing.join(burning_desk, [first, second])
    assert burning_desk.session.number == own
    third = keep(burning_desk, "Old", held_clock() - timedelta(days=7))
    changing.split(burning_desk, third, burning_desk.logbook.session(third).entries[3])
    changing.put_in_bin(burning_desk, [third])
    assert burning_desk.session.number == own


def test_photos_are_shown_by_name_pictures_only_and_never_copied_over(tmp_path: Path) -> None:
    logbook = Logbook.open(tmp_path / "logbook.sqlite")
    for name in ("b.png", "a.jpeg"):
        (tmp_path / name).write_bytes(name.encode())
        add_photo(logbook, 7, tmp_path / name)
    (tmp_path / "photos" / "7" / "notes.txt").write_text("no picture")
    assert [path.name for path in photos(logbook, 7)] == ["a.jpeg", "b.png"]
    assert photos(logbook, 8) == ()
    again = [add_photo(logbook, 7, tmp_path / "b.png").name for _ in range(2)]
    assert again == ["b 2.png", "b 3.png"]
    remove_photo(tmp_path / "photos" / "7" / "gone.png")  # nothing to do
    logbook.close()


def test_a_logbook_in_memory_has_no_photos_to_show_or_forget(held_desk: Desk, number: int) -> None:
    assert photos(held_desk.logbook, number) == ()
    changing.put_in_bin(held_desk, [number])
    changing.empty_bin(held_desk, [number])
