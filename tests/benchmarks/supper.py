"""Is supper on time? `python -m tests.benchmarks.supper --stoves 12 --keep FILE` (slow); what a plan costs, `--cost`.

Each invented stove has three past firings. A bake of 45 minutes in the heat of the last of them, which then rests for
15, is wanted on the table. It is cooked on the same fire, with the same wood, wind and habits of the cook, by somebody
who lights when this program says, and does what its plan and heading show, replanned at every few minutes; and by
somebody who lights two hours before the table's time and goes by habit; each with and without letting an oven that is
far too hot cool by its door (`supper_cooks.py`, `supper_evening.py`). Supper is on time within ten minutes either way.
With `--sooner` it is wanted so many minutes sooner than the plan would have it, so that a told chance can be seen to
fall; then only the program's cook cooks. Each supper is written to FILE as it is done, and not cooked again.
"""

import argparse
import json
import time
from collections.abc import Callable, Iterator, Sequence
from dataclasses import asdict
from functools import partial
from itertools import pairwise
from pathlib import Path

import numpy as np

from cookstove_gui.cooking.supper.plan import Margin
from cookstove_gui.forecast.learning.learn import learn
from cookstove_gui.stove.entries import Session
from tests.benchmarks.skill_worlds import WORLDS
from tests.benchmarks.supper_cooks import Follower
from tests.benchmarks.supper_evening import BAKE_MIN, REST_MIN, Cooked, by_rule
from tests.cooking.supper.made import NOW, burning, supper
from tests.world.kitchens import KITCHENS

ON_TIME_MIN = 10.0
PAST = 3
RULE_MIN = 120.0
JUDGED_FROM = 70000  # stoves that nothing was looked at on; design stoves are below 1000
TOLD = (0.0, 0.2, 0.4, 0.6, 0.75, 0.85, 1.01)  # chances told, from the one to the next
BEFORE = (70.0, 40.0, 15.0)  # min before the food goes in at which the told chance is judged again
PLANNED, RULE = "this program", "two hours before"
SHUT = ", the oven's door left shut"
WAYS = (PLANNED, RULE, PLANNED + SHUT, RULE + SHUT)


def cooked(world: str, seed: int, margin: Margin, sooner: float) -> dict[str, Cooked]:
    """One supper by each way, or by the program's alone where it is wanted sooner."""
    past = WORLDS[world](seed, range(PAST))
    stove, band = past[0].stove, past[-1].band
    sessions = tuple(
        Session(number=number, stove=stove.name, title="", entries=one.entries) for number, one in enumerate(past, 1)
    )
    kitchen, character = partial(KITCHENS[world], seed, PAST, band), learn(stove, sessions)
    found = {}
    for door, said in ((True, ""), (False, SHUT)):
        follower = Follower(kitchen(), sessions, character, margin, seed, sooner=sooner, uses_door=door)
        found[PLANNED + said] = follower.cook()
        if sooner:
            break
        found[RULE + said] = by_rule(kitchen(), RULE_MIN - BAKE_MIN - REST_MIN, seed, uses_door=door)
    return found


def study(
    stoves: int, first: int, keep: Path, margin: Margin, sooner: Sequence[float]
) -> Iterator[tuple[str, float, str, Cooked]]:
    """World, minutes sooner, way and what became of the supper, each world in turn."""
    lines = keep.read_text("utf-8").splitlines() if keep.exists() else []
    known = {(row["world"], row["seed"], row["sooner"], row["margin"]): row["cooked"] for row in map(json.loads, lines)}
    for seed in range(first, first + stoves):
        for world in KITCHENS:
            for minutes in sooner:
                key = (world, seed, minutes, str(margin))
                if key not in known:
                    known[key] = {way: asdict(one) for way, one in cooked(world, seed, margin, minutes).items()}
                    row = {"world": world, "seed": seed, "sooner": minutes, "margin": margin, "cooked": known[key]}
                    with keep.open("a", encoding="utf-8") as file:
                        file.write(f"{json.dumps(row)}\n")
                for way, one in known[key].items():
                    yield world, minutes, way, Cooked(**one)


def is_on_time(one: Cooked) -> bool:
    return abs(one.late_min) <= ON_TIME_MIN


def print_study(rows: Sequence[tuple[str, float, str, Cooked]]) -> None:
    """The table, and what made the suppers miss their time; then what was told."""
    in_time = [(world, way, one) for world, minutes, way, one in rows if not minutes]
    print("world | suppers | lit by | on time | late by median, min | food waits | oven waits")
    for world in ("all", *KITCHENS):
        for way in WAYS:
            found = [one for where, how, one in in_time if how == way and world in ("all", where)]
            if found:
                late, food, oven = (
                    np.median([getattr(one, name) for one in found])
                    for name in ("late_min", "food_waits", "oven_waits")
                )
                count = sum(map(is_on_time, found))
                print(f"{world} | {len(found)} | {way} | {count} | {late:.0f} | {food:.0f} | {oven:.0f}")
    for way in WAYS:
        why = [one.why for _, how, one in in_time if how == way and one.why]
        print(f"{way}, missed: " + ", ".join(f"{why.count(one)} {one}" for one in sorted(set(why))))
    print_odds(in_time)
    followed = [(minutes, one) for _, minutes, way, one in rows if way == PLANNED]
    for minutes in sorted({minutes for minutes, _ in followed}):
        pairs = [(one.chance, is_on_time(one)) for sooner, one in followed if sooner == minutes]
        told, came = np.mean(pairs, axis=0)
        print(f"wanted {minutes:.0f} min sooner: {len(pairs)} suppers, told {told:.2f} when lit, came {came:.2f}")
    print_told("when lit", [(one.chance, is_on_time(one)) for _, one in followed])
    for before in BEFORE:
        nearest = [(min(one.told, key=lambda told: abs(told[0] - before)), one) for _, one in followed if one.told]
        near = [(chance, is_on_time(one)) for (at, chance), one in nearest if abs(at - before) < 0.2 * before + 3.0]
        print_told(f"{before:.0f} min before the food goes in", near)


def print_odds(rows: Sequence[tuple[str, str, Cooked]]) -> None:
    """Odds of a miss by the rule over those by the program, with limits by drawing the stoves again 4000 times."""
    random = np.random.default_rng(0)
    for said in ("", SHUT):
        ours, theirs = (
            np.array([is_on_time(one) for _, way, one in rows if way == by + said]) for by in (PLANNED, RULE)
        )
        if not len(ours):
            continue
        drawn = random.integers(0, len(ours), (4000, len(ours)))

        def ratio(mine: np.ndarray, others: np.ndarray) -> np.ndarray:
            on, other = mine.sum(axis=-1) + 0.5, others.sum(axis=-1) + 0.5
            count = mine.shape[-1] + 1.0
            return np.asarray(((count - other) / other) / ((count - on) / on))

        low, high = np.quantile(ratio(ours[drawn], theirs[drawn]), (0.025, 0.975))
        times = f"{ratio(ours, theirs):.1f} times as high by the rule ({low:.1f} to {high:.1f})"
        only = f"{(ours & ~theirs).sum()} on time by the program alone, {(theirs & ~ours).sum()} by the rule alone"
        print(f"odds of a miss{said}: {times}; {only}")


def print_told(when: str, found: Sequence[tuple[float, bool]]) -> None:
    """What was told against what came, in steps of what was told."""
    if not found:
        return
    pairs = np.array(found, dtype=np.float64)
    told, came = pairs.T
    sure = [a > b for a in told[came == 1.0] for b in told[came == 0.0]]
    print(
        f"told {when}: {len(told)}, told {told.mean():.2f}, came {came.mean():.2f}, Brier score "
        f"{((told - came) ** 2).mean():.3f} (always {came.mean():.2f}: {came.var():.3f}); of one that came and one "
        f"that did not, the first was told surer in {np.mean(sure) if sure else np.nan:.2f}"
    )
    for low, high in pairwise(TOLD):
        inside = (told >= low) & (told < high)
        if inside.any():
            print(f"  {low} to {high}: {inside.sum()}, told {told[inside].mean():.2f}, came {came[inside].mean():.2f}")


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
    parser.add_argument("--margin", type=Margin, default=Margin.USUAL, choices=list(Margin))
    parser.add_argument("--sooner", type=float, nargs="*", default=[0.0], help="min; several are cooked in turn")
    parser.add_argument("--cost", action="store_true")
    options = parser.parse_args()
    if options.cost:
        print_cost()
    else:
        print_study(list(study(options.stoves, options.first, options.keep, options.margin, options.sooner)))


if __name__ == "__main__":
    main()
