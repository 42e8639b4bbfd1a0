"""How the spots of a stove hang together: covariance over the plan, and what neighbours tell about a spot."""

import math
from collections.abc import Callable, Sequence

import numpy as np
from numpy.typing import NDArray

from cookstove_gui.forecast.answers import FloatArray
from cookstove_gui.stove.stove import Firebox, Spot, SpotKind

Kernel = Callable[[FloatArray], FloatArray]  # distance -> covariance

# How far a spot's excess over the room runs from its part's mean, as a share of the excess: one standard deviation
# between stoves (lasting) and within a session (passing). Common practice, no source.
_LASTING_SHARE = {
    SpotKind.TOP: 0.12, SpotKind.OVEN: 0.13, SpotKind.SIDE: 0.35,
    SpotKind.GLASS: 0.32, SpotKind.FLUE: 0.30, SpotKind.ROOM: 0.0,
}  # fmt: skip
_PASSING_SHARE = {
    SpotKind.TOP: 0.11, SpotKind.OVEN: 0.07, SpotKind.SIDE: 0.20,
    SpotKind.GLASS: 0.15, SpotKind.FLUE: 0.15, SpotKind.ROOM: 0.0,
}  # fmt: skip
_LASTING_LEAN = {SpotKind.TOP: 0.28, SpotKind.OVEN: 0.08, SpotKind.SIDE: 0.15}  # left against right, at the edge
_PASSING_LEAN = {SpotKind.TOP: 0.07, SpotKind.OVEN: 0.03}
# The cooktop's mean as the physics has it may be off by such a share on one stove, lastingly. Without this doubt, spots
# that are never read would be believed cold whenever those that are read run hotter than the physics says.
_COMMON_SHARE = 0.03
_LENGTH = {SpotKind.TOP: 0.45, SpotKind.OVEN: 0.6}  # correlation length, in plan units


def squared_exponential(variance: float, length: float) -> Kernel:
    """Covariance variance * exp(-d^2 / (2 length^2)) of two places a distance apart."""
    return lambda distance: np.asarray(variance * np.exp(-0.5 * (distance / length) ** 2), dtype=np.float64)


def matern_three_halves(variance: float, length: float) -> Kernel:
    """Covariance variance * (1 + r) exp(-r), r = sqrt(3) d / length."""

    def covariance(distance: FloatArray) -> FloatArray:
        ratio = math.sqrt(3.0) * distance / length
        return np.asarray(variance * (1.0 + ratio) * np.exp(-ratio), dtype=np.float64)

    return covariance


def distances(places: FloatArray, others: FloatArray) -> FloatArray:
    """Distances (n, m) between places (n, 2) and others (m, 2)."""
    return np.asarray(np.hypot(*(places[:, None, :] - others[None, :, :]).transpose(2, 0, 1)), dtype=np.float64)


def condition(
    covariance: FloatArray, seen: Sequence[int], values: FloatArray, noise_variance: FloatArray | float
) -> tuple[FloatArray, FloatArray]:
    """Mean and covariance of a zero-mean field at all its places, given noisy values at some of them.

    Parameters
    ----------
    covariance : array (places, places)
        Of the field before anything was seen.
    seen : sequence of int
        Index of the place of each value.
    values : array (len(seen),)
    noise_variance : float or array (len(seen),)
    """
    index = np.asarray(seen, dtype=np.intp)
    between = covariance[:, index]
    among = between[index] + np.diag(np.broadcast_to(np.asarray(noise_variance, dtype=np.float64), index.shape))
    gain = np.linalg.solve(among, between.T).T
    return gain @ values, covariance - gain @ between.T


def log_marginal_likelihood(covariance: FloatArray, values: FloatArray, noise_variance: float) -> float:
    """Log density of noisy values (n,) of a zero-mean field with covariance (n, n)."""
    among = covariance + noise_variance * np.eye(len(values))
    _, log_determinant = np.linalg.slogdet(among)
    return float(
        -0.5 * (values @ np.linalg.solve(among, values) + log_determinant + len(values) * math.log(2 * math.pi))
    )


def lasting_covariance(spots: Sequence[Spot]) -> FloatArray:
    """Covariance (spots, spots) between stoves of each spot's lasting share."""
    cooktop = np.array([spot.kind is SpotKind.TOP for spot in spots], dtype=np.float64)
    return _covariance(spots, _LASTING_SHARE, _LASTING_LEAN) + _COMMON_SHARE**2 * np.outer(cooktop, cooktop)


def passing_covariance(spots: Sequence[Spot]) -> FloatArray:
    """Covariance (spots, spots) within a session of each spot's passing share."""
    return _covariance(spots, _PASSING_SHARE, _PASSING_LEAN)


def lasting_mean(spots: Sequence[Spot], firebox: Firebox) -> FloatArray:
    """Expected lasting share (spots,) of a stove never read: the firebox side runs hotter."""
    toward = {Firebox.LEFT: -1.0, Firebox.RIGHT: 1.0, Firebox.ABOVE: 0.0}[firebox]

    def share(spot: Spot) -> float:
        lean = toward * (spot.x - 0.5) * 2.0
        if spot.kind is SpotKind.TOP:
            return 0.20 * lean
        if spot.kind is SpotKind.OVEN and spot.name != "oven_centre":
            return 0.06 + 0.05 * lean
        return 0.15 * lean if spot.kind is SpotKind.SIDE else 0.0

    return np.array([share(spot) for spot in spots], dtype=np.float64)


def _covariance(spots: Sequence[Spot], share: dict[SpotKind, float], lean: dict[SpotKind, float]) -> FloatArray:
    places = np.array([(spot.x, spot.y) for spot in spots], dtype=np.float64).reshape(-1, 2)
    apart = distances(places, places)
    across = 2.0 * (places[:, 0] - 0.5)
    total = np.zeros_like(apart)
    for kind, deviation in share.items():
        members = np.array([spot.kind is kind for spot in spots], dtype=bool)
        block = matern_three_halves(deviation**2, _LENGTH.get(kind, 0.3))(apart)
        block = block + lean.get(kind, 0.0) ** 2 * np.outer(across, across)
        total += np.where(np.outer(members, members), block, 0.0)
    total = _about_the_mean(total, np.array([spot.kind is SpotKind.TOP for spot in spots], dtype=bool))
    # The oven's centre is the oven itself: its own deviation is the thermometer's, kept elsewhere.
    centre = np.array([spot.name == "oven_centre" for spot in spots], dtype=bool)
    total[centre, :] = 0.0
    total[:, centre] = 0.0
    return total + 1e-9 * np.eye(len(spots))


def _about_the_mean(covariance: FloatArray, cooktop: NDArray[np.bool_]) -> FloatArray:
    """The cooktop's spots differ about their mean, which is the cooktop's own heat."""
    if not cooktop.any():
        return covariance
    centred = np.eye(len(cooktop)) - np.outer(cooktop, cooktop) / cooktop.sum()
    return np.asarray(centred @ covariance @ centred.T, dtype=np.float64)
