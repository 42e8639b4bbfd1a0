"""Later readings correct what an ensemble was: in a linear normal model exactly as the fixed-interval smoother does.

Rauch, Tung and Striebel 1965 (AIAA Journal 3, 1445), as computed by statsmodels, and written out.
"""

import numpy as np
import pytest

from cookstove_gui.forecast.model.adjustment import Adjustment

MEMBERS = 320


def unrelated(count: int) -> np.ndarray:
    """Deviates (count, MEMBERS) with mean 0, variance 1 and no correlation at all: an ensemble without chance in it."""
    drawn = np.random.default_rng(11).standard_normal((MEMBERS, count + 1))
    drawn[:, 0] = 1.0
    orthogonal, _ = np.linalg.qr(drawn)
    return orthogonal[:, 1:].T * np.sqrt(MEMBERS)


def nile() -> np.ndarray:
    from statsmodels.datasets import nile

    return np.asarray(nile.load_pandas().data["volume"], dtype=float)


def smoothed_level(values: np.ndarray, noise: float, step: float, start: tuple[float, float]) -> np.ndarray:
    """The level (values, MEMBERS) of a random walk at each moment, corrected by every reading up to the end."""
    deviates = unrelated(len(values))
    level = start[0] + np.sqrt(start[1]) * deviates[0]
    past = np.empty((0, MEMBERS), dtype=np.float32)
    for place, value in enumerate(values):
        if place:
            level = level + np.sqrt(step) * deviates[place]
        adjustment = Adjustment.of(level, value, noise)
        past = adjustment.of_past(np.vstack((past, level.astype(np.float32))))
        level = level + adjustment.gain(level[None])[0] * adjustment.moves
    return past


def test_smoothed_nile_level_is_that_of_statsmodels() -> None:
    # Row "11.smoothed": variances of Durbin and Koopman 2012, ch. 2, from a level known as 1000 with variance 1e5.
    from statsmodels.tsa.statespace.structural import UnobservedComponents

    model = UnobservedComponents(nile(), "llevel")
    model.ssm.initialize_known(np.array([1000.0]), np.array([[1e5]]))
    theirs = model.smooth([15099.0, 1469.1])
    ours = smoothed_level(nile(), 15099.0, 1469.1, (1000.0, 1e5))
    assert ours.mean(axis=1) == pytest.approx(theirs.smoothed_state[0], rel=1e-5)
    assert ours.var(axis=1) == pytest.approx(theirs.smoothed_state_cov[0, 0], rel=1e-4)


def test_a_level_that_falls_toward_the_room_is_smoothed_exactly_too() -> None:
    """Two states read through one another's sum: own matrices of Rauch, Tung and Striebel, written out."""
    move = np.array([[0.9, 0.1], [0.0, 0.95]])
    drive, noise, row = np.diag([4.0, 9.0]), 25.0, np.array([1.0, 0.5])
    readings = [60.0, 71.0, 66.0, 80.0, 84.0, 79.0, 90.0]
    deviates = unrelated(2 * len(readings))
    x = np.array([[50.0], [10.0]]) + 10.0 * deviates[:2]
    past = np.empty((0, MEMBERS), dtype=np.float32)
    for place, reading in enumerate(readings):
        if place:
            x = move @ x + np.sqrt(drive) @ deviates[2 * place : 2 * place + 2]
        adjustment = Adjustment.of(row @ x, reading, noise)
        past = adjustment.of_past(np.vstack((past, x[:1].astype(np.float32))))
        x = x + np.outer(adjustment.gain(x), adjustment.moves)

    mean, covariance = np.array([50.0, 10.0]), 100.0 * np.eye(2)
    filtered, predicted = [], []
    for place, reading in enumerate(readings):
        if place:
            mean, covariance = move @ mean, move @ covariance @ move.T + drive
        predicted.append((mean, covariance))
        gain = covariance @ row / (row @ covariance @ row + noise)
        mean, covariance = mean + gain * (reading - row @ mean), covariance - np.outer(gain, row @ covariance)
        filtered.append((mean, covariance))
    expected = [filtered[-1]]
    for place in range(len(readings) - 2, -1, -1):
        (m, c), (m_next, c_next), (s, v) = filtered[place], predicted[place + 1], expected[0]
        back = c @ move.T @ np.linalg.inv(c_next)
        expected.insert(0, (m + back @ (s - m_next), c + back @ (v - c_next) @ back.T))
    assert past.mean(axis=1) == pytest.approx([m[0] for m, _ in expected], rel=1e-5)
    assert past.var(axis=1) == pytest.approx([c[0, 0] for _, c in expected], rel=1e-4)
