"""Foods from their components: our table is the right one, mixtures stay between their parts."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from cookstove_gui.physics.foods import (
    COMPONENTS,
    GAS_CONDUCTIVITY,
    Composition,
    conductivity,
    density,
    specific_heat,
)
from tests.physics.laws import law

warm = st.floats(274.0, 420.0)
PURE = {name: Composition(**{"water": 0.0, name: 1.0}) for name in COMPONENTS}


@st.composite
def compositions(draw: st.DrawFn) -> Composition:
    parts = np.array([draw(st.floats(0.01, 1.0)) for _ in COMPONENTS])
    return Composition(**dict(zip(COMPONENTS, (parts / parts.sum()).tolist(), strict=True)))


def test_misprints_in_circulation_are_not_ours() -> None:
    """Row "5.misprints"."""
    assert specific_heat(PURE["water"], 373.15) > specific_heat(PURE["water"], 293.15)
    assert conductivity(PURE["fat"], 353.15) == pytest.approx(0.18071 - 2.7604e-4 * 80 - 1.7749e-7 * 6400)
    assert conductivity(PURE["fat"], 353.15) > 0.1
    assert specific_heat(PURE["fat"], 293.15) - 1984.2 == pytest.approx(27.5, abs=0.1)
    assert density(PURE["fibre"], 293.15) == pytest.approx(1304.2, abs=0.1)


@law
@given(compositions(), warm)
def test_mixtures_lie_between_their_parts(composition: Composition, temperature: float) -> None:
    for of in (specific_heat, density, conductivity):
        parts = [float(of(pure, temperature)) for pure in PURE.values()]
        assert min(parts) - 1e-9 <= of(composition, temperature) <= max(parts) + 1e-9


@law
@given(compositions(), warm)
def test_heat_across_is_never_easier_than_along(composition: Composition, temperature: float) -> None:
    across = conductivity(composition, temperature, mixing="series")
    assert across <= conductivity(composition, temperature, mixing="parallel") + 1e-12


@law
@given(compositions(), warm, st.floats(0.0, 0.9))
def test_gas_makes_lighter_and_slower_to_conduct(composition: Composition, temperature: float, gas: float) -> None:
    assert density(composition, temperature, gas) == pytest.approx((1 - gas) * density(composition, temperature))
    conducted = conductivity(composition, temperature, gas)
    assert GAS_CONDUCTIVITY <= conducted <= conductivity(composition, temperature) + 1e-12


def test_fractions_are_scaled_to_one() -> None:
    assert Composition(water=0.5, carbohydrate=0.48).fractions().sum() == pytest.approx(1.0)


def test_courses_of_temperature_and_gas_broadcast() -> None:
    food = Composition(water=0.45, carbohydrate=0.45, protein=0.10)
    assert np.shape(conductivity(food, np.linspace(280, 370, 6)[:, None], np.array([0.0, 0.4, 0.8]))) == (6, 3)
    assert isinstance(specific_heat(food, 300.0), float)


@pytest.mark.parametrize("fractions", [{"water": 0.5}, {"water": 1.2, "fat": -0.2}, {"water": np.nan}])
def test_fractions_that_are_no_whole_are_refused(fractions: dict[str, float]) -> None:
    with pytest.raises(ValueError, match="composition must be"):
        Composition(**fractions)


@pytest.mark.parametrize(
    ("call", "named"),
    [(lambda food: specific_heat(food, 260.0), "temperature"), (lambda food: density(food, 300.0, 0.99), "porosity"),
     (lambda food: conductivity(food, 300.0, mixing="both"), "mixing")],
)  # fmt: skip
def test_what_is_out_of_range_is_named(call, named) -> None:  # type: ignore[no-untyped-def]
    with pytest.raises(ValueError, match=named):
        call(Composition(water=0.5, carbohydrate=0.5))
