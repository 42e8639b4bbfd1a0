"""The cook of each future sets the air by turns toward the band, at the pace learned."""

from dataclasses import replace

import numpy as np
import pytest

from cookstove_gui.forecast.answers import LEAVE, Action, ActionKind
from cookstove_gui.forecast.futures.cook import AIR_TURN, LEAST_AIR
from cookstove_gui.forecast.futures.tending import tended
from cookstove_gui.forecast.model import heat
from cookstove_gui.forecast.model.habits import Habits
from cookstove_gui.stove.entries import HeatBand, Kind
from cookstove_gui.units import kelvin
from tests.following import track
from tests.forecast.logs import STOVE, at, usual_morning

_MINUTES = np.array([0.0, 5.0, 10.0, 20.0, 30.0])


def _band(low: float, high: float) -> HeatBand:
    return HeatBand(name="some", low=kelvin(low, "F"), high=kelvin(high, "F"))


def _air(band: HeatBand, action: Action = LEAVE, **habits: float) -> np.ndarray:
    """How far the air stands open (times, members) from a belief with half-open air and an oven of some 330 °F."""
    belief = track(STOVE, usual_morning(), at(71))
    belief = replace(belief, habits=replace(belief.habits, **habits))
    return np.round(tended(belief, action, _MINUTES, band)[:, heat.INLET], 9)  # the filter leaves dust behind


def test_air_begins_where_the_last_row_left_it():
    assert _air(_band(350, 400))[0] == pytest.approx(0.5)


def test_below_the_band_the_air_is_opened_and_above_it_shut_by_turns():
    below, above = _air(_band(425, 475)), _air(_band(200, 250))
    assert below[-1].mean() > 0.6
    assert above[-1].mean() < 0.3
    assert above.min() >= LEAST_AIR
    first = above[1][(above[1] < 0.5) & (above[1] > 0.1 + 1e-9)]
    assert first.min() >= 0.5 - 2 * AIR_TURN[1] - 1e-9  # two looks within five minutes at most, in nearly all
    assert first.max() <= 0.5 - AIR_TURN[0] + 1e-9


def test_in_the_band_the_air_mostly_stays():
    assert np.mean(_air(_band(300, 400))[2] == 0.5) > 0.7


def test_a_cook_who_sets_the_air_often_is_expected_to_do_so_again():
    seldom = _air(_band(200, 250), air_turns=2.0, air_minutes=400.0)
    often = _air(_band(200, 250), air_turns=40.0, air_minutes=400.0)
    assert np.mean(often[2] < 0.5) > np.mean(seldom[2] < 0.5) + 0.2


def test_what_if_the_air_is_set_holds_it_there():
    air = _air(_band(350, 400), Action(kind=ActionKind.AIR, value=0.9))
    assert np.mean(air[2] == 0.9) > 0.9  # all but those whose firing ends


def test_pace_of_the_air_is_learned_from_its_rows():
    # As a rate with a gamma prior of 4 turns in 96 min: twelve more, 5 min apart each, make 16 in 156 min.
    habits = Habits()
    for _ in range(12):
        habits = habits.after_air(5.0)
    assert (habits.air_turns, habits.air_minutes) == (pytest.approx(16.0), pytest.approx(156.0))
    for _ in range(2000):
        habits = habits.after_air(20.0)
    assert habits.air_turns / habits.air_minutes == pytest.approx(1.0 / 20.0, rel=1e-3)
    assert habits.air_minutes <= 1500.0


def test_a_session_teaches_the_pace_of_its_air():
    log = usual_morning()
    assert any(row.kind is Kind.AIR for row in log)
    belief = track(STOVE, log, at(71))
    assert belief.habits.air_turns == pytest.approx(5.0)  # the one after half an hour; at lighting it is no steering
    assert belief.habits.air_minutes == pytest.approx(96.0 + 50.0)
