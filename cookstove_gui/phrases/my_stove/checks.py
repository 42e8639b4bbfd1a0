"""What the thermometers' checks have shown, and what an infrared one sees of the cooktop."""

from collections.abc import Iterable

from cookstove_gui.cooking.instruments.surface_readings import CorrectedReading, Surface
from cookstove_gui.cooking.instruments.thermometers import Drift, give_or_take, points_for, true_temperature
from cookstove_gui.phrases.edge import Edge, full_date
from cookstove_gui.stove.checks import Check, CheckPoint
from cookstove_gui.stove.stove import INFRARED, Instrument
from cookstove_gui.units import degrees, degrees_difference, tidy


def instrument_words(instrument: Instrument, at: float, where: str, unit: str) -> str:
    """What a thermometer's checks have shown, at the heat [K] that is cooked with; `where` names it."""
    doubt = max(round(degrees_difference(give_or_take(instrument, at), unit)), 1)
    name = instrument.name[:1].upper() + instrument.name[1:]
    if not instrument.checked_on:
        aside = ", the look of the iron aside" if instrument.kind == INFRARED else ""
        return f"{name} was never checked: at {where} it may be off by {doubt} °{unit} or more either way{aside}."
    error = degrees_difference(instrument.error(at), unit)
    if abs(error) < 0.5 * doubt:
        return f"{name} reads right at {where}, within about {doubt} °{unit}."
    word = "high" if error > 0 else "low"
    return f"{name} reads about {abs(error):.0f} °{unit} too {word} at {where}, give or take {doubt}."


def gain_words(instrument: Instrument, checks: Iterable[Check], unit: str) -> str:
    """How its error runs over the heat, and where that is only carried on; empty before any check."""
    points = {check.point for check in checks}
    if not points:
        return ""
    if len(points) < len(points_for(instrument.kind)):
        other = "boiling water" if CheckPoint.ICE in points else "ice water"
        return f"Checked at one heat only: the further from it, the less is known. A check in {other} tells more."
    if points == {CheckPoint.ICE}:
        return "Checked at one heat only: the further from it, the less is known."
    each = instrument.gain * 100.0  # ° of either unit in each 100 of it
    runs = f"{'gains' if each > 0 else 'loses'} {tidy(abs(each))} °{unit}" if abs(each) >= 0.05 else "gains nothing"
    return f"It {runs} in each 100. Between ice and boil that is known; above the boil it is only carried on."


def far_off_words(check: Check, unit: str) -> str:
    """The question about a check that is too far off to be taken as it is."""
    right = degrees(true_temperature(check.point, check.pressure), unit)
    return (
        f"{tidy(degrees(check.shown, unit))} °{unit} is far from the {right:.0f} °{unit} of this check. "
        "Look at the unit and the bath; or keep it, if that is what it shows."
    )


def drifted(found: Drift, unit: str) -> str:
    """That a thermometer has changed."""
    change = degrees_difference(found.change, unit)
    word = "higher" if change > 0 else "lower"
    on = full_date(found.since)
    return (
        f"It now reads about {abs(change):.0f} °{unit} {word} than it did on {on}. Check it again; "
        "if it keeps changing, use another one."
    )


def doubt_words(instrument: Instrument, surface: Surface | None) -> str:
    """What the doubt of a reading mostly comes from."""
    if instrument.kind == INFRARED and surface is not None:
        look = f"emissivity {surface.usual:.2f}, from {surface.low:.2f} to {surface.high:.2f}"
        return f"The doubt of an infrared reading is mostly the look of the iron ({look})."
    if instrument.checked_on:
        return "Its doubt is mostly its gain: nothing checks it above the boil. A checked one beside it would."
    return "Until it is checked, its doubt is what is common for its kind."


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
