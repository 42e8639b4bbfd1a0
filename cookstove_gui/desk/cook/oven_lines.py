"""The oven's lines on a plot, in kelvin over minutes: what was read in it, and where it is going."""

from dataclasses import dataclass

import numpy as np

from cookstove_gui.forecast.answers import FloatArray, Projection


@dataclass(frozen=True, slots=True, kw_only=True)
class OvenFan:
    """The oven to come; arrays of one length. Eight in ten futures lie from p10 to p90, five in ten from p25 to p75."""

    minutes: FloatArray  # from the projection's now
    p10: FloatArray  # K
    p25: FloatArray
    p50: FloatArray
    p75: FloatArray
    p90: FloatArray


def oven_fan(projection: Projection, spot: str) -> OvenFan:
    """Percentiles of the oven's futures at a spot, or at the first one projected."""
    name = spot if spot in projection.spots else projection.spots[0]
    return fan_of(projection.minutes, projection.of(name))


def fan_of(minutes: FloatArray, futures: FloatArray) -> OvenFan:
    """Percentiles of any heat's futures (futures, times) [K]."""
    p10, p25, p50, p75, p90 = np.quantile(futures, (0.1, 0.25, 0.5, 0.75, 0.9), axis=0)
    return OvenFan(minutes=minutes, p10=p10, p25=p25, p50=p50, p75=p75, p90=p90)
