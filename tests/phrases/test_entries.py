"""Entries in a few words: the number and unit as typed, and what it means where that is something else."""

from dataclasses import replace
from datetime import UTC, datetime, timedelta

import pytest

from cookstove_gui.phrases.edge import Edge
from cookstove_gui.phrases.entries import entry_words, last_words, meant_tip, meant_words, opening_words, place_words
from cookstove_gui.stove.entries import Entry, Kind
from cookstove_gui.stove.stove import stove_with_default_spots, unchecked
from cookstove_gui.units import kelvin

NOW = datetime(2026, 1, 10, 12, 0, tzinfo=UTC)
STOVE = stove_with_default_spots("Kitchen stove")


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
        (Kind.OUT, {}, "fire out"),
        (Kind.WOOD, {"note": "two splits"}, "two splits"),
        (Kind.WOOD, {"value": "2.5", "unit": "lb"}, "2.5 lb"),
        (Kind.WOOD, {}, "wood"),
        (Kind.AIR, {"value": "0.5"}, "air ½"),
        (Kind.BYPASS, {"value": "0"}, "bypass shut"),
        (Kind.OVEN_DOOR, {"value": "open"}, "door open"),
        (Kind.PAN, {"value": "on", "spot": "top_back_left"}, "pan on top back left"),
        (Kind.NOTE, {"note": "windy"}, "windy"),
        (Kind.CARRIED, {"value": "386", "unit": "F"}, "still warm, cooktop 386 °F"),
        (Kind.OVEN_IN, {"value": "2.3", "unit": "lb", "note": "loaf of bread"}, "2.3 lb loaf of bread into the oven"),
        (Kind.OVEN_IN, {"note": "loaf of bread"}, "loaf of bread into the oven"),
        (Kind.PROBE, {"value": "96", "unit": "F", "note": "loaf of bread"}, "probe 96 °F"),
        (Kind.TURNED, {"note": "loaf of bread"}, "loaf of bread turned"),
        (Kind.DUE, {"value": "20", "unit": "min"}, "look at the bake in 20 min"),
        (Kind.OVEN_OUT, {}, "bake out of the oven"),
    ],
)
def test_entry(kind: Kind, fields: dict[str, str], words: str) -> None:
    entry = Entry(number=1, at=NOW, offset_minutes=-300, kind=kind, **fields)
    assert entry_words(entry, STOVE) == words


def test_a_back_dated_entry_says_where_it_went() -> None:
    def at(minute: int, number: int, kind: Kind = Kind.READING) -> Entry:
        moment = NOW + timedelta(minutes=minute)
        return Entry(number=number, at=moment, offset_minutes=-300, kind=kind, spot="flue", value="410", unit="F")

    first, wood, last = at(0, 1), at(20, 2, Kind.WOOD), at(30, 3)
    entry = at(10, 4)
    assert place_words(entry, (first, last, entry), STOVE) == "at 7:10, before the 7:30 reading"
    assert place_words(entry, (first, last, wood, entry), STOVE) == "at 7:10, before the 7:20 410 F"
    assert place_words(last, (first, wood, last), STOVE) == ""


def test_what_was_last_read_at_a_spot() -> None:
    rows = (reading("353"), replace(reading("371"), number=2, at=NOW + timedelta(minutes=9)))
    edge = Edge(unit="F", now=NOW, offset_minutes=-300)
    assert last_words("top_front_left", rows, edge) == "371 at 7:09"
    assert last_words("flue", rows, edge) == ""
    assert (
        last_words("top_front_left", rows, replace(edge, offset_minutes=60)) == "371 at 13:09"
    )  # the clock of the page


def reading(value: str, unit: str = "F") -> Entry:
    return Entry(
        number=1, at=NOW, offset_minutes=-300, kind=Kind.READING, spot="top_front_left", value=value, unit=unit
    )


def test_a_meant_number_is_in_the_unit_that_was_typed() -> None:
    assert meant_words(reading("353"), kelvin(371.0, "F")) == "typed 353, meant 371"
    assert meant_words(reading("178", "C"), kelvin(188.0, "C")) == "typed 178, meant 188"
    assert meant_words(reading("353"), None) == ""


def test_why_it_means_something_else() -> None:
    stove = replace(
        STOVE, cooktop_surface="stove paint", instruments=(replace(unchecked("gun", "infrared"), emissivity=0.7),)
    )
    tip = meant_tip(reading("353"), stove, kelvin(320.0, "F"))
    assert tip.startswith("top front left: typed 353, meant 320 °F. The infrared thermometer is set to 0.70, ")
    assert tip.endswith("The log keeps what was typed.")
    assert meant_tip(reading("353"), stove, None) == ""
