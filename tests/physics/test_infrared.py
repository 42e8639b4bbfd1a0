"""Readings of an infrared thermometer: true when set right, mended exactly when set wrong."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from cookstove_gui.physics.infrared import (
    emissivity_from_contact,
    shown_temperature,
    surface_temperature,
)
from tests.physics.laws import emissivities, law, room_temperatures, stove_temperatures

ROOM = 293.15


@law
@given(stove_temperatures, emissivities, room_temperatures)
def test_reading_is_true_when_the_setting_is_the_surfaces_own(surface: float, emissivity: float, room: float) -> None:
    assert shown_temperature(surface, emissivity, emissivity, room) == pytest.approx(surface, abs=1e-6)


@law
@given(stove_temperatures, st.floats(0.3, 1.0), st.floats(0.8, 1.0), room_temperatures)
def test_what_was_shown_is_mended_to_the_truth(surface: float, emissivity: float, setting: float, room: float) -> None:
    shown = shown_temperature(surface, emissivity, setting, room)
    assert surface_temperature(shown, emissivity, setting, room) == pytest.approx(surface, abs=1e-6)


@law
@given(emissivities, st.floats(0.8, 1.0), st.floats(263.0, 500.0))
def test_a_surface_as_warm_as_what_it_mirrors_is_read_right(emissivity: float, setting: float, room: float) -> None:
    assert shown_temperature(room, emissivity, setting, room) == pytest.approx(room, abs=1e-6)


@law
@given(st.floats(330.0, 800.0), emissivities, st.floats(0.01, 0.2))
def test_duller_surfaces_read_hotter(surface: float, emissivity: float, more: float) -> None:
    duller = min(1.0, emissivity + more)
    assert shown_temperature(surface, duller, 0.95, ROOM) >= shown_temperature(surface, emissivity, 0.95, ROOM)


def test_band_is_not_the_fourth_power() -> None:
    """Row "3.fourth-power": the fourth-power law is several kelvin off in this band."""
    emissivity = np.array([0.85, 0.30])
    fourth = ((emissivity * 523.15**4 + (0.95 - emissivity) * ROOM**4) / 0.95) ** 0.25
    np.testing.assert_allclose(fourth - 273.15, [237.12, 138.47], atol=0.01)
    assert (fourth - shown_temperature(523.15, emissivity, 0.95, ROOM) > 4.0).all()


@law
@given(st.floats(330.0, 700.0), st.floats(0.3, 1.0))
def test_contact_reading_finds_the_emissivity_that_was_there(surface: float, emissivity: float) -> None:
    shown = shown_temperature(surface, emissivity, 0.95, ROOM)
    assert emissivity_from_contact(surface, shown, 0.95, ROOM) == pytest.approx(emissivity, abs=1e-9)


def test_shapes_broadcast_and_scalars_stay_floats() -> None:
    surfaces = np.linspace(350.0, 600.0, 4)[:, None]
    assert np.shape(shown_temperature(surfaces, np.array([0.5, 0.8, 0.9]), 0.95, ROOM)) == (4, 3)
    assert isinstance(shown_temperature(500.0, 0.9, 0.95, ROOM), float)


def test_instrument_that_ignores_mirrored_heat_reads_higher() -> None:
    ignoring = shown_temperature(523.15, 0.95, 0.95, ROOM, temperature_reflected_setting=0.0)
    assert ignoring - 523.15 == pytest.approx(1.11, abs=0.01)
    assert surface_temperature(ignoring, 0.95, 0.95, ROOM, 0.0) == pytest.approx(523.15, abs=1e-6)


@pytest.mark.parametrize(
    ("arguments", "named"),
    [
        ((523.15, 0.0, 0.95, ROOM), "emissivity_surface"),
        ((523.15, 0.9, 1.1, ROOM), "emissivity_setting"),
        ((100.0, 0.9, 0.95, ROOM), "temperature_surface"),
        ((523.15, 0.9, 0.95, np.nan), "temperature_reflected"),
        ((523.15, 0.9, 0.95, ROOM, 20.0), "temperature_reflected_setting"),
    ],
)
def test_what_is_out_of_range_is_named(arguments: tuple[float, ...], named: str) -> None:
    with pytest.raises(ValueError, match=named):
        shown_temperature(*arguments)


def test_a_signal_of_no_temperature_is_refused() -> None:
    with pytest.raises(ValueError, match="temperature_shown gives"):
        surface_temperature(273.15, 0.1, 0.95, 320.0)


def test_contact_near_the_mirrored_heat_is_refused() -> None:
    with pytest.raises(ValueError, match="temperature_contact must differ"):
        emissivity_from_contact(300.0, 298.0, 0.95, ROOM)
