"""Whether the oven stays in its heat for the whole of a bake, and which way it leaves it otherwise."""

from __future__ import annotations

from dataclasses import dataclass
from enum import Enum, auto
from typing import TYPE_CHECKING

import numpy as np

from cookstove_gui.forecast.futures.arrival import leaves_upward

if TYPE_CHECKING:
    from cookstove_gui.forecast.answers import Outlook, Projection
    from cookstove_gui.stove.entries import HeatBand
    from cookstove_gui.stove.stove import Stove

CLEARLY = 0.2  # by which one way of leaving the band is likelier than the other, to be named


class Leaving(Enum):
    """How an oven leaves its band before a bake is done."""

    HOT = auto()
    COOL = auto()
    EITHER = auto()


@dataclass(frozen=True, slots=True, kw_only=True)
class WholeBake:
    """Shares of the futures; they add up to 1."""

    stays: float  # in the band from the first minute to the last
    too_hot: float  # leaves it upward first
    too_cool: float  # leaves it downward first


def whole_bake(
    projection: Projection, stove: Stove, band: HeatBand, minutes: float, start_min: float = 0.0
) -> WholeBake:
    """What the oven does from `start_min` from now until `minutes` later."""
    times = projection.minutes
    oven = projection.of(stove.oven_spot)
    between = times[(times > start_min) & (times < start_min + minutes)]
    asked = np.concatenate([[start_min], between, [start_min + minutes]])
    course = np.array([np.interp(asked, times, future) for future in oven])
    hot, cool = course > band.high, course < band.low
    first_hot = np.where(hot.any(axis=1), np.argmax(hot, axis=1), len(asked))
    first_cool = np.where(cool.any(axis=1), np.argmax(cool, axis=1), len(asked))
    too_hot = float(np.mean(first_hot < first_cool))
    too_cool = float(np.mean(first_cool < first_hot))
    return WholeBake(stays=1.0 - too_hot - too_cool, too_hot=too_hot, too_cool=too_cool)


def way_out(bake: WholeBake, outlook: Outlook, projection: Projection, stove: Stove, minutes: float) -> Leaving:
    """The way the drawn line leaves within a bake; while it stays, the way that most futures do, if clearly most."""
    leaves = outlook.band.line_leaves_min
    if leaves is not None and leaves < minutes:
        return Leaving.HOT if leaves_upward(outlook, projection, stove) else Leaving.COOL
    if abs(bake.too_hot - bake.too_cool) < CLEARLY:
        return Leaving.EITHER
    return Leaving.HOT if bake.too_hot > bake.too_cool else Leaving.COOL
