"""What fit, pans and bakes cost, as medians in one run: `python -m tests.benchmarks.cooking_cost`.

Shown beside a plain numpy pass over the same futures (one comparison, one mean), because a computer's own pace varies.
"""

import time
from collections.abc import Callable

import numpy as np

from cookstove_gui.cooking.baking.catalogue import bake_of
from cookstove_gui.cooking.baking.doneness import doneness
from cookstove_gui.cooking.fit.fit import fits
from cookstove_gui.cooking.fit.tasks import catalogue
from cookstove_gui.cooking.pans.boiling_time import water_time
from cookstove_gui.cooking.pans.catalogue import PanOfWater, pans
from cookstove_gui.forecast.answers import Projection
from cookstove_gui.stove.stove import Spot, SpotKind, Stove, default_spots
from tests.cooking.made import START

FUTURES, TIMES, TOPS = 200, 37, 12


def projection(stove: Stove) -> Projection:
    """Invented futures: a slow rise with a spread that grows."""
    generator = np.random.default_rng(1)
    minutes = np.linspace(0.0, 180.0, TIMES)
    rise = 430.0 + 70.0 * (1.0 - np.exp(-minutes / 40.0))
    names = tuple(spot.name for spot in stove.spots)
    walk = np.cumsum(generator.normal(0.0, 4.0, (FUTURES, TIMES, 1)), axis=1)
    heat = rise[None, :, None] + walk + generator.normal(0.0, 20.0, (FUTURES, 1, len(names)))
    return Projection(now=START, minutes=minutes, spots=names, kelvin=heat)


def median_ms(work: Callable[[], object], repeats: int = 15) -> float:
    """Median cost of a piece of work [ms of processor time, so that a busy computer does not count]."""
    work()
    costs = []
    for _ in range(repeats):
        begun = time.process_time()
        work()
        costs.append(time.process_time() - begun)
    return float(np.median(costs)) * 1e3


def main() -> None:
    """Prints the table."""
    tops = tuple(
        Spot(name=f"top_{column}_{row}", label="", kind=SpotKind.TOP, x=(column + 0.5) / 4, y=(row + 0.5) / 3)
        for column in range(4)
        for row in range(3)
    )
    stove = Stove(name="benchmark", spots=(*(s for s in default_spots() if s.kind is not SpotKind.TOP), *tops[:TOPS]))
    futures = projection(stove)
    plain = median_ms(lambda: ((futures.kelvin > 450.0).mean(axis=0), futures.kelvin.mean(axis=0)))
    water = PanOfWater(pans()[0], 2.0)
    rows = {
        f"fit: {len(catalogue())} tasks, {TOPS} top spots": lambda: fits(futures, stove),
        "fit: 24 tasks": lambda: fits(futures, stove, catalogue()[:24]),
        "a pan of water": lambda: water_time(futures, tops[0].name, water),
        "a loaf of bread": lambda: doneness(bake_of("bread_loaf"), futures),
    }
    print(f"{FUTURES} futures, {TIMES} times; one plain pass over them {plain:.2f} ms")
    for name, work in rows.items():
        cost = median_ms(work)
        print(f"{name:38} {cost:8.2f} ms  {cost / plain:8.1f} passes")


if __name__ == "__main__":
    main()
