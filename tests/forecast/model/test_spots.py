"""What neighbours tell about a spot agrees with a library's Gaussian process."""

import numpy as np
import pytest

from cookstove_gui.forecast.model.kalman import Gaussian, update
from cookstove_gui.forecast.model.spots import (
    distances,
    lasting_covariance,
    matern_three_halves,
)
from cookstove_gui.stove.stove import default_spots

_SPOTS = np.array([(0, 0), (1, 0), (2, 0), (0, 1), (1, 1), (2, 1)], dtype=float)
_HEATS = np.array([230, 260, 240, 190, 215, 200], dtype=float) - 222.5
_ASKED = np.array([(0.5, 0.5), (1.5, 0.25), (3, 1)], dtype=float)


def _smooth(distance):
    """Squared exponential kernel of length 1."""
    return 900.0 * np.exp(-0.5 * distance**2)


def _read_one_by_one(covariance: np.ndarray, values: np.ndarray, noise: float) -> Gaussian:
    """A field of mean 0 whose first places were read, as the forecast does it: one reading after the other."""
    belief = Gaussian(np.zeros(len(covariance)), covariance)
    for place, value in enumerate(values):
        belief = update(belief, np.eye(len(covariance))[place], value, noise)
    return belief


def _told(kernel):
    places = np.vstack([_SPOTS, _ASKED])
    belief = _read_one_by_one(kernel(distances(places, places)), _HEATS, 25.0)
    return belief.mean[6:], np.sqrt(np.diag(belief.covariance))[6:]


def test_smooth_field_matches_scikit_learn():
    # Row "12.1": computed with scikit-learn 1.9.1, GaussianProcessRegressor(alpha=25, optimizer=None).
    mean, deviation = _told(_smooth)
    assert mean == pytest.approx([4.307570, 22.680199, -21.438505], abs=1e-6)
    assert deviation == pytest.approx([7.326540, 6.580624, 22.204673], abs=1e-6)


def test_rougher_field_matches_scikit_learn():
    # row "12.2"
    mean, deviation = _told(matern_three_halves(900.0, 1.5))
    assert mean == pytest.approx([3.332603, 20.857968, -16.432809], abs=1e-6)
    assert deviation == pytest.approx([9.805614, 9.092111, 21.424754], abs=1e-6)


def test_field_agrees_with_scikit_learn_at_random_places():
    from sklearn.gaussian_process import GaussianProcessRegressor
    from sklearn.gaussian_process.kernels import ConstantKernel, Matern

    random = np.random.default_rng(5)
    places, values = random.random((9, 2)), random.normal(0.0, 20.0, 9)
    theirs = GaussianProcessRegressor(ConstantKernel(400.0) * Matern(0.4, nu=1.5), alpha=9.0, optimizer=None)
    expected, spread = theirs.fit(places[:6], values[:6]).predict(places, return_std=True)
    belief = _read_one_by_one(matern_three_halves(400.0, 0.4)(distances(places, places)), values[:6], 9.0)
    assert belief.mean == pytest.approx(expected, abs=1e-8)
    assert np.sqrt(np.diag(belief.covariance)) == pytest.approx(spread, abs=1e-8)


def test_field_is_exact_at_a_spot_without_noise_and_vague_far_away():
    # row "12.4"
    places = np.vstack([_SPOTS, [(80.0, 80.0)]])
    belief = _read_one_by_one(_smooth(distances(places, places)), _HEATS, 0.0)
    assert belief.mean[:6] == pytest.approx(_HEATS, abs=1e-9)
    assert belief.mean[6] == pytest.approx(0.0, abs=1e-9)
    assert belief.covariance[6, 6] == pytest.approx(900.0, abs=1e-9)


def test_a_stoves_lasting_covariance_can_be_inverted():
    assert np.linalg.eigvalsh(lasting_covariance(default_spots())).min() > 0.0
