"""What is left of a plan: a dish that only cools is ready by itself, and nothing is late that was ready in time."""

from dataclasses import replace
from datetime import UTC, datetime, timedelta

import pytest

from cookstove_gui.cooking.fit.tasks import Place
from cookstove_gui.cooking.supper.dishes import Dish, Heat, Wait
from cookstove_gui.cooking.supper.left import clashes_left, oven_steps
from cookstove_gui.cooking.supper.plan import Clash, Margin, Plan, PlannedStep, StepKind

TABLE = datetime(2026, 1, 5, 18, 30, tzinfo=UTC)
BREAD = Dish(
    key="bread",
    name="Bread",
    parts=(
        Heat(what="bake", place=Place.OVEN, minutes=45, task="bread"),
        Wait(what="cool", minutes=60, shortest=30, longest=240),
    ),
)
LATE = Clash(dish="bread", late_min=25.0)


def cooling(out_min: float, *, done: bool = True, clash: Clash = LATE) -> Plan:
    """A loaf that came out so many minutes before the table's time, and cools since."""
    out = TABLE - timedelta(minutes=out_min)
    times = ((out - timedelta(minutes=45), out), (out, TABLE + timedelta(minutes=25)))
    kinds, words = (StepKind.HEAT, StepKind.WAIT), ("bake", "cool")
    steps = tuple(
        PlannedStep(
            key=f"bread/{place}", kind=kinds[place], what=words[place], dish="bread", begin=times[place][0],
            end=times[place][1], done=done and place == 0, begun=place == 1 or not done,
        )
        for place in (0, 1)
    )  # fmt: skip
    return Plan(
        table_at=TABLE, made_at=TABLE, margin=Margin.USUAL, dishes=(BREAD,), steps=steps, chance=None, clashes=(clash,)
    )


@pytest.mark.parametrize(("out_min", "late"), [(60.0, None), (30.0, None), (28.0, None), (20.0, 10.0), (0.0, 30.0)])
def test_what_only_cools_is_late_by_its_shortest_cooling_and_not_by_how_long_it_stands(
    out_min: float, late: float | None
) -> None:
    found = clashes_left(cooling(out_min))
    assert [one.late_min for one in found] == ([] if late is None else [late])


def test_what_is_eaten_after_the_table_is_late_by_its_own_time() -> None:
    plan = cooling(0.0)
    later = replace(plan, dishes=(replace(BREAD, after_table=20.0),))
    assert [one.late_min for one in clashes_left(later)] == [10.0]


def test_what_still_bakes_is_late_as_it_is_planned() -> None:
    assert clashes_left(cooling(60.0, done=False)) == (LATE,)


def test_a_heat_that_is_missing_is_told_all_the_same() -> None:
    cold = Clash(dish="bread", late_min=25.0, no_heat="bread/0")
    (found,) = clashes_left(cooling(60.0, clash=cold))
    assert (found.late_min, found.no_heat) == (0.0, "bread/0")


def test_the_oven_is_wanted_until_what_is_in_it_is_done() -> None:
    assert [step.key for step, _ in oven_steps(cooling(60.0, done=False))] == ["bread/0"]
    assert list(oven_steps(cooling(60.0))) == []
