"""What an infrared thermometer for 8-14 µm sees, shows and hides."""

import numpy as np

from cookstove_gui.physics.planck import (
    TEMPERATURE_HIGH,
    TEMPERATURE_LOW,
    band_radiance,
    band_temperature,
)
from cookstove_gui.physics.quantities import Array, Quantity, positive, quantity, within


def shown_temperature(
    temperature_surface: Quantity,
    emissivity_surface: Quantity,
    emissivity_setting: Quantity,
    temperature_reflected: Quantity,
    temperature_reflected_setting: Quantity | None = None,
) -> Quantity:
    """What an instrument set to one emissivity shows for a surface of another.

    Parameters
    ----------
    temperature_surface : float or array, shape (...)
        True temperature of the surface [K], 200 to 1500.
    emissivity_surface : float or array, shape (...)
        Emissivity of the surface from 8 to 14 µm [-], above 0, to 1.
    emissivity_setting : float or array, shape (...)
        Emissivity set on the instrument [-], above 0, to 1.
    temperature_reflected : float or array, shape (...)
        What the surface mirrors, mostly the room [K], 200 to 1500.
    temperature_reflected_setting : float or array, shape (...), optional
        What the instrument takes as mirrored [K], 0 (it takes no account of it) or 200 to 1500; the true one if not
        given.

    Returns
    -------
    float or array, shape (...)
        [K]

    Raises
    ------
    ValueError
        If any argument is outside its range, or the signal belongs to no temperature from 200 to 1500 K.

    Notes
    -----
    eps B(T) + (1 - eps) B(Tr) = e B(shown) + (1 - e) B(Tr set), with B the 8-14 µm radiance. The surface is taken as
    grey and diffuse, and as filling the spot of the instrument.

    Source
    ------
    Measuring equation of radiation thermometry (as in VDI/VDE 3511 part 4, from memory); checked against the rows
    `3.shown-*` in tests/reference.
    """
    true = _seen("temperature_surface", temperature_surface)
    mirrored = _seen("temperature_reflected", temperature_reflected)
    emissivity = positive("emissivity_surface", emissivity_surface, 1.0)
    setting = positive("emissivity_setting", emissivity_setting, 1.0)
    assumed = mirrored if temperature_reflected_setting is None else _assumed(temperature_reflected_setting)
    radiance = (emissivity * true + (1 - emissivity) * mirrored - (1 - setting) * assumed) / setting
    return quantity(_temperature_in_range("temperature_surface", radiance))


def surface_temperature(
    temperature_shown: Quantity,
    emissivity_surface: Quantity,
    emissivity_setting: Quantity,
    temperature_reflected: Quantity,
    temperature_reflected_setting: Quantity | None = None,
) -> Quantity:
    """True temperature of a surface from what the instrument shows: the inverse of `shown_temperature`.

    Parameters
    ----------
    temperature_shown : float or array, shape (...)
        Reading as shown [K], 200 to 1500.
    emissivity_surface : float or array, shape (...)
        Emissivity of the surface from 8 to 14 µm [-], above 0, to 1.
    emissivity_setting : float or array, shape (...)
        Emissivity set on the instrument [-], above 0, to 1.
    temperature_reflected : float or array, shape (...)
        What the surface mirrors, mostly the room [K], 200 to 1500.
    temperature_reflected_setting : float or array, shape (...), optional
        What the instrument takes as mirrored [K], 0 (no account of it) or 200 to 1500; the true one if not given.

    Returns
    -------
    float or array, shape (...)
        [K]

    Raises
    ------
    ValueError
        If any argument is outside its range, or the corrected signal belongs to no temperature from 200 to 1500 K
        (a reading near the mirrored temperature taken from a shiny surface says nothing about that surface).

    Source
    ------
    As `shown_temperature`; checked against the rows `3.back-*` in tests/reference.
    """
    shown = _seen("temperature_shown", temperature_shown)
    mirrored = _seen("temperature_reflected", temperature_reflected)
    emissivity = positive("emissivity_surface", emissivity_surface, 1.0)
    setting = positive("emissivity_setting", emissivity_setting, 1.0)
    assumed = mirrored if temperature_reflected_setting is None else _assumed(temperature_reflected_setting)
    radiance = (setting * shown + (1 - setting) * assumed - (1 - emissivity) * mirrored) / emissivity
    return quantity(_temperature_in_range("temperature_shown", radiance))


def emissivity_from_contact(
    temperature_contact: Quantity,
    temperature_shown: Quantity,
    emissivity_setting: Quantity,
    temperature_reflected: Quantity,
) -> Quantity:
    """Emissivity of a surface from a contact thermometer's reading beside the infrared one.

    Parameters
    ----------
    temperature_contact : float or array, shape (...)
        Contact thermometer, or the infrared reading of a blackened or taped spot beside it [K], 200 to 1500.
    temperature_shown : float or array, shape (...)
        Infrared reading of the bare surface [K], 200 to 1500.
    emissivity_setting : float or array, shape (...)
        Emissivity set on the instrument for that reading [-], above 0, to 1.
    temperature_reflected : float or array, shape (...)
        [K], 200 to 1500.

    Returns
    -------
    float or array, shape (...)
        [-]; a result above 1 says that one of the readings is wrong.

    Raises
    ------
    ValueError
        If any argument is outside its range, or contact and mirrored temperature are less than 20 K apart.

    Notes
    -----
    eps = e (B(shown) - B(Tr)) / (B(contact) - B(Tr)).

    Source
    ------
    ASTM E1933-14(2022), contact-thermometer method and non-contact (surface-modifying material) method; checked
    against the row `3.contact` in tests/reference.
    """
    contact = within("temperature_contact", temperature_contact, TEMPERATURE_LOW, TEMPERATURE_HIGH)
    shown = _seen("temperature_shown", temperature_shown)
    reflected = within("temperature_reflected", temperature_reflected, TEMPERATURE_LOW, TEMPERATURE_HIGH)
    setting = positive("emissivity_setting", emissivity_setting, 1.0)
    if (np.abs(contact - reflected) < 20.0).any():
        raise ValueError("temperature_contact must differ from temperature_reflected by at least 20 K")
    mirrored = np.asarray(band_radiance(reflected))
    return quantity(setting * (shown - mirrored) / (np.asarray(band_radiance(contact)) - mirrored))


def _seen(name: str, temperature: Quantity) -> Array:
    """Radiance of a black body at a temperature that is an argument of that name."""
    return np.asarray(band_radiance(within(name, temperature, TEMPERATURE_LOW, TEMPERATURE_HIGH)))


def _assumed(temperature_reflected_setting: Quantity) -> Array:
    """Radiance that the instrument takes off for mirrored heat; none for a setting of 0 K."""
    setting = np.asarray(temperature_reflected_setting, dtype=np.float64)
    lit = setting != 0.0
    return np.where(lit, _seen("temperature_reflected_setting", np.where(lit, setting, TEMPERATURE_LOW)), 0.0)


def _temperature_in_range(name: str, radiance: Array) -> Array:
    try:
        return np.asarray(band_temperature(radiance))
    except ValueError:
        raise ValueError(
            f"{name} gives, with these emissivities and this mirrored heat, a signal that belongs to no temperature "
            f"from {TEMPERATURE_LOW:g} to {TEMPERATURE_HIGH:g} K"
        ) from None
