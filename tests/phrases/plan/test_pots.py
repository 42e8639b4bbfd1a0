"""Several pots in words: who has a place, how likely it is right, and when the others get one."""

import pytest
from hypothesis import given

from cookstove_gui.phrases.edge import Edge
from cookstove_gui.phrases.plan.pots import pot_chance, pot_later, pots_headline, why_not_words
from cookstove_gui.units import kelvin
from tests.phrases.facts import EDGE, ahead, edges, minutes_ahead


@pytest.mark.parametrize(
    ("names", "without", "said"),
    [
        ([], [], "Choose what is to be on the stove at once."),
        (["soup"], [], "Soup has a place now."),
        (["soup", "eggs"], [], "Both have a place now."),
        (["soup", "eggs", "bacon"], [], "All 3 have a place now."),
        (["soup", "eggs", "bacon"], ["eggs"], "2 of 3 have a place now; not eggs."),
        (["soup", "eggs", "bacon"], ["soup", "eggs", "bacon"], "0 of 3 have a place now; not soup, eggs and bacon."),
    ],
)
def test_who_has_a_place(names: list[str], without: list[str], said: str) -> None:
    assert pots_headline(names, without) == said


def test_a_move_is_told_with_what_it_gains() -> None:
    one = pots_headline(["soup", "eggs"], ["eggs"], [("soup", "front right")], 0.23)
    assert one == "Move “soup” to front right now: 2 in 10 more chance."
    two = pots_headline(["soup", "eggs"], [], [("soup", "front right"), ("eggs", "back left")], 0.31)
    assert two == "Move “soup” to front right and “eggs” to back left now: 3 in 10 more chance together."


def test_what_a_pot_wants_is_told_beside_what_the_cooktop_has() -> None:
    def said(why: str, *heats: float) -> str:
        told = (kelvin(heats[0], "F"), kelvin(heats[1], "F")) if heats else None
        return why_not_words("warm plates", why, (kelvin(100.0, "F"), kelvin(170.0, "F")), told, EDGE)

    assert said("too hot", 330, 600) == "Warm plates: 100 to 170 °F is wanted, the coolest spot is at 330 °F."
    assert said("too cool", 70, 90) == "Warm plates: 100 to 170 °F is wanted, the hottest spot is at 90 °F."
    assert said("its spots are taken", 100, 600) == ""
    assert said("too hot") == ""


def test_a_chance_is_told_in_tenths() -> None:
    assert (pot_chance(0.83), pot_chance(0.7)) == ("8 in 10", "7 in 10")


def test_a_pot_that_gets_no_place_has_no_clock() -> None:
    assert pot_later(None, EDGE) == ""


@given(minutes_ahead, edges())
def test_a_later_place_lies_ahead(minutes: float, edge: Edge) -> None:
    (found,) = ahead(pot_later(minutes, edge), edge)
    assert minutes - 1 <= found <= minutes + 1
