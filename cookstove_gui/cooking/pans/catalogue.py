"""The pans a cook has, from `resources/pans.toml`, and a pan with water in it as the physics wants it."""

from dataclasses import dataclass
from functools import cache
from math import log, pi
from typing import Any

from cookstove_gui.errors import InputProblem
from cookstove_gui.forecast.answers import FloatArray
from cookstove_gui.physics.pan import Kitchen
from cookstove_gui.physics.pan import Pan as PhysicalPan
from cookstove_gui.physics.quantities import STANDARD_PRESSURE
from cookstove_gui.physics.water import boiling_temperature, liquid_density
from cookstove_gui.resource_files import table
from cookstove_gui.stove.stove import USUAL_ROOM

_COLD = 288.15  # K, at which the water is measured out
_LEAST_LITRES, _MOST_LITRES = 0.06, 40.0


@dataclass(frozen=True, slots=True, kw_only=True)
class Pan:
    """One pan or kettle."""

    key: str
    material: str
    base: str
    diameter: float  # m, of the base
    mass: float  # kg, empty
    specific_heat: float  # J/(kg K)
    emissivity: float  # of the outside
    lid: bool = False

    @property
    def base_area(self) -> float:
        """[m2]"""
        return pi / 4 * self.diameter**2

    @property
    def heat_capacity(self) -> float:
        """Of the empty pan [J/K]."""
        return self.mass * self.specific_heat


@dataclass(frozen=True, slots=True, kw_only=True)
class Contact:
    """What is believed of the heat that passes from a bare spot's heat into the water of a pan: lognormal."""

    median: float  # W/(m2 K)
    log_sd: float  # standard deviation of the logarithm


@dataclass(frozen=True, slots=True)
class PanOfWater:
    """A pan with some water in it, in a room."""

    pan: Pan
    litres: float
    room: float = USUAL_ROOM  # K
    pressure: float = STANDARD_PRESSURE  # Pa, where the stove stands

    def __post_init__(self) -> None:
        if not _LEAST_LITRES <= self.litres <= _MOST_LITRES:
            raise InputProblem(
                f"{self.litres:g} litres is not a pan of water; write {_LEAST_LITRES:g} to {_MOST_LITRES:g} litres."
            )
        if not 273.15 <= self.room <= 325.0:
            raise InputProblem(f"A room at {self.room - 273.15:.0f} °C is no kitchen; mend the room's temperature.")

    @property
    def boiling(self) -> float:
        """Where its water boils [K]."""
        return float(boiling_temperature(self.pressure))

    @property
    def kitchen(self) -> Kitchen:
        """The air round it."""
        return Kitchen(temperature_room=self.room, pressure=self.pressure)

    def physical(self, contact: FloatArray | float) -> PhysicalPan:
        """The pan for one contact or an array of them [W/(m2 K)]."""
        water = self.litres * 1e-3 * float(liquid_density(_COLD))
        depth = self.litres * 1e-3 / self.pan.base_area
        return PhysicalPan(
            water=water,
            heat_capacity=self.pan.heat_capacity,
            base_area=self.pan.base_area,
            side_area=pi * self.pan.diameter * depth,
            top_area=self.pan.base_area,
            conductance=contact,
            emissivity=self.pan.emissivity,
            openness=float(table("pans.toml")["water"]["lid_lets_through"]) if self.pan.lid else 1.0,
        )


@cache
def pans() -> tuple[Pan, ...]:
    """Some usual pans, without lids."""
    return tuple(
        pan(row["key"], material=row["material"], base=row["base"], diameter=row["diameter"], mass=row["mass"])
        for row in table("pans.toml")["pan"]
    )


def pan(key: str, *, material: str, base: str, diameter: float, mass: float, lid: bool = False) -> Pan:
    """A pan of the cook's own.

    Raises
    ------
    InputProblem
        If the material or base is not in the file, or a size is no pan's.
    """
    of_material = _row("material", material)
    _row("base", base)
    if not 0.05 <= diameter <= 0.6:
        raise InputProblem(f"A pan's base {diameter:g} m across is no pan's; write its width in metres, such as 0.22.")
    if not 0.05 <= mass <= 30:
        raise InputProblem(f"A pan of {mass:g} kg is no pan; write its mass in kilograms, such as 1.5.")
    return Pan(
        key=key,
        material=material,
        base=base,
        diameter=diameter,
        mass=mass,
        specific_heat=float(of_material["specific_heat"]),
        emissivity=float(of_material["emissivity"]),
        lid=lid,
    )


def usual_contact(of_pan: Pan) -> Contact:
    """What is believed of a pan's contact before this stove has shown it."""
    row = _row("base", of_pan.base)
    return Contact(median=float(row["contact"]), log_sd=log(row["factor"]))


def _row(kind: str, key: str) -> dict[str, Any]:
    rows: list[dict[str, Any]] = table("pans.toml")[kind]
    found = next((row for row in rows if row["key"] == key), None)
    if found is None:
        keys = ", ".join(str(row["key"]) for row in rows)
        raise InputProblem(f"“{key}” is not a known {kind} of a pan; choose one of {keys}.")
    return found
