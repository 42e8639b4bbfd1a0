"""Thermometers' checks in words: too high or too low the right way, in the unit on the screen, dated."""

from dataclasses import replace
from datetime import date

import pytest
from hypothesis import given
from hypothesis import strategies as st

from cookstove_gui.cooking.instruments.surface_readings import CorrectedReading, surface_of
from cookstove_gui.cooking.instruments.thermometers import Check, CheckPoint, Drift
from cookstove_gui.phrases.my_stove.checks import (
    check_line,
    doubt_words,
    drifted,
    emissivity_words,
    far_off_words,
    gain_words,
    instrument_words,
    measured_emissivity_words,
)
from cookstove_gui.stove.stove import INFRARED, unchecked
from cookstove_gui.units import kelvin
from tests.phrases.facts import EDGE, is_plain, units

DIAL = replace(unchecked("dial", "probe"), offset=-4.0, offset_doubt=0.7, gain_doubt=0.0, checked_on="2026-03-02")


AT = kelvin(400.0, "F")


def test_what_a_thermometer_is_off_by() -> None:
    # eight in ten: 1.28 times 0.7 K is 1.6 °F
    assert instrument_words(DIAL, AT, "bread heat", "F") == (
        "Dial reads about 7 °F too low at bread heat, give or take 2."
    )
    assert "too high" in instrument_words(replace(DIAL, offset=4.0), AT, "bread heat", "F")
    assert instrument_words(replace(DIAL, offset=0.1), AT, "bread heat", "C") == (
        "Dial reads right at bread heat, within about 1 °C."
    )
    assert instrument_words(replace(DIAL, checked_on="", offset_doubt=3.0), AT, "bread heat", "F") == (
        "Dial was never checked: at bread heat it may be off by 7 °F or more either way."
    )


def test_an_infrared_ones_own_error_is_told_apart_from_what_the_iron_looks_like() -> None:
    said = instrument_words(unchecked("gun", INFRARED), AT, "bread heat", "F")
    assert said.endswith("either way, the look of the iron aside.")


def test_the_error_is_told_at_the_heat_that_is_cooked_with() -> None:
    # 400 °F lies 204.4 K above the ice point: 2 % of that is 7.4 °F
    steep = replace(DIAL, offset=0.0, gain=0.02)
    assert "about 7 °F too high" in instrument_words(steep, AT, "bread heat", "F")
    assert "reads right" in instrument_words(steep, kelvin(40.0, "F"), "proofing", "F")


def test_what_the_doubt_of_a_reading_comes_from() -> None:
    gun = replace(DIAL, kind="infrared")
    assert "look of the iron (emissivity 0.85, from 0.60 to 0.95)" in doubt_words(gun, surface_of("oxidised cast iron"))
    assert "beside it would" in doubt_words(DIAL, None)
    assert "Until it is checked" in doubt_words(replace(DIAL, checked_on=""), None)


def test_how_far_a_check_can_be_carried() -> None:
    ice = Check(instrument="dial", point=CheckPoint.ICE, shown=274.0, on=date(2026, 3, 2), pressure=101_325.0)
    boil = replace(ice, point=CheckPoint.BOIL)
    assert gain_words(DIAL, [], "F") == ""
    assert "boiling water tells more" in gain_words(DIAL, [ice], "F")
    assert "ice water tells more" in gain_words(DIAL, [boil], "F")
    assert "boiling" not in gain_words(replace(DIAL, kind="infrared"), [ice], "F")
    both = gain_words(replace(DIAL, gain=0.02), [ice, boil], "F")
    assert both.startswith("It gains 2 °F in each 100.")
    assert gain_words(replace(DIAL, gain=-0.02), [ice, boil], "C").startswith("It loses 2 °C in each 100.")
    assert "carried on" in both


def test_a_check_far_off_is_a_question() -> None:
    boil = Check(
        instrument="dial", point=CheckPoint.BOIL, shown=kelvin(300, "F"), on=date(2026, 3, 2), pressure=101_325.0
    )
    assert far_off_words(boil, "F").startswith("300 °F is far from the 212 °F of this check.")


@given(st.floats(-15, 15), st.floats(0.1, 5), units)
def test_an_error_is_never_negative_in_words(offset: float, doubt: float, unit: str) -> None:
    assert is_plain(instrument_words(replace(DIAL, offset=offset, offset_doubt=doubt), AT, "bread heat", unit))


@pytest.mark.parametrize(("change", "said"), [(3.0, "5 °F higher"), (-3.0, "5 °F lower")])
def test_drift_says_which_way_and_since_when(change: float, said: str) -> None:
    words = drifted(Drift(instrument="dial", change=change, since=date(2025, 11, 2)), "F")
    assert f"{said} than it did on 2 November 2025" in words


# Water boils at 100.0 °C (212 °F) at 101 325 Pa, ice melts at 0 °C
def test_a_check_stands_beside_what_is_right() -> None:
    ice = Check(
        instrument="dial", point=CheckPoint.ICE, shown=kelvin(34.5, "F"), on=date(2026, 3, 2), pressure=101_325.0
    )
    assert check_line(ice, "F") == "2 March 2026: 34.5 °F in ice water, where 32.0 is right"
    boil = replace(ice, point=CheckPoint.BOIL, shown=kelvin(98.0, "C"))
    assert check_line(boil, "C") == "2 March 2026: 98 °C in boiling water, where 100.0 is right"


def test_a_mirror_is_not_to_be_trusted() -> None:
    assert "Do not trust infrared" in measured_emissivity_words(surface_of("polished cast iron"))
    dull = surface_of("stove paint")
    assert f"about {dull.usual:.2f}, from {dull.low:.2f} to {dull.high:.2f}" in measured_emissivity_words(dull)


def test_what_an_infrared_setting_means_on_this_cooktop() -> None:
    found = CorrectedReading(
        typed=kelvin(400.0, "F"),
        corrected=kelvin(420.0, "F"),
        low=kelvin(410.0, "F"),
        high=kelvin(430.0, "F"),
        advice="",
    )
    words = emissivity_words(surface_of("stove paint"), "stove paint", found, EDGE)
    assert words.endswith("Where this one shows 400 °F it is really about 420 °F, from 410 to 430 °F.")
    assert emissivity_words(None, "marble", None, EDGE) == (
        "The emissivity of “marble” is not known; read a blackened or taped spot."
    )
    shiny = emissivity_words(surface_of("polished cast iron"), "", replace(found, advice="Tape it."), EDGE)
    assert shiny.endswith("Tape it.")
