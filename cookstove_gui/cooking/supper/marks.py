"""What was done of a plan, what the cook set by hand, and the meal that is wanted."""

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import datetime

from cookstove_gui.cooking.supper.dishes import Dish
from cookstove_gui.cooking.supper.plan import Margin

LET_GO = "fire/let_go"  # key of the step at which the fire is let go, the only one of the fire that is marked


@dataclass(frozen=True, slots=True, kw_only=True)
class Mark:
    """When a step began and ended, as the cook said; a wait is over when the step after it begins."""

    step: str  # key
    began: datetime | None = None
    turned: datetime | None = None
    ended: datetime | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class OwnTime:
    """When the cook wants a step to begin."""

    step: str  # key
    begin: datetime


@dataclass(frozen=True, slots=True, kw_only=True)
class Supper:
    """A meal as it is wanted, and what was done of it so far."""

    table_at: datetime
    dishes: tuple[Dish, ...]
    margin: Margin = Margin.USUAL
    marks: tuple[Mark, ...] = ()
    own: tuple[OwnTime, ...] = ()

    def mark(self, step: str) -> Mark:
        """What was done of a step."""
        return next((one for one in self.marks if one.step == step), Mark(step=step))


def step_key(dish: str, part: int) -> str:
    """The key of a dish's part, the first being 0."""
    return f"{dish}/{part}"


def part_of(step: str) -> int:
    """The number of a dish's part in a step's key."""
    return int(step.rpartition("/")[2])


def with_mark(marks: Iterable[Mark], mark: Mark) -> tuple[Mark, ...]:
    """The marks with one added or put in another's place; one that says nothing is left out."""
    kept = tuple(one for one in marks if one.step != mark.step)
    return (*kept, mark) if mark.began or mark.turned or mark.ended else kept
