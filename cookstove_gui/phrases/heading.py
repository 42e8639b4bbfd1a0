"""The heading over every page: the one thing to do now, what is behind it, and the question about a slip."""

from cookstove_gui.phrases import cook
from cookstove_gui.phrases.edge import Edge
from cookstove_gui.resource_files import table
from cookstove_gui.situation import Standing, fire_is_out
from cookstove_gui.stove.entries import reading_kelvin


def headline(standing: Standing, edge: Edge) -> str:
    """The one thing to do now, and why."""
    if standing.first_fires.line:
        return standing.first_fires.line
    if not standing.has_readings:
        return str(table("phrases.toml")["no_readings"])
    return cook.headline(standing.band, standing.outlook.band, standing.is_in_band, standing.turns, edge)


def detail(standing: Standing, edge: Edge) -> str:
    """The step that would help, and the reading worth taking next."""
    reading = cook.next_reading_words(standing.next_reading, standing.stove, edge)
    return " ".join(part for part in (_step(standing, edge), reading) if part)


def _step(standing: Standing, edge: Edge) -> str:
    if standing.first_fires.line or not standing.has_readings or fire_is_out(standing.turns):
        return ""
    best = standing.best_step
    if best is not None:
        return cook.step_to_take(best.action, best.outlook, standing.band, edge)
    return cook.fuel_needed(standing.is_in_band, standing.turns, edge)


def question(standing: Standing, edge: Edge) -> str:
    """About the latest reading if it looks like a slip; empty otherwise."""
    latest = max((row.number for row in standing.rows), default=0)
    asked = next((row for row in standing.doubted if row.number == latest), None)
    if asked is None:
        return ""
    entry = next(row for row in standing.rows if row.number == asked.number)
    spot = standing.stove.spot(entry.spot)
    return cook.doubted_words(asked, spot.label if spot else entry.spot, edge, reading_kelvin(entry))
