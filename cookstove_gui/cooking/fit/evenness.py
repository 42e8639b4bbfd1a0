"""Which spots a task may use, and how much the heat varies across its place."""

import numpy as np
from numpy.typing import NDArray

from cookstove_gui.cooking.fit.tasks import Place
from cookstove_gui.forecast.answers import Projection
from cookstove_gui.stove.stove import OVEN_CENTRE, SpotKind, Stove

PAN_WIDTH = 0.25  # m, common practice, no source
# Food in the middle that is turned once half-way feels this share of the difference from wall to wall; common practice,
# no source
FELT_SHARE = 0.3
_NEIGHBOUR_REACH = 1.3  # neighbours are the spots within this multiple of the smallest distance


def top_spot_names(stove: Stove, projection: Projection) -> tuple[str, ...]:
    """The cooktop's spots that the projection knows."""
    return tuple(spot.name for spot in stove.spots_of(SpotKind.TOP) if spot.name in projection.spots)


def oven_spot_names(stove: Stove, projection: Projection) -> tuple[str, ...]:
    """The oven's centre, or its other spots if the projection has no centre."""
    known = tuple(spot.name for spot in stove.spots_of(SpotKind.OVEN) if spot.name in projection.spots)
    return (OVEN_CENTRE,) if OVEN_CENTRE in known else known


def oven_sides(stove: Stove, projection: Projection) -> tuple[str, ...]:
    """The oven's spots that the projection knows, without its floor: the pan stands on a rack."""
    return tuple(
        spot.name
        for spot in stove.spots_of(SpotKind.OVEN)
        if spot.name in projection.spots and "floor" not in spot.name
    )


def differences(
    stove: Stove, projection: Projection, place: Place, names: tuple[str, ...]
) -> NDArray[np.floating] | None:
    """Difference of heat across the place [K], (futures, times, names); None where too few spots are known.

    In the oven: `FELT_SHARE` of the difference between its hottest and its coolest side. On the cooktop: the difference
    between the edges of a pan on the spot, with heat interpolated linearly to each neighbouring spot.
    """
    if place is Place.OVEN:
        return _across_oven(stove, projection, len(names))
    return _across_pan(stove, projection, names)


def _across_oven(stove: Stove, projection: Projection, count: int) -> NDArray[np.floating] | None:
    sides = [projection.spots.index(name) for name in oven_sides(stove, projection)]
    if len(sides) < 2:
        return None
    felt = FELT_SHARE * np.ptp(projection.kelvin[:, :, sides], axis=2)
    return np.repeat(felt[:, :, None], count, axis=2)


def _across_pan(stove: Stove, projection: Projection, names: tuple[str, ...]) -> NDArray[np.floating] | None:
    spots = [spot for spot in stove.spots_of(SpotKind.TOP) if spot.name in names]
    x = np.array([spot.x for spot in spots]) * stove.cooktop_width
    y = np.array([spot.y for spot in spots]) * stove.cooktop_depth
    distance = np.hypot(x[:, None] - x, y[:, None] - y)
    apart = distance[distance > 0]
    if apart.size == 0:
        return None
    reach = _NEIGHBOUR_REACH * apart.min()
    # single precision, one spot after the other in memory: many passes over all futures follow
    columns = [projection.spots.index(name) for name in names]
    by_spot = projection.kelvin.transpose(2, 1, 0)[columns].astype(np.float32, order="C")
    warmer = np.zeros_like(by_spot)  # how far the pan's hottest edge is above its middle
    cooler = np.zeros_like(warmer)
    for one in range(len(names)):
        for other in range(one):
            if 0 < distance[one, other] <= reach:
                edge = by_spot[other] - by_spot[one]
                edge *= np.float32(0.5 * PAN_WIDTH / distance[one, other])
                np.maximum(warmer[one], edge, out=warmer[one])
                np.minimum(cooler[one], edge, out=cooler[one])
                np.negative(edge, out=edge)
                np.maximum(warmer[other], edge, out=warmer[other])
                np.minimum(cooler[other], edge, out=cooler[other])
    warmer -= cooler
    return warmer.transpose(2, 1, 0)
