"""The cooktop's hot side in words: which way, by how much, and nothing claimed of a spot that was not read."""

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from cookstove_gui.forecast.answers import SpotPattern
from cookstove_gui.phrases.my_stove.hot_side import (
    behind_words,
    half_interval,
    hot_side_words,
    signed_difference,
    spot_offset,
)
from cookstove_gui.stove.stove import stove_with_default_spots
from cookstove_gui.units import kelvin
from tests.phrases.facts import is_plain, numbers, units

STOVE = stove_with_default_spots("range")


def pattern(**means: float) -> tuple[SpotPattern, ...]:
    return tuple(
        SpotPattern(spot=f"top_{name}", mean=mean, p10=mean - 5, p90=mean + 5, readings=9)
        for name, mean in means.items()
    )


def whole(left: float, right: float, back_more: float) -> tuple[SpotPattern, ...]:
    return pattern(front_left=left, back_left=left + back_more, front_right=right, back_right=right + back_more)


def test_hot_side_in_one_sentence() -> None:
    rows = pattern(front_left=-20, back_left=-10, front_middle=-5, back_middle=5, front_right=10, back_right=20)
    assert hot_side_words(STOVE, rows, "C") == (
        "The right runs about 30 °C hotter than the left, and the back runs about 10 °C hotter than the front."
    )


def test_sides_that_run_alike_are_told_so() -> None:
    assert hot_side_words(STOVE, whole(0.0, 0.1, -10.0), "F") == (
        "Left and right run alike, and the front runs about 18 °F hotter than the back."
    )


@given(st.floats(-100, 100), st.floats(-100, 100), st.floats(-100, 100), units)
def test_turning_the_stove_round_turns_the_words_round(left: float, right: float, back: float, unit: str) -> None:
    said, other = (hot_side_words(STOVE, rows, unit) for rows in (whole(left, right, back), whole(right, left, back)))
    assert is_plain(said)
    assert numbers(said) == numbers(other)
    assert ("the left runs" in said.lower()) is ("the right runs" in other.lower())


def test_readings_are_asked_for_when_there_are_none() -> None:
    assert "Read the cooktop" in hot_side_words(STOVE, (), "F")
    unread = tuple(replace(row, readings=0) for row in whole(0.0, 10.0, 5.0))
    assert "Read the cooktop" in hot_side_words(STOVE, unread, "F")


@pytest.mark.parametrize(
    ("mean", "p10", "p90", "said"),
    [
        (20.0, 10.0, 30.0, "36 °F hotter, likely 18 to 54"),
        (-20.0, -30.0, -10.0, "36 °F cooler, likely 18 to 54"),
        (2.0, -5.0, 10.0, "about the mean, from −9 to +18 °F"),
    ],
)
def test_a_spot_against_the_mean(mean: float, p10: float, p90: float, said: str) -> None:
    found = SpotPattern(spot="top_back_left", mean=mean, p10=p10, p90=p90, readings=9)
    assert spot_offset(found, "F") == said
    assert spot_offset(replace(found, readings=0), "F") == "not read yet"


def test_a_difference_with_its_sign() -> None:
    assert [signed_difference(kelvin, "F") for kelvin in (20.0, -20.0, 0.1)] == ["+36", "−36", "0"]


def test_what_the_sentence_stands_on() -> None:
    rows = tuple(
        replace(row, usual=kelvin(heat, "F")) for row, heat in zip(whole(10, -10, 0), (480, 480, 460, 460), strict=True)
    )
    assert behind_words(3, rows, "F") == "Over 3 sessions and 36 readings, at a cooktop mean of 470 °F."
    assert behind_words(3, whole(10, -10, 0), "F") == ""


def test_how_sure_a_difference_is() -> None:
    assert half_interval(SpotPattern(spot="a", mean=4.0, p10=-1.0, p90=9.0, readings=2), "F") == "±9"
    assert half_interval(SpotPattern(spot="a", mean=4.0, p10=-1.0, p90=9.0, readings=2), "C") == "±5"
