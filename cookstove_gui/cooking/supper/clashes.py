"""What does not fit in a plan, with the least change that would make it fit."""

from collections.abc import Sequence
from dataclasses import replace
from datetime import timedelta

import numpy as np

from cookstove_gui.cooking.supper.chains import Problem
from cookstove_gui.cooking.supper.jobs import SLOT_MIN, DishAhead, Grid
from cookstove_gui.cooking.supper.marks import Supper
from cookstove_gui.cooking.supper.plan import LATE_MIN, Clash, PlannedStep
from cookstove_gui.cooking.supper.solver import Solution, solve

NO_HEAT = 0.3  # chance of a heat below which it is called missing; judgement


def clashes_of(
    supper: Supper,
    ahead: Sequence[DishAhead],
    problem: Problem,
    solution: Solution,
    grid: Grid,
    steps: Sequence[PlannedStep],
) -> tuple[Clash, ...]:
    """The dishes that are late or find no heat. For one that others keep from its time: who would be late instead."""
    left = [one for one in ahead if one.job is not None]
    late = _lateness(supper, left, solution, grid)
    found = []
    for place, one in enumerate(left):
        cold = _coldest(one.dish.key, steps)
        if late[place] > LATE_MIN or cold:
            instead, minutes = ("", 0.0) if late[place] <= LATE_MIN else _instead(supper, left, problem, grid, place)
            late_min = max(late[place], 0.0) if late[place] > LATE_MIN else 0.0
            found.append(
                Clash(dish=one.dish.key, late_min=late_min, instead=instead, instead_min=minutes, no_heat=cold)
            )  # fmt: skip
    return tuple(found)


def _coldest(dish: str, steps: Sequence[PlannedStep]) -> str:
    """The step of a dish that finds its heat least often, where that is hardly ever; empty for none."""
    heats = [(step.chance, step.key) for step in steps if step.dish == dish and step.chance is not None]
    chance, key = min(heats, default=(1.0, ""))
    return key if chance < NO_HEAT else ""


def _lateness(supper: Supper, left: Sequence[DishAhead], solution: Solution, grid: Grid) -> list[float]:
    """Minutes after its time at which each dish is ready."""
    return [
        SLOT_MIN * chain.end - grid.minutes(supper.table_at + timedelta(minutes=one.dish.after_table))
        for one, chain in zip(left, solution.chains, strict=True)
    ]


def _instead(supper: Supper, left: Sequence[DishAhead], problem: Problem, grid: Grid, place: int) -> tuple[str, float]:
    """Which other dish would be late if this one must be in time, and by how long; empty where that cannot be."""
    job = problem.jobs[place]
    due = int(grid.minutes(supper.table_at + timedelta(minutes=left[place].dish.after_table)) // SLOT_MIN)
    ready = np.where(np.arange(problem.slots + 1) > due, np.inf, job.ready)
    jobs = (*problem.jobs[:place], replace(job, ready=ready), *problem.jobs[place + 1 :])
    other = solve(replace(problem, jobs=jobs))
    if other is None:
        return "", 0.0
    late = _lateness(supper, left, other, grid)
    worst = int(np.argmax(late))
    return (left[worst].dish.key, late[worst]) if late[worst] > LATE_MIN else ("", 0.0)
