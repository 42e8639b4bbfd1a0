"""Quantiles by sorting are numpy's own."""

import numpy as np
import pytest

from cookstove_gui.forecast.model.quantiles import middle, quantiles

LEVELS = (0.0, 0.1, 1.0 / 3.0, 0.5, 0.9, 1.0)


@pytest.mark.reference  # numpy.quantile and numpy.median
@pytest.mark.parametrize("count", [2, 3, 10, 640])
def test_they_are_those_of_numpy(count):
    values = np.random.default_rng(count).normal(400.0, 60.0, (5, count))
    assert middle(values) == pytest.approx(np.median(values, axis=1), rel=1e-14)
    assert quantiles(values[0], LEVELS) == pytest.approx(np.quantile(values[0], LEVELS), rel=1e-14)
