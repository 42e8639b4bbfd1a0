"""Is supper on time? `python -m tests.benchmarks.supper --stoves 12 --keep FILE` (slow); what a plan costs, `--cost`.

Each invented stove has three past firings. A bake of 45 minutes in the heat of the last of them, which then rests for
15, is wanted on the table. It is cooked twice on the same fire, with the same wood, wind and habits of the cook: by
somebody who lights when this program says, and does what its plan and heading show, replanned at every few minutes; and
by somebody who lights two hours before the table's time and goes by habit (`supper_cooks.py`). Supper is on time within
ten minutes either way. Each supper is written to FILE as it is done, and not cooked again.
"""

import argparse
import json
import time
from collections.abc import Callable, Iterator
from dataclasses import asdict
from functools import partial
from itertools import pairwise
from pathlib import Path

import numpy as np

from cookstove_gui.cooking.supper.plan import Margin
from cookstove_gui.forecast.learning.learn import learn
from cookstove_gui.stove.entries import Session
from tests.benchmarks.skill_worlds import WORLDS
from tests.benchmarks.supper_cooks import BAKE_MIN, REST_MIN, Cooked, Follower, by_rule
from tests.cooking.supper.made import NOW, burning, supper
from tests.world.kitchens import KITCHENS

ON_TIME_MIN = 10.0
PAST = 3
RULE_MIN = 120.0
JUDGED_FROM = 70000  # stoves that nothing was looked at on; design stoves are below 1000
TOLD = (0.0, 0.6, 0.75, 0.9, 1.01)  # chances told when the fire is lit, from the one to the next
WAYS = ("this program", "two hours before")


def cooked(world: str, seed: int) -> tuple[Cooked, Cooked]:
    """One supper by either way."""
    past = WORLDS[world](seed, range(PAST))
    stove, band = past[0].stove, past[-1].band
    sessions = tuple(
        Session(number=number, stove=stove.name, title="", entries=one.entries) for number, one in enumerate(past, 1)
    )
    kitchen = KITCHENS[world]
    follower = Follower(kitchen(seed, PAST, band), sessions, learn(stove, sessions), Margin.USUAL, seed)
    return follower.cook(), by_rule(kitchen(seed, PAST, band), RULE_MIN - BAKE_MIN - REST_MIN, seed)


def study(stoves: int, first: int, keep: Path) -> Iterator[tuple[str, int, str, Cooked]]:
    """World, stove, way and what became of the supper, each world in turn."""
    lines = keep.read_text("utf-8").splitlines() if keep.exists() else []
    known = {(row["world"], row["seed"]): row for row in map(json.loads, lines)}
    for seed in range(first, first + stoves):
        for world in KITCHENS:
            row = known.get((world, seed))
            if row is None:
                row = {"world": world, "seed": seed}
                row |= {way: asdict(one) for way, one in zip(WAYS, cooked(world, seed), strict=True)}
                with keep.open("a", encoding="utf-8") as file:
                    file.write(f"{json.dumps(row)}\n")
            for way in WAYS:
                yield world, seed, way, Cooked(**row[way])


def print_study(stoves: int, first: int, keep: Path) -> None:
    """The table, and what made the suppers miss their time."""
    rows = list(study(stoves, first, keep))
    print("world | suppers | lit by | on time | late by median, min | food waits | oven waits | told chance, mean")
    for world in ("all", *KITCHENS):
        for way in WAYS:
            found = [one for where, _, how, one in rows if how == way and world in ("all", where)]
            on_time = np.mean([abs(one.late_min) <= ON_TIME_MIN for one in found])
            late, food, oven = (
                np.median([getattr(one, name) for one in found]) for name in ("late_min", "food_waits", "oven_waits")
            )
            told = f"{np.mean([one.chance for one in found]):.2f}" if way == WAYS[0] else ""
            waits = f"{late:.0f} | {food:.0f} | {oven:.0f}"
            print(f"{world} | {len(found)} | {way} | {100 * on_time:.0f} % | {waits} | {told}")
    for way in WAYS:
        why = [one.why for _, _, how, one in rows if how == way and one.why]
        print(f"{way}, missed: " + ", ".join(f"{why.count(one)} {one}" for one in sorted(set(why))))
    followed = [(one.chance, abs(one.late_min) <= ON_TIME_MIN) for _, _, how, one in rows if how == WAYS[0]]
    for low, high in pairwise(TOLD):
        found = [(told, came) for told, came in followed if low <= told < high]
        if found:
            told, came = np.mean(found, axis=0)
            print(f"told {low} to {high}: {len(found)} suppers, told {told:.2f}, came {came:.2f}")
    print(f"Brier score of the told chance: {np.mean([(told - came) ** 2 for told, came in followed]):.3f}")


def print_cost() -> None:
    """What planning again costs for twelve dishes and some sixty steps, beside a plan of one dish."""
    from cookstove_gui.cooking.supper.planning import plan_meal

    keys = (
        "biscuits", "baked_beans", "roast_beef", "cake", "soup", "boiled_potatoes", "rolls", "apple_pie", "greens",
        "griddle_cakes", "custard", "bread",
    )  # fmt: skip
    for title, wanted in (("1 dish", supper("greens")), (f"{len(keys)} dishes", supper(*keys, hours=6.0))):
        fire = burning()
        plan = plan_meal(wanted, fire, NOW)
        first, again = (_median_ms(partial(plan_meal, wanted, fire, NOW, before)) for before in (None, plan))
        print(f"{title}, {len(plan.steps)} steps: first plan {first:.0f} ms, planned again {again:.0f} ms (goal 150)")


def _median_ms(work: Callable[[], object], repeats: int = 7) -> float:
    costs = []
    for _ in range(repeats):
        begun = time.process_time()
        work()
        costs.append(time.process_time() - begun)
    return 1e3 * float(np.median(costs))


def main() -> None:
    """Runs one of the two."""
    parser = argparse.ArgumentParser()
    parser.add_argument("--stoves", type=int, default=12, help="of each world")
    parser.add_argument("--first", type=int, default=JUDGED_FROM)
    parser.add_argument("--keep", type=Path, default=Path("suppers.jsonl"))
    parser.add_argument("--cost", action="store_true")
    options = parser.parse_args()
    if options.cost:
        print_cost()
    else:
        print_study(options.stoves, options.first, options.keep)


if __name__ == "__main__":
    main()
