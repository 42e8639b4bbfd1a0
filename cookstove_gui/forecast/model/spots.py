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
LASTING_SHARE = {
    SpotKind.TOP: 0.12, SpotKind.OVEN: 0.13, SpotKind.SIDE: 0.35,
    SpotKind.GLASS: 0.32, SpotKind.FLUE: 0.30, SpotKind.ROOM: 0.0,
}  # fmt: skip
PASSING_SHARE = {
    SpotKind.TOP: 0.11, SpotKind.OVEN: 0.07, SpotKind.SIDE: 0.20,
    SpotKind.GLASS: 0.15, SpotKind.FLUE: 0.15, SpotKind.ROOM: 0.0,
}  # fmt: skip
LASTING_LEAN = {SpotKind.TOP: 0.28, SpotKind.OVEN: 0.08, SpotKind.SIDE: 0.15}  # left against right, at the edge
PASSING_LEAN = {SpotKind.TOP: 0.07, SpotKind.OVEN: 0.03}
# The cooktop's mean as the physics has it may be off by such a share on one stove, lastingly. Without this doubt, spots
# that are never read would be believed cold whenever those that are read run hotter than the physics says.
COMMON_SHARE = 0.03
LENGTH = {SpotKind.TOP: 0.45, SpotKind.OVEN: 0.6}  # correlation length, in plan units
OTHER_LENGTH = 0.3  # the same of all other kinds
# Expected lasting share at the edge next to the firebox; the opposite at the far edge.
FIREBOX_SHARE = {SpotKind.TOP: 0.20, SpotKind.OVEN: 0.05, SpotKind.SIDE: 0.15}
OVEN_SHARE = 0.06  # of the excess by which places in the oven beside its centre run hotter


def matern_three_halves(variance: float, length: float) -> Kernel:
    """Covariance variance * (1 + r) exp(-r), r = sqrt(3) d / length."""

    def covariance(distance: FloatArray) -> FloatArray:
        ratio = math.sqrt(3.0) * distance / length
        return np.asarray(variance * (1.0 + ratio) * np.exp(-ratio), dtype=np.float64)

    return covariance


def distances(places: FloatArray, others: FloatArray) -> FloatArray:
    """Distances (n, m) between places (n, 2) and others (m, 2)."""
    return np.asarray(np.hypot(*(places[:, None, :] - others[None, :, :]).transpose(2, 0, 1)), dtype=np.float64)


def lasting_covariance(spots: Sequence[Spot]) -> FloatArray:
    """Covariance (spots, spots) between stoves of each spot's lasting share."""
    cooktop = np.array([spot.kind is SpotKind.TOP for spot in spots], dtype=np.float64)
    return _covariance(spots, LASTING_SHARE, LASTING_LEAN) + COMMON_SHARE**2 * np.outer(cooktop, cooktop)


def passing_covariance(spots: Sequence[Spot]) -> FloatArray:
    """Covariance (spots, spots) within a session of each spot's passing share."""
    return _covariance(spots, PASSING_SHARE, PASSING_LEAN)


def lasting_mean(spots: Sequence[Spot], firebox: Firebox) -> FloatArray:
    """Expected lasting share (spots,) of a stove never read: the firebox side runs hotter."""
    toward = {Firebox.LEFT: -1.0, Firebox.RIGHT: 1.0, Firebox.ABOVE: 0.0, Firebox.BELOW: 0.0}[firebox]

    def share(spot: Spot) -> float:
        lean = toward * (spot.x - 0.5) * 2.0
        if spot.name == "oven_centre":
            return 0.0
        apart = OVEN_SHARE if spot.kind is SpotKind.OVEN else 0.0
        return apart + FIREBOX_SHARE.get(spot.kind, 0.0) * lean

    return np.array([share(spot) for spot in spots], dtype=np.float64)


def _covariance(spots: Sequence[Spot], share: dict[SpotKind, float], lean: dict[SpotKind, float]) -> FloatArray:
    places = np.array([(spot.x, spot.y) for spot in spots], dtype=np.float64).reshape(-1, 2)
    apart = distances(places, places)
    across = 2.0 * (places[:, 0] - 0.5)
    total = np.zeros_like(apart)
    for kind, deviation in share.items():
        members = np.array([spot.kind is kind for spot in spots], dtype=bool)
        block = matern_three_halves(deviation**2, LENGTH.get(kind, OTHER_LENGTH))(apart)
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
