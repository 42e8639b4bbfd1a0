"""Scores of the skill study against scoringrules, scikit-learn and closed forms."""

import numpy as np
import pytest
from scipy.stats import binom, norm

from tests.benchmarks.skill_scores import (
    LEVELS,
    binomial_limits,
    brier_score,
    covered,
    interval_score,
    over_stoves,
    pinball_loss,
)

RNG = np.random.default_rng(3)
TRUTH = RNG.normal(180.0, 20.0, 50)
QUANTILES = np.sort(RNG.normal(180.0, 25.0, (50, 3)), axis=1)


def test_pinball_loss_is_that_of_scoringrules() -> None:
    import scoringrules

    expected = np.mean(
        [scoringrules.quantile_score(TRUTH, QUANTILES[:, k], level) for k, level in enumerate(LEVELS)], axis=0
    )
    assert pinball_loss(TRUTH, QUANTILES) == pytest.approx(expected, rel=1e-12)


def test_pinball_loss_is_that_of_scikit_learn() -> None:
    from sklearn.metrics import mean_pinball_loss

    expected = np.mean([mean_pinball_loss(TRUTH, QUANTILES[:, k], alpha=level) for k, level in enumerate(LEVELS)])
    assert pinball_loss(TRUTH, QUANTILES).mean() == pytest.approx(expected, rel=1e-12)


@pytest.mark.parametrize(
    ("quantile", "level", "expected"), [(8, 0.1, 0.2), (12, 0.1, 1.8), (12, 0.9, 0.2), (8, 0.9, 1.8), (8, 0.5, 1)]
)
def test_pinball_loss_of_single_quantiles(quantile: float, level: float, expected: float) -> None:
    # row "10.5": closed form, Koenker and Bassett 1978: truth 10
    loss = pinball_loss(np.array([10.0]), np.array([[quantile]], dtype=float), np.array([level]))
    assert loss[0] == pytest.approx(expected, abs=1e-12)


@pytest.mark.parametrize("level", [0.1, 0.9])
def test_mean_pinball_loss_of_three_questions(level: float) -> None:
    # row "10.6": as scikit-learn's mean_pinball_loss
    loss = pinball_loss(np.array([1.0, 2.0, 3.0]), np.array([[0.0], [2.0], [4.0]]), np.array([level]))
    assert loss.mean() == pytest.approx(1 / 3, abs=1e-12)


def test_twice_the_mean_pinball_loss_over_all_levels_is_the_crps() -> None:
    import scoringrules

    # row "10.7": Gneiting and Raftery 2007; CRPS of N(0, 1) at 1 by scoringrules, 0.602441358
    levels = (np.arange(20_000) + 0.5) / 20_000
    loss = pinball_loss(np.array([1.0]), norm.ppf(levels)[None], levels)[0]
    assert 2.0 * loss == pytest.approx(float(scoringrules.crps_normal(1.0, 0.0, 1.0)), abs=1e-7)


def test_interval_score_is_that_of_scoringrules() -> None:
    import scoringrules

    expected = scoringrules.interval_score(TRUTH, QUANTILES[:, 0], QUANTILES[:, 2], 0.2)
    assert interval_score(TRUTH, QUANTILES[:, 0], QUANTILES[:, 2]) == pytest.approx(expected, rel=1e-12)


def test_interval_score_of_single_intervals() -> None:
    # row "10.8": closed form, Gneiting and Raftery 2007, 80 % interval from 5 to 10, truth 12 and 7
    scores = interval_score(np.array([12.0, 7.0]), np.array([5.0, 5.0]), np.array([10.0, 10.0]))
    assert scores == pytest.approx([25.0, 5.0], abs=1e-12)


def test_brier_score_of_one_event() -> None:
    # row "10.12": chance 0.7, and it happened
    assert brier_score(np.array([0.7]), np.array([True])) == pytest.approx(0.09, abs=1e-9)


def test_brier_score_is_that_of_scoringrules() -> None:
    import scoringrules

    chances = RNG.uniform(size=30)
    happened = RNG.uniform(size=30) < chances
    expected = scoringrules.brier_score(happened.astype(float), chances)
    assert brier_score(chances, happened) == pytest.approx(expected, rel=1e-12)


def test_an_interval_covers_its_own_ends() -> None:
    assert covered(np.array([1.0, 2.0, 3.0, 0.9]), np.full(4, 1.0), np.full(4, 3.0)).tolist() == [
        True,
        True,
        True,
        False,
    ]


@pytest.mark.parametrize(("questions", "low", "high"), [(50, 34, 45), (200, 149, 171)])
def test_binomial_limits_are_the_exact_ones(questions: int, low: int, high: int) -> None:
    # row "10.11": central 95 % of the hits of an 80 % interval, scipy's binomial distribution
    limits = binomial_limits(questions)
    assert limits == pytest.approx((low / questions, high / questions))
    assert binom.cdf(high, questions, 0.8) - binom.cdf(low - 1, questions, 0.8) >= 0.95


def test_doubt_over_stoves_is_wider_than_over_questions_when_stoves_differ() -> None:
    stoves = np.repeat(np.arange(10), 40)
    losses = RNG.normal(0.0, 1.0, 10)[stoves] + RNG.normal(0.0, 0.1, 400)
    low, high = over_stoves(lambda rows: float(losses[rows].mean()), stoves.tolist())
    one_low, one_high = over_stoves(lambda rows: float(losses[rows].mean()), list(range(400)))
    assert high - low > 2.0 * (one_high - one_low)
    assert low < losses.mean() < high
