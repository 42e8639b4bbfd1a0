"""Scores of the skill study: pinball loss, coverage, Brier, arrival error, and their doubt over stoves.

Checked against scoringrules and scikit-learn in test_skill_scores.py.
"""

from collections.abc import Callable, Sequence

import numpy as np
from numpy.typing import NDArray

FloatArray = NDArray[np.float64]
LEVELS = np.array([0.1, 0.5, 0.9])


def pinball_loss(truth: FloatArray, quantiles: FloatArray, levels: FloatArray = LEVELS) -> FloatArray:
    """Mean pinball loss over the levels; truth (...,), quantiles (..., levels), same unit in and out.

    Source: Koenker and Bassett, "Regression quantiles", Econometrica 46 (1978).
    """
    miss = np.asarray(truth)[..., None] - quantiles
    return np.asarray(np.maximum(levels * miss, (levels - 1.0) * miss).mean(-1))


def interval_score(truth: FloatArray, low: FloatArray, high: FloatArray, alpha: float = 0.2) -> FloatArray:
    """Score of a central (1 - alpha) interval, lower is better.

    Source: Gneiting and Raftery, "Strictly proper scoring rules", JASA 102 (2007), eq. 43.
    """
    below, above = np.maximum(low - truth, 0.0), np.maximum(truth - high, 0.0)
    return np.asarray(high - low + 2.0 / alpha * (below + above))


def brier_score(chance: FloatArray, happened: NDArray[np.bool_]) -> FloatArray:
    """Squared error of a chance. Source: Brier, Monthly Weather Review 78 (1950), the binary half."""
    return np.asarray((chance - happened) ** 2)


def covered(truth: FloatArray, low: FloatArray, high: FloatArray) -> NDArray[np.bool_]:
    """Whether the truth lies in the interval, ends included."""
    return np.asarray((truth >= low) & (truth <= high))


def over_stoves(
    statistic: Callable[[NDArray[np.intp]], float], stoves: Sequence[int], draws: int = 400, seed: int = 1
) -> tuple[float, float]:
    """80 % bootstrap interval of a statistic of question rows, whole stoves drawn with replacement."""
    rng = np.random.default_rng(seed)
    names = np.unique(stoves)
    rows = {name: np.flatnonzero(np.asarray(stoves) == name) for name in names}
    values = [statistic(np.concatenate([rows[name] for name in rng.choice(names, len(names))])) for _ in range(draws)]
    low, high = np.quantile(values, [0.1, 0.9])
    return float(low), float(high)


def binomial_limits(questions: int, share: float = 0.8, level: float = 0.95) -> tuple[float, float]:
    """Central range of an observed share when the true one is `share` and the questions are independent."""
    from scipy.stats import binom

    tail = (1.0 - level) / 2.0
    return (
        float(binom.ppf(tail, questions, share) / questions),
        float(binom.ppf(1.0 - tail, questions, share) / questions),
    )
