"""A supper as text to keep: what is wanted, what was done of it, and its latest plan."""

import json
from dataclasses import asdict, dataclass, fields, replace
from datetime import datetime
from typing import Any

from cookstove_gui.cooking.supper.dish_text import dishes_text, meal_from_text
from cookstove_gui.cooking.supper.marks import Mark, OwnTime, Supper
from cookstove_gui.cooking.supper.plan import Clash, Margin, Move, Plan, PlannedStep, StepKind
from cookstove_gui.errors import InputProblem

_TIMES = ("begin", "end", "turn_at", "began", "turned", "ended", "was", "now", "at")


@dataclass(frozen=True, slots=True, kw_only=True)
class KeptSupper:
    """A supper and the plan that is in force, once there is one."""

    supper: Supper
    plan: Plan | None = None


def supper_text(kept: KeptSupper) -> str:
    """JSON that `supper_from_text` reads back."""
    supper, plan = kept.supper, kept.plan
    table: dict[str, Any] = {
        "table_at": supper.table_at.isoformat(),
        "margin": str(supper.margin),
        "dishes": dishes_text(supper.dishes) if supper.dishes else "",
        "marks": [_row(mark) for mark in supper.marks],
        "own": [_row(own) for own in supper.own],
    }
    if plan is not None:
        table["plan"] = {
            "table_at": plan.table_at.isoformat(),
            "made_at": plan.made_at.isoformat(),
            "margin": str(plan.margin),
            "dishes": dishes_text(plan.dishes),
            "steps": [_row(step) for step in plan.steps],
            "clashes": [asdict(clash) for clash in plan.clashes],
            "moved": [_row(move) for move in plan.moved],
            "chance": plan.chance,
            "proven": plan.proven,
            "lit": plan.lit,
            "firings": plan.firings,
        }
    return json.dumps(table)


def supper_from_text(text: str) -> KeptSupper | None:
    """The supper of a text; None for one that cannot be read, and no plan where only that cannot."""
    try:
        table = json.loads(text)
        supper = Supper(
            table_at=datetime.fromisoformat(table["table_at"]),
            dishes=meal_from_text(table["dishes"], "the logbook").dishes if table["dishes"] else (),
            margin=Margin(table["margin"]),
            marks=tuple(Mark(**_timed(row)) for row in table["marks"]),
            own=tuple(OwnTime(**_timed(row)) for row in table["own"]),
        )
    except (ValueError, TypeError, KeyError, InputProblem):
        return None
    kept = KeptSupper(supper=supper)
    try:
        return replace(kept, plan=_plan(table["plan"])) if "plan" in table else kept
    except (ValueError, TypeError, KeyError, InputProblem):
        return kept


def _plan(table: dict[str, Any]) -> Plan:
    return Plan(
        table_at=datetime.fromisoformat(table["table_at"]),
        made_at=datetime.fromisoformat(table["made_at"]),
        margin=Margin(table["margin"]),
        dishes=meal_from_text(table["dishes"], "the logbook").dishes,
        steps=tuple(_step(row) for row in table["steps"]),
        chance=table["chance"],
        clashes=tuple(Clash(**row) for row in table["clashes"]),
        moved=tuple(Move(**_timed(row)) for row in table["moved"]),
        proven=bool(table["proven"]),
        lit=bool(table["lit"]),
        firings=int(table["firings"]),
    )


def _step(row: dict[str, Any]) -> PlannedStep:
    known = {field.name for field in fields(PlannedStep)}  # another version of the program may have kept more
    timed = {name: value for name, value in _timed(row).items() if name in known}
    return PlannedStep(**timed | {"kind": StepKind(timed["kind"])})


def _row(record: Mark | OwnTime | PlannedStep | Move) -> dict[str, Any]:
    """A record as plain values; instants in ISO 8601."""
    return {name: value.isoformat() if isinstance(value, datetime) else value for name, value in asdict(record).items()}


def _timed(row: dict[str, Any]) -> dict[str, Any]:
    return {
        name: datetime.fromisoformat(value) if name in _TIMES and isinstance(value, str) else value
        for name, value in row.items()
    }
