"""Sessions beside each other: curves and fire lanes from the match or by the clock, and the table of differences."""

from collections.abc import Sequence
from dataclasses import dataclass

from cookstove_gui.cooking.fires.comparing import Comparison, comparison
from cookstove_gui.desk.desk import Desk
from cookstove_gui.phrases.edge import local_day, short_date
from cookstove_gui.phrases.lane import LaneRow, lane_rows_of
from cookstove_gui.phrases.logbook.compare import TODAY
from cookstove_gui.stove.entries import HeatBand, fold
from cookstove_gui.units import degrees

_DAY = 1440.0  # min


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


@dataclass(frozen=True, slots=True, kw_only=True)
class Compared:
    """Two to four sessions."""

    band: HeatBand
    sessions: tuple[Beside, ...]
    found: Comparison
    labels: dict[str, str]  # of the stove's spots


def compared(desk: Desk, numbers: Sequence[int]) -> Compared:
    """The sessions of these numbers that hold entries, in this order."""
    stove = desk.stove
    sessions = [session for number in numbers if fold((session := desk.logbook.session(number)).entries)]
    found = comparison(stove, sessions, desk.band)
    live = desk.session.number if desk.session is not None and desk.is_live else 0
    beside = []
    for session, facts in zip(sessions, found.facts, strict=True):
        rows = fold(session.entries)
        local = facts.began.hour * 60 + facts.began.minute + facts.offset_minutes
        beside.append(
            Beside(
                number=session.number,
                title=session.title,
                name=TODAY if session.number == live else short_date(local_day(facts.began, facts.offset_minutes)),
                curve=facts.curve,
                lane=tuple(
                    ((row.at - facts.began).total_seconds() / 60.0, row) for row in lane_rows_of(rows, stove)
                ),
                clock_min=local % _DAY,
                minutes=(facts.ended - facts.began).total_seconds() / 60.0,
            )
        )  # fmt: skip
    labels = {spot.name: spot.label for spot in stove.spots}
    return Compared(band=desk.band, sessions=tuple(beside), found=found, labels=labels)


def values_text(found: Compared, unit: str) -> str:
    """All curves as a table for a spreadsheet, separated by tabs."""
    lines = [f"session\tday\tminutes since lit\toven °{unit}"]
    for one in found.sessions:
        lines += [f"{one.title}\t{one.name}\t{minute:.1f}\t{degrees(heat, unit):.0f}" for minute, heat in one.curve]
    return "\n".join(lines) + "\n"
