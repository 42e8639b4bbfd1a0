"""A meal planned for the stove as it stands: the one road from a standing to a plan, for window and command alike."""

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from datetime import timedelta
from functools import cache

from cookstove_gui.cooking.fires.rise_and_hold import RiseAndHold, rise_and_hold
from cookstove_gui.cooking.instruments.kitchen import room_heat
from cookstove_gui.cooking.instruments.meant_rows import meant_rows
from cookstove_gui.cooking.supper.fire import Fire
from cookstove_gui.cooking.supper.marks import Supper
from cookstove_gui.cooking.supper.plan import Plan
from cookstove_gui.cooking.supper.planning import plan_meal
from cookstove_gui.errors import InputProblem
from cookstove_gui.forecast.answers import TurnKind
from cookstove_gui.forecast.tracking.tracker import Tracker
from cookstove_gui.situation import SURE_OF_TURN, Inputs, Standing, fire_is_out
from cookstove_gui.stove.entries import Entry, HeatBand, Kind, Session, fraction_open

_LATEST_BYPASS_OPEN = 0.05  # of the bypass, above which it is called open


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class SupperInputs:
    """A meal, the stove as it stands, and the plan in force."""

    supper: Supper
    asked: Inputs  # stove, rows, moment, band and character
    standing: Standing | None  # worked out from those rows, where there is a session
    sessions: Callable[[], Sequence[Session]]  # the stove's past, asked for only where nothing burns
    before: Plan | None = None


def plan_supper(inputs: SupperInputs) -> Plan:
    """The plan of the meal on the stove as it stands.

    Raises
    ------
    InputProblem
        Before a new stove's first fires are done, and for what `plan_meal` cannot plan.
    """
    standing = inputs.standing
    if standing is not None and standing.first_fires.next is not None:
        raise InputProblem("The first fires of this stove aren't done yet, so no food is planned on it.")
    return plan_meal(inputs.supper, fire_of(inputs), inputs.asked.now, inputs.before)


def fire_of(inputs: SupperInputs) -> Fire:
    """The fire that burns; or, where none does, the one that would be lit now."""
    standing = inputs.standing
    if standing is not None and burns(standing):
        return _burning(standing)
    return _to_be_lit(inputs)


def burns(standing: Standing) -> bool:
    """Whether a fire was lit or fed in this session and is not likely out."""
    fed = any(row.kind in (Kind.LIT, Kind.WOOD) for row in standing.rows)
    put_out = any(row.kind is Kind.OUT for row in standing.rows[-1:])
    return fed and not put_out and not fire_is_out(standing.turns)


def _burning(standing: Standing) -> Fire:
    sure = [turn for turn in standing.course.turns if turn.chance >= SURE_OF_TURN]
    reload = next((turn for turn in sure if turn.kind is TurnKind.RELOAD_DUE), None)
    air = next((row for row in reversed(standing.rows) if row.kind is Kind.AIR), None)
    bypass = next((fraction_open(row) for row in reversed(standing.rows) if row.kind is Kind.BYPASS), 0.0)
    ends = {
        one.answer.bake.key: one.likely for one in standing.bakes if one.answer is not None and one.likely is not None
    }
    return Fire(
        belief=standing.belief,
        lit=True,
        band=standing.band,
        kitchen=room_heat(standing.stove, standing.zones),
        rises=lambda band: RiseAndHold(band=band, rises=(), holds=()),  # a fire that burns is projected instead
        bypass_open=bypass > _LATEST_BYPASS_OPEN,
        air=None if air is None else fraction_open(air),
        air_at=None if air is None else air.at,
        against=frozenset(step for caution in standing.cautions for step in caution.against),
        reload_at=None if reload is None else standing.course.asked_at + timedelta(minutes=reload.in_min),
        ends=ends,
    )


def _to_be_lit(inputs: SupperInputs) -> Fire:
    asked = inputs.asked
    told = tuple(row for row in meant_rows(asked.stove, asked.rows) if row.at <= asked.now)
    number = max((row.number for row in asked.rows), default=0) + 1
    lit = Entry(number=number, at=asked.now, offset_minutes=0, kind=Kind.LIT, spot="", value="", unit="")
    zones = inputs.standing.zones if inputs.standing is not None else {}

    @cache
    def past() -> tuple[Session, ...]:
        return tuple(inputs.sessions())

    def rises(band: HeatBand) -> RiseAndHold:
        return rise_and_hold(asked.stove, past(), band)

    return Fire(
        belief=Tracker(asked.stove, asked.character).follow((*told, lit), asked.now),
        lit=False,
        band=asked.band,
        kitchen=room_heat(asked.stove, zones),
        rises=rises,
    )
