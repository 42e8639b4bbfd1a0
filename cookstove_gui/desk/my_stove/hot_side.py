"""The hot side of a stove, over all of its past or while its fire was in one stage; run off the screen's thread."""

from collections.abc import Callable
from dataclasses import dataclass, replace
from enum import StrEnum

from cookstove_gui.cooking.fires.comparing import SHUT
from cookstove_gui.cooking.fires.logged_fires import fraction_or_none
from cookstove_gui.cooking.fires.sides import Sides, sides
from cookstove_gui.cooking.instruments.meant_rows import meant_sessions
from cookstove_gui.forecast.answers import SpotPattern
from cookstove_gui.forecast.learning.hot_side import pattern_belief, spot_pattern
from cookstove_gui.forecast.learning.next_round import NextRound, next_round
from cookstove_gui.reports.stages import StageName, stage_at, stages
from cookstove_gui.stove.entries import Entry, Kind, Session, fold
from cookstove_gui.stove.stove import SpotKind, Stove

PastReader = Callable[[str], tuple[Session, ...]]  # a stove's name to its sessions


class FireStage(StrEnum):
    """What the fire was doing when a spot was read."""

    KINDLING = "kindling"
    STEADY = "steady"
    FULL = "full"
    DYING = "dying down"


class BypassPlace(StrEnum):
    """Where the bypass stood by the log when a spot was read; before the log says so, nowhere."""

    SHUT = "shut"
    OPEN = "open"


_STAGES = {
    StageName.KINDLING: FireStage.KINDLING,
    StageName.MEDIUM: FireStage.STEADY,
    StageName.SHUT: FireStage.STEADY,
    StageName.FULL: FireStage.FULL,
    StageName.COALS: FireStage.DYING,
    StageName.OUT: FireStage.DYING,
}


@dataclass(frozen=True, slots=True, kw_only=True)
class HotSideAsked:
    """A stove, and of which readings: none of a kind asks for all."""

    stove: Stove
    stage: FireStage | None = None
    bypass: BypassPlace | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class HotSide:
    """How each spot of a stove runs."""

    asked: HotSideAsked
    sessions: int  # with a reading of the cooktop or the oven among those asked about
    pattern: tuple[SpotPattern, ...]  # the cooktop against its mean
    oven: tuple[SpotPattern, ...]  # against its centre
    sides: Sides
    next_round: NextRound | None
    stages: frozenset[FireStage]  # in which anything was read
    bypasses: frozenset[BypassPlace]


NOTHING = HotSide(
    asked=HotSideAsked(stove=Stove(name="")), sessions=0, pattern=(), oven=(), sides=Sides(across=None, deep=None),
    next_round=None, stages=frozenset(), bypasses=frozenset(),
)  # fmt: skip


def hot_side(asked: HotSideAsked, past: PastReader) -> HotSide:
    """How each spot runs: the cooktop's against their mean, the oven's against its centre."""
    stove = asked.stove
    read = [
        (session, _readings(stove, session)) for session in meant_sessions(stove, past(stove.name))
    ]  # each reading with the stage and the bypass of its moment
    chosen = tuple(
        replace(session, entries=tuple(row for row, stage, bypass in rows if _fits(asked, stage, bypass)))
        for session, rows in read
    )
    told = tuple(session for session in chosen if session.entries)
    return HotSide(
        asked=asked,
        sessions=len(told),
        pattern=spot_pattern(stove, told),
        oven=spot_pattern(stove, told, SpotKind.OVEN),
        sides=sides(stove, told),
        next_round=next_round(pattern_belief(stove, told)),
        stages=frozenset(stage for _, rows in read for _, stage, _ in rows if stage is not None),
        bypasses=frozenset(bypass for _, rows in read for _, _, bypass in rows if bypass is not None),
    )


def readings_while(stove: Stove, sessions: tuple[Session, ...], wanted: frozenset[FireStage]) -> tuple[Entry, ...]:
    """Every reading of the cooktop and the oven that was taken while the fire was in one of these stages."""
    return tuple(row for session in sessions for row, stage, _ in _readings(stove, session) if stage in wanted)


def _readings(stove: Stove, session: Session) -> list[tuple[Entry, FireStage | None, BypassPlace | None]]:
    rows = fold(session.entries)
    found, bypass = [], None
    named = stages(rows)
    for row in rows:
        fraction = fraction_or_none(row) if row.kind is Kind.BYPASS else None
        if fraction is not None:
            bypass = BypassPlace.SHUT if fraction <= SHUT else BypassPlace.OPEN
        if row.kind is Kind.READING and stove.kind_of(row.spot) in (SpotKind.TOP, SpotKind.OVEN):
            name = stage_at(named, row.at)
            found.append((row, _STAGES.get(name) if name else None, bypass))
    return found


def _fits(asked: HotSideAsked, stage: FireStage | None, bypass: BypassPlace | None) -> bool:
    return asked.stage in (None, stage) and asked.bypass in (None, bypass)
