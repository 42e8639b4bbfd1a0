"""Earlier bakes of a thing in this oven move its window to what they took, and narrow it."""

from datetime import timedelta

import numpy as np
import pytest

from cookstove_gui.cooking.baking.catalogue import bake_of
from cookstove_gui.cooking.baking.doneness import doneness, steady_minutes
from cookstove_gui.cooking.baking.doubts import LASTING, Doubt, usual_ensemble
from cookstove_gui.cooking.baking.past_bakes import AT_MOST, PastBake, learned_from, past_bakes
from cookstove_gui.stove.entries import Entry, Kind, Session
from cookstove_gui.stove.stove import Stove, default_spots
from tests.cooking.baking.test_doneness import likely, oven_at, window
from tests.cooking.made import START, fahrenheit

LOAF = bake_of("bread_loaf")
USUAL = steady_minutes(LOAF, fahrenheit(395)) or 0.0
STOVE = Stove(name="kitchen", spots=default_spots())


def baked(share: float) -> PastBake:
    """A loaf in a steady oven that took so many times the usual minutes."""
    return PastBake(
        bake=LOAF, minutes=share * USUAL, oven_minutes=np.array([0.0]), oven_heats=np.array([fahrenheit(395)])
    )


@pytest.mark.parametrize("share", [0.85, 1.2])
def test_six_that_took_longer_or_less_move_the_next_and_narrow_it(share: float) -> None:
    learned = learned_from([baked(share)] * 6)
    assert learned is not None
    assert learned.bakes == 6
    before, after = doneness(LOAF, oven_at(395)), doneness(LOAF, oven_at(395), learned=learned)
    assert likely(after) / likely(before) == pytest.approx(share, abs=0.06)
    assert window(after) / likely(after) < 0.75 * window(before) / likely(before)
    assert after.learned_from == 6


def test_the_first_tells_most_and_each_a_little_more() -> None:
    windows = [
        window(doneness(LOAF, oven_at(395), learned=learned_from([baked(1.0)] * count))) for count in (0, 1, 3, 8)
    ]
    assert windows == sorted(windows, reverse=True)
    assert windows[0] - windows[1] > windows[1] - windows[2]


def test_what_differs_from_bake_to_bake_is_not_learned() -> None:
    learned = learned_from([baked(1.2)] * 6)
    assert learned is not None
    for doubt in Doubt:
        if doubt not in LASTING:
            assert learned.mean[doubt] == 0.0
            assert learned.covariance[doubt, doubt] == 1.0
    assert usual_ensemble(learned).of(Doubt.CONDUCTION).mean() < 0.0


def test_an_oven_that_cannot_have_done_it_teaches_nothing() -> None:
    cold = PastBake(bake=LOAF, minutes=40.0, oven_minutes=np.array([0.0]), oven_heats=np.array([330.0]))
    assert learned_from([cold]) is None
    assert learned_from([]) is None


def session(*told: tuple[float, Kind, str, str, str, str], stove: str = "kitchen") -> Session:
    rows = tuple(
        Entry(
            number=number, at=START + timedelta(minutes=minute), offset_minutes=-300, kind=kind, spot=spot, note=note,
            value=value, unit=unit,
        )
        for number, (minute, kind, spot, note, value, unit) in enumerate(told, start=1)
    )  # fmt: skip
    return Session(number=1, stove=stove, title="", entries=rows)


READ = (-5.0, Kind.READING, "oven_centre", "", "395", "F")
IN, OUT = (0.0, Kind.OVEN_IN, "", LOAF.name, "", ""), (44.0, Kind.OVEN_OUT, "", LOAF.name, "", "")


def test_what_went_in_and_came_out_of_a_read_oven_counts() -> None:
    (found,) = past_bakes(STOVE, [session(READ, IN, OUT)], LOAF.name.upper())
    assert found.minutes == pytest.approx(44.0)
    assert found.oven_heats == pytest.approx([fahrenheit(395)])


@pytest.mark.parametrize(
    "told",
    [(IN, OUT), (READ, IN), (READ, (0.0, Kind.OVEN_IN, "", "fruit pie", "", ""), OUT)],
    ids=["unread", "still in", "pie"],
)
def test_what_was_not_read_is_still_in_or_is_another_thing_does_not(told) -> None:  # type: ignore[no-untyped-def]
    assert past_bakes(STOVE, [session(*told)], LOAF.name) == ()


def test_another_stoves_do_not_and_only_the_latest_do() -> None:
    assert past_bakes(STOVE, [session(READ, IN, OUT, stove="other")], LOAF.name) == ()
    assert len(past_bakes(STOVE, [session(READ, IN, OUT)] * 12, LOAF.name)) == AT_MOST
