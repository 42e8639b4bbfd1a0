"""What a reading sees: the part of the state behind each spot, the instrument's noise, and the cook's rounding."""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import datetime
from functools import lru_cache

import numpy as np

from cookstove_gui.errors import InputProblem
from cookstove_gui.forecast.answers import FloatArray
from cookstove_gui.forecast.model import heat
from cookstove_gui.stove.entries import Entry, Kind, reading_kelvin
from cookstove_gui.stove.stove import INFRARED, USUAL_ROOM, Instrument, Spot, SpotKind, Stove, unchecked
from cookstove_gui.units import degrees_difference, parse_number

COLDEST, HOTTEST = 233.0, 1000.0  # K: what a surface or an oven of a stove can show
ROOM_COLDEST, ROOM_HOTTEST = 258.0, 325.0  # K
INFRARED_FLOOR = 2.5  # K, of one reading near the room's temperature
INFRARED_SHARE = 0.012  # of the excess over a usual room
OVEN_NOISE = 2.5  # K, of one reading of an oven thermometer
INFRARED_MOST = 600.0  # K of excess beyond which the noise grows no more
ROOM_NOISE = 1.5  # K
DOUBT_SHARE = 0.1  # of the variance of an instrument's doubtful error that counts as noise of each reading
# A spot's excess over the room as a share of the cooktop's; a side's, of the mean of cooktop and lining.
SHARE_OF_PLATE = {
    SpotKind.TOP: 1.0, SpotKind.GLASS: 1.2, SpotKind.FLUE: 0.45, SpotKind.SIDE: 0.42,
    SpotKind.ROOM: 0.0, SpotKind.WALL: 0.0,
}  # fmt: skip
# The kinds of thermometer that may read a spot, the likeliest first; any other spot is read by infrared.
_READ_BY = {SpotKind.OVEN: ("oven thermometer", "probe"), SpotKind.FLUE: ("flue thermometer", INFRARED)}
# A cook is taken to round to a step if ROUND_SHARE of the latest readings, at least ROUND_LEAST, lie on it.
ROUND_STEPS = (10.0, 5.0)  # of the unit typed
ROUND_SHARE = 0.85
ROUND_LATEST = 40  # readings
ROUND_LEAST = 4  # readings


@dataclass(frozen=True, slots=True)
class Reading:
    """A reading that can be used: true-scale value [K], noise variance [K2], row of the log, spot's index."""

    number: int
    spot: int
    typed: float  # K, as typed
    value: float  # K, less the instrument's known error
    variance: float  # K2
    possible: bool  # inside what such a spot can show
    confirmed: bool = False  # the cook was asked, and says that it is right


@dataclass(frozen=True, slots=True)
class LastReading:
    """The latest usable reading of a spot: when, and its true-scale value [K]."""

    at: datetime
    value: float


def base(state: FloatArray, spot: Spot) -> FloatArray:
    """Heat (members,) [K] that the physics gives a spot before its own deviation."""
    room, plate = state[heat.ROOM], state[heat.PLATE]
    if spot.kind is SpotKind.OVEN:
        under = state[heat.DIAL] if spot.name == "oven_centre" else state[heat.WALLS]
    elif spot.kind is SpotKind.SIDE:
        under = room + SHARE_OF_PLATE[spot.kind] * (0.5 * (plate + state[heat.LINING]) - room)
    else:
        under = room + SHARE_OF_PLATE[spot.kind] * (plate - room)
    return np.asarray(under, dtype=np.float64)


def truth(state: FloatArray, spot: Spot) -> FloatArray:
    """As `base`, for the spot itself instead of its thermometer."""
    return np.asarray(state[heat.AIR]) if spot.name == "oven_centre" else base(state, spot)


def read(entry: Entry, stove: Stove, index: int, rounding: float) -> Reading | None:
    """The reading in a row, or none if it holds no number; `rounding` is the step [K] the cook rounds to."""
    spot = stove.spots[index]
    try:
        typed = reading_kelvin(entry)
    except InputProblem:
        return None  # the logbook lists such rows; there is no number to use
    if not np.isfinite(typed):
        return None
    instrument = instrument_at(stove, spot)
    value = instrument.true_heat(typed)
    coldest, hottest = (ROOM_COLDEST, ROOM_HOTTEST) if spot.kind is SpotKind.ROOM else (COLDEST, HOTTEST)
    variance = noise_deviation(spot, value) ** 2 + rounding**2 / 12.0 + DOUBT_SHARE * instrument.doubt(value) ** 2
    return Reading(entry.number, index, typed, value, variance, coldest <= value <= hottest)


def noise_deviation(spot: Spot, value: float) -> float:
    """Standard deviation [K] of one reading: infrared grows with the heat, thermometers do not."""
    if spot.kind is SpotKind.ROOM:
        return ROOM_NOISE
    if spot.kind is SpotKind.OVEN:
        return OVEN_NOISE
    return INFRARED_FLOOR + INFRARED_SHARE * min(abs(value - USUAL_ROOM), INFRARED_MOST)


def instrument_at(stove: Stove, spot: Spot) -> Instrument:
    """What reads a spot; one never checked, right within 3 K at 400 °F, if none is described."""
    own = stove.instrument_named(spot.instrument)
    if own is not None:
        return own
    kinds = _READ_BY.get(spot.kind, (INFRARED,))
    found = (instrument for kind in kinds for instrument in stove.instruments if instrument.kind == kind)
    return next(found, unchecked("", INFRARED))


def rounding_step(readings: Sequence[Entry]) -> float:
    """The step [K] that a cook rounds to: 10, 5 or 1 of the unit, judged from the readings typed so far."""
    if len(readings) < ROUND_LEAST:
        return 1.0
    numbers = [_number(entry.value) for entry in readings[-ROUND_LATEST:]]
    unit = 1.0 / degrees_difference(1.0, readings[-1].unit)
    for step in ROUND_STEPS:
        if np.mean([number % step == 0.0 for number in numbers]) > ROUND_SHARE:
            return step * unit
    return unit


@lru_cache(maxsize=1024)  # each number of a long log is asked for at many readings
def _number(typed: str) -> float:
    try:
        return parse_number(typed)
    except InputProblem:
        return 0.5  # no multiple of anything


def oven_readings(stove: Stove, entries: Sequence[Entry], spot: str) -> tuple[list[Entry], FloatArray]:
    """Rows of the oven's readings, and their heat [K] less the thermometer's known error."""
    place = stove.spot(spot)
    instrument = instrument_at(stove, place) if place else None
    rows, values = [], []
    for row in entries:
        if row.kind is Kind.READING and row.spot == spot:
            try:
                typed = reading_kelvin(row)
            except InputProblem:
                continue  # the logbook lists such rows
            value = instrument.true_heat(typed) if instrument else typed
            if COLDEST <= value <= HOTTEST:
                rows.append(row)
                values.append(value)
    return rows, np.array(values, dtype=np.float64)
