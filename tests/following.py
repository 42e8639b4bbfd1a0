"""One belief from one log, for tests that ask no more."""

from collections.abc import Sequence
from datetime import datetime

from cookstove_gui.forecast.model.character import Character
from cookstove_gui.forecast.tracking.belief import Belief
from cookstove_gui.forecast.tracking.tracker import Tracker
from cookstove_gui.stove.entries import Entry
from cookstove_gui.stove.stove import Stove


def track(stove: Stove, entries: Sequence[Entry], now: datetime, character: Character | None = None) -> Belief:
    """The belief about a stove at `now` from its session's raw log."""
    return Tracker(stove, character).follow(entries, now)
