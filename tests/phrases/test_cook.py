"""Sentences say what, where, when and how sure, on the cook's own clock and in the cook's own degrees."""

from datetime import UTC, datetime

import pytest

from cookstove_gui.forecast.answers import (
    Action,
    ActionKind,
    BandOutlook,
    DoubtedReading,
    NextReading,
    Outlook,
    Quantiles,
    Turn,
    TurnKind,
)
from cookstove_gui.phrases.cook import (
    action_words,
    arrival,
    doubted_words,
    fire_turn_words,
    fuel_needed,
    headline,
    next_reading_words,
    step_to_take,
)
from cookstove_gui.phrases.edge import Edge
from cookstove_gui.stove.entries import HeatBand
from cookstove_gui.stove.stove import stove_with_default_spots
from cookstove_gui.units import kelvin

EDGE = Edge(unit="F", now=datetime(2026, 1, 10, 12, 0, tzinfo=UTC), offset_minutes=-300)
BREAD = HeatBand(name="bread", low=kelvin(375.0, "F"), high=kelvin(425.0, "F"))
TYPED = HeatBand(name="425–475 °F", low=kelvin(425.0, "F"), high=kelvin(475.0, "F"))
STOVE = stove_with_default_spots("Invented stove")


def quantiles(p10: float | None, p50: float | None, p90: float | None) -> Quantiles:
    return Quantiles(p10=p10, p50=p50, p90=p90)


def band_outlook(enters: Quantiles, stays: Quantiles, chance: float = 0.9) -> BandOutlook:
    return BandOutlook(
        low=BREAD.low,
        high=BREAD.high,
        chance_reached_3h=chance,
        enters_min=enters,
        stays_min=stays,
        line_enters_min=enters.p50,
        line_leaves_min=None,
    )


@pytest.mark.parametrize(
    ("enters", "expected"),
    [
        (quantiles(24, 31, 41), "The oven reaches bread heat between 7:24 and 7:41, likely 7:31."),
        (quantiles(24, 31, None), "The oven may reach bread heat about 7:31, not before 7:24."),
        (quantiles(None, None, None), "With this fire the oven is not likely to reach bread heat within three hours."),
        (quantiles(0, 0, 3), "The oven is at bread heat now."),
        (quantiles(31, 31, 31), "The oven reaches bread heat at 7:31."),
    ],
    ids=["window", "open end", "never", "there", "certain"],
)
def test_arrival(enters: Quantiles, expected: str) -> None:
    assert arrival(BREAD, enters, EDGE) == expected


def test_typed_band_is_named_by_its_degrees() -> None:
    assert "reaches 425–475 °F between" in arrival(TYPED, quantiles(10, 20, 30), EDGE)


def test_headline_says_what_to_prepare_when_arrival_is_near() -> None:
    line = headline(BREAD, band_outlook(quantiles(24, 31, 41), quantiles(20, 40, 60)), False, (), EDGE)
    assert line.startswith("Shape the loaves. The oven reaches bread heat between 7:24")


def test_headline_in_the_band_says_how_long() -> None:
    line = headline(BREAD, band_outlook(quantiles(0, 0, 0), quantiles(20, 40, 60)), True, (), EDGE)
    assert line == "Put the loaves in. The oven is at bread heat. It likely stays until 7:40."


def test_likely_turn_of_the_fire_comes_before_everything() -> None:
    due = Turn(kind=TurnKind.RELOAD_DUE, chance=0.9, in_min=8)
    line = headline(BREAD, band_outlook(quantiles(0, 0, 0), quantiles(20, 40, 60)), True, (due,), EDGE)
    assert line == "Add wood by 7:08, or the oven falls out of its heat."


def test_wood_needed_on_the_way_up_is_said_beside_the_arrival() -> None:
    due = Turn(kind=TurnKind.RELOAD_DUE, chance=0.9, in_min=0)
    line = headline(BREAD, band_outlook(quantiles(24, 31, 41), quantiles(20, 40, 60)), False, (due,), EDGE)
    assert "between 7:24" in line
    assert fuel_needed(False, (due,), EDGE) == "It takes more wood to get there: add some now."


def test_unlikely_turn_is_not_spoken_of() -> None:
    due = Turn(kind=TurnKind.FIRE_OUT, chance=0.2, in_min=0)
    line = headline(BREAD, band_outlook(quantiles(0, 0, 0), quantiles(20, 40, 60)), True, (due,), EDGE)
    assert "out" not in line.split(".")[0]


@pytest.mark.parametrize("kind", list(TurnKind))
def test_every_turn_has_an_order_in_words(kind: TurnKind) -> None:
    assert fire_turn_words(Turn(kind=kind, chance=1.0, in_min=0), EDGE).endswith(".")


def test_slip_is_questioned_with_the_expected_value() -> None:
    slip = DoubtedReading(
        number=3,
        typed=kelvin(385.0, "F"),
        expected_p10=kelvin(270.0, "F"),
        expected_p50=kelvin(285.0, "F"),
        expected_p90=kelvin(300.0, "F"),
    )
    sentence = doubted_words(slip, "oven centre", EDGE)
    assert sentence == "oven centre: 385 typed where about 285 °F was expected. Keep or correct?"


def test_next_reading_names_the_spot_and_the_clock() -> None:
    reading = NextReading(spot="oven_centre", in_min=5, narrows=0.3)
    assert next_reading_words(reading, STOVE, EDGE) == "Worth reading next: oven centre, by 7:05."


@pytest.mark.parametrize(
    ("action", "expected"),
    [
        (Action(kind=ActionKind.WOOD, value=2.2), "Add two splits"),
        (Action(kind=ActionKind.WOOD, value=5.0), "Add 5 kg of wood"),
        (Action(kind=ActionKind.AIR, value=1.0), "Open the air wide"),
        (Action(kind=ActionKind.AIR, value=0.3), "Set the air to 30 % open"),
        (Action(kind=ActionKind.BYPASS, value=0.0), "Close the bypass"),
        (Action(), "Leave it"),
    ],
)
def test_action_words(action: Action, expected: str) -> None:
    assert action_words(action) == expected


def test_step_to_take_says_what_it_brings() -> None:
    found = Outlook(
        now=EDGE.now,
        oven=quantiles(400, 410, 420),
        ahead=(),
        band=band_outlook(quantiles(20, 30, 50), quantiles(30, 60, None)),
    )
    step = step_to_take(Action(kind=ActionKind.WOOD, value=2.2), found, BREAD, EDGE)
    assert step == "Add two splits: reaches bread heat about 7:30, holds it about 1 h."
