"""Burning loads: thicker, wetter and shut-down ones last longer."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from cookstove_gui.physics.burning import (
    burn_time,
    burning_share,
    flame_share,
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
@given(st.floats(14e6, 20e6), st.floats(0.05, 0.2), st.floats(0.0, 40.0))
def test_flames_and_coals_share_all_the_heat_and_coals_more_than_their_mass(value, coals, moisture) -> None:  # type: ignore[no-untyped-def]
    flames = flame_share(value, coals, moisture)
    in_coals = coals * (1.0 - moisture / 100.0) * 30e6
    assert flames * value + in_coals == pytest.approx(value)
    assert 1.0 - flames > coals * (1.0 - moisture / 100.0)


def test_kindling_is_gone_in_half_an_hour() -> None:
    assert 10 * 60 < burn_time(0.025, 1.0) < 35 * 60


@pytest.mark.parametrize(
    ("call", "named"),
    [(lambda: burn_time(8.0, 1.0), "thickness"), (lambda: burn_time(0.08, 1.5), "air_open"),
     (lambda: burn_time(0.08, 1.0, 0.65), "charring_rate"), (lambda: burning_share(0.5, 0.0), "share_shut")],
)  # fmt: skip
def test_what_is_out_of_range_is_named(call, named) -> None:  # type: ignore[no-untyped-def]
    with pytest.raises(ValueError, match=named):
        call()
