"""How a stove fires in words: times with their range, counts, and no typical time where none was seen."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from cookstove_gui.cooking.fires.burn_times import BurnSummary
from cookstove_gui.forecast.answers import Quantiles
from cookstove_gui.phrases.my_stove.fire import burns_words, hold_words, rise_words
from cookstove_gui.stove.entries import HeatBand
from cookstove_gui.units import kelvin
from tests.phrases.facts import is_plain, of, quantiles

BREAD = HeatBand(name="bread", low=kelvin(375.0, "F"), high=kelvin(425.0, "F"))


def test_rise_with_and_without_a_range() -> None:
    assert rise_words(BREAD, of(50, 65, 90), 7) == (
        "From lighting to bread heat: about 1 h 5 min, usually 50 min to 1 h 30 min (7 firings)."
    )
    assert rise_words(BREAD, of(None, 65, None), 1).endswith("about 1 h 5 min (1 firing).")


@given(quantiles(5, 170), st.integers(1, 40))
def test_a_rise_never_seen_has_no_time(rises: Quantiles, count: int) -> None:
    said = rise_words(BREAD, rises, count)
    assert is_plain(said)
    assert ("No firing in the log" in said) is (rises.p50 is None)


def test_burns_that_were_not_seen_to_end_claim_no_typical_time() -> None:
    words = burns_words(BurnSummary(burns=0, typical_min=None, longest_min=90.0), "F", 50 / 1.8)
    assert "fallen 50 °F" in words
    assert "longest seen so far lasted 1 h 30 min" in words
    assert "lasted" not in burns_words(BurnSummary(burns=0, typical_min=None, longest_min=None), "F", 50 / 1.8)


def test_burns_that_were() -> None:
    assert burns_words(BurnSummary(burns=3, typical_min=120.0, longest_min=180.0), "C", 50 / 1.8) == (
        "A load with the air shut down lasted about 2 h until the oven had fallen 28 °C, the longest 3 h (3 loads)."
    )
    assert burns_words(BurnSummary(burns=1, typical_min=120.0, longest_min=120.0), "F", 50 / 1.8).endswith(
        "had fallen 50 °F (1 load)."
    )


@pytest.mark.parametrize(
    ("typical", "longest", "count", "said"),
    [
        (None, None, 0, ""),
        (None, 40.0, 1, "It held bread heat at least 40 min, to the end of the log (1 stay)."),
        (40.0, 40.0, 1, "Once there it stayed above the low end of bread heat about 40 min (1 stay)."),
        (
            40.0, 80.0, 3,
            "Once there it stayed above the low end of bread heat about 40 min, at most 1 h 20 min (3 stays).",
        ),
    ],
)  # fmt: skip
def test_holds(typical: float | None, longest: float | None, count: int, said: str) -> None:
    assert hold_words(BREAD, typical, longest, count) == said
