"""Back from the table: when to light, bake and take out, as the Plan page asks."""

from collections.abc import Callable
from dataclasses import dataclass
from datetime import datetime

from cookstove_gui.cooking.baking.table_time import TableTime, usual_rest, work_back
from cookstove_gui.desk.plan.bake import BakeChoice, sized
from cookstove_gui.situation import Standing
from cookstove_gui.stove.entries import Session
from cookstove_gui.stove.stove import Stove


@dataclass(frozen=True, slots=True, kw_only=True)
class TableInputs:
    """What is to be eaten when, and the stove it is baked in."""

    stove: Stove
    pressure: float  # Pa, of the air at the stove
    bake: BakeChoice
    table_at: datetime
    rest_min: float
    standing: Standing | None  # where a fire burns
    past: Callable[[str], tuple[Session, ...]]  # a stove's name to its sessions


def rest_of(key: str) -> float:
    """Minutes that a bake usually rests or cools before it is eaten."""
    return usual_rest(sized(BakeChoice(key=key)))


def plan_table(inputs: TableInputs) -> TableTime:
    """The moments of the day."""
    projection = None if inputs.standing is None else inputs.standing.projection
    sessions = inputs.past(inputs.stove.name)
    return work_back(
        inputs.stove,
        sized(inputs.bake),
        inputs.table_at,
        inputs.rest_min,
        sessions,
        projection,
        pressure=inputs.pressure,
    )
