"""Back from the clock at the table: when to light, when it goes in, when it comes out."""

from datetime import datetime, timedelta

from cookstove_gui.cooking.baking.table_time import TableTime
from cookstove_gui.cooking.baking.whole_bake import WholeBake
from cookstove_gui.forecast.answers import EVEN_CHANCE, Quantiles
from cookstove_gui.phrases.edge import Edge, duration, local_day, weekday
from cookstove_gui.units import clock_text

_LATE = 5.0  # min; what is later than this cannot be made good
_NOW = 2.0  # min; what is due sooner than this is due now


def table_headline(plan: TableTime, edge: Edge) -> str:
    """The one thing to do for the table's clock."""
    table = clock_text(plan.table_at, edge.offset_minutes)
    left = _minutes_to(plan.goes_in_at, edge)
    if left < -_LATE:
        return f"Too late for {table}: the {plan.bake.name} should have gone in at {edge.at(plan.goes_in_at)}."
    if plan.arrival_min is not None:
        goes_in = "now" if left < _NOW else f"by {_clock(plan.goes_in_at, edge)}"
        return f"Put the {plan.bake.name} in {goes_in}. {_in_time(plan, plan.arrival_min, left, edge)}"
    late = -_minutes_to(plan.light_likely_at, edge)
    if late > _LATE:
        return f"Even lit now, the oven is likely {duration(late)} too late for {table}."
    if _minutes_to(plan.light_surely_at, edge) < _NOW:
        return f"Light the fire now; the oven may still be late for {table}."
    light = f"ight the fire {_day(plan.light_surely_at, edge)} by {_clock(plan.light_surely_at, edge)}."
    return f"Keep the fire until then, or let it go out and l{light}" if plan.burns_now else f"L{light}"


def _in_time(plan: TableTime, arrival: Quantiles, left: float, edge: Edge) -> str:
    if arrival.p50 is None:
        return "With this fire the oven does not get hot enough; it needs more wood."
    if arrival.p50 <= left + 1 and plan.bake_then is not None and plan.bake_then.stays < EVEN_CHANCE:
        return _not_for_the_bake(plan, plan.bake_then, edge)
    if arrival.p50 <= 1:
        return "The oven is hot enough now."
    when = f"The oven is hot enough about {edge.clock(arrival.p50)}"
    if arrival.p50 > left + 1:
        return f"{when}, {duration(arrival.p50 - left)} too late."
    return f"{when}, in time." if arrival.p90 is not None and arrival.p90 <= left else f"{when}, likely in time."


def _not_for_the_bake(plan: TableTime, oven: WholeBake, edge: Edge) -> str:
    """What this fire's oven lacks when the bake goes in, and what to do about it."""
    if oven.too_hot > oven.too_cool:
        return "By then the oven is likely too hot, or gets so before it is done: shut the air down in time."
    again = plan.light_likely_at
    when = "now" if again <= edge.now else f"from {_clock(again, edge)} on"
    return f"This fire does not likely hold its heat that long: build it up again {when}."


def table_steps(plan: TableTime, edge: Edge) -> tuple[tuple[str, str], ...]:
    """Clock and words of each moment of the day; one that has passed is told only if the bake hangs on it."""
    if _minutes_to(plan.goes_in_at, edge) < -_LATE:
        return ()
    heat = edge.range(plan.band.low, plan.band.high)
    rested = f" after {duration(plan.rest_min)} of rest" if plan.rest_min >= 1 else ""
    lighting = (
        (plan.light_surely_at, "light the fire, to be in time nine times in ten"),
        (plan.light_likely_at, "the latest to light it; then it is even odds"),
    )
    cooking = (
        (plan.goes_in_at, f"the oven at {heat}, the {plan.bake.name} goes in"),
        (plan.out_at, f"out of the oven after about {duration(plan.bake_min)}; measure its core"),
        (plan.table_at, f"on the table{rested}"),
    )
    to_light = [row for row in lighting if plan.arrival_min is None and _minutes_to(row[0], edge) >= 0]
    return tuple((_clock(at, edge), words) for at, words in (*to_light, *cooking))


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
    """A planned moment, to the five minutes before it, but no earlier than now."""
    rounded = at - timedelta(minutes=at.minute % 5)
    return clock_text(max(rounded, edge.now), edge.offset_minutes)


def _minutes_to(at: datetime, edge: Edge) -> float:
    return (at - edge.now).total_seconds() / 60


def _day(at: datetime, edge: Edge) -> str:
    there, here = (local_day(moment, edge.offset_minutes) for moment in (at, edge.now))
    return "today" if there == here else f"on {weekday(there)}"
