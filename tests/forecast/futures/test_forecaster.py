"""A forecaster says the same however the rows came to it, and a slip proves nothing."""

from dataclasses import replace

import numpy as np

from cookstove_gui.forecast.futures.forecaster import Forecaster
from cookstove_gui.forecast.futures.projection import project
from cookstove_gui.forecast.tracking import tracker
from cookstove_gui.forecast.tracking.tracker import Tracker
from cookstove_gui.stove.entries import Kind
from tests.forecast.logs import STOVE, Log, at, usual_morning

MORNING = usual_morning(70)


def test_row_by_row_and_at_once_are_the_same():
    along = Forecaster(STOVE)
    for row in MORNING:
        belief = along.follow([one for one in MORNING if one.at <= row.at], row.at)
    fresh = Forecaster(STOVE).follow(MORNING, MORNING[-1].at)
    assert belief.proof.width == fresh.proof.width != 1.0
    assert belief.proof.chance == fresh.proof.chance
    assert belief.proof.line == fresh.proof.line
    np.testing.assert_array_equal(belief.ensemble.x, fresh.ensemble.x)


def test_a_row_taken_back_is_forgotten():
    reading = next(row for row in MORNING if row.spot == "oven_centre" and row.at > at(50))
    wrong = [replace(row, value="150") if row is reading else row for row in MORNING]
    along = Forecaster(STOVE)
    along.follow(wrong, at(70))
    assert along.follow(MORNING, at(70)).proof == Forecaster(STOVE).follow(MORNING, at(70)).proof


def test_between_readings_nothing_new_is_proved():
    along = Forecaster(STOVE)
    assert along.follow(MORNING, at(70)).proof == along.follow(MORNING, at(85)).proof


def test_a_slip_proves_nothing():
    log = Log()
    for row in MORNING:
        log.entries.append(replace(row, number=len(log.entries) + 1))
    before = Forecaster(STOVE).follow(log.entries, at(70)).proof
    log.reads(78, "oven_centre", 33.0)
    after = Forecaster(STOVE).follow(log.entries, at(78))
    assert after.doubted
    assert after.proof == before


def test_what_is_proved_widens_the_futures_of_the_oven_and_of_nothing_else():
    belief = Forecaster(STOVE).follow(MORNING, at(70))
    plain = Tracker(STOVE).follow(MORNING, at(70))
    assert belief.proof.width != 1.0
    told, bare = project(belief), project(plain)
    ratio = np.ptp(told.of("oven_centre"), axis=0) / np.ptp(bare.of("oven_centre"), axis=0)
    assert np.allclose(ratio, belief.proof.width)
    np.testing.assert_array_equal(told.of("top_front_left"), bare.of("top_front_left"))


def test_without_an_oven_reading_nothing_is_proved():
    rows = [row for row in MORNING if row.kind is not Kind.READING or row.spot != "oven_centre"]
    proof = Forecaster(STOVE).follow(rows, at(70)).proof
    assert (proof.width, proof.line) == (1.0, None)


def test_a_long_log_is_followed_once_though_its_front_is_left_out(monkeypatch):
    """Its earlier moments are of the same rows, or each would be followed from the start again."""
    monkeypatch.setattr(tracker, "MOST_FOLLOWED", 40)
    monkeypatch.setattr(tracker, "BLOCK", 10)
    log = Log().add(0, Kind.LIT).add(0, Kind.AIR, value="0.6")
    for place in range(58):  # so that just as many rows are left as are followed at most, and the settings besides
        log.reads(5.0 + 5.0 * place, "oven_centre", 200.0 + place)
    followed = []
    run = Tracker._run
    monkeypatch.setattr(Tracker, "_run", lambda self, *given: (followed.append(1), run(self, *given))[1])
    Forecaster(STOVE).follow(log.entries, at(310))
    assert len(followed) <= 2 * 42  # each row, and each reading's own moment
