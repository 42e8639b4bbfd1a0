"""A planned supper as its picture shows it: one clock for oven, fire and dishes; minutes from now, heats in kelvin."""

from dataclasses import dataclass
from datetime import datetime

import numpy as np

from cookstove_gui.cooking.fit.tasks import Place
from cookstove_gui.cooking.supper.dishes import Heat
from cookstove_gui.cooking.supper.heats import task_for
from cookstove_gui.cooking.supper.left import clashes_left
from cookstove_gui.cooking.supper.moments import MomentKind, part_of_step
from cookstove_gui.cooking.supper.plan import FireStep, Plan, PlannedStep, StepKind
from cookstove_gui.desk.cook.lane import lane_rows
from cookstove_gui.desk.desk import Desk
from cookstove_gui.desk.heading import here
from cookstove_gui.desk.plan.supper_next import Bell, Bells, NextStep, next_steps
from cookstove_gui.forecast.answers import FloatArray
from cookstove_gui.phrases.edge import Edge, whole
from cookstove_gui.phrases.lane import LaneRow
from cookstove_gui.phrases.plan.supper import (
    chance_line,
    chance_words,
    cooked_words,
    fails_rungs,
    fire_word,
    fits_words,
    moved_words,
    source_words,
    step_words,
    under_dish,
)
from cookstove_gui.stove.entries import Kind, reading_kelvin
from cookstove_gui.units import degrees

_BACK_MIN, _AFTER_MIN, _BEFORE_MIN = 98.0, 20.0, 10.0
_FAR_MIN = 150.0  # a first step further ahead than this: the axis begins there, and now is not on it
_FIRE_KINDS = {
    FireStep.LIGHT: Kind.LIT,
    FireStep.WOOD: Kind.WOOD,
    FireStep.AIR: Kind.AIR,
    FireStep.BYPASS_SHUT: Kind.BYPASS,
    FireStep.LET_GO: Kind.AIR,
}


@dataclass(frozen=True, slots=True, kw_only=True)
class Block:
    """A step of a dish."""

    step: str
    kind: StepKind
    words: str
    begin: float
    end: float
    turn: float | None = None
    heat: float | None = None  # K, that it wants
    clock: str = ""  # over a step on heat that is still to begin
    out: str = ""  # over its end
    bell: Bell | None = None  # beside the clock of its beginning
    out_bell: Bell | None = None
    past: bool = False
    is_own: bool = False
    is_short: bool = False  # of heat: the chance is small
    said: str = ""  # in full, read out and in the tooltip


@dataclass(frozen=True, slots=True, kw_only=True)
class DishRow:
    """One dish."""

    key: str
    name: str
    under: str
    fails: tuple[str, ...]  # its step that misses its heat most often, where that is often, from long to short
    blocks: tuple[Block, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Wanted:
    """A heat that a dish wants of the oven, as a box in time and degrees."""

    begin: float
    end: float
    low: float
    high: float
    words: str
    is_short: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class FireMark:
    """Something planned to be done to the fire."""

    step: str  # key
    minute: float
    kind: Kind
    words: str
    opening: float = 0.0
    count: int = 1  # splits
    bell: Bell | None


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class OvenLines:
    """The oven as it was, was read, and is projected."""

    past: tuple[FloatArray, FloatArray] | None  # minutes, K
    read: tuple[tuple[float, float], ...]
    minutes: FloatArray
    p10: FloatArray
    p25: FloatArray
    p50: FloatArray
    p75: FloatArray
    p90: FloatArray


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class SupperShown:
    """Everything on the tab."""

    edge: Edge
    start: float
    end: float
    table: float
    rows: tuple[DishRow, ...]
    oven: OvenLines | None
    oven_now: float | None  # K
    wanted: tuple[Wanted, ...]
    done: tuple[LaneRow, ...]  # to the fire so far
    fire: tuple[FireMark, ...]
    fits: tuple[str, str]
    does_not_fit: bool
    next: tuple[NextStep, ...]
    moved: str
    source: str
    chance: str  # of the whole, in full


def supper_shown(desk: Desk) -> SupperShown | None:
    """The plan in force; none while there is none."""
    plan = desk.supper.plan
    if plan is None:
        return None
    now = desk.clock()
    edge = Edge(unit=desk.unit, now=now, offset_minutes=here(desk))
    bells = Bells.of(desk)
    first = min((_minutes(step.begin, now) for step in plan.steps), default=0.0)
    last = max([_minutes(step.end, now) for step in plan.steps] + [_minutes(plan.table_at, now)])
    lit = desk.entries[0].at if desk.is_live and desk.entries else now
    start = first - _BEFORE_MIN if first > _FAR_MIN else max(min(first, _minutes(lit, now)) - _BEFORE_MIN, -_BACK_MIN)
    is_live = desk.is_live and desk.standing is not None
    cooked = None if desk.supper.supper is None else cooked_words(desk.supper.supper, edge)
    return SupperShown(
        edge=edge,
        start=start,
        end=last + _AFTER_MIN,
        table=_minutes(plan.table_at, now),
        rows=tuple(
            DishRow(
                key=dish.key,
                name=dish.name,
                under=under_dish(dish, plan, desk.stove, edge),
                fails=fails_rungs(plan.of_dish(dish.key)),
                blocks=tuple(_block(step, plan, edge, bells) for step in plan.of_dish(dish.key)),
            )
            for dish in plan.dishes
        ),
        oven=_oven(desk, plan, now),
        oven_now=desk.standing.outlook.oven.p50 if is_live and desk.standing is not None else None,
        wanted=tuple(_wanted(plan, edge)),
        done=lane_rows(desk) if is_live else (),
        fire=tuple(_fire_mark(one, now, bells) for one in plan.steps if one.kind is StepKind.FIRE and not one.done),
        fits=cooked or fits_words(plan),
        does_not_fit=cooked is None and bool(clashes_left(plan)),
        next=next_steps(desk, plan, edge, bells),
        moved=moved_words(plan, edge),
        source="" if cooked else source_words(plan),
        chance=chance_words(plan),
    )


def _block(step: PlannedStep, plan: Plan, edge: Edge, bells: Bells) -> Block:
    part = part_of_step(plan, step)
    begin, end = _minutes(step.begin, edge.now), _minutes(step.end, edge.now)
    is_heat = step.kind is StepKind.HEAT and isinstance(part, Heat)
    heat = None
    if is_heat and isinstance(part, Heat):
        heat = task_for(part).middle
    comes_out = is_heat and not step.done and isinstance(part, Heat) and part.place is Place.OVEN
    goes_in = MomentKind.PUT_ON if isinstance(part, Heat) and part.place is Place.TOP else MomentKind.PUT_IN
    fails = chance_line(step)
    told = f"{step_words(step, plan)}, {edge.at(step.begin)} to {edge.at(step.end)}"
    if step.spot:
        told += f", {step.spot.replace('_', ' ')}"
    return Block(
        step=step.key,
        kind=step.kind,
        words=step.what,
        begin=begin,
        end=end,
        turn=None if step.turn_at is None else _minutes(step.turn_at, edge.now),
        heat=heat,
        clock=edge.at(step.begin) if is_heat and not (step.done or step.begun) else "",
        out=edge.at(step.end) if comes_out else "",
        bell=bells.at(step, goes_in),
        out_bell=bells.at(step, MomentKind.TAKE_OUT),
        past=step.done,
        is_own=step.is_own,
        is_short=any(clash.no_heat == step.key for clash in plan.clashes),
        said=f"{told}; {fails}" if fails else told,
    )


def _wanted(plan: Plan, edge: Edge) -> list[Wanted]:
    found = []
    for step in plan.steps:
        part = part_of_step(plan, step)
        if step.done or not isinstance(part, Heat) or part.place is not Place.OVEN:
            continue
        task = task_for(part)
        low, high = (whole(degrees(heat, edge.unit)) for heat in (task.low, task.high))
        found.append(
            Wanted(
                begin=_minutes(step.begin, edge.now),
                end=_minutes(step.end, edge.now),
                low=task.low,
                high=task.high,
                words=f"{task.name} {low}–{high}",
                is_short=any(clash.no_heat == step.key for clash in plan.clashes),
            )
        )
    return found


def _fire_mark(step: PlannedStep, now: datetime, bells: Bells) -> FireMark:
    return FireMark(
        step=step.key,
        minute=_minutes(step.begin, now),
        kind=_FIRE_KINDS[FireStep(step.what)],
        words=fire_word(step),
        opening=step.opening or 0.0,
        count=max(step.splits, 1),
        bell=bells.at(step, MomentKind.FIRE),
    )


def _oven(desk: Desk, plan: Plan, now: datetime) -> OvenLines | None:
    ahead, standing = plan.oven, desk.standing if desk.is_live else None
    if ahead is None:
        return None
    past: tuple[FloatArray, FloatArray] | None = None
    read: tuple[tuple[float, float], ...] = ()
    if standing is not None and standing.trace.at:
        past = (np.array([_minutes(at, now) for at in standing.trace.at]), standing.trace.p50)
        read = tuple(
            (_minutes(row.at, now), reading_kelvin(row))
            for row in standing.rows
            if row.kind is Kind.READING and row.spot == standing.stove.oven_spot
        )
    return OvenLines(
        past=past,
        read=read,
        minutes=ahead.minutes + _minutes(ahead.since, now),
        p10=ahead.p10,
        p25=ahead.p25,
        p50=ahead.p50,
        p75=ahead.p75,
        p90=ahead.p90,
    )


def _minutes(at: datetime, now: datetime) -> float:
    return (at - now).total_seconds() / 60.0
