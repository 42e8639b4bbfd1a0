"""The ensemble behind a belief: its rows, how it starts, and how one reading moves it.

An ensemble adjustment Kalman filter (Anderson 2001, 2003) whose linear part, the field of the spots, is marginalised:
given a member's physics it is normal, its mean goes with the member, its covariance is one for all. MODEL.md has the
equations.
"""

import math
from dataclasses import dataclass, field
from functools import cache

import numpy as np
from numpy.typing import NDArray

from cookstove_gui.forecast.answers import FloatArray
from cookstove_gui.forecast.model import heat, parameters
from cookstove_gui.forecast.model.adjustment import Adjustment
from cookstove_gui.forecast.model.character import Character
from cookstove_gui.forecast.model.kalman import Gaussian, relaxation, update
from cookstove_gui.forecast.model.observation import Reading, base, instrument_at
from cookstove_gui.forecast.model.spots import passing_covariance
from cookstove_gui.stove.stove import OVEN_CENTRE, USUAL_ROOM, Spot, SpotKind, Stove

MEMBERS = 640  # of the ensemble
FIRING = slice(heat.STATE_ROWS, heat.STATE_ROWS + parameters.COUNT)  # this firing's parameters
LASTING = slice(FIRING.stop, FIRING.stop + parameters.COUNT)  # the stove's own
OFFSET = LASTING.stop  # K the oven's thermometer reads too high, beyond what its checks have shown
FIELD = OFFSET + 1  # first of the spots' lasting shares, then of their passing shares
PASSING_MINUTES = 24.0  # min, time constant of a spot's passing share
SMALLEST_EXCESS = 15.0  # K over the room, the least by which a spot's share counts
HOT_STOVE = 40.0  # K of cooktop over the room above which a surface's reading tells nothing of the room
SLIP_CHANCE = 0.01  # of any reading, before it is looked at
SLIP_RANGE = 400.0  # K over which a slip may fall anywhere
TAILS = 6.0  # degrees of freedom of the readings' Student t tails
LEAST_TRUST = 0.02  # share of its weight that even a certain slip keeps
MODEL_DOUBT = 0.08  # share of the excess by which the physics may be wrong, when a slip is judged
SURPRISE = 1.8  # standard deviations from which a reading is a surprise

# At the start, by one standard deviation unless said otherwise.
START_ROOM = 3.5  # K about a usual room
START_COLD = 2.0  # K, a cold stove over the room
START_WARM = 260.0  # K of cooktop over the room, the most of a stove still warm
START_PLATE = 0.25  # of the logarithm of the cooktop's excess
START_WALLS = (0.8, 0.3)  # the walls' excess over the cooktop's, and spread of its logarithm
START_LINING = (0.6, 0.4)  # the same of the lining
START_AIR = 0.03  # of the excess, oven air about its walls
START_DIAL = 0.5  # K, oven thermometer about the air
START_FUEL = 2.0  # kg flaming, and as much in coals: the most in a stove still burning
BAKING_HEAT = 477.6  # K at which the doubt of the oven thermometer's error is taken
START_EXTRA = 0.3  # of the usual deviation of unexplained heat

# After a surprise that was confirmed.
LOOSE_EXTRA = 1.2  # kW of unexplained heat
LOOSE_DRAW = 0.3  # of the logarithm of the burning rate
LOOSE_PART = 0.5  # of the miss, in the temperature of the part that was read

# A first reading chooses among cold, warm and burning stoves.
CHOICE_NOISE = 4.0  # times the variance of the reading
CHOICE_DOUBT = 6.0  # K besides
CHOICE_EXCESS = 0.15  # of the cooktop's excess by which equal members are set apart
CHOICE_LEAST = 0.5  # K, the least of that
CHOICE_AIR = 3.0  # K; an oven is no better known by its reading alone
CHOICE_FIRING = 0.5  # of the spread between firings by which their parameters are set apart

# Bounds of what is possible.
PART_RANGE = (240.0, 1100.0)  # K
ROOM_RANGE = (255.0, 325.0)  # K
COLDER_THAN_ROOM = 20.0  # K that a part may lie below the room
FUEL_RANGE = (0.0, 25.0)  # kg
SINCE_FED_RANGE = (0.0, 600.0)  # min
EXTRA_RANGE = (-6.0, 12.0)  # kW
DRAW_RANGE = (-1.5, 1.5)  # logarithm
PARAMETER_REACH = 2.0  # of the logarithm, either way from the typical value
SHARE_RANGE = (-0.9, 2.0)  # of the excess


_OVEN = Spot(name=OVEN_CENTRE, label="", kind=SpotKind.OVEN)
# Only the thermometer is read, never the air itself, so readings cannot tell these two lags apart.
_TELLABLE = np.array([0.0 if name in ("air_lag", "dial_lag") else 1.0 for name in parameters.NAMES])


@dataclass(slots=True)
class Ensemble:
    """The part of a belief that moves; `copy` before changing one that is shared."""

    x: FloatArray  # (rows, members)
    remainder: FloatArray  # (2 spots, 2 spots) covariance of the shares given the member
    # Oven air [K] at earlier moments (moments, members), the latest last; readings move it too. Replaced, not changed.
    past: NDArray[np.float32] = field(default_factory=lambda: np.empty((0, MEMBERS), dtype=np.float32))

    def copy(self) -> "Ensemble":
        """A copy that can be changed."""
        return Ensemble(self.x.copy(), self.remainder.copy(), self.past)


@dataclass(frozen=True, slots=True)
class Verdict:
    """What a reading was against what was expected of it."""

    expected: float  # K
    deviation: float  # K, of the expectation with the reading's noise
    score: float  # standard deviations the reading lies above it
    slip_chance: float


def start(stove: Stove, character: Character, random: np.random.Generator, chance_warm: float) -> Ensemble:
    """The belief before the first row: a cold stove, or by `chance_warm` one still warm or already burning."""
    spots = len(stove.spots)
    x = np.zeros((FIELD + 2 * spots, MEMBERS))
    normal = random.standard_normal
    room = USUAL_ROOM + START_ROOM * normal(MEMBERS)
    warm = (np.arange(MEMBERS) + 0.5) / MEMBERS > 1.0 - chance_warm
    share = np.where(warm, random.random(MEMBERS), 0.0)
    rise = np.where(warm, START_WARM * share, START_COLD * np.abs(normal(MEMBERS)))
    x[heat.ROOM] = room
    x[heat.PLATE] = room + rise * np.exp(START_PLATE * normal(MEMBERS))
    x[heat.WALLS] = room + rise * START_WALLS[0] * np.exp(START_WALLS[1] * normal(MEMBERS))
    x[heat.AIR] = x[heat.WALLS] + START_AIR * rise * normal(MEMBERS)
    x[heat.DIAL] = x[heat.AIR] + START_DIAL * normal(MEMBERS)
    x[heat.LINING] = room + rise * START_LINING[0] * np.exp(START_LINING[1] * normal(MEMBERS))
    x[heat.FLAMING] = share * START_FUEL * random.random(MEMBERS)
    x[heat.COALS] = share * START_FUEL * random.random(MEMBERS)
    x[heat.EXTRA] = heat.EXTRA_DEVIATION * normal(MEMBERS) * START_EXTRA
    x[heat.DRAW] = heat.DRAW_DEVIATION * normal(MEMBERS)
    x[heat.INLET] = heat.USUAL_INLET
    root = np.linalg.cholesky(character.covariance + 1e-9 * np.eye(parameters.COUNT))
    x[LASTING] = character.mean[:, None] + root @ normal((parameters.COUNT, MEMBERS))
    x[FIRING] = x[LASTING] + parameters.firing_deviation()[:, None] * normal((parameters.COUNT, MEMBERS))
    x[OFFSET] = instrument_at(stove, _OVEN).doubt(BAKING_HEAT) * normal(MEMBERS)
    x[FIELD : FIELD + spots] = character.spot_share[:, None]
    remainder = np.zeros((2 * spots, 2 * spots))
    remainder[:spots, :spots] = character.spot_covariance
    remainder[spots:, spots:] = passing_covariance(stove.spots)
    return Ensemble(x, remainder)


def relax_spots(ensemble: Ensemble, passing: FloatArray, minutes: float) -> None:
    """Let the spots' passing shares fade, and their covariance return to `passing`, in place."""
    spots = len(passing)
    kept, fresh = relaxation(minutes, PASSING_MINUTES)
    ensemble.x[FIELD + spots :] *= kept
    ensemble.remainder[:spots, spots:] *= kept
    ensemble.remainder[spots:, :spots] *= kept
    ensemble.remainder[spots:, spots:] *= kept * kept
    ensemble.remainder[spots:, spots:] += fresh * fresh * passing


def expectation(ensemble: Ensemble, stove: Stove, index: int) -> tuple[FloatArray, FloatArray]:
    """What each member expects a spot to read (members,) [K], and the row (2 spots,) [K] of its remainder."""
    spots = len(stove.spots)
    spot = stove.spots[index]
    under = base(ensemble.x, spot)
    row = np.zeros(2 * spots)
    if spot.kind is SpotKind.ROOM:
        return under, row
    if spot.name == "oven_centre":
        return under + ensemble.x[OFFSET], row
    excess = _excess(ensemble, under)
    row[index] = row[spots + index] = excess.mean()
    return under + excess * (ensemble.x[FIELD + index] + ensemble.x[FIELD + spots + index]), row


def _is_hot(ensemble: Ensemble) -> bool:
    return float(ensemble.x[heat.PLATE].mean() - ensemble.x[heat.ROOM].mean()) > HOT_STOVE


def _excess(ensemble: Ensemble, under: FloatArray) -> FloatArray:
    return np.asarray(np.maximum(under - ensemble.x[heat.ROOM], SMALLEST_EXCESS), dtype=np.float64)


def judge(ensemble: Ensemble, stove: Stove, reading: Reading, warming: float = 0.0) -> Verdict:
    """How far a reading lies from what the ensemble expects; `warming` [K] is added doubt while a fire catches."""
    seen, row = expectation(ensemble, stove, reading.spot)
    variance = float(seen.var() + row @ ensemble.remainder @ row) + reading.variance
    expected, deviation = float(seen.mean()), math.sqrt(variance)
    score = (reading.value - expected) / math.hypot(deviation, warming)
    if reading.confirmed or not reading.possible:
        return Verdict(expected, deviation, score, 0.0 if reading.confirmed else 1.0)
    excess = abs(expected - float(ensemble.x[heat.ROOM].mean()))
    wide = math.hypot(deviation, MODEL_DOUBT * excess, warming)
    far = (reading.value - expected) / wide
    usual = (1.0 - SLIP_CHANCE) * math.exp(-0.5 * far * far) / (wide * math.sqrt(2.0 * math.pi))
    slip = SLIP_CHANCE / SLIP_RANGE
    return Verdict(expected, deviation, score, slip / (slip + usual))


def assimilate(ensemble: Ensemble, stove: Stove, reading: Reading, slip_chance: float) -> None:
    """Update the ensemble by one reading, in place; the likelier a slip, the less. A confirmed one counts in full."""
    seen, row = expectation(ensemble, stove, reading.spot)
    remainder = float(row @ ensemble.remainder @ row)
    mean, variance = float(seen.mean()), float(seen.var())
    noise = reading.variance
    if not reading.confirmed:
        miss = (reading.value - mean) ** 2 / (variance + remainder + noise)
        noise *= max(1.0, (TAILS + miss) / (TAILS + 1.0)) / max(1.0 - slip_chance, LEAST_TRUST)
    if variance > 1e-9:
        adjustment = Adjustment.of(seen, reading.value, remainder + noise)
        gain = adjustment.gain(ensemble.x)
        if stove.spots[reading.spot].kind is not SpotKind.ROOM and _is_hot(ensemble):
            gain[heat.ROOM] = 0.0  # a hot surface tells nothing of the room
        gain[FIRING] *= _TELLABLE
        gain[LASTING] *= _TELLABLE
        ensemble.x += np.outer(gain, adjustment.moves)
        ensemble.past = adjustment.of_past(ensemble.past)
        keep_possible(ensemble)
    if remainder > 0.0:
        spots = len(stove.spots)
        seen, row = expectation(ensemble, stove, reading.spot)
        shares = Gaussian(ensemble.x[FIELD : FIELD + 2 * spots], ensemble.remainder)
        # A member's share counts by its own excess, the covariance by the mean one.
        excess = _excess(ensemble, base(ensemble.x, stove.spots[reading.spot]))
        beyond = (reading.value - seen) * (row.max() / excess) + row @ shares.mean
        after = update(shares, row, beyond, noise)
        ensemble.x[FIELD : FIELD + 2 * spots] = after.mean
        ensemble.remainder = after.covariance


def loosen(ensemble: Ensemble, kind: SpotKind, miss: float, random: np.random.Generator) -> None:
    """Spread the members in place: a surprise that was confirmed puts the part that was read and the fire in doubt."""
    jolts = random.standard_normal((3, MEMBERS))
    ensemble.x[heat.EXTRA] += LOOSE_EXTRA * jolts[0]
    ensemble.x[heat.DRAW] += LOOSE_DRAW * jolts[1]
    for row in (heat.WALLS, heat.AIR, heat.DIAL) if kind is SpotKind.OVEN else (heat.PLATE,):
        ensemble.x[row] += LOOSE_PART * abs(miss) * jolts[2]
    keep_possible(ensemble)


def choose(ensemble: Ensemble, stove: Stove, reading: Reading, random: np.random.Generator) -> None:
    """Resample the members in place by how well they explain a first reading: cold, warm or burning."""
    seen, row = expectation(ensemble, stove, reading.spot)
    variance = float(row @ ensemble.remainder @ row) + CHOICE_NOISE * reading.variance + CHOICE_DOUBT**2
    weight = np.exp(-0.5 * np.minimum((reading.value - seen) ** 2 / variance, 60.0)) + 1e-30
    steps = np.cumsum(weight / weight.sum())
    picked = np.searchsorted(steps, (np.arange(MEMBERS) + 0.5) / MEMBERS).clip(0, MEMBERS - 1)
    ensemble.x, ensemble.past = ensemble.x[:, picked], ensemble.past[:, picked]
    jolts = random.standard_normal((parameters.COUNT + 4, MEMBERS))
    spread = np.maximum(CHOICE_EXCESS * (ensemble.x[heat.PLATE] - ensemble.x[heat.ROOM]), CHOICE_LEAST)
    for place, at in enumerate((heat.PLATE, heat.WALLS, heat.LINING)):
        ensemble.x[at] += spread * jolts[place]
    ensemble.x[heat.AIR] += CHOICE_AIR * jolts[3]  # few members may be left, all of one oven
    ensemble.x[FIRING] += CHOICE_FIRING * parameters.firing_deviation()[:, None] * jolts[4:]
    keep_possible(ensemble)


def keep_possible(ensemble: Ensemble) -> None:
    """Clip every row to what is possible, in place."""
    x = ensemble.x
    least, most = _possible(len(x))
    np.maximum(x, least, out=x)
    np.minimum(x, most, out=x)
    # A part may be a little colder than the room: the stove may stand where it is colder than where the room is read.
    np.maximum(x[heat.TEMPERATURES], x[heat.ROOM] - COLDER_THAN_ROOM, out=x[heat.TEMPERATURES])


@cache
def _possible(rows: int) -> tuple[FloatArray, FloatArray]:
    """Least and most (rows, 1) of an ensemble of so many rows."""
    least, most = np.full((rows, 1), -np.inf), np.full((rows, 1), np.inf)
    for place, (low, high) in (
        (heat.TEMPERATURES, PART_RANGE),
        (heat.ROOM, ROOM_RANGE),
        (heat.FUELS, FUEL_RANGE),
        (heat.EXTRA, EXTRA_RANGE),
        (heat.DRAW, DRAW_RANGE),
        (heat.INLET, (0.0, 1.0)),
        (heat.BYPASS, (0.0, 1.0)),
        (heat.SINCE_FED, SINCE_FED_RANGE),
        (slice(FIELD, None), SHARE_RANGE),
    ):
        least[place], most[place] = low, high
    typical = parameters.prior_mean()[:, None]
    for place in (FIRING, LASTING):
        least[place], most[place] = typical - PARAMETER_REACH, typical + PARAMETER_REACH
    return least, most
