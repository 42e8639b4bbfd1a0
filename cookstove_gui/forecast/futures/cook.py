"""The cook of each future: feeds by habit, steers wood and air toward the band, until the firing is done."""

import math
from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from cookstove_gui.forecast.answers import LEAVE, Action, ActionKind, FloatArray, KeptFire
from cookstove_gui.forecast.model import heat
from cookstove_gui.forecast.model.ensemble import MEMBERS
from cookstove_gui.forecast.model.habits import KINDLING_WAIT
from cookstove_gui.forecast.model.normal import share_below
from cookstove_gui.forecast.tracking.belief import Belief, Draws
from cookstove_gui.stove.entries import HeatBand

FED_UNTIL_MINUTES = 240.0  # a fire not fed for this long is not expected to be fed again
UNKNOWN_SINCE = 15.0  # min since a load, when the log has none but the fire burns
LOOKS_A_TURN, LOOKS_SPREAD = 1.6, 0.6  # looks at the oven for each turn of the air; spread of their logarithm
AIR_EDGE, AIR_SOFT = 0.6, 0.25  # half-widths off mid-band at which half of the cooks move the air, and how sharply
AIR_TURN = (0.1, 0.4)  # of the opening, at least and at most
AIR_FORESIGHT = 10.0  # min ahead that a cook judges the oven by, at most, when setting the air
FAR_OFF, HASTE = (
    1.4,
    2.0,
)  # half-widths off mid-band at which a cook hurries, and how many times as often one then looks
LEAST_AIR = 0.05  # air opening; nobody who tends a fire shuts it altogether
EAGER, EAGER_TURN = 0.75, 0.5  # pace of the wait for the next load in mid-band, and per half-width off it
LEAST_EAGER, MOST_EAGER = 0.25, 1.8  # pace of that wait when the oven is far too hot, and far too cool
MASS_TURN, MOST_MASS_TURN = (
    0.4,
    0.9,
)  # taken off the logarithm of a load's mass for each half-width above mid-band, and at most
STEERING_SHARE = 0.85  # of cooks who set the air by where the oven is
FORESIGHT = 25.0  # min ahead that a cook judges the oven by its trend
TREND_MINUTES = 8.0  # min over which a cook sees the oven's trend
END_AIR = 0.1  # air opening a cook leaves a dying fire
MOST_OFF = 2.0  # half-widths off mid-band beyond which a cook does nothing more
BAKE_MINUTES, BAKE_SPREAD = 50.0, 0.8  # a band once reached is held so long at least; spread of its logarithm
POOL = 1024  # firings, drawn to judge how long this one lasts
BYPASS_SHUT_EVERY = 18.0  # min that a bypass, opened for lighting, stays open on average
DOOR_SHUT_AGAIN = (2.5, 15.0)  # min a door stays open from now on, at least and at most
OPENINGS_PRIOR = (0.6, 1.0)  # door openings and hours with the oven hot, before any were seen
OPENING_DIP = (0.08, 0.45)  # share of the oven air's excess that one opening costs
SHUT_AIR = 0.2  # air opening that suggests a fire left to die
SHUT_ODDS = 4.0  # by which that multiplies the odds of it
BAND_MARGIN = 12.0  # K added to half a band's width for “well off”


@dataclass(frozen=True, slots=True, kw_only=True)
class Doing:
    """What is done now, and whether anybody tends the stove after it."""

    action: Action = LEAVE
    unfed: bool = False
    pots: int = 0  # that stand on the cooktop besides those of the log; below 0: so many of those are not there
    pots_min: float = 0.0  # min from now that they stand there


@dataclass(frozen=True, slots=True, kw_only=True)
class _Intent:
    """What the cook of each member means to do; arrays (members,) unless said."""

    given: float  # kg of wood put in now
    gaps: FloatArray  # min, (members, loads), the first from now
    masses: FloatArray  # kg, (members, loads)
    luck: FloatArray  # (members, loads), decides whether the cook goes on
    feeds: NDArray[np.bool_]
    steers: NDArray[np.bool_]
    minds_bypass: bool
    left: FloatArray  # min for which the fire is fed
    bakes: FloatArray  # min for which a band is held once it is reached
    pace: FloatArray  # looks at the oven a minute
    foresight: FloatArray  # min


def _intent(
    belief: Belief,
    doing: Doing,
    band: HeatBand | None,
    reached: float | None,
    kept: KeptFire | None,
    random: np.random.Generator,
) -> _Intent:
    """Drawn in the same order whatever is done, so that two doings are compared on the same futures."""
    action, habits = doing.action, belief.habits
    given = max(action.value, 0.0) if action.is_fuel else 0.0
    since = belief.minutes_since_fed
    waited = np.full(MEMBERS, UNKNOWN_SINCE) if since is None else belief.ensemble.x[heat.SINCE_FED]
    if action.is_fuel:
        waited = np.zeros(MEMBERS)
    fed = belief.controls.lit and (since is None or since < FED_UNTIL_MINUTES)
    gaps, masses, luck = habits.next_loads(waited, MEMBERS, random)
    if action.kind is ActionKind.KINDLING or (not belief.loads and belief.lit_at is not None):
        gaps[:, 0] *= KINDLING_WAIT
    feeds = np.full(MEMBERS, fed or action.is_fuel)
    # Air set for a what-if stays as it is set; for a meal the cook goes on minding it.
    stays = action.kind is ActionKind.AIR and kept is None
    steers = random.random(MEMBERS) < (0.0 if stays or band is None else STEERING_SHARE)
    left, bakes = np.full(MEMBERS, np.inf), np.zeros(MEMBERS)
    if band is not None:
        tail = _waiting_tail(belief, waited)
        left, done = _tending_left(belief, reached, waited, tail, random)
        bakes = np.exp(math.log(BAKE_MINUTES) + BAKE_SPREAD * random.standard_normal(MEMBERS))
        if not action.is_fuel:
            feeds &= ~done
    if kept is not None:  # fed for as long as the meal needs, whatever the habit
        left, bakes = np.full(MEMBERS, kept.until), np.zeros(MEMBERS)
        feeds[:] = True
    looks = LOOKS_A_TURN * habits.air_turns / habits.air_minutes
    return _Intent(
        given=given,
        gaps=gaps,
        masses=masses,
        luck=luck,
        feeds=feeds & (not doing.unfed),
        steers=steers & (not doing.unfed),
        minds_bypass=band is not None and action.kind is not ActionKind.BYPASS and not doing.unfed,
        left=left,
        bakes=bakes,
        pace=looks * np.exp(LOOKS_SPREAD * random.standard_normal(MEMBERS)),
        foresight=AIR_FORESIGHT * random.random(MEMBERS),
    )


class Cook:
    """What one cook a member does, after each of some doings: when the next load comes, and how the air stands.

    Arrays are (doings, members); the draws are shared by the doings, as each would have them alone.
    """

    def __init__(
        self, belief: Belief, doings: Sequence[Doing], band: HeatBand | None, kept: KeptFire | None = None
    ) -> None:
        reached = None if band is None else minutes_since_reached(belief, band)
        intents = []
        for doing in doings:
            self._random = belief.random(Draws.TENDING)
            intents.append(_intent(belief, doing, band, reached, kept, self._random))
        self._given = np.array([[one.given] for one in intents])
        self._gaps = np.stack([one.gaps for one in intents])  # (doings, members, loads), as the next two
        self._masses = np.stack([one.masses for one in intents])
        self._luck = np.stack([one.luck for one in intents])
        self._feeds = np.stack([one.feeds for one in intents])
        self._steers = np.stack([one.steers for one in intents])
        self._left = np.stack([one.left for one in intents])
        self._minds_bypass = np.array([[one.minds_bypass] for one in intents])
        first = intents[0]
        self._bakes, self._pace, self._foresight = first.bakes, first.pace, first.foresight
        self._goes_on = belief.habits.goes_on
        self._waited = np.zeros_like(self._left)
        self._load = np.zeros(self._left.shape, dtype=np.intp)
        self._gap = self._gaps[:, :, 0].copy()  # before the next load
        self._band = band
        self._reached = np.full(self._left.shape, band is None or reached is not None)
        self._kept, self._clock = kept, 0.0
        self._openings = openings_per_minute(belief, reached)
        self._before = np.broadcast_to(belief.ensemble.x[heat.DIAL], self._left.shape)
        self._trend = np.zeros_like(self._left)

    def tend(self, state: FloatArray, minutes: float) -> None:
        """Feed and set the air for one step, in place; `state` is (rows, doings, members)."""
        state[heat.FRESH] += self._given
        self._given = np.zeros_like(self._given)
        if self._kept is not None:
            self._band = self._kept.at(self._clock)
            self._clock += minutes
        self._left -= minutes
        ending = self._feeds & (self._left <= 0.0)
        self._feeds &= ~ending
        if self._band is None:
            state[heat.INLET][ending & self._steers] = END_AIR
            self._waited += minutes
            self._feed(state, np.ones_like(self._left))
            return
        off = self._off(self._band, state[heat.DIAL], minutes)
        inlet = np.where(ending & self._steers, END_AIR, state[heat.INLET])
        state[heat.INLET] = self._set_air(inlet, self._band, state[heat.DIAL], minutes)
        shut = self._minds_bypass & (self._random.random(MEMBERS) < minutes / BYPASS_SHUT_EVERY)
        state[heat.BYPASS][shut] = 0.0
        self._open_door(state, minutes)
        self._waited += minutes * _between(EAGER - EAGER_TURN * off, LEAST_EAGER, MOST_EAGER)
        self._feed(state, off)

    def _feed(self, state: FloatArray, off: FloatArray) -> None:
        """Put in the loads that are due, smaller ones the further the oven (doings, members) is above its band."""
        due = self._feeds & (self._waited >= self._gap)
        place = np.nonzero(due)
        if not len(place[0]):
            return
        load = self._load[place]
        if self._band is None:
            stops = self._luck[(*place, load)] > self._goes_on
            self._feeds[place] = ~stops
            mass = np.where(stops, 0.0, self._masses[(*place, load)])
        else:
            mass = self._masses[(*place, load)] * np.exp(_between(-MASS_TURN * off[place], -MOST_MASS_TURN, 0.0))
        state[heat.FRESH][place] += mass
        self._waited[place] = 0.0
        self._load[place] = following = np.minimum(load + 1, self._gaps.shape[2] - 1)
        self._gap[place] = self._gaps[(*place, following)]

    def _set_air(self, inlet: FloatArray, band: HeatBand, oven: FloatArray, minutes: float) -> FloatArray:
        """The air (doings, members) after a look at the oven: a turn shut above the band, a turn open below it."""
        random, least, most = self._random, AIR_TURN[0], AIR_TURN[1]
        chance, luck, turn = random.random(MEMBERS), random.random(MEMBERS), random.random(MEMBERS)
        pace = minutes * self._pace
        # Few look in one step: how far off the oven is for them is asked of those few that may.
        place = np.nonzero(self._steers & self._feeds & (chance < HASTE * pace))
        off = _half_widths(oven[place] + self._foresight[place[1]] * self._trend[place], band)
        looks = chance[place[1]] < pace[place[1]] * np.where(np.abs(off) > FAR_OFF, HASTE, 1.0)
        place, off = (place[0][looks], place[1][looks]), off[looks]
        luck, turn, before = luck[place[1]], least + (most - least) * turn[place[1]], inlet[place]
        shuts = luck < 1.0 / (1.0 + np.exp((AIR_EDGE - off) / AIR_SOFT))
        opens = luck < 1.0 / (1.0 + np.exp((AIR_EDGE + off) / AIR_SOFT))
        inlet[place] = _between(before - turn * shuts + turn * opens, LEAST_AIR, 1.0)
        return inlet

    def _open_door(self, state: FloatArray, minutes: float) -> None:
        """Look at what bakes: the oven's air falls by a share of its excess, its walls hardly."""
        random = self._random
        chance, size = random.random(MEMBERS), random.random(MEMBERS)
        place = np.nonzero(self._feeds & self._reached & (chance < self._openings * minutes))
        least, most = OPENING_DIP
        dip = least + (most - least) * size
        air = state[heat.AIR][place]
        state[heat.AIR][place] = air - dip[place[1]] * np.maximum(air - state[heat.ROOM][place], 0.0)

    def _off(self, band: HeatBand, oven: FloatArray, minutes: float) -> FloatArray:
        """How far the oven (doings, members), as its trend will have it, lies above mid-band, in half-widths."""
        self._trend += (1.0 - math.exp(-minutes / TREND_MINUTES)) * ((oven - self._before) / minutes - self._trend)
        self._before = oven.copy()
        arrives = ~self._reached & (oven >= band.low)
        self._left = np.where(arrives, np.maximum(self._left, self._bakes), self._left)
        self._reached |= arrives
        return _half_widths(oven + FORESIGHT * self._trend, band)


def _waiting_tail(belief: Belief, waited: FloatArray) -> FloatArray:
    """Chance (members,) that a cook who still feeds would have waited so long."""
    habits = belief.habits
    return share_below((habits.interval_log - np.log(np.maximum(waited, 0.5))) / habits.interval_deviation)


def _between(values: FloatArray, least: float, most: float) -> FloatArray:
    """As `np.clip`, without its calls on calls."""
    return np.asarray(np.minimum(np.maximum(values, least), most), dtype=np.float64)


def _half_widths(oven: FloatArray, band: HeatBand) -> FloatArray:
    """How far ovens [K] lie above a band's middle, in half-widths, at most MOST_OFF either way."""
    half = 0.5 * (band.high - band.low) + BAND_MARGIN
    return _between((oven - 0.5 * (band.low + band.high)) / half, -MOST_OFF, MOST_OFF)


def openings_per_minute(belief: Belief, reached: float | None) -> float:
    """How often the oven's door will be opened while it is hot, from how often it was."""
    openings, hours = OPENINGS_PRIOR
    return (belief.door_openings + openings) / (60.0 * hours + (reached or 0.0))


def minutes_since_reached(belief: Belief, band: HeatBand) -> float | None:
    """Minutes since the oven first was in or above a band's lower end, or none."""
    for point in belief.points:
        if point.p50 >= band.low:
            return (belief.now - point.at).total_seconds() / 60.0
    return None


def _tending_left(
    belief: Belief,
    reached: float | None,
    waited: FloatArray,
    waiting_tail: FloatArray,
    random: np.random.Generator,
) -> tuple[FloatArray, NDArray[np.bool_]]:
    """Minutes (members,) for which the fire will still be fed, and who is done with it already.

    A firing lasts as this cook's firings do, and once the band is reached at least long enough to bake. What has
    lasted until the last load lasts longer; a wait that is long for this cook, or a shut air, suggests that it is done.
    """
    habits = belief.habits
    burning = belief.minutes_since_lit
    fed_at = np.maximum(burning - waited, 0.0) if belief.minutes_since_fed is not None else np.zeros(MEMBERS)
    lasts = np.exp(habits.tending_log + habits.tending_deviation * random.standard_normal(POOL))
    if reached is not None:
        bakes = np.exp(math.log(BAKE_MINUTES) + BAKE_SPREAD * random.standard_normal(POOL))
        lasts = np.maximum(lasts, burning - reached + bakes)
    still = float(np.mean(lasts > burning))
    ordered = np.sort(lasts)
    over = np.maximum(np.searchsorted(ordered, burning) - np.searchsorted(ordered, fed_at), 0) / POOL
    odds = (over + 1.0 / POOL) / np.maximum(still * waiting_tail, 1e-4)
    if belief.air_logged is not None and belief.air_logged <= SHUT_AIR:
        odds *= SHUT_ODDS
    done = random.random(MEMBERS) < odds / (1.0 + odds)
    later = lasts[lasts > burning] - burning
    left = random.choice(later, MEMBERS) if len(later) else np.full(MEMBERS, DOOR_SHUT_AGAIN[1])
    return np.asarray(left, dtype=np.float64), done
