"""Moist crumb: vapour carries heat the better the hotter, until the crust is dry; loaves bake as loaves do."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from cookstove_gui.physics.bricks import equivalent_body
from cookstove_gui.physics.crumb import bubble_conductivity, crumb_conductivity, vapour_diffusivity
from cookstove_gui.physics.foods import (
    GAS_CONDUCTIVITY,
    Composition,
    conductivity,
    density,
    porous_conductivity,
    specific_heat,
)
from cookstove_gui.physics.warming import Body, Exposure, warm_through
from cookstove_gui.physics.water import boiling_temperature
from tests.physics.laws import law, pressures

DOUGH = Composition(water=0.45, protein=0.08, fat=0.015, carbohydrate=0.42, fibre=0.015, ash=0.02)
POROSITY = 0.65


def test_a_loaf_bakes_in_the_usual_time_and_loses_the_usual_mass() -> None:
    """Row "5.loaf"."""
    levels = np.linspace(275.0, 405.0, 66)
    conducts = np.asarray(crumb_conductivity(DOUGH, levels, POROSITY))
    dense = float(density(DOUGH, 300.0, POROSITY))
    loaf = equivalent_body((("wall", 0.05), ("wall", 0.055), ("wall", 0.11)), 19.0, 0.6)
    assert 0.45 < dense * 0.10 * 0.11 * 0.22 < 1.05
    body = Body(
        half_thickness=loaf.half_thickness,
        dimension=loaf.dimension,
        conductivity=(levels, conducts),
        heat_capacity=dense * float(specific_heat(DOUGH, 330.0)),
        water=0.45 * dense,
    )
    exposure = Exposure(
        convection_coefficient=9.0, emissivity=0.9, openness=0.9, crust_diffusivity=2e-6, crust_conductivity=0.2,
        water_activity=0.95, vapour_pressure=3000.0,
    )  # fmt: skip
    course = warm_through(body, exposure, 300.0, np.full(721, 463.7), 5.0)
    done = np.interp(369.15, course.core, course.time)
    assert 25.0 < done / 60.0 < 45.0
    lost = np.interp(done, course.time, course.water_lost) / (dense * loaf.half_thickness / loaf.dimension)
    assert 0.06 < lost < 0.14


@law
@given(st.floats(275.0, 365.0), st.floats(0.1, 5.0))
def test_vapour_carries_more_the_hotter(temperature: float, hotter: float) -> None:
    assert bubble_conductivity(temperature + hotter) > bubble_conductivity(temperature) > GAS_CONDUCTIVITY


@law
@given(st.floats(280.0, 420.0), st.floats(0.05, 0.9), pressures)
def test_crumb_lies_between_dry_bubbles_and_perfect_ones(temperature: float, gas: float, pressure: float) -> None:
    crumb = crumb_conductivity(DOUGH, temperature, gas, pressure)
    solid = conductivity(DOUGH, temperature)
    assert conductivity(DOUGH, temperature, gas) - 1e-12 <= crumb < solid * (1 + 2 * gas) / (1 - gas)


@law
@given(pressures)
def test_crust_is_dry_from_boiling_on(pressure: float) -> None:
    boiling = float(boiling_temperature(pressure))
    assert bubble_conductivity(boiling, pressure) == pytest.approx(GAS_CONDUCTIVITY)
    assert bubble_conductivity(boiling - 0.5, pressure) > 1.0


def test_no_bubbles_is_the_solid_and_all_the_same_is_the_same() -> None:
    assert porous_conductivity(0.4, 0.03, 0.0) == pytest.approx(0.4)
    assert porous_conductivity(0.4, 0.4, 0.7) == pytest.approx(0.4)


@pytest.mark.parametrize(
    ("call", "named"),
    [(lambda: vapour_diffusivity(200.0), "temperature"), (lambda: bubble_conductivity(300.0, 1013.0), "pressure"),
     (lambda: porous_conductivity(0.4, 0.03, 1.0), "porosity"),
     (lambda: porous_conductivity(0.0, 0.03, 0.5), "conductivity_solid")],
)  # fmt: skip
def test_what_is_out_of_range_is_named(call, named) -> None:  # type: ignore[no-untyped-def]
    with pytest.raises(ValueError, match=named):
        call()
