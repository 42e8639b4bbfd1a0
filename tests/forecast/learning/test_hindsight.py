"""Scores agree with libraries, and widths learned from hindsight bring coverage where it was claimed."""

import numpy as np
import pytest

from cookstove_gui.forecast.learning.hindsight import Hindcast, aimed_band, corrections_from, pinball
from cookstove_gui.forecast.model.character import CORRECTION_MINUTES


@pytest.mark.parametrize(
    ("quantile", "level", "expected"),
    [(8.0, 0.1, 0.2), (12.0, 0.1, 1.8), (12.0, 0.9, 0.2), (8.0, 0.9, 1.8), (8.0, 0.5, 1.0)],
)
def test_pinball_matches_the_reference_rows(quantile, level, expected):
    # Reference 10.5, by scoringrules 0.10.0 and scikit-learn 1.9.1.
    assert pinball(np.array([quantile]), 10.0, (level,)) == pytest.approx(expected, abs=1e-12)


def test_pinball_agrees_with_scoringrules():
    import scoringrules

    random = np.random.default_rng(1)
    quantiles, truth, levels = np.sort(random.normal(size=3)), float(random.normal()), (0.1, 0.5, 0.9)
    theirs = np.mean(
        [float(scoringrules.quantile_score(truth, q, level)) for q, level in zip(quantiles, levels, strict=True)]
    )
    assert pinball(quantiles, truth, levels) == pytest.approx(theirs, rel=1e-9)


def test_twice_the_pinball_integral_is_the_crps():
    import scoringrules
    from scipy.stats import norm

    levels = (np.arange(4000) + 0.5) / 4000
    ours = 2.0 * pinball(norm.ppf(levels), 1.0, tuple(levels))
    assert ours == pytest.approx(float(scoringrules.crps_normal(1.0, 0.0, 1.0)), abs=1e-5)


def _casts(count: int, half: float, spread: float, lead: float = 30.0) -> list[Hindcast]:
    misses = np.random.default_rng(2).normal(0.0, spread, count)
    return [Hindcast(lead, (400.0 - half, 400.0, 400.0 + half), 400.0 + float(miss), 1.0) for miss in misses]


def test_windows_that_were_too_narrow_become_wide_enough():
    # Half-width 6.4 K covers 80 % of a normal of 5 K; truth scatters by 8 K. Binomial limits at 95 % for n = 400.
    from scipy.stats import binom

    width = corrections_from(_casts(400, 6.408, 8.0)).width[CORRECTION_MINUTES.index(30.0)]
    fresh = np.abs(np.random.default_rng(3).normal(0.0, 8.0, 400)) <= 6.408 * width
    low, high = binom.ppf([0.025, 0.975], 400, 0.8)
    assert low <= fresh.sum() <= high


def test_windows_that_were_right_stay():
    width = corrections_from(_casts(300, 6.408, 5.0)).width[CORRECTION_MINUTES.index(30.0)]
    assert width == pytest.approx(1.0, abs=0.1)


def test_a_few_casts_hardly_change_the_width():
    width = corrections_from(_casts(2, 6.408, 15.0)).width[CORRECTION_MINUTES.index(30.0)]
    assert width < 1.3


def test_the_aimed_band_lies_where_the_hot_readings_are():
    band = aimed_band(np.array([300.0, 400.0, 450.0, 455.0, 460.0]))
    assert band.low < 455.0 < band.high
