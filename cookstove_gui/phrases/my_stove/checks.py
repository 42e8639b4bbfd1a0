"""What the thermometers' checks have shown, and what an infrared one sees of the cooktop."""

from datetime import date

from cookstove_gui.cooking.instruments.surface_readings import CorrectedReading, Surface
from cookstove_gui.cooking.instruments.thermometers import Drift, true_temperature
from cookstove_gui.phrases.edge import Edge, full_date
from cookstove_gui.stove.checks import Check, CheckPoint
from cookstove_gui.stove.stove import Instrument
from cookstove_gui.units import degrees, degrees_difference, tidy


def instrument_words(instrument: Instrument, unit: str) -> str:
    """What a thermometer's checks have shown."""
    doubt = max(round(degrees_difference(instrument.offset_doubt, unit)), 1)
    if not instrument.checked_on:
        return f"Never checked: it may be off by {doubt} °{unit} or more either way."
    offset = degrees_difference(instrument.offset, unit)
    on = full_date(date.fromisoformat(instrument.checked_on))
    if abs(offset) < 0.5 * doubt:
        return f"It reads right, within about {doubt} °{unit}; checked on {on}."
    word = "high" if offset > 0 else "low"
    return f"It reads about {abs(offset):.0f} °{unit} too {word}, give or take {doubt}; checked on {on}."


def drifted(found: Drift, unit: str) -> str:
    """That a thermometer has changed."""
    change = degrees_difference(found.change, unit)
    word = "higher" if change > 0 else "lower"
    on = full_date(found.since)
    return (
        f"It now reads about {abs(change):.0f} °{unit} {word} than it did on {on}. Check it again; "
        "if it keeps changing, use another one."
    )


def measured_emissivity_words(surface: Surface) -> str:
    """What a contact thermometer beside an infrared one has shown."""
    if surface.shiny:
        return (
            f"There the emissivity is only about {surface.usual:.2f}: the surface mirrors its surroundings. "
            "Do not trust infrared on it; blacken or tape a spot and read that."
        )
    return (
        f"There the emissivity is about {surface.usual:.2f}, from {surface.low:.2f} to {surface.high:.2f}. "
        "Set the instrument to it, and type it above."
    )


def check_line(check: Check, unit: str) -> str:
    """One check in the list."""
    where = "in ice water" if check.point is CheckPoint.ICE else "in boiling water"
    right = true_temperature(check.point, check.pressure)
    shown = tidy(degrees(check.shown, unit), 1)
    on = full_date(check.on)
    return f"{on}: {shown} °{unit} {where}, where {degrees(right, unit):.1f} is right"


def emissivity_words(surface: Surface | None, surface_name: str, found: CorrectedReading | None, edge: Edge) -> str:
    """What an infrared thermometer's setting means on this cooktop."""
    if surface is None or found is None:
        return f"The emissivity of “{surface_name}” is not known; read a blackened or taped spot."
    least, most = f"{surface.low:.2f}", f"{surface.high:.2f}"
    looks = f"The emissivity of the cooktop ({surface.name}) is about {surface.usual:.2f}, from {least} to {most}."
    if surface.shiny:
        return f"{looks} {found.advice}"
    return (
        f"{looks} Where this one shows {edge.heat(found.typed)} it is really about {edge.heat(found.corrected)}, "
        f"from {edge.range(found.low, found.high)}."
    )
