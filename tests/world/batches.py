"""Firings of a batch side by side: what the second and the third world share of how they are run, and no physics."""

from collections.abc import Callable, Sequence
from dataclasses import fields
from typing import TYPE_CHECKING, Any, TypeVar

import numpy as np

from tests.world.parts import FloatArray

if TYPE_CHECKING:
    from _typeshed import DataclassInstance

Kept = TypeVar("Kept", bound="DataclassInstance")


def rows_of(thing: Kept, rows: slice, times: int = 1) -> Kept:
    """A copy of some rows of a batch, each so many times."""
    return type(thing)(**{f.name: np.array(np.repeat(getattr(thing, f.name)[rows], times, 0)) for f in fields(thing)})


def joined(parts: Sequence[Kept]) -> Kept:
    """One batch of several."""
    made: dict[str, Any] = {f.name: np.concatenate([getattr(one, f.name) for one in parts]) for f in fields(parts[0])}
    return type(parts[0])(**made)


def futures(
    states: Sequence[Kept],
    minutes: Sequence[float],
    count: int,
    oven: Callable[[Kept], FloatArray],
    step: Callable[[Kept, FloatArray], None],
) -> FloatArray:
    """Futures (minutes, count, 181) [K] of the oven from each of these minutes, by the true stove.

    `states` are those of each whole minute; `step` moves a batch on by one minute, given the minute from lighting.
    """
    whole = joined([states[min(int(minute), len(states) - 1)] for minute in minutes])
    state = rows_of(whole, slice(None), count)
    clock = np.repeat([float(int(minute)) for minute in minutes], count)
    path = np.zeros((len(minutes) * count, 182))
    for minute in range(182):
        path[:, minute] = oven(state)
        step(state, clock + minute)
    past = (np.asarray(minutes) % 1.0).repeat(count)[:, None]
    path = (1.0 - past) * path[:, :-1] + past * path[:, 1:]
    return np.asarray(path.reshape(len(minutes), count, 181))
