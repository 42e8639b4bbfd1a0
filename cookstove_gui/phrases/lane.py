"""What the fire lane shows of a session: what was done to the fire and put into the oven, in order of time."""

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import datetime

from cookstove_gui.errors import InputProblem
from cookstove_gui.phrases.entries import entry_words, lane_words
from cookstove_gui.stove.entries import Entry, Kind, door_is_open, fraction_open, wood_count
from cookstove_gui.stove.stove import Stove
from cookstove_gui.units import clock_text

_KINDS = frozenset({Kind.LIT, Kind.OUT, Kind.WOOD, Kind.AIR, Kind.BYPASS, Kind.OVEN_DOOR, Kind.OVEN_IN, Kind.OVEN_OUT})


@dataclass(frozen=True, slots=True, kw_only=True)
class LaneRow:
    """One thing done, when, in short and in full."""

    at: datetime
    kind: Kind
    words: str
    said: str
    opening: float
    count: int  # of splits; 0 where the row names no number


def lane_rows_of(entries: Iterable[Entry], stove: Stove) -> tuple[LaneRow, ...]:
    """Of a session's rows in force, those that stand in the lane."""
    return tuple(
        LaneRow(
            at=entry.at,
            kind=entry.kind,
            words=lane_words(entry),
            said=f"{entry_words(entry, stove)} at {clock_text(entry.at, entry.offset_minutes)}",
            opening=_opening(entry),
            count=round(wood_count(entry) or 0.0) if entry.kind is Kind.WOOD else 0,
        )
        for entry in entries
        if entry.kind in _KINDS
    )


def _opening(entry: Entry) -> float:
    if entry.kind is Kind.OVEN_DOOR:
        return float(door_is_open(entry))
    if entry.kind not in (Kind.AIR, Kind.BYPASS):
        return 0.0
    try:
        return fraction_open(entry)
    except InputProblem:
        return 0.0
