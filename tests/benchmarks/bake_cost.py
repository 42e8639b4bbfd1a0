"""What a bake costs: two hours of it, against a plain tridiagonal solver of one body in the same run.

Run by hand: `python -m tests.benchmarks.bake_cost`. The plain solver (implicit, one banded solution a step, scipy) does
the bare conduction of one body alone, without radiation, drying or changing properties, at steps of a second.
"""

import statistics
import time
from collections.abc import Callable
from datetime import UTC, datetime, timedelta
from functools import partial

import numpy as np
from scipy.linalg import solve_banded

from cookstove_gui.cooking.baking.bodies import step_of, warmed
from cookstove_gui.cooking.baking.catalogue import bake_of, bakes
from cookstove_gui.cooking.baking.doneness import doneness
from cookstove_gui.cooking.baking.doubts import MEMBERS, usual_ensemble
from cookstove_gui.cooking.baking.probing import Probe
from cookstove_gui.forecast.answers import Projection, Trace
from cookstove_gui.physics.warming import Body, Exposure, warm_through

STEPS, NODES, TIME_STEP = 7200, 60, 1.0
HALF, CONDUCTIVITY, HEAT_CAPACITY, COEFFICIENT, COLD = 0.05, 0.45, 3.2e6, 20.0, 298.15
OVEN = 473.15 + 20.0 * np.sin(np.arange(STEPS + 1) / 900.0)
LOAF = bake_of("bread_loaf")
NOW = datetime(2026, 3, 14, 21, 0, tzinfo=UTC)
MINUTES = np.arange(0.0, 181.0, 5.0)
FUTURES = 460.0 + np.linspace(-15.0, 15.0, 200)[:, None] * MINUTES / 180.0
AHEAD = Projection(now=NOW, minutes=MINUTES, spots=("oven_centre",), kelvin=FUTURES[:, :, None])
BEFORE = tuple(NOW - timedelta(minutes=ago) for ago in (30, 15, 0))
PAST = Trace(at=BEFORE, p10=np.full(3, 455.0), p50=np.full(3, 460.0), p90=np.full(3, 465.0))


def plain() -> np.ndarray:
    """One wall by a banded solution at each step."""
    width = HALF / (NODES - 1)
    capacity = np.full(NODES, HEAT_CAPACITY * width / TIME_STEP)
    capacity[[0, -1]] /= 2
    across = CONDUCTIVITY / width
    banded = np.zeros((3, NODES))
    banded[0, 1:] = banded[2, :-1] = -across
    banded[1] = capacity + 2 * across
    banded[1, [0, -1]] -= across
    banded[1, -1] += COEFFICIENT
    temperature = np.full(NODES, COLD)
    core = np.empty(STEPS + 1)
    core[0] = COLD
    for step in range(STEPS):
        right = capacity * temperature
        right[-1] += COEFFICIENT * OVEN[step + 1]
        temperature = solve_banded((1, 1), banded, right, check_finite=False)
        core[step + 1] = temperature[0]
    return core


def bare() -> np.ndarray:
    """The same wall by the bake solver."""
    body = Body(half_thickness=HALF, conductivity=CONDUCTIVITY, heat_capacity=HEAT_CAPACITY)
    return warm_through(body, Exposure(convection_coefficient=COEFFICIENT), COLD, OVEN, TIME_STEP, nodes=NODES).core


def ensemble() -> np.ndarray:
    """Two hours of a loaf in all its doubts."""
    step = step_of(LOAF)
    return warmed(LOAF, usual_ensemble(), np.full(int(7200 / step) + 1, 460.0), step).core


def answer() -> np.ndarray:
    """The whole answer of a loaf that goes in now: three hours, what it hangs on, what a probe would do."""
    return np.array([doneness(LOAF, AHEAD).chance_done])


def two_hours(key: str) -> np.ndarray:
    """The whole answer of any bake that goes in now, the oven projected for two hours."""
    soon = MINUTES <= 120.0
    ahead = Projection(now=NOW, minutes=MINUTES[soon], spots=("oven_centre",), kelvin=FUTURES[:, soon, None])
    return np.array([doneness(bake_of(key), ahead).chance_done])


def probed() -> np.ndarray:
    """The same of one that has been in for half an hour and was probed twice."""
    probes = tuple(Probe(at=NOW - timedelta(minutes=ago), core=core) for ago, core in ((15, 312.0), (0, 335.0)))
    found = doneness(LOAF, AHEAD, went_in=BEFORE[0], past=PAST, probes=probes)
    return np.array([found.chance_done])


def milliseconds(work: Callable[[], np.ndarray], times: int = 9) -> tuple[float, float]:
    """Least and median processor time of some runs."""
    spans = []
    for _ in range(times):
        start = time.process_time()
        work()
        spans.append(1e3 * (time.process_time() - start))
    return min(spans), statistics.median(spans)


def main() -> None:
    """Prints each cost and its ratio to the plain solver's."""
    apart = float(np.abs(bare() - plain()).max())
    print(f"{STEPS} steps of {TIME_STEP:g} s, {NODES} places; both solvers agree within {apart:.3f} K")
    base, _ = milliseconds(plain, 5)
    works = (("plain, one body", plain), ("bare, one body", bare), (f"{MEMBERS} members", ensemble))
    for name, work in (*works, ("whole answer", answer), ("whole, two probes", probed)):
        least, median = milliseconds(work)
        print(f"{name:20s} least {least:7.1f} ms, median {median:7.1f} ms, {least / base:5.2f} of the plain solver")
    for bake in bakes():
        least, median = milliseconds(partial(two_hours, bake.key), 5)
        print(f"two hours, {bake.name:32s} least {least:5.1f} ms, median {median:5.1f} ms")


if __name__ == "__main__":
    main()
