"""A planned supper on paper and in a calendar: the words of each step, with its clocks."""

from collections.abc import Callable
from dataclasses import dataclass
from datetime import datetime

from cookstove_gui.cooking.supper.moments import dish_of, moments
from cookstove_gui.cooking.supper.plan import Plan, PlannedStep, StepKind
from cookstove_gui.phrases.edge import Edge, full_date, local_day
from cookstove_gui.phrases.plan.supper import due_words, fits_words, source_words, step_words
from cookstove_gui.stove.stove import Stove
from cookstove_gui.units import clock_text

DECIDES = (
    "The times come from the fire as it was then. The fire, the look and the thermometer decide, not the clock; "
    "for the stove itself its manual does."
)


@dataclass(frozen=True, slots=True, kw_only=True)
class SheetLine:
    """One thing to do, with a box to tick."""

    clock: str
    what: str
    dish: str  # empty for the fire
    done: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class SupperSheet:
    """A page to print."""

    title: str
    day: str
    fits: str
    dishes: tuple[str, ...]
    lines: tuple[SheetLine, ...]
    source: str
    decides: str


@dataclass(frozen=True, slots=True, kw_only=True)
class CalendarStep:
    """One event of a calendar; `rings` are the instants at which it calls."""

    key: str
    title: str
    begin: datetime
    end: datetime
    rings: tuple[datetime, ...]
    is_free: bool = False  # nobody is needed meanwhile


def supper_sheet(plan: Plan, stove: Stove, edge: Edge, offset_at: Callable[[datetime], int]) -> SupperSheet:
    """What is still to be done and what is done already, in order of time.

    `offset_at` gives the local clock's offset [min] at an instant, so that clocks are right when they change overnight.
    """
    lines = [
        (moment.at, due_words(moment, plan, stove, edge), _dish(plan, moment.step), False) for moment in moments(plan)
    ]
    lines += [
        (step.begin, _first_upper(step_words(step, plan)), _dish(plan, step), True) for step in plan.steps if step.done
    ]
    return SupperSheet(
        title=f"Supper at {clock_text(plan.table_at, offset_at(plan.table_at))}",
        day=full_date(local_day(plan.table_at, offset_at(plan.table_at))),
        fits=" ".join(fits_words(plan)),
        dishes=tuple(f"{dish.name}{f', {dish.makes}' if dish.makes else ''}" for dish in plan.dishes),
        lines=tuple(
            SheetLine(clock=clock_text(at, offset_at(at)), what=what, dish=dish, done=done)
            for at, what, dish, done in sorted(lines, key=lambda line: line[0])
        ),
        source=source_words(plan),
        decides=DECIDES,
    )


def calendar_steps(plan: Plan, stove: Stove, edge: Edge) -> tuple[CalendarStep, ...]:
    """Every step that is still to come, in order of time, and the table's time last."""
    coming: dict[str, list[tuple[datetime, str]]] = {}
    for moment in moments(plan):
        coming.setdefault(moment.step.key, []).append((moment.at, due_words(moment, plan, stove, edge)))
    found = [
        CalendarStep(
            key=step.key,
            title=_first_upper(step_words(step, plan)) if step.kind is not StepKind.FIRE else rings[0][1].rstrip("."),
            begin=step.begin,
            end=step.end,
            rings=tuple(at for at, _ in rings),
            is_free=step.kind is StepKind.WAIT,
        )
        for step in plan.steps
        if not step.done and ((rings := coming.get(step.key, [])) or step.kind is StepKind.WAIT)
    ]
    table = CalendarStep(
        key="table", title="Supper on the table", begin=plan.table_at, end=plan.table_at, rings=(plan.table_at,)
    )
    return (*found, table)


def _dish(plan: Plan, step: PlannedStep) -> str:
    dish = dish_of(plan, step)
    return dish.name if dish else ""


def _first_upper(words: str) -> str:
    return f"{words[:1].upper()}{words[1:]}"
