"""Sentences say what, where, when and how sure, on the cook's own clock and in the cook's own degrees."""

from datetime import UTC, datetime

import pytest

from cookstove_gui.forecast.answers import (
    Action,
    ActionKind,
    BandOutlook,
    DoubtedReading,
    Outlook,
    Quantiles,
)
from cookstove_gui.phrases.cook import action_words, doubted_words, holds_words, step_to_take
from cookstove_gui.phrases.edge import Edge
from cookstove_gui.stove.entries import HeatBand
from cookstove_gui.units import kelvin

EDGE = Edge(unit="F", now=datetime(2026, 1, 10, 12, 0, tzinfo=UTC), offset_minutes=-300)
BREAD = HeatBand(name="bread", low=kelvin(375.0, "F"), high=kelvin(425.0, "F"))


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
        line_leaves_min=None if enters.p50 is None or stays.p50 is None else enters.p50 + stays.p50,
    )


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


@pytest.mark.parametrize(
    ("action", "expected"),
    [
        (Action(kind=ActionKind.WOOD, value=2.2), "Add two splits"),
        (Action(kind=ActionKind.KINDLING, value=0.9), "Relight on kindling"),
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


def test_a_heat_that_outlasts_the_horizon_is_held_for_hours() -> None:
    assert holds_words(None) == "holds it for hours"
    assert holds_words(62.0) == "holds it about 1 h"
