"""A bake's length and end follow the oven as it is and will be."""

from dataclasses import replace
from datetime import datetime, timedelta

import numpy as np
import pytest

from cookstove_gui.cooking.supper.dishes import Dish
from cookstove_gui.cooking.supper.fire import Fire
from cookstove_gui.cooking.supper.marks import Mark, Supper
from cookstove_gui.cooking.supper.pace import usable_from
from cookstove_gui.cooking.supper.plan import Plan, PlannedStep
from cookstove_gui.cooking.supper.planning import plan_meal
from cookstove_gui.forecast.tracking.lookback import TracePoint
from tests.cooking.supper.made import NOW, burning, dish, oven

PIE = dish("pie", oven(45.0, 350.0, 400.0))  # in an oven that is at some 340 °F and goes up to 440 within the hour
PIZZA = dish("pie", oven(45.0, 430.0, 480.0))


def planned(
    in_min: float,
    fire: Fire | None = None,
    marks: tuple[Mark, ...] = (),
    before: Plan | None = None,
    what: Dish = PIE,
) -> Plan:
    """The pie on the table so long from now."""
    wanted = Supper(table_at=NOW + timedelta(minutes=in_min), dishes=(what,), marks=marks)
    return plan_meal(wanted, fire or burning(), NOW, before)


def bake(plan: Plan) -> PlannedStep:
    return next(step for step in plan.steps if step.key == "pie/0")


def minutes(plan: Plan) -> float:
    return (bake(plan).end - bake(plan).begin).total_seconds() / 60.0


def test_soon_it_takes_longer_in_a_cool_oven_and_less_in_a_hot_one_and_far_ahead_its_usual_minutes() -> None:
    cool, hot = planned(80.0, what=PIZZA), planned(80.0)
    assert minutes(cool) > 47.0
    assert minutes(hot) < 44.0
    assert minutes(planned(300.0)) == minutes(planned(300.0, what=PIZZA)) == pytest.approx(45.0)
    assert abs(bake(cool).end - cool.table_at) <= timedelta(minutes=5)


def hot_since(began: datetime, kelvin_oven: float) -> Fire:
    """The same fire, its oven having been believed at one heat since then."""
    fire = burning()
    points = tuple(TracePoint(at=at, p10=kelvin_oven, p50=kelvin_oven, p90=kelvin_oven) for at in (began, NOW))
    return replace(fire, belief=replace(fire.belief, points=points))


def test_what_is_in_is_done_by_the_heat_that_it_had() -> None:
    began = NOW - timedelta(minutes=30)
    marks = (Mark(step="pie/0", began=began),)
    cool, hot = (planned(30.0, hot_since(began, heat), marks) for heat in (420.0, 500.0))
    assert bake(hot).end < bake(cool).end
    ready = (Mark(step="pie/0", began=NOW - timedelta(minutes=44)),)
    done = planned(30.0, hot_since(NOW - timedelta(minutes=44), 480.0), ready)
    assert bake(done).end == NOW


def test_a_length_that_hardly_differs_stays_as_it_was_planned() -> None:
    first = planned(70.0)

    def with_length(more: float) -> Plan:
        steps = tuple(
            replace(step, end=step.end + timedelta(minutes=more)) if step.key == "pie/0" else step
            for step in first.steps
        )
        return replace(first, steps=steps)

    again = {more: minutes(planned(70.0, before=with_length(more))) for more in (2.0, 12.0)}
    assert again[2.0] == pytest.approx(minutes(first) + 2.0, abs=1.0)
    assert again[12.0] == pytest.approx(minutes(first), abs=2.0)


def test_to_begin_before_the_oven_is_at_its_heat_gains_nothing() -> None:
    """Usable from 325 °F on: 25 below its heat."""
    clock = np.arange(0.0, 61.0, 5.0)
    rising = 400.0 + 2.0 * clock  # K; 436 K is 325 °F
    starts = np.array([0.0, 10.0, 17.0, 20.0, 33.0])
    assert usable_from(clock, rising, PIE.parts[0], starts).tolist() == [20.0, 20.0, 20.0, 20.0, 33.0]
    assert usable_from(clock, 0.0 * clock + 300.0, PIE.parts[0], starts).tolist() == [np.inf] * 5
    each = np.stack((rising, 0.0 * clock + 300.0, rising[::-1]))  # a path for each start
    assert usable_from(clock, each, PIE.parts[0], np.array([0.0, 0.0, 40.0])).tolist() == [20.0, np.inf, 40.0]
