"""Burning loads: thicker, wetter and shut-down ones last longer; a measured burn is learned from exactly."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from cookstove_gui.physics.burning import (
    burn_time,
    burning_share,
    mass_left,
    mean_burning_rate,
    share_shut_from_burn,
)
from tests.physics.laws import law

thicknesses = st.floats(0.02, 0.2)
airs = st.floats(0.0, 1.0)


@law
@given(thicknesses, airs, st.floats(12.0, 50.0), st.floats(1.01, 2.0))
def test_thick_wet_and_starved_wood_lasts(thickness: float, air: float, moisture: float, more: float) -> None:
    usual = burn_time(thickness, air, moisture_wet_basis=moisture)
    assert burn_time(min(thickness * more, 0.25), air, moisture_wet_basis=moisture) > usual
    assert burn_time(thickness, air, moisture_wet_basis=min(moisture * more, 60.0)) > usual
    assert burn_time(thickness, air / more, moisture_wet_basis=moisture) >= usual


@law
@given(airs, st.floats(0.05, 1.0))
def test_share_runs_from_shut_to_open(air: float, shut: float) -> None:
    assert burning_share(0.0, shut) == pytest.approx(shut)
    assert burning_share(1.0, shut) == pytest.approx(1.0)
    assert shut - 1e-12 <= burning_share(air, shut) <= 1.0 + 1e-12


@law
@given(thicknesses, st.floats(0.0, 0.5), st.floats(0.05, 0.9), st.floats(0.0, 40.0))
def test_a_measured_burn_is_learned_from(thickness: float, air: float, shut: float, moisture: float) -> None:
    time = burn_time(thickness, air, moisture_wet_basis=moisture, share_shut=shut)
    assert share_shut_from_burn(time, thickness, air, moisture_wet_basis=moisture) == pytest.approx(shut)


@law
@given(st.floats(0.5, 10.0), st.floats(600.0, 2e4), st.floats(0.05, 0.4))
def test_load_goes_from_wood_to_coals_to_ash(mass: float, whole: float, coals: float) -> None:
    left = np.asarray(mass_left(np.linspace(0.0, 5 * whole, 200), mass, whole, coals))
    assert left[0] == pytest.approx(mass)
    assert (np.diff(left) < 0).all()
    assert mass_left(whole, mass, whole, coals) == pytest.approx(coals * mass)
    assert mean_burning_rate(mass, whole, coals) * whole == pytest.approx(mass - coals * mass)


def test_kindling_is_gone_in_half_an_hour() -> None:
    assert 10 * 60 < burn_time(0.025, 1.0) < 35 * 60


@pytest.mark.parametrize(
    ("call", "named"),
    [(lambda: burn_time(8.0, 1.0), "thickness"), (lambda: burn_time(0.08, 1.5), "air_open"),
     (lambda: burn_time(0.08, 1.0, 0.65), "charring_rate"), (lambda: burning_share(0.5, 0.0), "share_shut"),
     (lambda: mass_left(-1.0, 1.0, 60.0), "time"), (lambda: share_shut_from_burn(60.0, 0.08, 0.9), "air_open")],
)  # fmt: skip
def test_what_is_out_of_range_is_named(call, named) -> None:  # type: ignore[no-untyped-def]
    with pytest.raises(ValueError, match=named):
        call()
