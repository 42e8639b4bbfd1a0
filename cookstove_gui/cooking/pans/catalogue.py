"""The pans a cook has, from `resources/pans.toml`, and a pan of water as the physics takes it."""

from dataclasses import dataclass
from functools import cache
from math import log, pi
from typing import Any

from cookstove_gui.cooking.by_name import by_name
from cookstove_gui.errors import InputProblem
from cookstove_gui.forecast.answers import FloatArray
from cookstove_gui.physics.pan import Kitchen
from cookstove_gui.physics.pan import Pan as PhysicalPan
from cookstove_gui.physics.quantities import STANDARD_PRESSURE
from cookstove_gui.physics.water import boiling_temperature, liquid_density
from cookstove_gui.resource_files import table
from cookstove_gui.stove.stove import USUAL_ROOM
from cookstove_gui.units import ZERO_CELSIUS

COLD_WATER = 288.15  # K, from the well or tap; common practice, no source
LEAST_LITRES, MOST_LITRES = 0.06, 40.0


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
    """The belief about how well heat passes from a bare spot into the water of a pan: lognormal."""

    median: float  # W/(m2 K)
    log_sd: float  # standard deviation of the logarithm
    unlearned: float = 1.0  # share left of what this stove and pan have of their own: the cooktop's part is in it too


@dataclass(frozen=True, slots=True)
class PanOfWater:
    """A pan with some water in it, in a room."""

    pan: Pan
    litres: float
    room: float = USUAL_ROOM  # K
    pressure: float = STANDARD_PRESSURE  # Pa, where the stove stands

    def __post_init__(self) -> None:
        if not LEAST_LITRES <= self.litres <= MOST_LITRES:
            raise InputProblem(
                f"{self.litres:g} litres isn't a pan of water; write {LEAST_LITRES:g} to {MOST_LITRES:g} litres."
            )
        if not ZERO_CELSIUS <= self.room <= 325.0:
            raise InputProblem(
                f"{self.room - ZERO_CELSIUS:.0f} °C isn't a plausible kitchen; correct the room's temperature."
            )

    @property
    def boiling(self) -> float:
        """Where its water boils [K]."""
        return float(boiling_temperature(self.pressure))

    @property
    def kitchen(self) -> Kitchen:
        """The air around it."""
        return Kitchen(temperature_room=self.room, pressure=self.pressure)

    def physical(
        self, contact: FloatArray | float, amount: FloatArray | float = 1.0, evaporation: FloatArray | float = 1.0
    ) -> PhysicalPan:
        """The physics' pan, for one contact or an array of them [W/(m2 K)], and factors on its water and its drying."""
        water = self.litres * 1e-3 * float(liquid_density(COLD_WATER)) * amount
        depth = self.litres * 1e-3 / self.pan.base_area
        return PhysicalPan(
            water=water,
            heat_capacity=self.pan.heat_capacity,
            base_area=self.pan.base_area,
            side_area=pi * self.pan.diameter * depth,
            top_area=self.pan.base_area,
            conductance=contact,
            evaporation=evaporation,
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
    """A pan of the cook's own; raises InputProblem for an unknown material or base, or an implausible size."""
    of_material = _row("material", material)
    _row("base", base)
    if not 0.05 <= diameter <= 0.6:
        raise InputProblem(f"A pan isn't {diameter:g} m across; write the width of its base in metres, such as 0.22.")
    if not 0.05 <= mass <= 30:
        raise InputProblem(f"A pan doesn't weigh {mass:g} kg; write its mass in kilograms, such as 1.5.")
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
    """The belief about a pan's contact before this stove has shown any."""
    row = _row("base", of_pan.base)
    return Contact(median=float(row["contact"]), log_sd=log(row["factor"]))


def _row(kind: str, key: str) -> dict[str, Any]:
    rows: list[dict[str, Any]] = table("pans.toml")[kind]
    return by_name(rows, key, f"{kind} of a pan", lambda row: str(row["key"]))
