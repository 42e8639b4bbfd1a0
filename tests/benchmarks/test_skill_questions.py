"""The skill study asks fairly: nothing later than the moment is shown, and never counts as three hours."""

import numpy as np
import pytest

from cookstove_gui.stove.entries import HeatBand
from tests.benchmarks.skill_baselines import BASELINES, fit
from tests.benchmarks.skill_questions import HORIZON, LEADS, Question, answer_from_paths, questions_of
from tests.benchmarks.skill_table import scores_of
from tests.world.sessions import make_sessions
from tests.world.stoves import make_stove

BAND = HeatBand(name="test", low=440.0, high=460.0)
MINUTES = np.arange(HORIZON + 1.0)


@pytest.fixture(scope="module")
def asked() -> list[Question]:
    """Questions of a dozen sessions."""
    sessions = make_sessions([(make_stove(650 + number), 1) for number in range(12)])
    return [question for session in sessions for question in questions_of(session)]


def test_a_question_shows_only_the_rows_up_to_its_moment(asked: list[Question]) -> None:
    for question in asked[::17]:
        assert max(entry.at for entry in question.entries) <= question.now
        assert len(question.entries) < len(question.session.entries) or question is asked[-1]
        assert question.readings[-1, 0] == pytest.approx(question.minute)
        assert len(question.readings) >= 3


def test_the_truth_of_a_question_is_the_oven_air(asked: list[Question]) -> None:
    for question in asked[::17]:
        true = np.interp(question.minute + 30.0, question.session.times, question.session.truth[:, 0])
        assert question.ahead[1] == pytest.approx(true)
        assert question.in_band_30 == question.band.holds(float(true))


def test_an_oven_in_the_band_has_no_arrival_to_ask_for(asked: list[Question]) -> None:
    for question in asked:
        inside = (question.path >= question.band.low) & (question.path <= question.band.high)
        if inside[0]:
            assert question.arrival is None
        elif question.arrival is not None and question.arrival < HORIZON:
            assert inside[int(question.arrival)]
            assert not inside[: int(question.arrival)].any()
        else:
            assert not inside[:HORIZON].any()


def test_futures_become_quantiles_chance_and_arrival() -> None:
    slopes = np.linspace(0.5, 3.0, 200)
    answer = answer_from_paths(400.0 + slopes[:, None] * MINUTES, BAND, MINUTES)
    # closed form: a straight rise of s K/min from 400 K is at 440 K after 40 / s minutes
    assert answer.quantiles[1] == pytest.approx(400.0 + 30.0 * np.quantile(slopes, [0.1, 0.5, 0.9]), abs=0.5)
    assert answer.enters == pytest.approx(40.0 / np.quantile(slopes, [0.9, 0.5, 0.1]), abs=1.1)
    assert answer.chance_30 == pytest.approx(((slopes >= 40 / 30) & (slopes <= 60 / 30)).mean())


def test_a_future_that_leaps_over_the_band_has_been_in_it() -> None:
    answer = answer_from_paths(np.where(MINUTES < 10, 400.0, 500.0)[None], BAND, MINUTES)
    assert answer.enters.tolist() == [10.0, 10.0, 10.0]


def test_never_counts_as_three_hours_on_both_sides(asked: list[Question]) -> None:
    never = next(question for question in asked if question.arrival == HORIZON)
    cold = answer_from_paths(np.full((5, len(MINUTES)), 300.0), never.band, MINUTES)
    scores = scores_of([never], [cold])
    assert scores.arrival_error.tolist() == [0.0]
    assert scores.arrival_inside.tolist() == [1.0]
    soon = answer_from_paths(np.full((5, len(MINUTES)), never.band.low + 1.0), never.band, MINUTES)
    scores = scores_of([never], [soon])
    assert scores.arrival_error.tolist() == [float(HORIZON)]
    assert scores.arrival_inside.tolist() == [0.0]


@pytest.mark.parametrize("name", ["last value", "line through two", "line through three"])
def test_a_baseline_covers_four_fifths_of_what_it_was_fitted_on(name: str, asked: list[Question]) -> None:
    some = asked[::2]
    baseline = fit(name, some)
    scores = scores_of(some, [baseline.answer(question) for question in some])
    assert scores.inside.mean(0) == pytest.approx([0.8, 0.8, 0.8], abs=0.03)


@pytest.mark.parametrize("name", list(BASELINES))
def test_a_baseline_follows_a_steady_oven(name: str) -> None:
    minutes = np.arange(0.0, 100.0, 8.0)
    readings = np.column_stack([minutes, 450.0 + 0.2 * np.sin(minutes)])
    mean, scale = BASELINES[name](readings)
    assert mean.shape == scale.shape == LEADS.shape
    assert mean[:7] == pytest.approx(450.0, abs=8.0)


def test_an_exponential_rise_is_found_again_by_the_exponential_baseline() -> None:
    # closed form of first-order warming: 300 K towards 480 K with a time constant of 45 min
    minutes = np.arange(0.0, 60.0, 6.0)
    readings = np.column_stack([minutes, 480.0 - 180.0 * np.exp(-minutes / 45.0)])
    mean, _ = BASELINES["exponential approach"](readings)
    assert mean[12] == pytest.approx(480.0 - 180.0 * np.exp(-(54.0 + 60.0) / 45.0), abs=0.5)


def test_a_line_is_continued_by_the_ruler_baselines() -> None:
    readings = np.array([[0.0, 400.0], [10.0, 410.0], [20.0, 420.0]])
    for name in ("line through two", "line through three"):
        mean, _ = BASELINES[name](readings)
        assert mean[6] == pytest.approx(450.0)
