"""A pan's heat: in through the contact, out by its side and top, each part by a law of its own."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from cookstove_gui.physics.pan import (
    Kitchen,
    Pan,
    heat_through_base,
    pan_heat_loss,
    pan_time_constant,
)
from tests.physics.laws import law

KITCHEN = Kitchen()
POT = Pan(water=2.0, heat_capacity=700.0, base_area=0.038, side_area=0.08, top_area=0.038, conductance=120.0)


def _pot(**changes: object) -> Pan:
    return Pan(**{**{name: getattr(POT, name) for name in Pan.__slots__}, **changes})  # type: ignore[arg-type]


@law
@given(st.floats(295.0, 370.0), st.floats(0.1, 3.0))
def test_warmer_pans_lose_more(water: float, warmer: float) -> None:
    assert pan_heat_loss(POT, water + warmer, KITCHEN) > pan_heat_loss(POT, water, KITCHEN)


@law
@given(st.floats(300.0, 372.0), st.floats(0.0, 0.9), st.floats(0.01, 0.1))
def test_a_lid_saves_heat(water: float, openness: float, more: float) -> None:
    lidded, opener = _pot(openness=openness), _pot(openness=openness + more)
    assert pan_heat_loss(lidded, water, KITCHEN) < pan_heat_loss(opener, water, KITCHEN)


def test_at_room_heat_a_lidded_pan_loses_nothing() -> None:
    assert pan_heat_loss(_pot(openness=0.0), KITCHEN.temperature_room, KITCHEN) == pytest.approx(0.0, abs=1e-9)


def test_many_pans_at_once() -> None:
    pans = _pot(conductance=np.array([60.0, 120.0, 240.0]), openness=np.array([[0.1], [1.0]]))
    assert np.shape(pan_heat_loss(pans, np.full(3, 350.0), KITCHEN)) == (2, 3)
    np.testing.assert_allclose(heat_through_base(pans, 500.0, 350.0) / 150.0, 0.038 * np.array([60.0, 120.0, 240.0]))


def test_a_heavy_pan_lags_longer() -> None:
    assert pan_time_constant(2000.0, 150.0, 0.04) == pytest.approx(2 * pan_time_constant(1000.0, 150.0, 0.04))


@pytest.mark.parametrize(
    ("call", "named"),
    [(lambda: heat_through_base(_pot(conductance=0.0), 500.0, 350.0), "conductance"),
     (lambda: pan_heat_loss(_pot(openness=2.0), 350.0, KITCHEN), "openness"),
     (lambda: pan_heat_loss(POT, 400.0, KITCHEN), "temperature_water"),
     (lambda: pan_time_constant(0.0, 1.0, 1.0), "heat_capacity")],
)  # fmt: skip
def test_what_is_out_of_range_is_named(call, named) -> None:  # type: ignore[no-untyped-def]
    with pytest.raises(ValueError, match=named):
        call()
