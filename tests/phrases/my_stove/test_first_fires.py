"""First fires in words: the next one with its place, and in whole sentences why one does not count."""

from dataclasses import replace

import pytest

from cookstove_gui.cooking.fires.first_fires import Lack, Shortfall, progress
from cookstove_gui.phrases.my_stove.first_fires import always_words, hill_words, next_fire_words, shortfall_words
from cookstove_gui.units import kelvin
from tests.cooking.fires.cases import FULL, KINDLING, MEDIUM, NEW, made
from tests.cooking.made import STOVE
from tests.phrases.facts import is_plain


def test_the_next_fire_is_told_with_its_place_and_the_manual() -> None:
    first, second = (next_fire_words(progress(NEW, past)) for past in ([], made(KINDLING)))
    assert first.startswith("First fire 1 of 3: a kindling fire")
    assert second.startswith("First fire 2 of 3: ")
    assert first.endswith("No food yet. The manual goes first.")


def test_nothing_is_told_once_they_are_done_or_waived_or_where_none_are_needed() -> None:
    waived = replace(NEW, first_fires_waived=True)
    for fires in (progress(NEW, made(KINDLING, MEDIUM, FULL)), progress(waived, []), progress(STOVE, [])):
        assert next_fire_words(fires) == ""


@pytest.mark.parametrize(
    ("found", "said"),
    [
        (Shortfall(Lack.TOO_SHORT, 19.6, 25.0), "The log shows 19 min of fire; it takes about 25 min."),
        (Shortfall(Lack.TOO_SHORT, 0.4, 25.0), "The log shows 1 min of fire; it takes about 25 min."),
        (Shortfall(Lack.TOO_SHORT, 119.9, 120.0), "The log shows 1 h 59 of fire; it takes about 2 h."),
        (Shortfall(Lack.NOT_READ), "The cooktop was not read; read it at least once while it is hottest."),
        (
            Shortfall(Lack.TOO_COOL, kelvin(150.0, "F"), kelvin(180.0, "F")),
            "The cooktop was read at 150 °F (66 °C) at most; it takes 180 °F (82 °C).",
        ),
        (
            Shortfall(Lack.TOO_HOT, kelvin(590.0, "F"), kelvin(400.0, "F")),
            "The cooktop went to 590 °F (310 °C), hotter than this stage should be (400 °F (204 °C)); look in the "
            "manual whether to go on.",
        ),
        (Shortfall(Lack.TOO_LITTLE_WOOD, 0, 1), "The log shows no load of wood; it takes 1."),
        (Shortfall(Lack.TOO_LITTLE_WOOD, 1, 2), "The log shows 1 load of wood; it takes 2."),
        (Shortfall(Lack.TOO_LITTLE_WOOD, 2, 3), "The log shows 2 loads of wood; it takes 3."),
        (Shortfall(Lack.AIR_NOT_SHUT), "The air was not noted wide open and then mostly shut."),
    ],
)
def test_what_is_missing_is_told(found: Shortfall, said: str) -> None:
    assert shortfall_words(found) == said


def test_the_manual_decides() -> None:
    assert is_plain(always_words())
    assert "manual comes first" in always_words()


@pytest.mark.parametrize(
    ("hottest", "counted", "said"),
    [
        (352, 312, "45 min, one load, hottest 352 °F (312 counts: one may be a slip)."),
        (352, 352, "45 min, one load, hottest 352 °F."),
        (None, None, "45 min, one load."),
    ],
)
def test_a_fire_in_a_line_tells_its_highest_ring_and_what_counts(
    hottest: float | None, counted: float | None, said: str
) -> None:
    heats = [None if heat is None else float(kelvin(heat, "F")) for heat in (hottest, counted)]
    assert hill_words(45.0, 1, *heats, (), "F") == said
