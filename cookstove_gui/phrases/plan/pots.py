"""Several pots at once: who has a place, how likely it is right, and when the others get one."""

from collections.abc import Sequence

from cookstove_gui.phrases.edge import Edge, capital, listed


def pots_headline(names: Sequence[str], without: Sequence[str]) -> str:
    """Whether all of them have a place; `without` are the names of those that have none."""
    if not names:
        return "Choose what is to be on the stove at once: Space ticks the marked one."
    if without:
        return f"{len(names) - len(without)} of {len(names)} have a place now; not {listed(without)}."
    if len(names) == 1:
        return f"{capital(names[0])} has a place now."
    return "Both have a place now." if len(names) == 2 else f"All {len(names)} have a place now."


def pot_chance(chance: float) -> str:
    """How likely a pot is right in its place now."""
    return f"{round(chance * 10)} in 10"


def pot_later(later_min: float | None, edge: Edge) -> str:
    """When a pot without a place gets one; empty where none is seen."""
    return "" if later_min is None else f"at {edge.clock(later_min)}"
