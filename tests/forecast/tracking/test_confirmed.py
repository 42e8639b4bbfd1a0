"""A questioned reading that the cook says is right is believed as far as its thermometer can be."""

import numpy as np
import pytest

from cookstove_gui.forecast.model.ensemble import expectation
from cookstove_gui.forecast.model.observation import instrument_at, noise_deviation
from cookstove_gui.forecast.tracking.belief import Belief, doubted_readings
from cookstove_gui.forecast.tracking.tracker import Tracker
from cookstove_gui.stove.entries import Kind
from cookstove_gui.units import kelvin
from tests.following import track
from tests.forecast.logs import STOVE, Log, at, usual_morning

SURPRISES = [
    ("oven_centre", 430.0), ("oven_centre", 200.0), ("top_front_middle", 720.0), ("top_back_left", 250.0),
    ("flue", 700.0),
]  # fmt: skip


def surprised(spot: str, fahrenheit: float) -> Log:
    """A usual morning that ends with an unlikely reading."""
    log = Log()
    log.entries = usual_morning()
    return log.reads(71, spot, fahrenheit)


def confirmed(log: Log, minute: float = 71.5) -> Log:
    """The same with its latest row kept."""
    kept = Log()
    kept.entries = list(log.entries)
    return kept.add(minute, Kind.KEPT, value=str(log.entries[-1].number))


def shows(belief: Belief, spot: str) -> float:
    """What the spot's thermometer is believed to show [K]."""
    seen, _ = expectation(belief.ensemble, belief.stove, [one.name for one in STOVE.spots].index(spot))
    return float(seen.mean())


def shown(spot: str, fahrenheit: float) -> tuple[float, float]:
    """True heat [K] of a reading, and its thermometer's noise."""
    place = STOVE.spot(spot)
    assert place is not None
    value = instrument_at(STOVE, place).true_heat(kelvin(fahrenheit, "F"))
    return value, noise_deviation(place, value)


@pytest.mark.parametrize(("spot", "fahrenheit"), SURPRISES)
def test_the_belief_comes_to_a_confirmed_reading_within_its_noise(spot: str, fahrenheit: float) -> None:
    log = surprised(spot, fahrenheit)
    before = track(STOVE, log.entries, at(71))
    after = track(STOVE, confirmed(log, 71).entries, at(71))
    value, noise = shown(spot, fahrenheit)
    assert abs(shows(before, spot) - value) > 5.0 * noise
    assert abs(shows(after, spot) - value) < noise
    assert doubted_readings(before)
    assert not doubted_readings(after)


def test_it_counts_once_it_is_confirmed_and_not_if_that_is_taken_back() -> None:
    doubted = surprised("oven_centre", 430.0)
    kept = confirmed(doubted)
    asked, answered = (shows(track(STOVE, kept.entries, at(minute)), "oven_centre") for minute in (71.2, 72.0))
    assert answered > asked + 40.0
    taken_back = kept.add(73, Kind.VOID, value=str(kept.entries[-1].number))
    again, never = (track(STOVE, log.entries, at(73)).ensemble.x for log in (taken_back, doubted))
    assert np.array_equal(again, never)


def test_a_tracker_that_had_doubted_it_agrees_with_a_fresh_run() -> None:
    tracker, log = Tracker(STOVE), surprised("top_front_middle", 720.0)
    tracker.follow(log.entries, at(71.2))
    later = confirmed(log).reads(75, "oven_centre", 340).entries
    followed, fresh = tracker.follow(later, at(76)), track(STOVE, later, at(76))
    assert np.array_equal(followed.ensemble.x, fresh.ensemble.x)


def test_what_a_stove_cannot_show_moves_nothing_however_often_it_is_confirmed() -> None:
    log = surprised("oven_centre", 4300.0)
    before = track(STOVE, log.entries, at(72))
    after = track(STOVE, confirmed(log).entries, at(72))
    assert np.array_equal(before.ensemble.x, after.ensemble.x)
    assert doubted_readings(before)
    assert not doubted_readings(after)
