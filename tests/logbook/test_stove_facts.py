"""Checks and weather are only ever added, a check taken back is a row too, and all go with a stove that is renamed."""

from dataclasses import replace
from datetime import UTC, date, datetime, timedelta

import pytest

from cookstove_gui.errors import InputProblem
from cookstove_gui.logbook.learned import Lesson
from cookstove_gui.logbook.logbook import Logbook
from cookstove_gui.stove.checks import Check, CheckPoint
from cookstove_gui.stove.entries import Entry, Kind
from cookstove_gui.stove.stove import Stove, stove_with_default_spots, unchecked
from cookstove_gui.stove.weather import BAROMETER, WeatherKind, WeatherReading

AT = datetime(2026, 1, 8, 15, 0, tzinfo=UTC)
DAY = date(2026, 1, 8)
TABLES = ("thermometer_check", "weather")


def a_check(instrument: str, shown: float) -> Check:
    return Check(instrument=instrument, point=CheckPoint.ICE, shown=shown, on=DAY, pressure=101_325.0)


def a_reading(kind: WeatherKind, value: float | None, minutes: float = 0.0) -> WeatherReading:
    return WeatherReading(kind=kind, value=value, at=AT + timedelta(minutes=minutes), offset_minutes=-300)


@pytest.fixture
def stove(logbook: Logbook) -> Stove:
    return logbook.stove("Kitchen")


def row_counts(logbook: Logbook) -> list[int]:
    return [logbook._database.rows(f"SELECT count(*) FROM {table}")[0][0] for table in TABLES]


def test_checks_come_back_as_they_were_entered(logbook: Logbook, stove: Stove) -> None:
    first, second = a_check("dial", 274.0), a_check("gun", 273.0)
    logbook.facts.add_check(stove, first)
    logbook.facts.add_check(stove, second)
    assert logbook.facts.checks("Kitchen") == {1: first, 2: second}
    assert logbook.facts.checks("Cabin") == {}


def test_a_check_and_the_stove_it_changes_are_kept_together(logbook: Logbook, stove: Stove) -> None:
    checked = replace(stove, instruments=(replace(unchecked("dial", "probe"), offset=1.5),))
    logbook.facts.add_check(checked, a_check("dial", 274.0))
    assert logbook.stove("Kitchen") == checked
    wrong = replace(a_check("dial", 274.0), shown=None)  # type: ignore[arg-type]
    with pytest.raises(InputProblem):
        logbook.facts.add_check(stove, wrong)
    assert logbook.stove("Kitchen") == checked


def test_a_check_taken_back_stays_as_a_row(logbook: Logbook, stove: Stove) -> None:
    for shown in (274.0, 275.0):
        logbook.facts.add_check(stove, a_check("dial", shown))
    logbook.facts.take_back_check(stove, 2, DAY)
    assert list(logbook.facts.checks("Kitchen")) == [1]
    logbook.facts.add_check(stove, a_check("dial", 276.0))
    assert list(logbook.facts.checks("Kitchen")) == [1, 4]
    assert row_counts(logbook)[0] == 4


def test_latest_weather_is_of_the_kinds_asked_for(logbook: Logbook, stove: Stove) -> None:
    outdoors = a_reading(WeatherKind.OUTDOORS, 270.0)
    logbook.facts.add_weather(stove, a_reading(WeatherKind.PRESSURE, 99_000.0))
    logbook.facts.add_weather(stove, outdoors)
    assert logbook.facts.latest_weather("Kitchen", WeatherKind.OUTDOORS) == outdoors
    assert logbook.facts.latest_weather("Kitchen", WeatherKind.SEA_PRESSURE) is None
    later = a_reading(WeatherKind.SEA_PRESSURE, 101_000.0, 5)
    logbook.facts.add_weather(stove, later)
    assert logbook.facts.latest_weather("Kitchen", *BAROMETER) == later


def test_weather_that_no_longer_holds_is_none_and_stays_as_a_row(logbook: Logbook, stove: Stove) -> None:
    logbook.facts.add_weather(stove, a_reading(WeatherKind.SEA_PRESSURE, 101_000.0))
    logbook.facts.add_weather(stove, a_reading(WeatherKind.PRESSURE, None, 5))
    assert logbook.facts.latest_weather("Kitchen", *BAROMETER) is None
    assert row_counts(logbook)[1] == 2


@pytest.mark.parametrize(
    "statement",
    [
        "UPDATE thermometer_check SET shown = 1",
        "DELETE FROM thermometer_check",
        "REPLACE INTO thermometer_check (stove, number, day, takes_back) VALUES ('Kitchen', 1, '', 0)",
        "INSERT INTO thermometer_check (stove, number, day, takes_back) VALUES ('Kitchen', 2, '2026-01-08', 2)",
        "UPDATE weather SET value = 1",
        "DELETE FROM weather",
        "REPLACE INTO weather VALUES ('Kitchen', 1, 0, 0, 'outdoors', 1, 0)",
    ],
)
def test_rows_are_append_only_even_for_plain_sql(logbook: Logbook, stove: Stove, statement: str) -> None:
    logbook.facts.add_check(stove, a_check("dial", 274.0))
    logbook.facts.add_weather(stove, a_reading(WeatherKind.OUTDOORS, 270.0))
    with pytest.raises(InputProblem), logbook._database.transaction() as connection:
        connection.execute(statement)
    assert row_counts(logbook) == [1, 1]


def known(logbook: Logbook, name: str) -> tuple[object, ...]:
    return (
        logbook.facts.checks(name),
        logbook.facts.latest_weather(name, WeatherKind.OUTDOORS),
        logbook.learned.of(name, "2"),
        [session.title for session in logbook.sessions(name)],
        logbook.setting("stove") == name,
    )


def test_all_that_is_known_goes_with_a_renamed_stove(logbook: Logbook, stove: Stove) -> None:
    logbook.facts.add_check(stove, a_check("dial", 274.0))
    logbook.facts.add_weather(stove, a_reading(WeatherKind.OUTDOORS, 270.0))
    logbook.learned.keep("Kitchen", "2", Lesson(made_of="1:40", content={"lag": 12.5}))
    logbook.set_setting("stove", "Kitchen")
    before = known(logbook, "Kitchen")
    assert before[-1]
    logbook.rename_stove("Kitchen", "Range")
    assert known(logbook, "Range") == before
    assert [one.name for one in logbook.stoves()] == ["Range"]


def test_a_rename_that_fails_changes_nothing(logbook: Logbook, stove: Stove) -> None:
    logbook.facts.add_check(stove, a_check("dial", 274.0))
    logbook.save_stove(stove_with_default_spots("Cabin"))
    with logbook._database.transaction() as connection:
        connection.execute("CREATE TRIGGER stuck BEFORE DELETE ON stove BEGIN SELECT RAISE(ABORT, 'stuck'); END")
    before = known(logbook, "Kitchen")
    for taken in ("Cabin", "Range"):
        with pytest.raises(InputProblem):
            logbook.rename_stove("Kitchen", taken)
    assert known(logbook, "Kitchen") == before
    assert [one.name for one in logbook.stoves()] == ["Cabin", "Kitchen"]


def test_readings_are_counted_by_spot_and_stove(logbook: Logbook, stove: Stove) -> None:
    at = datetime(2026, 1, 5, 12, 0, tzinfo=UTC)

    def row(number: int, kind: Kind, spot: str = "", value: str = "300") -> Entry:
        return Entry(number=number, at=at, offset_minutes=0, kind=kind, spot=spot, value=value, unit="F")

    logbook.save_stove(stove_with_default_spots("Cabin"))
    ours = [row(1, Kind.READING, "flue"), row(2, Kind.READING, "flue"), row(3, Kind.READING, "room"), row(4, Kind.LIT)]
    logbook.append(logbook.start_session("Kitchen", "").number, ours)
    logbook.append(logbook.start_session("Cabin", "").number, [row(1, Kind.READING, "flue")])
    assert logbook.facts.readings_by_spot("Kitchen") == {"flue": 2, "room": 1}
    assert logbook.facts.readings_by_spot("Nobody's") == {}
