"""One scale of heat: even in lightness, and every number on it readable."""

import numpy as np
import pytest

from cookstove_gui.gui.widgets.heat_colours import HeatScale
from cookstove_gui.gui.widgets.theme import contrast, relative_luminance

TEMPERATURES = np.linspace(293.15, 530.0, 40)


def lightness(colour: str) -> float:
    """CIE 1976 L* of an sRGB colour under D65. Source: CIE 15:2004, with Y from the sRGB standard."""
    luminance = relative_luminance(colour)
    return 116 * luminance ** (1 / 3) - 16 if luminance > 216 / 24389 else luminance * 24389 / 27


def test_hotter_is_lighter() -> None:
    # A scale told by lightness alone reads the same with every kind of colour blindness.
    steps = np.diff([lightness(HeatScale().colour(kelvin)) for kelvin in TEMPERATURES])
    assert (steps > 0).all()


def test_equal_steps_of_heat_are_equal_steps_of_lightness() -> None:
    steps = np.diff([lightness(HeatScale().colour(kelvin)) for kelvin in TEMPERATURES])
    assert steps.max() < 2.0 * steps.min()


def test_number_on_every_heat_is_readable() -> None:
    scale = HeatScale()
    assert min(contrast(scale.ink(kelvin), scale.colour(kelvin)) for kelvin in TEMPERATURES) >= 4.5


@pytest.mark.parametrize(("kelvin", "same_as"), [(250.0, 293.15), (900.0, 530.0)])
def test_beyond_the_ends_the_colour_stays(kelvin: float, same_as: float) -> None:
    assert HeatScale().colour(kelvin) == HeatScale().colour(same_as)
