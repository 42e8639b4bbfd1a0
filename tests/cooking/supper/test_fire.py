"""The fire of a planned meal: how long the next rise may be, when the first load goes on, and how much of it."""

import math
from dataclasses import replace
from datetime import timedelta
from statistics import NormalDist

import numpy as np
import pytest

from cookstove_gui.cooking.fires.rise_and_hold import RiseAndHold
from cookstove_gui.cooking.supper.fire import KINDLING_CATCHES, fire_steps, rise_sample
from cookstove_gui.cooking.supper.plan import FireStep, PlannedStep
from cookstove_gui.forecast.answers import Action, ActionKind
from cookstove_gui.forecast.model.habits import KINDLING_WAIT
from tests.cooking.supper.made import MODERATE, NOW, burning, cold

LET_GO = NOW + timedelta(hours=3)


def rises(*minutes: float) -> RiseAndHold:
    return RiseAndHold(band=MODERATE, rises=minutes, holds=())


def wood(steps: tuple[PlannedStep, ...]) -> list[PlannedStep]:
    return [step for step in steps if step.what == FireStep.WOOD]


def test_the_next_rise_may_be_slower_than_every_one_of_a_few() -> None:
    sample = rise_sample(rises(50.0, 55.0, 60.0))
    assert 0.1 < np.mean(sample > 60.0) < 0.4
    assert 0.1 < np.mean(sample < 50.0) < 0.4
    assert np.median(sample) == pytest.approx((50.0 * 55.0 * 60.0) ** (1 / 3), rel=0.01)


def test_many_alike_leave_less_doubt_and_unlike_ones_more() -> None:
    def spread(*minutes: float) -> float:
        low, high = np.quantile(np.log(rise_sample(rises(*minutes))), (0.1, 0.9))
        return float(high - low)

    assert spread(*[60.0] * 12) < spread(60.0, 60.0, 60.0) < spread(60.0)
    assert spread(30.0, 60.0, 120.0) > spread(55.0, 60.0, 65.0)


def test_with_no_rise_seen_it_is_the_usual_one_as_lognormal_quantiles() -> None:
    """Against the quantiles of the normal distribution of Python's own library."""
    sample = rise_sample(rises())
    usual = NormalDist(math.log(75.0), 0.3 * math.sqrt(2.0))
    for level in (0.1, 0.5, 0.9):
        assert np.log(np.quantile(sample, level)) == pytest.approx(usual.inv_cdf(level), abs=0.03)


def test_a_load_is_this_cooks_usual_one_counted_in_splits() -> None:
    fire = burning()
    first = wood(fire_steps(fire, NOW, LET_GO, NOW))[0]
    assert first.wood == pytest.approx(math.exp(fire.belief.habits.mass_log))
    assert first.splits == max(round((first.wood or 0.0) / 1.1), 1)


@pytest.mark.parametrize("due_in", [0.0, 60.0, None])
def test_the_first_load_waits_until_the_kindling_has_caught_and_no_longer_than_is_usual(due_in: float | None) -> None:
    belief = cold(60.0).belief
    assert belief.lit_at is not None
    reload_at = None if due_in is None else belief.lit_at + timedelta(minutes=due_in)
    fire = replace(cold(60.0), lit=True, reload_at=reload_at)
    usual = KINDLING_WAIT * math.exp(belief.habits.interval_log)
    begin = wood(fire_steps(fire, belief.lit_at, belief.lit_at + timedelta(hours=3), belief.lit_at))[0].begin
    waits = (begin - belief.lit_at) / timedelta(minutes=1)
    expected = KINDLING_CATCHES if due_in == 0.0 else usual
    assert waits == pytest.approx(expected, abs=1.0)


def test_what_helps_is_a_step_for_now_and_says_so() -> None:
    air = fire_steps(burning(), NOW, LET_GO, NOW, Action(kind=ActionKind.AIR, value=0.3))
    (step,) = [one for one in air if one.what == FireStep.AIR]
    assert (step.begin, step.opening, step.helps, step.key) == (NOW, 0.3, True, "fire/air/30")
    assert not any(one.helps for one in air if one is not step)
    loads = wood(fire_steps(burning(), NOW, LET_GO, NOW, Action(kind=ActionKind.WOOD, value=1.0)))
    assert loads[0].begin == NOW
    assert [one.helps for one in loads] == [True, *[False] * (len(loads) - 1)]


def test_half_a_load_is_planned_as_half_and_one_that_is_left_out_leaves_the_next_for_an_interval_later() -> None:
    fire = replace(burning(), reload_at=NOW)
    load = math.exp(fire.belief.habits.mass_log)
    half, *rest = wood(fire_steps(fire, NOW, LET_GO, NOW, Action(kind=ActionKind.WOOD, value=0.5 * load)))
    assert half.wood == pytest.approx(0.5 * load)
    assert all(one.wood == pytest.approx(load) for one in rest)
    later = wood(fire_steps(fire, NOW, LET_GO, NOW, Action(kind=ActionKind.WOOD, value=0.0)))
    every = math.exp(fire.belief.habits.interval_log)
    assert (later[0].begin - NOW) / timedelta(minutes=1) == pytest.approx(every, abs=1.0)
    assert not any(one.helps for one in later)


def test_nothing_is_done_to_a_fire_that_nobody_needs() -> None:
    assert fire_steps(burning(), NOW, None, NOW) == ()
