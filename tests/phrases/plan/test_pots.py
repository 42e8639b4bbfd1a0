"""Several pots in words: who has a place, how likely it is right, and when the others get one."""

import pytest
from hypothesis import given

from cookstove_gui.phrases.edge import Edge
from cookstove_gui.phrases.plan.pots import pot_chance, pot_later, pots_headline
from tests.phrases.facts import EDGE, ahead, edges, minutes_ahead


@pytest.mark.parametrize(
    ("names", "without", "said"),
    [
        ([], [], "Choose what is to be on the stove at once: Space ticks the marked one."),
        (["soup"], [], "Soup has a place now."),
        (["soup", "eggs"], [], "Both have a place now."),
        (["soup", "eggs", "bacon"], [], "All 3 have a place now."),
        (["soup", "eggs", "bacon"], ["eggs"], "2 of 3 have a place now; not eggs."),
        (["soup", "eggs", "bacon"], ["soup", "eggs", "bacon"], "0 of 3 have a place now; not soup, eggs and bacon."),
    ],
)
def test_who_has_a_place(names: list[str], without: list[str], said: str) -> None:
    assert pots_headline(names, without) == said


def test_a_chance_is_told_in_tenths() -> None:
    assert (pot_chance(0.83), pot_chance(0.7)) == ("8 in 10", "7 in 10")


def test_a_pot_that_gets_no_place_has_no_clock() -> None:
    assert pot_later(None, EDGE) == ""


@given(minutes_ahead, edges())
def test_a_later_place_lies_ahead(minutes: float, edge: Edge) -> None:
    (found,) = ahead(pot_later(minutes, edge), edge)
    assert minutes - 1 <= found <= minutes + 1
