"""What a typed reading means once the instrument's error and the surface's emissivity are taken into account."""

from dataclasses import dataclass
from functools import cache

from cookstove_gui.cooking.by_name import by_name
from cookstove_gui.errors import InputProblem
from cookstove_gui.physics.infrared import emissivity_from_contact, shown_temperature, surface_temperature
from cookstove_gui.physics.planck import TEMPERATURE_HIGH
from cookstove_gui.resource_files import table
from cookstove_gui.stove.stove import INFRARED, USUAL_ROOM, Instrument, Spot, SpotKind, Stove

_SURFACES = {SpotKind.GLASS: "glass", SpotKind.FLUE: "stove paint", SpotKind.SIDE: "stove paint"}
SHINY_ADVICE = "This surface mirrors its surroundings, so don't trust this reading; blacken or tape a spot to read."


@dataclass(frozen=True, slots=True, kw_only=True)
class Surface:
    """A surface that an infrared thermometer is pointed at; emissivities from 8 to 14 µm."""

    name: str
    low: float
    usual: float
    high: float
    shiny: bool
    source: str


@dataclass(frozen=True, slots=True, kw_only=True)
class CorrectedReading:
    """A reading as typed and as corrected; all [K]."""

    typed: float
    corrected: float
    low: float  # with the highest emissivity believed and the offset's doubt
    high: float
    advice: str  # empty unless the surface is shiny


@cache
def surfaces() -> tuple[Surface, ...]:
    """All rows of `resources/surfaces.toml`."""
    return tuple(
        Surface(
            name=row["name"],
            low=row["band"][0],
            usual=row["band"][1],
            high=row["band"][2],
            shiny=row["shiny"],
            source=row["source"],
        )
        for row in table("surfaces.toml")["surface"]
    )


def surface_of(name: str) -> Surface:
    """The surface of that name; raises InputProblem if there is none."""
    return by_name(surfaces(), name, "surface", lambda surface: surface.name)


def cooktop_is_shiny(stove: Stove) -> bool:
    """Whether the cooktop is known to mirror its surroundings too much for an infrared thermometer."""
    return any(surface.shiny for surface in surfaces() if surface.name == stove.cooktop_surface)


def surface_at(stove: Stove, spot: Spot) -> Surface:
    """The surface that a spot shows: as said of it, else its part's: the cooktop's, glass, paint on pipe and sides."""
    own = next((surface for surface in surfaces() if surface.name == spot.surface), None)
    if own is not None:
        return own
    if spot.kind is SpotKind.TOP:
        return surface_of(stove.cooktop_surface)
    return surface_of(_SURFACES.get(spot.kind, "enamel"))


def corrected_reading(
    typed: float, instrument: Instrument, surface: Surface, reflected: float = USUAL_ROOM
) -> CorrectedReading:
    """What a reading means.

    Parameters
    ----------
    typed : float
        What the instrument showed [K].
    instrument : Instrument
        Its known error is taken off; an infrared one's emissivity setting is replaced by the surface's.
    surface : Surface
        What an infrared one was pointed at; ignored for other instruments.
    reflected : float
        What the surface mirrors, roughly the room [K].

    Returns
    -------
    CorrectedReading

    Notes
    -----
    A surface no warmer than what it mirrors stays as read: there is next to nothing to correct and much to spoil.
    A shiny one stays as read too, for its emissivity may be off tenfold; `high` says how far the reading may be off.
    """
    meant = instrument.true_heat(typed)
    doubt = instrument.doubt(meant)
    if instrument.kind != INFRARED or meant <= reflected + 5.0:
        return CorrectedReading(typed=typed, corrected=meant, low=meant - doubt, high=meant + doubt, advice="")
    usual, coolest, hottest = (
        _surface_temperature(meant, emissivity, instrument.emissivity, reflected)
        for emissivity in (surface.usual, surface.high, surface.low)
    )
    corrected = meant if surface.shiny else usual
    return CorrectedReading(
        typed=typed,
        corrected=corrected,
        low=corrected - (max(corrected - coolest, 0.0) ** 2 + doubt**2) ** 0.5,
        high=corrected + (max(hottest - corrected, 0.0) ** 2 + doubt**2) ** 0.5,
        advice=SHINY_ADVICE if surface.shiny else "",
    )


def _surface_temperature(shown: float, emissivity: float, setting: float, reflected: float) -> float:
    """The physics' `surface_temperature`, capped at the hottest it covers."""
    dark = emissivity < setting  # only then is the surface hotter than what is shown
    if dark and shown >= float(shown_temperature(TEMPERATURE_HIGH, emissivity, setting, reflected)):
        return TEMPERATURE_HIGH
    return float(surface_temperature(shown, emissivity, setting, reflected))


def measured_surface(
    surface: Surface, contact: float, shown: float, setting: float, reflected: float = USUAL_ROOM
) -> Surface:
    """The surface with the emissivity that a contact thermometer beside the infrared one shows.

    Parameters
    ----------
    surface : Surface
    contact, shown : float
        What both showed [K].
    setting : float
        The infrared one's emissivity setting.
    reflected : float
        [K]

    Returns
    -------
    Surface
        With 0.03 either side for the uncertainty of one such check (common practice, no source).

    Raises
    ------
    InputProblem
        If the surface is hardly warmer than the room, or the two readings do not belong together.
    """
    if contact < reflected + 60.0:
        raise InputProblem("The surface is too cool for this check; do it where it is at least 110 °F above the room.")
    try:
        found = float(emissivity_from_contact(contact, shown, setting, reflected))
    except ValueError:
        found = float("nan")
    if not 0.03 <= found <= 1.03:
        raise InputProblem(
            "These two readings don't go together; read the same place with both, one right after the other."
        )
    found = min(found, 1.0)
    return Surface(
        name=surface.name,
        low=max(found - 0.03, 0.02),
        usual=found,
        high=min(found + 0.03, 1.0),
        shiny=found < 0.5,
        source="measured on this stove with a contact thermometer, after ASTM E1933",
    )
