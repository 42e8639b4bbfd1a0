"""Heats, minutes, vessels and acts are found in sentences of many styles, and each stands where it says it does.

`sentences/tuned.toml` are those that the rules were written by, `sentences/held_out.toml` were first looked at after.
"""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from cookstove_gui.cooking.supper.recipe.finds import HeatOf
from cookstove_gui.cooking.supper.recipe.sentences import LONGEST_TEXT, read_sentences
from cookstove_gui.errors import InputProblem
from cookstove_gui.units import degrees
from tests.cooking.supper.sentences import Compared, compared

HALVES = [pytest.param(row, id=f"{half}: {row.text[:50]}") for half in ("tuned", "held_out") for row in compared(half)]


def test_there_are_enough_sentences() -> None:
    assert len(HALVES) >= 80


@pytest.mark.parametrize("row", HALVES)
def test_what_a_careful_cook_finds_is_found_and_nothing_else(row: Compared) -> None:
    assert row.found == row.wanted


def test_each_find_stands_where_it_says() -> None:
    text = "Mix and knead.\nBake at 425 °F for 20-25 minutes in a loaf pan, then lower to a moderate oven.\n"
    second = read_sentences(text)[1]
    places = [one.place for one in (*second.heats, *second.minutes, *second.vessels, *second.acts)]
    assert [text[place.start : place.end] for place in places] == [
        "425 °F",
        "moderate oven",
        "20-25 minutes",
        "loaf pan",
        "Bake",
        "lower to",
    ]


def test_a_name_is_read_in_the_table_that_was_chosen_and_says_which() -> None:
    text = "Bake in a slow oven."
    wide, narrow = (read_sentences(text, table)[0].heats[0] for table in ("wide", "narrow"))
    assert [round(degrees(heat or 0.0, "F")) for heat in (wide.low, wide.high)] == [250, 350]
    assert [round(degrees(heat or 0.0, "F")) for heat in (narrow.low, narrow.high)] == [300, 325]
    assert "1976" in narrow.source


def test_a_name_that_no_table_knows_has_no_degrees() -> None:
    heat = read_sentences("Bake in a sharp oven.")[0].heats[0]
    assert (heat.name, heat.low, heat.of) == ("sharp", None, HeatOf.OVEN)


@pytest.mark.parametrize("text", ["", "  \n", "bake " * LONGEST_TEXT])
def test_no_text_and_far_too_much_is_refused(text: str) -> None:
    with pytest.raises(InputProblem):
        read_sentences(text)


@pytest.mark.law
@given(st.text(alphabet="0123456789½¼/-–° .,;()FCabehiknotruvmsgd\n", max_size=200))
def test_any_text_is_read_and_finds_lie_inside_it(text: str) -> None:
    if not text.strip():
        return
    for sentence in read_sentences(text):
        for one in (*sentence.heats, *sentence.minutes, *sentence.vessels, *sentence.acts):
            assert sentence.place.start <= one.place.start < one.place.end <= sentence.place.end
        for time in sentence.minutes:
            assert 0 < time.shortest <= time.longest
