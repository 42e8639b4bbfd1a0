"""The sentences of the Plan page: when water boils, when a bake is done, how much wood it takes.

Temperatures come in kelvin, times in minutes from the edge's now.
"""

from cookstove_gui.cooking.bake import BakeAnswer
from cookstove_gui.cooking.pan import Goal, SimmerAnswer, WaterAnswer
from cookstove_gui.cooking.tasks import Task
from cookstove_gui.cooking.turning import TurnReminder
from cookstove_gui.forecast.answers import Quantiles
from cookstove_gui.phrases import Edge, duration
from cookstove_gui.stove.stove import Stove
from cookstove_gui.units import degrees_difference

_LIKELY, _SURE, _HARDLY = 0.5, 0.8, 0.2
_VERBS = {Goal.BOIL: "boils", Goal.SIMMER: "simmers", Goal.POACH: "is warm enough to poach"}


def span(minutes: Quantiles, edge: Edge) -> str:
    """A window of clock times: `between 7:24 and 7:41`, with an open end where some futures never get there."""
    if minutes.p10 is None:
        return "not within three hours"
    if minutes.p90 is None:
        return f"{edge.clock(minutes.p10)} at the soonest, perhaps not at all"
    if edge.clock(minutes.p10) == edge.clock(minutes.p90):
        return f"at {edge.clock(minutes.p10)}"
    return f"between {edge.clock(minutes.p10)} and {edge.clock(minutes.p90)}"


def water_headline(label: str, answer: WaterAnswer, edge: Edge) -> str:
    """The best spot, and when the water is there."""
    verb = _VERBS[answer.goal]
    if answer.minutes.p50 is None:
        return f"No spot is hot enough: on the best one, {label}, it is not likely to get there within three hours."
    middle = answer.minutes.p50
    return f"On {label} it {verb} about {edge.clock(middle)}, in {duration(middle)}; {span(answer.minutes, edge)}."


def water_when(answer: WaterAnswer, edge: Edge) -> str:
    """One spot's cell: likely when."""
    if answer.minutes.p50 is not None:
        return edge.clock(answer.minutes.p50)
    return "hardly" if answer.chance_reached >= 0.1 else "no"


def simmer_words(answer: SimmerAnswer) -> str:
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


def bake_headline(name: str, answer: BakeAnswer, goes_in_min: float, edge: Edge) -> str:
    """When the bake is done."""
    done = answer.done_min
    if done.p50 is None:
        return f"With this fire the {name} is not likely done within three hours. It needs more heat, or more time."
    if done.p50 < 1 and goes_in_min < 0:
        return f"The {name} is likely done now. Look, and measure its core."
    if goes_in_min < -1:
        begin = "The"
    else:
        begin = f"Put in {f'at {edge.clock(goes_in_min)}' if goes_in_min > 1 else 'now'}, the"
    return f"{begin} {name} is done about {edge.clock(done.p50)}; {span(done, edge)}."


def bake_against_steady(answer: BakeAnswer, task: Task | None, edge: Edge) -> str:
    """What this oven makes of the time a steady one would take."""
    if answer.recipe_min is None or task is None:
        return ""
    steady = edge.heat(0.5 * (task.low + task.high))
    words = f"In a steady oven of {steady} it would take about {duration(answer.recipe_min)}"
    if answer.late_min is None:
        return f"{words}; this oven will not do it in three hours."
    if abs(answer.late_min) < 2.5:
        return f"{words}, and this oven does the same."
    more = "longer" if answer.late_min > 0 else "less"
    cause = "because it is cooler or sags" if answer.late_min > 0 else "because it is hotter"
    return f"{words}; this oven takes about {duration(abs(answer.late_min))} {more}, {cause}."


def core_words(answer: BakeAnswer, edge: Edge) -> str:
    """The core now and at the end."""
    end = f"Done at a core of about {edge.heat(answer.done_at)}."
    now = answer.core_now
    if now is None or now.p10 is None or now.p50 is None or now.p90 is None:
        return end
    return f"The core is now about {edge.heat(now.p50)}, likely {edge.range(now.p10, now.p90)}. {end}"


def safe_words(answer: BakeAnswer, edge: Edge) -> str:
    """The safe minimum with its source; a thermometer decides."""
    if answer.safe is None:
        return ""
    rest = f" and rests {answer.safe.rest_minutes:.0f} minutes" if answer.safe.rest_minutes else ""
    when = "" if answer.safe_min is None else f", reached {span(answer.safe_min, edge)}"
    return (
        f"Safe only when its core has been at {edge.heat(answer.safe.temperature)}{rest}{when}. "
        f"These times are estimates: measure the core, the thermometer decides. Source: {answer.safe.source}."
    )


def turn_words(reminder: TurnReminder | None, stove: Stove, edge: Edge) -> str:
    """When to turn the pan, and why."""
    if reminder is None:
        return ""
    hotter, cooler = (_label(stove, name) for name in (reminder.hotter, reminder.cooler))
    when = "now" if reminder.in_min < 1 else f"at {edge.clock(reminder.in_min)}"
    apart = degrees_difference(reminder.difference, edge.unit)
    return f"Turn it {when}: {hotter} runs about {apart:.0f} °{edge.unit} hotter than {cooler}."


def _label(stove: Stove, name: str) -> str:
    spot = stove.spot(name)
    return spot.label if spot else name.replace("_", " ")
