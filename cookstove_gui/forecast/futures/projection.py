"""Equally likely futures of every spot: the ensemble run on, with this cook's loads to come drawn in."""

from collections.abc import Sequence

import numpy as np

from cookstove_gui.forecast.answers import (
    HORIZON_MINUTES,
    LEAVE,
    Action,
    FloatArray,
    KeptFire,
    Projection,
)
from cookstove_gui.forecast.futures.cook import Doing, minutes_since_reached
from cookstove_gui.forecast.futures.tending import tended_each
from cookstove_gui.forecast.model import heat
from cookstove_gui.forecast.model.character import CORRECTION_MINUTES, WIDTH_AFTER, WIDTH_BEFORE
from cookstove_gui.forecast.model.ensemble import FIELD, MEMBERS, PASSING_MINUTES, SMALLEST_EXCESS
from cookstove_gui.forecast.model.observation import truth
from cookstove_gui.forecast.model.quantiles import middle
from cookstove_gui.forecast.model.spots import passing_covariance
from cookstove_gui.forecast.model.walls import heat_beside
from cookstove_gui.forecast.tracking.belief import Belief, Draws
from cookstove_gui.forecast.tracking.proof import leaning
from cookstove_gui.stove.entries import HeatBand
from cookstove_gui.stove.stove import OVEN_CENTRE, Spot, SpotKind

GRID_MINUTES = 5.0
UNTOLD_MINUTES = (30.0, 60.0)  # min of fire without a row on wood or air: until then one may yet come, from then none
UNTOLD_WIDTH = 1.35  # factor of the width from then on, once the band was reached


def project(
    belief: Belief,
    action: Action = LEAVE,
    band: HeatBand | None = None,
    *,
    unfed: bool = False,
    spots: Sequence[Spot] | None = None,
    kept: KeptFire | None = None,
    horizon: float = HORIZON_MINUTES,
) -> Projection:
    """Futures (MEMBERS, times, spots) from now on if `action` is done now.

    `band` is what the cook steers the oven to, if that is known; else the fire is fed by habit alone;
    `unfed` asks what happens if nobody touches the stove any more; `spots` are those of the stove that are asked
    for, all of them if left out, and they come out the same whoever else is asked for.
    `kept` is a fire fed for a meal, which is then what the cook steers to; `horizon` [min] is how far it looks ahead.
    """
    asked = belief.stove.spots if spots is None else tuple(spots)
    return project_each(belief, [(Doing(action=action, unfed=unfed), asked)], band, kept=kept, horizon=horizon)[0]


def project_each(
    belief: Belief,
    asked: Sequence[tuple[Doing, Sequence[Spot]]],
    band: HeatBand | None = None,
    *,
    kept: KeptFire | None = None,
    horizon: float = HORIZON_MINUTES,
) -> list[Projection]:
    """As `project`, of several doings and the spots asked for after each, run on together and so cheaper."""
    minutes = np.arange(0.0, horizon + 0.5, GRID_MINUTES)
    band = kept.heats[0][1] if kept is not None else band
    states = tended_each(belief, [doing for doing, _ in asked], minutes, band, kept)
    return [
        _seen(belief, states[index], minutes, spots, None if doing.unfed else band)
        for index, (doing, spots) in enumerate(asked)
    ]


def _seen(
    belief: Belief, states: FloatArray, minutes: FloatArray, asked: Sequence[Spot], band: HeatBand | None
) -> Projection:
    """Spots as physical states (times, rows, members) show them."""
    shares = None if all(_has_no_share(spot) for spot in asked) else _share_paths(belief, minutes)
    width = generic_width(belief, band, minutes) * np.interp(minutes, CORRECTION_MINUTES, belief.corrections.width)
    width *= _proven_width(belief, band)
    lean = leaning(belief.proof, belief.now, minutes)
    # Members lie beside each other in memory: what is asked of the futures is asked of all of them at a time and spot.
    kelvin = np.empty((len(minutes), len(asked), MEMBERS)).transpose(2, 0, 1)
    room = states[:, heat.ROOM].T
    deviates = belief.random(Draws.WALLS).standard_normal(
        MEMBERS
    )  # of walls beside the stove, which nothing else shares
    for index, spot in enumerate(asked):
        under = truth(states.transpose(1, 2, 0), spot)
        if spot.kind is SpotKind.WALL:
            last = belief.last_readings.get(spot.name)
            age = minutes + (0.0 if last is None else (belief.now - last.at).total_seconds() / 60.0)
            kelvin[:, :, index] = heat_beside(spot, last, age, under, deviates[:, None])
        elif shares is None or _has_no_share(spot):
            kelvin[:, :, index] = under
        else:
            share = shares[belief.stove.spots.index(spot)].T
            kelvin[:, :, index] = under + np.maximum(under - room, SMALLEST_EXCESS) * share
        if spot.kind is SpotKind.OVEN:
            kelvin[:, :, index] = _widened(kelvin[:, :, index], width) + lean
    return Projection(
        now=belief.now,
        minutes=minutes,
        spots=tuple(spot.name for spot in asked),
        kelvin=kelvin,
        arrival_missed=belief.character.arrival_missed[0 if is_before(belief, band) else 1],
    )


def _has_no_share(spot: Spot) -> bool:
    """Whether a spot's heat is a part's own heat, or that of a wall, which is no share of a part's."""
    return spot.kind in (SpotKind.ROOM, SpotKind.WALL) or spot.name == OVEN_CENTRE


def _share_paths(belief: Belief, minutes: FloatArray) -> FloatArray:
    """Each spot's share of the excess (spots, times, members), the passing part fading and drawn afresh."""
    spots = len(belief.stove.spots)
    random = belief.random(Draws.SHARES)
    means = belief.ensemble.x[FIELD : FIELD + 2 * spots]
    values, vectors = np.linalg.eigh(belief.ensemble.remainder)
    root = vectors * np.sqrt(np.maximum(values, 0.0))
    drawn = means + root @ random.standard_normal((2 * spots, MEMBERS))
    later = np.linalg.cholesky(passing_covariance(belief.stove.spots)) @ random.standard_normal((spots, MEMBERS))
    kept = np.exp(-minutes / PASSING_MINUTES)[:, None]
    fresh = np.sqrt(1.0 - kept**2)
    lasting, passing = drawn[:spots, None], drawn[spots:, None]
    return np.asarray(lasting + kept * passing + fresh * later[:, None], dtype=np.float64)


def generic_width(belief: Belief, band: HeatBand | None, minutes: FloatArray) -> FloatArray:
    """Factor (times,) by which any stove's oven futures are too sure, before and after a band was first reached."""
    if is_before(belief, band):
        return np.interp(minutes, CORRECTION_MINUTES, WIDTH_BEFORE)
    return _untold(belief) * np.interp(minutes, CORRECTION_MINUTES, WIDTH_AFTER)


def _proven_width(belief: Belief, band: HeatBand | None) -> float:
    """Factor of the width that the session has proved; an oven still on its way has not yet done what is foretold."""
    return max(belief.proof.width, 1.0) if is_before(belief, band) else belief.proof.width


def is_before(belief: Belief, band: HeatBand | None) -> bool:
    """Whether the oven is on its way to a band that it has not reached in this session."""
    return band is not None and minutes_since_reached(belief, band) is None


def _untold(belief: Belief) -> float:
    """Factor of the width where a fire burns and the log tells of neither wood nor air: what is done goes unseen."""
    if not belief.controls.lit or belief.loads or belief.air_logged is not None:
        return 1.0
    return float(np.interp(belief.minutes_since_lit, UNTOLD_MINUTES, (1.0, UNTOLD_WIDTH)))


def _widened(futures: FloatArray, width: FloatArray) -> FloatArray:
    """Futures (members, times) spread about their middle."""
    centre = middle(futures.T)
    return np.asarray(centre + width * (futures - centre), dtype=np.float64)
