"""What counts as a projection that held, and what came of it by the readings."""

from dataclasses import replace
from datetime import UTC, datetime

import numpy as np
import pytest

from cookstove_gui.forecast.answers import Quantiles, RecordRow
from cookstove_gui.forecast.futures.forecaster import Forecaster
from cookstove_gui.forecast.futures.outlook import outlook
from cookstove_gui.forecast.learning.hindsight import oven_past
from cookstove_gui.forecast.learning.learn import lessons
from cookstove_gui.forecast.learning.track_record import (
    LEAST_LEAD_MINUTES,
    arrival,
    held_true,
    settled,
    track_record,
    windows_at,
)
from cookstove_gui.stove.entries import HeatBand, Kind, Session
from cookstove_gui.units import kelvin
from tests.forecast.logs import MODERATE, STOVE, Log, sessions

SLOW = HeatBand(name="slow", low=kelvin(280.0, "F"), high=kelvin(325.0, "F"))
FURNACE = HeatBand(name="furnace", low=kelvin(900.0, "F"), high=kelvin(950.0, "F"))


def row(p10: float | None, p90: float | None, came: float | None, watched: float = 120.0) -> RecordRow:
    middle = None if p10 is None or p90 is None else 0.5 * (p10 + p90)
    return RecordRow(
        session="x",
        made_at=datetime(2026, 1, 5, 12, 0, tzinfo=UTC),
        offset_minutes=-300,
        band=SLOW,
        enters_min=Quantiles(p10=p10, p50=None if middle is None else middle + 9.0, p90=p90),
        likely_min=middle,  # where the line entered, which the middle of the futures is not
        came_true_min=came,
        watched_min=watched,
    )


@pytest.mark.parametrize(
    ("p10", "p90", "came", "watched", "held"),
    [
        (40.0, 80.0, 40.0, 120.0, True),
        (40.0, 80.0, 80.0, 120.0, True),
        (40.0, 80.0, 39.0, 120.0, False),
        (40.0, 80.0, 81.0, 120.0, False),
        (40.0, None, 170.0, 175.0, True),
        (40.0, None, 30.0, 175.0, False),
        (None, None, 60.0, 120.0, False),  # said not to come, and came
        (None, None, None, 120.0, None),  # said not to come, and did not: too little was claimed
        (40.0, 80.0, None, 120.0, False),  # the window closed and the heat had not come
        (40.0, 80.0, None, 60.0, None),  # the readings ended before the window did
        (40.0, None, None, 60.0, True),  # said that it may never come
    ],
)
def test_a_window_is_judged_by_what_came(p10, p90, came, watched, held):
    assert held_true(row(p10, p90, came, watched)) is held


def test_a_heat_that_never_came_counts_against_the_windows_that_promised_it():
    told = track_record("Kitchen", 2, [row(40.0, 80.0, 60.0), row(40.0, 80.0, None), row(40.0, 80.0, None, 50.0)])
    assert (told.projections, told.inside_window) == (2, 1)


def test_the_typical_miss_is_that_of_the_moments_said_to_be_likely():
    told = track_record("Kitchen", 1, [row(40.0, 80.0, came) for came in (60.0, 65.0, 90.0)])
    assert told.typical_miss_min == pytest.approx(5.0)  # |60 - 60|, |65 - 60|, |90 - 60|


def test_a_line_through_the_readings_gives_the_arrival():
    clock, values = np.array([0.0, 10.0, 30.0]), np.array([300.0, 400.0, 500.0])
    assert arrival(clock, values, 350.0) == pytest.approx(5.0)
    assert arrival(clock, values, 425.0) == pytest.approx(15.0)
    assert arrival(clock, values, 300.0) == 0.0
    assert arrival(clock, values, 501.0) is None


def test_windows_near_at_hand_and_heats_already_reached_are_not_asked_about():
    (session,) = sessions(1)
    session = replace(session, entries=tuple(replace(one, offset_minutes=-300) for one in session.entries))
    past, teller = oven_past(STOVE, session), Forecaster(STOVE)
    assert len(past.places) > 2
    made = [one for place in past.places for one in windows_at(teller, session, past, place, (SLOW, MODERATE))]
    for one in made:
        heats = [value for at, value in zip(past.rows, past.kelvin, strict=True) if at.at <= one.made_at]
        assert max(heats) < one.band.low
        assert one.enters_min.p50 is None or one.enters_min.p50 >= LEAST_LEAD_MINUTES
        assert one.offset_minutes == -300
        belief = teller.follow(session.entries, one.made_at)
        assert one.likely_min == outlook(belief, one.band).band.line_enters_min


@pytest.mark.parametrize(("middle", "shown"), [(29.9, 0), (30.0, 1), (30.1, 1), (None, 1)])
def test_a_window_is_put_on_record_from_half_an_hour_ahead(middle, shown, monkeypatch):
    (session,) = sessions(1)
    past, teller = oven_past(STOVE, session), Forecaster(STOVE)
    found = outlook(teller.follow(session.entries, past.rows[past.places[0]].at), FURNACE)
    band = replace(found.band, enters_min=Quantiles(p10=20.0, p50=middle, p90=60.0))
    monkeypatch.setattr("cookstove_gui.forecast.learning.track_record.outlook", lambda *_: replace(found, band=band))
    assert len(windows_at(teller, session, past, past.places[0], (FURNACE,))) == shown


def test_a_session_in_which_the_heat_never_came_is_on_the_record():
    told = lessons(STOVE, sessions(2), (FURNACE,)).record
    assert told
    assert all(one.came_true_min is None and one.watched_min > 0.0 for one in told)


def test_a_slip_does_not_make_a_heat_come_true():
    log = Log().add(0, Kind.LIT)
    for minute in range(5, 95, 10):
        log.reads(minute, "oven_centre", 70.0 + 2.0 * minute)
    log.reads(96, "oven_centre", 930.0)
    log.reads(105, "oven_centre", 270.0)
    session = Session(number=1, stove=STOVE.name, title="x", entries=tuple(log.entries))
    past, teller = oven_past(STOVE, session), Forecaster(STOVE)
    made = windows_at(teller, session, past, past.places[0], (FURNACE,))
    assert made
    assert all(one.came_true_min is None for one in settled(made, teller.tracker, session, past))
