"""What a report says about one session, as texts ready to be laid out; the layout lies in `resources/reports`."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from cookstove_gui.cooking.safety.wall_rises import greatest_of_each, wall_rises
from cookstove_gui.errors import InputProblem
from cookstove_gui.forecast.answers import RecordRow
from cookstove_gui.one_road import at_moment, work_out
from cookstove_gui.phrases.edge import measured_time, spot_label
from cookstove_gui.phrases.habits import USUAL, Habits
from cookstove_gui.phrases.lane import lane_rows_of
from cookstove_gui.phrases.my_stove.surroundings import above_the_room, clearance_decides
from cookstove_gui.phrases.report import (
    ReportClock,
    chart_words,
    event_words,
    glance_words,
    heat_text,
    height_fact,
    reached,
    result_words,
    slip_words,
    stage_stove_words,
    thermometer_words,
    told_words,
    wood_fact,
)
from cookstove_gui.reports.due_cautions import DueCaution, due_cautions
from cookstove_gui.reports.foretold import shown_projection
from cookstove_gui.reports.oven_chart import Charted, oven_chart
from cookstove_gui.reports.slips import slips as found_slips
from cookstove_gui.reports.stages import Stage, StageName, stage_at, stages
from cookstove_gui.reports.stove_picture import heat_scale, stove_picture
from cookstove_gui.situation import Inputs
from cookstove_gui.stove.drawn.heat_colours import heat_colour
from cookstove_gui.stove.entries import Entry, Kind, fold, fraction_open, reading_kelvin, stated_mass
from cookstove_gui.stove.stove import Stove
from cookstove_gui.units import TemperatureUnit

_STOVES = 4  # drawn at most
_TOLD = (Kind.NOTE, Kind.OVEN_IN, Kind.TURNED, Kind.OVEN_OUT)  # events that a visitor is told


@dataclass(frozen=True, slots=True, kw_only=True)
class SpotRow:
    """What one spot reached at each stage, as text; empty where it was not read."""

    label: str
    by_stage: tuple[str, ...]
    highest: str
    highest_at: str
    colour: str  # #RRGGBB of that heat


@dataclass(frozen=True, slots=True, kw_only=True)
class Line:
    """One line of a list: when, what, and a remark."""

    clock: str
    text: str
    note: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class StageStove:
    """The stove as it was at its hottest in one stage."""

    name: str
    clock: str
    picture: str  # SVG


@dataclass(frozen=True, slots=True, kw_only=True)
class SessionReport:
    """A whole report; every number in it is text in the unit asked for.

    Its first page is for a visitor; what follows is for the record.
    """

    stove: str
    title: str
    on: str  # which stove, under the title
    date: str
    span: str
    unit: str
    is_whole: bool  # with the pages for the record
    result: str  # what came of it, in one sentence
    glance: tuple[tuple[str, str], ...]
    stoves: tuple[StageStove, ...]  # in order of time; of more stages than fit, the longest
    scale: str  # SVG
    notes: tuple[Line, ...]
    facts: tuple[tuple[str, str], ...]
    stages: tuple[Line, ...]
    stage_names: tuple[str, ...]
    spots: tuple[SpotRow, ...]
    events: tuple[Line, ...]
    surroundings: tuple[str, ...]  # walls and floors against the room; the last line says who decides
    slips: tuple[str, ...]
    thermometers: tuple[str, ...]
    cautions: tuple[DueCaution, ...]
    chart: str  # SVG; empty when the oven was never read
    chart_words: str


def session_report(
    asked: Inputs,
    title: str,
    habits: Habits = USUAL,
    *,
    one_page: bool = False,
    record: Sequence[RecordRow] = (),
) -> SessionReport:
    """The report of one session, as it stood after its last row; raises InputProblem where no row is in force.

    With `one_page` it is for a visitor; without, the whole record follows. `record` are the session's projections.
    """
    standing = fold(asked.rows)
    if not standing:
        raise InputProblem(f"The session “{title}” holds no row to report; enter one first.")
    at_end = work_out(at_moment(asked, standing[-1].at))
    stove, unit = at_end.stove, habits.unit
    clock = ReportClock(standing[0].at, standing[0].offset_minutes, habits)
    doubted = found_slips(at_end.doubted, standing)
    by_number = {row.number: row for row in standing}
    slips = frozenset(row.number for row in doubted)
    sound = tuple(row for row in standing if row.number not in slips)
    readings = [row for row in sound if row.kind is Kind.READING]
    found = stages(sound)
    names = tuple(dict.fromkeys(stage.name for stage in found))
    oven = chart_words(stove, [row for row in readings if row.spot.startswith("oven")], unit, clock)
    charted = Charted(
        stove=stove,
        rows=standing,
        slips=slips,
        stages=found,
        lane=lane_rows_of(standing, stove),
        belief=at_end.trace,
        unit=unit,
        band=asked.band,
        clock=clock,
        foretold=shown_projection(record, asked.band),
    )
    return SessionReport(
        stove=stove.name,
        title=title,
        on=f"on {stove.name}",
        date=clock.first_date,
        span=f"{clock.time(standing[0].at)} to {clock.time(standing[-1].at)} ({clock.zone})",
        unit=unit,
        is_whole=not one_page,
        result=result_words(stove, asked.band, sound, unit, clock),
        glance=glance_words(stove, standing, readings, unit, clock),
        stoves=tuple(_stoves(stove, sound, found, unit, clock)),
        scale=heat_scale(unit, _hottest(readings)),
        notes=tuple(
            Line(clock=clock.time(row.at), text=told_words(row, stove), note=row.note)
            for row in standing
            if row.kind in _TOLD
        ),
        facts=_facts(stove, standing, readings, unit),
        stages=tuple(_stage_line(stage, clock) for stage in found),
        stage_names=tuple(str(name) for name in names),
        spots=tuple(_spot_rows(stove, readings, found, names, unit, clock)),
        events=tuple(
            Line(clock=clock.time(row.at), text=event_words(row, stove), note=row.note)
            for row in standing
            if row.kind is not Kind.READING
        ),
        surroundings=_surroundings(stove, sound, unit, clock),
        slips=tuple(slip_words(by_number[slip.number], slip.expected_p50, stove, unit, clock) for slip in doubted),
        thermometers=tuple(thermometer_words(instrument, habits) for instrument in stove.instruments),
        cautions=due_cautions(asked, clock),
        chart=oven_chart(charted, oven),
        chart_words=oven,
    )


def _facts(
    stove: Stove, standing: Sequence[Entry], readings: Sequence[Entry], unit: TemperatureUnit
) -> tuple[tuple[str, str], ...]:
    loads = [row for row in standing if row.kind is Kind.WOOD]
    weighed = [mass for row in loads if (mass := stated_mass(row)) is not None]
    facts = [
        ("Firebox", "above the oven" if stove.firebox == "above" else f"on the {stove.firebox}"),
        ("Readings", str(len(readings))),
        ("Wood put on", wood_fact(len(loads), weighed)),
    ]
    if stove.altitude:
        facts.append(("Height above the sea", height_fact(stove.altitude)))
    if readings:
        hottest = max(readings, key=reading_kelvin)
        facts.append(("Hottest reading", f"{heat_text(hottest, unit)} °{unit}, {spot_label(stove, hottest.spot)}"))
    if stove.note:
        facts.append(("About the stove", stove.note))
    return tuple(facts)


def _hottest(readings: Sequence[Entry]) -> float:
    return max((reading_kelvin(row) for row in readings), default=0.0)


def _stoves(
    stove: Stove, sound: Sequence[Entry], found: tuple[Stage, ...], unit: TemperatureUnit, clock: ReportClock
) -> Iterable[StageStove]:
    """The stove at the longest stages that were read, in order of time."""
    readings = [row for row in sound if row.kind is Kind.READING]
    airs = [(row.at, fraction_open(row)) for row in sound if row.kind is Kind.AIR]
    drawn: list[tuple[Stage, StageStove]] = []
    for stage in found:
        heats: dict[str, float] = {}
        for row in readings:
            if stage.holds(row.at, is_last=stage is found[-1]):
                heats[row.spot] = max(heats.get(row.spot, 0.0), reading_kelvin(row))
        if not heats:
            continue
        span = f"{clock.time(stage.begins_at)} to {clock.time(stage.ends_at)}"
        picture = stove_picture(
            stove,
            heats,
            unit,
            air=next((open_ for at, open_ in reversed(airs) if at < stage.ends_at), None),
            hottest=_hottest(readings),
            words=stage_stove_words(stove, str(stage.name), heats, unit),
        )
        drawn.append((stage, StageStove(name=str(stage.name), clock=span, picture=picture)))
    longest = sorted(drawn, key=lambda pair: pair[0].begins_at - pair[0].ends_at)[:_STOVES]
    return [one for stage, one in drawn if any(stage is kept for kept, _ in longest)]


def _stage_line(stage: Stage, clock: ReportClock) -> Line:
    minutes = round((stage.ends_at - stage.begins_at).total_seconds() / 60)
    lasted = measured_time(minutes) if minutes else "its last row"
    return Line(
        clock=f"{clock.time(stage.begins_at)} to {clock.time(stage.ends_at)}", text=str(stage.name), note=lasted
    )


def _spot_rows(
    stove: Stove,
    readings: Sequence[Entry],
    found: tuple[Stage, ...],
    names: Sequence[StageName],
    unit: TemperatureUnit,
    clock: ReportClock,
) -> Iterable[SpotRow]:
    rows = []
    for spot in stove.spots:
        of_spot = [row for row in readings if row.spot == spot.name]
        if of_spot:
            rows.append((spot, of_spot, max(of_spot, key=reading_kelvin)))
    for spot, of_spot, highest in sorted(rows, key=lambda row: -reading_kelvin(row[2])):
        yield SpotRow(
            label=spot.label,
            by_stage=tuple(
                reached([row for row in of_spot if stage_at(found, row.at) is name], unit) for name in names
            ),
            highest=heat_text(highest, unit),
            highest_at=clock.time(highest.at),
            colour=heat_colour(reading_kelvin(highest), _hottest(readings)),
        )


def _surroundings(stove: Stove, sound: Sequence[Entry], unit: TemperatureUnit, clock: ReportClock) -> tuple[str, ...]:
    rises = greatest_of_each(wall_rises(stove, sound))
    told = (above_the_room(rise, clock.time(rise.row.at), unit) for rise in rises)
    return (*told, clearance_decides()) if rises else ()
