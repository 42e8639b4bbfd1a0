"""The cooktop's hot side in words: which way, by how much, and nothing claimed of a spot that was not read."""

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from cookstove_gui.cooking.fires.sides import Paired, Sides
from cookstove_gui.forecast.answers import SpotPattern
from cookstove_gui.forecast.learning.next_round import NextRound
from cookstove_gui.phrases.my_stove.hot_side import (
    behind_words,
    half_interval,
    hot_side_words,
    signed_difference,
    spot_offset,
    unknown_words,
    usual_words,
    when_words,
)
from cookstove_gui.stove.stove import stove_with_default_spots
from cookstove_gui.units import kelvin
from tests.phrases.facts import is_plain, numbers, units

STOVE = stove_with_default_spots("range")


def paired(mean: float, half: float | None = 5.0, sessions: int = 4) -> Paired:
    """A difference in °F with its half interval."""
    low, high = (None, None) if half is None else ((mean - half) / 1.8, (mean + half) / 1.8)
    return Paired(mean=mean / 1.8, low=low, high=high, rounds=9, sessions=sessions)


def said(across: Paired | None, deep: Paired | None, unit: str = "F") -> str:
    return hot_side_words(Sides(across=across, deep=deep), unit)


def pattern(**means: float) -> tuple[SpotPattern, ...]:
    return tuple(
        SpotPattern(spot=f"top_{name}", mean=mean, p10=mean - 5, p90=mean + 5, readings=9)
        for name, mean in means.items()
    )


def test_hot_side_in_one_sentence_with_its_intervals() -> None:
    assert said(paired(-54.0, 9.0), paired(-18.0), "C") == (
        "The right runs about 30 °C hotter than the left (±5), the back about 10 °C hotter than the front (±3)."
    )


def test_many_readings_make_no_difference_certain() -> None:
    assert "(±1)" in said(paired(-12.0, 0.3), None)
    assert half_interval(SpotPattern(spot="a", mean=4.0, p10=3.9, p90=4.1, readings=900), "C") == "±1"


def test_sides_that_run_alike_or_are_not_told_apart_are_told_so() -> None:
    assert said(paired(2.0, 6.0), paired(30.0)) == (
        "Left and right run alike, within 8 °F, the front runs about 30 °F hotter than the back (±5)."
    )
    assert said(paired(-20.0, 44.0), None) == "Left and right are not told apart yet: −20 ±44 °F."


def test_one_round_claims_no_more_than_that_round() -> None:
    assert said(paired(40.0, None), None) == "The left was 40 °F hotter than the right in the one round so far."
    assert said(paired(0.1, None), None) == "Left and right were alike in the one round so far."


@given(st.floats(-100, 100), st.floats(1, 40), units)
def test_turning_the_stove_round_turns_the_words_round(mean: float, half: float, unit: str) -> None:
    one, other = (said(paired(sign * mean, half), None, unit) for sign in (1.0, -1.0))
    assert is_plain(one)
    assert [abs(number) for number in numbers(one)] == [abs(number) for number in numbers(other)]
    if "hotter" in one and one != other:
        assert ("the left runs" in one.lower()) is ("the right runs" in other.lower())


def test_readings_are_asked_for_when_there_are_none() -> None:
    assert "Read the cooktop" in said(None, None)


def _next(before: float, after: float) -> NextRound:
    return NextRound(
        spots=("top_front_left", "top_back_left", "top_back_right"), before=before / 1.8, after=after / 1.8
    )


def test_what_is_unknown_and_which_readings_would_settle_it() -> None:
    rows = pattern(front_left=10, back_left=0, back_right=-10)
    asked = "Front left, back left and back right, read in one round, would settle most: ±49 becomes ±36 °F."
    nothing = tuple(replace(row, readings=0) for row in rows)
    assert unknown_words(STOVE, nothing, _next(49, 36), "F", 8) == asked
    never = (*rows[:2], replace(rows[2], readings=0))
    assert unknown_words(STOVE, never, _next(49, 36), "F", 8) == f"Not read yet: back right. {asked}"
    assert (
        unknown_words(STOVE, rows, _next(49, 36), "F", 8) == f"Each spot of the top is known to about ±49 °F. {asked}"
    )


def test_no_more_readings_are_asked_for_where_they_change_little() -> None:
    rows = pattern(front_left=10, back_left=0, back_right=-10)
    assert (
        unknown_words(STOVE, rows, _next(4, 3), "F", 8)
        == "Each spot of the top is known to about ±4 °F; more readings change little."
    )
    assert unknown_words(STOVE, rows, _next(20, 19.5), "F", 8).endswith(
        "It takes many more rounds to know them better."
    )
    assert unknown_words(STOVE, rows, None, "F", 8) == ""


def test_after_one_or_two_fires_another_one_tells_more_than_more_readings() -> None:
    rows = pattern(front_left=10, back_left=0, back_right=-10)
    assert unknown_words(STOVE, rows, _next(4, 3), "F", 2) == (
        "Each spot of the top is known to about ±4 °F on so few fires; another firing tells more than another round."
    )


@pytest.mark.parametrize(
    ("stage", "bypass", "said"),
    [
        ("", "", ""), ("steady", "", "on a steady fire"), ("dying down", "open", "as the fire died down, bypass open"),
        ("", "shut", "bypass shut"),
    ],
)  # fmt: skip
def test_of_which_readings(stage: str, bypass: str, said: str) -> None:
    assert when_words(stage, bypass) == said


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
        replace(row, usual=kelvin(heat, "F"))
        for row, heat in zip(
            pattern(front_left=10, back_left=10, front_right=-10, back_right=-10), (480, 480, 460, 460), strict=True
        )
    )
    assert behind_words(3, rows, "F") == "Over 3 sessions and 36 readings, at a cooktop mean of 470 °F."
    assert behind_words(3, rows, "F", "on a full fire").startswith("Over 3 sessions and 36 readings on a full fire, at")
    assert behind_words(0, pattern(front_left=0), "F") == ""
    assert behind_words(0, (), "F", "on a full fire") == "Nothing was read on a full fire."


def test_how_sure_a_difference_is() -> None:
    assert half_interval(SpotPattern(spot="a", mean=4.0, p10=-1.0, p90=9.0, readings=2), "F") == "±9"
    assert half_interval(SpotPattern(spot="a", mean=4.0, p10=-1.0, p90=9.0, readings=2), "C") == "±5"


@pytest.mark.parametrize(
    ("mean", "said"),
    [
        (-6.0, "usually 6 °F under the top’s mean, ±9"),
        (6.0, "usually 6 °F over the top’s mean, ±9"),
        (0.2, "usually at the top’s mean, ±9"),
    ],
)
def test_how_a_spot_usually_runs(mean: float, said: str) -> None:
    row = SpotPattern(spot="a", mean=mean / 1.8, p10=mean / 1.8 - 5.0, p90=mean / 1.8 + 5.0, readings=4)
    assert usual_words(row, "F", "the top’s mean") == said
