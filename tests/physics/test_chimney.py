"""Draught: in proportion to height and pressure, less on warm days, backwards in a cold flue."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from cookstove_gui.physics.chimney import mean_flue_temperature, natural_draught
from tests.physics.laws import law, pressures

flues = st.floats(330.0, 700.0)
outdoors = st.floats(240.0, 315.0)


@law
@given(st.floats(1.0, 12.0), flues, outdoors, pressures)
def test_draught_is_proportional_to_height_and_pressure(
    height: float, flue: float, air: float, pressure: float
) -> None:
    once = natural_draught(height, flue, air, pressure)
    assert natural_draught(2 * height, flue, air, pressure) == pytest.approx(2 * once)
    assert natural_draught(height, flue, air, 0.9 * pressure) == pytest.approx(0.9 * once) or pressure * 0.9 < 30_000


@law
@given(flues, outdoors, st.floats(0.5, 14.0))
def test_warm_days_draw_less_and_warm_flues_more(flue: float, air: float, warmer: float) -> None:
    usual = natural_draught(6.0, flue, air)
    assert natural_draught(6.0, flue, air + warmer) < usual
    assert natural_draught(6.0, flue + warmer, air) > usual


def test_a_cold_flue_draws_backwards() -> None:
    assert natural_draught(6.0, 280.0, 295.0) < 0.0
    assert natural_draught(6.0, 295.0, 295.0) == pytest.approx(0.0, abs=1e-12)


def test_two_other_published_forms_agree() -> None:
    """Rows 13.1 and 13.4: inch formulas of a boiler maker's book and of a handbook, written out here."""
    height_ft, air_f, gas_f = 100.0, 60.0, 500.0
    book = 0.52 * height_ft * 14.7 * (1 / (air_f + 461) - 1 / (gas_f + 461))
    handbook = 0.2554 * 29.92 * height_ft * (1 / (air_f + 459.67) - 1 / (gas_f + 459.67))
    ours = natural_draught(height_ft * 0.3048, (gas_f + 459.67) / 1.8, (air_f + 459.67) / 1.8) / 249.08891
    assert ours == pytest.approx(book, rel=0.01)
    assert ours == pytest.approx(handbook, rel=0.005)


def test_light_flue_gas_draws_more() -> None:
    assert natural_draught(6.0, 450.0, 280.0, gas_constant_flue=296.0) > natural_draught(6.0, 450.0, 280.0)


@law
@given(flues, outdoors, st.floats(0.003, 0.03), st.floats(0.1, 10.0))
def test_gas_on_its_way_up_lies_between_inlet_and_outdoors(
    inlet: float, air: float, flow: float, transfer: float
) -> None:
    mean = mean_flue_temperature(inlet, air, 6.0, flow, 0.47, transfer)
    assert air < mean < inlet


def test_heat_lost_by_the_gas_is_what_the_wall_passes() -> None:
    inlet, air, height, flow, perimeter, transfer = 500.0, 280.0, 6.0, 0.01, 0.47, 6.0
    mean = mean_flue_temperature(inlet, air, height, flow, perimeter, transfer)
    places = (np.arange(20_000) + 0.5) / 20_000 * height
    along = air + (inlet - air) * np.exp(-perimeter * transfer * places / (flow * 1100.0))
    assert mean == pytest.approx(along.mean(), abs=1e-4)


def test_a_perfect_lining_keeps_the_gas_hot() -> None:
    assert mean_flue_temperature(500.0, 280.0, 6.0, 0.01, 0.47, 0.0) == pytest.approx(500.0)


@pytest.mark.parametrize(
    ("call", "named"),
    [(lambda: natural_draught(-1.0, 400.0, 280.0), "height"), (lambda: natural_draught(6.0, 150.0, 280.0), "flue"),
     (lambda: natural_draught(6.0, 400.0, 20.0), "temperature_outdoors"),
     (lambda: natural_draught(6.0, 400.0, 280.0, 1013.25), "pressure"),
     (lambda: mean_flue_temperature(500.0, 280.0, 6.0, 0.0, 0.47, 6.0), "mass_flow")],
)  # fmt: skip
def test_what_is_out_of_range_is_named(call, named) -> None:  # type: ignore[no-untyped-def]
    with pytest.raises(ValueError, match=named):
        call()
