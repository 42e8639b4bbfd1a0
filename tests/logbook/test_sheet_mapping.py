"""A table of another program becomes sessions by what its columns mean: guessed, chosen, and kept for next time."""

from datetime import UTC, datetime, timedelta, timezone
from pathlib import Path
from zoneinfo import ZoneInfo

import pytest

from cookstove_gui.logbook.log_file import LogReading
from cookstove_gui.logbook.sheet_mapping import NOTE, WOOD, Mapping, guessed_mapping, kept_mapping, sessions_of
from cookstove_gui.logbook.sheets import Sheet
from cookstove_gui.stove.entries import Kind, reading_kelvin
from cookstove_gui.stove.stove import stove_with_default_spots

STOVE = stove_with_default_spots("Kitchen")
NOW = datetime(2026, 2, 1, tzinfo=UTC)
ZONE = timezone(timedelta(hours=-5))


def sheet(columns: str, *rows: str) -> Sheet:
    return Sheet(
        path=Path("log.csv"),
        columns=tuple(columns.split("|")),
        rows=tuple(tuple(row.split("|")) for row in rows),
    )


def by(given: Sheet, **changed: object) -> tuple[LogReading, ...]:
    guess = guessed_mapping(given, STOVE, "F")
    fields = {name: getattr(guess, name) for name in ("clock", "day", "first_day", "meanings", "unit", "month_first")}
    return sessions_of(given, Mapping(**{**fields, **changed}), STOVE, NOW, ZONE)  # type: ignore[arg-type]


def told(reading: LogReading) -> list[tuple[str, str, str, str]]:
    """Local clock, kind, spot or note, value and unit."""
    return [
        (f"{row.at.astimezone(ZONE):%m-%d %H:%M}", str(row.kind), row.spot or row.note, f"{row.value}{row.unit}")
        for row in reading.entries
    ]


# --- what the names say


@pytest.mark.parametrize(
    ("columns", "clock", "day", "meanings"),
    [
        ("Time|Oven centre|Flue", "Time", "", {"Oven centre": "oven_centre", "Flue": "flue"}),
        ("date|time|oven °F|Notes", "time", "date", {"oven °F": "oven_centre", "Notes": NOTE}),
        ("Date|top_front_left (C)|fuel", "Date", "", {"top_front_left (C)": "top_front_left", "fuel": WOOD}),
        ("When|Weather|Oven|oven centre", "When", "", {"Oven": "oven_centre"}),
        ("x|y", "x", "", {}),
    ],
)
def test_names_tell_clock_day_and_spots(columns: str, clock: str, day: str, meanings: dict[str, str]) -> None:
    found = guessed_mapping(sheet(columns, "|".join("1" for _ in columns.split("|"))), STOVE, "F")
    assert (found.clock, found.day, found.meanings) == (clock, day, meanings)


@pytest.mark.parametrize(
    ("columns", "screen", "unit"), [("t|oven °C", "F", "C"), ("t|oven (f)", "C", "F"), ("t|oven", "C", "C")]
)
def test_the_unit_is_the_one_named_or_else_the_screens(columns: str, screen: str, unit: str) -> None:
    assert guessed_mapping(sheet(columns, "1|2"), STOVE, "C" if screen == "C" else "F").unit == unit


def test_a_mapping_is_kept_for_tables_with_the_same_columns() -> None:
    mapping = Mapping(clock="when", day="", meanings={"A": "flue", "B": WOOD}, unit="C")
    assert kept_mapping(mapping.text(), sheet("B|when|A|other", "1|2|3|4")) == mapping
    assert kept_mapping(mapping.text(), sheet("when|A", "1|2")) is None
    for broken in ("", "{}", "[1]", "{broken", '{"clock": 1}'):
        assert kept_mapping(broken, sheet("when|A", "1|2")) is None


# --- clocks


@pytest.mark.parametrize(
    ("columns", "row", "at"),
    [
        ("time|oven", "2026-01-05T07:05:00-05:00|140", "01-05 07:05"),
        ("time|oven", "2026-01-05T13:05:00+01:00|140", "01-05 07:05"),  # 12:05 in UTC
        ("time|oven", "2026-01-05 07:05|140", "01-05 07:05"),
        ("time|oven", "1/5/2026 7:05 PM|140", "01-05 19:05"),
        ("time|oven", "5.1.2026, 19:05|140", "01-05 19:05"),
        ("time|oven", "1/5/26 7:05|140", "01-05 07:05"),
        ("day|time|oven", "2026-01-05|7:05 pm|140", "01-05 19:05"),
        ("day|time|oven", "2026-01-05T00:00:00|07:05:00|140", "01-05 07:05"),
        ("day|time|oven", "1/5/2026|705|140", "01-05 07:05"),
    ],
)
def test_clocks_are_read_as_people_write_them(columns: str, row: str, at: str) -> None:
    (reading,) = by(sheet(columns, row))
    assert told(reading) == [(at, "reading", "oven_centre", "140F")]
    assert reading.entries[0].offset_minutes == -300
    assert reading.problems == ()


def test_the_day_comes_first_where_that_is_said() -> None:
    (reading,) = by(sheet("time|oven", "1/12/2025 7:05|140"), month_first=False)
    assert told(reading)[0][0] == "12-01 07:05"


def test_times_of_day_count_from_the_first_day_and_go_past_midnight() -> None:
    (reading,) = by(sheet("time|oven", "22:50|140", "23:40|200", "0:20|240", "0:15|235"), first_day="2026-01-05")
    assert [at for at, *_ in told(reading)] == ["01-05 22:50", "01-05 23:40", "01-06 00:15", "01-06 00:20"]


def test_the_offset_is_that_of_the_day() -> None:
    given = sheet("time|oven", "2026-01-05 07:05|140", "2025-07-05 07:05|140")
    mapping = guessed_mapping(given, STOVE, "F")
    first, second = sessions_of(given, mapping, STOVE, NOW, ZoneInfo("America/New_York"))
    # Daylight saving there lasts from March to November (IANA time zone database).
    assert [one.entries[0].offset_minutes for one in (first, second)] == [-240, -300]


@pytest.mark.parametrize(
    ("row", "sentence"),
    [
        ("7:05|140", "The table says the time of day only; choose the column of the day, or type the first day."),
        ("soon|140", "“soon” is not a clock time"),
        ("2026-01-05 25:00|140", "“25:00” is not a clock time"),
        ("2/30/2026 7:05|140", "“2/30/2026” is no day of the calendar; is the day or the month first?"),
        ("2026-02-03 07:05|140", "This is still to come; is the date right?"),
    ],
)
def test_a_clock_that_cannot_be_is_named_by_line_and_column(row: str, sentence: str) -> None:
    (reading,) = by(
        sheet("time|oven", "2026-01-05 06:00|130", row) if "The table" not in sentence else sheet("time|oven", row)
    )
    (problem,) = reading.problems
    line = 2 if "The table" in sentence else 3
    assert problem.sentence.startswith(f"log.csv line {line}, time: {sentence}")
    assert not problem.kept


# --- cells


def test_each_cell_is_a_row_of_its_kind() -> None:
    given = sheet(
        "time|oven|flue|wood|notes|other", "2026-01-05 07:05|140|60c|two splits|windy|9", "2026-01-05 07:20||| 4.5 ||"
    )
    (reading,) = by(given)
    assert told(reading) == [
        ("01-05 07:05", "reading", "oven_centre", "140F"),
        ("01-05 07:05", "reading", "flue", "60C"),
        ("01-05 07:05", "wood", "two splits", ""),
        ("01-05 07:05", "note", "windy", ""),
        ("01-05 07:20", "wood", "", "4.5lb"),
    ]
    assert [row.number for row in reading.entries] == [1, 2, 3, 4, 5]


def test_numbers_are_in_the_tables_unit() -> None:
    (reading,) = by(sheet("time|oven|wood", "2026-01-05 07:05|200|2"), unit="C")
    oven, wood = reading.entries
    assert reading_kelvin(oven) == pytest.approx(473.15)
    assert (wood.kind, wood.unit) == (Kind.WOOD, "kg")


def test_a_cell_that_is_no_number_leaves_the_rest_of_its_row() -> None:
    (reading,) = by(sheet("time|oven|flue", "2026-01-05 07:05|hot|300"))
    assert [row.spot for row in reading.entries] == ["flue"]
    (problem,) = reading.problems
    assert problem.sentence.startswith("log.csv line 2, oven: “hot” is not a temperature")


def test_an_unlikely_number_is_kept_and_told() -> None:
    (reading,) = by(sheet("time|oven", "2026-01-05 07:05|2200"))
    assert len(reading.entries) == 1
    assert [problem.kept for problem in reading.problems] == [True]


def test_a_long_gap_begins_another_session() -> None:
    rows = ("2026-01-05 07:05|140", "2026-01-05 13:05|150", "2026-01-05 19:06|160", "2026-01-04 10:00|90")
    readings = by(sheet("time|oven", *rows))
    assert [[row.value for row in one.entries] for one in readings] == [["90"], ["140", "150"], ["160"]]
    assert [one.entries[0].number for one in readings] == [1, 1, 1]


def test_nothing_chosen_is_nothing_kept() -> None:
    (reading,) = by(sheet("time|weather", "2026-01-05 07:05|140"))
    assert reading.entries == ()
