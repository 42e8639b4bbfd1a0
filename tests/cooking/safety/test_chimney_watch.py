"""The flue's bands and the draught, against the chimney standard's closed form."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from cookstove_gui.cooking.safety.chimney_watch import SURFACE_SHARES, Chimney, draught, flue_answer, flue_bands
from cookstove_gui.stove.stove import FlueReading
from cookstove_gui.units import degrees
from tests.cooking.made import fahrenheit, projection

TIMES = 37
TIGHT = Chimney(height=5.0, loss=0.0)


def flue(heat, futures: int = 1):  # type: ignore[no-untyped-def]
    return projection({"flue": np.broadcast_to(heat, TIMES)}, futures=futures)


# reference 13.9 to 13.12: pipe surface 250 and 475 °F, gas 400 and 900 °F (common practice)
def test_bands_are_those_of_common_practice() -> None:
    assert [round(degrees(band.high, "F")) for band in flue_bands()][:2] == [250, 475]
    assert [round(degrees(band.high, "F")) for band in flue_bands(FlueReading.GAS)][:2] == [400, 900]
    assert [band.name for band in flue_bands()] == ["too cool", "working", "too hot"]


@pytest.mark.parametrize(("heat", "name"), [(200, "too cool"), (300, "working"), (600, "too hot"), (-20, "too cool")])
def test_the_flue_is_named(heat: float, name: str) -> None:
    found = flue_answer(flue(float(heat)))
    assert found is not None
    assert found.band.name == name
    assert "manual" in found.decides.lower()


@pytest.mark.parametrize(
    ("heat", "names"),
    [(300.0, ["working", "not judged", "too cool"]), (600.0, ["too hot", "too hot", "working"])],
)
def test_each_kind_of_reading_has_its_own_bands(heat: float, names: list[str]) -> None:
    kinds = (FlueReading.SINGLE, FlueReading.DOUBLE, FlueReading.GAS)
    found = [flue_answer(flue(heat), reading=kind) for kind in kinds]
    assert [answer.band.name for answer in found if answer] == names


def test_double_wall_pipe_has_no_chance_of_being_too_cool() -> None:
    found = flue_answer(flue(80.0), reading=FlueReading.DOUBLE)
    assert found is not None
    assert (found.too_cool_now, found.too_cool_within_hour) == (0.0, 0.0)


def test_a_probe_in_the_gas_reads_the_gas_itself() -> None:
    # reference 13.5 again: with no loss the mean of the flue is the gas, and no share has to be guessed
    found = draught(TIGHT, 423.15, 273.15, reading=FlueReading.GAS)
    assert (found.pascals.p10, found.pascals.p50, found.pascals.p90) == pytest.approx((22.46,) * 3, abs=0.02)


def test_the_same_reading_means_more_gas_heat_the_better_the_pipe_hides_it() -> None:
    kinds = (FlueReading.GAS, FlueReading.SINGLE, FlueReading.DOUBLE)
    middles = [draught(TIGHT, 370.0, 273.15, reading=kind).pascals.p50 or 0.0 for kind in kinds]
    assert middles == sorted(middles)


def test_chances_are_shares_of_futures() -> None:
    heats = np.full((10, TIMES), 300.0)
    heats[:3] = 200.0
    heats[8:, 6:] = 500.0  # from half an hour on
    found = flue_answer(projection({"flue": heats}))
    assert found is not None
    assert found.too_cool_now == pytest.approx(0.3)
    assert found.too_hot_now == 0.0
    assert found.too_hot_within_hour == pytest.approx(0.2)


def test_a_flue_that_is_not_read_has_no_answer() -> None:
    assert flue_answer(projection({"oven_centre": [400.0] * TIMES})) is None


# reference 13.5, 13.6: EN 13384-1, 5 m, outdoors 0 °C, gas 150 °C: 22.46 Pa; at 845.56 hPa 18.74 Pa
@pytest.mark.parametrize(("pressure", "pascals"), [(101_325.0, 22.46), (84_556.0, 18.74)])
def test_without_losses_it_is_the_closed_form(pressure: float, pascals: float) -> None:
    room, gas, share = 293.15, 423.15, SURFACE_SHARES[1]
    surface = room + (gas - room) * share  # the middle share brings the gas to 150 °C
    found = draught(TIGHT, surface, 273.15, room=room, pressure=pressure)
    assert found.pascals.p50 == pytest.approx(pascals, abs=0.02)
    assert found.pascals.p10 is not None
    assert found.pascals.p90 is not None
    assert found.pascals.p10 < pascals < found.pascals.p90


def test_a_flue_colder_than_outdoors_draws_backwards() -> None:
    found = draught(TIGHT, 283.15, 303.15, room=288.15)
    assert found.backwards
    assert found.weak


def test_a_wall_that_loses_heat_weakens_the_draught() -> None:
    tight = draught(TIGHT, 450.0, 273.15).pascals.p50
    leaky = draught(Chimney(height=5.0, loss=8.0), 450.0, 273.15).pascals.p50
    assert tight is not None
    assert leaky is not None
    assert leaky < 0.95 * tight


@given(st.floats(2, 12), st.floats(310, 600), st.floats(250, 300), st.floats(1, 60))
def test_taller_and_warmer_draw_more(height: float, surface: float, outdoors: float, more: float) -> None:
    def pascals(tall: float, heat: float, cold: float) -> float:
        return draught(Chimney(height=tall, loss=0.0), heat, cold).pascals.p50 or 0.0

    base = pascals(height, surface, outdoors)
    assert pascals(height * 1.2, surface, outdoors) > base
    assert pascals(height, surface + more, outdoors) > base
    assert pascals(height, surface, outdoors - more / 2) > base


def test_fahrenheit_edges_are_kelvin_inside() -> None:
    assert flue_bands()[1].low == pytest.approx(fahrenheit(250))
