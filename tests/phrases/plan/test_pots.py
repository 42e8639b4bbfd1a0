"""Several pots in words: who has a place, how likely it is right, and when the others get one."""

import pytest
from hypothesis import given

from cookstove_gui.phrases.edge import Edge
from cookstove_gui.phrases.plan.pots import (
    moved_words,
    oven_cost_words,
    places_words,
    pot_chance,
    pot_line,
    pots_rungs,
    why_not_words,
)
from cookstove_gui.units import kelvin
from tests.phrases.facts import EDGE, ahead, edges, minutes_ahead


def told(
    names: list[str],
    later: tuple[tuple[str, float], ...] = (),
    without: tuple[str, ...] = (),
    moves: tuple[tuple[str, str], ...] = (),
    gain: float = 0.0,
) -> tuple[str, ...]:
    return pots_rungs(names, later=later, without=without, moves=moves, gain=gain, edge=EDGE)


@pytest.mark.parametrize(
    ("names", "later", "without", "said"),
    [
        ([], (), (), "Choose what is to be on the stove at once."),
        (["soup"], (), (), "Soup has a place now."),
        (["soup", "eggs"], (), (), "Both have a place now."),
        (["soup", "eggs", "bacon"], (), (), "All 3 have a place now."),
        (["soup", "eggs", "bacon"], (), ("eggs",), "2 of 3 have a place now; “eggs” has no place."),
        (
            ["soup", "eggs", "bacon"],
            (("bacon", 22.0),),
            ("soup", "eggs"),
            "0 of 3 have a place now; “bacon” fits from 8:25, “soup” and “eggs” have no place.",
        ),
        (["soup", "eggs"], (("soup", 22.0),), (), "1 of 2 has a place now; “soup” fits from 8:25."),
    ],
)
def test_who_has_a_place(
    names: list[str], later: tuple[tuple[str, float], ...], without: tuple[str, ...], said: str
) -> None:
    assert told(names, later, without)[0] == said


def test_a_move_is_told_first_and_with_what_it_gains() -> None:
    one = told(["soup", "eggs"], (), ("eggs",), (("soup", "front right"),), 0.23)
    assert one == (
        "Move “soup” to the front right now: 2 in 10 more chance; “eggs” has no place.",
        "Move “soup” to the front right now: 2 in 10 more chance.",
        "Move “soup” to the front right now.",
    )
    two = told(["soup", "eggs"], moves=(("soup", "front right"), ("eggs", "back left")), gain=0.31)
    assert two[0] == ("Move “soup” to the front right and “eggs” to the back left now: 3 in 10 more chance together.")


def line(**known: object) -> tuple[str, str]:
    found = pot_line("front right", 0.83, EDGE, **known)  # type: ignore[arg-type]
    return found.where, found.chance


def test_a_pot_in_words() -> None:
    assert line() == ("front right, for long", "8 in 10")
    assert line(until_min=22.0) == ("front right, until 8:25", "8 in 10")
    assert line(is_own=True) == ("front right, your choice", "8 in 10")
    assert line(stands="back left") == (
        "move it from the back left to the front right now; there for long",
        "8 in 10",
    )
    assert line(later_min=22.0, until_min=60.0) == ("front right, from 8:25 until 9:03", "then 8 in 10")
    assert line(why_not="too hot") == ("nothing on the cooktop is cool enough", "no place")
    assert line(why_not="too cool", in_oven=True) == ("the oven isn’t hot enough", "no place")
    assert line(why_not="its spots are taken") == ("its spots are taken", "no place")


@pytest.mark.parametrize(
    ("names", "placed", "said"),
    [(1, 1, "it has a place now"), (3, 3, "all have a place now"), (5, 1, "1 of 5 has"), (5, 3, "3 of 5 have")],
)
def test_how_many_have_a_place(names: int, placed: int, said: str) -> None:
    assert places_words(names, placed).startswith(said)


def test_the_key_for_a_move_done_names_the_pot() -> None:
    assert moved_words(["soup"]) == "“soup” is moved"
    assert moved_words(["soup", "eggs"]) == "They are moved"


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


@given(minutes_ahead, edges())
def test_a_later_place_lies_ahead(minutes: float, edge: Edge) -> None:
    (found,) = ahead(pot_line("front right", 0.7, edge, later_min=minutes).on_pot, edge)
    assert minutes - 1 <= found <= minutes + 1


@pytest.mark.parametrize(
    ("cost", "pots", "said"),
    [
        (None, 2, ""),
        (4.0, 0, ""),
        (4.0, 1, "It takes up to 7 °F from the oven."),
        (4.0, 3, "Together they take up to 7 °F from the oven."),
        (0.4, 1, "The oven hardly feels it."),
        (-0.2, 2, "The oven hardly feels them."),
    ],
)
def test_what_pots_take_from_the_oven(cost: float | None, pots: int, said: str) -> None:
    assert oven_cost_words(cost, pots, Edge(unit="F", now=EDGE.now, offset_minutes=0)) == said
