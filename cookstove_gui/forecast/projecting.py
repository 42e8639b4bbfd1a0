"""Equally likely futures of every spot: the ensemble run on, with this cook's loads to come drawn in."""

from dataclasses import replace

import numpy as np

from cookstove_gui.forecast import heat
from cookstove_gui.forecast.answers import HORIZON_MINUTES, LEAVE, Action, ActionKind, FloatArray, Projection
from cookstove_gui.forecast.belief import Belief
from cookstove_gui.forecast.character import CORRECTION_MINUTES
from cookstove_gui.forecast.ensemble import FIELD, FIRING, MEMBERS, PASSING_MINUTES, SMALLEST_EXCESS
from cookstove_gui.forecast.seeing import truth
from cookstove_gui.forecast.spots import passing_covariance
from cookstove_gui.stove.stove import SpotKind

GRID_MINUTES = 5.0
FED_UNTIL_MINUTES = 240.0  # a fire not fed for this long is not expected to be fed again


def project(belief: Belief, action: Action = LEAVE) -> Projection:
    """Futures (MEMBERS, times, spots) from now on if `action` is done now."""
    minutes = np.arange(0.0, HORIZON_MINUTES + 0.5, GRID_MINUTES)
    states = _futures(belief, action, minutes)
    stove = belief.stove
    shares = _share_paths(belief, minutes)
    kelvin = np.empty((MEMBERS, len(minutes), len(stove.spots)))
    room = states[:, heat.ROOM].T
    for index, spot in enumerate(stove.spots):
        under = truth(states.transpose(1, 2, 0), spot)
        if spot.kind is SpotKind.ROOM or spot.name == "oven_centre":
            kelvin[:, :, index] = under
        else:
            kelvin[:, :, index] = under + np.maximum(under - room, SMALLEST_EXCESS) * shares[:, :, index]
        if spot.kind is SpotKind.OVEN:
            kelvin[:, :, index] = _corrected(kelvin[:, :, index], belief, minutes)
    return Projection(now=belief.now, minutes=minutes, spots=tuple(spot.name for spot in stove.spots), kelvin=kelvin)


def _futures(belief: Belief, action: Action, minutes: FloatArray) -> FloatArray:
    """Physical states (times, rows, members)."""
    state = belief.ensemble.x[: heat.STATE_ROWS].copy()
    p = heat.positive(belief.ensemble.x[FIRING])
    random = belief.random(1)
    controls = belief.controls
    since = belief.minutes_since_load
    if action.kind is ActionKind.WOOD:
        state[heat.FRESH] += max(action.value, 0.0)
        controls, since = replace(controls, lit=True), 0.0
    elif action.kind is ActionKind.AIR:
        controls = replace(controls, air=min(max(action.value, 0.0), 1.0))
    elif action.kind is ActionKind.BYPASS:
        controls = replace(controls, bypass=min(max(action.value, 0.0), 1.0))
    fed = controls.lit and (since is None or since < FED_UNTIL_MINUTES)
    times, masses = belief.habits.future_loads((since if since is not None else 15.0) if fed else None, MEMBERS, random)
    steps_each = int(GRID_MINUTES / heat.STEP_MINUTES)
    out = np.empty((len(minutes), heat.STATE_ROWS, MEMBERS))
    out[0] = state
    clock = 0.0
    for place in range(1, len(minutes)):
        for _ in range(steps_each):
            due = (times >= clock) & (times < clock + heat.STEP_MINUTES)
            if due.any():
                state[heat.FRESH] += np.where(due, masses, 0.0).sum(axis=1)
            heat.advance(state, p, controls, heat.STEP_MINUTES, random)
            clock += heat.STEP_MINUTES
        out[place] = state
    return out


def _share_paths(belief: Belief, minutes: FloatArray) -> FloatArray:
    """Each spot's share of the excess (members, times, spots), the passing part fading and coming anew."""
    spots = len(belief.stove.spots)
    random = belief.random(2)
    means = belief.ensemble.x[FIELD : FIELD + 2 * spots]
    values, vectors = np.linalg.eigh(belief.ensemble.remainder)
    root = vectors * np.sqrt(np.maximum(values, 0.0))
    drawn = means + root @ random.standard_normal((2 * spots, MEMBERS))
    later = np.linalg.cholesky(passing_covariance(belief.stove.spots)) @ random.standard_normal((spots, MEMBERS))
    kept = np.exp(-minutes / PASSING_MINUTES)[None, :, None]
    fresh = np.sqrt(1.0 - kept**2)
    return np.asarray(
        drawn[:spots].T[:, None, :] + kept * drawn[spots:].T[:, None, :] + fresh * later.T[:, None, :],
        dtype=np.float64,
    )


def _corrected(futures: FloatArray, belief: Belief, minutes: FloatArray) -> FloatArray:
    """The oven's futures shifted and widened about their middle as hindsight says."""
    shift = np.interp(minutes, CORRECTION_MINUTES, belief.corrections.shift)
    width = np.interp(minutes, CORRECTION_MINUTES, belief.corrections.width)
    middle = np.median(futures, axis=0)
    return np.asarray(middle + shift + width * (futures - middle), dtype=np.float64)
