"""When a bake is done, when to turn it, and when it is safe. Kelvin, and minutes from the edge’s now."""

from cookstove_gui.cooking.baking.doneness import Doneness
from cookstove_gui.cooking.baking.turning import TurnReminder
from cookstove_gui.cooking.fit.tasks import Task
from cookstove_gui.cooking.safety.food_safety import danger_minutes_allowed, holding_limits
from cookstove_gui.phrases.edge import Edge, duration, span, spot_label
from cookstove_gui.stove.stove import USUAL_ROOM, Stove
from cookstove_gui.units import degrees_difference


def bake_headline(name: str, answer: Doneness, goes_in_min: float, edge: Edge) -> str:
    """When the bake is done."""
    done = answer.done_min
    if done.p50 is None:
        return f"With this fire the {name} will hardly be done within three hours. It needs more heat or more time."
    if done.p50 < 1 and goes_in_min < 0:
        return f"The {name} is likely done now. Look, and measure its core."
    if goes_in_min < -1:
        begin = "The"
    else:
        begin = f"If it goes in {f'at {edge.clock(goes_in_min)}' if goes_in_min > 1 else 'now'}, the"
    return f"{begin} {name} is done about {edge.clock(done.p50)}; {span(done, edge)}."


def bake_against_steady(answer: Doneness, task: Task | None, edge: Edge) -> str:
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


def core_words(answer: Doneness, edge: Edge) -> str:
    """The core now and at the end."""
    end = f"Done at a core of about {edge.heat(answer.done_at)}."
    now = answer.core_now
    if now is None or now.p10 is None or now.p50 is None or now.p90 is None:
        return end
    return f"The core is now about {edge.heat(now.p50)}, likely {edge.range(now.p10, now.p90)}. {end}"


def safe_words(answer: Doneness, edge: Edge) -> str:
    """The safe minimum with its source; a thermometer decides."""
    if answer.safe is None:
        return ""
    rest = f" and rests {answer.safe.rest_minutes:.0f} minutes" if answer.safe.rest_minutes else ""
    when = "" if answer.safe_min is None else f", reached {span(answer.safe_min, edge)}"
    return (
        f"Safe only when its core has been at {edge.heat(answer.safe.temperature)}{rest}{when}. "
        f"These times are estimates: measure the core, the thermometer decides. Source: {answer.safe.source}."
    )


def holding_words(edge: Edge) -> str:
    """How warm or cold food is kept until it is eaten, as quoted."""
    limits = holding_limits()
    return (
        f"Until it is eaten: kept hot at {edge.heat(limits.hot_at_least)} or more, or cold at "
        f"{edge.heat(limits.cold_at_most)} or less. {limits.words}"
    )


def turn_words(reminder: TurnReminder | None, stove: Stove, edge: Edge) -> str:
    """When to turn the pan, and why."""
    if reminder is None:
        return ""
    hotter, cooler = (spot_label(stove, name) for name in (reminder.hotter, reminder.cooler))
    when = "now" if reminder.in_min < 1 else f"at {edge.clock(reminder.in_min)}"
    # No finer than a wall read some while ago can say.
    step = 10 if edge.unit == "F" else 5
    least, most = (
        step * round(degrees_difference(kelvin, edge.unit) / step) for kelvin in (reminder.least, reminder.most)
    )
    if least == most:
        apart = f"runs about {most} °{edge.unit} hotter than {cooler}"
    elif least > 0:
        apart = f"runs {least} to {most} °{edge.unit} hotter than {cooler}"
    else:
        apart = f"probably runs hotter than {cooler}, by up to {most} °{edge.unit}"
    return f"Turn it {when}: {hotter} {apart}."


def danger_words(found: Doneness, edge: Edge, room: float = USUAL_ROOM) -> str:
    """That the core likely spends too long between cold and hot enough, for a kitchen as warm as `room` [K]."""
    if found.danger_min is None or found.danger_min.p50 is None:
        return ""
    if found.danger_min.p50 <= danger_minutes_allowed(room):
        return ""
    limits = holding_limits()
    low, high = edge.heat(limits.danger_low).split(" ")[0], edge.heat(limits.danger_high)
    return (
        f"Its core likely spends {duration(found.danger_min.p50)} between {low} and {high}: too long. "
        f"A hotter oven or a smaller piece gets it through sooner. {limits.words}"
    )
