"""How long loads lasted, in words: no typical time where none was seen."""

from cookstove_gui.cooking.fires.burn_times import BurnSummary
from cookstove_gui.phrases.my_stove.fire import burns_words


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


def test_one_that_was_and_more_that_were_not() -> None:
    words = burns_words(BurnSummary(burns=1, typical_min=None, longest_min=70.0), "F", 50 / 1.8)
    assert words.startswith("After most loads with the air shut down the oven had not fallen 50 °F")
    assert words.endswith("the longest lasted 1 h 10 min or more.")
