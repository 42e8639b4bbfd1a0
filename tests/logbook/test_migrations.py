"""An older logbook is backed up and brought up to date with all it holds; a newer one is politely refused."""

import shutil
import sqlite3
from datetime import UTC, datetime
from pathlib import Path

import pytest

from cookstove_gui.errors import SurroundingsProblem
from cookstove_gui.logbook import migrations
from cookstove_gui.logbook.database import Database
from cookstove_gui.logbook.logbook import Logbook
from cookstove_gui.physics.air import station_pressure
from cookstove_gui.stove.checks import CheckPoint
from cookstove_gui.stove.stove import USUAL_SIDES, Chimney
from cookstove_gui.stove.weather import BAROMETER, WeatherKind, WeatherReading
from cookstove_gui.units import kelvin, local_offset_minutes

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
    book.append(1, book.session(1).entries[1:])
    assert book.sessions("Kitchen")[1].entry_count == 3
    book.close()


def test_what_version_3_kept_as_settings_joins_the_stove(tmp_path: Path) -> None:
    """The stored file was written by the program of that version; what was typed into it is named here."""
    book = Logbook.open(Path(shutil.copy(STORED / "version_3.sqlite", tmp_path / "logbook.sqlite")))
    at = datetime(2026, 1, 8, 15, 0, tzinfo=UTC)
    offset = local_offset_minutes(at)
    kitchen, cabin = book.stove("Kitchen"), book.stove("Cabin")
    assert kitchen.chimney == Chimney(height=pytest.approx(28 * 0.3048), diameter=0.15, loss=2.0)
    assert cabin.chimney == Chimney(height=5.0, diameter=pytest.approx(8 * 0.0254), loss=4.0)
    assert (kitchen.sides, cabin.sides) == ("soapstone", USUAL_SIDES)
    assert (kitchen.altitude, [one.name for one in kitchen.instruments]) == (1000.0, ["oven dial", "gun"])
    checks = book.facts.checks("Kitchen")
    assert [(check.instrument, check.point, check.on.day) for check in checks.values()] == [
        ("oven dial", CheckPoint.ICE, 6),
        ("gun", CheckPoint.ICE, 6),
        ("oven dial", CheckPoint.BOIL, 8),
    ]
    assert [check.shown for check in checks.values()] == [
        pytest.approx(kelvin(degrees, "F")) for degrees in (35.0, 31.0, 210.0)
    ]
    assert checks[3].pressure == pytest.approx(float(station_pressure(102_000.0, 1000.0)))
    assert book.facts.latest_weather("Kitchen", *BAROMETER) == WeatherReading(
        kind=WeatherKind.SEA_PRESSURE, value=102_000.0, at=at, offset_minutes=offset
    )
    assert book.facts.latest_weather("Kitchen", WeatherKind.OUTDOORS) == WeatherReading(
        kind=WeatherKind.OUTDOORS, value=pytest.approx(kelvin(20.0, "F")), at=at, offset_minutes=offset
    )
    assert book.facts.latest_weather("Cabin", WeatherKind.OUTDOORS) is None
    assert [book.setting(key) for key in ("thermometer checks", "barometer", "chimney", "sides")] == [""] * 4
    assert (book.setting("stove"), book.setting("band")) == ("Kitchen", "bread")
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
