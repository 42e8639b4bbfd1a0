"""The normal distribution agrees with scipy."""

import numpy as np
import pytest
from scipy.stats import norm

from cookstove_gui.forecast.model.normal import NINETIETH, quantile, share_below


def test_chances_agree_with_scipy():
    deviates = np.linspace(-6.0, 6.0, 121)
    assert share_below(deviates) == pytest.approx(norm.cdf(deviates), abs=1e-7)


def test_quantiles_agree_with_scipy():
    chances = np.linspace(0.001, 0.999, 97)
    assert quantile(chances) == pytest.approx(norm.ppf(chances), abs=5e-4)


def test_half_an_eighty_per_cent_interval_ends_at_the_ninetieth_percentile():
    assert pytest.approx(norm.ppf(0.9), abs=1e-4) == NINETIETH
