"""When a bake is done, when to turn it, and when it is safe. Kelvin, and minutes from the edge’s now."""

from dataclasses import replace

from cookstove_gui.cooking.baking.catalogue import mass_of
from cookstove_gui.cooking.baking.doneness import Doneness
from cookstove_gui.cooking.baking.doubts import Source
from cookstove_gui.cooking.baking.in_oven import InOven
from cookstove_gui.cooking.baking.probing import ProbeGain
from cookstove_gui.cooking.baking.under_way import UnderWay
from cookstove_gui.cooking.fit.tasks import Task
from cookstove_gui.cooking.safety.food_safety import danger_minutes_allowed, holding_limits
from cookstove_gui.forecast.answers import Quantiles
from cookstove_gui.phrases.edge import Edge, duration, span
from cookstove_gui.phrases.in_oven import done_words, window_words
from cookstove_gui.stove.stove import USUAL_ROOM
from cookstove_gui.units import KILOGRAMS_PER_POUND, degrees_difference


def bake_headline(found: UnderWay, edge: Edge) -> str:
    """When the bake is done."""
    in_min, likely = found.goes_in_min, found.likely
    if likely is None or found.inside.number:
        return done_words(found, edge)
    when = f"at {edge.clock(in_min)}" if in_min > 1 else "now"
    name = found.inside.name
    return f"If it goes in {when}, the {name} is done about {edge.at(likely)}{window_words(found, edge)}."


def bake_rungs(found: UnderWay, edge: Edge) -> tuple[str, ...]:
    """The same from long to short; the window stays to the last."""
    whole, likely = bake_headline(found, edge), found.likely
    if likely is None or likely < edge.now:
        return tuple(dict.fromkeys((whole, f"{whole.split('. ')[0].rstrip('.')}.")))
    short = f"Done about {edge.at(likely)}{window_words(found, edge)}."
    return tuple(dict.fromkeys((whole, short, short.replace("between ", "").replace(" and ", " to "))))


def steady_rungs(answer: Doneness, task: Task | None, edge: Edge) -> tuple[str, ...]:
    """What this oven makes of the time a steady one would take, from long to short."""
    whole = bake_against_steady(answer, task, edge)
    if ", because" not in whole or answer.recipe_min is None or answer.late_min is None:
        return (whole,)
    shortest = (
        f"About {duration(answer.recipe_min)} in a steady oven, {duration(answer.recipe_min + answer.late_min)} here."
    )
    return whole, whole.split(", because")[0].rstrip(".") + ".", shortest


def bake_against_steady(answer: Doneness, task: Task | None, edge: Edge) -> str:
    """What this oven makes of the time a steady one would take."""
    if answer.recipe_min is None or task is None:
        return ""
    steady = edge.heat(0.5 * (task.low + task.high))
    steadily = duration(answer.recipe_min)
    words = f"In a steady oven of {steady} it would take about {steadily}"
    if answer.late_min is None:
        return f"{words}; this oven will not do it in three hours."
    here = duration(answer.recipe_min + answer.late_min)
    if here == steadily:
        return f"{words}, and this oven does the same."
    cause = "because it is cooler or sags" if answer.late_min > 0 else "because it is hotter"
    return f"{words}; in this oven it takes about {here}, {cause}."


def core_words(answer: Doneness, edge: Edge) -> str:
    """The core now and at the end."""
    end = f"Done at a core of about {edge.heat(answer.done_at)}.{_rest_words(answer, edge)}"
    now = answer.core_now
    if now is None or now.p10 is None or now.p50 is None or now.p90 is None:
        return end
    return f"The core is now about {edge.heat(now.p50)}, likely {edge.range(now.p10, now.p90)}. {end}"


def _rest_words(answer: Doneness, edge: Edge) -> str:
    """How much a roast still rises out of the oven, to the step of a thermometer; empty where it hardly does."""
    if answer.rest_rise is None:
        return ""
    rise = degrees_difference(answer.rest_rise, edge.unit)
    rise = 5 * round(rise / 5) if edge.unit == "F" else round(rise)
    return f" It rises about {rise} °{edge.unit} more as it rests." if rise > 0 else ""


def probe_words(found: UnderWay, edge: Edge) -> str:
    """That a probe shows what no core can have by now; empty where it does not."""
    way = found.probe_is_off
    if not way or not found.inside.probes:
        return ""
    shown = edge.heat(found.inside.probes[-1].core)
    than = "warmer" if way > 0 else "colder"
    return f"The probe showed {shown}, {than} than its core can well be by then: is it in the middle, clear of the tin?"


def safe_words(answer: Doneness, edge: Edge) -> str:
    """The safe minimum with its source; a thermometer decides."""
    if answer.safe is None:
        return ""
    rest = f" and rests {answer.safe.rest_minutes:.0f} minutes" if answer.safe.rest_minutes else ""
    when = "" if answer.safe_min is None else f", {_reached(answer.safe_min, edge)}"
    return (
        f"Safe only when its core has been at {edge.heat(answer.safe.temperature)}{rest}{when}. "
        f"These times are estimates: measure the core, the thermometer decides. Source: {answer.safe.source}."
    )


def _reached(found: Quantiles, edge: Edge) -> str:
    """When a core reaches something; what has gone of the window is not named."""
    if found.p50 is not None and found.p50 <= 0.0:
        return "likely reached by now"
    soonest = None if found.p10 is None else max(found.p10, 0.0)
    return f"reached {span(replace(found, p10=soonest), edge)}"


def holding_words(edge: Edge) -> str:
    """How warm or cold food is kept until it is eaten, as quoted."""
    limits = holding_limits()
    return (
        f"Until it is eaten: kept hot at {edge.heat(limits.hot_at_least)} or more, or cold at "
        f"{edge.heat(limits.cold_at_most)} or less. {limits.words}"
    )


def danger_words(found: Doneness, edge: Edge, room: float = USUAL_ROOM) -> str:
    """How long the core likely stays between cold and hot enough, if too long for a kitchen as warm as `room` [K]."""
    if found.danger_min is None:
        return ""
    minutes = found.danger_min.p50
    if minutes is not None and minutes <= danger_minutes_allowed(room):
        return ""
    limits = holding_limits()
    low, high = edge.heat(limits.danger_low).split(" ")[0], edge.heat(limits.danger_high)
    if minutes is None:
        stays = f"Its core likely never gets past {high} in this oven, so it stays where germs grow."
    else:
        stays = f"Its core likely stays between {low} and {high} for {duration(minutes)}: too long."
    meat = edge.heat(limits.meat_oven)
    return f"{stays} A hotter oven, {meat} or more for meat, or a smaller piece gets it through sooner. {limits.words}"


_SOURCES = {
    Source.OVEN: "the oven until then",
    Source.FOOD: "how it takes heat",
    Source.SIZE: "its weight and shape",
    Source.DONE: "when it counts as done",
}


def source_words(source: Source) -> str:
    """What a doubt is about."""
    return _SOURCES[source]


def window_length(answer: Doneness) -> float | None:
    """How long the window of done is [min]; none without both ends."""
    done = answer.done_min
    return None if done.p10 is None or done.p90 is None else done.p90 - done.p10


def together_words(answer: Doneness) -> str:
    """How long the window is for all doubts together, and why less than their sum where it is."""
    window = window_length(answer)
    if window is None:
        return ""
    less = window < sum(one.window_min for one in answer.hangs_on)
    return f"Together {duration(window)}{', for doubts partly cancel' if less else ''}."


def gain_words(gain: ProbeGain, edge: Edge) -> tuple[str, str]:
    """When a probe would be read, and how long the window would then be."""
    when = "read now" if gain.in_min < 0.5 else f"read at {edge.clock(gain.in_min)}"
    return when, f"about {duration(max(gain.window_min, 1.0))}"


def learned_words(answer: Doneness) -> str:
    """How many earlier ones narrowed the window."""
    if not answer.learned_from:
        return ""
    count = "One" if answer.learned_from == 1 else str(answer.learned_from)
    return f"{count} so far in this oven made the window narrower."


def inside_words(inside: InOven, edge: Edge) -> str:
    """What is in the oven, on the side of its probe: since when, how heavy, how warm it went in."""
    ago = (edge.now - inside.went_in).total_seconds() / 60.0
    since = f"In since {edge.at(inside.went_in)}" + (f", {duration(ago)} ago." if ago >= 1.0 else ".")
    if inside.bake is None:
        return since
    mass = mass_of(inside.bake)
    heavy = f"{mass / KILOGRAMS_PER_POUND:.1f} lb" if edge.unit == "F" else f"{mass:.2g} kg"
    return f"{since} {heavy}, {edge.heat(inside.bake.start)} at the start."
