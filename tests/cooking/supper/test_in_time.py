"""In which futures a bake is done in time, on ovens made by hand."""

from dataclasses import replace
from datetime import timedelta

import numpy as np
import pytest

from cookstove_gui.cooking.supper.dishes import Heat
from cookstove_gui.cooking.supper.in_time import is_in_time
from cookstove_gui.cooking.supper.marks import OwnTime, Supper
from cookstove_gui.cooking.supper.planning import plan_meal
from cookstove_gui.units import kelvin
from tests.cooking.supper.made import NOW, burning, cold, dish, oven

CLOCK = np.arange(0.0, 181.0, 5.0)
BAKE = oven(45.0, 350.0, 400.0)  # in at 20, done at 65
FIRE = cold(60.0, 70.0, 80.0)
ROAST = replace(BAKE, task="roast_meat", low=None, high=None)


def there_at(minute: float, then: float = 375.0) -> np.ndarray:
    """An oven in °F that comes to its heat at once."""
    return np.where(minute <= CLOCK, then, 100.0)


def share(
    oven_f: np.ndarray, heat: Heat = BAKE, least: float = 65.0, most: float = 65.0, numbers: tuple[int, ...] = (0,)
) -> float:
    """How many of four hundred futures with this one oven are in time, or in time with all bakes of these numbers."""
    ovens = kelvin(np.repeat(oven_f[None], 400, axis=0), "F")
    held = [is_in_time(CLOCK, ovens, heat, 20.0, least, most, number) for number in numbers]
    return float(np.all(held, axis=0).mean())


def test_the_later_an_oven_comes_to_its_heat_the_less_it_is_in_time_but_for_the_slack_of_its_dish() -> None:
    shares = [share(there_at(minute)) for minute in (0.0, 30.0, 35.0, 45.0)]
    assert shares == sorted(shares, reverse=True)
    assert shares[0] > 0.95
    assert 0.3 < shares[2] < 0.8
    assert shares[3] < 0.1
    assert share(there_at(45.0), most=80.0) > 0.75


def test_late_food_is_made_up_for_at_the_top_of_its_heat_as_far_as_that_goes() -> None:
    """375 °F in a band of 350 to 400 gains six minutes of 45; in one of 374 to 376 none."""
    narrow = oven(45.0, 374.0, 376.0)
    assert share(there_at(35.0), heat=narrow) < 0.25
    assert share(there_at(35.0)) > share(there_at(35.0), heat=narrow) + 0.25


def test_a_bake_done_long_before_its_time_is_not_in_time_unless_it_may_wait_or_is_slowed() -> None:
    assert share(there_at(0.0), least=90.0, most=90.0) < 0.15
    assert share(there_at(0.0), least=70.0, most=90.0) > 0.9
    assert share(there_at(0.0), least=80.0, most=80.0) > 0.6  # at the bottom of its heat it takes eight minutes more
    assert share(there_at(0.0), heat=oven(45.0, 374.0, 376.0), least=80.0, most=80.0) < 0.25


def test_an_oven_that_never_comes_to_its_heat_bakes_nothing_in_time() -> None:
    assert share(0.0 * CLOCK + 320.0, least=0.0, most=500.0) == 0.0
    assert share(there_at(0.0, 326.0), least=0.0, most=500.0) == 1.0


def test_an_oven_that_was_at_its_heat_before_is_held_there_but_not_at_the_hottest_it_touched() -> None:
    falls = np.where(CLOCK <= 10.0, 375.0, 300.0)
    assert share(falls, least=0.0, most=500.0) == 1.0
    touches = np.where(CLOCK <= 10.0, 335.0, 300.0)  # 325 °F is counted on
    assert share(touches, least=0.0, most=500.0) == 0.0


def test_most_of_a_wrong_heat_is_corrected_and_not_all_of_it() -> None:
    """At 330 °F the bake alone would take 17 minutes more of 45, and 46 more of two hours."""
    cool = there_at(0.0, 330.0)
    long = replace(BAKE, minutes=120.0)
    assert share(cool) > 0.9
    assert share(cool, heat=long, least=130.0, most=130.0) > 0.75
    fails = there_at(0.0) - np.where(CLOCK >= 30.0, 300.0, 0.0)  # the fire dies as soon as the food is in
    assert share(fails, heat=long, least=130.0, most=130.0) < 0.2


def test_what_no_future_knows_of_one_bake_says_nothing_of_the_next() -> None:
    once, twice = share(there_at(35.0)), share(there_at(35.0), numbers=(0, 1))
    assert twice == pytest.approx(once**2, abs=0.06)
    assert share(there_at(35.0), numbers=(1, 1)) == share(there_at(35.0), numbers=(1,))


def test_food_that_may_never_be_cooler_is_not_while_it_bakes() -> None:
    dips = there_at(0.0, 330.0) - np.where((CLOCK >= 40.0) & (CLOCK < 50.0), 60.0, 0.0)
    until = 20.0 + ROAST.minutes
    assert share(there_at(0.0, 330.0), heat=ROAST, least=until, most=until) > 0.9
    assert share(dips, heat=ROAST, least=until, most=until) == 0.0
    late = there_at(0.0, 330.0) - np.where(CLOCK >= 140.0, 60.0, 0.0)  # the bake is over by then
    assert share(late, heat=ROAST, least=until, most=until) > 0.9


def test_a_plan_tells_how_often_its_bake_is_in_time() -> None:
    pie = dish("pie", BAKE)
    # An oven at some 340 °F; or rises that are known, with their spread.
    for minutes, fire, least in ((60.0, burning(), 0.8), (300.0, FIRE, 0.55)):
        plan = plan_meal(Supper(table_at=NOW + timedelta(minutes=minutes), dishes=(pie,)), fire, NOW)
        assert plan.chance == plan.of_dish("pie")[0].chance
        assert plan.chance is not None
        assert plan.chance > least


def test_a_rise_that_spreads_more_is_less_sure_of_its_time() -> None:
    wanted = Supper(table_at=NOW + timedelta(hours=5), dishes=(dish("pie", BAKE),))
    narrow, wide = (plan_meal(wanted, cold(*rises), NOW).chance for rises in ([70.0] * 6, [30.0, 50.0, 70.0, 160.0]))
    assert narrow is not None
    assert wide is not None
    assert narrow > wide + 0.05


def test_a_bake_that_was_set_earlier_than_need_be_may_come_later() -> None:
    unsure = cold(30.0, 50.0, 70.0, 160.0)
    pie, table = dish("pie", BAKE, may_wait=0.0), NOW + timedelta(hours=5)
    just_then, early = (
        plan_meal(Supper(table_at=table, dishes=(pie,), own=(OwnTime(step="pie/0", begin=begin),)), unsure, NOW)
        for begin in (table - timedelta(minutes=45), table - timedelta(minutes=75))
    )
    assert just_then.chance is not None
    assert early.chance is not None
    assert early.chance > just_then.chance + 0.05


@pytest.mark.parametrize("evenness", [0.0, 1000.0])
def test_a_bake_in_an_oven_too_uneven_for_it_is_not_as_planned(evenness: float) -> None:
    pie = dish("pie", replace(BAKE, evenness=evenness))
    plan = plan_meal(Supper(table_at=NOW + timedelta(hours=1), dishes=(pie,)), burning(), NOW)
    assert plan.chance is not None
    assert (plan.chance > 0.5) == (evenness > 0.0)


def test_a_dish_that_may_wait_is_in_time_where_it_is_done_too_soon() -> None:
    """At one heat alone nothing is to be slowed down."""
    told = []
    for may_wait in (0.0, 30.0):
        pie = dish("pie", oven(45.0, 374.0, 376.0), may_wait=may_wait)
        plan = plan_meal(Supper(table_at=NOW + timedelta(hours=5), dishes=(pie,)), FIRE, NOW)
        told.append(plan.chance or 0.0)
    assert told[1] > told[0] + 0.02
