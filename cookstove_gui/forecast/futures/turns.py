"""Moments at which the cook should act: a reload due, a fire that went out, a door or the air left open."""

import numpy as np

from cookstove_gui.forecast.answers import FloatArray, Projection, Turn, TurnKind, oven_spot
from cookstove_gui.forecast.futures.outlook import arrivals
from cookstove_gui.forecast.model import heat
from cookstove_gui.forecast.tracking.belief import Belief
from cookstove_gui.stove.entries import HeatBand

RELOAD_LEAD_MINUTES = 20.0  # from wood going in to the oven feeling it
FORESEEN_MINUTES = 90.0
LOAD_CATCHES = 15.0  # min until a load has burned so far that more goes on top; common practice, no source
KINDLING_CATCHES = 5.0  # min in which a fire just lit gives little heat and is not out; common practice, no source
OUT_KILOWATTS = 0.6  # of fire below which a stove is no longer driven
AIR_WIDE = 0.85
LEAST_CHANCE = 0.3


def turns(belief: Belief) -> tuple[Turn, ...]:
    """What has already turned: the fire out, the oven door open."""
    return _likely([*_fire_out(belief), *_door_open(belief)])


def turns_to_come(belief: Belief, unfed: Projection, band: HeatBand) -> tuple[Turn, ...]:
    """What the fire will ask for, the most pressing first.

    Parameters
    ----------
    belief : Belief
    unfed : Projection
        That belief's futures if nobody touches the stove any more.
    band : HeatBand
        The heat the oven is wanted at.
    """
    minutes, oven = unfed.minutes, unfed.of(oven_spot(belief.stove, unfed))
    return _likely([*_reload_due(belief, minutes, oven, band), *_air_open(belief, minutes, oven, band)])


def _likely(found: list[Turn]) -> tuple[Turn, ...]:
    """Those likely enough to speak of, in order of time."""
    return tuple(sorted((turn for turn in found if turn.chance >= LEAST_CHANCE), key=lambda turn: turn.in_min))


def _reload_due(belief: Belief, minutes: FloatArray, oven: FloatArray, band: HeatBand) -> list[Turn]:
    """Unfed, the oven that is or will be in the band falls out of its lower end: wood a lead time before that.

    While the oven door is open the oven falls for want of a door, not of wood.
    """
    if not belief.controls.lit or belief.controls.door_open:
        return []
    enters, stays = arrivals(minutes, oven, band)
    reached = np.isfinite(enters)
    falls = np.where(reached, enters + stays, np.inf)
    at = np.searchsorted(minutes, np.minimum(falls, minutes[-1]))
    downward = oven[np.arange(len(oven)), at] <= 0.5 * (band.low + band.high)
    due = np.where(reached & downward, falls - RELOAD_LEAD_MINUTES, np.inf)
    due = np.where(~reached & (oven[:, 0] < band.low), 0.0, due)
    due = np.maximum(due, _load_caught(belief))
    soon = due <= FORESEEN_MINUTES
    if not soon.any():
        return []
    return [
        Turn(kind=TurnKind.RELOAD_DUE, chance=float(soon.mean()), in_min=max(0, round(float(np.median(due[soon])))))
    ]


def _load_caught(belief: Belief) -> float:
    """Minutes until the latest load has caught; nobody is told to add wood to wood that was just put on."""
    if belief.last_load is None:
        return 0.0
    return max(LOAD_CATCHES - (belief.now - belief.last_load).total_seconds() / 60.0, 0.0)


def _fire_out(belief: Belief) -> list[Turn]:
    """Out by the log, or lit once but by now giving too little heat to drive the stove, by fuel and readings alike."""
    if belief.controls.went_out:
        return [Turn(kind=TurnKind.FIRE_OUT, chance=1.0, in_min=0)]
    if not belief.controls.lit or not (belief.loads or belief.last_readings):
        return []
    if belief.lit_at is not None and (belief.now - belief.lit_at).total_seconds() < 60.0 * KINDLING_CATCHES:
        return []
    power = belief.fire_power() + belief.ensemble.x[heat.EXTRA]
    return [Turn(kind=TurnKind.FIRE_OUT, chance=float(np.mean(power < OUT_KILOWATTS)), in_min=0)]


def _door_open(belief: Belief) -> list[Turn]:
    return [Turn(kind=TurnKind.DOOR_OPEN, chance=1.0, in_min=0)] if belief.controls.door_open else []


def _air_open(belief: Belief, minutes: FloatArray, oven: FloatArray, band: HeatBand) -> list[Turn]:
    """The air was set wide open and the oven will run past the band if it stays so."""
    if belief.air_logged is None or belief.air_logged < AIR_WIDE:
        return []
    over = oven > band.high
    chance = float(np.mean(over[:, minutes <= FORESEEN_MINUTES].any(axis=1)))
    first = np.where(over.any(axis=1), minutes[np.argmax(over, axis=1)], np.inf)
    if not np.isfinite(first).any():
        return []
    lead = float(np.median(first[np.isfinite(first)])) - RELOAD_LEAD_MINUTES
    return [Turn(kind=TurnKind.AIR_OPEN, chance=chance, in_min=max(0, round(lead)))]
