"""Back from the clock at the table: when to light, when it goes in, when it comes out."""

from datetime import datetime, timedelta

from cookstove_gui.cooking.baking.table_time import TableTime
from cookstove_gui.forecast.answers import Quantiles
from cookstove_gui.phrases.edge import Edge, duration, local_day, weekday
from cookstove_gui.units import clock_text


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
    there, here = (local_day(moment, edge.offset_minutes) for moment in (at, edge.now))
    return "today" if there == here else f"on {weekday(there)}"
