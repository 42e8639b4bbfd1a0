"""Several pots on one cooktop: each draws it down for the others, and shares with them what the fire gives.

The heat model has taken off by itself what pans draw that stand there by the log. What stands there by the cook's list
of pots alone is taken off here, at the same draw.
"""

from collections.abc import Iterable
from dataclasses import replace
from datetime import datetime, timedelta

import numpy as np

from cookstove_gui.cooking.pans.doubts import usual_doubts
from cookstove_gui.forecast.answers import FloatArray, Projection
from cookstove_gui.forecast.model.heat import PAN_DRAW, PAN_HEAT, PAN_STAYS
from cookstove_gui.stove.entries import Entry, pans_standing
from cookstove_gui.stove.stove import SpotKind, Stove

_WATTS = 1000.0 / 60.0  # of a kJ/min


def pans_counted(rows: Iterable[Entry], now: datetime) -> frozenset[str]:
    """Spots where a pan stands by the log, as the heat model counts them: one that nobody took off not for ever."""
    recent = [row for row in rows if row.at <= now and now - row.at < timedelta(minutes=PAN_STAYS)]
    return frozenset(pans_standing(recent))


def with_pots(projection: Projection, stove: Stove, pots: int) -> Projection:
    """The projection with so many more pots on the cooktop from now on: every spot of it is drawn down by them.

    The oven is left as it is: it comes down by a sixth of that, late.
    """
    names = [spot.name for spot in stove.spots_of(SpotKind.TOP) if spot.name in projection.spots]
    if pots <= 0 or not names:
        return projection
    places = [projection.spots.index(name) for name in names]
    down = drawn_down(projection.minutes, projection.kelvin[:, :, places].mean(axis=2), pots)
    kelvin = projection.kelvin.copy()
    kelvin[:, :, places] -= down[:, :, None]
    return replace(projection, kelvin=kelvin)


def drawn_down(minutes: FloatArray, cooktop: FloatArray, pots: int) -> FloatArray:
    """Kelvin by which so many pots cool a cooktop, (futures, times).

    `minutes` from when they go on, (times,); `cooktop` is its heat without them [K], (futures, times). Each draws
    PAN_DRAW for each kelvin over PAN_HEAT, less as they draw it down: C dD/dt = n g (T - D - PAN_HEAT) - G D, exactly
    for a heat that holds from one time to the next.
    """
    top = usual_doubts().cooktop
    if top is None:
        return np.zeros_like(cooktop)
    draw = pots * PAN_DRAW * _WATTS  # W/K
    gives = np.asarray(top.conductance) + np.asarray(top.to_oven)
    rate = (gives + draw) / np.asarray(top.heat_capacity) * 60.0  # 1/min
    drive = np.maximum(0.5 * (cooktop[:, :-1] + cooktop[:, 1:]) - PAN_HEAT, 0.0) * draw / (gives + draw)
    kept = np.exp(-rate * np.diff(minutes))
    down = np.zeros_like(cooktop)
    for step in range(len(minutes) - 1):
        down[:, step + 1] = drive[:, step] + (down[:, step] - drive[:, step]) * kept[step]
    return down
