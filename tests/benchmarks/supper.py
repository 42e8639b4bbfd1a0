"""Is supper on time? `python -m tests.benchmarks.supper --stoves 40` (slow); and what a plan costs, `--cost`.

Each invented stove has three past firings; of the fourth only its band is known beforehand. A bake of `BAKE_MIN` in
that band, which rests `REST_MIN`, is wanted on the table. It is lit when this program plans it, or by the rule "light
two hours before". In the true oven the bake goes in at its planned time or once the oven is in its heat, whichever is
later, and is done when it has had as much heat as `BAKE_MIN` in the middle of the band give: heat goes into food in
proportion to the oven's excess over the boil. Supper is on time within ten minutes either way.
"""

import argparse
import time
from collections.abc import Callable
from dataclasses import dataclass
from datetime import timedelta
from functools import partial

import numpy as np

from cookstove_gui.cooking.fit.tasks import Place
from cookstove_gui.cooking.supper.dishes import Dish, Heat, Wait
from cookstove_gui.cooking.supper.marks import Supper
from cookstove_gui.cooking.supper.plan import FireStep, Margin
from cookstove_gui.forecast.learning.learn import learn
from cookstove_gui.situation import Inputs
from cookstove_gui.stove.entries import HeatBand, Session
from cookstove_gui.supper import SupperInputs, plan_supper
from tests.benchmarks.skill_worlds import WORLDS
from tests.cooking.supper.made import NOW, burning, supper
from tests.world.sessions import WorldSession

BAKE_MIN, REST_MIN, ON_TIME_MIN = 45.0, 15.0, 10.0
PAST = 3
RULE_MIN = 120.0
_BOIL = 373.15  # K


@dataclass(frozen=True, slots=True, kw_only=True)
class Outcome:
    """What became of one supper."""

    late_min: float  # after the table's time; infinite where it was never done
    dough_waits: float  # min that the food waits for the oven
    oven_waits: float  # min that a hot oven waits for the food


def outcome(fired: WorldSession, lead: float) -> Outcome:
    """The supper of a true firing that was lit `lead` minutes before the bake was to go in."""
    low, high = fired.band
    oven = fired.true_oven(fired.times)
    there = np.flatnonzero((oven >= low) & (oven <= high))
    at_heat = np.flatnonzero(oven >= low)
    ready = there[fired.times[there] >= lead - 1e-9]
    if not len(ready):
        return Outcome(late_min=np.inf, dough_waits=np.inf, oven_waits=0.0)
    goes_in = float(fired.times[ready[0]])
    middle = 0.5 * (low + high) - _BOIL
    dose = np.cumsum(np.maximum(oven[ready[0] :] - _BOIL, 0.0)) / middle
    done = np.flatnonzero(dose >= BAKE_MIN)
    late = float(goes_in + done[0] - lead - BAKE_MIN) if len(done) else np.inf
    first_hot = float(fired.times[at_heat[0]])
    return Outcome(late_min=late, dough_waits=goes_in - lead, oven_waits=max(lead - first_hot, 0.0))


def planned_lead(past: list[WorldSession], fired: WorldSession, margin: Margin) -> float:
    """Minutes from lighting to going in, as this program plans them the morning before."""
    low, high = fired.band
    stove = fired.stove
    sessions = tuple(
        Session(number=number, stove=stove.name, title="", entries=one.entries) for number, one in enumerate(past, 1)
    )
    band = HeatBand(name="wanted", low=low, high=high)
    bake = Heat(what="bake", place=Place.OVEN, minutes=BAKE_MIN, low=low, high=high)
    rest = Wait(what="rest", minutes=REST_MIN, shortest=REST_MIN, longest=REST_MIN)
    now = fired.start - timedelta(hours=8)
    dish = Dish(key="bake", name="bake", parts=(bake, rest), may_wait=0.0)
    asked = Inputs(stove=stove, rows=(), now=now, band=band, character=learn(stove, sessions), earlier=sessions)
    wanted = Supper(table_at=now + timedelta(hours=7), dishes=(dish,), margin=margin)
    plan = plan_supper(SupperInputs(supper=wanted, asked=asked, standing=None, sessions=lambda: sessions))
    lit = next(step.begin for step in plan.steps if step.what == FireStep.LIGHT)
    return (plan.of_dish("bake")[0].begin - lit).total_seconds() / 60.0


def study(stoves: int, first: int = 700) -> dict[str, list[Outcome]]:
    """Outcomes by way of planning, over stoves that no setting of the model was looked at on."""
    found: dict[str, list[Outcome]] = {"this program": [], "this program, safe": [], "two hours before": []}
    seed = first
    while len(found["two hours before"]) < stoves:
        fired = [one for one in WORLDS["main"](seed, range(PAST + 1)) if isinstance(one, WorldSession)]
        seed += 1
        *past, last = fired
        if last.plan.purpose not in ("bake", "roast"):
            continue
        for name, margin in (("this program", Margin.USUAL), ("this program, safe", Margin.SAFE)):
            found[name].append(outcome(last, planned_lead(past, last, margin)))
        found["two hours before"].append(outcome(last, RULE_MIN - BAKE_MIN - REST_MIN))
    return found


def print_study(stoves: int) -> None:
    """The table."""
    print(f"{stoves} suppers; lit by | on time (within 10 min) | dough waits, median min | oven waits, median min")
    for name, outcomes in study(stoves).items():
        on_time = np.mean([abs(one.late_min) <= ON_TIME_MIN for one in outcomes])
        dough = np.median([one.dough_waits for one in outcomes])
        oven = np.median([one.oven_waits for one in outcomes])
        print(f"{name} | {100 * on_time:.0f} % | {dough:.0f} | {oven:.0f}")


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
    parser.add_argument("--stoves", type=int, default=40)
    parser.add_argument("--cost", action="store_true")
    options = parser.parse_args()
    if options.cost:
        print_cost()
    else:
        print_study(options.stoves)


if __name__ == "__main__":
    main()
