"""Short figures and words on the screen say what the log says."""

from datetime import UTC, datetime

import pytest

from cookstove_gui.phrases.figures import (
    age_text,
    band_text,
    estimate_text,
    range_text,
    spot_number,
    spot_words,
    temperature_text,
)
from cookstove_gui.stove.entries import HeatBand
from cookstove_gui.units import kelvin

NOW = datetime(2026, 1, 5, 12, 2, tzinfo=UTC)


@pytest.mark.parametrize(
    ("minutes", "words"),
    [(None, "unread"), (0.2, "now"), (1.0, "1 min"), (59.6, "60 min"), (150.0, "2 h"), (8959 * 60.0, "373 d")],
)
def test_age(minutes: float | None, words: str) -> None:
    assert age_text(minutes) == words


@pytest.mark.parametrize(("degrees", "unit", "words"), [(385.4, "F", "385"), (196.0, "C", "196")])
def test_temperature_is_in_whole_degrees(degrees: float, unit: str, words: str) -> None:
    assert temperature_text(kelvin(degrees, unit), unit) == words


def test_estimate_is_rounded_and_says_so() -> None:
    assert estimate_text(kelvin(383.0, "F"), "F") == "≈385"


@pytest.mark.parametrize(
    ("believed", "typed", "means_other", "words"),
    [
        (385.0, 387.0, False, "387"),  # just read: as typed, not as believed
        (371.0, 353.0, True, "353*"),
        (383.0, None, False, "≈385"),
        (383.0, None, True, "≈385"),
        (None, None, False, "–"),
    ],
)
def test_a_spots_number_says_whether_it_was_typed_or_is_believed(
    believed: float | None, typed: float | None, means_other: bool, words: str
) -> None:
    heats = [None if heat is None else kelvin(heat, "F") for heat in (believed, typed)]
    assert spot_number(*heats, "F", means_other=means_other) == words


def test_a_spot_in_words() -> None:
    hot = kelvin(385.0, "F")
    assert spot_words(None, None, None, "", "F") == "nothing known yet"
    assert spot_words(hot, None, None, "", "F") == "about 385 °F, not read yet"
    assert spot_words(hot, None, 12.0, "", "F") == "about 385 °F, read 12 min ago"
    assert spot_words(hot, kelvin(367.0, "F"), 0.1, "typed 367, meant 385", "F") == (
        "367 °F, read just now, typed 367, meant 385"
    )


def test_range_has_two_ends() -> None:
    assert range_text(kelvin(425.0, "F"), kelvin(475.0, "F"), "F") == "425–475"


@pytest.mark.parametrize(("name", "words"), [("bread", "bread 425–475"), ("425–475 °F", "425–475")])
def test_a_typed_band_is_not_said_twice(name: str, words: str) -> None:
    band = HeatBand(name=name, low=kelvin(425.0, "F"), high=kelvin(475.0, "F"))
    assert band_text(band, "F") == words
