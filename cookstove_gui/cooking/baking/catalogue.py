"""What is baked or roasted, as a body that warms through: from `resources/bakes.toml`."""

from dataclasses import dataclass
from functools import cache, lru_cache
from typing import Any

import numpy as np

from cookstove_gui.cooking.safety.food_safety import safe_minimum
from cookstove_gui.errors import InputProblem
from cookstove_gui.physics.bricks import equivalent_body
from cookstove_gui.physics.eigenvalues import Shape
from cookstove_gui.physics.foods import COMPONENTS, Composition, conductivity, density, specific_heat
from cookstove_gui.physics.radiation import radiation_coefficient
from cookstove_gui.physics.warming import Body, Exposure
from cookstove_gui.resource_files import table
from cookstove_gui.units import kelvin

BELOW_BOILING = 1.0  # K; a moist core comes no nearer to boiling than this, common practice, no source
_TABLE = np.linspace(275.0, 405.0, 14)  # K, where the properties are tabled
_USUAL_OVEN = kelvin(375.0, "F")


@dataclass(frozen=True, slots=True, kw_only=True)
class Bake:
    """One thing to bake or roast."""

    key: str
    name: str
    task: str  # key of the task whose band and time it follows
    sizes: tuple[float, float, float]  # m, smallest first; of a round one its height and twice its width
    is_round: bool
    composition: Composition
    porosity: float
    vapour: float  # factor on conduction
    wetness: float
    done: float  # K, core, at sea level
    past_best: float  # K
    start: float  # K
    safety: str  # key of a safe minimum, or empty


@cache
def bakes() -> tuple[Bake, ...]:
    """All bakes of the file."""
    foods = {row["name"]: row for row in table("foods.toml")["food"]}
    return tuple(_bake(row, foods[row["food"]]) for row in table("bakes.toml")["bake"])


def _bake(row: dict[str, Any], food: dict[str, Any]) -> Bake:
    done, past_best = row.get("done", food["core"])
    small, middle, large = row["sizes"]
    return Bake(
        key=row["key"],
        name=row["name"],
        task=row["task"],
        sizes=(float(small), float(middle), float(large)),
        is_round=row.get("round", False),
        composition=Composition(**{name: float(food[name]) for name in COMPONENTS}),
        porosity=row["porosity"],
        vapour=row["vapour"],
        wetness=row["wetness"],
        done=kelvin(float(done), "F"),
        past_best=kelvin(float(past_best), "F"),
        start=kelvin(float(row["start"]), "F"),
        safety=row.get("safety", ""),
    )


def bake_of(key: str) -> Bake:
    """The bake of that key.

    Raises
    ------
    InputProblem
        If there is none.
    """
    found = next((bake for bake in bakes() if bake.key == key), None)
    if found is None:
        raise InputProblem(f"There is no bake called “{key}”; choose one of {', '.join(b.key for b in bakes())}.")
    return found


def scaled(bake: Bake, mass_share: float) -> Bake:
    """The bake made larger or smaller: its mass times `mass_share`, its shape kept.

    Raises
    ------
    InputProblem
        If the share is not from a tenth to ten.
    """
    if not 0.1 <= mass_share <= 10.0:
        raise InputProblem(f"A size of {mass_share:g} times the usual one is out of reach; write 0.1 to 10.")
    factor = mass_share ** (1 / 3)
    small, middle, large = (side * factor for side in bake.sizes)
    return Bake(
        **{name: getattr(bake, name) for name in Bake.__slots__ if name != "sizes"},
        sizes=(small, middle, large),
    )


def mass_of(bake: Bake) -> float:
    """Of one, as a brick of its sizes or a round one [kg]."""
    volume = float(np.prod(bake.sizes)) * (np.pi / 4 if bake.is_round else 1.0)
    return volume * float(density(bake.composition, 293.15, bake.porosity))


def done_temperature(bake: Bake, boiling: float) -> float:
    """Core temperature [K] at which it is done where water boils at `boiling` [K].

    What is done near boiling is capped `BELOW_BOILING` it, for no moist core gets hotter; a safe minimum is never
    undercut.
    """
    capped = min(bake.done, boiling - BELOW_BOILING)
    return max(capped, safe_minimum(bake.safety).temperature) if bake.safety else capped


@lru_cache(maxsize=64)
def body_of(bake: Bake) -> Body:
    """The bake as a one-dimensional body whose middle warms as its own does."""
    conducted = bake.vapour * np.asarray(conductivity(bake.composition, _TABLE, bake.porosity))
    dense = np.asarray(density(bake.composition, _TABLE, bake.porosity))
    stored = dense * np.asarray(specific_heat(bake.composition, _TABLE))
    oven = table("bakes.toml")["oven"]
    given = oven["convection"] + float(radiation_coefficient(oven["emissivity"], _USUAL_OVEN, 373.15))
    small, middle, large = (side / 2 for side in bake.sizes)
    simple: tuple[tuple[Shape, float], ...] = (("wall", small), ("wall", middle), ("wall", large))
    if bake.is_round:
        simple = (("wall", small), ("cylinder", middle))
    stands_for = equivalent_body(simple, given, float(conducted.mean()))
    return Body(
        half_thickness=stands_for.half_thickness,
        dimension=stands_for.dimension,
        conductivity=(_TABLE, conducted),
        heat_capacity=(_TABLE, stored),
        water=float(bake.composition.water * dense[0]),
    )


def exposure_of(bake: Bake, pressure: float) -> Exposure:
    """How a wood-fired oven, still and dark, gives heat to it."""
    oven = table("bakes.toml")["oven"]
    return Exposure(
        convection_coefficient=oven["convection"],
        emissivity=oven["emissivity"],
        wetness=bake.wetness,
        vapour_pressure=oven["vapour_pressure"],
        pressure=pressure,
    )
