"""What happens at the surface of food in an oven: heat through a growing crust, vapour through skin and crust."""

from dataclasses import dataclass
from typing import TYPE_CHECKING

import numpy as np

from cookstove_gui.physics.planck import STEFAN_BOLTZMANN
from cookstove_gui.physics.quantities import Array, within
from cookstove_gui.physics.water import (
    GAS_CONSTANT,
    boiling_temperature,
    heat_of_vaporisation,
    saturation_pressure,
    saturation_temperature,
)

if TYPE_CHECKING:
    from cookstove_gui.physics.warming import Exposure

AIR_SPECIFIC_HEAT = 1007.0  # J/(kg K)
LEWIS_FACTOR = 0.9  # Le^(2/3) of water vapour in air, Le 0.85
MOLAR_RATIO = 0.622  # water vapour to air
_COLDEST = 273.16  # K
_NEWTON = 3  # rounds; the drive is concave in its logarithm, so that they come from one side and never overshoot
_ALL_GONE = 0.98  # of the water; the rest stays bound


@dataclass(frozen=True, slots=True)
class Surface:
    """The surfaces after a step; arrays of shape (bodies,)."""

    flux: Array  # W/m2 into the inside
    temperature: Array  # K, outside
    drive: Array  # of the vapour, see `Outside`
    lost: Array  # kg/m2 so far
    crust: Array  # m
    grown: Array  # m that the crust gained in the step

    @classmethod
    def at_start(cls, temperature: Array) -> "Surface":
        """Before anything came in or went out."""
        none = np.zeros(temperature.shape)
        return cls(none, temperature.copy(), none, none, none, none)


class Outside:
    """What takes the surfaces of all bodies through a step.

    Heat comes by convection and radiation to the outside of the crust and through it: (oven - under the crust) / (1 / h
    + crust / k). Vapour leaves by Stefan's law: drive / (air film + skin + crust), the drive being ln((p - p oven) / (p
    - a ps)), which grows without end as boiling comes near, so that nothing moist passes it. The crust grows by the
    water lost.
    """

    def __init__(self, exposure: "Exposure", bodies: int, water_content: tuple[Array, Array], time_step: float) -> None:
        def each(name: str, values: object, low: float, high: float) -> Array:
            return np.broadcast_to(within(name, values, low, high), (bodies,))  # type: ignore[arg-type]

        self._step = time_step
        self._convection = each("convection_coefficient", exposure.convection_coefficient, 0.0, 500.0)
        self._grey = STEFAN_BOLTZMANN * each("emissivity", exposure.emissivity, 0.0, 1.0)
        self._crust_conductivity = each("crust_conductivity", exposure.crust_conductivity, 0.01, 10.0)
        pressure, activity = (
            float(exposure.pressure),
            float(within("water_activity", exposure.water_activity, 0.5, 1.0)),
        )
        vapour = float(within("vapour_pressure", exposure.vapour_pressure, 0.0, 0.95 * pressure))
        boiling = float(boiling_temperature(pressure))
        self.latent = float(heat_of_vaporisation(boiling))
        kelvins, drives = _drives(pressure, activity, vapour)
        self._between = drives[1:-1]
        self._slopes: Array = np.diff(kelvins) / np.diff(drives)
        self._offsets: Array = kelvins[:-1] - self._slopes * drives[:-1]
        # resistances in m2 s/kg for one unit of drive
        dense = pressure / (GAS_CONSTANT * boiling)
        share = each("openness", exposure.openness, 0.0, 1.0)
        film = AIR_SPECIFIC_HEAT * LEWIS_FACTOR / (MOLAR_RATIO * np.maximum(self._convection, 1e-9))
        self._share = share
        self._fixed = film + each("skin", exposure.skin, 0.0, 1e6) / dense
        self._per_crust = 1.0 / (each("crust_diffusivity", exposure.crust_diffusivity, 1e-9, 1e-4) * dense)
        self._density, thick = water_content
        self._water = _ALL_GONE * self._density * thick  # kg/m2

    def step(self, surface: Surface, alone: Array, answer: Array, air: Array, seen: Array) -> Surface:
        """The surfaces after a step.

        `alone` is what is under the crust after the step if no heat came [K], `answer` how it answers to heat [K m2/W].
        """
        outer = surface.temperature
        thick = surface.crust + 0.5 * surface.grown  # as in the middle of the step: a lag here lags the whole bake
        radiant = self._grey * (seen + outer) * (seen * seen + outer * outer)
        taken = np.maximum(self._convection + radiant, 1e-9)
        around = (self._convection * air + radiant * seen) / taken
        resistance = 1.0 / taken + thick / self._crust_conductivity
        dries = (self._density > 0.0) & (surface.lost < self._water) & (self._share > 0.0)
        under = (alone + answer * around / resistance) / (1.0 + answer / resistance)  # if nothing dried
        drive, lost = surface.drive, surface.lost
        if dries.any():
            cost = self.latent * self._share / (self._fixed + self._per_crust * thick)  # W/m2 per drive
            slope = 1.0 / answer + 1.0 / resistance
            target = slope * under
            for _ in range(_NEWTON):
                there, rate = self._moist(drive)
                drive = drive - (slope * there + cost * drive - target) / (slope * rate + cost)
            there, _ = self._moist(drive)
            left = self._water - surface.lost
            gone = np.where(dries, np.minimum(cost * drive / self.latent * self._step, left), 0.0)
            lost = surface.lost + gone
            # what the drying takes off the heat, exactly, so that the balance closes
            under = np.where(dries, under - gone * self.latent / self._step / slope, under)
        flux = (under - alone) / answer
        outer = around - (around - under) / resistance / taken
        crust = np.where(self._density > 0.0, np.maximum(lost, 0.0) / np.maximum(self._density, 1e-9), 0.0)
        return Surface(flux, outer, drive, lost, crust, crust - surface.crust)

    def _moist(self, drive: Array) -> tuple[Array, Array]:
        """Temperature [K] at which the moist surface drives so much, and its slope."""
        places = self._between.searchsorted(drive)
        slope = self._slopes[places]
        return self._offsets[places] + slope * drive, slope


def _drives(pressure: float, activity: float, vapour: float) -> tuple[Array, Array]:
    """Temperatures from freezing to where the moist surface boils, closer and closer to it, and their drives."""
    hottest = float(saturation_temperature(pressure / activity))
    kelvins: Array = hottest - np.geomspace(hottest - _COLDEST, 1e-4, 300)
    wet = activity * np.asarray(saturation_pressure(np.maximum(kelvins, _COLDEST)))
    return kelvins, np.log((pressure - vapour) / (pressure - wet))
