"""What becomes of something in the oven: when to turn it, when it is done, as measured so far and as projected."""

from dataclasses import dataclass, replace
from datetime import datetime, timedelta

import numpy as np

from cookstove_gui.cooking.baking.bodies import COLDEST_OVEN, HOTTEST_OVEN
from cookstove_gui.cooking.baking.doneness import Doneness, doneness
from cookstove_gui.cooking.baking.in_oven import InOven
from cookstove_gui.cooking.baking.past_bakes import learned_from, past_bakes
from cookstove_gui.cooking.baking.turning import TurnReminder, turn_reminder
from cookstove_gui.errors import InputProblem
from cookstove_gui.forecast.answers import Projection, Trace
from cookstove_gui.stove.entries import Session
from cookstove_gui.stove.stove import Stove


@dataclass(frozen=True, slots=True, kw_only=True)
class UnderWay:
    """One thing in the oven, or about to go in, and what becomes of it."""

    inside: InOven
    asked_at: datetime  # the minutes below count from here
    answer: Doneness | None  # none for what the catalogue does not know
    turn: TurnReminder | None  # none once it was turned

    @property
    def goes_in_min(self) -> float:
        """When it goes in [min]; below 0 it is in already."""
        return (self.inside.went_in - self.asked_at).total_seconds() / 60.0

    @property
    def earliest(self) -> datetime | None:
        """The beginning of the window in which it is done; none beyond the projection."""
        return self._at(self.answer.done_min.p10 if self.answer else None)

    @property
    def likely(self) -> datetime | None:
        """When it is likely done."""
        return self._at(self.answer.done_min.p50 if self.answer else None)

    @property
    def latest(self) -> datetime | None:
        """The end of the window."""
        return self._at(self.answer.done_min.p90 if self.answer else None)

    @property
    def turn_at(self) -> datetime | None:
        """When to turn it."""
        return self._at(self.turn.in_min if self.turn else None)

    @property
    def probe_is_off(self) -> int:
        """1 where the latest probe showed more than a core can have by then, -1 where less, 0 where neither."""
        return self.answer.probe_is_off if self.answer else 0

    def _at(self, minutes: float | None) -> datetime | None:
        return None if minutes is None else self.asked_at + timedelta(minutes=minutes)


def under_way(
    inside: InOven,
    projection: Projection,
    past: Trace,
    stove: Stove,
    pressure: float,
    baked: tuple[Session, ...] = (),
) -> UnderWay:
    """What becomes of it.

    Parameters
    ----------
    inside : InOven
    projection : Projection
    past : Trace
        The belief about the oven up to the projection's now.
    stove : Stove
    pressure : float
        Of the air at the stove [Pa].
    baked : tuple of Session
        Earlier sessions, in some of which the same was baked.

    Raises
    ------
    InputProblem
        If it went in so long ago, or goes in so late, that nothing can be said.
    """
    now = projection.now
    if inside.bake is None:
        return UnderWay(inside=inside, asked_at=now, answer=None, turn=None)
    possible = replace(projection, kelvin=np.clip(projection.kelvin, COLDEST_OVEN, HOTTEST_OVEN))
    answer = doneness(
        inside.bake,
        possible,
        oven=stove.oven_spot,
        went_in=inside.went_in,
        past=past,
        pressure=pressure,
        probes=inside.probes,
        learned=learned_from(past_bakes(stove, baked, inside.name), pressure),
    )
    ago = (now - inside.went_in).total_seconds() / 60.0
    done = answer.done_min.p50
    turn = None
    if done is not None and inside.turned_at is None:
        turn = turn_reminder(possible, stove, ago, done + ago)
    return UnderWay(inside=inside, asked_at=now, answer=answer, turn=turn)


def those_under_way(
    inside: tuple[InOven, ...],
    projection: Projection,
    past: Trace,
    stove: Stove,
    pressure: float,
    baked: tuple[Session, ...] = (),
) -> tuple[UnderWay, ...]:
    """The same of everything in the oven; of one with an impossible clock nothing is said but that it is there."""
    found = []
    for one in inside:
        try:
            found.append(under_way(one, projection, past, stove, pressure, baked))
        except InputProblem:
            found.append(UnderWay(inside=one, asked_at=projection.now, answer=None, turn=None))
    return tuple(found)
