"""Sessions beside each other in words."""

import pytest

from cookstove_gui.cooking.fires.comparing import Comparison, Figure
from cookstove_gui.phrases.logbook.compare import (
    compare_behind,
    compare_headline,
    compare_rungs,
    difference_words,
    figure_words,
    unlike,
)
from cookstove_gui.stove.entries import HeatBand
from cookstove_gui.units import kelvin

from .test_sessions import facts

BREAD = HeatBand(name="bread", low=458.0, high=491.0)
NAMES = ("today", "8 Nov", "24 Oct")


def found(*rises: float | None, common: int = 4, **figures: tuple[float | None, ...]) -> Comparison:
    return Comparison(
        facts=tuple(facts(400.0) for _ in rises),
        figures={Figure.RISE: rises, **{Figure[name]: values for name, values in figures.items()}},
        common=tuple(f"spot_{place}" for place in range(common)),
    )


@pytest.mark.parametrize(
    ("rises", "said"),
    [
        ((99, 101, 115), "Today rises like 8 Nov, and 16 min faster than 24 Oct."),
        ((99, 70, 115), "Today rises 29 min slower than 8 Nov, and 16 min faster than 24 Oct."),
        ((99, 101, 97), "Today rises like 8 Nov and 24 Oct."),
        ((99, 101, None), "Today rises like 8 Nov; 24 Oct did not come to bread heat from cold."),
        ((None, 101, None), "Today has not come to bread heat from cold yet; 8 Nov after 1 h 41."),
        ((None, None, None), "None of them rose from cold to bread heat."),
        ((99, None, None), "Today came to bread heat after 1 h 39; the others did not rise to it from cold."),
    ],
)
def test_how_the_first_rises_against_the_others(rises: tuple[float | None, ...], said: str) -> None:
    assert compare_headline(found(*rises), NAMES, BREAD) == said


def test_where_the_sentence_is_too_long_those_that_did_not_come_are_left_out_and_never_a_difference() -> None:
    assert compare_rungs(found(99, 115, None), NAMES, BREAD) == (
        "Today rises 16 min faster than 8 Nov; 24 Oct did not come to bread heat from cold.",
        "Today rises 16 min faster than 8 Nov.",
    )
    for rises in ((99, 101, 115), (None, 101, None), (99, None, None)):
        assert len(compare_rungs(found(*rises), NAMES, BREAD)) == 1


def test_what_is_likely_is_told_as_likely_and_has_a_star() -> None:
    said = compare_headline(found(99, None), NAMES[:2], BREAD, likely=True)
    assert said == "Today is likely to come to bread heat after 1 h 39; the others did not rise to it from cold."
    assert figure_words(Figure.RISE, 99, "F", likely=True) == "1 h 39*"
    assert figure_words(Figure.BEST, None, "F", likely=True) == "–"


MANY = tuple(f"{day} Nov" for day in range(1, 13))


@pytest.mark.parametrize(
    ("first", "said"),
    [
        (99, "1 Nov came to bread heat after 1 h 39, sooner than 4 of 10 others."),
        (160, "1 Nov came to bread heat after 2 h 40, later than all the others."),
        (70, "1 Nov came to bread heat after 1 h 10, sooner than all the others."),
        (None, "1 Nov did not rise from cold to bread heat; 10 others did."),
    ],
)
def test_among_many_the_first_is_told_by_how_many_it_beats(first: float | None, said: str) -> None:
    others = (80, 95, 98, 99, 101, 103, 105, 110, 120, 150, None)
    assert compare_headline(found(first, *others), MANY, BREAD) == said


def test_among_many_today_is_told_as_today_and_the_most_unlike_by_its_name() -> None:
    names, none_yet = ("today", *MANY[1:]), (None, *[90.0] * 11)
    said = compare_headline(found(*none_yet), names, BREAD)
    assert said == "Today has not come to bread heat from cold yet; 11 others have."
    assert compare_headline(found(*[None] * 12), MANY, BREAD) == "None of the 11 others rose from cold to bread heat."
    behind = compare_behind(found(99, *[99] * 10, 140, BYPASS=(46, *[46] * 10, 74)), {}, MANY, by_clock=False)
    assert behind == (
        "All 12 from the match. The middle one of 12 rises took 1 h 39. What differs most from 12 Nov: "
        "the bypass was shut 28 min sooner."
    )


def test_a_session_that_is_over_rose() -> None:
    assert compare_headline(found(99, 115), ("1 May", "2 May"), BREAD) == "1 May rose 16 min faster than 2 May."


def test_what_differs_most_is_told_of_the_one_that_rises_most_differently() -> None:
    three = found(99, 101, 115, BYPASS=(46, 90, 74))
    assert unlike(three) == 2
    assert compare_behind(three, {}, by_clock=False) == (
        "All three from the match. What differs most: the bypass was shut 28 min sooner."
    )
    two = found(99, 80, BYPASS=(46, 44), WOOD=(7.0, 5.0))
    assert compare_behind(two, {}, by_clock=True) == (
        "Both by the clock. What differs most: 4.4 lb (2.0 kg) more wood by then."
    )


def test_what_cannot_be_compared_is_said() -> None:
    two = found(99, 80, common=1)
    said = compare_behind(two, {"spot_0": "oven centre"}, by_clock=False)
    assert said == "Both from the match. Left and right can't be compared: only oven centre was read in both."
    assert "no spot was read in both" in compare_behind(found(99, 80, common=0), {}, by_clock=False)


@pytest.mark.parametrize(
    ("figure", "own", "other", "unit", "said"),
    [
        (Figure.RISE, 99.0, 115.0, "F", "+16 min"),
        (Figure.BYPASS, 46.0, 40.0, "F", "−6 min"),
        (Figure.AIR, 277.0, 48.0, "F", "−3 h 49"),
        (Figure.AIR, 48.0, 48.3, "F", "same"),
        (Figure.WOOD, 4.76, 5.76, "F", "+2.2 lb"),
        (Figure.WOOD, 4.76, 5.76, "C", "+1.0 kg"),
        (Figure.LOADS, 5.0, 5.0, "F", "same"),
        (Figure.BEST, 480.0, 470.0, "C", "−10 °C"),
        (Figure.BEST, 480.0, 470.0, "F", "−18 °F"),
        (Figure.SIDES, 100.0, 90.0, "C", "−10 °C"),
        (Figure.ROOM, None, float(kelvin(70.0, "F")), "F", "70 °F"),
        (Figure.ROOM, 294.0, None, "F", "–"),
        (Figure.ROOM, 294.0, 294.1, "C", "same"),
    ],
)
def test_a_difference_has_its_sign_and_unit(
    figure: Figure, own: float | None, other: float | None, unit: str, said: str
) -> None:
    assert difference_words(figure, own, other, unit) == said


def test_the_first_session_is_told_in_numbers() -> None:
    assert figure_words(Figure.RISE, 99.0, "F") == "1 h 39"
    assert figure_words(Figure.BEST, float(kelvin(402.0, "F")), "F") == "402 °F"
    assert figure_words(Figure.SIDES, 100.0, "F") == "180 °F"
    assert figure_words(Figure.LOADS, None, "F") == "–"
