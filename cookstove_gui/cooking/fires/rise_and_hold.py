"""How long this stove took from lighting to a heat, and how long it held it, by what its logs show."""

from collections.abc import Iterable
from dataclasses import dataclass
from itertools import pairwise

import numpy as np

from cookstove_gui.cooking.fires.fires import Fire, fires, kelvin_or_none
from cookstove_gui.forecast.answers import Quantiles
from cookstove_gui.stove.entries import HeatBand, Session
from cookstove_gui.stove.stove import OVEN_CENTRE, Stove

LEAST_FIRES = 3  # fewer say nothing of a tenth and a ninetieth percentile
_COLD_START = 30.0  # K, an oven within this of the band's low end when lit was still warm from before


@dataclass(frozen=True, slots=True, kw_only=True)
class Hold:
    """One stay at a heat."""

    minutes: float
    ended: bool  # False: the log ends before the heat was lost


@dataclass(frozen=True, slots=True, kw_only=True)
class RiseAndHold:
    """What the logs show for one band."""

    band: HeatBand
    rises: tuple[float, ...]  # min from lighting to the band, oldest first
    holds: tuple[Hold, ...]  # from coming into the band until falling out below it


def rise_and_hold(stove: Stove, sessions: Iterable[Session], band: HeatBand) -> RiseAndHold:
    """Rises and stays of the oven's centre over a stove's fires, straight between its readings.

    A fire whose oven was already near the band when it was lit tells nothing of a rise and is left out.
    """
    rises: list[float] = []
    holds: list[Hold] = []
    for fire in fires(stove, sessions):
        readings = _oven(fire)
        if len(readings) < 2 or readings[0][1] > band.low - _COLD_START:
            continue
        rise = _crossing(readings, band.low)
        if rise is not None:
            rises.append(rise)
            holds.append(_hold(readings, band.low, rise))
    return RiseAndHold(band=band, rises=tuple(rises), holds=tuple(holds))


def rise_quantiles(found: RiseAndHold) -> Quantiles:
    """Tenth, fiftieth and ninetieth percentile of the rises [min]; the outer two None from fewer than LEAST_FIRES."""
    if not found.rises:
        return Quantiles(p10=None, p50=None, p90=None)
    p10, p50, p90 = (float(value) for value in np.quantile(found.rises, [0.1, 0.5, 0.9]))
    enough = len(found.rises) >= LEAST_FIRES
    return Quantiles(p10=p10 if enough else None, p50=p50, p90=p90 if enough else None)


def typical_hold(found: RiseAndHold) -> float | None:
    """Median of the stays [min], those that the log does not see the end of counted as at least so long.

    Source
    ------
    Kaplan and Meier, Nonparametric estimation from incomplete observations, 1958: the first time at which the share
    still at the heat is one half or less. None where it never comes so low.
    """
    share = 1.0
    stays = sorted(found.holds, key=lambda hold: (hold.minutes, not hold.ended))
    for place, hold in enumerate(stays):
        if hold.ended:
            share *= 1.0 - 1.0 / (len(stays) - place)
            if share <= 0.5 + 1e-12:
                return hold.minutes
    return None


def _oven(fire: Fire) -> list[tuple[float, float]]:
    """Minutes since lighting, and the oven [K]."""
    return [
        ((row.at - fire.began).total_seconds() / 60.0, heat)
        for row in fire.rows
        if row.spot == OVEN_CENTRE and (heat := kelvin_or_none(row)) is not None
    ]


def _crossing(readings: list[tuple[float, float]], level: float) -> float | None:
    for (before, cool), (after, warm) in pairwise(readings):
        if cool < level <= warm:
            return before + (level - cool) / (warm - cool) * (after - before)
    return None


def _hold(readings: list[tuple[float, float]], level: float, came: float) -> Hold:
    later = [reading for reading in readings if reading[0] >= came]
    before, warm = came, level
    for after, heat in later:
        if heat < level:
            return Hold(minutes=before + (warm - level) / (warm - heat) * (after - before) - came, ended=True)
        before, warm = after, heat
    return Hold(minutes=before - came, ended=False)
