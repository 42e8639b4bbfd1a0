"""The reading that is asked for is the one worth most: what it tells of the arrival, less the wait for it."""

from dataclasses import replace
from datetime import timedelta

import numpy as np
import pytest

from cookstove_gui.forecast.answers import NextReading, Projection
from cookstove_gui.forecast.futures.next_reading import next_reading
from cookstove_gui.forecast.futures.projection import project
from cookstove_gui.forecast.tracking.belief import LastReading
from cookstove_gui.stove.stove import SpotKind
from tests.following import track
from tests.forecast.futures.made import BAND, MINUTES, futures, lines, stove_with, usual_belief
from tests.forecast.logs import MODERATE, STOVE, at, usual_morning

MEMBERS = 400
KINDS = {"oven_centre": SpotKind.OVEN, "top_a": SpotKind.TOP, "top_b": SpotKind.TOP}
NOISE = 2.5 + 0.012 * (500.0 - 294.0)  # K, of an infrared reading at 500 K
SPREAD = 30.0  # K, of the cooktop's futures


def _orthonormal(count: int) -> np.ndarray:
    """Deviates (count, members), each of mean 0 and variance 1, that go with nothing."""
    drawn = np.random.default_rng(8).standard_normal((MEMBERS, count + 1))
    drawn[:, 0] = 1.0
    return np.linalg.qr(drawn)[0][:, 1:].T * np.sqrt(MEMBERS)


ARRIVES, OTHER, THIRD = _orthonormal(3)


def _arriving(when: np.ndarray) -> np.ndarray:
    """Ovens that are all alike for half an hour and then warm so as to be in the band at `when`."""
    return 330.0 + np.maximum(MINUTES - 30.0, 0.0) * (70.0 / (when[:, None] - 30.0))


def _telling(narrows: float, about: np.ndarray = ARRIVES, else_: np.ndarray = OTHER) -> np.ndarray:
    """Cooktop heats (members,) [K] that leave 1 - narrows of the doubt about something: normal regression."""
    share = (1.0 - (1.0 - narrows) ** 2) * (SPREAD**2 + NOISE**2) / SPREAD**2
    return 500.0 + SPREAD * (np.sqrt(share) * about + np.sqrt(1.0 - share) * else_)


def _ask(projection: Projection, **last: float) -> NextReading:
    """What is asked for; `last` says how many minutes ago a spot was read."""
    belief = usual_belief()
    read = {spot: LastReading(belief.now - timedelta(minutes=ago), 400.0) for spot, ago in last.items()}
    kinds = {
        "room": SpotKind.ROOM, "wall": SpotKind.WALL, **KINDS,
    }  # fmt: skip
    stove = stove_with(**{spot: kinds[spot] for spot in projection.spots})
    return next_reading(replace(belief, stove=stove, last_readings=read), projection, BAND)


OVEN = _arriving(80.0 + 10.0 * ARRIVES)


def test_spot_whose_heat_goes_with_the_arrival_is_asked_for_at_once():
    found = _ask(futures(oven_centre=OVEN, top_a=_telling(0.5)[:, None], top_b=_telling(0.1)[:, None]))
    assert (found.spot, found.in_min) == ("top_a", 0)
    assert found.narrows == pytest.approx(0.5, abs=0.01)


def test_narrowing_is_that_of_bayes_theorem_for_normals():
    # Gelman et al. 2013, 2.5: precisions add up. A reading y = 1.5 x + noise of an x known to 10 min.
    known, slope = 10.0, SPREAD / 10.0
    left = (1.0 / (1.0 / known**2 + slope**2 / NOISE**2)) ** 0.5
    found = _ask(futures(oven_centre=OVEN, top_a=(500.0 + SPREAD * ARRIVES)[:, None]))
    assert found.narrows == pytest.approx(1.0 - left / known, abs=0.005)


def test_cooler_where_it_arrives_later_tells_as_much_as_hotter():
    rises, falls = (
        _ask(futures(oven_centre=OVEN, top_a=(500.0 + sign * SPREAD * ARRIVES)[:, None])) for sign in (1, -1)
    )
    assert (rises.spot, rises.in_min) == (falls.spot, falls.in_min)
    assert rises.narrows == pytest.approx(falls.narrows)


@pytest.mark.parametrize("wait", [5, 10, 15, 20, 30])
@pytest.mark.parametrize(("beyond", "spot"), [(0.008, "top_b"), (-0.008, "top_a")])
def test_waiting_a_minute_costs_what_twelve_thousandths_of_the_doubt_are_worth(wait, beyond, spot):
    later = np.where(MINUTES[None, :] == wait, _telling(0.2 + 0.012 * wait + beyond)[:, None], 500.0)
    found = _ask(futures(oven_centre=OVEN, top_a=np.where(MINUTES == 0, _telling(0.2)[:, None], 500.0), top_b=later))
    assert (found.spot, found.in_min) == (spot, wait if spot == "top_b" else 0)


def test_readings_between_or_after_the_waits_are_not_asked_for():
    only = {25.0, 35.0, 60.0}
    tells = np.where(np.isin(MINUTES, list(only)), _telling(0.8)[:, None], 500.0)
    assert _ask(futures(oven_centre=OVEN, top_a=tells)).narrows < 0.1


@pytest.mark.parametrize(("minutes_ago", "in_min"), [(2.9, 5), (3.0, 0)])
def test_a_spot_read_less_than_three_minutes_ago_is_not_asked_for_again_now(minutes_ago, in_min):
    found = _ask(futures(oven_centre=OVEN, top_a=_telling(0.5)[:, None]), top_a=minutes_ago)
    assert (found.spot, found.in_min) == ("top_a", in_min)


@pytest.mark.parametrize("beside", ["room", "wall"])
def test_room_and_walls_are_never_asked_for(beside):
    told = {"oven_centre": OVEN, beside: 300.0 + SPREAD * ARRIVES[:, None], "top_a": _telling(0.1)[:, None]}
    assert _ask(futures(**told)).spot == "top_a"


def test_a_spot_that_scatters_less_than_it_is_read_tells_nothing():
    faint = 500.0 + 0.1 * ARRIVES[:, None]
    assert _ask(futures(oven_centre=OVEN, top_a=faint, top_b=_telling(0.05)[:, None])).spot == "top_b"


def test_an_oven_in_the_band_asks_for_its_leaving():
    # All are in the band; top_a tells when they leave it, top_b nothing.
    stay = 60.0 + 10.0 * ARRIVES
    cooling = 410.0 - np.maximum(MINUTES - 30.0, 0.0) * (10.0 / (stay[:, None] - 30.0))
    found = _ask(futures(oven_centre=cooling, top_a=_telling(0.5)[:, None], top_b=_telling(0.1, THIRD)[:, None]))
    assert found.spot == "top_a"
    assert found.narrows == pytest.approx(0.5, abs=0.02)


@pytest.mark.parametrize(("already_there", "spot"), [(0.45, "top_a"), (0.55, "top_b")])
def test_while_most_futures_are_not_in_the_band_its_arrival_is_what_is_asked_for(already_there, spot):
    # Those not there come within five minutes of each other; top_a tells who is there, top_b how long they stay.
    there = np.arange(MEMBERS) < already_there * MEMBERS
    stays = np.where(np.arange(MEMBERS) % 2 == 0, 40.0, 100.0)
    in_band = 410.0 - np.maximum(MINUTES - 30.0, 0.0) * (10.0 / (stays[:, None] - 30.0))
    coming = np.where(MINUTES <= 30.0, 399.0, in_band)
    told = {
        "oven_centre": np.where(there[:, None], in_band, coming),
        "top_a": 500.0 + SPREAD * there[:, None],
        "top_b": 500.0 + 0.5 * (stays[:, None] - 40.0),
    }
    assert _ask(futures(**told), oven_centre=0.0).spot == spot


def test_futures_that_never_arrive_count_as_the_end_of_the_horizon():
    never = np.arange(MEMBERS) % 2 == 0
    oven = np.where(never[:, None], 330.0, _arriving(np.full(MEMBERS, 100.0)))
    found = _ask(futures(oven_centre=oven, top_a=500.0 + SPREAD * never[:, None], top_b=_telling(0.1, THIRD)[:, None]))
    assert found.spot == "top_a"
    assert 0.5 < found.narrows <= 1.0


def test_where_no_future_arrives_the_oven_in_an_hour_is_what_is_asked_for():
    oven = np.where(MINUTES == 60.0, 330.0 + 10.0 * ARRIVES[:, None], 330.0)
    oven = np.where(MINUTES == 120.0, 330.0 + 10.0 * THIRD[:, None], oven)
    tells_later = _telling(0.6, THIRD, OTHER)[:, None]
    assert _ask(futures(oven_centre=oven, top_a=_telling(0.5, ARRIVES)[:, None], top_b=tells_later)).spot == "top_a"


@pytest.mark.parametrize(("apart", "spot"), [(0.6, "top_b"), (0.4, "top_a")])
def test_arrivals_known_to_half_a_minute_need_no_reading(apart, spot):
    # THIRD is when it arrives, ARRIVES how hot the oven is in an hour.
    oven = _arriving(80.0 + apart * THIRD)
    oven = np.where(MINUTES == 60.0, 360.0 + 5.0 * ARRIVES[:, None], oven)
    tells = {"top_a": _telling(0.5, ARRIVES)[:, None], "top_b": _telling(0.6, THIRD)[:, None]}
    assert _ask(futures(oven_centre=oven, **tells)).spot == spot


def test_a_stove_that_is_read_nowhere_but_beside_it_asks_for_its_first_spot_in_a_while():
    found = _ask(futures(room=lines(294.0, 0.0)))
    assert found == NextReading(spot="room", in_min=15, narrows=0.0)


def test_next_reading_of_a_usual_morning_names_a_spot_of_the_stove_and_a_time_ahead():
    belief = track(STOVE, usual_morning(), at(60))
    asked = next_reading(belief, project(belief, band=MODERATE), MODERATE)
    assert STOVE.kind_of(asked.spot) in (SpotKind.OVEN, SpotKind.TOP)
    assert asked.in_min in (0, 5, 10, 15, 20, 30)
    assert 0.0 < asked.narrows < 1.0
