"""What the futures say about a heat band: the oven ahead, its arrival in the band and its stay there."""

from collections.abc import Sequence

import numpy as np
from numpy.typing import NDArray

from cookstove_gui.forecast.answers import (
    AHEAD,
    LEAVE,
    LEVELS,
    Action,
    Ahead,
    BandOutlook,
    FloatArray,
    Outlook,
    Projection,
    Quantiles,
    oven_spot,
)
from cookstove_gui.forecast.futures.projection import project
from cookstove_gui.forecast.model.quantiles import middle, quantiles
from cookstove_gui.forecast.tracking.belief import Belief
from cookstove_gui.stove.entries import HeatBand
from cookstove_gui.stove.stove import Spot, Stove


def outlook(belief: Belief, band: HeatBand, ahead: Sequence[int] = AHEAD, action: Action = LEAVE) -> Outlook:
    """The oven now and ahead, and its arrival and stay in a band, if `action` is done now."""
    return outlook_of(oven_ahead(belief, action, band), belief.stove, band, ahead)


def oven_ahead(
    belief: Belief, action: Action = LEAVE, band: HeatBand | None = None, *, unfed: bool = False
) -> Projection:
    """As `project`, of the one spot that stands for the oven: many times asked, and cheaper."""
    return project(belief, action, band, unfed=unfed, spots=oven_of(belief.stove))


def oven_of(stove: Stove) -> tuple[Spot, ...]:
    """The one spot that stands for the oven."""
    return tuple(spot for spot in stove.spots if spot.name == stove.oven_spot) or stove.spots[:1]


def outlook_of(projection: Projection, stove: Stove, band: HeatBand, ahead: Sequence[int] = AHEAD) -> Outlook:
    """As `outlook`, from futures already projected."""
    oven = projection.of(oven_spot(stove, projection))
    enters, stays = arrivals(projection.minutes, oven, band)
    earliest, latest = window_levels(enters, projection.arrival_missed)
    line_enters, line_stays = arrivals(projection.minutes, middle(oven.T)[None, :], band)
    return Outlook(
        now=projection.now,
        oven=_quantiles(oven[:, 0]),
        ahead=tuple(_ahead(projection.minutes, oven, band, minutes) for minutes in ahead),
        band=BandOutlook(
            low=band.low,
            high=band.high,
            chance_reached_3h=float(np.mean(np.isfinite(enters))),
            enters_min=_quantiles(enters, (earliest, 0.5, latest)),
            stays_min=_quantiles(stays[np.isfinite(enters)]),
            line_enters_min=_within_horizon(line_enters[0]),
            line_leaves_min=_within_horizon(line_enters[0] + line_stays[0]),
        ),
    )


def window_levels(enters: FloatArray, missed: float) -> tuple[float, float]:
    """Levels of the futures' arrivals (futures,) between which a window leaves out `missed` of them.

    Half of that share lies before its beginning and half after its end. Where more of them never arrive no end can
    leave them out, so the beginning leaves out as many, up to all of `missed`; likewise the end where more are there.
    """
    never, at_once = float(np.mean(np.isinf(enters))), float(np.mean(enters <= 0.0))
    half = 0.5 * missed
    return min(max(never, half), missed), 1.0 - min(max(at_once, half), missed)


def arrivals(minutes: FloatArray, oven: FloatArray, band: HeatBand) -> tuple[FloatArray, FloatArray]:
    """When each future first is in the band, and how long it stays.

    Parameters
    ----------
    minutes : array (times,)
    oven : array (futures, times)
        [K]; taken as straight between times.

    Returns
    -------
    enters, stays : arrays (futures,)
        [min]; never is infinity, and so is a stay that outlasts the futures.
    """
    below, above = oven < band.low, oven > band.high
    up, down = below[:, :-1] & ~below[:, 1:], above[:, :-1] & ~above[:, 1:]
    enters = _first_crossing(minutes, oven, up | down, below[:, :-1], band)
    enters[~(below | above)[:, 0]] = 0.0
    over, under = ~above[:, :-1] & above[:, 1:], ~below[:, :-1] & below[:, 1:]
    leaves = _first_crossing(minutes, oven, over | under, below[:, 1:], band)
    with np.errstate(invalid="ignore"):
        stays = np.where(np.isfinite(enters), leaves - enters, np.inf)
    return enters, stays


def _first_crossing(
    minutes: FloatArray, oven: FloatArray, crosses: NDArray[np.bool_], low_edge: NDArray[np.bool_], band: HeatBand
) -> FloatArray:
    """When each future (futures,) first crosses an edge of the band, of the intervals (futures, times - 1) that do."""
    future, interval = np.arange(len(oven)), crosses.argmax(axis=1)
    start, end = oven[future, interval], oven[future, interval + 1]
    edge = np.where(low_edge[future, interval], band.low, band.high)
    rise = np.where(start == end, 1.0, end - start)
    at = minutes[interval] + (edge - start) / rise * (minutes[interval + 1] - minutes[interval])
    return np.where(crosses[future, interval], at, np.inf)


def _ahead(minutes: FloatArray, oven: FloatArray, band: HeatBand, at: int) -> Ahead:
    values = oven_at(minutes, oven, float(at))
    p10, p50, p90 = quantiles(values, LEVELS)
    chance = float(np.mean((values >= band.low) & (values <= band.high)))
    return Ahead(minutes=at, p10=p10, p50=p50, p90=p90, chance_in_band=chance)


def oven_at(minutes: FloatArray, oven: FloatArray, at: float) -> FloatArray:
    """Every future (futures,) at a time between the projected ones; beyond them, the last."""
    at = min(max(at, 0.0), float(minutes[-1]))
    later = min(int(np.searchsorted(minutes, at)), len(minutes) - 1)
    before = max(later - 1, 0)
    span = max(float(minutes[later] - minutes[before]), 1e-9)
    share = (at - float(minutes[before])) / span if later else 0.0
    return np.asarray(oven[:, before] + share * (oven[:, later] - oven[:, before]), dtype=np.float64)


def _within_horizon(minutes: float) -> float | None:
    return float(minutes) if np.isfinite(minutes) else None


def _quantiles(values: FloatArray, levels: Sequence[float] = LEVELS) -> Quantiles:
    """Quantiles of times or temperatures; what lies beyond the horizon is none."""
    if not len(values):
        return Quantiles(p10=None, p50=None, p90=None)
    ordered = np.sort(values)
    found = [_quantile(ordered, level) for level in levels]
    return Quantiles(p10=found[0], p50=found[1], p90=found[2])


def _quantile(ordered: FloatArray, level: float) -> float | None:
    place = level * (len(ordered) - 1)
    low, high = ordered[int(np.floor(place))], ordered[int(np.ceil(place))]
    if not np.isfinite(high):
        return float(low) if np.isfinite(low) and place == np.floor(place) else None
    return float(low + (place - np.floor(place)) * (high - low))
