"""Readings corrected for offset and emissivity against the reference table of the band integral."""

from dataclasses import replace

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from cookstove_gui.cooking.instruments.surface_readings import (
    Surface,
    corrected_reading,
    measured_surface,
    surface_at,
    surface_of,
    surfaces,
)
from cookstove_gui.errors import InputProblem
from cookstove_gui.stove.stove import Instrument
from tests.cooking.made import STOVE

GUN = Instrument(name="gun", kind="infrared", emissivity=0.95, offset_doubt=1e-9, gain_doubt=0.0)


def plain(emissivity: float, *, shiny: bool = False) -> Surface:
    return Surface(name="made up", low=emissivity, usual=emissivity, high=emissivity, shiny=shiny, source="")


# reference section 3, “Correction back”: read with 0.95, reflected 20 °C; scipy quad and brentq
@pytest.mark.parametrize(
    ("read", "emissivity", "true"),
    [
        (100, 0.90, 103.44),
        (100, 0.85, 107.22),
        (150, 0.85, 160.93),
        (200, 0.64, 256.89),
        (250, 0.85, 268.31),
        (250, 0.30, 528.46),
        (100, 0.30, 207.04),
    ],
)
def test_published_corrections(read: float, emissivity: float, true: float) -> None:
    found = corrected_reading(read + 273.15, GUN, plain(emissivity))
    assert found.corrected - 273.15 == pytest.approx(true, abs=0.05)
    assert found.typed - 273.15 == pytest.approx(read)
    assert found.advice == ""


def test_the_right_setting_leaves_a_reading_alone() -> None:
    assert corrected_reading(500.0, GUN, plain(0.95)).corrected == pytest.approx(500.0, abs=1e-6)


def test_the_error_is_taken_off_as_it_is_at_that_heat() -> None:
    # at 473.15 K 3 K and 0.01 of 200 K too high, within the square root of 1 and 0.5 squared
    probe = Instrument(name="probe", kind="probe", offset=3.0, offset_doubt=1.0, gain=0.01, gain_doubt=0.0025)
    found = corrected_reading(478.15, probe, plain(0.3))
    assert found.corrected == pytest.approx(473.15)
    assert found.high - found.corrected == found.corrected - found.low == pytest.approx(1.25**0.5)


def test_the_doubt_of_surface_and_instrument_add_as_squares() -> None:
    # of the table above: 250 °C read with 0.95 is 268.31 °C at 0.85 and 250 °C at 0.95
    surface = Surface(name="made up", low=0.85, usual=0.85, high=0.95, shiny=False, source="")
    found = corrected_reading(523.15, replace(GUN, offset_doubt=4.0), surface)
    assert found.corrected - 273.15 == pytest.approx(268.31, abs=0.05)
    assert found.corrected - found.low == pytest.approx((18.31**2 + 4.0**2) ** 0.5, abs=0.05)
    assert found.high - found.corrected == pytest.approx(4.0, abs=0.01)


def test_an_infrared_offset_is_taken_off_before_the_correction() -> None:
    plain_one = corrected_reading(523.15, GUN, plain(0.85)).corrected
    assert corrected_reading(526.15, replace(GUN, offset=3.0), plain(0.85)).corrected == pytest.approx(plain_one)


def test_what_the_surface_mirrors_counts() -> None:
    # the warmer the surroundings that a grey surface mirrors, the cooler it is itself
    cool, warm = (corrected_reading(473.15, GUN, plain(0.64), mirrored).corrected for mirrored in (283.15, 323.15))
    assert warm < cool - 2


def test_a_shiny_surface_is_not_corrected_but_warned_of() -> None:
    found = corrected_reading(400.0, GUN, surface_of("polished steel"))
    assert found.corrected == 400.0
    assert "blacken or tape" in found.advice
    assert found.high > 500.0


def test_a_very_hot_reading_of_a_dark_mirror_has_an_end() -> None:
    assert corrected_reading(900.0, GUN, plain(0.05)).corrected == 1500.0


def test_a_surface_at_room_heat_is_left_alone() -> None:
    assert corrected_reading(294.0, GUN, plain(0.3)).corrected == 294.0


@given(st.floats(330, 800), st.floats(0.5, 0.99), st.floats(0.3, 0.99))
@settings(max_examples=40)
def test_low_and_high_hold_the_corrected(typed: float, emissivity: float, share: float) -> None:
    surface = Surface(
        name="x", low=emissivity * share, usual=emissivity, high=min(1.0, emissivity / share), shiny=False, source=""
    )
    found = corrected_reading(typed, GUN, surface)
    assert found.low <= found.corrected <= found.high


@pytest.mark.parametrize(("above_room", "enough"), [(59.9, False), (60.1, True)])
def test_a_check_needs_a_surface_60_kelvin_above_the_room(above_room: float, enough: bool) -> None:
    contact = 293.15 + above_room
    if enough:
        assert measured_surface(surface_of("brick"), contact, contact - 2.0, 0.95).usual < 0.95
    else:
        with pytest.raises(InputProblem, match="too cool for this check; do it where it is at least 110 °F above"):
            measured_surface(surface_of("brick"), contact, contact - 2.0, 0.95)


def test_contact_and_infrared_together_measure_the_surface() -> None:
    # reference section 3: contact 232.4 °C, set to 0.95 reads 210.0 °C, reflected 20 °C: 0.80952
    found = measured_surface(surface_of("oxidised cast iron"), 232.4 + 273.15, 210.0 + 273.15, 0.95)
    assert found.usual == pytest.approx(0.80952, abs=1e-4)
    assert (found.low, found.high) == pytest.approx((found.usual - 0.03, found.usual + 0.03))
    assert not found.shiny
    assert found.name == "oxidised cast iron"
    assert corrected_reading(210.0 + 273.15, GUN, found).corrected - 273.15 == pytest.approx(232.4, abs=0.02)


@pytest.mark.parametrize(("contact", "shown"), [(310.0, 308.0), (500.0, 800.0), (800.0, 294.0)])
def test_readings_that_do_not_belong_together(contact: float, shown: float) -> None:
    with pytest.raises(InputProblem):
        measured_surface(surface_of("brick"), contact, shown, 0.95)


def test_a_surface_that_hides_half_of_its_heat_is_shiny() -> None:
    # reference section 3: a surface of emissivity 0.30 at 207.04 °C shows 100 °C to an instrument set to 0.95
    found = measured_surface(surface_of("bare steel"), 207.04 + 273.15, 373.15, 0.95)
    assert found.usual == pytest.approx(0.30, abs=1e-3)
    assert found.shiny


def test_no_emissivity_is_above_one() -> None:
    found = measured_surface(surface_of("brick"), 500.0, 505.0, 0.98)
    assert (found.usual, found.high) == (1.0, 1.0)


def test_each_spot_has_a_surface() -> None:
    names = {spot.name: surface_at(STOVE, spot).name for spot in STOVE.spots}
    assert names["top_front_left"] == STOVE.cooktop_surface
    assert names["door_glass"] == "glass"
    assert names["flue"] == names["side_left"] == "stove paint"


def test_surfaces_are_ranges() -> None:
    for surface in surfaces():
        assert 0 < surface.low < surface.usual < surface.high <= 1
        assert surface.source
    with pytest.raises(InputProblem, match="soapstone"):
        surface_of("cheese")


def test_a_contact_reading_out_of_reach_is_told_in_words() -> None:
    with pytest.raises(InputProblem, match="go together"):
        measured_surface(surface_of("brick"), 1800.0, 500.0, 0.95)
