"""Several pots at once: who has a place, how likely it is right, and when the others get one."""

from collections.abc import Sequence

from cookstove_gui.phrases.edge import Edge, capital, listed


def pots_headline(
    names: Sequence[str], without: Sequence[str], moves: Sequence[tuple[str, str]] = (), gain: float = 0.0
) -> str:
    """What to move and what it gains, else whether all of them have a place.

    `without` are the names of those that have none, `moves` the names of those to be moved and where to.
    """
    if not names:
        return "Choose what is to be on the stove at once."
    if moves:
        told = listed([f"“{name}” to {where}" for name, where in moves])
        together = " together" if len(moves) > 1 else ""
        return f"Move {told} now: {round(10 * gain)} in 10 more chance{together}."
    if without:
        return f"{len(names) - len(without)} of {len(names)} have a place now; not {listed(without)}."
    if len(names) == 1:
        return f"{capital(names[0])} has a place now."
    return "Both have a place now." if len(names) == 2 else f"All {len(names)} have a place now."


def why_not_words(
    name: str, why_not: str, wanted: tuple[float, float], heats: tuple[float, float] | None, edge: Edge
) -> str:
    """Why a pot has no place: what it wants [K], and what the cooktop has, from its coolest to its hottest spot [K].

    Empty where no heat of the cooktop says it.
    """
    if heats is None or why_not not in ("too hot", "too cool"):
        return ""
    extreme, heat = ("coolest", heats[0]) if why_not == "too hot" else ("hottest", heats[1])
    return f"{capital(name)}: {edge.range(*wanted)} is wanted, the {extreme} spot is at {edge.heat(heat)}."


def pot_chance(chance: float) -> str:
    """How likely a pot is right in its place now."""
    return f"{round(chance * 10)} in 10"


def pot_later(later_min: float | None, edge: Edge) -> str:
    """When a pot without a place gets one; empty where none is seen."""
    return "" if later_min is None else f"at {edge.clock(later_min)}"
