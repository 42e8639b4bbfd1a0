"""A plan of a meal on one clock: every step with the chance that it turns out."""

from dataclasses import dataclass, field
from datetime import datetime, timedelta
from enum import StrEnum

from cookstove_gui.cooking.supper.dishes import Dish
from cookstove_gui.forecast.answers import FloatArray


class StepKind(StrEnum):
    """What a step asks of the cook or of the stove."""

    HANDS = "hands"
    WAIT = "wait"
    HEAT = "heat"  # in at its beginning, out at its end
    FIRE = "fire"


class FireStep(StrEnum):
    """What is done to the fire."""

    LIGHT = "light"
    WOOD = "wood"
    AIR = "air"
    BYPASS_SHUT = "bypass shut"
    LET_GO = "let go"  # nothing more is put on


class Margin(StrEnum):
    """How sure the table's time should be."""

    USUAL = "usual"
    SAFE = "safe"


LATE_MIN = 3.0  # after its time, from which a dish is called late
LOAD_SOON = timedelta(minutes=5)  # within which a load is spoken of as due

MARGINS = {Margin.USUAL: 0.6, Margin.SAFE: 0.8}  # least chance of each step on heat; judgement


@dataclass(frozen=True, slots=True, kw_only=True)
class PlannedStep:
    """One step of the plan; `key` stays the same from plan to plan."""

    key: str  # "bread/3": dish and part, or "fire/light", "fire/wood/1"
    kind: StepKind
    what: str  # the part's own words; for the fire a `FireStep`
    dish: str = ""  # key of the dish; empty for the fire
    begin: datetime
    end: datetime  # the same as `begin` for a step of the fire
    turn_at: datetime | None = None
    spot: str = ""  # where on the stove
    wood: float | None = None  # kg of this cook's usual load; of a step that adds wood
    splits: int = 0  # the same counted in splits as they are believed to be here
    opening: float | None = None  # of a step that sets the air, 0 to 1
    helps: bool = False  # of the fire: asked for now, because else a heat is likely missed
    # That a bake is done in time, or that another part's heat is right from begin to end; none where none is wanted.
    chance: float | None = None
    fails_by: str = ""  # why its chance is small, if not for want of heat: its place is too `uneven`, or too `hot`
    done: bool = False
    begun: bool = False  # it has begun and is not done
    is_own: bool = False  # the cook set its beginning


@dataclass(frozen=True, slots=True, kw_only=True)
class Clash:
    """What does not fit, and the least change that would make it fit."""

    dish: str  # that is late, or has no place
    late_min: float  # after it was wanted; 0 where it has no heat at any time
    instead: str = ""  # dish that would be late in its place
    instead_min: float = 0.0
    no_heat: str = ""  # key of the step that finds no heat with this fire


@dataclass(frozen=True, slots=True, kw_only=True)
class Move:
    """A step that a new plan begins at another time, and why."""

    step: str  # key
    was: datetime
    now: datetime
    at: datetime  # when it was planned so
    # `late`: a step took longer; `heat`: the fire does otherwise; `known`: by what is known of the stove, while nothing
    # burns; `dish`: the meal changed; `own`: set by hand
    why: str


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class OvenAhead:
    """The oven's futures that a plan was made from; arrays of one length, not kept over a restart."""

    since: datetime  # that the minutes count from: when it was planned, or the lighting
    minutes: FloatArray
    p10: FloatArray  # K
    p25: FloatArray
    p50: FloatArray
    p75: FloatArray
    p90: FloatArray


@dataclass(frozen=True, slots=True, kw_only=True)
class Plan:
    """A whole meal, planned."""

    table_at: datetime
    made_at: datetime
    margin: Margin
    dishes: tuple[Dish, ...]
    steps: tuple[PlannedStep, ...]  # in order of their beginning
    chance: float | None  # that every dish is ready in time; none where no heat is wanted
    clashes: tuple[Clash, ...] = ()
    moved: tuple[Move, ...] = ()  # against the plan before
    proven: bool = True  # no better plan exists by the solver's measure; else the best found in its time
    lit: bool = False  # a fire was burning when it was made
    steers: bool = False  # it says what to do to the fire now, for what is in the oven or goes in soon
    oven: OvenAhead | None = field(default=None, compare=False)
    firings: int = 0  # of this stove, that a plan without a fire was made from; 0: common practice

    def holds_wood(self, now: datetime) -> bool:
        """Whether it steers the fire and has nothing put on it soon."""
        loads = [step.begin for step in self.steps if step.what == FireStep.WOOD and not step.done]
        return self.steers and not any(at <= now + LOAD_SOON for at in loads)

    def of_dish(self, key: str) -> tuple[PlannedStep, ...]:
        """The steps of one dish in order."""
        return tuple(step for step in self.steps if step.dish == key)
