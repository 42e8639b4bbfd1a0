"""Flue and draught in words: pascals and inches agree, each band has its meaning, and nothing assumed goes unsaid."""

import re

import pytest
from hypothesis import given
from hypothesis import strategies as st

from cookstove_gui.cooking.safety.chimney_watch import Draught, FlueAnswer, flue_bands
from cookstove_gui.forecast.answers import Quantiles, Zone
from cookstove_gui.phrases.my_stove.flue import (
    Assumed,
    draught_caution,
    draught_line,
    flue_band_lines,
    flue_decides,
    flue_heat_line,
)
from cookstove_gui.units import kelvin

WORKING = next(band for band in flue_bands() if band.name == "working")


def made(pascals: float, spread: float = 2.0) -> Draught:
    return Draught(
        pascals=Quantiles(p10=pascals - spread, p50=pascals, p90=pascals + spread),
        weak=pascals < 5.0,
        backwards=pascals < 0.0,
        decides=flue_decides(),
    )


def answer(band: str = "working", hot: float = 0.0, cool: float = 0.0) -> FlueAnswer:
    return FlueAnswer(
        band=next(found for found in flue_bands() if found.name == band),
        too_cool_now=0.0,
        too_hot_now=0.0,
        too_cool_within_hour=cool,
        too_hot_within_hour=hot,
        decides="",
    )


def zone(fahrenheit: float, read: float | None = None) -> Zone:
    heat = kelvin(fahrenheit, "F")
    return Zone(spot="flue", p10=heat - 5, p50=heat, p90=heat + 5, last_reading=read, last_reading_age_min=None)


# 1 in. of water at 4 °C is 249.089 Pa (conventional)
def test_a_draught_in_both_units() -> None:
    assert draught_line(made(12.4544), pipe_is_known=True, assumed=Assumed.NOTHING) == (
        "The flue draws about 12 Pa (0.050 in. of water), between 10 and 14, before wind, bends and soot. Most stoves "
        "want 10 to 20 Pa at working heat (common practice; the stove’s manual decides)."
    )


@given(st.floats(-40, 60), st.booleans(), st.sampled_from(Assumed))
def test_a_draught_always_says_its_way_and_what_was_assumed(pascals: float, known: bool, assumed: Assumed) -> None:
    line = draught_line(made(pascals), pipe_is_known=known, assumed=assumed)
    assert ("the wrong way" in line) is (pascals < 0)
    assert ("at room temperature" in line) is not known
    assert line.endswith(assumed.value)
    shown = re.search(r"about (\d+) Pa \((\d\.\d+) in\.", line)
    assert shown is not None
    assert float(shown[1]) == pytest.approx(abs(pascals), abs=0.51)
    assert float(shown[2]) * 249.089 == pytest.approx(abs(pascals), abs=0.13)


def test_only_a_weak_or_reversed_draught_is_cautioned() -> None:
    assert draught_caution(made(12.0)) == ""
    assert "smoke may come out when a door opens" in draught_caution(made(3.0))
    assert "smoke comes into the room" in draught_caution(made(-2.0))
    assert draught_caution(made(3.0)).endswith(flue_decides())


def test_a_flue_in_its_band_and_unit() -> None:
    assert flue_heat_line(answer(), zone(350.0, read=450.0), "F") == (
        "The flue pipe is about 350 °F: working. The usual range once the fire burns."
    )
    assert "is about 177 °C, estimated (not read in this session): working" in flue_heat_line(
        answer(), zone(350.0), "C"
    )


@pytest.mark.parametrize(
    ("found", "hot", "cool"),
    [
        (answer(hot=0.4), True, False),
        (answer(cool=0.4), False, True),
        (answer(hot=0.2, cool=0.2), False, False),
        (answer("too hot", hot=1.0), False, False),
        (answer("too cool", cool=1.0), False, False),
    ],
)
def test_what_may_come_within_the_hour_is_said_once_it_is_likely(found: FlueAnswer, hot: bool, cool: bool) -> None:
    line = flue_heat_line(found, zone(350.0), "F")
    assert ("get too hot within the hour" in line) is hot
    assert ("get too cool within the hour" in line) is cool


def test_bands_in_both_units_as_common_practice() -> None:
    assert "too cool below 250 °F, working from 250 to 475 °F, too hot above 475 °F" in flue_band_lines("F")
    told = flue_band_lines("C")
    assert "too cool below 121 °C" in told
    assert "246 °C" in told
    assert "common practice" in told
