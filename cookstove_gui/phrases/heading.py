"""The heading over every page: the one thing to do now, what is behind it, and the question about a slip."""

from __future__ import annotations

from typing import TYPE_CHECKING

from cookstove_gui.advice import advise
from cookstove_gui.forecast.futures.arrival import arrival_of, touching_of
from cookstove_gui.phrases import advice, cook, ladder
from cookstove_gui.phrases.edge import Edge, heat_name, in_sentence, spot_label
from cookstove_gui.stove.entries import reading_kelvin

if TYPE_CHECKING:
    from cookstove_gui.cooking.supper.plan import Plan
    from cookstove_gui.situation import Standing


def headline(standing: Standing, edge: Edge, plan: Plan | None = None) -> str:
    """The one thing to do now, and why; of a planned meal too, where one is planned."""
    found = advise(standing, plan)
    whole = advice.headline(found, standing, edge)
    if found.planned is None or plan is None:
        return whole
    from cookstove_gui.phrases.plan.supper import due_words  # only where a meal is planned: not before the first paint

    return f"{due_words(found.planned, plan, standing.stove, edge)} {whole}"


def rungs(standing: Standing, edge: Edge, plan: Plan | None = None) -> tuple[str, ...]:
    """The headline from long to short, for the room there is."""
    found = advise(standing, plan)
    alone = ladder.ladder(found, standing, edge)
    if found.planned is None or plan is None:
        return alone
    from cookstove_gui.phrases.plan.supper import due_rungs

    to_do, *shorter = due_rungs(found.planned, plan, standing.stove, edge)
    # Behind a dish “there” or “it” would be of the dish: only what names its heat, or what bakes, is said there.
    about = heat_name(standing.band) if found.inside is None else in_sentence(found.inside.inside.name)
    clear = [rung for rung in alone if about.casefold() in rung.casefold()]
    return (*(f"{to_do} {rung}" for rung in clear), to_do, *shorter)


def detail_rungs(standing: Standing, edge: Edge, plan: Plan | None = None) -> tuple[str, ...]:
    """The detail from long to short, in one line."""
    return ladder.detail_rungs(advise(standing, plan), standing, edge)


def detail(standing: Standing, edge: Edge, plan: Plan | None = None) -> str:
    """The step that helps, and the reading worth taking next."""
    return advice.detail(advise(standing, plan), standing, edge)


def arrival_figure(standing: Standing, edge: Edge) -> str:
    """When the oven is in its band, in a few characters, as the plot draws it; empty while nothing may be baked."""
    found = standing.outlook
    if standing.first_fires.next is not None or found.oven.p50 is None:
        return ""
    if standing.band.holds(found.oven.p50):
        return "now"
    arrival, touches = arrival_of(found), touching_of(found)
    if arrival is None:
        return "not within 3 h" if touches is None else f"may touch {edge.at(touches)}"
    if edge.is_now(arrival.earliest) and arrival.latest is not None:
        return f"by {edge.at(arrival.latest)}"
    first = edge.at(arrival.earliest)
    return f"from {first}" if arrival.latest is None else f"{first}–{edge.at(arrival.latest)}"


def question_about(standing: Standing, number: int, edge: Edge) -> str:
    """About the reading of that number if it looks like a slip; empty otherwise."""
    asked = next((row for row in standing.doubted if row.number == number), None)
    if asked is None:
        return ""
    entry = next(row for row in standing.rows if row.number == number)
    return cook.doubted_words(asked, spot_label(standing.stove, entry.spot), edge, reading_kelvin(entry))
