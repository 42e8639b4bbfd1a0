"""What a planned supper called for is done: marked in the plan, and logged where it was done to fire or oven.

The other way round too: what was typed of the oven on Cook is done in the plan, and what is undone there is not.
"""

from collections.abc import Iterator
from dataclasses import replace
from datetime import datetime, timedelta

from cookstove_gui.cooking.baking.catalogue import bakes
from cookstove_gui.cooking.baking.in_oven import in_oven
from cookstove_gui.cooking.fit.tasks import Place
from cookstove_gui.cooking.supper.dishes import Heat
from cookstove_gui.cooking.supper.marks import Mark
from cookstove_gui.cooking.supper.moments import Moment, MomentKind, dish_of, part_of_step
from cookstove_gui.cooking.supper.plan import FireStep, Plan, PlannedStep
from cookstove_gui.desk.desk import Desk
from cookstove_gui.phrases.plan.fire_steps import splits_words
from cookstove_gui.stove.entries import Entry, Kind
from cookstove_gui.units import tidy

_OVEN = {MomentKind.PUT_IN: Kind.OVEN_IN, MomentKind.TURN: Kind.TURNED, MomentKind.TAKE_OUT: Kind.OVEN_OUT}
_TOLD = frozenset(_OVEN.values())
_SAME = timedelta(seconds=1)


def do_moment(desk: Desk, moment: Moment) -> None:
    """Log and mark it; the oven's rows only while a session goes on, since they are a fire's."""
    plan = desk.supper.plan
    if moment.kind is MomentKind.FIRE:
        _do_fire(desk, moment)
        return
    desk.supper.mark(moment)
    kind = _OVEN.get(moment.kind)
    if kind is None or plan is None or not (desk.is_live and desk.entries):
        return
    name = name_in_oven(plan, moment.step)
    inside = {one.name.casefold() for one in in_oven(desk.entries)}
    if (name.casefold() in inside) is (kind is not Kind.OVEN_IN):
        desk.do(kind, note=name)


def follow_log(desk: Desk) -> None:
    """What the latest row tells of the oven marks the step of the plan that it did; what is void is not done."""
    if not (desk.is_live and desk.rows) or desk.supper.plan is None:
        return
    by_number, in_force = {str(one.number): one for one in desk.rows}, {one.number for one in desk.entries}
    for one in desk.rows:
        if one.kind in _TOLD and one.number not in in_force:
            _unmark(desk, one)
    row = desk.rows[-1]
    while row.kind is Kind.VOID and row.value in by_number:
        row = by_number[row.value]
    if row.kind in _TOLD and row.number in in_force:
        _mark(desk, row)


def _mark(desk: Desk, row: Entry) -> None:
    supper, plan = desk.supper.supper, desk.supper.plan
    if supper is None or plan is None:
        return
    marks = [supper.mark(step.key) for step in _steps_in_oven(plan, row.note)]
    if any(_is_of(one, row) for one in marks):
        return  # the key of the plan logged it
    is_in = row.kind is not Kind.OVEN_IN
    found = next((one for one in marks if one.ended is None and (one.began is not None) is is_in), None)
    if found is not None:
        desk.supper.set_mark(_marked(found, row.kind, row.at))


def _unmark(desk: Desk, row: Entry) -> None:
    for one in desk.supper.supper.marks if desk.supper.supper is not None else ():
        if _is_of(one, row):
            desk.supper.set_mark(_marked(one, row.kind, None))


def _is_of(mark: Mark, row: Entry) -> bool:
    """Whether a mark says what a row says."""
    at = {Kind.OVEN_IN: mark.began, Kind.TURNED: mark.turned, Kind.OVEN_OUT: mark.ended}[row.kind]
    return at is not None and abs(at - row.at) <= _SAME


def _marked(mark: Mark, kind: Kind, at: datetime | None) -> Mark:
    match kind:
        case Kind.OVEN_IN:
            return replace(mark, began=at)
        case Kind.TURNED:
            return replace(mark, turned=at)
        case _:
            return replace(mark, ended=at)


def _steps_in_oven(plan: Plan, name: str) -> Iterator[PlannedStep]:
    """The plan's steps in the oven that a name in the log may mean; a row without one means what is in it."""
    for step in plan.steps:
        part, dish = part_of_step(plan, step), dish_of(plan, step)
        if isinstance(part, Heat) and part.place is Place.OVEN and dish is not None:
            names = {dish.name.casefold(), name_in_oven(plan, step).casefold()}
            if not name or name.casefold() in names:
                yield step


def name_in_oven(plan: Plan, step: PlannedStep) -> str:
    """What a step's food is called in the log: by its bake, so that its core is followed, else by its dish."""
    part, dish = part_of_step(plan, step), dish_of(plan, step)
    bake = next((one for one in bakes() if isinstance(part, Heat) and one.key == part.bake), None)
    return bake.name if bake is not None else dish.name if dish is not None else step.what


def _do_fire(desk: Desk, moment: Moment) -> None:
    step = moment.step
    match step.what:
        case FireStep.LIGHT:
            desk.do(Kind.LIT)
        case FireStep.WOOD:
            desk.do(Kind.WOOD, note=splits_words(step.splits) if step.splits else "")
        case FireStep.BYPASS_SHUT:
            desk.do(Kind.BYPASS, value="0")
        case FireStep.AIR:
            desk.do(Kind.AIR, value=tidy(step.opening or 0.0))
        case _:
            desk.supper.mark(moment)


def take_back(desk: Desk) -> None:
    """The latest thing marked as done is not; its row in the log is undone with it, if it is still the latest."""
    at = _latest_mark(desk)
    if at is None:
        return
    desk.supper.take_back()
    last = desk.entries[-1] if desk.is_live and desk.entries else None
    if last is not None and last.kind in _OVEN.values() and abs(last.at - at) <= _SAME:
        desk.undo()


def _latest_mark(desk: Desk) -> datetime | None:
    marks = desk.supper.supper.marks if desk.supper.supper is not None else ()
    return max((at for one in marks for at in (one.began, one.turned, one.ended) if at is not None), default=None)
