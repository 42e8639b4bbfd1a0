"""What the columns of another program's table mean, guessed from their names, and the sessions made of it."""

import json
import re
from collections.abc import Iterator
from dataclasses import asdict, dataclass, replace
from datetime import UTC, date, datetime, timedelta, tzinfo

from cookstove_gui.errors import InputProblem
from cookstove_gui.logbook.log_file import LogProblem, LogReading
from cookstove_gui.logbook.sheets import Sheet
from cookstove_gui.stove.checking import check_entry
from cookstove_gui.stove.doubts import doubt
from cookstove_gui.stove.entries import Entry, Kind
from cookstove_gui.stove.stove import Stove
from cookstove_gui.stove.wood_text import typed_wood
from cookstove_gui.units import (
    TemperatureUnit,
    local_offset_minutes,
    mass_unit_beside,
    parse_temperature,
    parse_time_of_day,
    tidy,
)

WOOD, NOTE = "wood", "note"  # what a column may mean besides a spot
_GAP = timedelta(hours=6)  # between rows of two sessions
_CLOCKS = {"clock", "time", "when", "datetime", "date time", "timestamp", "date and time", "time of day"}
_DAYS = {"date", "day"}
_WOODS = {"wood", "fuel", "load"}
_NOTES = {"note", "notes", "remark", "remarks", "comment", "comments"}
_UNIT = re.compile(r"(?:°\s*|\(\s*)([FfCc])\b\)?")  # `oven °F`, `flue (C)`
_DATE = re.compile(r"(\d{1,4})([-/.])(\d{1,2})\2(\d{1,4})")


@dataclass(frozen=True, slots=True, kw_only=True)
class Mapping:
    """Which column is the clock, which the day if that is apart, and what each of the others means."""

    clock: str
    day: str = ""  # a column; where neither it nor the clock says the day, `first_day` does
    first_day: str = ""  # 2026-01-05
    meanings: dict[str, str]  # a column to a spot's name, or to WOOD or NOTE; others are left out
    unit: TemperatureUnit
    month_first: bool = True  # of a date such as 3/4/2026

    def text(self) -> str:
        """As it is kept for next time."""
        return json.dumps(asdict(self))


def kept_mapping(text: str, sheet: Sheet) -> Mapping | None:
    """A mapping kept before, where its columns are all there; none where it cannot be read."""
    try:
        found = Mapping(**json.loads(text))
        columns = {found.clock, *([found.day] if found.day else []), *found.meanings}
    except (ValueError, TypeError, AttributeError):
        return None
    return found if columns <= set(sheet.columns) else None


def guessed_mapping(sheet: Sheet, stove: Stove, unit: TemperatureUnit) -> Mapping:
    """What the names of the columns say; the clock is the first column where none does."""
    plain = {column: _plain(column) for column in sheet.columns}
    clock = next((column for column, name in plain.items() if name in _CLOCKS), "")
    day = next((column for column, name in plain.items() if name in _DAYS), "")
    if not clock:
        clock, day = day or sheet.columns[0], ""
    spots = {_plain(name): spot.name for spot in stove.spots for name in (spot.label, spot.name)}
    spots.setdefault("oven", stove.oven_spot)
    meanings: dict[str, str] = {}
    for column, name in plain.items():
        if column in (clock, day):
            continue
        meant = spots.get(name) or (WOOD if name in _WOODS else NOTE if name in _NOTES else "")
        if meant and (meant == NOTE or meant not in meanings.values()):
            meanings[column] = meant
    told = next((found[1].upper() for column in sheet.columns if (found := _UNIT.search(column))), unit)
    return Mapping(clock=clock, day=day, meanings=meanings, unit="C" if told == "C" else "F", month_first=unit == "F")


def _plain(name: str) -> str:
    return " ".join(re.sub(r"[^a-z0-9]+", " ", _UNIT.sub("", name).casefold()).split())


def sessions_of(
    sheet: Sheet, mapping: Mapping, stove: Stove, now: datetime, zone: tzinfo | None = None
) -> tuple[LogReading, ...]:
    """The sessions of a table, one after each long gap; what cannot be read stands among the problems of the first.

    Clocks are local ones, of this computer or of `zone`, unless they have an offset; a time of day that falls back by
    half a day or more is of the next day. `now` is when nothing can be later.
    """
    problems: list[LogProblem] = []
    found: list[Entry] = []
    for line, at, cells in _timed(sheet, mapping, now, zone, problems):
        offset = local_offset_minutes(at, zone)
        for column, meant in mapping.meanings.items():
            if not cells[column]:
                continue
            try:
                row = _entry(at, offset, meant, cells[column], mapping.unit)
            except InputProblem as problem:
                problems.append(_problem(sheet, line, column, problem.sentence))
                continue
            asked = doubt(row, stove, (), now)
            if asked is not None:
                problems.append(_problem(sheet, line, column, asked.sentence, kept=True))
            found.append(row)
    parts = _apart(sorted(found, key=lambda row: row.at))
    told = tuple(problems)
    if not parts:
        return (LogReading(entries=(), problems=told),)
    return tuple(LogReading(entries=part, problems=told if place == 0 else ()) for place, part in enumerate(parts))


def _timed(
    sheet: Sheet, mapping: Mapping, now: datetime, zone: tzinfo | None, problems: list[LogProblem]
) -> Iterator[tuple[int, datetime, dict[str, str]]]:
    """Each row that has a clock: its line in the file, the instant, and its cells by column."""
    before: datetime | None = None  # local, as it was written
    for line, row in enumerate(sheet.rows, start=2):
        cells = dict(zip(sheet.columns, row, strict=True))
        try:
            local = _local(cells, mapping, before)
        except InputProblem as problem:
            problems.append(_problem(sheet, line, mapping.clock, problem.sentence))
            continue
        before = local
        placed = local.replace(tzinfo=zone) if zone is not None and local.tzinfo is None else local
        at = placed.astimezone(UTC)  # a clock without an offset is one of this computer's zone
        if at > now + timedelta(days=1):
            problems.append(_problem(sheet, line, mapping.clock, "This is still to come; is the date right?"))
            continue
        yield line, at, cells


def _local(cells: dict[str, str], mapping: Mapping, before: datetime | None) -> datetime:
    """The moment of a row on its own clock."""
    text, day_text = cells[mapping.clock], cells.get(mapping.day, "")
    try:
        whole = datetime.fromisoformat(text)
        if len(text) > len("2026-01-05"):
            return whole
    except ValueError:
        pass
    dated = _DATE.match(text)
    if dated:
        return datetime.combine(_day(text, mapping), parse_time_of_day(text[dated.end() :].lstrip(" ,T")))
    clock = parse_time_of_day(text)
    if day_text:
        return datetime.combine(_day(day_text, mapping), clock)
    if before is not None:
        same_day = datetime.combine(before.date(), clock)
        return same_day + timedelta(days=1) if before - same_day >= timedelta(hours=12) else same_day
    if not mapping.first_day:
        raise InputProblem("The table says the time of day only; choose the column of the day, or type the first day.")
    return datetime.combine(_day(mapping.first_day, mapping), clock)


def _day(text: str, mapping: Mapping) -> date:
    """2026-01-05, 5.1.2026, and 1/5/2026 by the mapping's order."""
    found = _DATE.match(text.strip())
    if found is None:
        raise InputProblem(f"“{text.strip()}” is not a day; write it as 2026-01-05.")
    first, mark, second, third = found[1], found[2], found[3], found[4]
    if len(first) == 4:
        year, month, day = int(first), int(second), int(third)
    else:
        year = int(third) + (2000 if len(third) <= 2 else 0)
        month_first = mapping.month_first and mark != "."
        month, day = (int(first), int(second)) if month_first else (int(second), int(first))
    try:
        return date(year, month, day)
    except ValueError:
        raise InputProblem(f"“{found[0]}” is no day of the calendar; is the day or the month first?") from None


def _entry(at: datetime, offset: int, meant: str, text: str, unit: TemperatureUnit) -> Entry:
    if meant == NOTE:
        return check_entry(at=at, offset_minutes=offset, kind=Kind.NOTE, note=text)
    if meant == WOOD:
        value, typed, note = typed_wood(text, mass_unit_beside(unit))
        return check_entry(at=at, offset_minutes=offset, kind=Kind.WOOD, value=value, unit=typed, note=note)
    heat, typed_unit = parse_temperature(text, unit)
    return check_entry(
        at=at, offset_minutes=offset, kind=Kind.READING, spot=meant, value=tidy(heat, 2), unit=typed_unit
    )


def _apart(rows: list[Entry]) -> list[tuple[Entry, ...]]:
    """The rows of each session, numbered from 1."""
    parts: list[list[Entry]] = []
    for row in rows:
        if not parts or row.at - parts[-1][-1].at > _GAP:
            parts.append([])
        parts[-1].append(replace(row, number=len(parts[-1]) + 1))
    return [tuple(part) for part in parts]


def _problem(sheet: Sheet, line: int, column: str, sentence: str, *, kept: bool = False) -> LogProblem:
    where = f"{sheet.path.name} line {line}, {column}"
    why = "unlikely" if kept else "unreadable"
    return LogProblem(line=line, field=column, why=why, sentence=f"{where}: {sentence}", kept=kept)
