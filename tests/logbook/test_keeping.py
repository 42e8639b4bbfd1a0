"""Tags, bin, joining and splitting: all or nothing, and nothing is gone before the bin is emptied."""

import sqlite3
from contextlib import closing
from datetime import UTC, datetime, timedelta
from pathlib import Path

import pytest

from cookstove_gui.errors import InputProblem, Problem
from cookstove_gui.logbook.damage import damaged_rows
from cookstove_gui.logbook.logbook import Logbook
from cookstove_gui.logbook.salvage import salvage
from cookstove_gui.stove.entries import Entry, Kind, fold
from cookstove_gui.stove.stove import stove_with_default_spots

from .strategies import reading

NOW = datetime(2026, 3, 2, 9, 0, tzinfo=UTC)


@pytest.fixture
def book(filed: Logbook) -> Logbook:
    """Session 1 with three readings, session 2 an hour later with two."""
    filed.append(1, [reading(number, 10 * number, value=str(300 + number)) for number in (1, 2, 3)])
    filed.add_session(
        "Kitchen", "Rye", [reading(number, 60 + 10 * number, value=str(340 + number)) for number in (1, 2)]
    )
    return filed


def values(rows: tuple[Entry, ...]) -> list[str]:
    return [row.value for row in fold(rows)]


def everything(book: Logbook) -> list[tuple[object, ...]]:
    """What plain SQL finds in the file, beside the program's own reading."""
    assert book.path is not None
    with closing(sqlite3.connect(book.path)) as plain:
        return [
            *plain.execute("SELECT number, title FROM session ORDER BY number"),
            *plain.execute("SELECT session, number, value FROM entry ORDER BY session, number"),
        ]


def test_a_session_in_the_bin_is_in_no_list_and_comes_back_whole(book: Logbook) -> None:
    before = everything(book)
    book.keeping.put_in_bin([1], NOW)
    assert [one.number for one in book.sessions()] == [2]
    assert [one.number for one in book.past_sessions("Kitchen")] == [2]
    (binned,) = book.keeping.binned("Kitchen")
    assert (binned.summary.title, binned.at) == ("Bread", NOW)
    assert everything(book) == before
    book.keeping.take_out([1])
    assert [one.number for one in book.sessions()] == [2, 1]
    assert everything(book) == before


def test_emptying_deletes_what_is_in_the_bin_and_nothing_else(book: Logbook) -> None:
    book.keeping.set_tags(1, ["oak"])
    book.keeping.put_in_bin([1], NOW)
    book.keeping.empty_bin([1])
    assert everything(book) == [(2, "Rye"), (2, 1, "341"), (2, 2, "342")]
    assert book.keeping.tags() == {}
    assert damaged_rows(book._database) == ()


def test_a_session_outside_the_bin_cannot_be_emptied(book: Logbook) -> None:
    before = everything(book)
    book.keeping.put_in_bin([1], NOW)
    with pytest.raises(InputProblem, match="isn't in the bin"):
        book.keeping.empty_bin([1, 2])
    assert everything(book) == before


def test_rows_outside_the_bin_stay_append_only(book: Logbook) -> None:
    book.keeping.put_in_bin([2], NOW)
    with pytest.raises(Problem, match="append-only"), book._database.transaction() as connection:
        connection.execute("DELETE FROM entry WHERE session = 1")


def test_a_row_added_to_a_binned_session_brings_it_back(book: Logbook) -> None:
    book.keeping.put_in_bin([1], NOW)
    book.append(1, [reading(4, 40, value="310")])
    assert [one.number for one in book.sessions()] == [2, 1]


def test_tags_are_tidied_kept_once_and_replaced(book: Logbook) -> None:
    book.keeping.set_tags(1, ["  Sour   dough", "oak", "OAK", " "])
    assert book.keeping.tags() == {1: ("oak", "sour dough")}
    book.keeping.set_tags(1, ["ash"])
    assert book.keeping.tags() == {1: ("ash",)}


def test_joining_keeps_every_row_and_the_parts_lie_in_the_bin(book: Logbook) -> None:
    book.keeping.set_tags(2, ["rye"])
    made = book.keeping.join([2, 1], NOW)
    assert [one.number for one in book.sessions()] == [made.number]
    assert values(book.session(made.number).entries) == ["301", "302", "303", "341", "342"]
    assert book.session(made.number).title == "Bread"
    assert book.keeping.tags()[made.number] == ("rye",)
    assert {one.summary.number for one in book.keeping.binned("Kitchen")} == {1, 2}


def test_what_was_taken_back_stays_taken_back_when_joined(book: Logbook) -> None:
    book.append(2, [Entry(number=0, at=NOW, offset_minutes=0, kind=Kind.VOID, value="1")])
    made = book.keeping.join([1, 2], NOW)
    assert values(book.session(made.number).entries) == ["301", "302", "303", "342"]


def test_joining_needs_two_sessions_with_entries_of_one_stove(book: Logbook) -> None:
    book.save_stove(stove_with_default_spots("Cabin"))
    other = book.add_session("Cabin", "Stew", [reading(1, 5)]).number
    empty = book.start_session("Kitchen", "Nothing yet").number
    before = everything(book)
    for numbers, why in (
        ([1], "two sessions"),
        ([1, 1], "two"),
        ([1, other], "different stoves"),
        ([1, empty], "no ent"),
    ):
        with pytest.raises(InputProblem, match=why):
            book.keeping.join(numbers, NOW)
    assert everything(book) == before


def test_splitting_parts_the_rows_at_a_clock(book: Logbook) -> None:
    rows = book.session(1).entries
    book.append(1, [Entry(number=0, at=NOW, offset_minutes=0, kind=Kind.VOID, value="1")])
    book.keeping.set_tags(1, ["oak"])
    first, second = book.keeping.split(1, rows[2].at, NOW)
    assert values(book.session(first.number).entries) == ["302"]
    assert values(book.session(second.number).entries) == ["303"]
    assert [len(one.entries) for one in (first, second)] == [3, 1]
    assert [book.keeping.tags()[one.number] for one in (first, second)] == [("oak",), ("oak",)]
    assert [one.summary.number for one in book.keeping.binned("Kitchen")] == [1]


def test_splitting_where_one_side_would_be_empty_changes_nothing(book: Logbook) -> None:
    before = everything(book)
    for at in (book.session(1).entries[0].at, NOW + timedelta(days=1)):
        with pytest.raises(InputProblem, match="nothing to split"):
            book.keeping.split(1, at, NOW)
    assert everything(book) == before


def test_split_and_joined_again_is_the_same_log(book: Logbook) -> None:
    rows = book.session(1).entries
    first, second = book.keeping.split(1, rows[1].at, NOW)
    made = book.keeping.join([second.number, first.number], NOW)
    assert book.session(made.number).entries == rows


def test_bin_and_tags_survive_a_rescue(book: Logbook) -> None:
    path: Path | None = book.path
    assert path is not None
    book.keeping.put_in_bin([1], NOW)
    book.keeping.set_tags(2, ["rye"])
    book.back_up(NOW)
    book.keeping.take_out([1])
    book.keeping.put_in_bin([2], NOW)
    book.look_after_file()
    book.close()
    salvage(path)
    with closing(Logbook.open(path)) as again:
        assert [one.number for one in again.sessions()] == [1]  # as the damaged file says, not as its backup does
        assert again.keeping.tags() == {2: ("rye",)}
