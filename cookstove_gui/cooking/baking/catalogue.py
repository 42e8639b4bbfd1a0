"""What is baked or roasted, as a body that warms through: from `resources/bakes.toml`."""

from dataclasses import dataclass, replace
from functools import cache, lru_cache
from typing import Any

import numpy as np

from cookstove_gui.cooking.by_name import by_name
from cookstove_gui.cooking.safety.food_safety import safe_minimum
from cookstove_gui.errors import InputProblem
from cookstove_gui.physics.bricks import equivalent_body
from cookstove_gui.physics.eigenvalues import Shape
from cookstove_gui.physics.foods import COMPONENTS, Composition, conductivity, density, specific_heat
from cookstove_gui.physics.radiation import radiation_coefficient
from cookstove_gui.physics.warming import Body, Exposure
from cookstove_gui.resource_files import table
from cookstove_gui.units import kelvin

BELOW_BOILING = 1.0  # K; a moist core gets no closer to boiling than this; common practice, no source
SMALLEST, LARGEST = 0.1, 10.0  # times the usual mass
_TABLE = np.linspace(275.0, 405.0, 14)  # K, at which the properties are tabulated
_USUAL_OVEN = kelvin(375.0, "F")
_WEIGHED_AT = kelvin(68.0, "F")


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
    vapour: float  # factor on conduction, for steam that moves through a crumb
    wetness: float  # share of its surface that dries as free water
    done: float  # K, core, at sea level
    past_best: float  # K, core, above which it is overdone
    start: float  # K
    safety: str  # key of its safe minimum, or empty


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
    """The bake with that key; raises InputProblem if there is none."""
    return by_name(bakes(), key, "bake", lambda bake: bake.key)


def scaled(bake: Bake, mass_share: float) -> Bake:
    """The bake made larger or smaller: its mass times `mass_share`, its shape kept.

    Raises
    ------
    InputProblem
        If the share is outside `SMALLEST` to `LARGEST`.
    """
    if not SMALLEST <= mass_share <= LARGEST:
        raise InputProblem(
            f"{mass_share:g} times the usual weight is out of range; choose {SMALLEST:g} to {LARGEST:g} times."
        )
    factor = mass_share ** (1 / 3)
    small, middle, large = bake.sizes
    return replace(bake, sizes=(factor * small, factor * middle, factor * large))


def mass_of(bake: Bake) -> float:
    """Of one [kg], taken as a brick or a disc of its sizes."""
    volume = float(np.prod(bake.sizes)) * (np.pi / 4 if bake.is_round else 1.0)
    return volume * float(density(bake.composition, _WEIGHED_AT, bake.porosity))


def done_temperature(bake: Bake, boiling: float) -> float:
    """Core temperature [K] at which it is done where water boils at `boiling` [K].

    At most `BELOW_BOILING` under the boil, for no moist core gets hotter; never below the food's safe minimum.
    """
    capped = min(bake.done, boiling - BELOW_BOILING)
    return max(capped, safe_minimum(bake.safety).temperature) if bake.safety else capped


@lru_cache(maxsize=64)
def body_of(bake: Bake) -> Body:
    """A one-dimensional body whose middle warms as the bake's own does."""
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
    """How a still, dark, wood-fired oven gives heat to it, at a pressure [Pa]."""
    oven = table("bakes.toml")["oven"]
    return Exposure(
        convection_coefficient=oven["convection"],
        emissivity=oven["emissivity"],
        wetness=bake.wetness,
        vapour_pressure=oven["vapour_pressure"],
        pressure=pressure,
    )
