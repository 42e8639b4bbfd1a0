"""The sentences of the Plan page: when water boils, when a bake is done, how much wood it takes.

Temperatures come in kelvin, times in minutes from the edge's now.
"""

from datetime import datetime, timedelta

from cookstove_gui.cooking.baking.doneness import BakeAnswer
from cookstove_gui.cooking.baking.table_time import TableTime
from cookstove_gui.cooking.baking.turning import TurnReminder
from cookstove_gui.cooking.fit.tasks import Task
from cookstove_gui.cooking.pans.boiling_time import Goal, SimmerAnswer, WaterAnswer
from cookstove_gui.cooking.safety.food_safety import holding_limits
from cookstove_gui.forecast.answers import Quantiles
from cookstove_gui.phrases.edge import Edge, air_words, duration, heat_name, mass_text, span
from cookstove_gui.stove.entries import HeatBand
from cookstove_gui.stove.stove import Stove
from cookstove_gui.units import clock_text, degrees_difference

_LIKELY, _SURE, _HARDLY = 0.5, 0.8, 0.2
_VERBS = {Goal.BOIL: "boils", Goal.SIMMER: "simmers", Goal.POACH: "is warm enough to poach"}


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
    hotter, cooler = (_label(stove, name) for name in (reminder.hotter, reminder.cooler))
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


def _label(stove: Stove, name: str) -> str:
    spot = stove.spot(name)
    return spot.label if spot else name.replace("_", " ")


def wood_headline(mass: Quantiles, splits: Quantiles, unit: str) -> str:
    """How much wood."""
    if mass.p10 is None or mass.p50 is None or mass.p90 is None or splits.p50 is None:
        return ""
    count = max(round(splits.p50), 1)
    pieces = "1 split" if count == 1 else f"{count} splits"
    return (
        f"About {mass_text(mass.p50, unit)} of wood, {pieces}; "
        f"between {mass_text(mass.p10, unit)} and {mass_text(mass.p90, unit)}."
    )


def wood_spans(warm_up_min: float, warm_up_from: str, at_heat_min: float, band: HeatBand) -> str:
    """What the wood is for, and what says how long the warm-up takes."""
    stay = f"{duration(at_heat_min)} at {heat_name(band)}"
    if warm_up_min < 1:
        return f"For {stay}; the oven is there already."
    source = {
        "outlook": "as the oven is projected now",
        "past": "as long as this stove took before",
        "common practice": "common practice, for this stove has not shown it yet",
    }[warm_up_from]
    return f"For {duration(warm_up_min)} of warming up ({source}) and {stay}."


def heat_words(kilowatts: Quantiles, btu_per_hour: Quantiles) -> str:
    """The heat the fire gives."""
    if kilowatts.p50 is None or btu_per_hour.p50 is None or kilowatts.p10 is None or kilowatts.p90 is None:
        return ""
    thousands = f"{1000 * round(btu_per_hour.p50 / 1000):,}"
    return (
        f"It gives about {kilowatts.p50:.1f} kW ({thousands} BTU/h) into stove, pots and room, "
        f"{kilowatts.p10:.1f} to {kilowatts.p90:.1f} kW."
    )


def load_words(minutes: Quantiles, air: float) -> str:
    """How long two splits burn at the present air."""
    if minutes.p10 is None or minutes.p50 is None or minutes.p90 is None:
        return ""
    opening = air_words(air)
    return (
        f"Two splits with the air {opening} burn to coals in about {duration(minutes.p50)}, "
        f"likely {duration(minutes.p10)} to {duration(minutes.p90)}."
    )


def rate_words(fires: int) -> str:
    """What the amount was learned from."""
    if fires == 0:
        return (
            "From what cookstoves usually take; weigh or count the wood you enter, and this becomes your stove’s own."
        )
    return f"Learned from the wood of {fires} {'fire' if fires == 1 else 'fires'} of this stove."


def table_headline(plan: TableTime, edge: Edge) -> str:
    """The one thing to do for the table's clock."""
    goes_in, table = _clock(plan.goes_in_at, edge), _clock(plan.table_at, edge)
    left = _minutes_to(plan.goes_in_at, edge)
    if left < -5:
        return f"Too late for {table}: the {plan.bake.name} should have gone in at {goes_in}."
    if plan.arrival_min is not None:
        return f"Put the {plan.bake.name} in by {goes_in}. {_in_time(plan.arrival_min, left, edge)}"
    late = -_minutes_to(plan.light_likely_at, edge)
    if late > 5:
        return f"Lit now, the oven is likely {duration(late)} too late for {table}."
    light = f"ight the fire {_day(plan.light_surely_at, edge)} by {_clock(plan.light_surely_at, edge)}."
    return f"Keep the fire until then, or let it go out and l{light}" if plan.burns_now else f"L{light}"


def _in_time(arrival: Quantiles, left: float, edge: Edge) -> str:
    if arrival.p50 is None:
        return "With this fire the oven does not get hot enough; it needs more wood."
    if arrival.p50 <= 1:
        return "The oven is hot enough now."
    when = f"The oven is hot enough about {edge.clock(arrival.p50)}"
    if arrival.p50 > left + 1:
        return f"{when}, {duration(arrival.p50 - left)} too late."
    return f"{when}, in time." if arrival.p90 is not None and arrival.p90 <= left else f"{when}, likely in time."


def table_steps(plan: TableTime, edge: Edge) -> tuple[tuple[str, str], ...]:
    """Clock and words of each moment of the day."""
    steps = []
    if plan.arrival_min is None:
        steps.append((_clock(plan.light_surely_at, edge), "light the fire, to be in time nine times in ten"))
        steps.append((_clock(plan.light_likely_at, edge), "the latest to light it; then it is even odds"))
    heat = edge.range(plan.band.low, plan.band.high)
    steps.append((_clock(plan.goes_in_at, edge), f"the oven at {heat}, the {plan.bake.name} goes in"))
    steps.append(
        (_clock(plan.out_at, edge), f"out of the oven after about {duration(plan.bake_min)}; measure its core")
    )
    rested = f" after {duration(plan.rest_min)} of rest" if plan.rest_min >= 1 else ""
    steps.append((_clock(plan.table_at, edge), f"on the table{rested}"))
    return tuple(steps)


def table_source(firings: int) -> str:
    """What the time from lighting was learned from."""
    if firings == 0:
        return (
            "The log does not show yet how long your stove takes from lighting; "
            "an hour to an hour and a half is common practice, no source."
        )
    seen = "1 firing" if firings == 1 else f"{firings} firings"
    return f"How long it takes from lighting is learned from {seen} of this stove. The bake is timed for a steady oven."


def _clock(at: datetime, edge: Edge) -> str:
    """A planned moment, to the five minutes before it."""
    return clock_text(at - timedelta(minutes=at.minute % 5), edge.offset_minutes)


def _minutes_to(at: datetime, edge: Edge) -> float:
    return (at - edge.now).total_seconds() / 60


def _day(at: datetime, edge: Edge) -> str:
    there, here = (moment + timedelta(minutes=edge.offset_minutes) for moment in (at, edge.now))
    return "today" if there.date() == here.date() else f"on {there:%A}"
