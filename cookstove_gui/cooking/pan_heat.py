"""The heat balance of a pan of water on a spot: what comes in through the base, what leaves from sides and water.

Pan and water are taken to be warm alike (water stirs itself when heated from below). The base meets the spot through a
contact and a film of water in series.
"""

from dataclasses import dataclass
from functools import cached_property

import numpy as np

from cookstove_gui.cooking.pans import Pan
from cookstove_gui.errors import InputProblem
from cookstove_gui.forecast.answers import FloatArray
from cookstove_gui.physics.air import air_properties
from cookstove_gui.physics.convection import convection_coefficient
from cookstove_gui.physics.quantities import STANDARD_PRESSURE
from cookstove_gui.physics.radiation import small_body_flux
from cookstove_gui.physics.water import (
    boiling_temperature,
    heat_of_vaporisation,
    liquid_density,
    liquid_specific_heat,
    vapour_density,
)
from cookstove_gui.resource_files import table

WATER_FILM = 800.0  # W/(m2 K), water over a base heated from below, 500 to 1500; common practice, no source
ROOM_HUMIDITY = 0.4  # relative, of a heated kitchen; common practice, no source
DIFFUSIVITY_OF_VAPOUR = 2.6e-5  # m2/s in air at 298 K, grows with T^1.75; handbook value, from memory
WATER_EMISSIVITY = 0.95
_GRID_STEP = 1.0  # K
_MOST_LITRES = 40.0


@dataclass(frozen=True)
class PanOfWater:
    """A pan with some water in it, in a room."""

    pan: Pan
    litres: float
    room: float = 293.15  # K
    pressure: float = STANDARD_PRESSURE  # Pa, where the stove stands

    def __post_init__(self) -> None:
        if not 0.05 <= self.litres <= _MOST_LITRES:
            raise InputProblem(f"{self.litres:g} litres is not a pan of water; write 0.05 to {_MOST_LITRES:g} litres.")
        if not 250.0 <= self.room <= 330.0:
            raise InputProblem(f"A room of {self.room:.0f} K is no kitchen; mend its temperature.")

    @cached_property
    def boiling(self) -> float:
        """Where its water boils [K]."""
        return float(boiling_temperature(self.pressure))

    @cached_property
    def water_mass(self) -> float:
        """[kg], measured out cold."""
        return self.litres * 1e-3 * float(liquid_density(288.15))

    @cached_property
    def heat_capacity(self) -> float:
        """Of pan and water [J/K]; the water's is that near 55 °C, within 0.5 % from freezing to boiling."""
        return self.pan.heat_capacity + self.water_mass * float(liquid_specific_heat(328.15))

    def conductance(self, contact: FloatArray | float) -> FloatArray:
        """From the spot into the water [W/K], for a contact [W/(m2 K)]."""
        return np.asarray(self.pan.base_area / (1.0 / np.asarray(contact, dtype=float) + 1.0 / WATER_FILM))

    def loss(self, temperature: FloatArray | float) -> FloatArray:
        """Heat that pan and water give to the room [W] at a temperature [K] up to boiling, shapes alike."""
        grid, losses = self._losses
        return np.asarray(np.interp(temperature, grid, losses))

    def evaporation(self, temperature: FloatArray | float) -> FloatArray:
        """Water that leaves from below boiling [kg/s] at a temperature [K], shapes alike."""
        grid = self._losses[0]
        return np.asarray(np.interp(temperature, grid, self._evaporation(grid)))

    @cached_property
    def _losses(self) -> tuple[FloatArray, FloatArray]:
        grid = np.arange(self.room + 0.5, self.boiling + _GRID_STEP, _GRID_STEP)
        height = max(0.02, self.water_mass / 1000.0 / self.pan.base_area)
        wall = np.pi * self.pan.diameter * height
        convected = np.asarray(convection_coefficient("vertical", height, grid, self.room)) * (grid - self.room)
        losses = wall * (convected + np.asarray(small_body_flux(self.pan.emissivity, grid, self.room)))
        top = self.pan.base_area
        lift = np.asarray(convection_coefficient("up", self.pan.diameter / 4, grid, self.room)) * (grid - self.room)
        open_top = lift + np.asarray(small_body_flux(WATER_EMISSIVITY, grid, self.room))
        losses = losses + top * open_top * (0.5 if self.pan.lid else 1.0)
        losses = losses + self._evaporation(grid) * np.asarray(heat_of_vaporisation(grid))
        # below the room's heat the pan gains what it would lose as far above it; near enough
        below = np.array([200.0, self.room])
        return np.concatenate([below, grid]), np.concatenate([np.array([-losses[0], 0.0]), losses])

    def _evaporation(self, temperature: FloatArray) -> FloatArray:
        """By likeness of the transfer of heat and of vapour (Lewis), from an open surface facing up.

        h_m = h / (rho cp Le^(2/3)), mass flow h_m times the difference of vapour densities; Bergman, Lavine, Incropera
        and DeWitt, Fundamentals of Heat and Mass Transfer, section 6.7.
        """
        warm = np.maximum(temperature, self.room + 0.5)
        film = 0.5 * (warm + self.room)
        air = air_properties(film, self.pressure)
        lewis = np.asarray(air.diffusivity) / (DIFFUSIVITY_OF_VAPOUR * (film / 298.0) ** 1.75)
        heat = np.asarray(convection_coefficient("up", self.pan.diameter / 4, warm, self.room))
        vapour = heat / (np.asarray(air.density) * np.asarray(air.specific_heat) * lewis ** (2 / 3))
        difference = np.asarray(vapour_density(warm)) - ROOM_HUMIDITY * float(vapour_density(self.room))
        through = float(table("pans.toml")["water"]["lid_lets_through"]) if self.pan.lid else 1.0
        return np.asarray(self.pan.base_area * through * vapour * np.maximum(difference, 0.0))
