"""Pots at once: a place now, a place later, or why there is none."""

from dataclasses import replace

import pytest

from cookstove_gui.cooking.fit.fit import FitState, SpotFit, TaskFit
from cookstove_gui.cooking.fit.tasks import Place, catalogue, task_of
from cookstove_gui.desk.plan.pots import PotsInputs, plan_pots, pot_options


def fit(key: str, *spots: tuple[str, float, float | None, float], state: FitState = FitState.NOW) -> TaskFit:
    """A task with its spots, best first: name, chance now, when it will be good, and the chance then."""
    task = task_of(key)
    assert task is not None
    return TaskFit(
        task=task,
        state=state,
        spots=tuple(SpotFit(spot=s, chance_now=now, in_min=in_min, chance_then=then) for s, now, in_min, then in spots),
    )


@pytest.fixture
def plan(stands):
    stove, standing = stands

    def planned(*fits: TaskFit):
        keys = tuple(one.task.key for one in fits)
        return plan_pots(PotsInputs(standing=replace(standing, fits=fits), stove=stove, keys=keys))

    return planned


def test_each_pot_gets_the_spot_that_serves_all_best(plan):
    eggs = fit("fry_eggs", ("top_front_left", 0.9, 0.0, 0.9), ("top_front_right", 0.8, 0.0, 0.8))
    bacon = fit("fry_bacon", ("top_front_left", 0.85, 0.0, 0.85), ("top_front_right", 0.1, None, 0.0))
    rows = plan(eggs, bacon)
    assert [(row.task.key, row.spot, row.label, row.chance) for row in rows] == [
        ("fry_eggs", "top_front_right", "front right", 0.8),
        ("fry_bacon", "top_front_left", "front left", 0.85),
    ]


@pytest.mark.parametrize(("chance", "placed"), [(0.5, True), (0.49, False)])
def test_below_an_even_chance_there_is_no_place(plan, chance, placed):
    (row,) = plan(fit("boil", ("top_front_left", chance, None, 0.0), state=FitState.NOT))
    assert bool(row.spot) is placed
    assert bool(row.why_not) is not placed


@pytest.mark.parametrize(("heat", "why"), [(900.0, "too hot"), (300.0, "too cool"), (None, "not steady enough")])
def test_a_pot_without_a_place_is_told_what_is_wrong_with_its_spots(stands, heat, why):
    stove, standing = stands
    boil = fit("boil", ("top_front_left", 0.3, None, 0.0), ("top_front_right", 0.2, None, 0.0), state=FitState.NOT)
    middle = 0.5 * (boil.task.low + boil.task.high)
    zones = {name: replace(zone, p50=heat or middle) for name, zone in standing.zones.items()}
    asked = PotsInputs(standing=replace(standing, fits=(boil,), zones=zones), stove=stove, keys=("boil",))
    assert [row.why_not for row in plan_pots(asked)] == [why]


def test_a_spot_of_the_right_heat_may_be_too_uneven(plan):
    boil = fit("boil", ("top_front_left", 0.1, None, 0.0), state=FitState.NOT)
    (row,) = plan(replace(boil, spots=(replace(boil.spots[0], uneven_now=0.6),)))
    assert row.why_not == "too uneven"


@pytest.mark.parametrize(("then", "named"), [(0.6, True), (0.59, False)])
def test_a_later_place_is_named_if_it_is_likely(plan, then, named):
    (row,) = plan(fit("boil", ("top_front_left", 0.0, 25.0, then), state=FitState.LATER))
    assert (row.later_spot, row.later_min) == (("front left", 25.0) if named else ("", None))
    assert bool(row.why_not) is not named
    assert row.spot == ""


def test_a_pot_crowded_out_is_told_that_its_spots_are_taken(plan):
    rows = plan(*(fit(key, ("top_front_left", chance, 0.0, chance)) for key, chance in (("boil", 0.9), ("sear", 0.7))))
    assert [row.why_not for row in rows] == ["", "its spots are taken"]


def test_the_oven_is_shared_and_called_so(plan):
    rows = plan(*(fit(key, ("oven_centre", 0.8, 0.0, 0.8)) for key in ("bread", "pie")))
    assert [(row.spot, row.label) for row in rows] == [("oven_centre", "oven")] * 2


def test_what_the_stove_does_not_answer_is_left_out(plan, stands):
    stove, standing = stands
    inputs = PotsInputs(standing=replace(standing, fits=()), stove=stove, keys=("boil",))
    assert plan_pots(inputs) == ()


def test_tasks_of_the_cooktop_are_offered_first():
    options = pot_options()
    assert len(options) == len(catalogue())
    tops = sum(task.place is Place.TOP for task in catalogue())
    assert [name.endswith("(oven)") for _, name in options] == [False] * tops + [True] * (len(options) - tops)
