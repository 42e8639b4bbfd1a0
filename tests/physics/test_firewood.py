"""Heat in wood: conversions there and back, water only ever costs, mass and heat in proportion."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from cookstove_gui.physics.firewood import (
    heat_output,
    heating_value_effective,
    heating_value_gross,
    heating_value_net,
    heating_value_net_dry,
    moisture_dry_basis,
    moisture_wet_basis,
    split_mass,
    wood_density,
    wood_for_heat,
)
from tests.physics.laws import law

moistures = st.floats(0.0, 60.0)


@law
@given(moistures)
def test_moisture_goes_there_and_back(moisture: float) -> None:
    assert moisture_wet_basis(moisture_dry_basis(moisture)) == pytest.approx(moisture, abs=1e-9)


@law
@given(moistures, st.floats(0.5, 10.0), st.floats(16e6, 20e6))
def test_water_only_costs_heat(moisture: float, more: float, dry: float) -> None:
    for value in (heating_value_net, heating_value_gross, heating_value_effective):
        assert value(dry, moisture + more) < value(dry, moisture)


@law
@given(moistures)
def test_steam_carries_away_the_difference_of_gross_and_net(moisture: float) -> None:
    gross, net = heating_value_gross(20e6, moisture), heating_value_net(heating_value_net_dry(20e6), moisture)
    from_hydrogen = (20e6 - heating_value_net_dry(20e6)) * (1 - moisture / 100)
    assert gross - net == pytest.approx(2.443e6 * moisture / 100 + from_hydrogen)


@law
@given(st.floats(350.0, 700.0), st.floats(1.0, 55.0))
def test_dry_mass_stays_while_wood_dries(basic: float, moisture: float) -> None:
    dry_matter = wood_density(basic, moisture) * (1 - moisture / 100)
    assert basic - 1e-9 <= dry_matter <= basic / (1 - 0.265 * basic / 1000) + 1e-9


@law
@given(st.floats(1e5, 1e9), st.floats(6e6, 18e6), st.floats(0.2, 1.0))
def test_wood_for_an_amount_of_heat_gives_that_heat(heat: float, value: float, efficiency: float) -> None:
    mass = wood_for_heat(heat, value, efficiency)
    assert heat_output(mass / 3600.0, value, efficiency) * 3600.0 == pytest.approx(heat)


def test_pieces_of_a_log_weigh_what_the_log_did() -> None:
    pieces = np.array([1.0, 2.0, 4.0, 6.0])
    np.testing.assert_allclose(split_mass(0.4, 0.25, pieces, 600.0) * pieces, split_mass(0.4, 0.25, 1.0, 600.0))


@pytest.mark.parametrize(
    ("call", "named"),
    [(lambda: moisture_wet_basis(-1.0), "moisture_dry_basis"), (lambda: moisture_dry_basis(80.0), "moisture_wet_basis"),
     (lambda: heating_value_net(18.5, 20.0), "heating_value_net_dry"),
     (lambda: split_mass(40.0, 0.2, 4, 600), "length"),
     (lambda: heat_output(1.0, 15e6, 70.0), "efficiency"), (lambda: wood_density(0.4, 20.0), "density_basic"),
     (lambda: wood_for_heat(-1.0, 15e6, 0.7), "heat"), (lambda: split_mass(0.4, 0.2, 0.5, 600), "pieces")],
)  # fmt: skip
def test_what_is_out_of_range_is_named(call, named) -> None:  # type: ignore[no-untyped-def]
    with pytest.raises(ValueError, match=named):
        call()
