"""The stove run on into the future under a cook's hands."""

from dataclasses import replace

import numpy as np

from cookstove_gui.forecast.answers import Action, ActionKind, FloatArray, KeptFire
from cookstove_gui.forecast.futures.cook import DOOR_SHUT_AGAIN, Cook
from cookstove_gui.forecast.model import heat
from cookstove_gui.forecast.model.ensemble import FIRING, MEMBERS
from cookstove_gui.forecast.model.heat import Controls
from cookstove_gui.forecast.tracking.belief import Belief, Draws
from cookstove_gui.stove.entries import HeatBand

FINE_UNTIL = 60.0  # min ahead with short steps; doubt is larger than the step's error beyond


def tended(
    belief: Belief,
    action: Action,
    minutes: FloatArray,
    band: HeatBand | None,
    *,
    unfed: bool = False,
    kept: KeptFire | None = None,
) -> FloatArray:
    """Physical states (times, rows, members) at `minutes` from now if `action` is done now.

    `unfed`: nobody touches the stove any more; `kept`: the fire is fed for a meal.
    """
    state = belief.ensemble.x[: heat.STATE_ROWS].copy()
    p = heat.positive(belief.ensemble.x[FIRING])
    random = belief.random(Draws.TENDING)
    controls = _after(belief.controls, action)
    if action.kind is ActionKind.AIR:
        state[heat.INLET] = min(max(action.value, 0.0), 1.0)
    elif action.kind is ActionKind.BYPASS:
        state[heat.BYPASS] = min(max(action.value, 0.0), 1.0)
    cook = Cook(belief, action, band, random, kept)
    if unfed:
        cook.goes_away()
    out = np.empty((len(minutes), heat.STATE_ROWS, MEMBERS))
    out[0] = state
    clock, door_shut = 0.0, _door_shut(belief)
    for place in range(1, len(minutes)):
        longest = heat.STEP_MINUTES if minutes[place] <= FINE_UNTIL else 2.0 * heat.STEP_MINUTES
        steps = max(1, round((minutes[place] - minutes[place - 1]) / longest))
        step = float(minutes[place] - minutes[place - 1]) / steps
        for _ in range(steps):
            cook.tend(state, step, random)
            door_open = controls.door_open and clock < door_shut
            pans = controls.pans if clock < heat.PAN_STAYS else 0
            heat.advance(state, p, replace(controls, door_open=door_open, pans=pans), step, random)
            clock += step
        out[place] = state
    return out


def _after(controls: Controls, action: Action) -> Controls:
    return replace(controls, lit=True) if action.kind is ActionKind.WOOD else controls


def _door_shut(belief: Belief) -> float:
    """Minutes until a door that stands open is shut: as long again as it has been open, within reason."""
    if belief.door_opened is None:
        return 0.0
    least, most = DOOR_SHUT_AGAIN
    return min(max((belief.now - belief.door_opened).total_seconds() / 60.0, least), most)
