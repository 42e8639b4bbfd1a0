"""The invented stove as numbers: its thermal nodes, the ways heat passes between them, and its firebox.

Every array has a leading axis for the stoves of a batch, so that many firings run at once.
"""

from dataclasses import dataclass, fields
from typing import TypeAlias

import numpy as np
from numpy.typing import NDArray

FloatArray: TypeAlias = NDArray[np.float64]

COLUMNS, ROWS = 6, 3  # cells of the cooktop, from the left and from the front
CELLS = COLUMNS * ROWS

_NAMES = (
    "brick", "frame", "oven_left", "oven_right", "oven_rear", "oven_floor", "oven_top", "oven_door", "oven_air",
    "load", "side_left", "side_right", "mass_left", "mass_right", "mass_rear", "glass", "flue", "pan_a", "pan_b",
    "room", "outdoors",
)  # fmt: skip
NODE = {name: CELLS + index for index, name in enumerate(_NAMES)}
NODES = CELLS + len(_NAMES)
PIECES = 14  # pieces of wood told apart in the firebox
PANS = 2


def cell(row: int, column: int) -> int:
    """Node of a cooktop cell."""
    return row * COLUMNS + column


@dataclass(frozen=True, slots=True, kw_only=True)
class Parts:
    """A batch of stoves; B stoves, N nodes, E links."""

    capacity: FloatArray  # (B, N) J/K; load and pans come on top
    linear: FloatArray  # (B, E) W/K, along LINKS
    radiative: FloatArray  # (B, E) W/K4, along LINKS
    convective: FloatArray  # (B, N) W/K^1.25 to the room
    flame_radiation: FloatArray  # (B, N) W/K4, from flame and coals
    flame_convection: FloatArray  # (B, N) W/K at the reference flow
    branch_share: FloatArray  # (B, 2) of the oven gas
    branch_gas: FloatArray  # (B, 3, 2, N) W/K at the reference flow: over the top twice, then down the side
    floor_gas: FloatArray  # (B, N)
    rear_gas: FloatArray  # (B, N)
    bypass_gas: FloatArray  # (B, N)
    flue_gas: FloatArray  # (B, N)
    bypass_leak: FloatArray  # (B,) share past a shut bypass
    reference_flow: FloatArray  # (B,) kg/s, air wide open, hot flue
    air_leak: FloatArray  # (B,) share of the flow with the air shut
    draught: FloatArray  # (B,) strength of the chimney, 1 is usual
    burning_rate: FloatArray  # (B,) kg/s per m2 of wood, in a hot firebox
    char_rate: FloatArray  # (B,) kg^(1/3)/s
    firebox_limit: FloatArray  # (B,) kg of wood that fits
    door_exchange: FloatArray  # (B,) W/K of the oven air with the door open
    thermometer_lag: FloatArray  # (B,) s
    thermometer_rear: FloatArray  # (B,) share of the rear wall it sees, 0 to 1
    outdoors: FloatArray  # (B,) K


def stack(parts: list[Parts]) -> Parts:
    """Several batches as one."""
    return Parts(**{f.name: np.concatenate([getattr(p, f.name) for p in parts]) for f in fields(Parts)})


def repeat(parts: Parts, times: int) -> Parts:
    """Every stove of a batch `times` times, copies side by side."""
    return Parts(**{f.name: np.repeat(getattr(parts, f.name), times, axis=0) for f in fields(Parts)})


def _links() -> list[tuple[int, int]]:
    pairs: list[tuple[int, int]] = []
    for row in range(ROWS):
        for column in range(COLUMNS):
            if column + 1 < COLUMNS:
                pairs.append((cell(row, column), cell(row, column + 1)))
            if row + 1 < ROWS:
                pairs.append((cell(row, column), cell(row + 1, column)))
    walls = ["oven_left", "oven_right", "oven_rear", "oven_floor", "oven_top", "oven_door"]
    pairs += [(NODE[wall], NODE["oven_air"]) for wall in walls]
    pairs += [(NODE[wall], NODE["load"]) for wall in walls]
    pairs += [
        (NODE[a], NODE[b])
        for a, b in (
            ("oven_air", "load"),
            ("oven_floor", "oven_top"),
            ("oven_left", "oven_right"),
            ("oven_rear", "oven_door"),
            ("oven_left", "oven_floor"),
            ("oven_right", "oven_floor"),
            ("oven_rear", "oven_floor"),
            ("oven_left", "oven_top"),
            ("oven_right", "oven_top"),
            ("oven_air", "room"),
            ("oven_door", "frame"),
            ("brick", "frame"),
            ("brick", "oven_left"),
            ("brick", "oven_right"),
            ("brick", "oven_top"),
            ("brick", "side_left"),
            ("brick", "side_right"),
            ("oven_left", "mass_left"),
            ("oven_right", "mass_right"),
            ("oven_rear", "mass_rear"),
            ("oven_floor", "mass_rear"),
            ("brick", "mass_left"),
            ("brick", "mass_right"),
            ("brick", "mass_rear"),
            ("mass_left", "side_left"),
            ("mass_right", "side_right"),
            ("frame", "glass"),
            ("room", "outdoors"),
        )
    ]
    pairs += [(NODE["brick"], cell(0, column)) for column in range(COLUMNS)]
    pairs += [(NODE["frame"], cell(0, column)) for column in range(COLUMNS)]
    exposed = ["frame", "oven_door", "side_left", "side_right", "mass_rear", "glass", "flue", "pan_a", "pan_b"]
    pairs += [(node, NODE["room"]) for node in [*range(CELLS), *(NODE[name] for name in exposed)]]
    return pairs


LINKS = _links()
LINK = {pair: index for index, pair in enumerate(LINKS)}
LINK_FROM = np.array([a for a, _ in LINKS])
LINK_TO = np.array([b for _, b in LINKS])
INCIDENCE = np.zeros((len(LINKS), NODES))
INCIDENCE[np.arange(len(LINKS)), LINK_FROM] = -1.0
INCIDENCE[np.arange(len(LINKS)), LINK_TO] = 1.0


def link(a: str | int, b: str | int) -> int:
    """Index of the link between two nodes."""
    first = NODE[a] if isinstance(a, str) else a
    second = NODE[b] if isinstance(b, str) else b
    return LINK[first, second] if (first, second) in LINK else LINK[second, first]
