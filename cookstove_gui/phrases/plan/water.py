"""When a pan of water simmers or boils, and whether a simmer holds. Kelvin, and minutes from the edge’s now."""

from cookstove_gui.cooking.pans.boiling_time import Goal, SimmerHold, WaterTime
from cookstove_gui.phrases.edge import Edge, duration, span

_LIKELY, _SURE = 0.5, 0.8
_VERBS = {Goal.BOIL: "boils", Goal.SIMMER: "simmers", Goal.POACH: "is warm enough to poach"}


def water_headline(label: str, answer: WaterTime, edge: Edge) -> str:
    """The best spot, and when the water is there."""
    verb = _VERBS[answer.goal]
    if answer.minutes.p50 is None:
        return f"No spot is hot enough: on the best one, {label}, it is not likely to get there within three hours."
    middle = answer.minutes.p50
    return f"On {label} it {verb} about {edge.clock(middle)}, in {duration(middle)}; {span(answer.minutes, edge)}."


def water_when(answer: WaterTime, edge: Edge) -> str:
    """One spot's cell: likely when."""
    if answer.minutes.p50 is not None:
        return edge.clock(answer.minutes.p50)
    return "hardly" if answer.chance_reached >= 0.1 else "no"


def simmer_words(answer: SimmerHold) -> str:
    """Whether a simmer holds on a spot."""
    if answer.chance >= _SURE:
        return "holds"
    if answer.chance >= _LIKELY:
        return "likely holds"
    return "boils over it" if answer.chance_boils > answer.chance_falls else "falls off"


def boiling_words(boiling: float, edge: Edge) -> str:
    """Where water boils here."""
    return f"Water boils at {edge.heat(boiling)} at this height above the sea."


def runs_words(runs: int) -> str:
    """How much this stove has shown of the pan's contact."""
    if runs == 0:
        return (
            "How well this pan takes heat from your cooktop is the usual guess. Note a pan with its water on the Cook "
            "page (“2 quarts”), and later “boils”, and the answer narrows."
        )
    return f"Learned from {runs} {'pan' if runs == 1 else 'pans'} of water on this stove."


def preheat_words(minutes: float) -> str:
    """How long the empty pan lags its spot."""
    return f"Empty, the pan needs about {duration(minutes)} to come up to its spot."
