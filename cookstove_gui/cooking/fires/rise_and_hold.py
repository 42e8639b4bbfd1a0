"""How long this stove took from lighting to a heat, and how long it held that heat, according to its logs."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from itertools import pairwise

from cookstove_gui.cooking.fires.logged_fires import Fire, crossing, fires
from cookstove_gui.forecast.answers import Quantiles
from cookstove_gui.stove.entries import HeatBand, Session
from cookstove_gui.stove.stove import Stove

LEAST_FIRES = 3  # fewer say nothing about a tenth and a ninetieth percentile; judgement
USUAL_RISE = Quantiles(p10=60.0, p50=75.0, p90=90.0)  # min, where the log shows none; common practice, no source
_COLD_START = 30.0  # K, an oven this close to the band when lit was still warm from before; judgement


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
    """Rises and stays of the oven over a stove's fires, by straight lines between its readings.

    A fire whose oven was already near the band when it was lit says nothing about a rise and is left out.
    """
    shown = [found for fire in fires(stove, sessions) if (found := rise_of(fire, stove.oven_spot, band.low))]
    return RiseAndHold(band=band, rises=tuple(rise for rise, _ in shown), holds=tuple(hold for _, hold in shown))


def rise_of(fire: Fire, oven: str, heat: float) -> tuple[float, Hold] | None:
    """When one fire brought a cold oven to a heat [K], in minutes, and how long it held it; None if it did not."""
    readings = fire.readings_of(oven)
    if len(readings) < 2 or readings[0][1] > heat - _COLD_START:
        return None
    rise = _first_reached(readings, heat)
    return None if rise is None else (rise, hold_from(readings, heat, rise))


def rise_quantiles(found: RiseAndHold) -> Quantiles:
    """Percentiles of the rises [min]; the outer two are None with fewer than `LEAST_FIRES`."""
    if not found.rises:
        return Quantiles(p10=None, p50=None, p90=None)
    seen = Quantiles.of(found.rises)
    return seen if len(found.rises) >= LEAST_FIRES else Quantiles(p10=None, p50=seen.p50, p90=None)


def typical_hold(holds: Iterable[Hold], share: float = 0.5) -> float | None:
    """Median of stays [min], or the time by which another share of them is over.

    A stay whose end the log does not show counts as at least that long.

    Source
    ------
    Kaplan and Meier, Nonparametric estimation from incomplete observations, 1958: the first time at which that share
    or more is over. None where it never gets that far.
    """
    still = 1.0
    stays = sorted(holds, key=lambda hold: (hold.minutes, not hold.ended))
    for place, hold in enumerate(stays):
        if hold.ended:
            still *= 1.0 - 1.0 / (len(stays) - place)
            if still <= 1.0 - share + 1e-12:
                return hold.minutes
    return None


def _first_reached(readings: list[tuple[float, float]], heat: float) -> float | None:
    return next(
        (crossing(before, after, heat) for before, after in pairwise(readings) if before[1] < heat <= after[1]), None
    )


def hold_from(readings: Sequence[tuple[float, float]], heat: float, came: float) -> Hold:
    """The stay above a heat [K] of an oven that was at it at a moment [min], by straight lines between its readings."""
    stay = [(came, heat), *(reading for reading in readings if reading[0] >= came)]
    for before, after in pairwise(stay):
        if after[1] < heat:
            return Hold(minutes=crossing(before, after, heat) - came, ended=True)
    return Hold(minutes=stay[-1][0] - came, ended=False)
