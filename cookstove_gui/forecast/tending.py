"""The stove run on into the future under a cook's hands: loads by habit, air and wood by where the oven is wanted."""

import math
from dataclasses import replace

import numpy as np
from numpy.typing import NDArray

from cookstove_gui.forecast import heat
from cookstove_gui.forecast.answers import Action, ActionKind, FloatArray
from cookstove_gui.forecast.belief import Belief
from cookstove_gui.forecast.ensemble import FIRING, MEMBERS
from cookstove_gui.forecast.heat import Controls
from cookstove_gui.stove.entries import HeatBand

FED_UNTIL_MINUTES = 240.0  # a fire not fed for this long is not expected to be fed again
FINE_UNTIL = 60.0  # min ahead with short steps; doubt is larger than the step's error beyond
UNKNOWN_SINCE = 15.0  # min since a load, when the log has none but the fire burns
LOOKS_EVERY = 15.0  # min between moments at which a cook minds the air
EAGER, EAGER_TURN = 0.75, 0.6  # pace of the wait for the next load in mid-band, and per half-width off it
LEAST_EAGER = 0.25  # pace of that wait when the oven is far too hot
MASS_TURN = 0.4  # taken off the logarithm of a load's mass for each half-width that the oven lies above mid-band
AIR_MIDDLE, AIR_TURN = 0.6, 0.3  # air in mid-band, and what is opened per half-width below it
STEERING_SHARE = 0.85  # of cooks who set the air by where the oven is
FORESIGHT = 25.0  # min ahead that a cook judges the oven by its trend
BAKE_MINUTES, BAKE_SPREAD = 50.0, 0.8  # a band once reached is held so long at least; spread of its logarithm
POOL = 1024  # firings drawn to judge how long this one lasts
BYPASS_SHUT_EVERY = 18.0  # min that a bypass, opened for lighting, stays open on average
DOOR_SHUT_AGAIN = (2.5, 15.0)  # min a door stays open from now on, at least and at most
OPENINGS_PRIOR = (0.6, 1.0)  # door openings and hours with the oven hot, before any were seen
OPENING_DIP = (0.08, 0.45)  # share of the oven air's excess that one opening costs
KINDLING_WAIT = 0.5  # of a usual interval: the first load follows the kindling so soon
SHUT_AIR = 0.2  # an air that is nearly shut speaks of a fire let die
SHUT_ODDS = 4.0
LEFT_BELOW_ODDS = 3.0  # of done, when the oven has fallen below the band and lies unfed
BAND_MARGIN = 12.0  # K added to half a band's width for “well off”


def tended(
    belief: Belief, action: Action, minutes: FloatArray, band: HeatBand | None, *, unfed: bool = False
) -> FloatArray:
    """Physical states (times, rows, members) at `minutes` from now if `action` is done now.

    `unfed` says that nobody touches the stove any more.
    """
    state = belief.ensemble.x[: heat.STATE_ROWS].copy()
    p = heat.positive(belief.ensemble.x[FIRING])
    random = belief.random(1)
    controls = _after(belief.controls, action)
    cook = _Cook(belief, action, band, random)
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
            heat.advance(
                state, p, replace(controls, air=cook.air, bypass=cook.bypass, door_open=door_open), step, random
            )
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


def openings_per_minute(belief: Belief, reached: float | None) -> float:
    """How often the oven's door will be opened while it is hot, from how often it was."""
    openings, hours = OPENINGS_PRIOR
    return (belief.door_openings + openings) / (60.0 * hours + (reached or 0.0))


class _Cook:
    """What one cook a member does: when the next load comes, and how the air stands."""

    def __init__(self, belief: Belief, action: Action, band: HeatBand | None, random: np.random.Generator) -> None:
        since = belief.minutes_since_fed
        self._given = 0.0
        if action.kind is ActionKind.WOOD:
            self._given, since = max(action.value, 0.0), 0.0
        fed = belief.controls.lit and (since is None or since < FED_UNTIL_MINUTES)
        self._gaps, self._masses, self._luck = belief.habits.next_loads(
            UNKNOWN_SINCE if since is None else since, MEMBERS, random
        )
        if not belief.loads and belief.lit_at is not None:
            self._gaps[:, 0] *= KINDLING_WAIT
        self._goes_on = belief.habits.goes_on
        self._waited = np.zeros(MEMBERS)
        self._load = np.zeros(MEMBERS, dtype=np.intp)
        self._feeds = np.full(MEMBERS, fed or action.kind is ActionKind.WOOD)
        self._band = band
        reached = None if band is None else minutes_since_reached(belief, band)
        self._reached = np.full(MEMBERS, band is None or reached is not None)
        self._steers = random.random(MEMBERS) < (
            0.0 if action.kind is ActionKind.AIR or band is None else STEERING_SHARE
        )
        self._left, self._bakes = np.full(MEMBERS, np.inf), np.zeros(MEMBERS)
        if band is not None:
            tail = self._waiting_tail(belief, since)
            self._left, done = _tending_left(belief, reached, tail, band, random)
            self._bakes = np.exp(math.log(BAKE_MINUTES) + BAKE_SPREAD * random.standard_normal(MEMBERS))
            if action.kind is not ActionKind.WOOD:
                self._feeds &= ~done
        air = action.value if action.kind is ActionKind.AIR else belief.controls.air
        self.air: FloatArray = np.full(MEMBERS, np.clip(air, 0.0, 1.0), dtype=np.float64)
        self.bypass: FloatArray = np.full(MEMBERS, belief.controls.bypass, dtype=np.float64)
        if action.kind is ActionKind.BYPASS:
            self.bypass[:] = min(max(action.value, 0.0), 1.0)
        self._minds_bypass = band is not None and action.kind is not ActionKind.BYPASS
        self._openings = openings_per_minute(belief, reached)
        self._before = belief.ensemble.x[heat.DIAL].copy()
        self._trend = np.zeros(MEMBERS)

    def _waiting_tail(self, belief: Belief, since: float | None) -> float:
        """Chance that a cook who still feeds would have waited so long."""
        habits = belief.habits
        gone = (math.log(max(since or 0.5, 0.5)) - habits.interval_log) / (habits.interval_deviation * math.sqrt(2.0))
        return 0.5 * math.erfc(gone)

    def goes_away(self) -> None:
        """From now on nobody tends."""
        self._feeds[:] = False
        self._steers[:] = False

    def tend(self, state: FloatArray, minutes: float, random: np.random.Generator) -> None:
        """Feed and set the air for one step, in place."""
        state[heat.FRESH] += self._given
        self._given = 0.0
        eager, size = np.ones(MEMBERS), np.ones(MEMBERS)
        self._left -= minutes
        ending = self._feeds & (self._left <= 0.0)
        self._feeds &= ~ending
        self.air = np.where(ending & self._steers, 0.1, self.air)
        if self._band is not None:
            off = self._off(self._band, state[heat.DIAL], minutes)
            eager = np.clip(EAGER - EAGER_TURN * off, LEAST_EAGER, 1.8)
            size = np.exp(np.clip(-MASS_TURN * off, -0.9, 0.0))
            looks = self._steers & self._feeds & (random.random(MEMBERS) < minutes / LOOKS_EVERY)
            wanted = np.clip(AIR_MIDDLE - AIR_TURN * off, 0.1, 1.0)
            self.air = np.where(looks, wanted, self.air)
            if self._minds_bypass:
                self.bypass = np.where(random.random(MEMBERS) < minutes / BYPASS_SHUT_EVERY, 0.0, self.bypass)
            self._open_door(state, minutes, random)
        self._waited += eager * minutes
        members = np.arange(MEMBERS)
        due = self._feeds & (self._waited >= self._gaps[members, self._load])
        if not due.any():
            return
        stops = due & (self._luck[members, self._load] > self._goes_on) & (self._band is None)
        self._feeds &= ~stops
        state[heat.FRESH] += np.where(due & ~stops, size * self._masses[members, self._load], 0.0)
        self._waited[due] = 0.0
        self._load[due] = np.minimum(self._load[due] + 1, self._gaps.shape[1] - 1)

    def _open_door(self, state: FloatArray, minutes: float, random: np.random.Generator) -> None:
        """Look at what bakes: the oven's air falls by a share of its excess, its walls hardly."""
        opens = self._feeds & self._reached & (random.random(MEMBERS) < self._openings * minutes)
        least, most = OPENING_DIP
        dip = np.where(opens, least + (most - least) * random.random(MEMBERS), 0.0)
        state[heat.AIR] -= dip * np.maximum(state[heat.AIR] - state[heat.ROOM], 0.0)

    def _off(self, band: HeatBand, oven: FloatArray, minutes: float) -> FloatArray:
        """How far (members,) the oven, as its trend will have it, lies above the band's middle, in half-widths."""
        self._trend += (1.0 - np.exp(-minutes / 8.0)) * ((oven - self._before) / minutes - self._trend)
        self._before = oven.copy()
        arrives = ~self._reached & (oven >= band.low)
        self._left = np.where(arrives, np.maximum(self._left, self._bakes), self._left)
        self._reached |= arrives
        middle = 0.5 * (band.low + band.high)
        half = 0.5 * (band.high - band.low) + BAND_MARGIN
        return np.clip((oven + FORESIGHT * self._trend - middle) / half, -2.0, 2.0)


def minutes_since_reached(belief: Belief, band: HeatBand) -> float | None:
    """Minutes since the oven first was in or above a band's lower end, or none."""
    for point in belief.points:
        if point.p50 >= band.low:
            return (belief.now - point.at).total_seconds() / 60.0
    return None


def _tending_left(
    belief: Belief, reached: float | None, waiting_tail: float, band: HeatBand, random: np.random.Generator
) -> tuple[FloatArray, NDArray[np.bool_]]:
    """Minutes (members,) for which the fire will still be fed, and who is done with it already.

    A firing lasts as this cook's firings do, and once the band is reached at least long enough to bake. What has
    lasted until the last load lasts longer; a wait that is long for this cook, a shut air and an oven left to fall
    below the band speak for being done.
    """
    habits = belief.habits
    burning = belief.minutes_since_lit
    since = belief.minutes_since_fed
    fed_at = max(burning - since, 0.0) if since is not None else 0.0
    lasts = np.exp(habits.tending_log + habits.tending_deviation * random.standard_normal(POOL))
    if reached is not None:
        bakes = np.exp(math.log(BAKE_MINUTES) + BAKE_SPREAD * random.standard_normal(POOL))
        lasts = np.maximum(lasts, burning - reached + bakes)
    still, over = float(np.mean(lasts > burning)), float(np.mean((lasts > fed_at) & (lasts <= burning)))
    odds = (over + 1.0 / POOL) / max(still * waiting_tail, 0.1 / POOL)
    if belief.air_was_logged and np.mean(belief.controls.air) <= SHUT_AIR:
        odds *= SHUT_ODDS
    if reached is not None and float(np.median(belief.ensemble.x[heat.AIR])) < band.low:
        odds *= LEFT_BELOW_ODDS
    done = random.random(MEMBERS) < odds / (1.0 + odds)
    later = lasts[lasts > burning] - burning
    left = random.choice(later, MEMBERS) if len(later) else np.full(MEMBERS, DOOR_SHUT_AGAIN[1])
    return np.asarray(left, dtype=np.float64), done
