"""Sessions in words: when they were, what came of them, what was found, and what was foretold against what came."""

from collections.abc import Sequence
from datetime import date, datetime

from cookstove_gui.cooking.fires.firing_facts import FiringFacts
from cookstove_gui.cooking.fires.oven_stages import OvenStage, Stage
from cookstove_gui.forecast.answers import RecordRow, TrackRecord, Verdict
from cookstove_gui.phrases.edge import (
    capital,
    duration,
    entries_count,
    full_date,
    heat_name,
    listed,
    local_day,
    measured_time,
    sessions_count,
    short_date,
    weekday,
    whole,
)
from cookstove_gui.phrases.logbook.record import row_edge
from cookstove_gui.stove.entries import HeatBand
from cookstove_gui.units import clock_text, degrees

ON_TABLE = "on the stove now"
NOTHING_YET = "nothing entered yet"
_MINUTE_PLACES = {1: "One", 2: "Two", 3: "Three", 4: "Four", 5: "Five", 6: "Six", 7: "Seven", 8: "Eight", 9: "Nine"}


def session_span(first_at: datetime | None, last_at: datetime | None, offset_minutes: int) -> str:
    """When a session was: its day and its clocks."""
    if first_at is None or last_at is None:
        return NOTHING_YET
    day = local_day(first_at, offset_minutes)
    began, ended = clock_text(first_at, offset_minutes), clock_text(last_at, offset_minutes)
    return f"{weekday(day)} {full_date(day)}, {began}" + (f" to {ended}" if ended != began else "")


def session_facts(first_at: datetime | None, last_at: datetime | None, offset_minutes: int, entries: int) -> str:
    """When a session was and how much was entered."""
    return f"{session_span(first_at, last_at, offset_minutes)}, {entries_count(entries)}"


def list_day(first_at: datetime | None, offset_minutes: int, today: date) -> str:
    """The day of a session in the list: `Sat 14 Nov`, with its year where that is another one than today's season."""
    if first_at is None:
        return ""
    day = local_day(first_at, offset_minutes)
    long_ago = (today - day).days > 300
    return f"{short_date(day)} {day.year}" if long_ago else f"{weekday(day)[:3]} {short_date(day)}"


def came_of_it(facts: FiringFacts | None, band: HeatBand, unit: str) -> str:
    """What came of a session, by the heat that is wanted now: when the oven came to it, else its highest heat."""
    if facts is None:
        return NOTHING_YET
    if facts.hottest is None:
        return "oven not read"
    if facts.rise_min is not None:
        return f"{heat_name(band)} after {measured_time(facts.rise_min)}"
    minutes, heat = facts.hottest
    after = f" after {measured_time(minutes)}" if facts.lit and minutes > 0 else ""
    return f"{whole(degrees(heat, unit))} °{unit}{after}"


def searched_words(title: str, tags: Sequence[str], first_at: datetime | None, offset_minutes: int) -> str:
    """What a session can be found by beside its notes: title, tags, day, month and year."""
    day = "" if first_at is None else f"{weekday(local_day(first_at, offset_minutes))} "
    date_words = "" if first_at is None else full_date(local_day(first_at, offset_minutes))
    return " ".join((title, *tags, day + date_words))


def found_words(shown: int, of: int, words: Sequence[str], least: float | None, unit: str, stove: str) -> str:
    """How many sessions there are, or how many were found and by what; `least` is a heat reached, in the unit shown."""
    if not words and least is None:
        return f"{sessions_count(of)} of {stove}"
    what = [f"“{word}”" for word in words]
    if least is not None:
        what.append(f"oven at {whole(least)} °{unit} or more")
    return f"{shown} of {sessions_count(of)}: {listed(what)}"


def stage_rungs(one: OvenStage, band: HeatBand) -> tuple[str, ...]:
    """A stage of the oven's curve from long to short, with its length where the heat was wanted."""
    match one.stage:
        case Stage.AT_HEAT:
            heat, length = heat_name(band), measured_time(one.minutes)
            return f"{heat}, {length} by the curve", f"{heat}, {length}", length
        case Stage.ABOVE:
            return (f"above {heat_name(band)}",)
        case _:
            return (str(one.stage),)


def foretold_words(row: RecordRow) -> tuple[str, str]:
    """What was foretold and when: the likely clock, and the window."""
    edge, enters = row_edge(row), row.enters_min
    likely = f" {edge.clock(row.likely_min)}" if row.likely_min is not None else ""
    said = f"{heat_name(row.band)} foretold at {edge.clock(0.0)}:{likely}"
    if enters.p10 is None:
        return said, "not within three hours"
    if enters.p90 is None:
        return f"{said},", f"{edge.clock(enters.p10)} at the soonest"
    return f"{said},", f"between {edge.clock(enters.p10)} and {edge.clock(enters.p90)}"


def came_words(row: RecordRow) -> str:
    """When the heat came."""
    return f"came {row_edge(row).clock(row.came_true_min)}" if row.came_true_min is not None else ""


def session_record_words(record: TrackRecord, verdicts: Sequence[Verdict]) -> str:
    """How the projections of one session turned out; empty where none was put to the test."""
    number, held = record.projections, record.inside_window
    if not number:
        return "No projection of this session was put to the test." if verdicts else ""
    said = f"{_in_words(number, number)} {'projection' if number == 1 else 'projections'} in this session"
    if number == 1:
        result = f"it {'came true' if held else 'did not come true'} inside its window"
    else:
        many = {0: "none", number: "all"}.get(held, _in_words(held, number).lower())
        result = f"{many} came true inside their window"
    miss = "" if record.typical_miss_min is None else f", typical miss {duration(record.typical_miss_min)}"
    return f"{said}: {result}{miss}."


def _in_words(number: int, largest: int) -> str:
    """A number in letters where all of the sentence are small, else in figures."""
    return _MINUTE_PLACES.get(number, str(number)) if largest in _MINUTE_PLACES else str(number)


def put_away_words(title: str) -> str:
    """A session went into the bin."""
    return f"“{title}” is in the bin; it can be brought back from there."


def binned_words(at: datetime, offset_minutes: int) -> str:
    """Since when a session lies in the bin."""
    return f"in the bin since {short_date(local_day(at, offset_minutes))}"


def empty_question(number: int) -> str:
    """What emptying the bin deletes."""
    return capital(f"{sessions_count(number)} will be deleted for good, with all entries and photos. Delete?")
