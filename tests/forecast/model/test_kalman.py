"""The Kalman recursion in use by the model gives published and library results."""

import numpy as np
import pytest

from cookstove_gui.forecast.model.kalman import Gaussian, relaxation, update


def _nile() -> np.ndarray:
    from statsmodels.datasets import nile

    return np.asarray(nile.load_pandas().data["volume"], dtype=float)


def _predict(belief: Gaussian, kept: float, noise: float, drive: float = 0.0) -> Gaussian:
    return Gaussian(kept * belief.mean + drive, kept**2 * belief.covariance + noise)


def _log_density(belief: Gaussian, value: float, noise: float) -> float:
    """Of a value that reads a belief of one state."""
    variance = belief.covariance[0, 0] + noise
    return float(-0.5 * (np.log(2.0 * np.pi * variance) + (value - belief.mean[0]) ** 2 / variance))


def _local_level(values: np.ndarray, observation: float, level: float) -> tuple[list[Gaussian], list[float]]:
    """Predicted beliefs for steps 2.. and log densities of y2.., from a level known by the first value alone."""
    belief = _predict(Gaussian(values[:1], np.array([[observation]])), 1.0, level)
    predicted, densities = [belief], []
    for value in values[1:]:
        densities.append(_log_density(belief, value, observation))
        belief = _predict(update(belief, np.ones(1), value, observation), 1.0, level)
        predicted.append(belief)
    return predicted, densities


def test_nile_level_follows_durbin_and_koopman():
    # Rows "11.3", "11.4", "11.5": Durbin & Koopman 2012, ch. 2; computed with statsmodels 0.15.0, exact diffuse start.
    predicted, densities = _local_level(_nile(), 15099.0, 1469.1)
    assert predicted[0].mean[0] == 1120.0
    assert predicted[0].covariance[0, 0] == pytest.approx(16568.1, abs=1e-3)
    assert predicted[1].mean[0] == pytest.approx(1140.9278, abs=1e-3)
    assert predicted[1].covariance[0, 0] == pytest.approx(9368.836, abs=1e-3)
    assert predicted[48].mean[0] == pytest.approx(859.298, abs=1e-3)
    assert predicted[99].mean[0] == pytest.approx(798.3703, abs=1e-3)
    assert sum(densities) == pytest.approx(-632.545625, abs=1e-4)


def test_nile_level_agrees_with_statsmodels_step_by_step():
    from statsmodels.tsa.statespace.structural import UnobservedComponents

    values = _nile()
    model = UnobservedComponents(values, "llevel", use_exact_diffuse=True)
    theirs = model.filter([15099.0, 1469.1]).predicted_state[0, 1:101]
    predicted, _ = _local_level(values, 15099.0, 1469.1)
    assert [belief.mean[0] for belief in predicted] == pytest.approx(list(theirs), rel=1e-9)


def test_level_variance_settles_at_its_closed_form():
    # row "11.6"
    predicted, _ = _local_level(np.zeros(200), 15099.0, 1469.1)
    settled = 1469.1 * (1 + np.sqrt(1 + 4 * 15099.0 / 1469.1)) / 2
    assert predicted[-1].covariance[0, 0] == pytest.approx(settled, rel=1e-9)
    assert settled == pytest.approx(5501.257942, abs=1e-6)


# Row "11.irregular": computed with filterpy 2.0.0 and statsmodels 0.15.0.
_READINGS = [(0, 22), (5, 60.5), (7, 75), (20, 118), (21, 121.5), (50, 150), (95, 149)]
_FILTERED = [
    (22.000000, 3.448276), (56.614513, 3.352090), (71.225665, 2.913172), (115.828540, 3.645482),
    (119.850549, 2.596420), (149.366268, 3.771146), (149.344373, 3.805661),
]  # fmt: skip


def _relaxed(belief: Gaussian, minutes: float) -> Gaussian:
    kept, fresh = relaxation(minutes, 45.0)
    stationary = 2.0**2 * 45.0 / 2.0  # of a driving noise of 2 per square root of a minute
    return _predict(belief, kept, fresh**2 * stationary, 160.0 * (1.0 - kept))


def _irregular() -> tuple[list[Gaussian], float]:
    belief, last, density, out = Gaussian(np.array([22.0]), np.array([[25.0]])), 0.0, 0.0, []
    for minute, value in _READINGS:
        belief = _relaxed(belief, minute - last)
        density += _log_density(belief, value, 4.0)
        belief = update(belief, np.ones(1), value, 4.0)
        last = minute
        out.append(belief)
    return out, density


def test_irregular_first_order_filter_matches_the_reference_table():
    beliefs, density = _irregular()
    found = [(belief.mean[0], belief.covariance[0, 0]) for belief in beliefs]
    assert np.array(found) == pytest.approx(np.array(_FILTERED), abs=1e-6)
    assert density == pytest.approx(-45.521029, abs=1e-6)


def test_irregular_first_order_forecast_matches_the_reference_table():
    # row "11.ahead"
    later = _relaxed(_irregular()[0][-1], 30.0)
    assert later.mean[0] == pytest.approx(154.529219, abs=1e-6)
    assert later.covariance[0, 0] == pytest.approx(67.279419, abs=1e-6)


def test_a_gap_in_two_parts_predicts_the_same():
    # row "11.gaps"
    belief = Gaussian(np.array([80.0]), np.array([[9.0]]))
    whole, parts = _relaxed(belief, 30.0), _relaxed(_relaxed(belief, 11.0), 19.0)
    assert parts.mean[0] == pytest.approx(whole.mean[0], rel=1e-12)
    assert parts.covariance[0, 0] == pytest.approx(whole.covariance[0, 0], rel=1e-12)


def test_a_repeated_reading_equals_one_of_half_the_variance():
    belief = Gaussian(np.array([80.0]), np.array([[9.0]]))
    twice = update(update(belief, np.ones(1), 85.0, 4.0), np.ones(1), 85.0, 4.0)
    once = update(belief, np.ones(1), 85.0, 2.0)
    assert twice.mean[0] == pytest.approx(once.mean[0], rel=1e-12)
    assert twice.covariance[0, 0] == pytest.approx(once.covariance[0, 0], rel=1e-12)


def test_readings_of_one_moment_may_come_in_any_order():
    covariance = np.array([[9.0, 4.0], [4.0, 6.0]])
    belief = Gaussian(np.array([80.0, 70.0]), covariance)
    first, second = (np.array([1.0, 0.0]), 85.0, 4.0), (np.array([0.0, 1.0]), 66.0, 2.0)
    forward = update(update(belief, *first), *second)
    backward = update(update(belief, *second), *first)
    assert forward.mean == pytest.approx(backward.mean, rel=1e-12)
    assert forward.covariance == pytest.approx(backward.covariance, rel=1e-12)


def test_members_share_one_covariance_and_keep_their_own_means():
    covariance = np.array([[9.0, 4.0], [4.0, 6.0]])
    both = Gaussian(np.array([[80.0, 60.0], [70.0, 50.0]]), covariance)
    together = update(both, np.array([1.0, 0.0]), np.array([85.0, 85.0]), 4.0)
    alone = update(Gaussian(np.array([60.0, 50.0]), covariance), np.array([1.0, 0.0]), 85.0, 4.0)
    assert together.mean[:, 1] == pytest.approx(alone.mean, rel=1e-12)
    assert together.covariance == pytest.approx(alone.covariance, rel=1e-12)
