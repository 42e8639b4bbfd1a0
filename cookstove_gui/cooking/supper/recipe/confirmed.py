"""A dish made of the parts of a recipe that the cook confirmed."""

from collections.abc import Sequence
from dataclasses import dataclass

from cookstove_gui.cooking.checked import key_for
from cookstove_gui.cooking.fit.bands import HALF_WIDTH
from cookstove_gui.cooking.fit.tasks import Place
from cookstove_gui.cooking.supper.dishes import Dish, HandsOn, Heat, Part, Wait
from cookstove_gui.cooking.supper.recipe.acts import ActKind
from cookstove_gui.cooking.supper.recipe.draft import DraftPart
from cookstove_gui.errors import InputProblem
from cookstove_gui.stove.entries import HeatBand

_STRETCH = 1.5  # a wait without a longest time may take so much longer; common practice, no source
MOST_PARTS = 9  # as many as the form of a dish shows
_HANDS_MIN = 10.0  # offered for work without a time; common practice, no source


@dataclass(frozen=True, slots=True, kw_only=True)
class Confirmed:
    """A part as the cook let it stand or corrected it."""

    draft: DraftPart
    minutes: float | None
    band: HeatBand | None = None  # of the oven


def offered_minutes(part: DraftPart) -> float | None:
    """The minutes that stand in the field at first: the middle of what was found; for hands a usual time."""
    if part.shortest is not None and part.longest is not None:
        return (part.shortest + part.longest) / 2.0
    return _HANDS_MIN if part.kind is ActKind.HANDS else None


def offered_band(part: DraftPart) -> HeatBand | None:
    """The oven's band at first: a range as it was written, or a single number with 25 °F either side."""
    heat = part.heat
    if part.kind is not ActKind.OVEN or heat is None or heat.low is None or heat.high is None:
        return None
    wide = HALF_WIDTH if heat.high - heat.low < 1.0 else 0.0
    return HeatBand(name=heat.name, low=heat.low - wide, high=heat.high + wide)


def dish_of(name: str, parts: Sequence[Confirmed], known_keys: Sequence[str] = ()) -> Dish:
    """The dish; `known_keys` are those of the dishes there are, so that none is written over.

    Raises InputProblem where the name, the minutes or the heat of a part is missing.
    """
    name = " ".join(name.split())
    if not name:
        raise InputProblem("The dish has no name; type one, such as apple pie.")
    if not parts:
        raise InputProblem("No part is confirmed; confirm at least the bake or the pot.")
    if len(parts) > MOST_PARTS:
        raise InputProblem(f"{len(parts)} lines are confirmed; a dish has at most {MOST_PARTS} parts. Leave some out.")
    made = tuple(_part(one) for one in parts)
    if not any(isinstance(one, Heat) for one in made):
        raise InputProblem("No part needs heat, so there is nothing to plan on the stove; confirm the bake or the pot.")
    return Dish(
        key=key_for(name, set(known_keys)), name=name, parts=made, source="from a recipe, confirmed by the cook"
    )


def _part(one: Confirmed) -> Part:
    draft, what = one.draft, one.draft.act
    if one.minutes is None:
        raise InputProblem(f"“{what}” has no minutes; type how long it takes in all.")
    match draft.kind:
        case ActKind.HANDS:
            return HandsOn(what=what, minutes=one.minutes)
        case ActKind.WAIT:
            shortest = min(draft.shortest or one.minutes, one.minutes)
            longest = max(one.minutes, draft.longest or 0.0, _STRETCH * shortest)
            return Wait(what=what, minutes=one.minutes, shortest=shortest, longest=longest)
        case ActKind.COOKTOP:
            return Heat(what=what, place=Place.TOP, minutes=one.minutes, task=draft.task, vessel=draft.vessel)
    if one.band is None:
        raise InputProblem(f"“{what}” has no oven heat; type one, such as 350-400 or moderate.")
    return Heat(
        what=what, place=Place.OVEN, minutes=one.minutes, low=one.band.low, high=one.band.high, vessel=draft.vessel
    )
