"""Pots at once: a place now, a place later, or why there is none."""

from dataclasses import replace
from datetime import timedelta

import numpy as np
import pytest

from cookstove_gui.cooking.fit.fit import FitState, SpotFit, TaskFit, fits
from cookstove_gui.cooking.fit.placement import Pot
from cookstove_gui.cooking.fit.tasks import Place, catalogue, task_of
from cookstove_gui.desk.plan.kept_pots import KeptPots, moved
from cookstove_gui.desk.plan.pots import (
    PotsInputs,
    headline_of,
    line_of,
    next_spot,
    plan_pots,
    pot_options,
    reasons_of,
)
from cookstove_gui.desk.plan.pots_draw import beside_pots, fits_together, oven_cost
from cookstove_gui.phrases.edge import Edge
from cookstove_gui.situation import Standing
from cookstove_gui.stove.checking import check_entry
from cookstove_gui.stove.stove import SpotKind, Stove
from cookstove_gui.units import kelvin
from tests.phrases.facts import EDGE


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
    """Of made-up fits: nothing is projected of the cooktop, so that none is worked out anew."""
    oven = standing.projection.spots.index("oven_centre")
    only_oven = replace(
        standing.projection, spots=("oven_centre",), kelvin=standing.projection.kelvin[:, :, oven : oven + 1]
    )
    standing = replace(standing, projection=only_oven)
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
        assert headline_of(plan, EDGE)[0] == "Move “fry eggs” to the front right now: 3 in 10 more chance."
        assert line_of(row, EDGE).where.startswith("move it from the front left to the front right now")


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


def named(row):
    """Everything about a pot's place in words and numbers."""
    return (row.spot, row.label, row.stands, row.stands_label, row.is_own, round(row.chance, 3))


def test_a_pot_that_moves_names_both_places(later):
    (row,) = later(TURNED, 2, 1).rows
    assert named(row) == ("top_front_right", "front right", "top_front_left", "front left", False, 0.9)


def test_a_pot_that_stands_without_a_place_names_where_it_stands(later):
    (row,) = later(GONE, 2, 1).rows
    assert named(row) == ("", "", "top_front_left", "front left", False, 0.0)
    assert line_of(row, EDGE).on_pot == row.why_not == "too hot"


def own_choice(stands, chance):
    stove, standing = stands
    found = fit("boil", ("top_front_left", 0.9, 0.0, 0.9), ("top_front_right", chance, None, 0.0))
    kept = KeptPots(pots=(Pot(task="boil", spot="top_front_right", is_own=True),))
    return plan_pots(PotsInputs(standing=replace(standing, fits=(found,)), stove=stove, kept=kept))


def test_the_cooks_own_choice_stays_however_unlikely(stands):
    plan = own_choice(stands, 0.1)
    (row,) = plan.rows
    assert named(row) == ("top_front_right", "front right", "", "", True, 0.1)
    assert line_of(row, EDGE).where == "front right, your choice"
    assert plan.gain == 0.0


def test_what_has_a_place_later_names_it(plan):
    (row,) = plan(fit("boil", ("top_front_left", 0.0, 25.0, 0.9), state=FitState.LATER))
    assert (row.later_spot, row.later_at, row.later_min) == ("front left", "top_front_left", 25.0)
    assert line_of(row, EDGE).where.startswith("front left, from ")
    assert row.why_not == ""


def test_what_is_good_now_but_without_a_place_has_none_later(plan):
    (row,) = plan(fit("boil", ("top_front_left", 0.3, 0.0, 0.9)))
    assert (row.later_min, bool(row.why_not)) == (None, True)


def test_what_first_fires_refuse_says_so(plan):
    (row,) = plan(fit("boil", ("top_front_left", 0.0, None, 0.0), state=FitState.REFUSED))
    assert row.why_not == "first fires not done"


def test_every_pot_has_its_number_and_those_without_an_answer_are_passed_over(stands):
    stove, standing = stands
    inputs = asked(replace(standing, fits=(EGGS,)), stove, "fry_eggs", "boil", "fry_eggs")
    assert [row.number for row in plan_pots(inputs).rows] == [0, 2]


def test_spots_of_mixed_heat_are_not_steady_enough(stands):
    stove, standing = stands
    boil = fit("boil", ("top_front_left", 0.3, None, 0.0), ("top_front_right", 0.2, None, 0.0), state=FitState.NOT)
    zones = dict(standing.zones)
    for name, heat in (("top_front_left", 900.0), ("top_front_right", 300.0)):
        zones[name] = replace(zones[name], p50=heat)
    (row,) = plan_pots(asked(replace(standing, fits=(boil,), zones=zones), stove, "boil")).rows
    assert row.why_not == "not steady enough"


def test_the_choice_goes_round_the_spots_and_back_to_the_programs(stands):
    stove, standing = stands
    standing = replace(standing, fits=(EGGS, fit("bread", ("oven_centre", 0.9, 0.0, 0.9))))
    plan = plan_pots(asked(standing, stove, "fry_eggs", "bread"))
    free = replace(plan, kept=replace(plan.kept, pots=(Pot(task="fry_eggs"), Pot(task="bread"))))
    assert [next_spot(free, 0, standing, steps) for steps in (0, 1, 2, 3, -1)] == [
        "", "top_front_left", "top_front_right", "", "top_front_right"
    ]  # fmt: skip
    on_left = replace(free, kept=replace(free.kept, pots=(Pot(task="fry_eggs", spot="top_front_left"),)))
    assert next_spot(on_left, 0, standing, 1) == "top_front_right"
    assert next_spot(free, 1, standing, 1) == ""  # of the oven nothing is chosen


def test_the_headline_says_who_has_no_place(stands):
    stove, standing = stands
    bad = fit("boil", ("top_back_left", 0.1, None, 0.0), state=FitState.NOT)
    found = plan_pots(asked(replace(standing, fits=(EGGS, bad)), stove, "fry_eggs", "boil"))
    assert headline_of(found, EDGE)[0] == "1 of 2 has a place now; “boil” has no place."


@pytest.mark.parametrize(
    ("coolest", "reason"),
    [
        (300, "Boil: 425 to 700 °F is wanted, the hottest spot is at 350 °F."),
        (750, "Boil: 425 to 700 °F is wanted, the coolest spot is at 750 °F."),
    ],
)
def test_reasons_tell_the_heats_of_the_cooktop_each_once(stands, coolest, reason):
    stove, standing = stands
    boil = fit("boil", ("top_front_left", 0.1, None, 0.0), state=FitState.NOT)
    bread = fit("bread", ("oven_centre", 0.0, None, 0.0), state=FitState.NOT)
    tops = [spot.name for spot in stove.spots if spot.kind is SpotKind.TOP]
    heats = {name: kelvin(coolest + 10.0 * place, "F") for place, name in enumerate(tops)}
    zones = {name: replace(standing.zones[name], p50=heat) for name, heat in heats.items()}
    there = replace(standing, zones=zones, fits=(boil, bread))
    found = plan_pots(asked(there, stove, "boil", "boil", "bread"))
    edge = Edge(unit="F", now=standing.now, offset_minutes=0)
    assert reasons_of(found, there, edge) == (reason,)
    assert not any("spot is at" in text for text in reasons_of(found, replace(there, zones={}), edge))


def test_a_strip_ends_where_the_spot_is_no_longer_good(stands):
    stove, standing = stands
    boil = fit("boil", ("top_front_left", 0.9, 0.0, 0.9))
    ends = replace(boil, spots=(replace(boil.spots[0], until_min=35.0),))
    (row,) = plan_pots(asked(replace(standing, fits=(ends,)), stove, "boil")).rows
    assert row.until_min == 35.0
    assert row.heat == pytest.approx(standing.zones["top_front_left"].p50)


def test_a_later_strip_ends_at_the_first_start_that_is_not_good(stands):
    stove, standing = stands
    boil = fit("boil", ("top_front_left", 0.0, 25.0, 0.9), state=FitState.LATER)
    starts = tuple(standing.now + timedelta(minutes=minutes) for minutes in (0, 25, 40, 55, 70))
    later = replace(boil, starts=starts, spots=(replace(boil.spots[0], chances=(0.0, 0.9, 0.7, 0.3, 0.8)),))
    (row,) = plan_pots(asked(replace(standing, fits=(later,)), stove, "boil")).rows
    assert (row.later_min, row.until_min) == (25.0, 55.0)


def test_other_pots_make_a_pot_that_needs_much_heat_less_sure(stands):
    """A pot that boils alone is less sure to with others beside it: they draw on the same cooktop."""
    stove, standing = stands
    pots = [Pot(task="boil"), *(Pot(task="stock") for _ in range(5))]
    tops = [spot.name for spot in stove.spots_of(SpotKind.TOP)]

    def sure(kept: list[Pot]) -> float:
        found = next(one for one in fits_together(standing, stove, kept) if one.task.key == "boil")
        return float(np.mean([one.chance_ever for one in found.spots]))

    warm = standing.projection.kelvin.copy()
    warm[:, :, [standing.projection.spots.index(name) for name in tops]] += kelvin(428.0, "F") - float(
        np.median(warm[:, :, standing.projection.spots.index(tops[0])])
    )
    standing = replace(standing, projection=replace(standing.projection, kelvin=warm))
    standing = replace(standing, fits=fits(standing.projection, stove))
    assert sure(pots) < sure(pots[:1]) - 0.05


def test_a_pot_that_stands_by_the_log_is_not_counted_twice(stands):
    stove, standing = stands
    spot = stove.spots_of(SpotKind.TOP)[0].name
    row = check_entry(number=99, at=standing.now, offset_minutes=0, kind="pan", spot=spot, value="on")
    logged = replace(standing, rows=(*standing.rows, row))
    pots = [Pot(task="boil", spot=spot), Pot(task="wash_water")]
    assert fits_together(logged, stove, pots) is logged.fits
    assert fits_together(standing, stove, pots) is not standing.fits


def test_pots_take_from_the_oven_each_a_little_more(stands):
    stove, standing = stands
    tops = [spot.name for spot in stove.spots_of(SpotKind.TOP)]
    pots = [Pot(task="stock", spot=name) for name in tops]
    few, many, brief = (
        oven_cost(standing, stove, chosen)
        for chosen in (pots[:2], pots[:4], [replace(pot, task="fry_eggs") for pot in pots[:4]])
    )
    assert 0.5 < few < many < 20.0
    assert brief < 0.5 * many  # what stands for some minutes only
    assert oven_cost(standing, stove, [Pot(task="bread", spot=stove.oven_spot)]) is None


def test_pans_of_the_log_cost_what_planned_ones_do(stands):
    stove, standing = stands
    spot = stove.spots_of(SpotKind.TOP)[0].name
    row = check_entry(number=99, at=standing.now, offset_minutes=0, kind="pan", spot=spot, value="on")
    controls = replace(standing.belief.controls, pans=1)
    logged = replace(standing, rows=(*standing.rows, row), belief=replace(standing.belief, controls=controls))
    assert oven_cost(logged, stove, [Pot(task="stock", spot=spot)]) > 0.2


def test_bread_beside_pots_bakes_in_an_oven_that_they_cool(stands):
    stove, standing = stands
    tops = [spot.name for spot in stove.spots_of(SpotKind.TOP)]
    pots = [Pot(task="bread"), *(Pot(task="stock", spot=name) for name in tops)]
    beside, one_more = beside_pots(standing, stove, pots)
    before = standing.projection
    assert beside.of(stove.oven_spot)[:, 12].mean() < before.of(stove.oven_spot)[:, 12].mean() - 1.0
    assert beside.of(tops[0])[:, 3].mean() < before.of(tops[0])[:, 3].mean() - 5.0
    assert one_more > 0.0
    alone, shared = (
        next(one for one in fits_together(standing, stove, kept) if one.task.key == "bread")
        for kept in (pots[:1], pots)
    )
    assert alone is next(one for one in standing.fits if one.task.key == "bread")
    assert [one.chance_now for one in shared.spots] == pytest.approx([one.chance_now for one in alone.spots], abs=0.02)
    assert shared != alone
