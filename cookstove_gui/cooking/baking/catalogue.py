"""What is baked or roasted, from `resources/bakes.toml`: its shape and weight, and when it counts as done."""

from collections.abc import Mapping
from dataclasses import dataclass, replace
from typing import Any, Literal

import numpy as np

from cookstove_gui.cooking import checked
from cookstove_gui.cooking.by_name import by_name
from cookstove_gui.cooking.fit.tasks import Place, task_of
from cookstove_gui.cooking.safety.food_safety import holding_limits, safe_minimum
from cookstove_gui.errors import InputProblem
from cookstove_gui.physics.foods import COMPONENTS, Composition, density
from cookstove_gui.resource_files import made_of_tables, own_rows, rows_of, table
from cookstove_gui.units import degrees, kelvin, tidy

BELOW_BOILING = 1.0  # K; a moist core gets no closer to boiling than this; common practice, no source
BOILING_AT_SEA_LEVEL = kelvin(211.953, "F")  # IAPWS at 1013.25 hPa
SMALLEST, LARGEST = 0.1, 10.0  # times the usual mass
Form = Literal["brick", "disc", "ellipsoid"]
LONGEST_NAME = 40  # letters
MEAT = ("whole cuts of beef, pork, veal and lamb", "poultry", "ground meat")  # of safe minimums
LEAST_WATER = 0.05  # share
MOST_AMISS = 0.02  # that the parts of a food may come to more or less than the whole
CORES = (100.0, 215.0)  # °F
SIZES = (0.005, 0.8)  # m
_FOOD_FIELDS = ("name", *COMPONENTS, "porosity", "core", "source")
_BAKE_FIELDS = ("key", "name", "kind", "cut", "task", "shape", "sizes", "food", "porosity", "crumb", "conduction",
                "crust", "openness", "bone", "done", "setting", "start", "safety")  # fmt: skip
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


@dataclass(frozen=True, slots=True, kw_only=True)
class Food:
    """What a food consists of, and the core temperatures [K] at which it counts as done."""

    name: str
    composition: Composition
    done: float
    past_best: float
    row: Mapping[str, Any]  # as it stands in its file


@made_of_tables
def foods() -> tuple[Food, ...]:
    """All foods of `resources/foods.toml`, changed by the cook or not; then the cook's own."""
    return rows_of("foods.toml", "food", food_of_row, key="name")


def food_of_row(row: Mapping[str, Any]) -> Food:
    """The food of one row; raises InputProblem naming it and what is wrong."""
    here = f"food “{row.get('name', '')}”"
    checked.only(row, _FOOD_FIELDS, here)
    name = checked.text(row, "name", "", here)
    if not 0 < len(name) <= LONGEST_NAME:
        raise InputProblem(f"{here}: give it a name of up to {LONGEST_NAME} letters.")
    shares = {part: checked.between(row, part, 0.0, (0.0, 1.0), here) for part in COMPONENTS}
    whole = sum(shares.values())
    if abs(whole - 1.0) > MOST_AMISS:
        raise InputProblem(f"{here}: its parts come to {tidy(100.0 * whole)} % together; make them 100.")
    if shares["water"] < LEAST_WATER:
        raise InputProblem(f"{here}: with {tidy(100.0 * shares['water'])} % water it doesn't bake; write 5 % or more.")
    done, past_best = checked.heat_band(row, "core", CORES, here)
    return Food(name=name, composition=Composition(**shares), done=done, past_best=past_best, row=row)


@made_of_tables
def bakes() -> tuple[Bake, ...]:
    """All bakes of `resources/bakes.toml`, changed by the cook or not; then the cook's own."""
    return rows_of("bakes.toml", "bake", bake_of_row)


@made_of_tables
def bake_rows() -> dict[str, Mapping[str, Any]]:
    """The row of each bake by its key, as it stands in its file."""
    usual = {row["key"]: row for row in table("bakes.toml")["bake"]}
    own = {row.get("key"): row for row in own_rows("bakes.toml", "bake")}
    return {bake.key: own.get(bake.key, usual.get(bake.key, {})) for bake in bakes()}


def bake_of_row(row: Mapping[str, Any]) -> Bake:
    """The bake of one row.

    A usual one that a cook changed keeps its safe minimum.

    Raises
    ------
    InputProblem
        Naming the bake and what is wrong with it.
    """
    here = f"“{row.get('name', row.get('key', ''))}”"
    checked.only(row, _BAKE_FIELDS, here)
    key, name = checked.key_in(row, "bake", here), checked.text(row, "name", "", here)
    if not 0 < len(name) <= LONGEST_NAME:
        raise InputProblem(f"{here}: give it a name of up to {LONGEST_NAME} letters.")
    task = task_of(checked.text(row, "task", "", here))
    if task is None or task.place is not Place.OVEN:
        raise InputProblem(f"{here}: “{row.get('task', '')}” is no heat of the oven; choose a task of the oven.")
    if row.get("shape") not in _SHARE_OF_BRICK:
        raise InputProblem(f"{here}: its shape is {', '.join(_SHARE_OF_BRICK)}.")
    food = by_name(foods(), checked.text(row, "food", "", here), "food", lambda one: one.name)
    done, past_best = (
        checked.heat_band(row, "done", CORES, here) if "done" in row else (food.done, food.past_best)
    )  # fmt: skip
    of_the_usual = next((one.get("safety", "") for one in table("bakes.toml")["bake"] if one["key"] == key), "")
    safety = of_the_usual or checked.text(row, "safety", "", here)
    if safety:
        safe_minimum(safety)
    if safety in MEAT and task.low < holding_limits().meat_oven - 1e-9:
        raise InputProblem(
            f"{here}: meat and poultry want an oven of {tidy(degrees(holding_limits().meat_oven, 'F'), 0)} °F or more "
            "(USDA FSIS); choose such a heat."
        )
    return Bake(
        key=key,
        name=name,
        kind=checked.text(row, "kind", name, here),
        cut=checked.text(row, "cut", "", here),
        task=task.key,
        form=row["shape"],
        sizes=_sizes(row, here),
        composition=food.composition,
        porosity=checked.between(row, "porosity", 0.0, (0.0, 0.9), here),
        is_crumb=checked.flag(row, "crumb", False, here),
        conduction=checked.between(row, "conduction", 1.0, (0.3, 4.0), here),
        crust=crust_of(checked.text(row, "crust", "", here)),
        openness=checked.between(row, "openness", 1.0, (0.02, 1.0), here),
        bone=checked.between(row, "bone", 0.0, (0.0, 0.6), here),
        done=done,
        past_best=past_best,
        setting_min=checked.between(row, "setting", 0.0, (0.0, 240.0), here),
        start=kelvin(checked.between(row, "start", None, (-20.0, 160.0), here), "F"),
        safety=safety,
    )


def crust_of(key: str) -> Crust:
    """The crust of that key; raises InputProblem if there is none."""
    row = by_name(table("bakes.toml")["crust"], key, "crust", lambda one: str(one["key"]))
    return Crust(**{name: float(value) for name, value in row.items() if name != "key"})


def _sizes(row: Mapping[str, Any], here: str) -> tuple[float, float, float]:
    found = row.get("sizes")
    if not (isinstance(found, list) and len(found) == 3 and all(isinstance(side, int | float) for side in found)):
        raise InputProblem(f"{here}: write its three sizes in metres, such as [0.10, 0.11, 0.21].")
    small, middle, large = sorted(float(side) for side in found)
    if not SIZES[0] <= small <= large <= SIZES[1]:
        raise InputProblem(f"{here}: its sides are {tidy(100 * SIZES[0])} to {tidy(100 * SIZES[1])} cm.")
    if row["shape"] == "disc" and small != middle and middle != large:
        raise InputProblem(f"{here}: what is round is as wide one way as the other; write its width twice.")
    return small, middle, large


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
    return float(bake.setting_min * (10.0 ** (lower / setting_tenfold()) - 1.0))


def setting_tenfold() -> float:
    """Kelvin by which a core is cooler that sets and softens ten times slower."""
    return float(table("bakes.toml")["height"]["tenfold"])
