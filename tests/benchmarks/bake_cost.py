"""What a bake costs: two hours at steps of a second with 60 places, against a plain tridiagonal solver in the same run.

Run by hand: `python -m tests.benchmarks.bake_cost`. The plain solver (implicit, one banded solution a step, scipy) does
the bare conduction alone, without radiation, drying or changing properties.
"""

import statistics
import time
from collections.abc import Callable

import numpy as np
from scipy.linalg import solve_banded

from cookstove_gui.physics.bricks import equivalent_body
from cookstove_gui.physics.foods import Composition, conductivity, density, specific_heat
from cookstove_gui.physics.warming import Body, Exposure, warm_through

STEPS, NODES, TIME_STEP = 7200, 60, 1.0
HALF, CONDUCTIVITY, HEAT_CAPACITY, COEFFICIENT, COLD = 0.05, 0.45, 3.2e6, 20.0, 298.15
OVEN = 473.15 + 20.0 * np.sin(np.arange(STEPS + 1) / 900.0)
DOUGH = Composition(water=0.45, protein=0.08, fat=0.015, carbohydrate=0.42, fibre=0.015, ash=0.02)

SIDES = (("wall", 0.05), ("wall", 0.06), ("wall", 0.12))
LOAF = equivalent_body(SIDES, 20.0, 0.2)


def plain() -> np.ndarray:
    """The same wall by a banded solution at each step."""
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
    """Conduction alone, as the plain solver does it."""
    body = Body(half_thickness=HALF, conductivity=CONDUCTIVITY, heat_capacity=HEAT_CAPACITY)
    return warm_through(body, Exposure(convection_coefficient=COEFFICIENT), COLD, OVEN, TIME_STEP, nodes=NODES).core


def loaf() -> np.ndarray:
    """A loaf with radiation, drying and properties of its temperature, its body found."""
    levels = np.linspace(274.0, 420.0, 40)
    conducts = np.asarray(conductivity(DOUGH, levels, 0.65))
    holds = np.asarray(density(DOUGH, levels, 0.65)) * np.asarray(specific_heat(DOUGH, levels))
    body = Body(
        half_thickness=LOAF.half_thickness,
        dimension=LOAF.dimension,
        conductivity=(levels, conducts),
        heat_capacity=(levels, holds),
        water=150.0,
    )
    exposure = Exposure(convection_coefficient=10.0, emissivity=0.9, wetness=0.3)
    return warm_through(body, exposure, COLD, OVEN, TIME_STEP, nodes=NODES).core


def brick() -> np.ndarray:
    """Finding the body that stands for the loaf: once a bake."""
    found = equivalent_body(SIDES, 20.0, CONDUCTIVITY)
    return np.array([found.dimension])


def milliseconds(work: Callable[[], np.ndarray], times: int = 9) -> tuple[float, float]:
    """Least and median time of some runs."""
    spans = []
    for _ in range(times):
        start = time.perf_counter()
        work()
        spans.append(1e3 * (time.perf_counter() - start))
    return min(spans), statistics.median(spans)


def main() -> None:
    """Prints each cost and its ratio to the plain solver's."""
    apart = float(np.abs(bare() - plain()).max())
    print(f"{STEPS} steps of {TIME_STEP:g} s, {NODES} places; both solvers agree within {apart:.3f} K")
    base, _ = milliseconds(plain, 5)
    for name, work in (("plain banded solver", plain), ("bare", bare), ("whole loaf", loaf), ("brick to body", brick)):
        least, median = milliseconds(work)
        print(f"{name:20s} least {least:7.1f} ms, median {median:7.1f} ms, {least / base:5.2f} of the plain solver")


if __name__ == "__main__":
    main()
