"""What is baked or roasted, from `resources/bakes.toml`: its shape and weight, and when it counts as done."""

from dataclasses import dataclass, replace
from functools import cache
from typing import Any, Literal

import numpy as np

from cookstove_gui.cooking.by_name import by_name
from cookstove_gui.cooking.safety.food_safety import safe_minimum
from cookstove_gui.errors import InputProblem
from cookstove_gui.physics.foods import COMPONENTS, Composition, density
from cookstove_gui.resource_files import table
from cookstove_gui.units import kelvin

BELOW_BOILING = 1.0  # K; a moist core gets no closer to boiling than this; common practice, no source
BOILING_AT_SEA_LEVEL = kelvin(211.953, "F")  # IAPWS at 1013.25 hPa
SMALLEST, LARGEST = 0.1, 10.0  # times the usual mass
Form = Literal["brick", "disc", "ellipsoid"]
_SHARE_OF_BRICK: dict[Form, float] = {"brick": 1.0, "disc": np.pi / 4, "ellipsoid": np.pi / 6}
_WEIGHED_AT = kelvin(68.0, "F")


@dataclass(frozen=True, slots=True, kw_only=True)
class Crust:
    """How its surface lets vapour and heat through; see `physics.warming.Exposure`."""

    skin: float  # s/m
    diffusivity: float  # m2/s
    conductivity: float  # W/(m K)
    activity: float  # vapour pressure over that of water


@dataclass(frozen=True, slots=True, kw_only=True)
class Bake:
    """One thing to bake or roast."""

    key: str
    name: str
    kind: str  # what it is a form of; its name where it is the only one
    cut: str  # which form; empty where it is the only one
    task: str  # key of the task whose band and time it follows
    form: Form
    sizes: tuple[float, float, float]  # m; of a disc its height or length, and its width twice, smallest first
    composition: Composition
    porosity: float
    is_crumb: bool  # steam carries heat through its bubbles
    conduction: float  # factor on the conductivity
    crust: Crust
    openness: float  # share of its surface by which vapour leaves
    bone: float  # share of its weight
    done: float  # K, core, at sea level
    past_best: float  # K, core, above which it is overdone
    setting_min: float  # that it cooks near its final heat
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
    crust = by_name(table("bakes.toml")["crust"], row["crust"], "crust", lambda one: str(one["key"]))
    return Bake(
        key=row["key"],
        name=row["name"],
        kind=row.get("kind", row["name"]),
        cut=row.get("cut", ""),
        task=row["task"],
        form=row["shape"],
        sizes=(float(small), float(middle), float(large)),
        composition=Composition(**{name: float(food[name]) for name in COMPONENTS}),
        porosity=row["porosity"],
        is_crumb=row.get("crumb", False),
        conduction=float(row.get("conduction", 1.0)),
        crust=Crust(**{name: float(value) for name, value in crust.items() if name != "key"}),
        openness=float(row.get("openness", 1.0)),
        bone=float(row.get("bone", 0.0)),
        done=kelvin(float(done), "F"),
        past_best=kelvin(float(past_best), "F"),
        setting_min=float(row.get("setting", 0.0)),
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
    """Of one [kg], its bones with it."""
    volume = float(np.prod(bake.sizes)) * _SHARE_OF_BRICK[bake.form]
    return volume * float(density(bake.composition, _WEIGHED_AT, bake.porosity)) / (1.0 - bake.bone)


def done_temperature(bake: Bake, boiling: float) -> float:
    """Core temperature [K] at which it is done where water boils at `boiling` [K].

    What is done as its water nears the boil keeps that distance at any height; meat, egg and fish are done at the same
    core everywhere, as far as a core can get. Never below the food's safe minimum.
    """
    lower = BOILING_AT_SEA_LEVEL - boiling if bake.setting_min > 0.0 else 0.0
    wanted = min(bake.done - lower, boiling - BELOW_BOILING)
    return max(wanted, safe_minimum(bake.safety).temperature) if bake.safety else wanted


def longer_setting(bake: Bake, boiling: float) -> float:
    """Minutes [min] that it is kept longer at its core where water boils at `boiling` [K], cooler than at sea level."""
    lower = max(BOILING_AT_SEA_LEVEL - boiling, 0.0)
    return float(bake.setting_min * (10.0 ** (lower / table("bakes.toml")["height"]["tenfold"]) - 1.0))
