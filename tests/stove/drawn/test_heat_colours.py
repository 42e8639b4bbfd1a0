"""One scale of heat: a straight line of lightness from iron to straw, and every number on it readable."""

import subprocess
import sys

import numpy as np
import pytest

from cookstove_gui.stove.drawn.contrast import contrast, relative_luminance
from cookstove_gui.stove.drawn.heat_colours import HOTTEST_AT_LEAST, ROOM, heat_colour, heat_ink
from cookstove_gui.units import kelvin

TEMPERATURES = np.linspace(ROOM, HOTTEST_AT_LEAST, 65)


def lightness(colour: str) -> float:
    """CIE 1976 L* of an sRGB colour under D65. Source: CIE 15:2004, with Y from the sRGB standard."""
    luminance = relative_luminance(colour)
    return 116 * luminance ** (1 / 3) - 16 if luminance > 216 / 24389 else luminance * 24389 / 27


def test_hotter_is_lighter_in_even_steps() -> None:
    # A scale told by lightness alone reads the same with every kind of colour sight.
    steps = np.diff([lightness(heat_colour(heat)) for heat in TEMPERATURES])
    assert steps.min() > 0
    sixteenths = np.diff([lightness(heat_colour(heat)) for heat in TEMPERATURES[::4]])
    assert sixteenths == pytest.approx(np.full(16, (92 - 18) / 16), rel=0.1)


def test_the_ends_are_iron_and_straw() -> None:
    assert lightness(heat_colour(ROOM)) == pytest.approx(18, abs=0.5)
    assert lightness(heat_colour(HOTTEST_AT_LEAST)) == pytest.approx(92, abs=0.5)


def test_number_on_every_heat_is_readable() -> None:
    assert min(contrast(heat_ink(heat), heat_colour(heat)) for heat in TEMPERATURES) >= 4.5


def test_the_scale_runs_from_70_to_800_degrees() -> None:
    assert heat_colour(kelvin(69, "F")) == heat_colour(kelvin(40, "F")) != heat_colour(kelvin(80, "F"))
    assert heat_colour(kelvin(801, "F")) == heat_colour(kelvin(900, "F")) != heat_colour(kelvin(790, "F"))


def test_a_stove_that_was_hotter_stretches_the_scale_and_a_cool_one_leaves_it() -> None:
    hottest = kelvin(1000, "F")
    assert heat_colour(hottest, hottest) == heat_colour(HOTTEST_AT_LEAST)
    assert lightness(heat_colour(500.0, hottest)) < lightness(heat_colour(500.0))
    assert heat_colour(500.0, 400.0) == heat_colour(500.0)


def test_needs_no_plotting_library() -> None:
    asked = (
        "import sys; from cookstove_gui.stove.drawn.heat_colours import heat_colour; heat_colour(400.0);"
        "sys.exit('pyqtgraph' in sys.modules)"
    )
    assert subprocess.run([sys.executable, "-c", asked], check=False).returncode == 0
