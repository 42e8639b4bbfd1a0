"""The moments that call for the cook: of the stove as it stands, of what is in the oven, and of the plan."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from datetime import datetime, timedelta
from typing import TYPE_CHECKING

from cookstove_gui.advice import JUST_READ, Subject, advise, waits_for_cold
from cookstove_gui.cooking.supper.alarms import Alarm, AlarmKind, without_doubles
from cookstove_gui.cooking.supper.dishes import Heat
from cookstove_gui.cooking.supper.followed import called_as_planned, step_of
from cookstove_gui.cooking.supper.heats import planned_for, task_for
from cookstove_gui.cooking.supper.left import is_let_go
from cookstove_gui.cooking.supper.moments import Moment, MomentKind, dish_of, moments, part_of_step
from cookstove_gui.cooking.supper.plan import FireStep, Plan, PlannedStep
from cookstove_gui.desk.alarms.needs import Need, awaits_heat, needs
from cookstove_gui.forecast.futures.arrival import arrival_of, leaving_a_heat, leaving_of
from cookstove_gui.stove.entries import Kind

if TYPE_CHECKING:
    from cookstove_gui.cooking.baking.under_way import UnderWay
    from cookstove_gui.situation import Standing
    from cookstove_gui.stove.entries import HeatBand

LEAVING_LEAD = timedelta(minutes=10)  # before the oven leaves its heat, while wood or air still help; judgement

_KINDS = {
    MomentKind.BEGIN: AlarmKind.STEP,
    MomentKind.PUT_IN: AlarmKind.PUT_IN,
    MomentKind.PUT_ON: AlarmKind.PUT_IN,
    MomentKind.TURN: AlarmKind.TURN,
    MomentKind.TAKE_OUT: AlarmKind.TAKE_OUT,
    MomentKind.TAKE_OFF: AlarmKind.TAKE_OUT,
    MomentKind.FIRE: AlarmKind.STEP,
}
_IN_OVEN = (MomentKind.TURN, MomentKind.TAKE_OUT)


def alarms_of(standing: Standing | None, plan: Plan | None) -> tuple[Alarm, ...]:
    """Everything that calls for the cook, past and to come, in order of time."""
    found = list(_of_standing(standing, plan)) if standing is not None else []
    bakes = standing.bakes if standing is not None else ()
    if plan is not None:
        found += _of_plan(plan, bakes)
    return without_doubles(found)


def _of_standing(standing: Standing, plan: Plan | None) -> Iterator[Alarm]:
    for one in standing.bakes:
        yield from _of_bake(one if plan is None else called_as_planned(one, plan))
    needed, let_go = needs(standing, plan), is_let_go(standing.rows, plan)
    if needed or not let_go:
        yield from _of_reading(standing)
    if standing.first_fires.next is not None:
        return
    advice = advise(standing, plan)
    wood = advice.by if advice.subject is Subject.WOOD_DUE else advice.wood_by
    fed = any(row.kind is Kind.WOOD for row in standing.rows)  # who tells of no load is not called for the next
    if wood is not None and fed and not let_go:
        yield Alarm(key="reload", kind=AlarmKind.RELOAD, at=wood.at)
    if not standing.bakes and awaits_heat(standing.band, plan):
        yield from _of_band(standing)
    yield from _of_leaving(standing, needed)


def _of_reading(standing: Standing) -> Iterator[Alarm]:
    wanted = standing.course.next_reading
    readings = [row.at for row in standing.rows if row.kind is Kind.READING]
    if wanted is not None and readings and not waits_for_cold(standing):  # then the cooktop is read once, when cold
        at = standing.course.asked_at + timedelta(minutes=wanted.in_min)
        walked = readings[-1] + JUST_READ  # until then the walk is still going on
        yield Alarm(key="reading", kind=AlarmKind.NEXT_READING, at=max(at, walked), about=wanted.spot)


def _of_bake(one: UnderWay) -> Iterator[Alarm]:
    key, name = f"bake/{one.inside.number}", one.inside.name
    if one.turn_at is not None and (one.likely is None or one.turn_at < one.likely):
        yield Alarm(key=f"{key}/turn", kind=AlarmKind.TURN, at=one.turn_at, about=name)
    if one.inside.due_at is not None:
        key_of_look = f"{key}/look/{one.inside.due_at.isoformat()}"
        yield Alarm(key=key_of_look, kind=AlarmKind.LOOK_AT, at=one.inside.due_at, about=name)
    if one.likely is not None:
        yield Alarm(key=f"{key}/out", kind=AlarmKind.TAKE_OUT, at=one.likely, about=name)


def _of_band(standing: Standing) -> Iterator[Alarm]:
    """The oven comes to the heat wanted, until it is read there."""
    oven, band = standing.outlook.oven.p50, standing.band
    arrival = arrival_of(standing.outlook)
    is_there = oven is not None and band.holds(oven)
    at = _came_into_band(standing) if is_there else arrival.likely if arrival else None
    if at is not None and not _was_read_since(standing, at):
        yield Alarm(key=f"heat/{band.name}", kind=AlarmKind.BAND_REACHED, at=at, about=band.name)


def _of_leaving(standing: Standing, needed: Iterable[Need]) -> Iterator[Alarm]:
    """The oven leaves a heat while something needs it: in good time before, once for each heat."""
    oven = standing.outlook.oven.p50
    found: dict[str, datetime] = {}
    for one in needed:
        if oven is None or not one.heat.holds(oven):
            continue
        leaves = _leaving(standing, one.heat)
        if leaves is not None and one.begins <= leaves and (one.ends is None or leaves < one.ends):
            found[one.heat.name] = leaves
    for name, leaves in found.items():
        yield Alarm(key=f"leaving/{name}", kind=AlarmKind.LEAVING_BAND, at=leaves - LEAVING_LEAD, about=name)


def _leaving(standing: Standing, heat: HeatBand) -> datetime | None:
    if heat == standing.band:
        return leaving_of(standing.outlook)
    return leaving_a_heat(standing.projection, standing.stove, heat)


def _came_into_band(standing: Standing) -> datetime:
    """Since when the oven has been in the band without leaving it."""
    came = standing.now
    for at, heat in reversed(tuple(zip(standing.trace.at, standing.trace.p50, strict=True))):
        if not standing.band.holds(float(heat)):
            break
        came = min(came, at)
    return came


def _was_read_since(standing: Standing, at: datetime) -> bool:
    """Whether the oven was read then or later: whoever read it knows its heat and need not be called."""
    readings = (row for row in standing.rows if row.kind is Kind.READING)
    return any(row.at >= at and row.spot == standing.stove.oven_spot for row in readings)


def _of_plan(plan: Plan, bakes: tuple[UnderWay, ...]) -> Iterator[Alarm]:
    followed = {step.key for one in bakes if (step := step_of(one, plan)) is not None}
    for moment in moments(plan):
        dish, step = dish_of(plan, moment.step), moment.step
        # What is in the oven by the log is followed by its own heat there, which knows better than the plan.
        if moment.kind in _IN_OVEN and step.key in followed:
            continue
        yield Alarm(
            key=key_of(moment),
            kind=kind_of(step, moment.kind),
            at=moment.at,
            about=dish.name if dish else "",
            what=step.what,
            spot=step.spot if moment.kind in (MomentKind.PUT_ON, MomentKind.TAKE_OFF) else "",
            splits=step.splits,
            opening=step.opening,
            heat=_heat_to_go_in(plan, moment),
            is_planned=True,
        )


def _heat_to_go_in(plan: Plan, moment: Moment) -> float | None:
    part = part_of_step(plan, moment.step)
    return planned_for(task_for(part)).low if moment.kind is MomentKind.PUT_IN and isinstance(part, Heat) else None


def kind_of(step: PlannedStep, kind: MomentKind) -> AlarmKind:
    """What the alarm at a planned moment calls for."""
    is_wood = kind is MomentKind.FIRE and step.what == FireStep.WOOD
    return AlarmKind.RELOAD if is_wood else _KINDS[kind]


def key_of(moment: Moment) -> str:
    """The key of a planned moment's alarm."""
    return planned_key(moment.step.key, moment.kind)


def planned_key(step: str, kind: MomentKind) -> str:
    """The key of the alarm at a planned step, by the step's key."""
    return f"plan/{step}/{kind}"
