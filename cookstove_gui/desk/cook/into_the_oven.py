"""What a cook is offered to put into the oven, or to take out of it, by key."""

from __future__ import annotations

from typing import TYPE_CHECKING

from cookstove_gui.cooking.fit.tasks import task_of
from cookstove_gui.errors import InputProblem

if TYPE_CHECKING:
    from cookstove_gui.cooking.baking.catalogue import Bake
    from cookstove_gui.desk.desk import Desk

_OFFERED = 3  # as many as stand beside one another


def offered_in(desk: Desk) -> tuple[str, ...]:
    """Names of what bakes at the heat that is wanted, the nearest first."""
    from cookstove_gui.cooking.baking.catalogue import bakes  # brings the physics of food: only when asked

    middle = 0.5 * (desk.band.low + desk.band.high)
    return tuple(bake.name for bake in sorted(bakes(), key=lambda bake: _apart(bake, middle))[:_OFFERED])


def offered_out(desk: Desk) -> tuple[str, ...]:
    """Names of what is in the oven; raises InputProblem when nothing is."""
    from cookstove_gui.cooking.baking.in_oven import in_oven  # likewise

    names = tuple(dict.fromkeys(one.name for one in in_oven(desk.entries)))
    if not names:
        raise InputProblem("Nothing is in the oven by the log; what went in is written down first.")
    return names[:_OFFERED]


def named_bake(typed: str) -> str:
    """The name a cook means by part of it; what the catalogue does not know keeps its own name."""
    wanted = typed.strip().casefold()
    if not wanted:
        raise InputProblem("What went into the oven? Type its name, or press Escape.")
    from cookstove_gui.cooking.baking.catalogue import bakes  # likewise

    return next((bake.name for bake in bakes() if wanted in bake.name.casefold()), typed.strip())


def _apart(bake: Bake, middle: float) -> float:
    task = task_of(bake.task)
    return abs(task.middle - middle) if task else 1e9
