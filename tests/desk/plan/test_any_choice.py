"""The Plan page answers at every height, size and heat that can be typed, or refuses with a sentence."""

from dataclasses import replace
from datetime import timedelta

import numpy as np
import pytest
from hypothesis import HealthCheck, assume, given, settings
from hypothesis import strategies as st

from cookstove_gui.cooking.baking.catalogue import bakes
from cookstove_gui.cooking.pans.boiling_time import Goal
from cookstove_gui.cooking.pans.catalogue import pans
from cookstove_gui.desk.plan.bake import BakeChoice, BakeInputs, plan_bake, usual_mass
from cookstove_gui.desk.plan.water import WaterChoice, WaterInputs, bases, plan_water
from cookstove_gui.desk.plan.wood import WoodChoice, WoodInputs, moisture_options, plan_wood, wood_options
from cookstove_gui.physics.air import standard_pressure

ALTITUDES = st.sampled_from([-500.0, 0.0, 1500.0, 6000.0])
QUICK = settings(max_examples=6, suppress_health_check=[HealthCheck.too_slow])


@QUICK
@given(
    altitude=ALTITUDES,
    litres=st.sampled_from([0.06, 2.0, 40.0]),
    start=st.sampled_from([273.15, 288.15, 372.5]),
    pan=st.sampled_from([pan.key for pan in pans()]),
    base=st.sampled_from(["", *bases()]),
    lid=st.booleans(),
    goal=st.sampled_from(list(Goal)),
)
def test_water_is_answered_whatever_is_asked(stands, altitude, litres, start, pan, base, lid, goal):
    stove, standing = stands
    choice = WaterChoice(litres=litres, start=start, pan_key=pan, base=base, lid=lid, goal=goal)
    plan = plan_water(
        WaterInputs(
            standing=standing,
            stove=replace(stove, altitude=altitude),
            pressure=float(standard_pressure(altitude)),
            choice=choice,
            past=lambda _name: (),
        )
    )
    assert len(plan.rows) == 6
    for row in plan.rows:
        times = [value for value in (row.answer.minutes.p10, row.answer.minutes.p50, row.answer.minutes.p90) if value]
        assert times == sorted(times)


@QUICK
@given(
    altitude=ALTITUDES,
    key=st.sampled_from([bake.key for bake in bakes()]),
    size=st.sampled_from([0.11, 1.0, 5.0]),
    start=st.sampled_from([None, 255.4, 300.0, 372.0]),
    minutes=st.sampled_from([-50, -1, 0, 30, 170]),
    core=st.sampled_from([None, 290.0, 340.0]),
)
def test_a_bake_is_answered_whatever_is_asked(stands, altitude, key, size, start, minutes, core):
    stove, standing = stands
    choice = BakeChoice(
        key=key,
        mass=size * usual_mass(key),
        start=start,
        went_in=standing.now + timedelta(minutes=minutes),
        core=core,
    )
    assume(core is None or minutes <= -2)
    pressure = float(standard_pressure(altitude))
    plan = plan_bake(BakeInputs(standing=standing, stove=stove, pressure=pressure, choice=choice))
    assert 0.0 <= plan.answer.chance_done <= 1.0
    assert plan.goes_in_min == pytest.approx(minutes)


@QUICK
@given(
    wood=st.sampled_from([key for key, _ in wood_options()]),
    moisture=st.sampled_from([key for key, _ in moisture_options()]),
    split=st.sampled_from([0.03, 1.2, 10.0]),
    thickness=st.sampled_from([0.01, 0.08, 0.25]),
    minutes=st.sampled_from([0.0, 60.0, 720.0]),
    air=st.sampled_from([None, 0.0, 0.25, 1.0]),
)
def test_wood_is_answered_whatever_is_asked(stands, wood, moisture, split, thickness, minutes, air):
    stove, standing = stands
    choice = WoodChoice(wood=wood, moisture=moisture, split=split, thickness=thickness, at_heat_min=minutes, air=air)
    plan = plan_wood(
        WoodInputs(stove=stove, band=standing.band, standing=standing, entries=(), choice=choice, past=lambda _name: ())
    )
    amounts = [plan.mass.p10, plan.mass.p50, plan.mass.p90]
    assert amounts == sorted(amounts)
    assert np.all(np.isfinite(amounts))
    assert amounts[0] >= 0.0
