"""When something is good and how likely, in a cook's words; never surer than the futures are."""

from dataclasses import replace
from datetime import UTC, datetime

import pytest

from cookstove_gui.cooking.fit.fit import SpotFit
from cookstove_gui.phrases.edge import Edge
from cookstove_gui.phrases.good_for import good_chance, good_when, more_words, not_words

EDGE = Edge(unit="F", now=datetime(2026, 1, 5, 16, 18, tzinfo=UTC), offset_minutes=0)


def fit(now: float, in_min: float | None, then: float, until: float | None = None, *chances: float) -> SpotFit:
    return SpotFit(
        spot="oven_centre", chance_now=now, in_min=in_min, chance_then=then, until_min=until, chances=(now, *chances)
    )


@pytest.mark.parametrize(
    ("spot", "words"),
    [
        (fit(0.9, 0.0, 0.9, 92.0), "now, until 17:50"),
        (fit(0.9, 0.0, 0.9), "now, for long"),
        (fit(0.9, 0.0, 0.9, 0.0), "now, not for long"),
        (fit(0.9, 0.0, 0.9, 2.0), "now, not for long"),
        (fit(0.9, 0.0, 0.9, 7.0), "now, until 16:25"),
        (fit(0.1, 12.0, 0.7), "from 16:30"),
        (fit(0.1, 12.0, 0.7, 90.0), "from 16:30"),
        (fit(0.1, 12.0, 0.7, 32.0), "from 16:30, until 16:50"),
        (fit(0.1, 12.0, 0.7, 12.0), "only about 16:30"),
        (fit(0.1, 12.0, 0.4), "best about 16:30"),
        (fit(0.49, 0.0, 0.7), "best about now"),
        (fit(0.5, 0.0, 0.7), "now"),
        (fit(0.1, None, 0.0), "not with this fire"),
        (replace(fit(0.1, None, 0.0), chance_ever=0.4), "perhaps"),
    ],
)
def test_when(spot: SpotFit, words: str) -> None:
    assert good_when(spot, EDGE) == words


@pytest.mark.parametrize(
    ("spot", "words"),
    [
        (fit(0.9, 0.0, 0.9, 92.0), "put in by 17:50"),
        (fit(0.9, 0.0, 0.9, 0.0), "put in now"),
        (fit(0.9, 0.0, 0.9, 2.0), "put in now"),
        (fit(0.9, 0.0, 0.9), "put in now"),
        (fit(0.5, 0.0, 0.7), "put in now"),
        (fit(0.4, 0.0, 0.7), "best about now"),
        (fit(0.1, 12.0, 0.7), "from 16:30"),
    ],
)
def test_of_a_bake_it_is_when_to_put_it_in(spot: SpotFit, words: str) -> None:
    assert good_when(spot, EDGE, is_bake=True) == words


@pytest.mark.parametrize(
    ("spot", "words"),
    [
        (fit(0.72, 0.0, 0.72, None, 0.9), "7 in 10"),  # now is what counts now
        (fit(0.3, 0.0, 0.7, None, 0.9), "3 in 10"),  # whatever was told of it before
        (fit(0.1, 12.0, 0.62, None, 0.62, 0.91), "6 to 9 in 10"),
        (fit(0.1, 12.0, 0.9, None, 0.9, 0.88), "9 in 10"),
        (fit(0.1, 12.0, 0.42, None, 0.42), "4 in 10"),
        (fit(1.0, 0.0, 1.0, None, 1.0), "9 in 10"),
        (fit(0.0, 12.0, 0.02, None, 0.02), "1 in 10"),
        (fit(0.1, None, 0.0), ""),
        (replace(fit(0.1, None, 0.0), chance_ever=0.58), "6 in 10"),
    ],
)
def test_how_likely(spot: SpotFit, words: str) -> None:
    assert good_chance(spot) == words


def test_what_this_fire_will_not_do_in_ever_less_room() -> None:
    rungs = not_words(["sear meat", "pizza", "boil"], is_out=False)
    assert rungs == (
        "Not with this fire: sear meat, pizza, boil",
        "Not with this fire: sear meat, pizza and 1 more",
        "Not with this fire: sear meat and 2 more",
        "Not with this fire: 3 tasks",
    )
    assert not_words(["pizza"], is_out=True)[0] == "Gone out of reach: pizza"
    assert not_words([], is_out=False) == ("",)


def test_rows_out_of_sight_are_counted() -> None:
    assert more_words(9) == "9 more, by scrolling"
    assert more_words(0) == more_words(-2) == ""
