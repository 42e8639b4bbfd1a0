"""What is typed is on the disk when it is said to be, in its order, and never changed."""

import sqlite3
import subprocess
import sys
import threading
from contextlib import closing
from dataclasses import replace
from datetime import UTC, datetime, timedelta
from pathlib import Path

import pytest
from hypothesis import given, settings

from cookstove_gui.errors import InputProblem, SurroundingsProblem
from cookstove_gui.logbook import logbook as logbook_module
from cookstove_gui.logbook.logbook import Logbook, SessionSummary
from cookstove_gui.stove.checking import check_entry
from cookstove_gui.stove.entries import Entry, Kind, Session, fold
from cookstove_gui.stove.stove import Firebox, stove_with_default_spots

from .strategies import logs, reading

SEVEN = datetime(2026, 1, 5, 12, 0, tzinfo=UTC)


def _append(logbook: Logbook, value: str = "385", minute: float = 0.0, session: int = 1) -> Entry:
    at = SEVEN + timedelta(minutes=minute)
    row = check_entry(at=at, offset_minutes=-300, kind="reading", spot="oven_centre", value=value, unit="F")
    return logbook.append(session, [row])[0]


def _void(logbook: Logbook, row: str) -> None:
    logbook.append(1, [check_entry(at=SEVEN, offset_minutes=0, kind="void", value=row)])


def test_entries_come_back_as_they_went_in(logbook: Logbook) -> None:
    first, second = _append(logbook), _append(logbook, "390", 7.5)
    assert (first.number, second.number) == (1, 2)
    assert logbook.session(1).entries == (first, second)


def test_first_start_makes_the_folder_and_the_file(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(logbook_module, "default_path", lambda: tmp_path / "new" / "place" / "logbook.sqlite")
    Logbook.open().close()
    assert (tmp_path / "new" / "place" / "logbook.sqlite").exists()


def test_default_place_is_the_platforms_data_folder() -> None:
    assert logbook_module.default_path().name == "logbook.sqlite"
    assert logbook_module.default_path().parent.name == "cookstove-gui"


def test_everything_is_there_after_closing_and_opening(filed: Logbook) -> None:
    entry = _append(filed)
    filed.set_setting("unit", "C")
    path = filed.path
    filed.close()
    again = Logbook.open(path)
    assert again.session(1).entries == (entry,)
    assert again.setting("unit") == "C"
    assert again.stove("Kitchen") == stove_with_default_spots("Kitchen")
    again.close()


@pytest.mark.parametrize(
    "statement",
    [
        "UPDATE entry SET value = '1'",
        "DELETE FROM entry",
        "DELETE FROM session",
        "INSERT OR REPLACE INTO entry VALUES (1, 1, 0, 0, 'note', '', '', '', '', 0)",
        "REPLACE INTO entry VALUES (1, 1, 0, 0, 'note', '', '', '', '', 0)",
        "INSERT INTO entry VALUES (99, 1, 0, 0, 'note', '', '', '', '', 0)",
    ],
)
def test_entries_are_append_only_even_for_plain_sql(logbook: Logbook, statement: str) -> None:
    entry = _append(logbook)
    with pytest.raises(InputProblem), logbook._database.transaction() as connection:
        connection.execute(statement)
    assert logbook.session(1).entries == (entry,)


def test_append_only_holds_for_another_program_too(filed: Logbook) -> None:
    _append(filed)
    connection = sqlite3.connect(str(filed.path))
    for statement in (
        "INSERT OR REPLACE INTO entry VALUES (1, 1, 0, 0, 'note', '', '', '', '', 0)",
        "UPDATE entry SET value = '999'",
        "DELETE FROM entry",
    ):
        with pytest.raises(sqlite3.IntegrityError, match="append-only"):
            connection.execute(statement)
    connection.close()


def test_entry_of_a_killed_program_is_on_the_disk(tmp_path: Path) -> None:
    path = tmp_path / "logbook.sqlite"
    script = f"""
import os, pathlib
from datetime import datetime, UTC
from cookstove_gui.logbook.logbook import Logbook
from cookstove_gui.stove.checking import check_entry
from cookstove_gui.stove.stove import stove_with_default_spots
book = Logbook.open(pathlib.Path({str(path)!r}))
book.save_stove(stove_with_default_spots("Kitchen"))
book.start_session("Kitchen", "Bread")
for value in ("301", "302", "303"):
    row = check_entry(at=datetime.now(UTC), offset_minutes=0, kind="reading", spot="flue", value=value, unit="F")
    book.append(1, [row])
with book._database.transaction() as connection:
    connection.execute("INSERT INTO entry VALUES (1, 4, 0, 0, 'note', '', '', '', 'half done', NULL)")
    os.kill(os.getpid(), 9)
"""
    subprocess.run([sys.executable, "-c", script], check=False, timeout=60)
    book = Logbook.open(path)
    assert [row.value for row in book.session(1).entries] == ["301", "302", "303"]
    book.close()


def test_void_takes_back_and_a_voided_void_gives_back(logbook: Logbook) -> None:
    _append(logbook)
    _void(logbook, "1")
    assert fold(logbook.session(1).entries) == ()
    _void(logbook, "2")
    assert [row.number for row in fold(logbook.session(1).entries)] == [1]


@pytest.mark.parametrize("row", ["2", "7"])
def test_void_of_a_row_that_is_not_there_is_refused(logbook: Logbook, row: str) -> None:
    _append(logbook)
    with pytest.raises(InputProblem, match="no row"):
        _void(logbook, row)
    assert len(logbook.session(1).entries) == 1


def test_rows_are_added_all_or_none(logbook: Logbook) -> None:
    _append(logbook)
    void = Entry(number=0, at=SEVEN, offset_minutes=0, kind=Kind.VOID, value="9")
    with pytest.raises(InputProblem, match="no row"):
        logbook.append(1, [reading(0, 1), void])
    assert len(logbook.session(1).entries) == 1


@given(log=logs())
@settings(max_examples=40)
def test_any_log_goes_in_and_comes_back(log: tuple[Entry, ...]) -> None:
    book = Logbook.in_memory()
    book.save_stove(stove_with_default_spots("Kitchen"))
    book.start_session("Kitchen", "Bread")
    book.append(1, log)
    assert book.session(1).entries == log
    book.close()


def test_rows_are_numbered_on_from_the_last_one(logbook: Logbook) -> None:
    _append(logbook)
    void = Entry(number=0, at=SEVEN, offset_minutes=0, kind=Kind.VOID, value="1")
    added = logbook.append(1, [reading(7, 1), void])
    assert [(row.number, row.kind, row.value) for row in added] == [(2, Kind.READING, "385"), (3, Kind.VOID, "1")]
    assert logbook.session(1).entries[1:] == added


def test_new_session_takes_the_rows_of_a_log_and_what_they_take_back(logbook: Logbook) -> None:
    void = Entry(number=11, at=SEVEN, offset_minutes=0, kind=Kind.VOID, value="9")
    added = logbook.add_session("Kitchen", "Stew", [reading(4), reading(9, 5), void])
    assert [(row.number, row.value) for row in added.entries] == [(1, "385"), (2, "385"), (3, "2")]
    assert logbook.session(added.number) == added


def test_import_is_all_or_nothing(logbook: Logbook) -> None:
    cabin = stove_with_default_spots("Cabin")
    logs = [Session(number=0, stove=name, title=name, entries=(reading(1),)) for name in ("Cabin", "Barn")]
    with pytest.raises(InputProblem, match="Barn"):
        logbook.add_sessions(logs, [cabin])
    assert len(logbook.sessions()) == 1
    assert [stove.name for stove in logbook.stoves()] == ["Kitchen"]
    logbook.add_sessions(logs[:1], [cabin])
    assert {session.stove for session in logbook.sessions()} == {"Cabin", "Kitchen"}


def test_list_of_sessions_says_when_and_how_many(logbook: Logbook) -> None:
    _append(logbook, minute=30)
    _append(logbook, minute=0)
    logbook.save_stove(stove_with_default_spots("Cabin"))
    logbook.start_session("Cabin", "Stew")
    assert logbook.sessions("Kitchen") == (
        SessionSummary(
            number=1,
            stove="Kitchen",
            title="Bread",
            first_at=SEVEN,
            last_at=SEVEN + timedelta(minutes=30),
            offset_minutes=-300,
            entry_count=2,
        ),
    )
    assert [summary.stove for summary in logbook.sessions()] == ["Cabin", "Kitchen"]


def test_a_row_taken_back_years_later_does_not_make_its_session_longer(logbook: Logbook) -> None:
    _append(logbook, minute=30)
    later = {"at": SEVEN + timedelta(days=700), "offset_minutes": -300, "value": "1"}
    logbook.append(1, [check_entry(kind="void", **later), check_entry(kind="kept", **later)])
    assert logbook.sessions()[0].last_at == SEVEN + timedelta(minutes=30)
    _append(logbook, minute=40)
    assert logbook.sessions()[0].last_at == SEVEN + timedelta(minutes=40)


def test_past_sessions_began_before(logbook: Logbook) -> None:
    for day in (3, 1, 2):
        logbook.start_session("Kitchen", f"day {day}")
        number = logbook.sessions()[0].number
        logbook.append(number, [check_entry(at=SEVEN + timedelta(days=day), offset_minutes=0, kind="lit")])
    assert [session.title for session in logbook.past_sessions("Kitchen")] == ["day 1", "day 2", "day 3"]
    assert [session.title for session in logbook.past_sessions("Kitchen", before=4)] == ["day 1"]
    assert len(logbook.past_sessions("Kitchen", before=1)) == 3  # an empty session comes after all others


def test_session_can_be_renamed(logbook: Logbook) -> None:
    logbook.rename_session(1, "Rye")
    assert logbook.session(1).title == "Rye"


def test_stove_is_changed_in_place(logbook: Logbook) -> None:
    changed = replace(stove_with_default_spots("Kitchen", Firebox.RIGHT), altitude=1500.0, note="“old” \n one")
    logbook.save_stove(changed)
    assert logbook.stoves() == (changed,)


@pytest.mark.parametrize(
    "ask",
    [
        lambda book: book.stove("Barn"),
        lambda book: book.session(9),
        lambda book: book.start_session("Barn", "x"),
        lambda book: book.rename_session(9, "x"),
        lambda book: _append(book, session=9),
        lambda book: book.save_stove(stove_with_default_spots(" ")),
        lambda book: book.save_stove(replace(stove_with_default_spots("High"), altitude=99_000.0)),
    ],
)
def test_what_is_not_there_or_makes_no_sense_is_told(logbook: Logbook, ask: object) -> None:
    with pytest.raises(InputProblem):
        ask(logbook)  # type: ignore[operator]


def test_settings_have_a_default(logbook: Logbook) -> None:
    assert logbook.setting("unit", "F") == "F"
    logbook.set_setting("unit", "C")
    logbook.set_setting("unit", "F")
    assert logbook.setting("unit") == "F"


def test_a_setting_kept_already_is_not_written_again(tmp_path: Path) -> None:
    with (
        closing(Logbook.open(tmp_path / "logbook.sqlite")) as book,
        closing(Logbook.open(tmp_path / "logbook.sqlite")) as other,
    ):
        written = []
        for value in ("C", "C", "", "", "F"):
            book.set_setting("unit", value)
            written.append(other.is_changed_elsewhere())
        assert written == [True, False, True, False, True]
        assert other.setting("unit") == "F"


@pytest.mark.parametrize("in_file", [True, False], ids=["file", "memory"])
def test_worker_threads_read_while_entries_are_added(in_file: bool, tmp_path: Path) -> None:
    book = Logbook.open(tmp_path / "logbook.sqlite") if in_file else Logbook.in_memory()
    book.save_stove(stove_with_default_spots("Kitchen"))
    book.start_session("Kitchen", "Bread")
    seen: list[list[int]] = [[], []]
    failures: list[BaseException] = []
    done = threading.Event()

    def read(counts: list[int]) -> None:
        try:
            while not done.is_set():
                counts.append(len(book.past_sessions("Kitchen")[0].entries) if book.sessions()[0].entry_count else 0)
        except BaseException as failure:
            failures.append(failure)

    threads = [threading.Thread(target=read, args=(counts,)) for counts in seen]
    for thread in threads:
        thread.start()
    for minute in range(60):
        _append(book, minute=minute)
    done.set()
    for thread in threads:
        thread.join()
    book.close()
    assert failures == []
    assert all(counts == sorted(counts) and counts for counts in seen)


def test_two_programs_write_to_one_logbook(filed: Logbook) -> None:
    assert filed.path is not None
    other = Logbook.open(filed.path)
    numbers = [_append(book, minute=minute).number for minute in range(5) for book in (filed, other)]
    other.close()
    assert numbers == list(range(1, 11))


def test_closed_logbook_says_so(logbook: Logbook) -> None:
    logbook.close()
    with pytest.raises(SurroundingsProblem, match="closed"):
        logbook.sessions()
