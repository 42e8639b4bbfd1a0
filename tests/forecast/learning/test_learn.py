"""Past sessions sharpen the belief, and the character survives being written down."""

import json
import random
from datetime import timedelta

import numpy as np
import pytest

from cookstove_gui.errors import InputProblem
from cookstove_gui.forecast import Character, learn, outlook, spot_pattern, track, zones
from cookstove_gui.forecast.learning import kept
from cookstove_gui.forecast.learning.hindsight import Hindcast
from cookstove_gui.forecast.learning.learn import JUDGED_SESSIONS, Looked, _partly_forgotten, lessons, proven
from cookstove_gui.forecast.model import parameters
from cookstove_gui.stove.entries import Session
from cookstove_gui.stove.stove import with_spots_named
from tests.benchmarks.long_logbook import fire
from tests.forecast.logs import MODERATE, STOVE, at, sessions, usual_morning


@pytest.fixture(scope="module")
def learned() -> Character:
    return learn(STOVE, sessions(4))


def test_character_round_trips_through_json(learned):
    again = Character.from_json(json.loads(json.dumps(learned.to_json())))
    first, second = (track(STOVE, usual_morning(40), at(40), character) for character in (learned, again))
    assert np.array_equal(first.ensemble.x, second.ensemble.x)


def test_another_versions_character_is_refused_in_a_sentence():
    with pytest.raises(InputProblem, match="another version"):
        Character.from_json({**Character.generic(STOVE).to_json(), "version": 0})


def test_learning_the_same_sessions_gives_the_same_character(learned):
    assert learn(STOVE, sessions(4)).to_json() == learned.to_json()


def test_sessions_may_come_in_any_order(learned):
    assert learn(STOVE, sessions(4)[::-1]).to_json() == learned.to_json()


def test_known_stove_is_projected_more_sharply(learned):
    entries = usual_morning(30)
    known, unknown = (outlook(track(STOVE, entries, at(30), who), MODERATE) for who in (learned, None))
    assert known.ahead[2].p90 - known.ahead[2].p10 < unknown.ahead[2].p90 - unknown.ahead[2].p10


def test_no_sessions_teach_nothing():
    assert learn(STOVE, []).to_json() == Character.generic(STOVE).to_json()


def test_progress_is_told_and_cancelling_stops():
    told: list[tuple[int, int]] = []
    learn(STOVE, sessions(4), progress=lambda done, total: told.append((done, total)), cancelled=lambda: len(told) == 2)
    assert told == [(1, 4), (2, 4)]


def test_a_session_without_usable_rows_is_passed_over():
    empty = Session(number=9, stove=STOVE.name, title="empty", entries=())
    assert learn(STOVE, [empty]).firings == 0


def test_hot_side_is_found_with_its_interval_and_count():
    pattern = spot_pattern(STOVE, sessions(4))
    assert pattern[0].spot == "top_front_left"
    assert pattern[0].mean > 0.0 > pattern[-1].mean
    assert all(row.p10 < row.mean < row.p90 and row.readings == 16 for row in pattern)
    assert sum(row.mean for row in pattern) == pytest.approx(0.0, abs=1e-6)


def test_hot_side_matches_plain_averages_when_readings_are_many():
    # The logs' pattern is a fall of 12 °F from spot to spot in walking order; centred, ±30, ±18, ±6 °F.
    expected = np.array([30.0, 18.0, 6.0, -6.0, -18.0, -30.0]) / 1.8
    found = np.array([row.mean for row in spot_pattern(STOVE, sessions(12))])
    assert found == pytest.approx(expected, abs=1.5)


def test_hot_side_without_sessions_is_vague_and_level():
    pattern = spot_pattern(STOVE, [])
    assert all(row.readings == 0 and row.mean == 0.0 and row.p10 < -10.0 < 10.0 < row.p90 for row in pattern)


def test_no_more_is_believed_of_the_thermometers_lag_than_at_first(learned):
    lag = parameters.NAMES.index("dial_lag")
    assert learned.mean[lag] == pytest.approx(parameters.prior_mean()[lag])
    assert learned.covariance[lag, lag] == pytest.approx(parameters.prior_covariance()[lag, lag])


def test_what_is_believed_of_the_parameters_stays_a_covariance(learned):
    assert np.linalg.eigvalsh(learned.covariance).min() > 0.0


def test_what_is_partly_forgotten_settles_at_the_prior():
    # a stationary first-order autoregression, closed form: any belief ends as the prior, and the prior stays
    mean, covariance = np.array([2.0, -1.0]), np.diag([0.01, 4.0])
    prior_mean, prior = np.array([0.5, 0.0]), np.array([[1.0, 0.3], [0.3, 0.5]])
    for _ in range(400):
        mean, covariance = _partly_forgotten(mean, covariance, prior_mean, prior)
    assert mean == pytest.approx(prior_mean, abs=1e-3)
    assert covariance == pytest.approx(prior, abs=1e-3)


def test_spots_that_nobody_ever_reads_stay_near_their_neighbours():
    # a cook who reads the four corners of the cooktop only, all about equally hot, firing after firing
    chance, now = random.Random(7), at(0)
    past = [
        Session(number=day, stove=STOVE.name, title="", entries=fire(now + timedelta(days=day), 40, 3.0, chance))
        for day in range(30)
    ]
    today = fire(now + timedelta(days=30), 70, 1.6, chance)
    heats = {zone.spot: zone.p50 for zone in zones(track(STOVE, today, today[-1].at, learn(STOVE, past)))}
    coolest = min(heats[f"top_{place}"] for place in ("front_left", "front_right", "back_left", "back_right"))
    for middle in ("top_front_middle", "top_back_middle"):
        assert coolest - 30.0 < heats[middle] < coolest + 40.0  # K


def test_a_pass_that_goes_on_from_kept_lessons_finds_what_a_fresh_one_finds():
    past, bands = sessions(5), (MODERATE,)
    early = kept.from_json(json.loads(json.dumps(kept.to_json(lessons(STOVE, past[:3], bands)))))
    assert kept.to_json(lessons(STOVE, past, bands, early)) == kept.to_json(lessons(STOVE, past, bands))


def test_lessons_of_other_spots_are_not_gone_on_from():
    other = lessons(with_spots_named(STOVE, ("top_warming_shelf",)), sessions(2))
    assert kept.to_json(lessons(STOVE, sessions(3), known=other)) == kept.to_json(lessons(STOVE, sessions(3)))


def test_the_record_shows_what_the_character_of_that_day_foretold():
    past = sessions(4)
    told = [row for row in lessons(STOVE, past, (MODERATE,)).record if row.session == past[3].title]
    assert told
    of_that_day = learn(STOVE, past[:3])
    for row in told:
        belief = track(STOVE, past[3].entries, row.made_at, of_that_day)
        assert outlook(belief, MODERATE).band.enters_min == row.enters_min


def _looked(learned: float, generic: float, sessions: int) -> list[Looked]:
    cast = [Hindcast(30.0, (390.0, 400.0, 410.0), 400.0, loss) for loss in (learned, generic)]
    return [Looked(casts=(cast[0],), generic=(cast[1],), asked=())] * sessions


def test_what_was_learned_is_kept_unless_it_foretold_clearly_worse(learned):
    generic = Character.generic(STOVE)
    assert proven(learned, generic, _looked(1.1, 1.0, 3)).mean is learned.mean
    assert proven(learned, generic, _looked(1.2, 1.0, 3)).mean is generic.mean


def test_only_the_latest_sessions_judge_what_was_learned(learned):
    generic = Character.generic(STOVE)
    long_ago_bad = _looked(100.0, 1.0, 5) + _looked(0.9, 1.0, JUDGED_SESSIONS)
    assert proven(learned, generic, long_ago_bad).mean is learned.mean
