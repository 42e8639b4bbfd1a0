"""The dishes as chains of pieces on a grid of five minutes, with what was done of them left behind."""

from collections.abc import Mapping
from dataclasses import dataclass, replace
from datetime import datetime, timedelta
from math import ceil, floor

import numpy as np

from cookstove_gui.cooking.fit.tasks import Place
from cookstove_gui.cooking.supper.chains import Job, Option, Piece
from cookstove_gui.cooking.supper.dishes import Dish, HandsOn, Part, Wait
from cookstove_gui.cooking.supper.marks import Supper, step_key
from cookstove_gui.cooking.supper.plan import MARGINS, Plan, PlannedStep
from cookstove_gui.forecast.answers import FloatArray
from cookstove_gui.physics.rising import rising_time_factor

SLOT_MIN = 5.0  # min; plans are made in steps of the clock that a cook thinks in
OVEN_PLACES = 4  # two racks with room for two tins each; common practice, no source
_ALL_AT_ONCE = timedelta(hours=3)  # beyond the table's time to which a plan may run late

# Costs, in what a minute of lateness is worth; all judgement, no source.
_LATE = 1.0  # a minute after the table's time
_HOT_WAITS, _COLD_WAITS = 0.02, 0.002  # a minute ready before it, within what the dish tolerates
_TOO_LONG = 1.0  # a minute beyond that: as bad as late
_RISES, _RESTS, _KEEPS = 0.08, 0.02, 0.03  # a minute by which a dough, another wait or something prepared is stretched
_WRONG_HEAT, _BELOW_MARGIN = 8.0, 12.0  # all futures wrong; all of them below the cook's margin
_MOVED, _MOVED_MIN = 0.5, 0.02  # a step begun at another time than was planned, and each minute of that
_WORTH = 1.5  # by which another start on heat must be better, where the planned one falls below the margin
GRACE_MIN = 3.0  # a step may begin so late before the plan moves
_OFF_OWN = 3.0  # a minute from where the cook set a step
_NO_MATTER_MIN = 2.0  # by which a bake's length may be over a round number of slots
_OVERDUE_SLOTS = 12  # a wait that has run out may go on for so long


@dataclass(frozen=True, slots=True, kw_only=True)
class Grid:
    """Slots of the clock."""

    base: datetime  # a round five minutes
    slots: int

    @classmethod
    def over(cls, supper: Supper, now: datetime) -> "Grid":
        """From now, or from when the longest dish must begin at the latest, to well beyond the table."""
        longest = max((_longest(dish) for dish in supper.dishes), default=0.0)
        last = max((dish.after_table for dish in supper.dishes), default=0.0)
        early = min([supper.table_at - timedelta(minutes=longest + 60.0), *(own.begin for own in supper.own)])
        first = max(now - timedelta(minutes=GRACE_MIN), early)
        base = first - timedelta(minutes=first.minute % SLOT_MIN, seconds=first.second, microseconds=first.microsecond)
        if base < first:
            base += timedelta(minutes=SLOT_MIN)
        least = timedelta(minutes=max((dish.minutes for dish in supper.dishes), default=0.0))
        until = max(supper.table_at + timedelta(minutes=last), first + least) + _ALL_AT_ONCE
        return cls(base=base, slots=ceil((until - base).total_seconds() / 60.0 / SLOT_MIN))

    def at(self, slot: int) -> datetime:
        """The clock at a slot."""
        return self.base + timedelta(minutes=SLOT_MIN * slot)

    def minutes(self, moment: datetime) -> float:
        """Minutes from the base."""
        return (moment - self.base).total_seconds() / 60.0

    def nearest(self, moment: datetime) -> int:
        """The slot nearest to a moment."""
        return round(self.minutes(moment) / SLOT_MIN)


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class DishAhead:
    """What is still to be done of one dish."""

    dish: Dish
    first: int  # number of the part that comes next or goes on
    running: bool  # that part has begun
    job: Job | None  # none where nothing is left


def in_kitchen(dish: Dish, kitchen: float) -> Dish:
    """The dish with its rises as long as they are in a kitchen of this heat [K]."""
    return replace(dish, parts=tuple(_in_kitchen(part, kitchen) for part in dish.parts))


def _in_kitchen(part: Part, kitchen: float) -> Part:
    if not isinstance(part, Wait) or part.kitchen is None:
        return part
    factor = rising_time_factor(kitchen, part.kitchen)
    return replace(
        part, minutes=part.minutes * factor, shortest=part.shortest * factor, longest=part.longest * factor
    )  # fmt: skip


def _longest(dish: Dish) -> float:
    return sum(part.longest if isinstance(part, Wait) else part.minutes for part in dish.parts)


def next_part(supper: Supper, dish: Dish) -> tuple[int, datetime | None, datetime | None]:
    """The part that comes next or goes on, when it began, and when the one before it ended, as far as that is known."""
    first, ended = 0, None
    # The last part that anything was told of; those before it are over, whatever was told of them.
    for number in range(len(dish.parts) - 1, -1, -1):
        mark = supper.mark(step_key(dish.key, number))
        if mark.ended is not None:
            first, ended = number + 1, mark.ended
            break
        if mark.began is not None:
            return number, mark.began, None
    if first < len(dish.parts) and isinstance(dish.parts[first], Wait) and ended is not None:
        return first, ended, ended
    return first, None, ended


def job_of(
    supper: Supper,
    dish: Dish,
    grid: Grid,
    chances: Mapping[str, tuple[tuple[str, ...], FloatArray]],
    resources: Mapping[str, int],
    lengths: Mapping[str, FloatArray],
    ends: Mapping[str, datetime],
    before: Plan | None,
) -> DishAhead:
    """The rest of one dish as a job.

    `chances` are of each heat's step: its spots, and what they offer from each slot on (spots, slots); `resources` the
    numbers of hands, oven and spots; `lengths` (slots,) how long a step takes from each slot on, where that is not
    always the same; `ends` when a step that runs is expected to be over; `before` is the plan that nothing should be
    moved from without need.
    """
    first, began, _ = next_part(supper, dish)
    pieces = []
    for number in range(first, len(dish.parts)):
        part, key = dish.parts[number], step_key(dish.key, number)
        running = number == first and began is not None
        piece = _piece(part, key, grid, chances, resources, MARGINS[supper.margin])
        if running and began is not None:
            piece = _running(piece, part, began, grid, ends.get(key), _planned(before, key))
        else:
            piece = _steadied(_taking(piece, lengths.get(key)), key, grid, supper, before)
        pieces.append(piece)
    if not pieces:
        return DishAhead(dish=dish, first=first, running=False, job=None)
    due = floor(grid.minutes(supper.table_at + timedelta(minutes=dish.after_table)) / SLOT_MIN)
    job = Job(pieces=tuple(pieces), ready=_ready(dish, due, grid.slots))
    return DishAhead(dish=dish, first=first, running=began is not None, job=job)


def _slots(minutes: float) -> int:
    return max(ceil(minutes / SLOT_MIN - 1e-9), 0)


def _piece(
    part: Part,
    key: str,
    grid: Grid,
    chances: Mapping[str, tuple[tuple[str, ...], FloatArray]],
    resources: Mapping[str, int],
    margin: float,
) -> Piece:
    free = np.zeros(grid.slots)
    length = _slots(part.minutes)
    if isinstance(part, Wait):
        least, most = min(_slots(part.shortest), length), max(int(part.longest // SLOT_MIN), length)
        stretch = SLOT_MIN * (_RISES if part.kitchen is not None else _RESTS)
        nothing = (Option(resource=None, cost=free),)
        return Piece(options=nothing, holds=0, least=least, most=most, usual=length, stretch=stretch)
    if isinstance(part, HandsOn):
        most = length + int(part.keeps_min // SLOT_MIN)
        hands = (Option(resource=resources["hands"], cost=free),)
        return Piece(options=hands, holds=length, least=length, most=most, usual=length, stretch=SLOT_MIN * _KEEPS)
    names, offered = chances[key]
    options = tuple(
        Option(resource=resources["oven" if part.place is Place.OVEN else name], cost=_wrong(chance, margin))
        for name, chance in zip(names, offered, strict=True)
    )
    return Piece(
        options=options, holds=length, units=min(part.places, OVEN_PLACES) if part.place is Place.OVEN else 1,
        least=length, most=length, usual=length, names=names,
    )  # fmt: skip


def _taking(piece: Piece, lengths: FloatArray | None) -> Piece:
    """A piece whose length [min] hangs on the slot (slots,) in which it begins."""
    if lengths is None:
        return piece
    takes = np.maximum(np.ceil((lengths - _NO_MATTER_MIN) / SLOT_MIN).astype(np.intp), 1)
    return replace(piece, takes=takes, least=int(takes.min()), most=int(takes.max()))


def _wrong(chance: FloatArray, margin: float) -> FloatArray:
    """What it costs to begin with these chances (slots,); a chance that is not a number is no start at all."""
    cost = _WRONG_HEAT * (1.0 - chance) + _BELOW_MARGIN * np.maximum(margin - chance, 0.0)
    return np.where(np.isnan(chance), np.inf, cost)


def _running(
    piece: Piece, part: Part, began: datetime, grid: Grid, ends: datetime | None, planned: PlannedStep | None
) -> Piece:
    """A piece that has begun: it goes on from the first slot, where it is."""
    gone = -grid.minutes(began)
    spent = int(gone // SLOT_MIN)
    left = _slots(grid.minutes(ends)) if ends is not None else _slots(part.minutes - gone)
    cost = np.full(grid.slots, np.inf)
    cost[0] = 0.0
    stands = planned.spot if planned is not None and planned.spot in piece.names else ""
    options = tuple(
        replace(option, cost=cost)
        for name, option in zip(piece.names or ("",), piece.options, strict=True)
        if not stands or name == stands
    )
    names = (stands,) if stands else piece.names
    if isinstance(part, Wait):
        least = max(_slots(part.shortest - gone), 0)
        most = max(piece.most - spent, least + _OVERDUE_SLOTS)
        return replace(piece, options=options, names=names, least=least, most=most, usual=max(left, least))
    most = left + piece.most - piece.least
    return replace(piece, options=options, names=names, holds=left, least=left, most=most, usual=left)


def _planned(before: Plan | None, key: str) -> PlannedStep | None:
    return None if before is None else next((step for step in before.steps if step.key == key), None)


def _steadied(piece: Piece, key: str, grid: Grid, supper: Supper, before: Plan | None) -> Piece:
    """A piece that keeps to the cook's own time for it, or else to the plan before unless moving it matters.

    Where its heat is likely enough as planned, a better one elsewhere is no reason to move it.
    """
    slots = np.arange(grid.slots)
    own = next((one.begin for one in supper.own if one.step == key), None)
    planned = _planned(before, key)
    if own is not None:
        extra = _OFF_OWN * SLOT_MIN * np.abs(slots - grid.nearest(own))
        return replace(piece, options=tuple(replace(one, cost=one.cost + extra) for one in piece.options))
    if planned is None:
        return piece
    slot = grid.nearest(planned.begin)
    off = SLOT_MIN * np.abs(slots - slot)
    moved = np.where(off > 0, _MOVED + _MOVED_MIN * off, 0.0)
    enough = _wrong(np.array([MARGINS[supper.margin]]), MARGINS[supper.margin])[0]
    options = []
    for name, option in zip(piece.names or ("",) * len(piece.options), piece.options, strict=True):
        cost = option.cost + moved
        if name in ("", planned.spot) and 0 <= slot < grid.slots:
            cost[slot] = 0.0 if cost[slot] <= enough else max(cost[slot] - _WORTH, 0.0)
        options.append(replace(option, cost=cost))
    return replace(piece, options=tuple(options))


def _ready(dish: Dish, due: int, slots: int) -> FloatArray:
    """Cost (slots + 1,) of being ready in each slot."""
    early = SLOT_MIN * (due - np.arange(slots + 1))
    waits = _HOT_WAITS if dish.hot else _COLD_WAITS
    too_long = np.maximum(early - dish.may_wait, 0.0)
    return np.where(early >= 0.0, waits * early + _TOO_LONG * too_long, -_LATE * early)
