"""Draws invented stoves: where the firebox lies, how heavy the stove is, and how this one differs from its kind."""

from dataclasses import dataclass, replace
from typing import Any

import numpy as np

from cookstove_gui.stove.stove import Firebox, Stove, default_spots, unchecked
from tests.world.fire import SIGMA
from tests.world.habits import Cook, make_cook
from tests.world.hands import Hands, make_hands
from tests.world.parts import CELLS, COLUMNS, LINKS, NODE, NODES, ROWS, FloatArray, Parts, cell, link

FAMILIES = tuple(f"{build} {firebox}" for build in ("light", "cast", "heavy") for firebox in ("left", "right", "above"))


@dataclass(frozen=True, slots=True, kw_only=True)
class WorldStove:
    """An invented stove, the cook who fires it and the hands that read it."""

    stove: Stove  # what its owner can say about it
    family: str
    seed: int
    parts: Parts  # a batch of one
    cook: Cook
    hands: Hands
    hot_side: str  # the side on which the hot gas rises: "left" | "right"
    moisture: float  # of its wood, kg/kg dry
    thickness: float  # m, of a split
    split_mass: float  # kg


# metal thickness [m] of cooktop, oven walls, panels; mass nodes [J/K]; firebrick [J/K]
_BUILDS: dict[str, dict[str, float]] = {
    "light": {"top": 0.0045, "wall": 0.0022, "panel": 0.0012, "mass": 4e3, "bricks": 8e3, "flow": 0.0062},
    "cast": {"top": 0.0085, "wall": 0.0050, "panel": 0.0045, "mass": 12e3, "bricks": 12e3, "flow": 0.0068},
    "heavy": {"top": 0.0110, "wall": 0.0060, "panel": 0.0045, "mass": 55e3, "bricks": 18e3, "flow": 0.0078},
}  # fmt: skip
_IRON = 7300.0 * 500.0  # J/m3K


def make_stove(seed: int, family: str | None = None) -> WorldStove:
    """An invented stove; the same seed gives the same stove.

    Design seeds are 0 to 999, judging seeds 10000 and up.
    """
    rng = np.random.default_rng([7021, seed])
    drawn = str(rng.choice(FAMILIES))
    family = family or drawn
    build, side = family.split()
    hot_side = {"left": "left", "right": "right", "above": str(rng.choice(["left", "right"]))}[side]
    width, depth = rng.uniform(0.75, 1.0), rng.uniform(0.52, 0.65)
    parts = _draw_parts(rng, _BUILDS[build], side, hot_side, width, depth)
    hands = make_hands(rng)
    instruments = (
        unchecked("spot gun", "infrared"),
        unchecked("oven dial", "oven thermometer"),
    )
    stove = Stove(
        name=f"{build} stove {seed}",
        firebox=Firebox(side),
        cooktop_width=round(width, 2),
        cooktop_depth=round(depth, 2),
        spots=default_spots(),
        instruments=instruments,
        altitude=float(round(rng.uniform(0, 1500), -1)),
        note="invented",
    )
    return WorldStove(
        stove=stove,
        family=family,
        seed=seed,
        parts=parts,
        cook=make_cook(rng),
        hands=hands,
        hot_side=hot_side,
        moisture=rng.uniform(0.12, 0.26),
        thickness=rng.uniform(0.05, 0.085),
        split_mass=rng.uniform(0.35, 0.95),
    )


def renamed(world: WorldStove, **changes: Any) -> WorldStove:
    """The same stove with other words in its owner's description."""
    return replace(world, stove=replace(world.stove, **changes))


def _draw_parts(
    rng: np.random.Generator, build: dict[str, float], side: str, hot_side: str, width: float, depth: float
) -> Parts:
    def vary(value: float, spread: float = 0.18) -> float:
        return float(value * np.exp(spread * np.clip(rng.standard_normal(), -2, 2)))

    capacity = np.full(NODES, 1.0)
    linear, radiative = np.zeros(len(LINKS)), np.zeros(len(LINKS))
    convective = np.zeros(NODES)
    cool_side = "right" if hot_side == "left" else "left"

    # cooktop
    cell_area = width * depth / CELLS
    top = build["top"] * rng.uniform(0.85, 1.2)
    capacity[:CELLS] = cell_area * top * _IRON
    cracks = rng.uniform(0.45, 0.95)
    for row in range(ROWS):
        for column in range(COLUMNS):
            if column + 1 < COLUMNS:
                linear[link(cell(row, column), cell(row, column + 1))] = (
                    cracks * 48.0 * top * (depth / ROWS) / (width / COLUMNS)
                )
            if row + 1 < ROWS:
                linear[link(cell(row, column), cell(row + 1, column))] = (
                    cracks * 48.0 * top * (width / COLUMNS) / (depth / ROWS)
                )
    glow = rng.uniform(0.6, 0.85)
    _to_room(radiative, convective, range(CELLS), cell_area, glow, vary(2.1, 0.12))

    # firebox
    fire_columns = {"left": (0, 1), "right": (4, 5), "above": (2, 3)}[side]
    capacity[NODE["brick"]] = vary(build["bricks"])
    capacity[NODE["frame"]] = vary(0.30 * build["panel"] * 1.6 * _IRON)
    capacity[NODE["glass"]] = vary(1900.0)
    linear[link("brick", "frame")] = vary(1.6)
    linear[link("frame", "glass")] = vary(0.7)
    for column in range(COLUMNS):
        linear[link("brick", cell(0, column))] = vary(0.5) if column in fire_columns else 0.0
        linear[link("frame", cell(0, column))] = vary(0.15)
    near = side if side != "above" else hot_side
    if side == "above":
        linear[link("brick", "oven_top")] = vary(1.6)
        linear[link("brick", f"side_{hot_side}")] = vary(0.75)
        linear[link("brick", f"side_{cool_side}")] = vary(0.45)
        linear[link("brick", f"mass_{hot_side}")] = linear[link("brick", f"mass_{cool_side}")] = vary(0.4)
    else:
        linear[link("brick", f"oven_{near}")] = vary(0.35)
        linear[link("brick", f"side_{near}")] = vary(0.85)
        linear[link("brick", f"mass_{near}")] = vary(0.8)
    linear[link("brick", "mass_rear")] = vary(0.6)

    flame_radiation, flame_convection = np.zeros(NODES), np.zeros(NODES)
    emissivity = rng.uniform(0.34, 0.46)
    rows_see = rng.dirichlet([9.0, 10.0, 8.0]) * ROWS
    for row in range(ROWS):
        for column in fire_columns:
            share = cell_area * rows_see[row]
            flame_radiation[cell(row, column)] = 0.11 * emissivity * SIGMA * share
            flame_convection[cell(row, column)] = 4.0 * share
    flame_radiation[NODE["brick"]] = emissivity * SIGMA * vary(0.30, 0.1)
    flame_convection[NODE["brick"]] = vary(3.0)
    flame_radiation[NODE["glass"]] = emissivity * SIGMA * vary(0.016)
    flame_radiation[NODE["frame"]] = emissivity * SIGMA * vary(0.015)

    _draw_oven(rng, build, vary, capacity, linear, radiative, convective)
    gas = _draw_gas(rng, vary, side, hot_side, fire_columns, cell_area)

    capacity[NODE["room"]] = vary(1.6e6)
    linear[link("room", "outdoors")] = vary(190.0, 0.25)
    arrays: dict[str, FloatArray] = {
        "capacity": capacity, "linear": linear, "radiative": radiative, "convective": convective,
        "flame_radiation": flame_radiation, "flame_convection": flame_convection, **gas,
    }  # fmt: skip
    scalars = {
        "bypass_leak": rng.uniform(0.04, 0.16),
        "reference_flow": vary(build["flow"], 0.12),
        "air_leak": rng.uniform(0.14, 0.26),
        "draught": rng.uniform(0.75, 1.3),
        "burning_rate": vary(0.0072, 0.12),
        "char_rate": vary(4.2e-4, 0.12),
        "firebox_limit": vary(3.6, 0.2),
        "door_exchange": vary(9.0, 0.25),
        "thermometer_lag": rng.uniform(60.0, 330.0),
        "thermometer_rear": rng.uniform(0.0, 0.25),
        "outdoors": rng.uniform(258.0, 290.0),
    }
    return Parts(**{name: np.asarray(value, dtype=np.float64)[None] for name, value in {**arrays, **scalars}.items()})


def _to_room(
    radiative: FloatArray, convective: FloatArray, nodes: Any, area: float, emissivity: float, coefficient: float
) -> None:
    for node in nodes:
        radiative[link(node, "room")] = emissivity * SIGMA * area
        convective[node] = coefficient * area


def _draw_oven(
    rng: np.random.Generator, build: dict[str, float], vary: Any, capacity: FloatArray, linear: FloatArray,
    radiative: FloatArray, convective: FloatArray,
) -> None:  # fmt: skip
    size = rng.uniform(0.9, 1.15)
    areas = {"left": 0.15, "right": 0.15, "rear": 0.14, "floor": 0.20, "top": 0.20, "door": 0.14}
    for wall, area in areas.items():
        node = NODE[f"oven_{wall}"]
        capacity[node] = vary(size * area * build["wall"] * _IRON) * (1.3 if wall in ("floor", "door") else 0.85)
        linear[link(f"oven_{wall}", "oven_air")] = vary(7.0 * size * area, 0.1)
        linear[link(f"oven_{wall}", "load")] = 0.10
        radiative[link(f"oven_{wall}", "load")] = 0.010 * SIGMA
    capacity[NODE["oven_air"]] = vary(2600.0)
    linear[link("oven_air", "load")] = vary(0.8)
    linear[link("oven_air", "room")] = vary(0.6)
    for a, b, factor in (
        ("floor", "top", 0.07), ("left", "right", 0.05), ("rear", "door", 0.03), ("left", "floor", 0.035),
        ("right", "floor", 0.035), ("rear", "floor", 0.035), ("left", "top", 0.035), ("right", "top", 0.035),
    ):  # fmt: skip
        radiative[link(f"oven_{a}", f"oven_{b}")] = 0.8 * SIGMA * factor * size
    linear[link("oven_door", "frame")] = vary(0.3)
    panel_area = 0.34
    for side in ("left", "right"):
        capacity[NODE[f"side_{side}"]] = vary(panel_area * build["panel"] * _IRON)
        capacity[NODE[f"mass_{side}"]] = vary(build["mass"])
        linear[link(f"oven_{side}", f"mass_{side}")] = vary(2.2 if build["mass"] > 3e4 else 0.8)
        linear[link(f"mass_{side}", f"side_{side}")] = vary(1.8)
        _to_room(radiative, convective, [NODE[f"side_{side}"]], panel_area, rng.uniform(0.7, 0.95), vary(1.6, 0.1))
    capacity[NODE["mass_rear"]] = vary(1.3 * build["mass"])
    linear[link("oven_rear", "mass_rear")] = vary(1.6 if build["mass"] > 3e4 else 0.7)
    linear[link("oven_floor", "mass_rear")] = vary(1.2 if build["mass"] > 3e4 else 0.4)
    for name, area, emissivity, coefficient in (
        ("frame", 0.22, 0.85, 1.6),
        ("oven_door", 0.12, 0.75, 1.0),
        ("mass_rear", 0.30, 0.7, 0.7),
        ("glass", 0.035, 0.9, 1.8),
        ("flue", 0.40, 0.85, 1.6),
        ("pan_a", 0.05, 0.4, 1.6),
        ("pan_b", 0.05, 0.4, 1.6),
    ):
        _to_room(radiative, convective, [NODE[name]], area, emissivity, coefficient)
    capacity[NODE["flue"]] = vary(5200.0)


def _draw_gas(
    rng: np.random.Generator, vary: Any, side: str, hot_side: str, fire_columns: tuple[int, ...], cell_area: float
) -> dict[str, FloatArray]:
    """Conductances of the gas path; branch 0 runs towards the hot side (or, with the firebox at a side, across)."""
    branch = np.zeros((3, 2, NODES))
    rows_share = rng.dirichlet([7.0, 8.0, 9.0]) * ROWS
    if side == "above":
        outward = {"left": (1, 0), "right": (4, 5)}
        cool_side = "right" if hot_side == "left" else "left"
        hot, cool = outward[hot_side], outward[cool_side]
        columns: list[list[tuple[int, ...]]] = [[hot, cool], [hot[1:], cool[1:]]]
        walls = [hot_side, cool_side]
        main = rng.uniform(0.58, 0.74)
    else:
        across = (2, 3, 4, 5) if side == "left" else (3, 2, 1, 0)
        far = "right" if side == "left" else "left"
        columns = [[across[:2], fire_columns], [across[2:], ()]]
        walls = [far, side]
        main = rng.uniform(0.62, 0.80)
    for segment in range(2):
        for index in range(2):
            for column in columns[segment][index]:
                for row in range(ROWS):
                    strength = vary(24.0 if index == 0 or side == "above" else 14.0, 0.1)
                    branch[segment, index, cell(row, column)] += strength * cell_area * rows_share[row]
            branch[segment, index, NODE["oven_top"]] += vary(0.55)
    for index, wall in enumerate(walls):
        branch[2, index, NODE[f"oven_{wall}"]] = vary(2.6)
        branch[2, index, NODE[f"side_{wall}"]] = vary(0.55)
        branch[2, index, NODE[f"mass_{wall}"]] = vary(1.0)
    floor, rear, bypass, flue = (np.zeros(NODES) for _ in range(4))
    floor[NODE["oven_floor"]] = vary(2.5)
    floor[NODE["mass_rear"]] = vary(0.4)
    rear[NODE["oven_rear"]] = vary(2.3)
    rear[NODE["mass_rear"]] = vary(0.8)
    hot_columns = (
        fire_columns if side != "above" else (outward[hot_side][0], fire_columns[0 if hot_side == "left" else 1])
    )
    for column in hot_columns:
        bypass[cell(ROWS - 1, column)] = vary(14.0) * cell_area
        bypass[cell(ROWS - 2, column)] = vary(6.0) * cell_area
    bypass[NODE["mass_rear"]] = vary(0.3)
    flue[NODE["flue"]] = vary(3.6)
    return {
        "branch_share": np.array([main, 1.0 - main]),
        "branch_gas": branch,
        "floor_gas": floor,
        "rear_gas": rear,
        "bypass_gas": bypass,
        "flue_gas": flue,
    }
