"""A tracker that remembers what it foretold at the oven's readings, so that the next futures know how that held."""

from bisect import bisect_right
from collections.abc import Sequence
from dataclasses import replace
from datetime import datetime, timedelta

import numpy as np

from cookstove_gui.forecast.answers import LEAVE
from cookstove_gui.forecast.futures.tending import tended
from cookstove_gui.forecast.model import heat
from cookstove_gui.forecast.model.character import CORRECTION_MINUTES, WIDTH_AFTER, Character
from cookstove_gui.forecast.model.ensemble import OFFSET
from cookstove_gui.forecast.model.merit import Merit
from cookstove_gui.forecast.model.observation import oven_readings
from cookstove_gui.forecast.model.plain import MINUTES, Rises
from cookstove_gui.forecast.model.quantiles import middle
from cookstove_gui.forecast.tracking.belief import Belief
from cookstove_gui.forecast.tracking.proof import Said, merit_of, proof_of, say
from cookstove_gui.forecast.tracking.tracker import Tracker, confirmed, rows_in_force, worth_following
from cookstove_gui.stove.entries import Entry
from cookstove_gui.stove.stove import OVEN_CENTRE, Stove

LOOKED_BACK = 600.0  # min of readings that are put to the proof: twice what is remembered, and the leads
SPACING = 4.0  # min, the least between two of them


class Forecaster:
    """Follows one session of one stove; what it says is the same however the rows came to it."""

    def __init__(self, stove: Stove, character: Character | None = None, *, keeps_past: bool = True) -> None:
        self.tracker = Tracker(stove, character, keeps_past=keeps_past)
        self._stove = stove
        self._rises = Rises.of(character.rises if character else ())
        self._known = character.merit if character else Merit()
        self._rows: tuple[Entry, ...] = ()
        self._kept: frozenset[int] = frozenset()  # numbers of the readings that the cook confirmed
        self._said: dict[int, Said | None] = {}  # by the number of rows there were; none at a doubted reading

    def follow(self, entries: Sequence[Entry], now: datetime) -> Belief:
        """The belief at `now` from the raw log, with what the session's earlier futures have proved."""
        rows, kept = worth_following(rows_in_force(entries, now)), confirmed(entries, now)
        said = self._sayings(rows, kept, now)
        belief = self.tracker.follow_rows(rows, kept, now)
        return replace(belief, proof=proof_of(said))

    def merit(self, entries: Sequence[Entry], now: datetime) -> Merit:
        """What the session has proved by `now` of the plain forecasters."""
        return merit_of(self._sayings(worth_following(rows_in_force(entries, now)), confirmed(entries, now), now))

    def _sayings(self, rows: tuple[Entry, ...], kept: frozenset[int], now: datetime) -> list[Said]:
        self._forget_from(rows, kept)
        told = [row.at for row in rows]
        said: list[Said] = []
        for row, value in _proving(self._stove, rows, now):
            count = bisect_right(told, row.at)
            if count not in self._said:
                self._said[count] = self._say(said, rows[:count], kept, row, value)
            one = self._said[count]
            if one is not None:
                said.append(one)
        return said

    def _forget_from(self, rows: tuple[Entry, ...], kept: frozenset[int]) -> None:
        """Forget what was said after the first row that is another one now, all of it if a reading was confirmed."""
        same = 0
        for old, new in zip(self._rows, rows, strict=False):
            if old is not new and old != new:
                break
            same += 1
        same = same if kept == self._kept else 0
        self._said = {count: one for count, one in self._said.items() if count <= same}
        self._rows, self._kept = rows, kept

    def _say(
        self, before: Sequence[Said], rows: tuple[Entry, ...], kept: frozenset[int], row: Entry, value: float
    ) -> Said | None:
        belief = self.tracker.follow_rows(rows, kept, row.at)
        if any(doubted.number == row.number for doubted in belief.doubted):
            return None
        dial = tended(belief, LEAVE, MINUTES, None)[:, heat.DIAL] + belief.ensemble.x[OFFSET]
        width = np.interp(MINUTES, CORRECTION_MINUTES, np.multiply(WIDTH_AFTER, belief.corrections.width))
        foretold = middle(dial), width * dial.std(axis=1)
        return say(before, row.at, value, foretold, belief.minutes_since_lit, self._rises, self._known)


def _proving(stove: Stove, rows: tuple[Entry, ...], now: datetime) -> list[tuple[Entry, float]]:
    """The oven's readings that are put to the proof, spaced, with their heat [K]."""
    found: list[tuple[Entry, float]] = []
    readings, values = oven_readings(stove, rows, OVEN_CENTRE)
    for row, value in zip(readings, values, strict=True):
        if not found or row.at - found[-1][0].at >= timedelta(minutes=SPACING):
            found.append((row, float(value)))
    return [(row, value) for row, value in found if now - row.at <= timedelta(minutes=LOOKED_BACK)]
