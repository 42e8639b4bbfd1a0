"""An older logbook is backed up and brought up to date with all it holds; a newer one is politely refused."""

import shutil
import sqlite3
from pathlib import Path

import pytest

from cookstove_gui.errors import SurroundingsProblem
from cookstove_gui.logbook import migrations
from cookstove_gui.logbook.database import Database
from cookstove_gui.logbook.logbook import Logbook

STORED = Path(__file__).parent / "stored"


@pytest.fixture(params=sorted(STORED.glob("version_*.sqlite")), ids=lambda path: path.stem)
def older(request: pytest.FixtureRequest, tmp_path: Path) -> Path:
    """A copy of a stored logbook of an older version: two sessions with two and three entries."""
    return Path(shutil.copy(request.param, tmp_path / "logbook.sqlite"))


def test_there_is_a_stored_file_of_every_older_version() -> None:
    stored = {int(path.stem.removeprefix("version_")) for path in STORED.glob("version_*.sqlite")}
    assert stored == set(range(1, len(migrations.steps())))


def test_older_logbook_is_brought_up_to_date(older: Path) -> None:
    book = Logbook.open(older)
    assert migrations.version(book._database) == len(migrations.steps())
    assert [(one.title, one.entry_count) for one in book.sessions()] == [("Stew", 3), ("Bread", 2)]
    assert [row.value for row in book.session(1).entries] == ["", "385"]
    assert book.sessions()[0].first_at == book.session(2).entries[0].at
    book.set_setting("unit", "C")
    book.append(1, at=book.session(1).entries[1].at, offset_minutes=0, kind="lit")
    assert book.sessions("Kitchen")[1].entry_count == 3
    book.close()


def test_older_logbook_is_backed_up_first(older: Path) -> None:
    before = older.read_bytes()
    Logbook.open(older).close()
    (backup,) = (older.parent / "backups").iterdir()
    copy = Database(backup)
    was = int.from_bytes(before[60:64], "big")  # user_version in SQLite's file header
    assert migrations.version(copy) == was
    assert copy.row("SELECT count(*) FROM entry") == (5,)
    copy.close()


def test_logbook_up_to_date_is_opened_without_a_backup(tmp_path: Path) -> None:
    Logbook.open(tmp_path / "logbook.sqlite").close()
    Logbook.open(tmp_path / "logbook.sqlite").close()
    assert not (tmp_path / "backups").exists()


def test_newer_logbook_is_refused_in_one_sentence_and_left_alone(tmp_path: Path) -> None:
    path = tmp_path / "logbook.sqlite"
    Logbook.open(path).close()
    connection = sqlite3.connect(path)
    connection.execute("PRAGMA user_version = 99")
    connection.close()
    before = path.read_bytes()
    with pytest.raises(SurroundingsProblem, match="newer version") as told:
        Logbook.open(path)
    assert "\n" not in told.value.sentence
    assert path.read_bytes() == before


@pytest.mark.parametrize("version", [0, 1])
def test_database_of_another_program_is_refused_and_left_alone(tmp_path: Path, version: int) -> None:
    path = tmp_path / "other.sqlite"
    connection = sqlite3.connect(path)
    connection.executescript(f"CREATE TABLE pantry (jam TEXT); PRAGMA user_version = {version};")
    connection.close()
    with pytest.raises(SurroundingsProblem, match="another program"):
        Logbook.open(path)
    connection = sqlite3.connect(path)
    assert connection.execute("SELECT name FROM sqlite_master").fetchall() == [("pantry",)]
    connection.close()


def test_step_that_fails_leaves_the_logbook_as_it_was(
    older: Path, monkeypatch: pytest.MonkeyPatch, tmp_path: Path
) -> None:
    broken = tmp_path / "9999_broken.sql"
    broken.write_text("CREATE TABLE half (x); INSERT INTO nowhere VALUES (1);")
    steps = migrations.steps()
    monkeypatch.setattr(migrations, "steps", lambda: (*steps, broken))
    with pytest.raises(SurroundingsProblem):
        Logbook.open(older)
    monkeypatch.setattr(migrations, "steps", lambda: steps)
    book = Logbook.open(older)
    assert [one.entry_count for one in book.sessions()] == [3, 2]
    assert book._database.row("SELECT count(*) FROM sqlite_master WHERE name = 'half'") == (0,)
    book.close()
