"""Sessions beside each other: curves and fire lanes from the match or by the clock, and the table of differences."""

from collections.abc import Sequence
from dataclasses import dataclass, replace

from cookstove_gui.cooking.fires.comparing import Comparison, Figure, comparison
from cookstove_gui.cooking.fires.firing_facts import FiringFacts
from cookstove_gui.cooking.fires.logged_fires import minutes_between
from cookstove_gui.desk.cook.oven_lines import oven_fan
from cookstove_gui.desk.desk import Desk
from cookstove_gui.phrases.edge import local_day, short_date
from cookstove_gui.phrases.lane import LaneRow, lane_rows_of
from cookstove_gui.phrases.logbook.compare import TODAY
from cookstove_gui.situation import Standing
from cookstove_gui.stove.entries import HeatBand, fold
from cookstove_gui.units import degrees

_DAY = 1440.0  # min
_HOTTER = 3.0  # K by which the oven is to become hotter for that to be told; judgement


@dataclass(frozen=True, slots=True, kw_only=True)
class Coming:
    """How the oven of the session on the stove is likely to go on; minutes from the match."""

    now: float
    minutes: tuple[float, ...]
    low: tuple[float, ...]  # K, one future in ten is cooler
    middle: tuple[float, ...]
    high: tuple[float, ...]
    arrival: tuple[float, float, float | None] | None  # at the heat wanted: likely, soonest, latest; none: not likely


@dataclass(frozen=True, slots=True, kw_only=True)
class Beside:
    """One of the sessions compared; minutes from the match."""

    number: int
    title: str
    name: str  # its day, or today
    curve: tuple[tuple[float, float], ...]  # min, K
    lane: tuple[tuple[float, LaneRow], ...]
    clock_min: float  # of the match on its local clock, since midnight
    minutes: float  # until its last entry
    coming: Coming | None = None  # of the session on the stove


@dataclass(frozen=True, slots=True, kw_only=True)
class Compared:
    """Several sessions."""

    band: HeatBand
    sessions: tuple[Beside, ...]
    found: Comparison
    labels: dict[str, str]  # of the stove's spots
    likely: frozenset[Figure] = frozenset()  # of the session on the stove, projected and not read yet


def compared(desk: Desk, numbers: Sequence[int]) -> Compared:
    """The sessions of these numbers that hold entries, in this order."""
    stove = desk.stove
    sessions = [session for number in numbers if fold((session := desk.logbook.session(number)).entries)]
    found = comparison(stove, sessions, desk.band)
    live = desk.session.number if desk.session is not None and desk.is_live else 0
    beside = []
    for session, facts in zip(sessions, found.facts, strict=True):
        rows = fold(session.entries)
        is_live = session.number == live
        local = facts.began.hour * 60 + facts.began.minute + facts.offset_minutes
        beside.append(
            Beside(
                number=session.number,
                title=session.title,
                name=TODAY if is_live else short_date(local_day(facts.began, facts.offset_minutes)),
                curve=facts.curve,
                lane=tuple(
                    ((row.at - facts.began).total_seconds() / 60.0, row) for row in lane_rows_of(rows, stove)
                ),
                clock_min=local % _DAY,
                minutes=(facts.ended - facts.began).total_seconds() / 60.0,
                coming=_coming(desk.standing, facts) if is_live else None,
            )
        )  # fmt: skip
    labels = {spot.name: spot.label for spot in stove.spots}
    found, likely = _with_what_is_likely(found, beside)
    return Compared(band=desk.band, sessions=tuple(beside), found=found, labels=labels, likely=likely)


def _coming(standing: Standing | None, facts: FiringFacts) -> Coming | None:
    """The projection of the session on the stove; none before it is worked out."""
    if standing is None or standing.now < facts.ended:
        return None
    fan = oven_fan(standing.projection, standing.stove.oven_spot)
    now = minutes_between(facts.began, standing.now)
    band = standing.outlook.band
    line, enters, arrival = band.line_enters_min, band.enters_min, None
    is_below = float(fan.p50[0]) < standing.band.low  # what is hotter falls into the band, which is no rise
    if is_below and line is not None and line > 0.0 and enters.p10 is not None:
        arrival = (now + line, now + min(enters.p10, line), None if enters.p90 is None else now + enters.p90)
    return Coming(
        now=now,
        minutes=tuple(now + float(minute) for minute in fan.minutes),
        low=tuple(fan.p10.tolist()),
        middle=tuple(fan.p50.tolist()),
        high=tuple(fan.p90.tolist()),
        arrival=arrival,
    )


def _with_what_is_likely(found: Comparison, beside: Sequence[Beside]) -> tuple[Comparison, frozenset[Figure]]:
    """Today's rise and best heat as they are projected, where they are still to come."""
    place = next((number for number, one in enumerate(beside) if one.coming is not None), None)
    if place is None:
        return found, frozenset()
    coming, facts = beside[place].coming, found.facts[place]
    assert coming is not None
    told: dict[Figure, float] = {}
    if facts.rise_min is None and coming.arrival is not None and facts.lit:
        told[Figure.RISE] = coming.arrival[0]
    best = max(coming.middle)
    if facts.hottest is None or best > facts.hottest[1] + _HOTTER:
        told[Figure.BEST] = best
    figures = dict(found.figures)
    for figure, value in told.items():
        row = list(figures.get(figure, (None,) * len(beside)))
        row[place] = value
        figures[figure] = tuple(row)
    figures = {figure: figures[figure] for figure in Figure if figure in figures}
    return replace(found, figures=figures), frozenset(told)


def values_text(found: Compared, unit: str) -> str:
    """All curves as a table for a spreadsheet, separated by tabs."""
    lines = [f"session\tday\tminutes since lit\toven °{unit}"]
    for one in found.sessions:
        lines += [f"{one.title}\t{one.name}\t{minute:.1f}\t{degrees(heat, unit):.0f}" for minute, heat in one.curve]
    return "\n".join(lines) + "\n"
