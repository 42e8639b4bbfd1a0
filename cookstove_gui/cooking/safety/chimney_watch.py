"""The flue: too cool, working or too hot; and the draught its warmth makes. Cautions only; manuals set the limits."""

from dataclasses import dataclass
from functools import cache

import numpy as np

from cookstove_gui.forecast.answers import FloatArray, Projection, Quantiles
from cookstove_gui.physics.chimney import mean_flue_temperature, natural_draught
from cookstove_gui.physics.quantities import STANDARD_PRESSURE
from cookstove_gui.resource_files import table
from cookstove_gui.stove.stove import USUAL_ROOM, Chimney, FlueReading
from cookstove_gui.units import kelvin

FLUE = "flue"
SURFACE_SHARES = (0.50, 0.60, 0.70)  # rise of the pipe's surface over that of its gas; common practice, no source
_SHARES = {  # rise of what is read over that of the gas
    FlueReading.UNSAID: SURFACE_SHARES,
    FlueReading.SINGLE: SURFACE_SHARES,
    FlueReading.DOUBLE: (0.20, 0.30, 0.45),  # common practice, no source
    FlueReading.GAS: (1.0,),
}
_PLACES = {
    FlueReading.DOUBLE: "double",
    FlueReading.GAS: "gas",
}  # in flue.toml; else single-wall pipe
GAS_FLOW = 0.010  # kg/s: 2 kg/h of wood with about 18 kg of air and gas each; common practice, no source
_GRASP = 60.0  # min ahead that the chances look


@dataclass(frozen=True, slots=True, kw_only=True)
class FlueBand:
    """A band of heat of the flue."""

    name: str  # "too cool", "working", "too hot"
    low: float  # K
    high: float  # K
    meaning: str
    source: str


@dataclass(frozen=True, slots=True, kw_only=True)
class FlueAnswer:
    """How the flue stands and what the next hour may bring; chances 0 to 1."""

    band: FlueBand  # the likeliest one now
    too_cool_now: float
    too_hot_now: float
    too_cool_within_hour: float
    too_hot_within_hour: float
    decides: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Draught:
    """The natural draught [Pa], and what it means."""

    pascals: Quantiles
    weak: bool  # smoke may come out when the door opens
    backwards: bool  # the flue is colder than outdoors: smoke will come into the room
    decides: str


@cache
def flue_bands(reading: FlueReading = FlueReading.SINGLE) -> tuple[FlueBand, ...]:
    """Bands for one kind of reading, from `resources/flue.toml`."""
    place = _PLACES.get(reading, "surface")
    return tuple(
        FlueBand(
            name=row["name"],
            low=kelvin(float(row["range"][0]), "F"),
            high=kelvin(float(row["range"][1]), "F"),
            meaning=row["meaning"],
            source=row["source"],
        )
        for row in table("flue.toml")["band"]
        if row["place"] == place
    )


def flue_answer(
    projection: Projection, spot: str = FLUE, reading: FlueReading = FlueReading.SINGLE
) -> FlueAnswer | None:
    """How the flue stands; None if the projection does not know the spot."""
    if spot not in projection.spots:
        return None
    heat = projection.of(spot)
    cool, hot = flue_limits(reading)
    soon = heat[:, projection.minutes <= _GRASP]
    middle = float(np.median(heat[:, 0]))
    bands = flue_bands(reading)
    band = next((band for band in bands if band.low <= middle < band.high), bands[0] if middle < cool else bands[-1])
    return FlueAnswer(
        band=band,
        too_cool_now=float(np.mean(heat[:, 0] < cool)),
        too_hot_now=float(np.mean(heat[:, 0] >= hot)),
        too_cool_within_hour=float(np.mean((soon < cool).any(axis=1))),
        too_hot_within_hour=float(np.mean((soon >= hot).any(axis=1))),
        decides=table("flue.toml")["draught"]["decides"],
    )


def draught(
    chimney: Chimney,
    pipe: FloatArray | float,
    outdoors: float,
    *,
    reading: FlueReading = FlueReading.SINGLE,
    room: float = USUAL_ROOM,
    pressure: float = STANDARD_PRESSURE,
) -> Draught:
    """The draught that the flue's warmth makes.

    Parameters
    ----------
    chimney : Chimney
    pipe : float or array, shape (futures,)
        What is read on or in the pipe, or may be read [K].
    outdoors, room : float
        [K]
    reading : FlueReading
        What `pipe` is of.
    pressure : float
        Where the stove stands [Pa].

    Returns
    -------
    Draught
        Without wind, bends and soot: what drives it, not what is left of it at the stove.

    Notes
    -----
    The gas is hotter than a surface, which has a share of its rise over the room, and cools on its way up.
    """
    heat = np.atleast_1d(np.asarray(pipe, dtype=float))
    pascals = np.concatenate(
        [_draught(chimney, room + (heat - room) / share, outdoors, pressure) for share in _SHARES[reading]]
    )
    p10, p50, p90 = (float(value) for value in np.quantile(pascals, [0.1, 0.5, 0.9]))
    words = table("flue.toml")["draught"]
    return Draught(
        pascals=Quantiles(p10=p10, p50=p50, p90=p90),
        weak=p50 < words["weak_pa"],
        backwards=p50 < 0.0,
        decides=words["decides"],
    )


def _draught(chimney: Chimney, gas: FloatArray, outdoors: float, pressure: float) -> FloatArray:
    inlet = np.maximum(gas, 235.0)
    perimeter = np.pi * chimney.diameter
    mean = mean_flue_temperature(inlet, outdoors, chimney.height, GAS_FLOW, perimeter, chimney.loss)
    return np.asarray(natural_draught(chimney.height, mean, outdoors, pressure))


def flue_limits(reading: FlueReading = FlueReading.SINGLE) -> tuple[float, float]:
    """Where too cool ends and too hot begins [K]; a kind of reading that is never called too cool has 0 K for it."""
    by_name = {band.name: band for band in flue_bands(reading)}
    cool = by_name.get("too cool")
    return 0.0 if cool is None else cool.high, by_name["too hot"].low


def draws_from(reading: FlueReading) -> float | None:
    """What a flue that draws by itself reads at least [K]; None where that kind of reading does not tell."""
    limit = table("flue.toml")["draws"].get(_PLACES.get(reading, "surface"))
    return None if limit is None else kelvin(float(limit), "F")
