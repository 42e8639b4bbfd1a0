"""The worlds that the skill study may be run in: each gives firings of a stove from seeds."""

from collections.abc import Callable, Sequence

from tests.benchmarks.skill_questions import Firing
from tests.world.other import make_other_sessions
from tests.world.sessions import make_sessions
from tests.world.stoves import FAMILIES, make_stove

World = Callable[[int, Sequence[int]], list[Firing]]  # seed of the stove, seeds of its firings


def _main(seed: int, firings: Sequence[int]) -> list[Firing]:
    stove = make_stove(seed, FAMILIES[seed % len(FAMILIES)])
    return list(make_sessions([(stove, firing) for firing in firings]))


WORLDS: dict[str, World] = {"main": _main, "other": lambda seed, firings: list(make_other_sessions(seed, firings))}
