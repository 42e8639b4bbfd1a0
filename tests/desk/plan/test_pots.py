"""Pots at once: a place now, a place later, or why there is none."""

from dataclasses import replace
from datetime import timedelta

import pytest

from cookstove_gui.cooking.fit.fit import FitState, SpotFit, TaskFit
from cookstove_gui.cooking.fit.placement import Pot
from cookstove_gui.cooking.fit.tasks import Place, catalogue, task_of
from cookstove_gui.desk.plan.kept_pots import KeptPots, moved
from cookstove_gui.desk.plan.pots import PotsInputs, headline_of, place_words, plan_pots, pot_options, reasons_of
from cookstove_gui.phrases.edge import Edge
from cookstove_gui.situation import Standing
from cookstove_gui.stove.stove import Stove


def fit(key: str, *spots: tuple[str, float, float | None, float], state: FitState = FitState.NOW) -> TaskFit:
    """A task with its spots, best first: name, chance now, when it will be good, and the chance then."""
    task = task_of(key)
    assert task is not None
    return TaskFit(
        task=task,
        state=state,
        spots=tuple(SpotFit(spot=s, chance_now=now, in_min=in_min, chance_then=then) for s, now, in_min, then in spots),
    )


def asked(standing: Standing, stove: Stove, *keys: str) -> PotsInputs:
    return PotsInputs(standing=standing, stove=stove, kept=KeptPots(pots=tuple(Pot(task=key) for key in keys)))


@pytest.fixture
def plan(stands):
    stove, standing = stands

    def planned(*fits: TaskFit):
        return plan_pots(asked(replace(standing, fits=fits), stove, *(one.task.key for one in fits))).rows

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
    plan = plan_pots(asked(replace(standing, fits=(boil,), zones=zones), stove, "boil"))
    assert [row.why_not for row in plan.rows] == [why]
    reasons = reasons_of(plan, replace(standing, zones=zones), Edge(unit="F", now=standing.now, offset_minutes=0))
    assert [text.startswith("Boil: 425 to 700 °F is wanted") for text in reasons] == ([True] if heat else [])


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
    assert plan_pots(asked(replace(standing, fits=()), stove, "boil")).rows == ()


EGGS = fit("fry_eggs", ("top_front_left", 0.9, 0.0, 0.9), ("top_front_right", 0.6, 0.0, 0.6))
TURNED = fit("fry_eggs", ("top_front_right", 0.9, 0.0, 0.9), ("top_front_left", 0.6, 0.0, 0.6))
GONE = fit("fry_eggs", ("top_front_right", 0.4, None, 0.0), ("top_front_left", 0.3, None, 0.0), state=FitState.NOT)


@pytest.fixture
def later(stands):
    """Plans again some minutes later, with other chances and as many rows more."""
    stove, standing = stands
    first = plan_pots(asked(replace(standing, fits=(EGGS,)), stove, "fry_eggs"))

    def planned(found: TaskFit, minutes: float, more_rows: int = 0):
        last = standing.rows[-1]
        rows = (*standing.rows, *(replace(last, number=last.number + 1 + more) for more in range(more_rows)))
        now = standing.now + timedelta(minutes=minutes)
        after = replace(standing, fits=(found,), now=now, rows=rows)
        return plan_pots(PotsInputs(standing=after, stove=stove, kept=first.kept))

    return planned


@pytest.mark.parametrize(
    ("minutes", "more_rows", "moves"), [(2, 0, False), (14, 0, False), (15, 0, True), (2, 1, True)]
)
def test_a_place_changes_only_after_something_was_done_or_a_while(later, minutes, more_rows, moves):
    plan = later(TURNED, minutes, more_rows)
    (row,) = plan.rows
    assert row.moves is moves
    assert row.spot == ("top_front_right" if moves else "top_front_left")
    if moves:
        assert plan.gain == pytest.approx(0.3)
        assert headline_of(plan) == "Move “fry eggs” to front right now: 3 in 10 more chance."
        assert place_words(row) == "front left, move it to front right"


def test_a_move_that_is_done_stays_done(later, stands):
    stove, standing = stands
    done = moved(later(TURNED, 2, 1).kept)
    (row,) = plan_pots(PotsInputs(standing=replace(standing, fits=(TURNED,)), stove=stove, kept=done)).rows
    assert (row.spot, row.moves) == ("top_front_right", False)


def test_a_pot_that_stands_where_it_has_no_place_any_more_says_why(later):
    (row,) = later(GONE, 2, 1).rows
    assert (row.spot, row.stands, row.moves) == ("", "top_front_left", False)
    assert row.why_not


def test_two_pots_of_the_same_task_are_two_pots(stands):
    stove, standing = stands
    plan = plan_pots(asked(replace(standing, fits=(EGGS,)), stove, "fry_eggs", "fry_eggs"))
    assert sorted(row.spot for row in plan.rows) == ["top_front_left", "top_front_right"]


def test_tasks_of_the_cooktop_are_offered_first():
    options = pot_options()
    assert len(options) == len(catalogue())
    tops = sum(task.place is Place.TOP for task in catalogue())
    assert [name.endswith("(oven)") for _, name in options] == [False] * tops + [True] * (len(options) - tops)
