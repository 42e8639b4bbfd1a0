"""Whatever is wrong with the file or its surroundings is told in one sentence, for reads as for writes."""

import sqlite3
import threading
from pathlib import Path

import pytest

from cookstove_gui.errors import InputProblem, Problem, SurroundingsProblem
from cookstove_gui.logbook.database import Database, told
from cookstove_gui.logbook.logbook import Logbook
from cookstove_gui.stove.stove import stove_with_default_spots

from .strategies import reading


def _run(database: Database, *statements: str) -> None:
    with database.transaction() as connection:
        for statement in statements:
            connection.execute(statement)


def test_a_write_ahead_log_full_sync_and_foreign_keys_are_on(tmp_path: Path) -> None:
    database = Database(tmp_path / "x.sqlite")
    assert database.row("PRAGMA journal_mode") == ("wal",)
    assert database.row("PRAGMA synchronous") == (2,)
    assert database.row("PRAGMA foreign_keys") == (1,)
    database.close()


@pytest.mark.parametrize("content", [b"no database at all, just words" * 40, b"SQLite format 3\x00" + b"\xff" * 4000])
def test_file_that_is_no_logbook_is_refused(tmp_path: Path, content: bytes) -> None:
    path = tmp_path / "logbook.sqlite"
    path.write_bytes(content)
    with pytest.raises(SurroundingsProblem, match="damaged"):
        Logbook.open(path)
    assert path.read_bytes() == content


def test_damaged_page_is_told_at_the_start(tmp_path: Path) -> None:
    path = tmp_path / "logbook.sqlite"
    book = Logbook.open(path)
    book.save_stove(stove_with_default_spots("Kitchen"))
    book.start_session("Kitchen", "Bread")
    book.append(1, [reading(number, number) for number in range(1, 2000)])
    book.close()
    content = bytearray(path.read_bytes())
    half = len(content) // 2 // 4096 * 4096
    content[half:] = b"\xa5" * (len(content) - half)
    path.write_bytes(content)
    with pytest.raises(SurroundingsProblem, match="damaged"):
        Logbook.open(path)


def test_folder_in_the_way_of_the_file_is_told(tmp_path: Path) -> None:
    with pytest.raises(SurroundingsProblem, match="cannot be opened"):
        Logbook.open(tmp_path)


def test_file_in_the_way_of_the_folder_is_told(tmp_path: Path) -> None:
    (tmp_path / "place").write_text("a file")
    with pytest.raises(SurroundingsProblem, match="cannot be created"):
        Logbook.open(tmp_path / "place" / "logbook.sqlite")


def test_write_without_the_right_to_is_told(tmp_path: Path) -> None:
    database = Database(tmp_path / "x.sqlite")
    database.rows("PRAGMA query_only = ON")
    with pytest.raises(SurroundingsProblem, match="write-protected"):
        _run(database, "CREATE TABLE t (x)")
    database.close()


def test_folder_without_the_right_to_write_is_told(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    def refuse(*_: object, **__: object) -> None:
        raise PermissionError(13, "Permission denied")

    monkeypatch.setattr(Path, "mkdir", refuse)
    with pytest.raises(SurroundingsProblem, match="Permission denied"):
        Logbook.open(tmp_path / "locked" / "logbook.sqlite")


def test_logbook_locked_by_another_program_is_told(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr("cookstove_gui.logbook.database._WAIT_FOR_LOCK", 0.05)
    database = Database(tmp_path / "x.sqlite")
    other = sqlite3.connect(tmp_path / "x.sqlite", isolation_level=None)
    other.execute("BEGIN IMMEDIATE")
    with pytest.raises(SurroundingsProblem, match="in use by another program"), database.transaction():
        pass
    other.close()
    database.close()


def test_full_disk_is_told_and_nothing_is_half_written(tmp_path: Path) -> None:
    database = Database(tmp_path / "x.sqlite")
    database.rows("CREATE TABLE t (x)")
    database.rows("PRAGMA max_page_count = 4")  # SQLite's own way to feel a full disk
    with pytest.raises(SurroundingsProblem, match="disk is full"):
        _run(database, "INSERT INTO t VALUES (1)", "INSERT INTO t VALUES (zeroblob(100000))")
    assert database.rows("SELECT * FROM t") == []
    database.close()


@pytest.mark.parametrize(
    ("code", "kind", "words"),
    [
        (sqlite3.SQLITE_IOERR_READ, SurroundingsProblem, "disk is failing"),
        (sqlite3.SQLITE_READONLY_DIRECTORY, SurroundingsProblem, "write-protected"),
        (sqlite3.SQLITE_CONSTRAINT_TRIGGER, InputProblem, "rules"),
        (sqlite3.SQLITE_BUSY_SNAPSHOT, SurroundingsProblem, "in use"),
        (None, SurroundingsProblem, "cannot be used"),
    ],
)
def test_extended_codes_are_told_by_their_kind(code: int | None, kind: type[Problem], words: str) -> None:
    error = sqlite3.DatabaseError("odd")
    if code is not None:
        error.sqlite_errorcode = code
    with pytest.raises(kind, match=words), told(Path("x.sqlite")):
        raise error


def test_thread_that_ends_leaves_no_connection_open(tmp_path: Path) -> None:
    database = Database(tmp_path / "x.sqlite")
    for _ in range(3):
        thread = threading.Thread(target=database.rows, args=("SELECT 1",))
        thread.start()
        thread.join()
    assert len(database._held) == 1
    database.close()


def test_failed_transaction_leaves_nothing_behind(tmp_path: Path) -> None:
    database = Database(tmp_path / "x.sqlite")
    with pytest.raises(SurroundingsProblem):
        _run(database, "CREATE TABLE t (x)", "INSERT INTO nowhere VALUES (1)")
    assert database.rows("SELECT name FROM sqlite_master") == []
    database.close()
