"""What one session changes in a character, and how much of it the next firing still believes."""

import math
from dataclasses import replace
from datetime import timedelta

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from cookstove_gui.forecast.futures.forecaster import Forecaster
from cookstove_gui.forecast.learning.learn import (
    _partly_forgotten,
    _with_a_usual_thermometer,
    after_session,
    in_order,
    learn,
)
from cookstove_gui.forecast.model import parameters
from cookstove_gui.forecast.model.character import RISES, Character
from cookstove_gui.forecast.model.ensemble import FIELD, LASTING
from cookstove_gui.forecast.model.habits import Habits
from cookstove_gui.forecast.model.merit import KEPT_BEFORE, KEPT_SESSION, Merit
from cookstove_gui.forecast.model.plain import Rise
from cookstove_gui.forecast.tracking.tracker import Tracker
from cookstove_gui.stove.entries import Kind, Session
from tests.following import track
from tests.forecast.logs import STOVE, TOP_SPOTS, Log, at, usual_morning

PRIOR_MEAN, PRIOR = np.array([0.5, 0.0]), np.array([[1.0, 0.3], [0.3, 0.5]])
LAG = parameters.NAMES.index("dial_lag")


def _session(entries, title: str = "one") -> Session:
    return Session(number=1, stove=STOVE.name, title=title, entries=tuple(entries))


def _after(entries, before: Character | None = None) -> Character:
    before = before or Character.generic(STOVE)
    return after_session(before, Tracker(STOVE, before), _session(entries))


@pytest.fixture(scope="module")
def taught() -> Character:
    return _after(usual_morning())


# What fades


def test_half_of_what_was_learned_is_left_after_twenty_three_firings():
    # Three per cent a firing: 0.97 to the 23rd is 0.496; a variance that was known exactly is back at 1 - 0.97^46.
    mean, covariance = PRIOR_MEAN + 1.0, np.zeros((2, 2))
    for _ in range(23):
        mean, covariance = _partly_forgotten(mean, covariance, PRIOR_MEAN, PRIOR)
    assert mean - PRIOR_MEAN == pytest.approx([0.496, 0.496], abs=1e-3)
    assert covariance == pytest.approx(0.7537 * PRIOR, rel=1e-3)


def test_what_is_partly_forgotten_settles_at_the_prior():
    # a stationary first-order autoregression, closed form: any belief ends as the prior, and the prior stays
    mean, covariance = np.array([2.0, -1.0]), np.diag([0.01, 4.0])
    for _ in range(400):
        mean, covariance = _partly_forgotten(mean, covariance, PRIOR_MEAN, PRIOR)
    assert mean == pytest.approx(PRIOR_MEAN, abs=1e-3)
    assert covariance == pytest.approx(PRIOR, abs=1e-3)


@given(st.floats(0.0, 1.0), st.floats(-3.0, 3.0))
def test_forgetting_brings_a_belief_nearer_to_the_prior_and_never_past_it(known, off):
    mean, covariance = _partly_forgotten(PRIOR_MEAN + off, known * PRIOR, PRIOR_MEAN, PRIOR)
    assert np.all(np.abs(mean - PRIOR_MEAN) <= abs(off) + 1e-12)
    assert np.all((mean - PRIOR_MEAN) * off >= 0.0)
    assert known - 1e-12 <= covariance[0, 0] <= 1.0 + 1e-12


def test_parameters_are_those_believed_at_the_sessions_end_less_what_fades():
    entries = usual_morning()
    believed = track(STOVE, entries, entries[-1].at).ensemble.x[LASTING].mean(axis=1)
    ratio = (_after(entries).mean - parameters.prior_mean())[:LAG] / (believed - parameters.prior_mean())[:LAG]
    assert np.median(ratio) == pytest.approx(0.97, abs=0.03)


def test_what_is_believed_of_the_parameters_is_narrower_but_not_by_much_after_one_session(taught):
    shrunk = np.sqrt(np.diag(taught.covariance) / np.diag(parameters.prior_covariance()))
    assert shrunk.max() < 1.05
    assert 0.3 < np.median(shrunk) < 1.0
    assert np.linalg.eigvalsh(taught.covariance).min() > 0.0


# The thermometer's lag


def test_what_the_lag_explains_is_given_back_to_the_others():
    # Conditioning of a normal (Bishop 2006, 2.81 and 2.82): slope 0.5/0.25 = 2, variance 4 - 0.5^2/0.25 = 3.
    other = 0 if LAG else 1
    mean, covariance = parameters.prior_mean(), np.eye(parameters.COUNT)
    mean[LAG] += 0.3
    covariance[LAG, LAG], covariance[other, other] = 0.25, 4.0
    covariance[other, LAG] = covariance[LAG, other] = 0.5
    given_usual, rest = _with_a_usual_thermometer(mean, covariance)
    assert given_usual[LAG] == pytest.approx(parameters.prior_mean()[LAG])
    assert given_usual[other] == pytest.approx(parameters.prior_mean()[other] - 0.6)
    assert (rest[other, other], rest[other, LAG]) == (pytest.approx(3.0), pytest.approx(0.0))
    assert rest[LAG, LAG] == pytest.approx(parameters.prior_covariance()[LAG, LAG])
    assert np.delete(given_usual, (LAG, other)) == pytest.approx(np.delete(parameters.prior_mean(), (LAG, other)))


def test_no_more_is_believed_of_the_lag_than_at_first(taught):
    assert taught.mean[LAG] == pytest.approx(parameters.prior_mean()[LAG])
    assert taught.covariance[LAG, LAG] == pytest.approx(parameters.prior_covariance()[LAG, LAG])


# Spots


def test_a_spot_read_hot_is_believed_hotter_at_the_next_firing_and_one_read_cool_cooler(taught):
    # The logs' cooktop falls from spot to spot in walking order, unlike any stove's with its firebox at the left.
    before = dict(zip(Character.generic(STOVE).spots, Character.generic(STOVE).spot_share, strict=True))
    after = dict(zip(taught.spots, taught.spot_share, strict=True))
    assert taught.spots == tuple(spot.name for spot in STOVE.spots)
    order = [after[spot] for spot in TOP_SPOTS]
    assert after[TOP_SPOTS[0]] > after[TOP_SPOTS[-1]] + 0.05
    assert np.corrcoef(order, np.arange(6))[0, 1] < -0.5
    assert before != after


def test_spots_that_were_read_are_known_better_than_before_and_others_hardly(taught):
    before = dict(zip(taught.spots, np.diag(Character.generic(STOVE).spot_covariance), strict=True))
    after = dict(zip(taught.spots, np.diag(taught.spot_covariance), strict=True))
    assert all(after[spot] < 0.7 * before[spot] for spot in TOP_SPOTS)
    assert after["side_left"] == pytest.approx(before["side_left"], rel=0.05)
    assert np.linalg.eigvalsh(taught.spot_covariance).min() > -1e-9


def test_doubt_of_a_spot_is_that_within_the_members_and_that_between_them_less_what_fades():
    entries = usual_morning()
    belief = track(STOVE, entries, entries[-1].at)
    index = [spot.name for spot in STOVE.spots].index(TOP_SPOTS[0])
    shares = belief.ensemble.x[FIELD + index]
    left = shares.var(ddof=1) + belief.ensemble.remainder[index, index]
    prior = Character.generic(STOVE).spot_covariance[index, index]
    found = _after(entries).spot_covariance[index, index]
    assert found == pytest.approx(left + (1.0 - 0.97**2) * (prior - left))


def test_a_spot_that_only_a_log_names_is_learned_too():
    log = Log().add(0, Kind.LIT).reads(10, "oven_centre", 150).reads(11, "top_far", 300).reads(30, "oven_centre", 250)
    assert "top_far" in learn(STOVE, [_session(log.entries)]).spots


# Habits


def test_a_firing_ends_half_a_usual_interval_after_its_last_load(taught):
    # Loads at 10, 35 and 60 min; of three loads two were followed by another: (0.8 * 6 + 2) / (6 + 3).
    entries = usual_morning()
    believed = track(STOVE, entries, entries[-1].at).habits
    tended = 60.0 + 0.5 * math.exp(believed.interval_log)
    assert taught.habits.goes_on == pytest.approx(6.8 / 9.0)
    prior = Habits().tending_log
    assert taught.habits.tending_log == pytest.approx(prior + (math.log(tended) - prior) / 3.0)
    assert taught.habits.firings_seen == 3.0


def test_a_firing_counts_from_its_first_row():
    log = Log().add(0, Kind.LIT).add(12, Kind.WOOD, value="1", unit="kg").reads(20, "oven_centre", 150)
    believed = track(STOVE, log.entries, at(20)).habits
    prior = Habits().tending_log
    ended = math.log(12.0 + 0.5 * math.exp(believed.interval_log))
    assert _after(log.entries).habits.tending_log == pytest.approx(prior + (ended - prior) / 3.0)


def test_a_session_without_wood_says_nothing_of_how_long_fires_are_fed():
    entries = [row for row in usual_morning() if row.kind is not Kind.WOOD]
    assert _after(entries).habits.firings_seen == Habits().firings_seen


# Which sessions, in which order


def test_every_session_counts_as_a_firing(taught):
    assert taught.firings == 1
    assert _after(usual_morning(), taught).firings == 2


def test_a_session_whose_rows_were_all_taken_back_teaches_nothing():
    log = Log().reads(0, "oven_centre", 300).add(1, Kind.VOID, value="1")
    generic = Character.generic(STOVE)
    assert _after(log.entries, generic) is generic


def test_a_row_taken_back_at_the_end_is_not_learned_from(taught):
    wrong = Log()
    wrong.entries = list(usual_morning())
    number = len(wrong.entries) + 1
    wrong.reads(69, TOP_SPOTS[-1], 900).add(90, Kind.VOID, value=str(number))
    assert np.array_equal(_after(wrong.entries).spot_share, taught.spot_share)


def test_learning_goes_on_to_the_last_row_that_stands(taught):
    # A void row that comes an hour later is no sign that the fire was followed until then.
    late = Log()
    late.entries = list(usual_morning())
    late.reads(70, "room", 70).add(200, Kind.VOID, value=str(len(late.entries)))
    assert np.array_equal(_after(late.entries).mean, taught.mean)


def test_sessions_are_taken_by_their_earliest_row_and_empty_ones_left_out():
    first = Log().reads(10, "oven_centre", 100).reads(5, "oven_centre", 90)
    second = Log().reads(7, "oven_centre", 100)
    past = [_session(second.entries, "second"), _session([], "empty"), _session(first.entries, "first")]
    assert [session.title for session in in_order(past)] == ["first", "second"]


def test_nothing_is_learned_when_asked_to_stop_at_once():
    past = [_session(usual_morning())]
    assert learn(STOVE, past, cancelled=lambda: True).firings == 0


def test_how_wide_the_spots_windows_had_to_be_is_kept():
    wild = Log().add(0, Kind.LIT).add(0, Kind.AIR, value="1").add(5, Kind.WOOD, value="2", unit="kg")
    for turn in range(12):
        for place, spot in enumerate(TOP_SPOTS):
            wild.reads(20 + 5 * turn, spot, 400 + (120 if (turn + place) % 2 else -120))
    end = at(80)
    assert _after(wild.entries).spot_width == track(STOVE, wild.entries, end).spot_width != 1.0


def test_sessions_a_day_apart_are_followed_each_on_its_own():
    entries = usual_morning()
    moved = [replace(row, at=row.at + timedelta(days=3)) for row in entries]
    assert np.array_equal(_after(moved).mean, _after(entries).mean)


# What the plain forecasters learn


def test_the_oven_of_a_session_is_kept_from_lighting_on():
    entries = usual_morning()
    rise = _after(entries).rises[-1]
    lit = next(row for row in entries if row.kind is Kind.LIT)
    rows = [row for row in entries if row.kind is Kind.READING and row.spot == "oven_centre"]
    assert rise.since_lit == pytest.approx([(row.at - lit.at).total_seconds() / 60.0 for row in rows])
    assert len(rise.kelvin) == len(rows)


def test_a_slip_is_no_part_of_what_the_oven_did():
    log = Log()
    log.entries.extend(usual_morning())
    minutes = (usual_morning()[-1].at - at(0)).total_seconds() / 60.0
    log.reads(minutes + 5, "oven_centre", 33.0)
    assert track(STOVE, log.entries, at(minutes + 5)).doubted
    kelvin = _after(log.entries).rises[-1].kelvin
    assert len(kelvin) == len(_after(usual_morning()).rises[-1].kelvin)
    assert kelvin[-1] > 400.0


def test_the_latest_sessions_are_kept():
    earlier = tuple(Rise(np.zeros(1), np.full(1, 300.0 + number)) for number in range(RISES))
    before = replace(Character.generic(STOVE), rises=earlier)
    after = _after(usual_morning(), before).rises
    assert len(after) == RISES
    assert after[0].kelvin[0] == 301.0
    assert len(after[-1].kelvin) > 1


def test_what_a_session_proved_is_kept_with_the_stove():
    entries = usual_morning()
    before = Character.generic(STOVE)
    proved = Merit(np.ones_like(Merit().apart), np.ones_like(Merit().towards))
    after = after_session(before, Tracker(STOVE, before), _session(entries), proved)
    assert after.merit.apart == pytest.approx(KEPT_SESSION * proved.apart)
    assert _after(entries, after).merit.apart == pytest.approx(KEPT_BEFORE * after.merit.apart)


def test_learning_puts_the_plain_forecasters_to_the_proof():
    entries = usual_morning()
    learned = learn(STOVE, [_session(entries)])
    proved = Forecaster(STOVE).merit(entries, entries[-1].at)
    assert learned.merit.towards == pytest.approx(KEPT_SESSION * proved.towards)


def test_a_character_comes_back_with_what_the_plain_forecasters_learned(taught):
    given = replace(taught, merit=Merit(np.ones_like(Merit().apart), np.ones_like(Merit().towards)))
    again = Character.from_json(given.to_json())
    assert again.merit.apart == pytest.approx(given.merit.apart)
    for found, rise in zip(again.rises, given.rises, strict=True):
        np.testing.assert_array_equal(found.kelvin, rise.kelvin)
        np.testing.assert_array_equal(found.since_lit, rise.since_lit)
