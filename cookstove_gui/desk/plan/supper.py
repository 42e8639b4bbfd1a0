"""The meal that is planned: what is wanted, what was done, the plan in force; on disk first, then told.

What reads and writes the texts of dishes is imported where it is used: a window without a meal opens without it.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from datetime import datetime, timedelta
from typing import TYPE_CHECKING

from cookstove_gui.cooking.supper.marks import LET_GO, Mark, OwnTime, Supper, with_mark
from cookstove_gui.cooking.supper.moments import Moment, MomentKind, due, moments
from cookstove_gui.cooking.supper.plan import FireStep, Margin, Plan
from cookstove_gui.desk.changes import Changed
from cookstove_gui.errors import InputProblem

if TYPE_CHECKING:
    from cookstove_gui.cooking.supper.dishes import Dish
    from cookstove_gui.cooking.supper.kept import KeptSupper
    from cookstove_gui.logbook.logbook import Logbook

OVER_AFTER = timedelta(hours=6)  # after the table's time a meal is of the past; judgement
_A_DAY = timedelta(days=1)
_MOST_EARLIER = 10
_SOON_AFTER = timedelta(hours=2)


class SupperTable:
    """The meal of the stove in use, kept in the logbook at each change."""

    def __init__(
        self,
        logbook: Logbook,
        clock: Callable[[], datetime],
        stove: Callable[[], str],
        announce: Callable[[Changed], None],
    ) -> None:
        self._logbook, self._clock, self._stove, self._announce = logbook, clock, stove, announce
        self._read_for = ""
        self._number = 0
        self._kept: KeptSupper | None = None

    # --- what there is

    @property
    def kept(self) -> KeptSupper | None:
        """The meal and its plan; none where none is planned, or it was eaten hours ago."""
        name = self._stove()
        if name != self._read_for:
            self._take_up(name)
        if self._kept is not None and self._clock() - self._kept.supper.table_at > OVER_AFTER:
            return None
        return self._kept

    @property
    def supper(self) -> Supper | None:
        """The meal that is wanted."""
        return None if self.kept is None else self.kept.supper

    @property
    def plan(self) -> Plan | None:
        """The plan in force; none while it is still being made, or there is nothing to plan."""
        return None if self.kept is None else self.kept.plan

    @property
    def due(self) -> Moment | None:
        """The one thing of the plan to do now."""
        return None if self.plan is None else due(self.plan, self._clock())

    @property
    def next(self) -> Moment | None:
        """What comes next, due or not."""
        return None if self.plan is None else next(iter(moments(self.plan)), None)

    @property
    def earlier(self) -> tuple[tuple[int, KeptSupper], ...]:
        """Meals of before, the latest first, by their numbers."""
        from cookstove_gui.cooking.supper.kept import supper_from_text

        current = 0 if self.kept is None else self._number
        rows = [row for row in self._logbook.suppers.of(self._stove()) if row.number != current]
        read = [(row.number, supper_from_text(row.content)) for row in rows[:_MOST_EARLIER]]
        return tuple((number, kept) for number, kept in read if kept is not None and kept.supper.dishes)

    def read_again(self) -> bool:
        """Take up what another window wrote; whether anything differs."""
        before = self.kept
        self._read_for = ""
        return self.kept != before

    # --- dishes

    @property
    def dishes(self) -> tuple[Dish, ...]:
        """The cook's own dishes, then the usual ones that none of those stands for."""
        from cookstove_gui.cooking.supper.dish_text import meal_from_text, usual_dishes

        own: list[Dish] = []
        for key, content in self._logbook.suppers.dishes().items():
            try:
                own += meal_from_text(content, f"dish “{key}”").dishes
            except InputProblem:
                continue  # a text that this version cannot read stays in the logbook
        own.sort(key=lambda dish: dish.name.casefold())
        keys = {dish.key for dish in own}
        return (*own, *(dish for dish in usual_dishes() if dish.key not in keys))

    def is_own(self, key: str) -> bool:
        """Whether a dish is one of the cook's own, or changed by the cook."""
        return key in self._logbook.suppers.dishes()

    def keep_dish(self, dish: Dish) -> None:
        """Keep a dish as the cook's own; in a meal that is planned it is changed too."""
        from cookstove_gui.cooking.supper.dish_text import dishes_text

        self._logbook.suppers.keep_dish(dish.key, dishes_text((dish,)))
        supper = self.supper
        if supper is not None and any(one.key == dish.key for one in supper.dishes):
            self._want(replace(supper, dishes=tuple(dish if one.key == dish.key else one for one in supper.dishes)))
        self._announce(Changed(supper=True))

    def copy_dish(self, dish: Dish, name: str) -> Dish:
        """A copy under another name, kept."""
        from cookstove_gui.cooking.checked import key_for

        made = replace(dish, name=name, key=key_for(name, {one.key for one in self.dishes}))
        self.keep_dish(made)
        return made

    def leave_dish(self, key: str) -> None:
        """Forget a dish of the cook's own; a usual one of that key is as it was."""
        self._logbook.suppers.leave_dish(key)
        self._announce(Changed(supper=True))

    # --- the meal

    def set_table(self, at: datetime) -> None:
        """When to eat; begins a meal where none is planned."""
        supper = self.supper
        self._want(Supper(table_at=at, dishes=()) if supper is None else replace(supper, table_at=at))

    def choose_margin(self, margin: Margin) -> None:
        """How sure it should be."""
        if self.supper is not None:
            self._want(replace(self.supper, margin=margin))

    def add(self, dish: Dish) -> None:
        """One dish more; the same once more under a key of its own. Raises InputProblem before a time is set."""
        from cookstove_gui.cooking.checked import key_for

        supper = self.supper
        if supper is None:
            raise InputProblem("Type first when you want to eat.")
        keys = {one.key for one in supper.dishes}
        if dish.key in keys:
            dish = replace(dish, key=key_for(dish.key, keys))
        marks = tuple(one for one in supper.marks if one.step != LET_GO)  # the fire is wanted again
        self._want(replace(supper, dishes=(*supper.dishes, dish), marks=marks))

    def remove(self, key: str) -> None:
        """One dish less, with what was done of it."""
        supper = self.supper
        if supper is None:
            return
        self._want(
            replace(
                supper,
                dishes=tuple(one for one in supper.dishes if one.key != key),
                marks=tuple(one for one in supper.marks if not one.step.startswith(f"{key}/")),
                own=tuple(one for one in supper.own if not one.step.startswith(f"{key}/")),
            )
        )

    def have_again(self, number: int) -> None:
        """The dishes of an earlier meal at the same time of day, the next that comes."""
        found = next((kept for one, kept in self.earlier if one == number), None)
        if found is None:
            raise InputProblem("That meal is not in the logbook any more; choose another one.")
        at, now = found.supper.table_at, self._clock()
        while at <= now:
            at += _A_DAY
        self._number, self._kept = 0, None
        self._want(Supper(table_at=at, dishes=found.supper.dishes, margin=found.supper.margin))

    def clear(self) -> None:
        """Plan this meal no longer."""
        if self._number:
            self._logbook.suppers.remove(self._number)
        self._number, self._kept = 0, None
        self._announce(Changed(supper=True))

    # --- what was done

    def mark(self, moment: Moment) -> None:
        """What a moment of the plan calls for is done; of the fire only that it is let go, the rest is logged."""
        supper, now = self.supper, self._clock()
        if supper is None or (moment.kind is MomentKind.FIRE and moment.step.what != FireStep.LET_GO):
            return
        mark = supper.mark(moment.step.key)
        match moment.kind:
            case MomentKind.PUT_IN | MomentKind.PUT_ON:
                mark = replace(mark, began=now)
            case MomentKind.TURN:
                mark = replace(mark, turned=now)
            case _:
                mark = replace(mark, ended=now)
        self.set_mark(mark)

    def set_mark(self, mark: Mark) -> None:
        """What was done of a step; a time that the cook had set for it is past then."""
        supper = self.supper
        if supper is not None:
            own = tuple(one for one in supper.own if one.step != mark.step)
            self._want(replace(supper, marks=with_mark(supper.marks, mark), own=own))

    def take_back(self) -> None:
        """The latest thing marked as done is not."""
        supper = self.supper
        if supper is None or not supper.marks:
            return
        last = max(supper.marks, key=lambda one: max(at for at in (one.began, one.turned, one.ended) if at is not None))
        if last.ended is not None:
            changed = replace(last, ended=None)
        elif last.turned is not None:
            changed = replace(last, turned=None)
        else:
            changed = replace(last, began=None)
        self._want(replace(supper, marks=with_mark(supper.marks, changed)))

    def set_step(self, step: str, begin: datetime) -> None:
        """The cook wants a step to begin then, or as soon after as it can."""
        supper = self.supper
        if supper is not None:
            own = tuple(one for one in supper.own if one.step != step)
            self._want(replace(supper, own=(*own, OwnTime(step=step, begin=begin))))

    def free_step(self, step: str) -> None:
        """The plan chooses again when a step begins."""
        supper = self.supper
        if supper is not None and any(one.step == step for one in supper.own):
            self._want(replace(supper, own=tuple(one for one in supper.own if one.step != step)))

    # --- the plan

    def take(self, supper: Supper, plan: Plan) -> bool:
        """Take a plan that was made of a meal; of one that has changed since it is dropped, and False comes back."""
        kept = self.kept
        if kept is None or kept.supper != supper:
            return False
        before = kept.plan
        self._kept = replace(kept, plan=plan)
        if before is None or (before.steps, before.clashes) != (plan.steps, plan.clashes):
            self._write()
        self._announce(Changed(supper=True))
        return True

    def _want(self, supper: Supper) -> None:
        from cookstove_gui.cooking.supper.kept import KeptSupper

        if self.kept is None:
            self._number = 0  # a meal of the past stays as it was
        before = None if self.kept is None else self.kept.plan
        plan = before if supper.dishes else None
        self._kept = KeptSupper(supper=supper, plan=plan)
        self._write()
        self._announce(Changed(supper=True))

    def _write(self) -> None:
        from cookstove_gui.cooking.supper.kept import supper_text

        if self._kept is None:
            return
        at, content = self._kept.supper.table_at, supper_text(self._kept)
        if self._number:
            self._logbook.suppers.change(self._number, at, content)
        else:
            self._number = self._logbook.suppers.add(self._stove(), at, content)

    def _take_up(self, name: str) -> None:
        self._read_for, self._number, self._kept = name, 0, None
        latest = next(iter(self._logbook.suppers.of(name)), None)
        if latest is None or self._clock() - latest.table_at > OVER_AFTER:
            return
        from cookstove_gui.cooking.supper.kept import supper_from_text

        kept = supper_from_text(latest.content)
        if kept is not None:
            self._number, self._kept = latest.number, kept


def suppers_between(logbook: Logbook, stove: str, first: datetime, last: datetime) -> tuple[Supper, ...]:
    """The meals planned for a stove that were to be on the table during a session, or soon after it."""
    from cookstove_gui.cooking.supper.kept import supper_from_text

    rows = [row for row in logbook.suppers.of(stove) if first <= row.table_at <= last + _SOON_AFTER]
    kept = [supper_from_text(row.content) for row in rows]
    return tuple(one.supper for one in kept if one is not None and one.supper.dishes)
