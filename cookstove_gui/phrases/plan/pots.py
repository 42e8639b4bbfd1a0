"""Several pots at once: who has a place, how likely it is right, and when the others get one."""

from collections.abc import Sequence
from dataclasses import dataclass

from cookstove_gui.phrases.edge import Edge, capital, listed

_NOWHERE = {
    "too hot": "nothing on the cooktop is cool enough",
    "too cool": "nothing on the cooktop is hot enough",
}
_OVEN_IS = {"too hot": "the oven is too hot", "too cool": "the oven isn’t hot enough"}


@dataclass(frozen=True, slots=True, kw_only=True)
class PotLine:
    """One pot in words."""

    where: str  # its place, and until when; why it has none
    chance: str  # that it is right there
    on_pot: str  # for the little room on the pot itself
    has_place: bool  # now or later


def pots_rungs(
    names: Sequence[str],
    *,
    later: Sequence[tuple[str, float]],
    without: Sequence[str],
    moves: Sequence[tuple[str, str]],
    gain: float,
    edge: Edge,
) -> tuple[str, ...]:
    """What to move, else whether all of them have a place; from long to short.

    `later` names those that get a place and in how many minutes, `without` those that get none, `moves` those to be
    moved and where to, `gain` what the moves bring in chance.
    """
    if not names:
        return ("Choose what is to be on the stove at once.",)
    rest = [f"{_quoted([name])} fits from {edge.clock(minutes)}" for name, minutes in later]
    if without:
        rest.append(f"{_quoted(without)} {'has' if len(without) == 1 else 'have'} no place")
    if moves:
        move = f"Move {listed([f'“{name}” to the {where}' for name, where in moves])} now"
        worth = f"{round(10 * gain)} in 10 more chance{' together' if len(moves) > 1 else ''}"
        told = (f"{move}: {worth}; {', '.join(rest)}.",) if rest else ()
        return (*told, f"{move}: {worth}.", f"{move}.")
    placed = len(names) - len(later) - len(without)
    if placed == len(names):
        if placed <= 2:
            return (f"{capital(names[0])} has a place now." if placed == 1 else "Both have a place now.",)
        return (f"All {placed} have a place now.",)
    now = f"{placed} of {len(names)} {'has' if placed == 1 else 'have'} a place now"
    return (f"{capital(now)}; {', '.join(rest)}.", f"{capital(now)}.")


def pot_line(
    where: str,
    chance: float,
    edge: Edge,
    *,
    stands: str = "",
    is_own: bool = False,
    later_min: float | None = None,
    until_min: float | None = None,
    why_not: str = "",
    in_oven: bool = False,
) -> PotLine:
    """A pot at a place, or to be moved there from where it `stands`, or there later, or with no place and why not."""
    if why_not:
        told = (_OVEN_IS if in_oven else _NOWHERE).get(why_not, why_not)
        return PotLine(where=told, chance="no place", on_pot=why_not, has_place=False)
    tenths = pot_chance(chance)
    until = "" if until_min is None else f" until {edge.clock(until_min)}"
    if later_min is not None:
        when = f"from {edge.clock(later_min)}"
        return PotLine(where=f"{where}, {when}{until}", chance=f"then {tenths}", on_pot=when, has_place=True)
    stays = until.strip() or "for long"
    if stands:
        told = f"move it from the {stands} to the {where} now; there {stays}"
    else:
        told = f"{where}, your choice" if is_own else f"{where}, {stays}"
    return PotLine(where=told, chance=tenths, on_pot="your choice" if is_own else stays, has_place=True)


def places_words(names: int, placed: int) -> str:
    """How many have a place now, beside the heading of their rows."""
    if placed == names:
        return "it has a place now" if names == 1 else "all have a place now"
    return f"{placed} of {names} {'has' if placed == 1 else 'have'} a place now"


_HARDLY = 1.5  # K, about three degrees on a dial


def oven_cost_words(cost: float | None, pots: int, edge: Edge) -> str:
    """What so many pots take from the oven at most [K]; empty where there is none on the cooktop."""
    if cost is None or not pots:
        return ""
    if cost < _HARDLY:
        return f"The oven hardly feels {'it' if pots == 1 else 'them'}."
    who = "It takes" if pots == 1 else "Together they take"
    return f"{who} up to {edge.spread(cost)} from the oven."


def moved_words(names: Sequence[str]) -> str:
    """The key that says that the moves are done."""
    return f"“{names[0]}” is moved" if len(names) == 1 else "They are moved"


def _quoted(names: Sequence[str]) -> str:
    return listed([f"“{name}”" for name in names])


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
