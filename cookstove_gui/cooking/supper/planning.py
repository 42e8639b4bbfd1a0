"""A meal planned: dishes, fire and clock in, every step with its chance out.

The dishes are solved as if every heat were there, which gives the fire that they need; its futures give the chance of
each heat from each start on each spot; with these the dishes are solved again.
"""

from collections.abc import Mapping, Sequence
from dataclasses import replace
from datetime import datetime, timedelta

import numpy as np

from cookstove_gui.cooking.fit.tasks import Place
from cookstove_gui.cooking.supper.chains import Problem
from cookstove_gui.cooking.supper.dishes import HandsOn, Heat, Wait
from cookstove_gui.cooking.supper.fire import Fire, OnHeat, futures, kept_for, usual_lighting
from cookstove_gui.cooking.supper.heats import HeatFit, heat_fits, planned_for, task_for
from cookstove_gui.cooking.supper.helping import helping_step, next_in_oven
from cookstove_gui.cooking.supper.jobs import (
    GRACE_MIN,
    SLOT_MIN,
    Grid,
    in_kitchen,
    job_of,
    next_part,
)
from cookstove_gui.cooking.supper.marks import Supper, step_key, with_mark
from cookstove_gui.cooking.supper.plan import FireStep, Margin, Plan
from cookstove_gui.cooking.supper.reading_back import Solved, Table, chains_of, read_back
from cookstove_gui.cooking.supper.solver import solve
from cookstove_gui.cooking.supper.timing import timed
from cookstove_gui.errors import InputProblem
from cookstove_gui.forecast.answers import FloatArray, KeptFire, Projection
from cookstove_gui.stove.stove import SpotKind

_EARLIEST_LIGHT = 36  # slots before the first heat that the lighting is looked for in: three hours
# Of what an earlier lighting can bring at best, what each of its minutes must bring. Judgement: a rise spreads by a
# quarter of an hour, so that the usual one is in time in some 19 of 20 fires, the safe one in 49 of 50.
_WORTH_A_MINUTE = {Margin.USUAL: 0.008, Margin.SAFE: 0.003}
_HARDLY_LESS = 0.04  # of that: no reason to light at another time than planned; 640 futures know it no better
_MUCH_LATER = timedelta(minutes=20)  # by which the fire needed may differ from the one projected


def plan_meal(supper: Supper, fire: Fire, now: datetime, before: Plan | None = None) -> Plan:
    """The plan of a meal; `before` is the plan in force, whose steps stay where they are unless it matters.

    Raises
    ------
    InputProblem
        If no dish was given, or one of them cannot be fitted in at all.
    """
    if not supper.dishes:
        raise InputProblem("There is no dish to plan; add one first.")
    supper = replace(supper, dishes=tuple(in_kitchen(dish, fire.kitchen) for dish in supper.dishes))
    supper = _at_work(supper, before, now)
    table = _table(supper, fire, now, before)
    usable = before is not None and [dish.key for dish in before.dishes] == [dish.key for dish in supper.dishes]
    kept_parts = _on_heat_before(table, before) if usable and before is not None and fire.lit else None
    parts = _wished(table) if kept_parts is None else kept_parts
    lit_at = now if fire.lit else max(usual_lighting(fire, parts, supper.table_at), now)
    kinds = {SpotKind.TOP for heat in table.heats.values() if heat.place is Place.TOP}
    for again in (False, True):
        since = now if fire.lit else lit_at
        kept = kept_for(parts, since, fire.band)
        horizon = max(((part.end - since).total_seconds() / 60.0 for part in parts), default=0.0)
        ahead, firings = futures(fire, kept, horizon, kinds)
        fits = dict(zip(table.heats, heat_fits(ahead, fire.belief.stove, tuple(table.heats.values())), strict=True))
        if not fire.lit and parts:
            lit_at = _light(table, fits, ahead, parts, now)
        table = timed(table, ahead, now if fire.lit else lit_at)
        solved = _solve(table, _offered(table, fits, ahead, None if fire.lit else lit_at))
        placed = _on_heat(table, solved)
        needed = kept_for(placed, now if fire.lit else lit_at, fire.band)
        if again or before is not None or not _differs(kept, needed):
            break
        parts = placed
    helps = helping_step(fire, placed, needed, now)
    plan = read_back(table, solved, fits, ahead, lit_at, needed, firings, helps)
    return replace(plan, steers=fire.lit and next_in_oven(placed, now) is not None)


def _at_work(supper: Supper, before: Plan | None, now: datetime) -> Supper:
    """With work for the hands whose planned time has come under way until its minutes are over.

    Nobody says when work is begun; a cook says that it is done.
    """
    if before is None:
        return supper
    marks = supper.marks
    for dish in supper.dishes:
        number, began, _ = next_part(supper, dish)
        if began is not None and number + 1 < len(dish.parts) and isinstance(dish.parts[number], Wait):
            number, began = number + 1, None  # a wait is over when the work after it begins
        part = dish.parts[number] if number < len(dish.parts) else None
        step = next((one for one in before.of_dish(dish.key) if one.key == step_key(dish.key, number)), None)
        if step is None or began is not None or not isinstance(part, HandsOn):
            continue
        if step.begin <= now <= step.begin + timedelta(minutes=part.minutes + GRACE_MIN):
            marks = with_mark(marks, replace(supper.mark(step.key), began=step.begin))
    return replace(supper, marks=marks)


def _table(supper: Supper, fire: Fire, now: datetime, before: Plan | None) -> Table:
    heats = {}
    for dish in supper.dishes:
        first, _, _ = next_part(supper, dish)
        for number, part in enumerate(dish.parts):
            if number >= first and isinstance(part, Heat):
                heats[step_key(dish.key, number)] = part
    tops = tuple(spot.name for spot in fire.belief.stove.spots_of(SpotKind.TOP))
    return Table(
        supper=supper, fire=fire, now=now, before=before, grid=Grid.over(supper, now), heats=heats, tops=tops
    )  # fmt: skip


def _wished(table: Table) -> list[OnHeat]:
    """The parts on heat as if every heat were there, those that want the falling oven after those that are fed for."""
    offered = _all_good(table)
    parts = _on_heat(table, _solve(table, offered))
    falls = min((part.begin for part in parts if part.heat.falling), default=None)
    if falls is None:
        return parts
    slot = table.grid.nearest(falls)
    for key, heat in table.heats.items():
        if heat.place is Place.OVEN and not heat.falling:
            offered[key][1][:, max(slot - int(heat.minutes // SLOT_MIN), 0) :] = 0.0
    return _on_heat(table, _solve(table, offered))


def _all_good(table: Table) -> dict[str, tuple[tuple[str, ...], FloatArray]]:
    """As if every heat were there."""
    found = {}
    for key, heat in table.heats.items():
        names = ("oven",) if heat.place is Place.OVEN else table.tops
        found[key] = (names, np.ones((len(names), table.grid.slots)))
    return found


def _offered(
    table: Table, fits: Mapping[str, HeatFit | None], ahead: Projection, lit_at: datetime | None
) -> dict[str, tuple[tuple[str, ...], FloatArray]]:
    """The chances (spots, slots) of each part on heat; not a number before the fire is lit."""
    start = ahead.now if lit_at is None else lit_at
    offset = (table.grid.base - start).total_seconds() / 60.0
    minutes: FloatArray = SLOT_MIN * np.arange(table.grid.slots, dtype=np.float64) + offset
    found = {}
    for key, fit in fits.items():
        if fit is None:
            raise InputProblem(
                "A dish needs a place that this stove does not have; draw it on the page My stove, or leave the dish "
                "out."
            )
        chances = fit.chances(minutes)
        if lit_at is not None:
            chances = np.where(minutes < -1e-9, np.nan, chances)
        found[key] = (fit.spots, chances)
    return found


def _solve(table: Table, chances: Mapping[str, tuple[tuple[str, ...], FloatArray]]) -> Solved:
    resources = table.resources
    ahead = tuple(
        job_of(table.supper, dish, table.grid, chances, resources, table.lengths, table.ends, table.before)
        for dish in table.supper.dishes
    )
    jobs = tuple(one.job for one in ahead if one.job is not None)
    problem = Problem(slots=table.grid.slots, capacity=table.capacity, jobs=jobs)
    solution = solve(problem)
    if solution is None:
        raise InputProblem("These dishes do not fit together at any time; leave one out, or set a later table time.")
    return Solved(ahead=ahead, problem=problem, solution=solution)


def _on_heat(table: Table, solved: Solved) -> list[OnHeat]:
    """The parts on heat as they were placed."""
    found = []
    for one, chain in chains_of(solved):
        for offset, placed in enumerate(chain.pieces if chain is not None else ()):
            part = one.dish.parts[one.first + offset]
            if isinstance(part, Heat) and one.job is not None:
                begin, pieces = table.grid.at(placed.begin), one.job.pieces
                end = begin + timedelta(minutes=SLOT_MIN * pieces[offset].holds)
                later = SLOT_MIN * sum(piece.usual for piece in pieces[offset + 1 :])
                by = table.supper.table_at + timedelta(minutes=one.dish.after_table - later)
                left = table.left.get(step_key(one.dish.key, one.first + offset), part.minutes)
                began = next_part(table.supper, one.dish)[1] if one.running and offset == 0 else None
                found.append(OnHeat(heat=part, begin=begin, end=end, began=began, left=left, by=by))
    return found


def _on_heat_before(table: Table, before: Plan) -> list[OnHeat] | None:
    """The same as the plan before has them; None where it lacks one."""
    known = {step.key: step for step in before.steps}
    if any(key not in known for key in table.heats):
        return None
    return [OnHeat(heat=heat, begin=known[key].begin, end=known[key].end) for key, heat in table.heats.items()]


def _differs(one: KeptFire | None, other: KeptFire | None) -> bool:
    """Whether two fires are kept to other heats, or one much longer than the other."""
    if one is None or other is None:
        return one is not other
    if [band for _, band in one.heats] != [band for _, band in other.heats]:
        return True
    much = _MUCH_LATER.total_seconds() / 60.0
    return any(abs(a - b) > much for (a, _), (b, _) in zip(one.heats, other.heats, strict=True))


def _light(
    table: Table, fits: Mapping[str, HeatFit | None], ahead: Projection, parts: Sequence[OnHeat], now: datetime
) -> datetime:
    """The lighting from which the parts find their heat most often, each minute earlier being worth some of it.

    Taken over all parts: one that hardly finds its heat whenever the fire is lit does not call for a longer fire. Of
    the oven it is asked whether it has come to the heat by then: to hold it is the cook's part, once there is a fire.
    """
    first = min(part.begin for part in parts)
    back = min(_EARLIEST_LIGHT, int((first - now).total_seconds() // (60.0 * SLOT_MIN)))
    if back < 0:
        return now
    lead = SLOT_MIN * np.arange(back + 1, dtype=np.float64)
    oven = np.maximum.accumulate(ahead.of(table.fire.belief.stove.oven_spot), axis=1)
    found = []
    for part, fit in zip(parts, fits.values(), strict=True):
        starts = lead + (part.begin - first).total_seconds() / 60.0
        if part.heat.place is Place.OVEN and not part.heat.falling:
            there = (oven >= planned_for(task_for(part.heat)).low).mean(axis=0)
            found.append(np.interp(starts, ahead.minutes, there))
        elif fit is not None:
            found.append(fit.chances(starts).max(axis=0))
    share = np.mean(found, axis=0) if found else np.ones(len(lead))
    gain = share - share[0]  # by an earlier lighting; the later parts find their heat whenever it is
    reach = gain / max(float(gain.max()), 1e-9)
    worth = np.where(reach >= 0.5, reach - _WORTH_A_MINUTE[table.supper.margin] * lead, -np.inf)
    steps = table.before.steps if table.before is not None else ()
    before = next((one.begin for one in steps if one.what == FireStep.LIGHT), None)
    if before is not None and before >= now:
        planned = round((first - before).total_seconds() / 60.0 / SLOT_MIN)
        if 0 <= planned < len(worth) and worth[planned] >= worth.max() - _HARDLY_LESS:
            return before
    return first - timedelta(minutes=float(lead[np.argmax(worth)]))
