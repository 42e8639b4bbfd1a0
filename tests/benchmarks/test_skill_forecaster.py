"""The study's way to the forecast: following a session says the same as starting anew at every question."""

import numpy as np
import pytest

from tests.benchmarks import skill
from tests.benchmarks.skill_forecaster import LATER, Estimator, Follower, character_of, later_of_those_that_come
from tests.benchmarks.skill_questions import HORIZON, questions_of
from tests.benchmarks.skill_zones import zone_lines
from tests.world.sessions import WorldSession, make_session
from tests.world.stoves import make_stove


@pytest.fixture(scope="module")
def session() -> WorldSession:
    """A short firing."""
    return make_session(make_stove(660), 1, purpose="top")


def test_following_a_session_is_as_good_as_starting_anew(session: WorldSession) -> None:
    follower = Follower(session.stove, None)
    for question in questions_of(session)[::9]:
        followed, anew = follower.answer(question), Follower(session.stove, None).answer(question)
        assert np.array_equal(followed.quantiles, anew.quantiles)
        assert np.array_equal(followed.enters, anew.enters)


def test_answers_are_in_order_and_within_the_horizon(session: WorldSession) -> None:
    follower = Follower(session.stove, None)
    for question in questions_of(session)[::4]:
        answer = follower.answer(question)
        assert (np.diff(answer.quantiles, axis=1) >= 0).all()
        assert (np.diff(answer.enters) >= 0).all()
        assert 0 <= answer.enters[0] <= answer.enters[2] <= HORIZON
        assert 0 <= answer.chance_30 <= 1


def test_the_later_instant_is_of_the_futures_that_come_if_half_do() -> None:
    comes = np.arange(101.0)
    assert later_of_those_that_come(np.append(comes, np.full(101, np.inf))) == pytest.approx(100 * LATER)
    assert later_of_those_that_come(np.append(comes, np.full(102, np.inf))) == np.inf


def test_without_a_past_nothing_has_been_learned(session: WorldSession) -> None:
    assert character_of(session.stove, []) is None


def test_the_spots_table_compares_with_the_last_reading(session: WorldSession) -> None:
    estimator = Estimator({(session.stove_seed, 0): None}, 0)
    lines = zone_lines([session], {"forecast": estimator})
    assert len(lines) == 2
    assert lines[1].startswith("forecast")


@pytest.mark.slow
def test_the_quick_study_beats_every_baseline(capsys: pytest.CaptureFixture[str]) -> None:
    skill.main(["--quick", "--design", "--no-zones"])
    printed = capsys.readouterr().out.splitlines()
    losses = {
        line[:26].strip(): line[26:].split() for line in printed if line[26:34].strip().replace(".", "").isdigit()
    }
    best = min(float(numbers[1]) for name, numbers in losses.items() if "forecast" not in name and "true" not in name)
    assert float(losses["forecast, 0 past"][1]) < best
    assert float(losses["forecast, 3 past"][1]) < 0.9 * best
