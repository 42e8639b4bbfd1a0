"""Short figures and words on the screen say what the log says."""

from datetime import UTC, datetime

import pytest

from cookstove_gui.gui.cook.entry_words import entry_words, opening_words
from cookstove_gui.gui.widgets.figures import (
    age_text,
    band_text,
    estimate_text,
    moment_text,
    range_text,
    temperature_text,
)
from cookstove_gui.stove.entries import Entry, HeatBand, Kind
from cookstove_gui.stove.stove import stove_with_default_spots
from cookstove_gui.units import kelvin

NOW = datetime(2026, 1, 5, 12, 2, tzinfo=UTC)


@pytest.mark.parametrize(
    ("minutes", "words"), [(None, "unread"), (0.2, "now"), (1.0, "1 min"), (59.6, "60 min"), (150.0, "2 h")]
)
def test_age(minutes: float | None, words: str) -> None:
    assert age_text(minutes) == words


@pytest.mark.parametrize(("degrees", "unit", "words"), [(385.4, "F", "385"), (196.0, "C", "196")])
def test_temperature_is_in_whole_degrees(degrees: float, unit: str, words: str) -> None:
    assert temperature_text(kelvin(degrees, unit), unit) == words


def test_estimate_is_rounded_and_says_so() -> None:
    assert estimate_text(kelvin(383.0, "F"), "F") == "≈385"


def test_range_has_two_ends() -> None:
    assert range_text(kelvin(425.0, "F"), kelvin(475.0, "F"), "F") == "425–475"


@pytest.mark.parametrize(("name", "words"), [("bread", "bread 425–475"), ("425–475 °F", "425–475")])
def test_a_typed_band_is_not_said_twice(name: str, words: str) -> None:
    band = HeatBand(name=name, low=kelvin(425.0, "F"), high=kelvin(475.0, "F"))
    assert band_text(band, "F") == words


def test_moment_is_on_the_local_clock() -> None:
    assert moment_text(NOW, 29.0, -300) == "7:31"


def test_a_moment_beyond_the_horizon_says_so() -> None:
    assert moment_text(NOW, None, -300) == "later than 3 h"


@pytest.mark.parametrize(
    ("fraction", "words"), [(0.0, "shut"), (0.25, "¼"), (0.3, "¼"), (0.5, "½"), (0.8, "¾"), (1.0, "open")]
)
def test_opening(fraction: float, words: str) -> None:
    assert opening_words(fraction) == words


@pytest.mark.parametrize(
    ("kind", "fields", "words"),
    [
        (Kind.READING, {"spot": "oven_centre", "value": "385", "unit": "F"}, "oven centre 385 °F"),
        (Kind.READING, {"spot": "own_corner", "value": "385", "unit": "F"}, "own corner 385 °F"),
        (Kind.LIT, {}, "lit"),
        (Kind.WOOD, {"note": "two splits"}, "two splits"),
        (Kind.WOOD, {"value": "2.5", "unit": "lb"}, "2.5 lb"),
        (Kind.WOOD, {}, "wood"),
        (Kind.AIR, {"value": "0.5"}, "air ½"),
        (Kind.BYPASS, {"value": "0"}, "bypass shut"),
        (Kind.OVEN_DOOR, {"value": "open"}, "door open"),
        (Kind.PAN, {"value": "on", "spot": "top_back_left"}, "pan on top back left"),
        (Kind.NOTE, {"note": "windy"}, "windy"),
    ],
)
def test_entry(kind: Kind, fields: dict[str, str], words: str) -> None:
    entry = Entry(number=1, at=NOW, offset_minutes=-300, kind=kind, **fields)
    assert entry_words(entry, stove_with_default_spots("Kitchen stove")) == words
