"""Sessions are found by words of title, tag, note, wood, day and month, and by the heat that the oven reached."""

from datetime import timedelta

import pytest

from cookstove_gui.desk import Desk
from cookstove_gui.desk.logbook.cards import Cards, card_inputs
from cookstove_gui.desk.logbook.changing import set_tags
from cookstove_gui.desk.logbook.finding import Wanted, found, wanted
from tests.held_clock import HeldClock

from .made import keep


@pytest.fixture
def titles(held_desk: Desk, held_clock: HeldClock) -> object:
    """What a search finds, by title."""
    rye = keep(held_desk, "Rye", held_clock() - timedelta(days=9), (90, 250, 380, 430), "crust à point")
    keep(held_desk, "Stew", held_clock() - timedelta(days=40), (90, 180, 260, 270), "wind from the north")
    set_tags(held_desk, rye, "sourdough, Christmas")
    cards = Cards(held_desk.logbook).worked_out(card_inputs(held_desk))

    def search(text: str, unit: str = "F") -> list[str]:
        return [card.summary.title for card in found(cards, wanted(text, "C" if unit == "C" else "F"))]

    return search


@pytest.mark.parametrize(
    ("text", "finds"),
    [
        ("", ["Rye", "Stew"]),
        ("rye", ["Rye"]),
        ("SOUR", ["Rye"]),
        ("north", ["Stew"]),
        ("birch", ["Rye", "Stew"]),
        ("birch wind", ["Stew"]),
        ("february", ["Stew"]),
        ("march 2026", ["Rye"]),
        ("400", ["Rye"]),
        (">260", ["Rye", "Stew"]),
        ("430", ["Rye"]),
        ("431", []),
        ("210C", ["Rye"]),
        ("rye 270", ["Rye"]),
        ("à point", ["Rye"]),
        ("parsnip", []),
    ],
)
def test_a_search_finds(titles, text: str, finds: list[str]) -> None:  # type: ignore[no-untyped-def]
    assert titles(text) == finds


def test_a_number_is_meant_in_the_unit_on_the_screen(titles) -> None:  # type: ignore[no-untyped-def]
    assert titles("220", "C") == ["Rye"]  # 428 °F
    assert titles("222", "C") == []  # 431.6 °F


def test_years_and_small_numbers_are_words() -> None:
    assert wanted("2026 14", "F") == Wanted(words=("2026", "14"), least=None, unit="F")
