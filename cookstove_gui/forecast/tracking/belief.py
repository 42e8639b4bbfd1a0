"""The belief about a whole stove at one moment, and what can be read off it directly."""

from dataclasses import dataclass, field
from datetime import datetime
from enum import IntEnum

import numpy as np

from cookstove_gui.forecast.answers import DoubtedReading, FloatArray, Trace
from cookstove_gui.forecast.model import heat
from cookstove_gui.forecast.model.character import WIDTH_AFTER, Character, Corrections
from cookstove_gui.forecast.model.ensemble import FIRING, Ensemble
from cookstove_gui.forecast.model.habits import Habits
from cookstove_gui.forecast.model.heat import Controls
from cookstove_gui.forecast.model.observation import LastReading
from cookstove_gui.forecast.tracking.lookback import TracePoint, smoothed
from cookstove_gui.forecast.tracking.proof import Proof
from cookstove_gui.stove.stove import Stove

# What the model leaves out makes the past, once all readings have told of it, look too sure: found on invented stoves.
PAST_WIDTH = 1.9
PAST_WIDTH_MINUTES = 20.0  # min ago from which on that holds


class Draws(IntEnum):
    """Where the random numbers for each purpose begin, so that no two share any."""

    START = 0
    STEPS = 1  # and one more with each row
    AHEAD = 500_000  # from the last row to now
    TENDING = 1_000_001  # of the futures: what the cook does
    WANDER = 1_000_003  # and what nobody can log
    SHARES = 1_000_002  # the spots' own shares
    WALLS = 1_000_009  # what stands beside the stove
    CARRIED = 1_000_010  # the heat a session begins with
    LIT = 2_000_000
    WOOD = 3_000_000
    READING = 4_000_000


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Belief:
    """A frozen snapshot; its arrays are not to be changed."""

    now: datetime
    stove: Stove
    character: Character
    ensemble: Ensemble
    controls: Controls
    habits: Habits
    seed: int
    last_load: datetime | None = None
    loads: int = 0
    lit_first: datetime | None = None  # the session's first lighting
    lit_at: datetime | None = None  # the latest
    door_opened: datetime | None = None  # since when it stands open
    door_openings: int = 0
    air_logged: float | None = None  # the latest, 0 shut to 1 open
    spot_width: float = 1.0  # factor of the spots' windows
    doubted: tuple[DoubtedReading, ...] = ()
    last_readings: dict[str, LastReading] = field(default_factory=dict)
    points: tuple[TracePoint, ...] = ()  # as the oven was believed to be at each moment
    settled: tuple[TracePoint, ...] = ()  # of its past, what no reading will change any more
    past_at: tuple[datetime, ...] = ()  # the moments of the ensemble's past, which follow
    proof: Proof = field(default_factory=Proof)  # of this session's futures so far

    @property
    def corrections(self) -> Corrections:
        """What hindsight over past sessions adds to the projection."""
        return self.character.corrections

    @property
    def minutes_since_fed(self) -> float | None:
        """Minutes since wood or kindling was last logged, or none."""
        fed = max((at for at in (self.last_load, self.lit_at) if at is not None), default=None)
        return None if fed is None else (self.now - fed).total_seconds() / 60.0

    @property
    def minutes_since_lit(self) -> float:
        """Minutes since the fire was first known: lit, fed or, without such rows, followed."""
        first = self.lit_first or (self.points[0].at if self.points else self.now)
        return (self.now - first).total_seconds() / 60.0

    def random(self, purpose: Draws) -> np.random.Generator:
        """A generator that gives the same numbers for the same stove and purpose."""
        return np.random.Generator(np.random.Philox(key=[self.seed, purpose]))

    def fire_power(self) -> FloatArray:
        """Heat that the fire gives now (members,) [kW]."""
        state = self.ensemble.x[: heat.STATE_ROWS].copy()
        return heat.burn(state, heat.positive(self.ensemble.x[FIRING]), self.controls, heat.STEP_MINUTES) / 60.0


def trace(belief: Belief) -> Trace:
    """What is known now about the oven over the session: every reading since has corrected it."""
    points = smoothed(belief.settled, belief.past_at, belief.ensemble.past)
    if _goes_on(points, belief.points):
        points += belief.points[-1:]
    return _trace(belief, points, PAST_WIDTH)


def trace_as_believed(belief: Belief) -> Trace:
    """The belief about the oven over the session, as it was at each moment."""
    return _trace(belief, belief.points, None)


def _goes_on(kept: tuple[TracePoint, ...], believed: tuple[TracePoint, ...]) -> bool:
    """Whether the belief reaches further than the moments that were kept."""
    return bool(believed) and (not kept or believed[-1].at > kept[-1].at)


def _trace(belief: Belief, points: tuple[TracePoint, ...], width: float | None) -> Trace:
    """The points, spread about their middle: now as far as the futures begin with, and `width` long ago."""
    now = WIDTH_AFTER[0] * belief.corrections.width[0] * belief.proof.width
    age = np.array([(belief.now - point.at).total_seconds() / 60.0 for point in points], dtype=np.float64)
    factor = np.interp(age, (0.0, PAST_WIDTH_MINUTES), (now, width or now))
    low, middle, high = np.array([(point.p10, point.p50, point.p90) for point in points]).reshape(-1, 3).T
    return Trace(
        at=tuple(point.at for point in points),
        p10=middle + factor * (low - middle),
        p50=middle,
        p90=middle + factor * (high - middle),
    )


def doubted_readings(belief: Belief) -> tuple[DoubtedReading, ...]:
    """Readings that look like slips, in the order they were typed, with what was expected instead."""
    return belief.doubted
