"""Heat in wood: conversions there and back, water only ever costs, mass and heat in proportion."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from cookstove_gui.physics.firewood import (
    heat_output,
    heating_value_net,
    moisture_dry_basis,
    moisture_wet_basis,
    split_mass,
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
    assert heating_value_net(dry, moisture + more) < heating_value_net(dry, moisture)


def test_pieces_of_a_log_weigh_what_the_log_did() -> None:
    pieces = np.array([1.0, 2.0, 4.0, 6.0])
    np.testing.assert_allclose(split_mass(0.4, 0.25, pieces, 600.0) * pieces, split_mass(0.4, 0.25, 1.0, 600.0))


@pytest.mark.parametrize(
    ("call", "named"),
    [(lambda: moisture_wet_basis(-1.0), "moisture_dry_basis"), (lambda: moisture_dry_basis(80.0), "moisture_wet_basis"),
     (lambda: heating_value_net(18.5, 20.0), "heating_value_net_dry"),
     (lambda: split_mass(40.0, 0.2, 4, 600), "length"),
     (lambda: heat_output(1.0, 15e6, 70.0), "efficiency"),
     (lambda: split_mass(0.4, 0.2, 0.5, 600), "pieces")],
)  # fmt: skip
def test_what_is_out_of_range_is_named(call, named) -> None:  # type: ignore[no-untyped-def]
    with pytest.raises(ValueError, match=named):
        call()
