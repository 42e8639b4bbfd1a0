"""The words of a row of “Good for”: when it is good and how likely, what this fire will not do, the rows in speech."""

from collections.abc import Sequence

from cookstove_gui.cooking.fit.fit import GOOD_CHANCE, POSSIBLE_CHANCE, SpotFit
from cookstove_gui.phrases.edge import Edge

_BRIEF_MIN = 5.0  # the step in which ends are looked for: an end that is nearer is no time to start by
_SHORT_MIN = 60.0  # a stretch to come that is shorter is told with its end


def good_when(spot: SpotFit, edge: Edge, *, is_bake: bool = False) -> str:
    """When it is good to start: `now, until 5:50`, `from 4:35`, `best about 5:10` where it is never quite good.

    Of a bake it is when to put it in, which is not how long the oven keeps its heat: `put in by 4:30`.
    """
    if spot.in_min is None:
        return "perhaps" if spot.chance_ever >= POSSIBLE_CHANCE else "not with this fire"
    if spot.in_min > 0.0 and spot.chance_then < GOOD_CHANCE:
        return f"best about {edge.clock(spot.in_min)}"
    if spot.in_min == 0.0 and spot.chance_now < GOOD_CHANCE:
        good = "put in now" if is_bake else "now"
        return good if spot.is_good_now else "best about now"
    end = None if spot.until_min is None else edge.clock(spot.until_min)
    if spot.in_min > 0.0:
        if spot.until_min is not None and spot.until_min <= spot.in_min:
            return f"only about {end}"
        is_short = spot.until_min is not None and spot.until_min - spot.in_min < _SHORT_MIN
        return f"from {edge.clock(spot.in_min)}" + (f", until {end}" if is_short else "")
    is_brief = spot.until_min is not None and spot.until_min < _BRIEF_MIN
    if is_bake:
        return "put in now" if end is None or is_brief else f"put in by {end}"
    if end is None:
        return "now, for long"
    return "now, not for long" if is_brief else f"now, until {end}"


def good_chance(spot: SpotFit) -> str:
    """How likely, in tenths, over the stretch that is named: `9 in 10`, `6 to 9 in 10`; never quite sure."""
    if spot.in_min is None:
        return f"{_tenths(spot.chance_ever)} in 10" if spot.chance_ever >= POSSIBLE_CHANCE else ""
    first = _tenths(spot.chance_then if spot.in_min > 0.0 else spot.chance_now)
    most = _tenths(max(spot.chances, default=0.0))
    rises = spot.in_min > 0.0 and spot.chance_then >= GOOD_CHANCE and most > first
    return f"{first} to {most} in 10" if rises else f"{first} in 10"


def row_said(name: str, place: str, heat: str, when: str, chance: str, unit: str) -> str:
    """A row for whoever cannot see it."""
    number = heat.replace("≈", "about ")
    where = f"{place}, {number} °{unit}" if heat != "–" else place
    return f"{name}, {where}: " + ", ".join(part for part in (when, chance) if part)


def not_words(names: Sequence[str], *, is_out: bool) -> tuple[str, ...]:
    """What this fire will not do, from all of it to a count: rungs that each fit in less room."""
    if not names:
        return ("",)
    lead = "Gone out of reach" if is_out else "Not with this fire"
    shorter = [f"{', '.join(names[:count])} and {len(names) - count} more" for count in range(len(names) - 1, 0, -1)]
    return tuple(f"{lead}: {said}" for said in (", ".join(names), *shorter, f"{len(names)} tasks"))


def more_words(count: int) -> str:
    """How many rows are out of sight."""
    return f"{count} more, by scrolling" if count > 0 else ""


def _tenths(chance: float) -> int:
    return min(max(round(10 * chance), 1), 9)
