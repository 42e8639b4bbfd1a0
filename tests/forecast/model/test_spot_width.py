"""The windows of the spots come to hold the share of readings that they promise."""

import math
from dataclasses import replace

import numpy as np
import pytest

from cookstove_gui.forecast.futures.zones import zones
from cookstove_gui.forecast.learning.learn import learn
from cookstove_gui.forecast.model.normal import NINETIETH
from cookstove_gui.forecast.model.spot_width import INSIDE, NARROWEST, PACE, WIDEST, next_width
from cookstove_gui.forecast.tracking.belief import Belief
from tests.following import track
from tests.forecast.logs import STOVE, TOP_SPOTS, at, sessions, usual_morning


def _followed(strayed: np.ndarray, width: float = 1.0) -> tuple[np.ndarray, float]:
    """Whether each lay inside its window, and the width after the last."""
    inside = np.zeros(len(strayed), dtype=bool)
    for place, far in enumerate(strayed):
        inside[place] = far <= width
        width = next_width(width, float(far))
    return inside, width


def test_the_share_inside_is_the_promised_one_up_to_what_the_width_has_moved():
    # Gibbs and Candes 2021, the telescoping sum behind their coverage bound: for any sequence, the share outside
    # differs from the promised one by the movement of the width over pace and count
    random = np.random.default_rng(3)
    deviation = np.exp(0.25 * np.sin(np.arange(900) / 60.0))  # readings that stray more by and by, and less again
    inside, width = _followed(np.abs(random.standard_normal(900)) * deviation / NINETIETH)
    assert NARROWEST < width < WIDEST
    assert np.mean(~inside) - (1.0 - INSIDE) == pytest.approx(math.log(width) / (PACE * 900), abs=1e-9)
    assert abs(inside.mean() - INSIDE) < 0.02


@pytest.mark.parametrize("deviation", [0.6, 1.0, 1.4])
def test_the_width_finds_a_steady_spread(deviation):
    # normal distribution: 80 % lie within 1.2816 standard deviations
    strayed = np.abs(np.random.default_rng(5).standard_normal(4000)) * deviation / NINETIETH
    widths, width = [], 1.0
    for far in strayed:
        width = next_width(width, float(far))
        widths.append(width)
    assert np.mean(widths[500:]) == pytest.approx(deviation, rel=0.05)


def test_the_width_stays_within_reason():
    assert _followed(np.zeros(500))[1] == NARROWEST
    assert _followed(np.full(500, 9.0))[1] == WIDEST


def _spread(belief: Belief) -> float:
    return float(np.mean([zone.p90 - zone.p10 for zone in zones(belief) if zone.spot in TOP_SPOTS]))


def test_a_cooktop_that_keeps_to_its_pattern_gets_narrower_windows():
    learned = learn(STOVE, sessions(4))
    assert learned.spot_width < 0.9
    known, stranger = (track(STOVE, usual_morning(), at(70), character) for character in (learned, None))
    assert _spread(known) < _spread(stranger)


def test_a_fire_just_lit_and_a_slip_say_nothing_of_the_pattern():
    early = usual_morning(20)
    assert track(STOVE, early, at(20)).spot_width == 1.0
    entries = usual_morning()
    slipped = [row if row.spot != TOP_SPOTS[2] or row.at < at(60) else replace(row, value="900") for row in entries]
    belief = track(STOVE, slipped, at(70))
    assert belief.doubted
    assert belief.spot_width <= track(STOVE, entries, at(61)).spot_width
