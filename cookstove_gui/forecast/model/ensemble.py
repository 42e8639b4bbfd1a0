"""The ensemble behind a belief: its rows, how it starts, and how one reading moves it.

The physics is an ensemble of MEMBERS columns. Each spot's own deviation is linear given the physics, so its Gaussian
remainder is kept exactly (one covariance for all members) and only its mean goes with the member.
"""

import math
from dataclasses import dataclass

import numpy as np

from cookstove_gui.forecast.answers import FloatArray
from cookstove_gui.forecast.model import heat, parameters
from cookstove_gui.forecast.model.character import Character
from cookstove_gui.forecast.model.kalman import Gaussian, relaxation, update
from cookstove_gui.forecast.model.observation import Reading, base, instrument_offset
from cookstove_gui.forecast.model.spots import passing_covariance
from cookstove_gui.stove.stove import SpotKind, Stove

MEMBERS = 640
FIRING = slice(heat.STATE_ROWS, heat.STATE_ROWS + parameters.COUNT)  # this firing's parameters
LASTING = slice(FIRING.stop, FIRING.stop + parameters.COUNT)  # the stove's own
OFFSET = LASTING.stop  # K the oven's thermometer reads too high, beyond what its checks have shown
FIELD = OFFSET + 1  # first of the spots' lasting shares, then of their passing shares
PASSING_MINUTES = 24.0
SMALLEST_EXCESS = 15.0  # K
SLIP_CHANCE = 0.01
SLIP_RANGE = 400.0  # K over which a slip may fall anywhere
TAILS = 6.0  # degrees of freedom of the readings' tails
MODEL_DOUBT = 0.08  # share of the excess by which the physics may be wrong, when a slip is judged
COLDER_THAN_ROOM = 20.0  # K
USUAL_INLET = 0.6  # the air until a row tells of it
SURPRISE = 1.8  # standard deviations


# Only the thermometer is read, never the air before it: what lies between them cannot be told apart from readings.
_TELLABLE = np.array([0.0 if name in ("air_lag", "dial_lag") else 1.0 for name in parameters.NAMES])


@dataclass(slots=True)
class Ensemble:
    """The moving part of a belief; `copy` before changing one that somebody else holds."""

    x: FloatArray  # (rows, members)
    remainder: FloatArray  # (2 spots, 2 spots) covariance of the shares given the member

    def copy(self) -> "Ensemble":
        """A copy that can be changed."""
        return Ensemble(self.x.copy(), self.remainder.copy())


@dataclass(frozen=True, slots=True)
class Verdict:
    """What a reading was against what was expected of it."""

    expected: float  # K
    deviation: float  # K, of the expectation with the reading's noise
    score: float  # standard deviations the reading lies above it
    slip_chance: float


def start(stove: Stove, character: Character, random: np.random.Generator, chance_warm: float) -> Ensemble:
    """The belief before the first entry: mostly a cold stove, else one still warm or already burning."""
    spots = len(stove.spots)
    x = np.zeros((FIELD + 2 * spots, MEMBERS))
    normal = random.standard_normal
    room = 294.0 + 3.5 * normal(MEMBERS)
    warm = (np.arange(MEMBERS) + 0.5) / MEMBERS > 1.0 - chance_warm
    share = np.where(warm, random.random(MEMBERS), 0.0)
    rise = np.where(warm, 260.0 * share, 2.0 * np.abs(normal(MEMBERS)))
    x[heat.ROOM] = room
    x[heat.PLATE] = room + rise * np.exp(0.25 * normal(MEMBERS))
    x[heat.WALLS] = room + rise * 0.8 * np.exp(0.3 * normal(MEMBERS))
    x[heat.AIR] = x[heat.WALLS] + 0.03 * rise * normal(MEMBERS)
    x[heat.DIAL] = x[heat.AIR] + 0.5 * normal(MEMBERS)
    x[heat.LINING] = room + rise * 0.6 * np.exp(0.4 * normal(MEMBERS))
    x[heat.FLAMING] = share * 2.0 * random.random(MEMBERS)
    x[heat.COALS] = share * 2.0 * random.random(MEMBERS)
    x[heat.EXTRA] = heat.EXTRA_DEVIATION * normal(MEMBERS) * 0.3
    x[heat.DRAW] = heat.DRAW_DEVIATION * normal(MEMBERS)
    x[heat.INLET] = USUAL_INLET
    root = np.linalg.cholesky(character.covariance + 1e-9 * np.eye(parameters.COUNT))
    x[LASTING] = character.mean[:, None] + root @ normal((parameters.COUNT, MEMBERS))
    x[FIRING] = x[LASTING] + parameters.firing_deviation()[:, None] * normal((parameters.COUNT, MEMBERS))
    centre = stove.spot("oven_centre") or next(iter(stove.spots_of(SpotKind.OVEN)), None)
    x[OFFSET] = (instrument_offset(stove, centre)[1] if centre else 3.0) * normal(MEMBERS)
    x[FIELD : FIELD + spots] = character.spot_share[:, None]
    remainder = np.zeros((2 * spots, 2 * spots))
    remainder[:spots, :spots] = character.spot_covariance
    remainder[spots:, spots:] = passing_covariance(stove.spots)
    return Ensemble(x, remainder)


def relax_spots(ensemble: Ensemble, passing: FloatArray, minutes: float) -> None:
    """Let the spots' passing shares fade toward nothing in particular, in place."""
    spots = len(passing)
    kept, _ = relaxation(minutes, PASSING_MINUTES, 0.0)
    ensemble.x[FIELD + spots :] *= kept
    ensemble.remainder[:spots, spots:] *= kept
    ensemble.remainder[spots:, :spots] *= kept
    ensemble.remainder[spots:, spots:] *= kept * kept
    ensemble.remainder[spots:, spots:] += (1.0 - kept * kept) * passing


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
    return float(ensemble.x[heat.PLATE].mean() - ensemble.x[heat.ROOM].mean()) > 40.0


def _excess(ensemble: Ensemble, under: FloatArray) -> FloatArray:
    return np.asarray(np.maximum(under - ensemble.x[heat.ROOM], SMALLEST_EXCESS), dtype=np.float64)


def judge(ensemble: Ensemble, stove: Stove, reading: Reading, warming: float = 0.0) -> Verdict:
    """How far a reading lies from what the ensemble expects; `warming` [K] is doubted more while a fire catches."""
    seen, row = expectation(ensemble, stove, reading.spot)
    variance = float(seen.var() + row @ ensemble.remainder @ row) + reading.variance
    expected, deviation = float(seen.mean()), math.sqrt(variance)
    score = (reading.value - expected) / math.hypot(deviation, warming)
    if not reading.possible:
        return Verdict(expected, deviation, score, 1.0)
    excess = abs(expected - float(ensemble.x[heat.ROOM].mean()))
    wide = math.hypot(deviation, MODEL_DOUBT * excess, warming)
    far = (reading.value - expected) / wide
    usual = (1.0 - SLIP_CHANCE) * math.exp(-0.5 * min(far * far, 600.0)) / (wide * math.sqrt(2.0 * math.pi))
    slip = SLIP_CHANCE / SLIP_RANGE
    return Verdict(expected, deviation, score, slip / (slip + usual))


def assimilate(ensemble: Ensemble, stove: Stove, reading: Reading, slip_chance: float) -> None:
    """Move the ensemble by one reading, in place; the less so the likelier the reading is a slip."""
    seen, row = expectation(ensemble, stove, reading.spot)
    remainder = float(row @ ensemble.remainder @ row)
    mean, variance = float(seen.mean()), float(seen.var())
    noise = reading.variance
    miss = (reading.value - mean) ** 2 / (variance + remainder + noise)
    noise *= max(1.0, (TAILS + miss) / (TAILS + 1.0)) / max(1.0 - slip_chance, 0.02)
    against = remainder + noise
    apart = seen - mean
    if variance > 1e-9:
        gain = (ensemble.x @ apart) / (MEMBERS * variance)
        total = variance + against
        moved = (variance / total) * (reading.value - mean)
        shrunk = math.sqrt(against / total) - 1.0
        if stove.spots[reading.spot].kind is not SpotKind.ROOM and _is_hot(ensemble):
            gain[heat.ROOM] = 0.0  # a hot surface tells nothing of the room
        gain[FIRING] *= _TELLABLE
        gain[LASTING] *= _TELLABLE
        ensemble.x += np.outer(gain, moved + shrunk * apart)
        keep_possible(ensemble)
    if remainder > 0.0:
        spots = len(stove.spots)
        seen, row = expectation(ensemble, stove, reading.spot)
        shares = Gaussian(ensemble.x[FIELD : FIELD + 2 * spots], ensemble.remainder)
        # A member's share counts by its own excess, the covariance by the mean one.
        excess = _excess(ensemble, base(ensemble.x, stove.spots[reading.spot]))
        beyond = (reading.value - seen) * (row.max() / excess) + row @ shares.mean
        after, _ = update(shares, row, beyond, noise)
        ensemble.x[FIELD : FIELD + 2 * spots] = after.mean
        ensemble.remainder = after.covariance


def loosen(ensemble: Ensemble, kind: SpotKind, miss: float, random: np.random.Generator) -> None:
    """Own up to not knowing, in place: two like surprises of one kind of spot put its part and the fire in doubt."""
    jolts = random.standard_normal((3, MEMBERS))
    ensemble.x[heat.EXTRA] += 1.2 * jolts[0]
    ensemble.x[heat.DRAW] += 0.3 * jolts[1]
    for row in (heat.WALLS, heat.AIR, heat.DIAL) if kind is SpotKind.OVEN else (heat.PLATE,):
        ensemble.x[row] += 0.5 * abs(miss) * jolts[2]
    keep_possible(ensemble)


def choose(ensemble: Ensemble, stove: Stove, reading: Reading, random: np.random.Generator) -> None:
    """Draw the members anew by how well they explain a first reading, in place: cold, warm or burning."""
    seen, row = expectation(ensemble, stove, reading.spot)
    variance = float(row @ ensemble.remainder @ row) + 4.0 * reading.variance + 36.0
    weight = np.exp(-0.5 * np.minimum((reading.value - seen) ** 2 / variance, 60.0)) + 1e-30
    steps = np.cumsum(weight / weight.sum())
    picked = np.searchsorted(steps, (np.arange(MEMBERS) + 0.5) / MEMBERS).clip(0, MEMBERS - 1)
    ensemble.x = ensemble.x[:, picked]
    jolts = random.standard_normal((parameters.COUNT + 4, MEMBERS))
    spread = np.maximum(0.15 * (ensemble.x[heat.PLATE] - ensemble.x[heat.ROOM]), 0.5)
    for place, at in enumerate((heat.PLATE, heat.WALLS, heat.LINING)):
        ensemble.x[at] += spread * jolts[place]
    change = 0.5 * parameters.firing_deviation()[:, None] * jolts[4:]
    ensemble.x[FIRING] += change
    keep_possible(ensemble)


def keep_possible(ensemble: Ensemble) -> None:
    """Hold every row inside what can be, in place."""
    x = ensemble.x
    np.clip(x[heat.TEMPERATURES], 240.0, 1100.0, out=x[heat.TEMPERATURES])
    np.clip(x[heat.ROOM], 255.0, 325.0, out=x[heat.ROOM])
    # No part lies far below the room's heat; a little, as the stove may stand where it is colder than where one reads.
    np.maximum(x[heat.TEMPERATURES], x[heat.ROOM] - COLDER_THAN_ROOM, out=x[heat.TEMPERATURES])
    np.clip(x[heat.FUELS], 0.0, 25.0, out=x[heat.FUELS])
    np.clip(x[heat.INLET], 0.0, 1.0, out=x[heat.INLET])
    np.clip(x[heat.SINCE_FED], 0.0, 600.0, out=x[heat.SINCE_FED])
    np.clip(x[heat.BYPASS], 0.0, 1.0, out=x[heat.BYPASS])
    np.clip(x[heat.EXTRA], -6.0, 12.0, out=x[heat.EXTRA])
    np.clip(x[heat.DRAW], -1.5, 1.5, out=x[heat.DRAW])
    middle = parameters.prior_mean()[:, None]
    np.clip(x[FIRING], middle - 2.0, middle + 2.0, out=x[FIRING])
    np.clip(x[LASTING], middle - 2.0, middle + 2.0, out=x[LASTING])
    np.clip(x[FIELD:], -0.9, 2.0, out=x[FIELD:])
