"""A solved meal read back as steps on the clock, with the chance of each."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field, replace
from datetime import datetime, timedelta
from functools import partial

import numpy as np
from numpy.typing import NDArray

from cookstove_gui.cooking.supper.chains import Chain, Problem
from cookstove_gui.cooking.supper.clashes import NO_HEAT, clashes_of
from cookstove_gui.cooking.supper.dishes import HandsOn, Heat, Part, Wait
from cookstove_gui.cooking.supper.fire import Fire, fire_steps
from cookstove_gui.cooking.supper.heats import HeatFit
from cookstove_gui.cooking.supper.in_time import ON_TIME_MIN, SUREST, is_in_time
from cookstove_gui.cooking.supper.jobs import OVEN_PLACES, SLOT_MIN, DishAhead, Grid, next_part
from cookstove_gui.cooking.supper.marks import LET_GO, Supper, step_key
from cookstove_gui.cooking.supper.moves import moves_between
from cookstove_gui.cooking.supper.pace import is_paced
from cookstove_gui.cooking.supper.plan import FireStep, OvenAhead, Plan, PlannedStep, StepKind
from cookstove_gui.cooking.supper.solver import Solution
from cookstove_gui.forecast.answers import Action, FloatArray, KeptFire, Projection

_MOST_SLACK_MIN = 30.0  # that a part on heat may begin later within a plan that still holds


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Table:
    """Everything that one plan is made from."""

    supper: Supper
    fire: Fire
    now: datetime
    before: Plan | None
    grid: Grid
    heats: dict[str, Heat]  # step to its part, of those that are not over
    tops: tuple[str, ...]
    lengths: dict[str, FloatArray] = field(default_factory=dict)  # (slots,) min that a bake takes from each slot on
    ends: dict[str, datetime] = field(default_factory=dict)  # when what is on heat is expected to be done
    left: dict[str, float] = field(default_factory=dict)  # min at the middle of its heat that it wants yet

    @property
    def resources(self) -> dict[str, int]:
        """The number of each resource: hands, the oven, each spot of the cooktop."""
        return {"hands": 0, "oven": 1} | {name: 2 + place for place, name in enumerate(self.tops)}

    @property
    def capacity(self) -> tuple[int, ...]:
        """How much of each there is."""
        return (1, OVEN_PLACES, *(1 for _ in self.tops))


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Solved:
    """The dishes as they were placed."""

    ahead: tuple[DishAhead, ...]
    problem: Problem
    solution: Solution


def chains_of(solved: Solved) -> list[tuple[DishAhead, Chain | None]]:
    """Each dish with its chain; none where nothing is left of it."""
    left = iter(solved.solution.chains)
    return [(one, next(left) if one.job is not None else None) for one in solved.ahead]


def read_back(
    table: Table,
    solved: Solved,
    fits: Mapping[str, HeatFit | None],
    ahead: Projection,
    lit_at: datetime,
    needed: KeptFire | None,
    firings: int,
    helps: Action,
) -> Plan:
    """The plan; `fits` are of the steps on heat, `needed` is the fire they are fed for, `helps` what it wants now."""
    supper, fire = table.supper, table.fire
    start = ahead.now if fire.lit else lit_at
    steps: list[PlannedStep] = []
    slacks: dict[str, float] = {}
    for one, chain in chains_of(solved):
        steps += _done_steps(supper, one)
        if chain is not None and one.job is not None:
            for offset in range(len(chain.pieces)):
                step = _step(table, one, chain, offset)
                fit = fits.get(step.key)
                if fit is not None:
                    step = replace(step, spot=step.spot if step.spot in fit.spots else fit.spots[0])
                    slacks[step.key] = _slack(table, one, chain, offset)
                steps.append(step)
    steps, holds = _with_chances(table, steps, slacks, fits, ahead, start)
    let_go = None if needed is None else start + timedelta(minutes=needed.until)
    steps += _fire_steps(table, fire_steps(fire, lit_at, let_go, table.now, helps))
    steps.sort(key=lambda step: (step.begin, step.end, step.key))
    plan = Plan(
        table_at=supper.table_at,
        made_at=table.now,
        margin=supper.margin,
        dishes=supper.dishes,
        steps=tuple(steps),
        chance=min(float(np.all(holds, axis=0).mean()), SUREST) if holds else None,
        clashes=clashes_of(supper, solved.ahead, solved.problem, solved.solution, table.grid, steps),
        proven=solved.solution.proven,
        lit=fire.lit,
        oven=_oven_ahead(ahead, fire.belief.stove.oven_spot, start),
        firings=firings,
    )
    return replace(plan, moved=moves_between(table.before, plan, supper))


def _with_chances(
    table: Table,
    steps: Sequence[PlannedStep],
    slacks: Mapping[str, float],
    fits: Mapping[str, HeatFit | None],
    ahead: Projection,
    start: datetime,
) -> tuple[list[PlannedStep], list[NDArray[np.bool_]]]:
    """The steps with the chance of each that has not begun on heat; and which futures (futures,) have its dish in time.

    `slacks` are the minutes by which each may begin later; negative by how much its dish is planned late. A bake is
    done as planned, its place even enough; anything else finds its heat for all of its minutes: a pot on its spot, or
    on others that nothing stands on then, or between them.
    """
    oven, heats = ahead.of(table.fire.belief.stove.oven_spot), [step for step in steps if step.kind is StepKind.HEAT]
    may_wait = {dish.key: dish.may_wait for dish in table.supper.dishes}
    told: list[PlannedStep] = []
    holds: list[NDArray[np.bool_]] = []
    for step in steps:
        fit = fits.get(step.key)
        if fit is None or step.begun or step.key not in slacks:
            told.append(step)
            continue
        slack, heat = slacks[step.key], table.heats[step.key]
        at, end = ((moment - start).total_seconds() / 60.0 for moment in (step.begin, step.end))
        spots = _open_to(step, heats, fit)
        row = fit.rows(np.array([at]))[0]
        even = np.asarray(fit.even[row, spots].any(axis=0))
        if is_paced(heat):
            least = end - may_wait[step.dish]
            baked = partial(is_in_time, ahead.minutes, oven, heat, least=least, number=len(holds))
            right = baked(begin=at, most=end + max(slack, 0.0))
            there = right & even
            # What is planned late goes in as soon as its oven is there, if that is sooner.
            in_time = there if slack >= 0.0 else even & baked(begin=max(at + slack, 0.0), most=end + slack)
        else:
            first, last = fit.rows(at + np.array([min(slack, 0.0), min(slack, _MOST_SLACK_MIN) + ON_TIME_MIN]))
            right, there = (serves(slice(row, row + 1), spots)[0] for serves in (fit.right, fit.served))
            in_time = np.asarray(fit.served(slice(first, last + 1), spots).any(axis=0))
        chance = min(float(there.mean()), SUREST)
        fails_by = ""
        if chance < NO_HEAT:
            warm, cool = (np.asarray(one[row, spots].any(axis=0)) for one in (fit.warm, fit.cool))
            if right.mean() >= NO_HEAT > even.mean():
                fails_by = "uneven"
            elif warm.mean() >= NO_HEAT > cool.mean():
                fails_by = "hot"
        told.append(replace(step, chance=chance, fails_by=fails_by))
        holds.append(in_time)
    return told, holds


def _open_to(step: PlannedStep, heats: Sequence[PlannedStep], fit: HeatFit) -> list[int]:
    """The spots of a fit that a step may be done on: its own, and those that no other step holds meanwhile."""
    held = {one.spot for one in heats if one is not step and one.begin < step.end and step.begin < one.end}
    return [place for place, spot in enumerate(fit.spots) if spot == step.spot or spot not in held]


def _fire_steps(table: Table, steps: Sequence[PlannedStep]) -> list[PlannedStep]:
    """The fire's steps; once the cook said that it is let go, nothing more is put on."""
    let_go = table.supper.mark(LET_GO).ended
    if let_go is None:
        return list(steps)
    return [replace(step, begin=let_go, end=let_go, done=True) for step in steps if step.what == FireStep.LET_GO]


def _oven_ahead(ahead: Projection, oven: str, since: datetime) -> OvenAhead:
    p10, p25, p50, p75, p90 = np.quantile(ahead.of(oven), (0.1, 0.25, 0.5, 0.75, 0.9), axis=0)
    return OvenAhead(since=since, minutes=ahead.minutes, p10=p10, p25=p25, p50=p50, p75=p75, p90=p90)


def _step(table: Table, one: DishAhead, chain: Chain, offset: int) -> PlannedStep:
    number = one.first + offset
    part, key, placed = one.dish.parts[number], step_key(one.dish.key, number), chain.pieces[offset]
    assert one.job is not None
    piece = one.job.pieces[offset]
    running = offset == 0 and one.running
    began = next_part(table.supper, one.dish)[1] if running else None
    begin = began if began is not None else table.grid.at(placed.begin)
    following = chain.pieces[offset + 1].begin if offset + 1 < len(chain.pieces) else chain.end
    if isinstance(part, Wait):
        end = table.grid.at(following)
    elif running and isinstance(part, Heat):
        end = max(table.ends.get(key, table.grid.at(piece.holds)), table.now)
    else:
        takes = table.lengths.get(key)
        end = begin + timedelta(minutes=part.minutes if takes is None else round(float(takes[placed.begin])))
    is_turned = isinstance(part, Heat) and part.turn and table.supper.mark(key).turned is None
    return PlannedStep(
        key=key,
        kind=_kind(part),
        what=part.what,
        dish=one.dish.key,
        begin=begin,
        end=end,
        turn_at=begin + 0.5 * (end - begin) if is_turned else None,
        spot=piece.names[placed.option] if piece.names else "",
        begun=running,
        is_own=any(own.step == key for own in table.supper.own),
    )


def _kind(part: Part) -> StepKind:
    if isinstance(part, HandsOn):
        return StepKind.HANDS
    return StepKind.WAIT if isinstance(part, Wait) else StepKind.HEAT


def _done_steps(supper: Supper, one: DishAhead) -> list[PlannedStep]:
    """What is over of a dish, at the times that the cook told."""
    steps: list[PlannedStep] = []
    later: datetime | None = None
    for number in range(one.first - 1, -1, -1):
        part, key = one.dish.parts[number], step_key(one.dish.key, number)
        mark = supper.mark(key)
        end = mark.ended or later
        if end is None:
            following = supper.mark(step_key(one.dish.key, number + 1))
            end = following.began or supper.table_at
        begin = min(mark.began or end - timedelta(minutes=part.minutes), end)
        steps.append(
            PlannedStep(key=key, kind=_kind(part), what=part.what, dish=one.dish.key, begin=begin, end=end, done=True)
        )
        later = begin
    return steps[::-1]


def _slack(table: Table, one: DishAhead, chain: Chain, offset: int) -> float:
    """Minutes by which a piece may begin later with the dish still in time; negative where it is planned late."""
    assert one.job is not None
    begins = [placed.begin for placed in chain.pieces] + [chain.end]
    shorter = sum(
        begins[place + 1] - begins[place] - one.job.pieces[place].least for place in range(offset, len(chain.pieces))
    )
    due = table.grid.minutes(table.supper.table_at + timedelta(minutes=one.dish.after_table))
    return due - SLOT_MIN * chain.end + SLOT_MIN * max(shorter, 0)
