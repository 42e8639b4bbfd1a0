"""A bake as the Plan page asks about it: when it goes in, what a probe says, and when to turn it."""

from dataclasses import replace
from datetime import timedelta

import numpy as np
import pytest

from cookstove_gui.cooking.baking.catalogue import bake_of, bakes, mass_of
from cookstove_gui.cooking.baking.doneness import steady_minutes
from cookstove_gui.cooking.baking.under_way import UnderWay
from cookstove_gui.desk.plan.bake import (
    BakeChoice,
    BakeInputs,
    cuts_of,
    kind_options,
    plan_bake,
    sized,
    usual_mass,
    usual_start,
)
from cookstove_gui.errors import InputProblem
from cookstove_gui.physics.quantities import STANDARD_PRESSURE
from cookstove_gui.stove.stove import SpotKind
from tests.cooking.made import fahrenheit, projection


@pytest.fixture
def plan(stands):
    """Plans a loaf in a steady oven of 395 °F, its left wall 40 °F hotter than its right one."""
    stove, standing = stands
    heats = {"oven_centre": [395.0] * 37, "oven_left": [415.0] * 37, "oven_right": [375.0] * 37}
    trace = replace(
        standing.trace,
        at=(standing.now - timedelta(minutes=120), standing.now),
        **{name: np.full(2, fahrenheit(395)) for name in ("p10", "p50", "p90")},
    )
    steady = replace(standing, projection=replace(projection(heats), now=standing.now), trace=trace)

    def planned(in_min: float = 0.0, **chosen: float) -> UnderWay:
        choice = BakeChoice(key="bread_loaf", went_in=standing.now + timedelta(minutes=in_min), **chosen)
        return plan_bake(BakeInputs(pressure=STANDARD_PRESSURE, standing=steady, stove=stove, choice=choice))

    return planned


STEADY = steady_minutes(bake_of("bread_loaf"), fahrenheit(395)) or 0.0


@pytest.mark.parametrize("in_min", [-20.0, 0.0, 30.0])
def test_it_is_done_a_bake_after_it_went_in(plan, in_min):
    found = plan(in_min)
    assert found.goes_in_min == pytest.approx(in_min)
    assert found.answer.done_min.p50 == pytest.approx(STEADY + in_min, abs=2.0)


@pytest.mark.parametrize(("in_min", "turn_in"), [(0.0, STEADY / 2), (-10.0, STEADY / 2 - 10), (-40.0, STEADY / 2 - 40)])
def test_it_is_turned_half_way_through(plan, in_min, turn_in):
    found = plan(in_min).turn
    assert found.hotter == "oven_left"
    assert found.in_min == pytest.approx(turn_in, abs=1.0)


def test_without_a_moment_it_goes_in_now(stands):
    stove, standing = stands
    found = plan_bake(
        BakeInputs(pressure=STANDARD_PRESSURE, standing=standing, stove=stove, choice=BakeChoice(key="bread_loaf"))
    )
    assert found.goes_in_min == 0.0


def test_what_will_not_be_done_is_not_turned(stands):
    stove, standing = stands
    cold = replace(standing, projection=replace(projection({"oven_centre": [150.0] * 37}), now=standing.now))
    found = plan_bake(
        BakeInputs(pressure=STANDARD_PRESSURE, standing=cold, stove=stove, choice=BakeChoice(key="bread_loaf"))
    )
    assert found.answer.done_min.p50 is None
    assert found.turn is None


@pytest.mark.parametrize(("in_min", "answered"), [(-2.0, True), (-1.9, False), (10.0, False)])
def test_a_probe_needs_the_bake_to_have_been_in_for_two_minutes(plan, in_min, answered):
    if answered:
        assert plan(in_min, core=300.0).answer.core_now is not None
    else:
        with pytest.raises(InputProblem, match="must be in the oven"):
            plan(in_min, core=300.0)


def test_a_probe_sets_the_core_now_and_the_pace_from_here(plan):
    usual = plan(-25.0).answer
    warm = usual.core_now.p50 + 3.0
    probed = plan(-25.0, core=warm).answer
    assert usual.core_now.p50 + 1.0 < probed.core_now.p50 < warm + 1.0
    assert probed.done_min.p50 < usual.done_min.p50 - 0.5


def test_a_larger_one_and_a_colder_one_take_longer(plan):
    usual = plan().answer.done_min.p50
    assert plan(mass=2 * usual_mass("bread_loaf")).answer.done_min.p50 > usual + 10
    assert plan(start=usual_start("bread_loaf") - 10).answer.done_min.p50 > usual + 0.5


@pytest.mark.parametrize(("share", "possible"), [(0.101, True), (0.099, False), (9.9, True), (10.1, False)])
def test_a_bake_weighs_a_tenth_to_ten_times_the_usual_one(share, possible):
    choice = BakeChoice(key="bread_loaf", mass=share * usual_mass("bread_loaf"))
    if possible:
        assert mass_of(sized(choice)) == pytest.approx(choice.mass)
    else:
        with pytest.raises(InputProblem, match="not a plausible weight for one loaf of bread"):
            sized(choice)


def test_a_projection_beyond_what_an_oven_can_be_is_cut_off(stands):
    stove, standing = stands
    heats = np.full((1, 37, 1), 2000.0)
    wild = replace(standing, projection=replace(standing.projection, spots=("oven_centre",), kelvin=heats))
    choice = BakeChoice(key="bread_loaf")
    at_most = replace(wild, projection=replace(wild.projection, kelvin=np.full((1, 37, 1), 850.0)))
    found, expected = (
        plan_bake(BakeInputs(pressure=STANDARD_PRESSURE, standing=one, stove=stove, choice=choice))
        for one in (wild, at_most)
    )
    assert found.answer.done_min == expected.answer.done_min


def test_a_stove_without_an_oven_centre_is_baked_in_by_its_first_oven_spot(stands):
    stove, standing = stands
    rear = replace(stove, spots=tuple(s for s in stove.spots if s.kind is not SpotKind.OVEN or s.name == "oven_rear"))
    heats = {"oven_rear": [395.0] * 37}
    steady = replace(standing, projection=replace(projection(heats), now=standing.now))
    found = plan_bake(
        BakeInputs(pressure=STANDARD_PRESSURE, standing=steady, stove=rear, choice=BakeChoice(key="bread_loaf"))
    )
    assert found.answer.done_min.p50 == pytest.approx(STEADY, abs=2.0)


def test_a_kind_is_offered_once_with_its_forms_beside_it():
    kinds = dict(kind_options())
    assert kinds["bread_loaf"] == "loaf of bread"
    assert "bread_round" not in kinds
    assert [key for key, _ in cuts_of("bread_round")] == ["bread_loaf", "bread_round"]
    assert cuts_of("custard") == ()
    assert cuts_of("no such bake") == ()


def test_every_bake_can_be_chosen():
    offered = {one for key, _ in kind_options() for one, _ in (cuts_of(key) or ((key, ""),))}
    assert offered == {bake.key for bake in bakes()}


def test_the_forms_of_a_kind_have_words_that_differ():
    for key, _ in kind_options():
        words = [word for _, word in cuts_of(key)]
        assert all(words)
        assert len(set(words)) == len(words)
