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


@pytest.mark.parametrize(
    ("text", "unit", "is_heat"),
    [
        ("100", "F", True), ("99", "F", False), ("999", "F", True), ("1000", "F", False),
        ("50", "C", True), ("49", "C", False), ("600", "C", True), ("601", "C", False),
    ],
)  # fmt: skip
def test_what_a_number_may_mean_as_the_heat_of_an_oven(text: str, unit: str, is_heat: bool) -> None:
    asked = wanted(text, "C" if unit == "C" else "F")
    assert (asked.least is not None, asked.words == (text,)) == (is_heat, not is_heat)
    assert asked.unit == unit


def test_a_heat_with_its_own_unit_is_taken_in_that_and_the_last_of_two_counts() -> None:
    assert wanted("≥220C Birch", "F") == Wanted(words=("birch",), least=220.0, unit="C")
    assert wanted("220C 450", "F") == Wanted(least=450.0, unit="F")


def test_a_session_whose_oven_was_never_read_reached_no_heat(held_desk: Desk, held_clock: HeldClock) -> None:
    keep(held_desk, "Dark", held_clock() - timedelta(days=9), ())
    plain = Cards(held_desk.logbook).plain(card_inputs(held_desk))
    assert [len(found(plain, wanted(text, "F"))) for text in ("dark", "100")] == [1, 0]
    cards = Cards(held_desk.logbook).worked_out(card_inputs(held_desk))
    assert [len(found(cards, wanted(text, "F"))) for text in ("dark", "100")] == [1, 0]
