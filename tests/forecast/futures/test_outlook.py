"""Arrival, stay and chances follow from the futures."""

import numpy as np
import pytest

from cookstove_gui.forecast import Belief, next_reading, outlook, project, track, turns
from cookstove_gui.forecast.answers import Action, ActionKind, Projection, Turn, TurnKind
from cookstove_gui.forecast.futures.outlook import arrivals, outlook_of
from cookstove_gui.stove.entries import HeatBand, Kind
from tests.forecast.logs import BEGAN, MODERATE, STOVE, Log, at, usual_morning

_MINUTES = np.arange(0.0, 181.0, 5.0)
_BAND = HeatBand(name="band", low=400.0, high=420.0)


def _line(start, slope):
    return start + slope * _MINUTES


def test_arrival_on_a_straight_line_is_where_the_ruler_says():
    enters, stays = arrivals(_MINUTES, np.array([_line(380.0, 1.0), _line(470.0, -2.0)]), _BAND)
    assert enters == pytest.approx([20.0, 25.0])
    assert stays == pytest.approx([20.0, 10.0])


def test_already_in_band_enters_at_once():
    enters, stays = arrivals(_MINUTES, np.array([_line(410.0, 0.5)]), _BAND)
    assert enters == pytest.approx([0.0])
    assert stays == pytest.approx([20.0])


def test_never_reached_is_later_than_the_horizon():
    enters, stays = arrivals(_MINUTES, np.array([_line(300.0, 0.0)]), _BAND)
    assert np.isinf(enters).all()
    assert np.isinf(stays).all()


def test_a_band_jumped_across_between_two_times_was_reached():
    narrow = HeatBand(name="narrow", low=402.0, high=403.0)
    enters, _ = arrivals(_MINUTES, np.array([_line(400.0, 2.0)]), narrow)
    assert enters == pytest.approx([1.0])


def test_cooling_through_an_exponential_arrives_at_the_closed_form():
    # Reference 4.2: 200 °C in 20 °C, tau 45 min, is 100 °C after 36.4919 min; the grid of 5 min allows 0.1 min.
    oven = 20.0 + 180.0 * np.exp(-_MINUTES / 45.0)
    enters, _ = arrivals(_MINUTES, oven[None, :], HeatBand(name="x", low=50.0, high=100.0))
    assert enters == pytest.approx([36.4919], abs=0.15)


def test_quantiles_beyond_three_hours_are_none_and_chances_count_futures():
    half = [_line(380.0, 1.0)] * 6 + [_line(300.0, 0.0)] * 4
    future = Projection(now=BEGAN, minutes=_MINUTES, spots=("oven_centre",), kelvin=np.array(half)[:, :, None])
    band = outlook_of(future, STOVE, _BAND).band
    assert band.chance_reached_3h == pytest.approx(0.6)
    assert band.enters_min.p10 == pytest.approx(20.0)
    assert band.enters_min.p90 is None


def test_outlook_has_rising_quantiles_and_chances_between_none_and_certain():
    view = outlook(track(STOVE, usual_morning(), at(70)), MODERATE, ahead=(0, 15, 30, 60, 180))
    assert [ahead.minutes for ahead in view.ahead] == [0, 15, 30, 60, 180]
    assert all(ahead.p10 <= ahead.p50 <= ahead.p90 and 0.0 <= ahead.chance_in_band <= 1.0 for ahead in view.ahead)


def test_doubt_grows_with_the_lead():
    view = outlook(track(STOVE, usual_morning(), at(70)), MODERATE)
    widths = [ahead.p90 - ahead.p10 for ahead in view.ahead]
    assert widths == sorted(widths)


def test_a_wider_band_is_reached_no_later_and_no_less_likely():
    belief = track(STOVE, usual_morning(), at(54))
    narrow = outlook(belief, MODERATE).band
    wide = outlook(belief, HeatBand(name="wide", low=MODERATE.low - 15, high=MODERATE.high + 15)).band
    assert wide.chance_reached_3h >= narrow.chance_reached_3h
    assert wide.enters_min.p50 <= narrow.enters_min.p50  # type: ignore[operator]


def _hour_ahead(action: Action) -> float:
    return outlook(track(STOVE, usual_morning(), at(72)), MODERATE, action=action).ahead[2].p50


def test_more_wood_means_a_hotter_hour():
    assert _hour_ahead(Action(kind=ActionKind.WOOD, value=2.5)) > _hour_ahead(Action(kind=ActionKind.WOOD, value=0.3))


def test_an_open_bypass_means_a_cooler_hour():
    assert _hour_ahead(Action(kind=ActionKind.BYPASS, value=1.0)) < _hour_ahead(Action())


def test_projection_covers_three_hours_of_every_spot():
    projection = project(track(STOVE, usual_morning(), at(70)))
    assert projection.minutes[0] == 0.0
    assert projection.minutes[-1] == 180.0
    assert np.diff(projection.minutes).max() <= 5.0
    assert projection.kelvin.shape[1:] == (len(projection.minutes), len(STOVE.spots))
    assert projection.kelvin.shape[0] >= 200


def test_next_reading_names_a_spot_of_the_stove_and_a_time_ahead():
    belief = track(STOVE, usual_morning(), at(60))
    asked = next_reading(belief, project(belief, band=MODERATE), MODERATE)
    assert STOVE.spot(asked.spot) is not None
    assert 0 <= asked.in_min <= 30
    assert 0.0 <= asked.narrows <= 1.0


def test_a_door_left_open_is_a_turn():
    entries = [*usual_morning()]
    log = Log()
    log.entries = entries
    log.add(71, Kind.OVEN_DOOR, value="open")
    found = _turns(track(STOVE, log.entries, at(75)))
    assert TurnKind.DOOR_OPEN in [turn.kind for turn in found]


def test_a_fire_left_alone_for_hours_is_out_and_a_fresh_one_is_not():
    entries = usual_morning()
    log = Log()
    log.entries = list(entries)
    log.reads(300, "oven_centre", 110).reads(301, "top_front_left", 100)
    later = [turn.kind for turn in _turns(track(STOVE, log.entries, at(302)))]
    now = [turn.kind for turn in _turns(track(STOVE, entries, at(70)))]
    assert TurnKind.FIRE_OUT in later
    assert TurnKind.FIRE_OUT not in now


def _turns(belief: Belief) -> tuple[Turn, ...]:
    return turns(belief, project(belief, unfed=True), MODERATE)
