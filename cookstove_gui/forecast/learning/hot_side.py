"""The hot side: how each spot of the cooktop runs against its mean, and each of the oven against its centre."""

import math
from collections.abc import Sequence
from dataclasses import dataclass
from datetime import datetime

import numpy as np

from cookstove_gui.errors import InputProblem
from cookstove_gui.forecast.answers import FloatArray, SpotPattern
from cookstove_gui.forecast.model.normal import NINETIETH, QUARTILE
from cookstove_gui.forecast.model.spots import LENGTH, distances, matern_three_halves
from cookstove_gui.stove.entries import Entry, Kind, Session, fold, reading_kelvin
from cookstove_gui.stove.stove import SpotKind, Stove

WALK_MINUTES = 6.0  # readings this close together are one walk round the cooktop
BETWEEN_SPOTS = 30.0  # K, how far spots of a stove never read differ from its mean
WITHIN_SPOT = 14.0  # K, one walk's scatter about a spot's lasting difference
SCATTER_SEEN = 4.0  # readings' worth of trust in that scatter
SCATTER_RANGE = (4.0, 40.0)  # K, least and most of that scatter as learned
ROUNDS = 3  # of solving for the pattern and its scatter in turn
USABLE = (270.0, 1000.0)  # K, readings of a cooktop
TRUSTED_WITHIN = 40.0  # K of the walk's middle up to which a reading counts fully
TRUSTED_SCATTERS = 2.5  # scatters beyond that at which it begins to count less


@dataclass(frozen=True, slots=True, kw_only=True)
class PatternBelief:
    """What is believed of the lasting differences of some spots [K]: Gaussian, about an unknown common level."""

    names: tuple[str, ...]  # (spots,)
    mean: FloatArray  # (spots,)
    covariance: FloatArray  # (spots, spots)
    against: FloatArray  # (spots,) weights of what differences are told against; they add up to 1
    scatter: float  # K, of one reading about its spot's difference in one round
    readings: tuple[int, ...]  # (spots,)
    usual: float | None  # K, the level of the middle one of all rounds

    def told(self, covariance: FloatArray) -> FloatArray:
        """Standard deviations (spots,) of the differences as they are told, were this their covariance."""
        centre = np.eye(len(self.names)) - self.against
        return np.asarray(np.sqrt(np.maximum(np.diag(centre @ covariance @ centre.T), 0.0)))


def spot_pattern(stove: Stove, sessions: Sequence[Session], kind: SpotKind = SpotKind.TOP) -> tuple[SpotPattern, ...]:
    """Each spot of a kind in order, with its 80 % interval: against the cooktop's mean, the oven's centre."""
    belief = pattern_belief(stove, sessions, kind)
    mean = belief.mean - belief.against @ belief.mean if belief.names else belief.mean
    reach = NINETIETH * belief.told(belief.covariance)
    return tuple(
        SpotPattern(
            spot=name,
            mean=float(mean[index]),
            p10=float(mean[index] - reach[index]),
            p90=float(mean[index] + reach[index]),
            readings=belief.readings[index],
            usual=None if belief.usual is None else belief.usual + float(mean[index]),
        )
        for index, name in enumerate(belief.names)
    )


def pattern_belief(stove: Stove, sessions: Sequence[Session], kind: SpotKind = SpotKind.TOP) -> PatternBelief:
    """The belief behind the pattern.

    Notes
    -----
    Walks with at least two spots are used: with d the spots' lasting differences and m one mean a walk, readings are
    m + d_i + noise. Solved as a linear Gaussian model with a Matern prior over the plan, m free, and the differences
    taken from the cooktop's mean or the oven's centre. The scatter is estimated from the residuals.
    """
    spots = stove.spots_of(kind)
    names = [spot.name for spot in spots]
    if not spots:
        nothing = np.zeros(0)
        return PatternBelief(
            names=(), mean=nothing, covariance=np.zeros((0, 0)), against=nothing, scatter=WITHIN_SPOT, readings=(),
            usual=None,
        )  # fmt: skip
    found = [walk for session in sessions for walk in walks(fold(session.entries), names)]
    places = np.array([(spot.x, spot.y) for spot in spots], dtype=np.float64)
    prior = matern_three_halves(BETWEEN_SPOTS**2, LENGTH[kind])(distances(places, places)) + 1e-6 * np.eye(len(spots))
    against = np.full(len(spots), 1.0 / len(spots))
    if kind is SpotKind.OVEN:
        against = np.array([float(name == stove.oven_spot) for name in names])
    scatter = WITHIN_SPOT
    mean, covariance = np.zeros(len(spots)), prior
    for _ in range(ROUNDS):
        mean, covariance = _solve(found, prior, scatter)
        explained = len(spots) - float(np.trace(np.linalg.solve(prior, covariance)))
        scatter = _scatter(found, mean, explained)
    counts = np.bincount([index for walk in found for index in walk[0]], minlength=len(spots))
    told = mean - against @ mean
    levels = [float(np.mean(values - told[indices])) for indices, values in found]
    return PatternBelief(
        names=tuple(names),
        mean=mean,
        covariance=covariance,
        against=against,
        scatter=scatter,
        readings=tuple(int(count) for count in counts),
        usual=float(np.median(levels)) if levels else None,
    )


Walk = tuple[list[int], FloatArray]


def walks(standing: tuple[Entry, ...], names: Sequence[str]) -> list[Walk]:
    """Rounds that read at least two of the spots: their indices and their readings [K]."""
    found: list[Walk] = []
    begun: datetime | None = None
    indices: list[int] = []
    values: list[float] = []
    for row in standing:
        if row.kind is not Kind.READING or row.spot not in names:
            continue
        try:
            value = reading_kelvin(row)
        except InputProblem:
            continue  # the logbook lists such rows
        if not USABLE[0] <= value <= USABLE[1]:
            continue
        if begun is None or (row.at - begun).total_seconds() > 60.0 * WALK_MINUTES:
            found.append((indices, np.array(values)))
            begun, indices, values = row.at, [], []
        indices.append(names.index(row.spot))
        values.append(value)
    found.append((indices, np.array(values)))
    return [walk for walk in found if len(set(walk[0])) > 1]


def _solve(walks: list[Walk], prior: FloatArray, scatter: float) -> tuple[FloatArray, FloatArray]:
    """Mean and covariance (spots,) of the lasting differences; each walk's own mean is left free."""
    precision = np.linalg.inv(prior)
    weighted = np.zeros(len(prior))
    for indices, values in walks:
        beyond = np.maximum(np.abs(values - np.median(values)) - TRUSTED_WITHIN, 1e-9)
        trust = np.minimum(1.0, TRUSTED_SCATTERS * scatter / beyond) / scatter**2
        sees = np.zeros((len(indices), len(prior)))
        sees[np.arange(len(indices)), indices] = 1.0
        less = np.diag(trust) - np.outer(trust, trust) / trust.sum()
        precision += sees.T @ less @ sees
        weighted += sees.T @ less @ values
    covariance = np.linalg.inv(precision)
    return covariance @ weighted, covariance


def _scatter(walks: list[Walk], mean: FloatArray, explained: float) -> float:
    """Robust scatter [K] of walks about the pattern, which itself has explained away as many of the differences."""
    if not walks:
        return WITHIN_SPOT
    rest = [values - mean[indices] for indices, values in walks]
    rest = [(values - values.mean()) * math.sqrt(len(values) / (len(values) - 1.0)) for values in rest]
    seen = sum(len(values) - 1 for values in rest)
    middle = float(np.median(np.abs(np.concatenate(rest)))) / QUARTILE
    variance = (SCATTER_SEEN * WITHIN_SPOT**2 + seen * middle**2) / (SCATTER_SEEN + max(seen - explained, 0.0))
    return min(max(math.sqrt(variance), SCATTER_RANGE[0]), SCATTER_RANGE[1])
