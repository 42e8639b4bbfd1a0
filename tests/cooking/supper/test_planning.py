"""Plans: the rules that every one keeps, lighting, what was done, what clashes, what moves and why."""

from dataclasses import replace
from datetime import timedelta
from itertools import pairwise

import numpy as np
import pytest

from cookstove_gui.cooking.supper import planning
from cookstove_gui.cooking.supper.dishes import HandsOn, Heat, Wait
from cookstove_gui.cooking.supper.fire import Fire
from cookstove_gui.cooking.supper.jobs import OVEN_PLACES, in_kitchen
from cookstove_gui.cooking.supper.marks import Mark, OwnTime, Supper
from cookstove_gui.cooking.supper.moments import due, moments
from cookstove_gui.cooking.supper.pace import LONGEST, SHORTEST, is_paced
from cookstove_gui.cooking.supper.plan import FireStep, Margin, Plan, PlannedStep, StepKind
from cookstove_gui.cooking.supper.planning import plan_meal
from cookstove_gui.errors import InputProblem
from cookstove_gui.forecast.answers import KeptFire, Projection
from cookstove_gui.stove.stove import SpotKind
from cookstove_gui.units import kelvin
from tests.cooking.supper.made import KITCHEN, NOW, USUAL, burning, cold, dish, hands, oven, supper, wait


def _minutes(minutes: float) -> timedelta:
    return timedelta(minutes=minutes)


def _overlap(one: PlannedStep, other: PlannedStep) -> bool:
    return one.begin < other.end and other.begin < one.end


def _check(plan: Plan, wanted: Supper) -> None:
    """Every rule, from the steps as they are told."""
    hands_on = [step for step in plan.steps if step.kind is StepKind.HANDS and not step.done]
    heats = [step for step in plan.steps if step.kind is StepKind.HEAT and not step.done]
    for place, one in enumerate(hands_on):
        assert not any(_overlap(one, other) for other in hands_on[place + 1 :])
    tops = [step for step in heats if not step.spot.startswith("oven")]
    for place, one in enumerate(tops):
        assert not any(one.spot == other.spot and _overlap(one, other) for other in tops[place + 1 :])
    parts = {f"{one.key}/{number}": part for one in wanted.dishes for number, part in enumerate(one.parts)}
    inside = [step for step in heats if step.spot.startswith("oven")]
    for one in inside:
        at_once = [other for other in inside if other.begin <= one.begin < other.end]
        assert sum(getattr(parts[other.key], "places", 1) for other in at_once) <= OVEN_PLACES
    for one_dish in wanted.dishes:
        steps = plan.of_dish(one_dish.key)
        assert [step.key for step in steps] == [f"{one_dish.key}/{n}" for n in range(len(one_dish.parts))]
        for before, after in pairwise(steps):
            part = parts[before.key]
            apart = (after.begin - before.begin).total_seconds() / 60.0
            if isinstance(part, Wait):
                assert part.shortest - 5.0 <= apart <= part.longest + 5.0
            elif isinstance(part, HandsOn):
                assert part.minutes <= apart <= part.minutes + part.keeps_min + 5.0
            elif isinstance(part, Heat):
                takes = (before.end - before.begin).total_seconds() / 60.0
                assert takes - 2.5 <= apart < takes + 5.0
                assert takes == part.minutes or (is_paced(part) and SHORTEST * part.minutes <= takes + 0.5)
                assert takes <= LONGEST * part.minutes + 0.5
        late = (steps[-1].end - wanted.table_at).total_seconds() / 60.0 - one_dish.after_table
        clash = next((one for one in plan.clashes if one.dish == one_dish.key), None)
        assert late <= 5.0 or (clash is not None and clash.late_min == pytest.approx(late, abs=5.0))


@pytest.mark.parametrize("seed", range(8))
def test_every_plan_keeps_the_rules_of_its_dishes_and_of_the_kitchen(seed: int) -> None:
    random = np.random.default_rng(seed)
    keys = [str(key) for key in random.choice(list(USUAL), size=2 + seed % 4, replace=False)]
    wanted = supper(*keys, hours=float(random.uniform(1.0, 6.0)))
    fire = burning() if seed % 2 else cold(60.0, 70.0, 85.0)
    now = NOW if seed % 2 else NOW - timedelta(hours=2)
    _check(plan_meal(wanted, fire, now), wanted)


def test_a_supper_with_time_enough_is_ready_at_its_time_and_says_so() -> None:
    plan = plan_meal(supper("beef_and_barley", "greens", "apple_pie"), burning(), NOW)
    for key in ("beef_and_barley", "greens"):
        assert _minutes(-45) <= plan.of_dish(key)[-1].end - plan.table_at <= _minutes(0)
    assert plan.of_dish("apple_pie")[-1].end - plan.table_at <= _minutes(20)  # eaten after the rest, hot or cold
    assert plan.proven
    assert plan.lit
    assert all(0.0 <= step.chance <= 1.0 for step in plan.steps if step.chance is not None)


def test_the_fire_is_fed_until_the_last_that_needs_it_and_then_let_go() -> None:
    plan = plan_meal(supper("apple_pie", "greens"), burning(), NOW)
    fire = [step for step in plan.steps if step.kind is StepKind.FIRE]
    assert fire[-1].what == FireStep.LET_GO
    last = max(step.end for step in plan.steps if step.kind is StepKind.HEAT)
    assert abs(fire[-1].begin - last) <= _minutes(5)
    assert all(step.what == FireStep.WOOD for step in fire[:-1])
    assert len(fire) > 2


def test_with_nothing_lit_it_says_when_to_light_by_this_stoves_own_rises() -> None:
    early = NOW - timedelta(hours=3)
    quick = plan_meal(supper("apple_pie"), cold(40.0, 45.0, 50.0), early)
    slow = plan_meal(supper("apple_pie"), cold(100.0, 110.0, 120.0), early)
    lit = [next(step.begin for step in plan.steps if step.what == FireStep.LIGHT) for plan in (quick, slow)]
    assert _minutes(30) <= lit[0] - lit[1] <= _minutes(100)
    assert (quick.firings, quick.lit) == (3, False)
    assert plan_meal(supper("apple_pie"), cold(), early).firings == 0
    bake = quick.of_dish("apple_pie")[1]
    assert bake.begin - lit[0] >= _minutes(40)


def test_nothing_is_put_on_heat_before_the_fire_is_lit() -> None:
    plan = plan_meal(supper("griddle_cakes", "greens", hours=0.5), cold(60.0, 60.0, 60.0), NOW)
    lit = next(step.begin for step in plan.steps if step.what == FireStep.LIGHT)
    assert lit >= NOW
    assert all(step.begin >= lit for step in plan.steps if step.kind is StepKind.HEAT)


def test_a_cook_who_wants_to_be_safe_lights_sooner_and_is_told_a_surer_table() -> None:
    early = NOW - timedelta(hours=3)
    lights, told = [], []
    for margin in Margin:
        plan = plan_meal(supper("apple_pie", margin=margin), cold(50.0, 70.0, 90.0), early)
        lights.append(next(step.begin for step in plan.steps if step.what == FireStep.LIGHT))
        told.append(plan.chance or 0.0)
    assert lights[1] < lights[0]
    assert told[1] > told[0]


def test_a_heat_that_this_fire_does_not_give_is_named() -> None:
    far_too_hot = dish("kiln", hands(5), oven(20, 640, 690))
    plan = plan_meal(Supper(table_at=NOW + timedelta(hours=3), dishes=(far_too_hot,)), burning(), NOW)
    (clash,) = plan.clashes
    assert (clash.dish, clash.no_heat) == ("kiln", "kiln/1")


def test_two_that_want_the_same_hands_at_once_are_told_apart_with_the_least_change() -> None:
    one = dish("one", hands(30, keeps=0), may_wait=0.0)
    other = dish("other", hands(20, keeps=0), may_wait=0.0)
    plan = plan_meal(Supper(table_at=NOW + timedelta(minutes=32), dishes=(one, other)), burning(), NOW)
    (clash,) = plan.clashes
    # The shorter one last costs 20 min after the table, the longer one last 30.
    assert clash.dish == "other"
    assert clash.late_min == pytest.approx(20.0, abs=5.0)
    assert clash.instead == "one"
    assert clash.instead_min == pytest.approx(20.0, abs=8.0)


def test_a_dough_rises_longer_in_a_cold_kitchen() -> None:
    usual, cool = (
        in_kitchen(USUAL["bread"], kitchen).parts[1].minutes for kitchen in (KITCHEN, kelvin(57.0, "F"))
    )  # fmt: skip
    assert usual == pytest.approx(90.0)
    assert cool == pytest.approx(180.0)  # ten kelvin colder, twice as long


def test_what_is_done_stays_and_what_follows_goes_on_from_it() -> None:
    wanted = supper("bread", hours=5.0)
    plan = plan_meal(wanted, burning(), NOW)
    mixed = plan.of_dish("bread")[0]
    later = mixed.end + timedelta(minutes=12)  # kneading took twelve minutes more
    done = replace(wanted, marks=(Mark(step="bread/0", began=mixed.begin, ended=later),))
    again = plan_meal(done, burning(), later, plan)
    first, rise = again.of_dish("bread")[:2]
    assert (first.done, first.begin, first.end) == (True, mixed.begin, later)
    assert rise.begun
    assert rise.begin == later
    moved = {move.step: move for move in again.moved}
    assert all(move.why == "late" for move in moved.values())


def test_what_stands_in_the_oven_stays_until_it_is_done() -> None:
    wanted = supper("apple_pie", hours=2.0)
    plan = plan_meal(wanted, burning(), NOW)
    bake = plan.of_dish("apple_pie")[1]
    went_in = bake.begin + timedelta(minutes=2)
    inside = replace(
        wanted, marks=(Mark(step="apple_pie/0", ended=went_in), Mark(step="apple_pie/1", began=went_in))
    )  # fmt: skip
    again = plan_meal(inside, burning(), went_in + timedelta(minutes=10), plan)
    bakes = again.of_dish("apple_pie")[1]
    assert bakes.begun
    assert bakes.begin == went_in
    # In an oven below the middle of its heat it takes longer than its usual minutes.
    assert _minutes(45) < bakes.end - went_in <= _minutes(60)
    known = replace(burning(), ends={"fruit_pie": went_in + timedelta(minutes=70)})
    slow = plan_meal(inside, known, went_in + timedelta(minutes=10), plan).of_dish("apple_pie")[1]
    assert _minutes(68) <= slow.end - went_in <= _minutes(75)


def test_nothing_moves_while_everything_goes_as_planned() -> None:
    wanted = supper("beef_and_barley", "greens", "apple_pie", "rolls", hours=5.0)
    plan = plan_meal(wanted, burning(), NOW)
    first = min(step.begin for step in plan.steps if step.kind not in (StepKind.FIRE, StepKind.WAIT))
    for before in (40.0, 20.0, 3.0, -2.0):
        now = max(first - timedelta(minutes=before), NOW)
        again = plan_meal(wanted, burning(), now, plan)
        assert not [move for move in again.moved if not move.step.startswith("fire")]


def test_work_is_under_way_from_its_time_until_three_minutes_after_its_end_and_then_moves() -> None:
    wanted = supper("rolls", hours=3.0)
    plan = plan_meal(wanted, burning(), NOW)
    first = plan.of_dish("rolls")[0]
    for minutes in (0.0, 11.0):
        now = first.begin + timedelta(minutes=minutes)
        soon = plan_meal(wanted, burning(), now, plan)
        assert not [move for move in soon.moved if not move.step.startswith("fire")]
        at_work = soon.of_dish("rolls")[0]
        assert (at_work.begun, at_work.done, at_work.begin) == (True, False, first.begin)
        doing = due(soon, now)
        assert doing is not None
        assert doing.step.key == "rolls/0"
    late = plan_meal(wanted, burning(), first.end + timedelta(minutes=4), plan)
    move = next(move for move in late.moved if move.step == "rolls/0")
    assert move.why == "late"
    assert not late.of_dish("rolls")[0].begun


def test_work_after_a_wait_is_under_way_from_its_time_too_and_ends_the_wait() -> None:
    wanted = supper("bread", hours=5.0)
    mixed = plan_meal(wanted, burning(), NOW).of_dish("bread")[0]
    wanted = replace(wanted, marks=(Mark(step="bread/0", began=mixed.begin, ended=mixed.end),))
    plan = plan_meal(wanted, burning(), mixed.end)
    shape = plan.of_dish("bread")[2]
    assert shape.kind is StepKind.HANDS
    for minutes in (0.0, 8.0):
        soon = plan_meal(wanted, burning(), shape.begin + timedelta(minutes=minutes), plan)
        rise, at_work = soon.of_dish("bread")[1:3]
        assert (at_work.begun, at_work.done, at_work.begin) == (True, False, shape.begin)
        assert (rise.done, rise.end) == (True, shape.begin)
        assert not [move for move in soon.moved if move.step == shape.key]
    late = plan_meal(wanted, burning(), shape.end + timedelta(minutes=4), plan)
    assert not late.of_dish("bread")[2].begun
    assert next(move for move in late.moved if move.step == shape.key).why == "late"


def test_what_comes_while_hands_are_at_work_goes_before_the_work() -> None:
    wanted = supper("rolls", "greens", hours=3.0)
    plan = plan_meal(wanted, burning(), NOW)
    first = plan.of_dish("rolls")[0]
    during = plan_meal(wanted, burning(), first.begin + timedelta(minutes=5), plan)
    greens = next(one for one in moments(during) if one.step.dish == "greens")
    now = first.begin + timedelta(minutes=5)
    meanwhile = replace(during, steps=tuple(
        replace(step, begin=now) if step.key == greens.step.key else step for step in during.steps
    ))  # fmt: skip
    found = due(meanwhile, now)
    assert found is not None
    assert found.step.key == greens.step.key
    over = first.end + timedelta(minutes=1)  # its minutes are over: is it done?
    asked = due(replace(meanwhile, steps=tuple(replace(step, begin=over) if step.key == greens.step.key else step
                                               for step in during.steps)), over)  # fmt: skip
    assert asked is not None
    assert asked.step.key == first.key


def test_a_step_set_by_hand_begins_then() -> None:
    wanted = supper("apple_pie", "greens", hours=4.0)
    plan = plan_meal(wanted, burning(), NOW)
    wash = plan.of_dish("greens")[0]
    begin = wash.begin - timedelta(minutes=30)
    again = plan_meal(replace(wanted, own=(OwnTime(step="greens/0", begin=begin),)), burning(), NOW, plan)
    step = again.of_dish("greens")[0]
    assert step.is_own
    assert step.begin == begin
    assert next(move.why for move in again.moved if move.step == "greens/0") == "own"


def test_an_empty_meal_is_told() -> None:
    with pytest.raises(InputProblem, match="no dish"):
        plan_meal(Supper(table_at=NOW, dishes=()), burning(), NOW)


def test_a_dish_that_wants_the_falling_oven_is_not_fed_for() -> None:
    cooling = dish("beans", oven(60, 250, 340, falling=True), may_wait=0.0)
    pie = dish("pie", oven(45, 385, 450), may_wait=60.0)
    wanted = Supper(table_at=NOW + timedelta(hours=3), dishes=(cooling, pie))
    plan = plan_meal(wanted, burning(), NOW)
    let_go = next(step.begin for step in plan.steps if step.what == FireStep.LET_GO)
    assert abs(let_go - plan.of_dish("pie")[-1].end) <= _minutes(5)
    assert let_go < plan.of_dish("beans")[0].end


def test_a_rest_between_two_jobs_stays_within_its_limits() -> None:
    rested = dish("rested", hands(10, keeps=0), wait(20, 10, 60), hands(5, keeps=0), may_wait=0.0)
    plan = plan_meal(Supper(table_at=NOW + timedelta(hours=1), dishes=(rested,)), burning(), NOW)
    _check(plan, Supper(table_at=plan.table_at, dishes=(rested,)))


def test_a_step_under_way_is_no_chance_any_more() -> None:
    pie = dish("pie", hands(10), oven(40, 300, 420))
    wanted = Supper(table_at=NOW + timedelta(hours=1), dishes=(pie,))
    ahead = plan_meal(wanted, burning(), NOW)
    assert ahead.of_dish("pie")[1].chance is not None
    assert ahead.chance is not None
    marks = (Mark(step="pie/0", began=NOW - _minutes(12), ended=NOW - _minutes(2)), Mark(step="pie/1", began=NOW))
    within = plan_meal(replace(wanted, marks=marks), burning(), NOW)
    assert within.of_dish("pie")[1].chance is None
    assert within.chance is None


def test_a_rest_that_may_be_shorter_gives_the_heat_before_it_time() -> None:
    # The oven is at some 340 °F; the bake may begin half an hour later, for the rest after it may be so much shorter.
    roast = dish("roast", oven(20, 250, 450), wait(40, 10, 60))
    plan = plan_meal(Supper(table_at=NOW + timedelta(minutes=70), dishes=(roast,)), burning(), NOW)
    assert plan.chance is not None
    assert plan.chance > 0.5


def test_the_fire_is_thought_of_as_the_plan_before_has_it_if_the_dishes_are_the_same(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    asked: list[float] = []
    real = planning.futures

    def noted(fire: Fire, kept: KeptFire | None, horizon: float, kinds: set[SpotKind]) -> tuple[Projection, int]:
        asked.append(horizon)
        return real(fire, kept, horizon, kinds)

    monkeypatch.setattr(planning, "futures", noted)
    wanted = supper("apple_pie")

    def horizon(before: Plan | None) -> float:
        asked.clear()
        plan_meal(wanted, burning(), NOW, before)
        return asked[0]

    before = plan_meal(wanted, burning(), NOW)
    # 58 minutes are no whole number of the slots in which a plan is looked for
    steps = tuple(replace(one, begin=one.begin - _minutes(58), end=one.end - _minutes(58)) for one in before.steps)
    earlier = replace(before, steps=steps)
    assert horizon(earlier) == pytest.approx(horizon(before) - 58.0)
    changed = replace(earlier, dishes=(*earlier.dishes, USUAL["greens"]))
    assert horizon(changed) != pytest.approx(horizon(before) - 58.0)


def test_the_fire_is_lit_for_the_oven_to_have_come_to_its_heat_whether_or_not_it_is_seen_to_stay() -> None:
    """Rises of an hour: lit later than that before the bake would miss it half of the time."""
    early = NOW - timedelta(hours=3)
    plan = plan_meal(supper("apple_pie"), cold(*[60.0] * 12), early)
    lit = next(step.begin for step in plan.steps if step.what == FireStep.LIGHT)
    assert _minutes(60) <= plan.of_dish("apple_pie")[1].begin - lit <= _minutes(110)
