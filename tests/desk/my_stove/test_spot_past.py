"""A spot's readings are told against what the others of their round lead to expect."""

import pytest

from cookstove_gui.desk.my_stove.spot_past import MOST_RINGS, spot_past
from cookstove_gui.stove.stove import SpotKind
from tests.cooking.made import STOVE, log, session

TOPS = [spot.name for spot in STOVE.spots_of(SpotKind.TOP)]
HEATS = (500.0, 480.0, 460.0, 440.0, 420.0, 400.0)  # °F, a fall of 20 from spot to spot


def _past(rounds: int, first: float = 500.0):
    rows = [
        (20.0 * turn + 0.2 * place, "reading", name, str((first if place == 0 else heat) + 10 * turn), "F")
        for turn in range(rounds)
        for place, (name, heat) in enumerate(zip(TOPS, HEATS, strict=True))
    ]
    return lambda _stove: (session(1, log(*rows)),)


def test_each_ring_is_a_readings_distance_from_the_mean_however_hot_the_fire_was() -> None:
    found = spot_past((STOVE, TOPS[0]), _past(8))
    assert found.usual is not None
    assert found.usual.mean * 1.8 == pytest.approx(50.0, abs=3.0)
    assert [ring * 1.8 for ring in found.rings] == [pytest.approx(50.0, abs=3.0)] * 8


def test_only_the_latest_are_drawn() -> None:
    assert len(spot_past((STOVE, TOPS[0]), _past(MOST_RINGS + 5)).rings) == MOST_RINGS


def test_what_is_neither_top_nor_oven_is_not_told_so() -> None:
    found = spot_past((STOVE, "flue"), _past(3))
    assert (found.usual, found.rings) == (None, ())
    assert spot_past((STOVE, "oven_rear"), _past(3)).rings == ()
    assert spot_past((STOVE, "oven_centre"), _past(3)).usual is None  # nothing differs from itself
