"""What a report says about one session, as texts ready to be laid out; the layout lies in `resources/reports`."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from datetime import datetime, timedelta, timezone

from cookstove_gui.cooking.safety.wall_rises import WallRise, greatest_of_each, wall_rises
from cookstove_gui.errors import InputProblem
from cookstove_gui.forecast.answers import DoubtedReading, Trace
from cookstove_gui.phrases.edge import duration
from cookstove_gui.reports.due_cautions import due_cautions
from cookstove_gui.reports.slips import slips as found_slips
from cookstove_gui.reports.stages import Stage, StageName, stage_at, stages
from cookstove_gui.resource_files import table
from cookstove_gui.situation import Inputs, Memory, at_moment, work_out
from cookstove_gui.stove.entries import Entry, Kind, fold, reading_kelvin, wood_mass
from cookstove_gui.stove.stove import Instrument, Stove
from cookstove_gui.units import (
    KILOGRAMS_PER_POUND,
    METRES_PER_FOOT,
    TemperatureUnit,
    clock_text,
    degrees,
    degrees_difference,
    iso_clock,
    tidy,
)

# Not the system's names: a report is written in one language.
_MONTHS = (
    *("January", "February", "March", "April", "May", "June"),
    *("July", "August", "September", "October", "November", "December"),
)


@dataclass(frozen=True, slots=True, kw_only=True)
class SpotRow:
    """What one spot reached at each stage, as text; empty where it was not read."""

    label: str
    by_stage: tuple[str, ...]
    highest: str
    highest_at: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Line:
    """One line of a list: when, what, and a remark."""

    clock: str
    text: str
    note: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class SessionReport:
    """A whole report; every number in it is text in the unit asked for."""

    stove: str
    title: str
    date: str
    span: str
    unit: str
    facts: tuple[tuple[str, str], ...]
    stages: tuple[Line, ...]
    stage_names: tuple[str, ...]
    spots: tuple[SpotRow, ...]
    events: tuple[Line, ...]
    surroundings: tuple[str, ...]  # walls and floors against the room; the last line says who decides
    slips: tuple[str, ...]
    thermometers: tuple[str, ...]
    cautions: tuple[tuple[str, str], ...]
    chart: str  # SVG; empty when the oven was never read
    chart_words: str


def session_report(asked: Inputs, title: str, unit: TemperatureUnit = "F") -> SessionReport:
    """The report of one session, as it stood after its last row; raises InputProblem where no row is in force."""
    standing = fold(asked.rows)
    if not standing:
        raise InputProblem(f"The session “{title}” holds no row to report; enter one first.")
    memory = Memory()
    at_end = work_out(at_moment(asked, standing[-1].at), memory)
    stove, clock = at_end.stove, _Clock(standing[0])
    doubted = found_slips(at_end.doubted, standing)
    slips = {row.number for row in doubted}
    sound = tuple(row for row in standing if row.number not in slips)
    readings = [row for row in sound if row.kind is Kind.READING]
    found = stages(sound)
    names = tuple(dict.fromkeys(stage.name for stage in found))
    return SessionReport(
        stove=stove.name,
        title=title,
        date=clock.date(standing[0].at),
        span=f"{clock.time(standing[0].at)} to {clock.time(standing[-1].at)} ({clock.zone})",
        unit=unit,
        facts=_facts(stove, standing, readings, unit),
        stages=tuple(_stage_line(stage, clock) for stage in found),
        stage_names=tuple(str(name) for name in names),
        spots=tuple(_spot_rows(stove, readings, found, names, unit, clock)),
        events=tuple(_event(row, stove, clock) for row in standing if row.kind is not Kind.READING),
        surroundings=_surroundings(stove, sound, unit, clock),
        slips=tuple(_slip(row, standing, stove, unit, clock) for row in doubted),
        thermometers=tuple(_thermometer(instrument, unit) for instrument in stove.instruments),
        cautions=due_cautions(asked, sound, found, memory),
        chart=_chart(stove, standing, slips, found, at_end.trace, unit),
        chart_words=_chart_words(stove, readings, unit, clock),
    )


class _Clock:
    """The wall clock of the session's first row; a day other than the first is named."""

    def __init__(self, first: Entry) -> None:
        self._offset = first.offset_minutes
        self._zone = timezone(timedelta(minutes=first.offset_minutes))
        self._day = first.at.astimezone(self._zone).date()
        self.zone = f"UTC{iso_clock(first.at, first.offset_minutes)[-6:]}"

    def time(self, at: datetime) -> str:
        day = at.astimezone(self._zone).date()
        text = clock_text(at, self._offset)
        return text if day == self._day else f"{text} on {day.day} {_MONTHS[day.month - 1]}"

    def date(self, at: datetime) -> str:
        day = at.astimezone(self._zone).date()
        return f"{day.day} {_MONTHS[day.month - 1]} {day.year}"


def _facts(
    stove: Stove, standing: Sequence[Entry], readings: Sequence[Entry], unit: TemperatureUnit
) -> tuple[tuple[str, str], ...]:
    loads = [row for row in standing if row.kind is Kind.WOOD]
    masses = [mass for row in loads if (mass := wood_mass(row)) is not None]
    wood = f"{len(loads)} {'time' if len(loads) == 1 else 'times'}"
    if masses:
        weighed = "" if len(masses) == len(loads) else f", {len(masses)} of them weighed"
        pounds = sum(masses) / KILOGRAMS_PER_POUND
        wood += f"{weighed}, {tidy(pounds)} lb ({tidy(sum(masses))} kg)"
    facts = [
        ("Firebox", "above the oven" if stove.firebox == "above" else f"on the {stove.firebox}"),
        ("Readings", str(len(readings))),
        ("Wood put on", wood if loads else "not logged"),
    ]
    if stove.altitude:
        facts.append(
            ("Height above the sea", f"{tidy(stove.altitude / METRES_PER_FOOT, 0)} ft ({tidy(stove.altitude, 0)} m)")
        )
    if readings:
        hottest = max(readings, key=reading_kelvin)
        facts.append(("Hottest reading", f"{_heat(hottest, unit)} °{unit}, {_label(stove, hottest.spot)}"))
    if stove.note:
        facts.append(("About the stove", stove.note))
    return tuple(facts)


def _stage_line(stage: Stage, clock: _Clock) -> Line:
    minutes = round((stage.ends_at - stage.begins_at).total_seconds() / 60)
    lasted = duration(minutes) if minutes else "its last row"
    return Line(
        clock=f"{clock.time(stage.begins_at)} to {clock.time(stage.ends_at)}", text=str(stage.name), note=lasted
    )


def _spot_rows(
    stove: Stove,
    readings: Sequence[Entry],
    found: tuple[Stage, ...],
    names: Sequence[StageName],
    unit: TemperatureUnit,
    clock: _Clock,
) -> Iterable[SpotRow]:
    for spot in stove.spots:
        of_spot = [row for row in readings if row.spot == spot.name]
        if not of_spot:
            continue
        highest = max(of_spot, key=reading_kelvin)
        yield SpotRow(
            label=spot.label,
            by_stage=tuple(
                _reached([row for row in of_spot if stage_at(found, row.at) is name], unit) for name in names
            ),
            highest=_heat(highest, unit),
            highest_at=clock.time(highest.at),
        )


def _reached(rows: Sequence[Entry], unit: TemperatureUnit) -> str:
    """Lowest and highest reading of a stage, or the only one."""
    heats = sorted({_heat(row, unit) for row in rows}, key=float)
    return "–".join(dict.fromkeys((heats[0], heats[-1]))) if heats else ""


def _heat(row: Entry, unit: TemperatureUnit) -> str:
    return tidy(float(degrees(reading_kelvin(row), unit)), 0)


def _label(stove: Stove, name: str) -> str:
    spot = stove.spot(name)
    return spot.label if spot else name


def _event(row: Entry, stove: Stove, clock: _Clock) -> Line:
    shown = {
        Kind.LIT: "fire lit",
        Kind.WOOD: f"wood {row.value} {row.unit}".strip(),
        Kind.AIR: f"air {row.value} open",
        Kind.BYPASS: f"bypass {row.value} open",
        Kind.OVEN_DOOR: f"oven door {row.value}",
        Kind.PAN: f"pan {row.value}, {_label(stove, row.spot)}",
        Kind.NOTE: row.value or "note",
    }
    return Line(clock=clock.time(row.at), text=shown.get(row.kind, str(row.kind)), note=row.note)


def _slip(
    doubted: DoubtedReading, standing: Sequence[Entry], stove: Stove, unit: TemperatureUnit, clock: _Clock
) -> str:
    row = next(one for one in standing if one.number == doubted.number)
    expected = degrees(doubted.expected_p50, unit)
    return (
        f"{clock.time(row.at)}, {_label(stove, row.spot)}: {row.value} °{row.unit} was typed where about "
        f"{expected:.0f} °{unit} was expected; left out of the tables."
    )


def _surroundings(stove: Stove, sound: Sequence[Entry], unit: TemperatureUnit, clock: _Clock) -> tuple[str, ...]:
    rises = greatest_of_each(wall_rises(stove, sound))
    decides = str(table("touch.toml")["words"]["decides"])
    return (*(_rise(rise, unit, clock) for rise in rises), decides) if rises else ()


def _rise(rise: WallRise, unit: TemperatureUnit, clock: _Clock) -> str:
    label = f"{rise.label[:1].upper()}{rise.label[1:]}"
    above = f"{degrees_difference(rise.rise, unit):.0f} °{unit} above the room at {clock.time(rise.row.at)}"
    room = f"{'' if rise.room_was_read else 'the room taken as '}{degrees(rise.room, unit):.0f} °{unit}"
    return f"{label}: {above} ({degrees(rise.wall, unit):.0f} against {room})."


def _thermometer(instrument: Instrument, unit: TemperatureUnit) -> str:
    setting = f", emissivity set to {tidy(instrument.emissivity, 2)}" if instrument.kind == "infrared" else ""
    if not instrument.checked_on:
        return f"{instrument.name} ({instrument.kind}{setting}): not checked."
    offset = degrees_difference(instrument.offset, unit)
    doubt = degrees_difference(instrument.offset_doubt, unit)
    side = "high" if offset >= 0 else "low"
    return (
        f"{instrument.name} ({instrument.kind}{setting}): read {tidy(abs(offset))} °{unit} too {side}, give or take "
        f"{tidy(doubt)} °{unit}, when checked on {instrument.checked_on}."
    )


def _chart(
    stove: Stove,
    standing: Sequence[Entry],
    slips: set[int],
    found: Sequence[Stage],
    belief: Trace,
    unit: TemperatureUnit,
) -> str:
    from cookstove_gui.reports.oven_chart import oven_chart

    return oven_chart(stove, standing, slips, found, belief, unit)


def _chart_words(stove: Stove, readings: Sequence[Entry], unit: TemperatureUnit, clock: _Clock) -> str:
    """The chart for somebody who cannot see it."""
    oven = [row for row in readings if row.spot.startswith("oven")]
    if not oven:
        return ""
    first, last, highest = oven[0], oven[-1], max(oven, key=reading_kelvin)
    parts = (
        f"{_heat(first, unit)} °{unit} at {clock.time(first.at)}",
        f"its highest {_heat(highest, unit)} °{unit} at {clock.time(highest.at)}",
        f"{_heat(last, unit)} °{unit} at {clock.time(last.at)}",
    )
    return f"The oven of {stove.name}: {', '.join(dict.fromkeys(parts))}."
