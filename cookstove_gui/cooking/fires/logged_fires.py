"""The fires in a session's log: when each began, how long it is on record, how hot it got.

Rows that cannot be read as numbers are passed over; a fire is only what the log shows of it.
"""

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import datetime, timedelta

from cookstove_gui.errors import InputProblem
from cookstove_gui.stove.entries import Entry, Kind, Session, fold, fraction_open, named_number, reading_kelvin
from cookstove_gui.stove.stove import SpotKind, Stove
from cookstove_gui.units import kelvin

# All judgement, no source:
RELIGHT = timedelta(minutes=20)  # lighting again sooner than this after lighting or wood is the same fire
LONGEST_SILENCE = timedelta(hours=4)  # rows after a longer gap say nothing about the fire before it
WIDE_OPEN = 0.9  # fraction of the air
MOSTLY_SHUT = 0.4
_BELIEVABLE = (kelvin(-40.0, "F"), kelvin(1200.0, "F"))  # K; other readings are slips
_ONE_MAY_BE_A_SLIP = 4  # of so many readings or more the hottest may be a slip, so the next hottest is taken


@dataclass(frozen=True, slots=True, kw_only=True)
class Fire:
    """One fire, from lighting to the last row that belongs to it."""

    session: int
    rows: tuple[Entry, ...]  # in order of time, the first lights it
    hottest: float | None  # K, on the cooktop
    loads: int  # rows of wood
    air_open_then_shut: bool

    @property
    def began(self) -> datetime:
        """The first lighting or load."""
        return self.rows[0].at

    @property
    def minutes(self) -> float:
        """How long it is on record."""
        return minutes_between(self.began, self.rows[-1].at)

    def readings_of(self, spot: str) -> list[tuple[float, float]]:
        """One spot's readings: minutes since the fire was lit, and the heat [K]."""
        return readings_of(self.rows, spot, self.began)


def standing_rows(entries: Iterable[Entry]) -> tuple[Entry, ...]:
    """The rows in force, in order of time; a void row that names no row takes nothing back."""
    return fold(row for row in entries if row.kind is not Kind.VOID or _names_a_row(row))


def fires(stove: Stove, sessions: Iterable[Session]) -> tuple[Fire, ...]:
    """All fires of one stove's sessions, oldest first."""
    found = [
        _fire(stove, session.number, rows)
        for session in sessions
        if session.stove == stove.name
        for rows in _split(standing_rows(session.entries))
    ]
    return tuple(sorted(found, key=lambda fire: (fire.began, fire.session)))


def minutes_between(start: datetime, end: datetime) -> float:
    """Minutes from one instant to another."""
    return (end - start).total_seconds() / 60.0


def readings_of(rows: Iterable[Entry], spot: str, since: datetime) -> list[tuple[float, float]]:
    """One spot's usable readings: minutes since an instant, and the heat [K]."""
    return [
        (minutes_between(since, row.at), heat)
        for row in rows
        if row.spot == spot and (heat := kelvin_or_none(row)) is not None
    ]


def crossing(earlier: tuple[float, float], later: tuple[float, float], heat: float) -> float:
    """When the straight line between two readings (minutes, K) of different heat passes a heat [min]."""
    (start, before), (end, after) = earlier, later
    return start + (heat - before) / (after - before) * (end - start)


def kelvin_or_none(entry: Entry) -> float | None:
    """Temperature [K] of a reading that can be one; None for anything else."""
    if entry.kind is not Kind.READING:
        return None
    try:
        value = reading_kelvin(entry)
    except InputProblem:
        return None
    return value if _BELIEVABLE[0] <= value <= _BELIEVABLE[1] else None


def fraction_or_none(entry: Entry) -> float | None:
    """How far open an air or bypass row says, 0 to 1; None where it says nothing readable."""
    try:
        value = fraction_open(entry)
    except InputProblem:
        return None
    return value if 0.0 <= value <= 1.0 else None


def _split(rows: tuple[Entry, ...]) -> list[list[Entry]]:
    found: list[list[Entry]] = []
    fed_at: datetime | None = None  # lit or given wood
    is_out = False  # by the log
    for row in rows:
        feeds = row.kind in (Kind.LIT, Kind.WOOD)
        ended = bool(found) and row.at - found[-1][-1].at > LONGEST_SILENCE
        if ended:
            fed_at = None
        if feeds and (fed_at is None or (row.kind is Kind.LIT and (is_out or row.at - fed_at >= RELIGHT))):
            found.append([row])
        elif fed_at is not None:
            found[-1].append(row)
        if feeds:
            fed_at = row.at
        is_out = row.kind is Kind.OUT or (is_out and row.kind is not Kind.LIT)
    return found


def _fire(stove: Stove, session: int, rows: list[Entry]) -> Fire:
    heats = sorted(
        heat for row in rows if stove.kind_of(row.spot) is SpotKind.TOP and (heat := kelvin_or_none(row)) is not None
    )
    hottest = None
    if heats:
        hottest = heats[-2] if len(heats) >= _ONE_MAY_BE_A_SLIP else heats[-1]
    return Fire(
        session=session,
        rows=tuple(rows),
        hottest=hottest,
        loads=sum(row.kind is Kind.WOOD for row in rows),
        air_open_then_shut=_air_open_then_shut(rows),
    )


def _air_open_then_shut(rows: list[Entry]) -> bool:
    opened = False
    for row in rows:
        if row.kind is not Kind.AIR:
            continue
        fraction = fraction_or_none(row)
        if fraction is not None and opened and fraction <= MOSTLY_SHUT:
            return True
        opened = opened or (fraction is not None and fraction >= WIDE_OPEN)
    return False


def _names_a_row(row: Entry) -> bool:
    try:
        named_number(row)
    except InputProblem:
        return False
    return True
