"""The worlds that the skill study may be run in: each gives firings of a stove from seeds."""

from collections.abc import Callable, Sequence
from dataclasses import replace

import numpy as np

from tests.benchmarks.skill_questions import Firing
from tests.world.hands import tidy_hands
from tests.world.other import make_other_sessions
from tests.world.sessions import make_sessions
from tests.world.stoves import FAMILIES, make_stove
from tests.world.third import make_third_sessions

World = Callable[[int, Sequence[int]], list[Firing]]  # seed of the stove, seeds of its firings


def _main(seed: int, firings: Sequence[int]) -> list[Firing]:
    stove = make_stove(seed, FAMILIES[seed % len(FAMILIES)])
    return list(make_sessions([(stove, firing) for firing in firings]))


def _tidy(seed: int, firings: Sequence[int]) -> list[Firing]:
    stove = make_stove(seed, FAMILIES[seed % len(FAMILIES)])
    quick = replace(stove.parts, thermometer_lag=np.full(1, 20.0), thermometer_rear=np.zeros(1))
    told = replace(stove, hands=tidy_hands(stove.hands), parts=quick)
    return list(make_sessions([(told, firing) for firing in firings]))


def _other(seed: int, firings: Sequence[int]) -> list[Firing]:
    return list(make_other_sessions(seed, firings))


def _third(seed: int, firings: Sequence[int]) -> list[Firing]:
    return list(make_third_sessions(seed, firings))


# "tidy" is the first world written down by faultless hands: what is lost there is not lost in the log
WORLDS: dict[str, World] = {"main": _main, "tidy": _tidy, "other": _other, "third": _third}
