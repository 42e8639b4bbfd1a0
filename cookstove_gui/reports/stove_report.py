"""What a report says about a stove over all its sessions, as texts ready to be laid out."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from statistics import median

from cookstove_gui.cooking.fires import abilities
from cookstove_gui.cooking.fires.burn_times import FALL
from cookstove_gui.cooking.fires.firing_facts import FiringFacts, firing_facts
from cookstove_gui.cooking.fires.logged_fires import fires
from cookstove_gui.cooking.fires.sides import sides
from cookstove_gui.cooking.instruments.meant_rows import meant_sessions
from cookstove_gui.cooking.safety.wall_rises import WallRise, greatest_of_each, wall_rises
from cookstove_gui.errors import InputProblem
from cookstove_gui.forecast.learning.hot_side import spot_pattern
from cookstove_gui.phrases.edge import local_day, mass_text, measured_time, spot_label
from cookstove_gui.phrases.habits import USUAL, Habits, date_words
from cookstove_gui.phrases.logbook.seasons import hours_words
from cookstove_gui.phrases.logbook.sessions import came_of_it
from cookstove_gui.phrases.my_stove.abilities import ability_name, figure_range, figure_value
from cookstove_gui.phrases.my_stove.hot_side import behind_words, hot_side_words, spot_offset
from cookstove_gui.phrases.my_stove.surroundings import above_the_room, clearance_decides
from cookstove_gui.phrases.report import ReportClock, heat_text, height_fact, stage_stove_words, thermometer_words
from cookstove_gui.reports.rises_chart import rises_chart
from cookstove_gui.reports.session_report import SpotRow, StageStove
from cookstove_gui.reports.stages import StageName, stage_at, stages
from cookstove_gui.reports.stove_picture import heat_scale, stove_picture
from cookstove_gui.stove.drawn.heat_colours import heat_colour
from cookstove_gui.stove.entries import Entry, HeatBand, Kind, Session, fold, reading_kelvin
from cookstove_gui.stove.stove import SpotKind, Stove

_DRAWN = (StageName.KINDLING, StageName.MEDIUM, StageName.FULL, StageName.SHUT, StageName.COALS)
_STOVES = 4  # drawn at most


@dataclass(frozen=True, slots=True, kw_only=True)
class StoveReport:
    """A stove's page; with `is_whole` every spot and every session follow."""

    stove: str
    title: str
    on: str
    date: str
    span: str
    unit: str
    is_whole: bool
    result: str
    behind: str
    glance: tuple[tuple[str, str], ...]
    stoves: tuple[StageStove, ...]
    scale: str  # SVG
    abilities: tuple[tuple[str, str, str], ...]  # what it has shown, its value, range and firings
    chart: str  # SVG
    chart_heading: str
    chart_words: str
    spots: tuple[SpotRow, ...]  # the hottest each spot has been, and on which day
    surroundings: tuple[str, ...]
    thermometers: tuple[str, ...]
    facts: tuple[tuple[str, str], ...]
    offsets: tuple[tuple[str, str, str], ...]  # spot, how it runs, readings
    session_heads: tuple[str, ...]
    sessions: tuple[tuple[str, ...], ...]


def stove_report(
    stove: Stove, sessions: Sequence[Session], band: HeatBand, habits: Habits = USUAL, *, one_page: bool = False
) -> StoveReport:
    """The report of a stove; raises InputProblem where nothing is in force in any session."""
    meant = [(session, fold(session.entries)) for session in meant_sessions(stove, tuple(sessions))]
    told = [(session, rows) for session, rows in meant if rows]
    if not told:
        raise InputProblem(f"{stove.name} has no entries yet; there is nothing to report.")
    unit = habits.unit
    facts = [found for session, _ in told if (found := firing_facts(stove, session, band)) is not None]
    readings = [row for _, rows in told for row in rows if row.kind is Kind.READING]
    hottest = max((reading_kelvin(row) for row in readings), default=0.0)
    days = sorted(local_day(one.began, one.offset_minutes) for one in facts)
    pattern = spot_pattern(stove, [session for session, _ in told])
    oven = spot_pattern(stove, [session for session, _ in told], SpotKind.OVEN)
    return StoveReport(
        stove=stove.name,
        title=stove.name,
        on=stove.note,
        date=date_words(days[0], habits),
        span=f"to {date_words(days[-1], habits)}",
        unit=unit,
        is_whole=not one_page,
        result=hot_side_words(sides(stove, [session for session, _ in told]), unit),
        behind=behind_words(len(told), pattern, unit),
        glance=_glance(stove, facts, readings, unit),
        stoves=tuple(_stoves(stove, [rows for _, rows in told], hottest, habits)),
        scale=heat_scale(unit, hottest),
        abilities=tuple(_abilities(stove, [session for session, _ in told], band, unit)),
        chart=rises_chart([one.curve for one in facts if one.lit], band, unit, "Every rise so far"),
        chart_heading="Every firing so far, from the match",
        chart_words="Every rise so far",
        spots=tuple(_spots(stove, readings, hottest, habits)),
        surroundings=_surroundings(stove, [rows for _, rows in told], habits),
        thermometers=tuple(thermometer_words(one, habits) for one in stove.instruments),
        facts=_facts(stove),
        offsets=tuple(
            (spot_label(stove, row.spot), spot_offset(row, unit, against), str(row.readings))
            for rows, against in ((pattern, "the mean"), (oven, "the centre"))
            for row in rows
            if row.readings and not (rows is oven and row.spot == stove.oven_spot)
        ),
        session_heads=("day", "session", "what came of it", "lit", "wood"),
        sessions=tuple(
            (
                date_words(local_day(one.began, one.offset_minutes), habits),
                next(session.title for session, _ in told if session.number == one.session),
                came_of_it(one, band, unit),
                measured_time(one.lit_minutes) if one.lit_minutes else "",
                mass_text(one.wood, unit) if one.weighed else "",
            )
            for one in sorted(facts, key=lambda one: one.began)
        ),
    )


def _glance(
    stove: Stove, facts: Sequence[FiringFacts], readings: Sequence[Entry], unit: str
) -> tuple[tuple[str, str], ...]:
    told = [
        ("sessions", str(len(facts))),
        ("lit", hours_words(sum(one.lit_minutes for one in facts) / 60.0)),
        ("readings", f"{len(readings):,}"),
    ]
    for kind, name in ((SpotKind.TOP, "hottest on the top"), (SpotKind.OVEN, "hottest in the oven")):
        own = [row for row in readings if stove.kind_of(row.spot) is kind]
        if own:
            row = max(own, key=reading_kelvin)
            where = spot_label(stove, row.spot).removeprefix("top ").removeprefix("oven ")
            told.append((name, f"{where} {heat_text(row, unit)} °{unit}"))
    return tuple(told)


def _stoves(stove: Stove, sessions: Sequence[Sequence[Entry]], hottest: float, habits: Habits) -> Iterable[StageStove]:
    """The stove at the stages that most sessions had: of each spot the median of what the sessions reached."""
    reached: dict[StageName, dict[str, list[float]]] = {}
    counts: dict[StageName, int] = {}
    for rows in sessions:
        found = stages(rows)
        own: dict[StageName, dict[str, float]] = {}
        for row in rows:
            name = stage_at(found, row.at)
            if row.kind is Kind.READING and name in _DRAWN:
                heats = own.setdefault(name, {})
                heats[row.spot] = max(heats.get(row.spot, 0.0), reading_kelvin(row))
        for name, heats in own.items():
            counts[name] = counts.get(name, 0) + 1
            for spot, heat in heats.items():
                reached.setdefault(name, {}).setdefault(spot, []).append(heat)
    kept = sorted(counts, key=lambda name: -counts[name])[:_STOVES]
    for name in (one for one in _DRAWN if one in kept):
        usual = {spot: median(heats) for spot, heats in reached[name].items()}
        count = "1 session" if counts[name] == 1 else f"{counts[name]} sessions"
        words = stage_stove_words(stove, str(name), usual, habits.unit)
        picture = stove_picture(stove, usual, habits.unit, air=None, hottest=hottest, words=words)
        yield StageStove(name=str(name), clock=count, picture=picture)


def _abilities(stove: Stove, sessions: Sequence[Session], band: HeatBand, unit: str) -> Iterable[tuple[str, str, str]]:
    """What the stove has shown: each figure's name, its value, and its range with what it stands on."""
    lit, oven = fires(stove, sessions), stove.oven_spot
    found = (
        abilities.rises(lit, oven, band),
        abilities.holds(lit, oven, band, 1),
        abilities.holds(lit, oven, band, 2),
        abilities.lifts(lit, oven),
        abilities.falls(lit, oven),
        abilities.shut_down(lit, oven, FALL),
    )
    for one in found:
        if one.shown:
            yield ability_name(one, unit, FALL), figure_value(one, unit), figure_range(one, unit)


def _spots(stove: Stove, readings: Sequence[Entry], hottest: float, habits: Habits) -> Iterable[SpotRow]:
    highest: dict[str, Entry] = {}
    for row in readings:
        if row.spot not in highest or reading_kelvin(row) > reading_kelvin(highest[row.spot]):
            highest[row.spot] = row
    for row in sorted(highest.values(), key=lambda row: -reading_kelvin(row)):
        yield SpotRow(
            label=spot_label(stove, row.spot),
            by_stage=(),
            highest=heat_text(row, habits.unit),
            highest_at=date_words(local_day(row.at, row.offset_minutes), habits),
            colour=heat_colour(reading_kelvin(row), hottest),
        )


def _surroundings(stove: Stove, sessions: Sequence[Sequence[Entry]], habits: Habits) -> tuple[str, ...]:
    """Walls and floors at their greatest rise above the room in any session; the last line says who decides."""
    greatest: dict[str, WallRise] = {}
    for rows in sessions:
        for rise in greatest_of_each(wall_rises(stove, rows)):
            if rise.label not in greatest or rise.rise > greatest[rise.label].rise:
                greatest[rise.label] = rise
    told = [
        above_the_room(rise, ReportClock(rise.row.at, rise.row.offset_minutes, habits).moment(rise.row.at), habits.unit)
        for rise in greatest.values()
    ]
    return (*told, clearance_decides()) if told else ()


def _facts(stove: Stove) -> tuple[tuple[str, str], ...]:
    told = [("Firebox", "above the oven" if stove.firebox == "above" else f"on the {stove.firebox}")]
    if stove.altitude:
        told.append(("Height above the sea", height_fact(stove.altitude)))
    if stove.cooktop_surface:
        told.append(("Cooktop", stove.cooktop_surface))
    return tuple(told)
