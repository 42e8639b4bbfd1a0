"""The stove run on into the future under a cook's hands."""

from collections.abc import Sequence
from dataclasses import replace

import numpy as np

from cookstove_gui.forecast.answers import Action, ActionKind, FloatArray, KeptFire
from cookstove_gui.forecast.futures.cook import DOOR_SHUT_AGAIN, Cook, Doing
from cookstove_gui.forecast.model import heat
from cookstove_gui.forecast.model.ensemble import FIRING, MEMBERS
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
    alone = tended_each(belief, [Doing(action=action, unfed=unfed)], minutes, band, kept)
    return np.asarray(alone[0], dtype=np.float64)


def tended_each(
    belief: Belief,
    doings: Sequence[Doing],
    minutes: FloatArray,
    band: HeatBand | None,
    kept: KeptFire | None = None,
) -> FloatArray:
    """As `tended`, of several doings (doings, times, rows, members) at about the cost of one and a half.

    Each comes out as it would alone: all run on under the same draws.
    """
    burns = [belief.controls.lit or doing.action.is_fuel for doing in doings]
    if any(burns) and not all(burns):  # a cold stove, in which some doings light a fire
        return np.vstack([tended_each(belief, [doing], minutes, band, kept) for doing in doings])
    p = heat.positive(belief.ensemble.x[FIRING])
    state = np.repeat(belief.ensemble.x[: heat.STATE_ROWS, None], len(doings), axis=1)
    for index, doing in enumerate(doings):
        if doing.action.kind is ActionKind.AIR:
            state[heat.INLET, index] = min(max(doing.action.value, 0.0), 1.0)
        elif doing.action.kind is ActionKind.BYPASS:
            state[heat.BYPASS, index] = min(max(doing.action.value, 0.0), 1.0)
    controls = replace(belief.controls, lit=all(burns))
    cook, weather = Cook(belief, doings, band, kept), belief.random(Draws.WANDER)
    out = np.empty((len(doings), len(minutes), heat.STATE_ROWS, MEMBERS))
    out[:, 0] = state.swapaxes(0, 1)
    clock, door_shut = 0.0, _door_shut(belief)
    for place in range(1, len(minutes)):
        longest = heat.STEP_MINUTES if minutes[place] <= FINE_UNTIL else 2.0 * heat.STEP_MINUTES
        steps = max(1, round((minutes[place] - minutes[place - 1]) / longest))
        step = float(minutes[place] - minutes[place - 1]) / steps
        for _ in range(steps):
            cook.tend(state, step)
            door_open = controls.door_open and clock < door_shut
            pans = _pans(belief, doings, clock)
            heat.advance(state, p, replace(controls, door_open=door_open, pans=pans), step, weather)
            clock += step
        out[:, place] = state.swapaxes(0, 1)
    return out


def _pans(belief: Belief, doings: Sequence[Doing], clock: float) -> int | FloatArray:
    """Pans on the cooktop so many minutes from now: those of the log for a while, and those of each doing."""
    logged = belief.controls.pans if clock < heat.PAN_STAYS_ON else 0
    if not any(doing.pots for doing in doings):
        return logged
    more = [[doing.pots if clock < doing.pots_min else 0] for doing in doings]
    return np.maximum(np.asarray(logged + np.array(more), dtype=np.float64), 0.0)


def _door_shut(belief: Belief) -> float:
    """Minutes until a door that stands open is shut: as long again as it has been open, within reason."""
    if belief.door_opened is None:
        return 0.0
    least, most = DOOR_SHUT_AGAIN
    return min(max((belief.now - belief.door_opened).total_seconds() / 60.0, least), most)
