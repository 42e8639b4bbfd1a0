"""One step of time for a batch of invented stoves: fire, gas path, metal, oven, pans, room."""

from dataclasses import dataclass, field, fields

import numpy as np

from tests.world.fire import GAS_HEAT, SIGMA, FuelBed, burn, flame_balance
from tests.world.parts import (
    CELLS,
    COLUMNS,
    INCIDENCE,
    LINK_FROM,
    LINK_TO,
    NODE,
    NODES,
    PANS,
    ROWS,
    FloatArray,
    Parts,
    link,
)

STEP = 20.0  # s
AIR_HEAT = 1006.0  # J/kgK
WATER_HEAT = 4186.0  # J/kgK
RACK, TRIVET = 600.0, 300.0  # J/K that stay in the oven and on the top when nothing is there
BOILING = 373.15  # K
VAPORISATION = 2.257e6  # J/kg at the boil
_ROOM, _OUT, _AIR, _LOAD = NODE["room"], NODE["outdoors"], NODE["oven_air"], NODE["load"]
_PAN = NODE["pan_a"]


@dataclass(slots=True, kw_only=True)
class Firing:
    """Everything that changes in a batch of stoves while they burn."""

    nodes: FloatArray  # (B, N) K
    bed: FuelBed
    air: FloatArray  # (B,) 0..1
    bypass: FloatArray  # (B,)
    door_seconds: FloatArray  # (B,) s that the oven door stays open yet
    load_water: FloatArray  # (B,) kg in the oven load
    load_dry: FloatArray  # (B,) J/K of the oven load without its water
    pan_water: FloatArray  # (B, PANS) kg
    pan_cell: FloatArray  # (B, PANS) number of the cooktop spot below, -1 for none
    pan_contact: FloatArray  # (B, PANS) W/K
    pan_metal: FloatArray  # (B, PANS) J/K
    flue_gas: FloatArray  # (B,) K
    gust: FloatArray  # (B,) factor on the draught
    thermometer: FloatArray  # (B,) K, the oven thermometer's own temperature
    ledger: FloatArray = field(default_factory=lambda: np.zeros((0, 3)))  # (B, 3) J: fuel freed, left, carried in

    @classmethod
    def cold(cls, parts: Parts, room: FloatArray) -> "Firing":
        """Stoves at the temperature of their rooms."""
        batch = len(room)
        nodes = np.repeat(np.asarray(room, dtype=np.float64)[:, None], NODES, axis=1)
        nodes[:, _OUT] = parts.outdoors
        zeros = np.zeros(batch)
        return cls(
            nodes=nodes, bed=FuelBed.empty(batch, room), air=zeros + 0.3, bypass=zeros + 1.0, door_seconds=zeros.copy(),
            load_water=zeros.copy(), load_dry=zeros.copy(), pan_water=np.zeros((batch, PANS)),
            pan_cell=np.full((batch, PANS), -1.0), pan_contact=np.zeros((batch, PANS)),
            pan_metal=np.zeros((batch, PANS)), flue_gas=np.array(room), gust=zeros + 1.0, thermometer=np.array(room),
            ledger=np.zeros((batch, 3)),
        )  # fmt: skip


def copy(firing: Firing, rows: slice = slice(None), times: int = 1) -> Firing:
    """A copy of some rows, each `times` times."""

    def pick(array: FloatArray) -> FloatArray:
        return np.array(np.repeat(array[rows], times, axis=0))

    bed = FuelBed(**{f.name: pick(getattr(firing.bed, f.name)) for f in fields(FuelBed)})
    rest = {f.name: pick(getattr(firing, f.name)) for f in fields(Firing) if f.name != "bed"}
    return Firing(bed=bed, **rest)


def gather(firings: list[Firing]) -> Firing:
    """Several batches as one."""
    bed = FuelBed(**{f.name: np.concatenate([getattr(x.bed, f.name) for x in firings]) for f in fields(FuelBed)})
    rest = {f.name: np.concatenate([getattr(x, f.name) for x in firings]) for f in fields(Firing) if f.name != "bed"}
    return Firing(bed=bed, **rest)


def capacities(firing: Firing, parts: Parts) -> FloatArray:
    """Heat capacity of every node (B, N) [J/K], with what stands on the stove and in the oven."""
    capacity = parts.capacity.copy()
    capacity[:, _LOAD] = RACK + firing.load_dry + firing.load_water * WATER_HEAT
    capacity[:, _PAN : _PAN + PANS] = TRIVET + firing.pan_metal + firing.pan_water * WATER_HEAT
    return capacity


def air_flow(firing: Firing, parts: Parts) -> FloatArray:
    """Gas through the firebox (B,) [kg/s], drawn by the chimney."""
    pull = np.maximum(1.0 - firing.nodes[:, _ROOM] / np.maximum(firing.flue_gas, 250.0), 0.03) / 0.4
    opening = parts.air_leak + (1.0 - parts.air_leak) * firing.air
    drag = 1.0 + 0.25 * firing.bypass  # the straight way is the easier one
    return parts.reference_flow * opening * np.sqrt(pull * parts.draught * firing.gust) * drag


def advance(firing: Firing, parts: Parts, step: float = STEP) -> None:
    """Move a batch on by one step, in place."""
    nodes = firing.nodes
    flow = air_flow(firing, parts)
    fire = burn(firing.bed, parts, nodes[:, NODE["brick"]], flow, step)
    power = np.maximum(fire.release - fire.drying, -500.0)
    _, gain = flame_balance(firing.bed, parts, nodes, power, flow)
    room = nodes[:, _ROOM].copy()
    carried = flow * GAS_HEAT
    leaving = room + (power - gain.sum(1)) / carried
    leaving = _gas_path(firing, parts, gain, leaving, flow)
    firing.flue_gas += (leaving - firing.flue_gas) * min(1.0, step / 40.0)
    infiltration = flow * AIR_HEAT * (room - nodes[:, _OUT])  # the fire's air comes in from outdoors by the room
    gain[:, _ROOM] -= infiltration
    through_walls = _metal(firing, parts, gain, step)
    capacity = capacities(firing, parts)
    gain[:, _OUT] = 0.0
    nodes += gain * step / capacity
    _boil(firing, capacity, step)
    seen = nodes[:, _AIR] + parts.thermometer_rear * (nodes[:, NODE["oven_rear"]] - nodes[:, _AIR])
    firing.thermometer += (seen - firing.thermometer) * np.minimum(1.0, step / parts.thermometer_lag)
    firing.door_seconds = np.maximum(firing.door_seconds - step, 0.0)
    firing.ledger[:, 0] += (fire.release + fire.lost_unburnt) * step
    chimney = carried * (leaving - room) + fire.lost_unburnt + fire.drying
    firing.ledger[:, 1] += (chimney + infiltration + through_walls) * step


def _exchange(conductance: FloatArray, nodes: FloatArray, gas: FloatArray, carried: FloatArray) -> FloatArray:
    """Heat from a stream of gas to the nodes it passes (..., N) [W]: effectiveness of a stream at constant wall."""
    total = conductance.sum(-1) + 1e-9
    wall = (conductance * nodes).sum(-1) / total
    heat = carried * (gas - wall) * (1.0 - np.exp(-total / np.maximum(carried, 1e-9)))
    return np.asarray(conductance * ((wall + heat / total)[..., None] - nodes))


def _gas_path(firing: Firing, parts: Parts, gain: FloatArray, leaving: FloatArray, flow: FloatArray) -> FloatArray:
    """Send the gas through cooktop, oven channels and flue; returns the temperature with which it leaves."""
    nodes = firing.nodes
    vigour = 0.25 + 0.75 * (flow / parts.reference_flow) ** 0.7
    straight = parts.bypass_leak + (1.0 - parts.bypass_leak) * 0.9 * firing.bypass
    round_oven = flow * (1.0 - straight) * GAS_HEAT
    branch = round_oven[:, None] * parts.branch_share
    gas = np.repeat(leaving[:, None], 2, axis=1)
    for segment in range(3):
        strength = (0.3 + 0.7 * parts.branch_share * (1.0 - straight)[:, None]) * vigour[:, None]
        heat = _exchange(parts.branch_gas[:, segment] * strength[..., None], nodes[:, None, :], gas, branch)
        gain += heat.sum(1)
        gas = gas - heat.sum(2) / np.maximum(branch, 1e-9)
    oven_gas = (gas * parts.branch_share).sum(1)
    for conductance in (parts.floor_gas, parts.rear_gas):
        heat = _exchange(conductance * (vigour * (1.0 - 0.6 * straight))[:, None], nodes, oven_gas, round_oven)
        gain += heat
        oven_gas = oven_gas - heat.sum(1) / np.maximum(round_oven, 1e-9)
    past = flow * straight * GAS_HEAT
    heat = _exchange(parts.bypass_gas * (vigour * straight)[:, None], nodes, leaving, past)
    gain += heat
    short_gas = leaving - heat.sum(1) / np.maximum(past, 1e-9)
    carried = flow * GAS_HEAT
    mixed = straight * short_gas + (1.0 - straight) * oven_gas
    heat = _exchange(parts.flue_gas * vigour[:, None], nodes, mixed, carried)
    gain += heat
    return np.asarray(mixed - heat.sum(1) / carried)


def _metal(firing: Firing, parts: Parts, gain: FloatArray, step: float) -> FloatArray:
    """Add what passes between the parts of the stove, pans, load and room; returns what leaves the room."""
    nodes = firing.nodes
    here, there = nodes[:, LINK_FROM], nodes[:, LINK_TO]
    passing = parts.linear * (here - there) + parts.radiative * (here**4 - there**4)
    gain += passing @ INCIDENCE
    over = nodes - nodes[:, [_ROOM]]
    natural = parts.convective * over * (np.abs(over) + 1e-6) ** 0.25
    gain -= natural
    gain[:, _ROOM] += natural.sum(1)

    ajar = np.minimum(firing.door_seconds / step, 1.0)
    lost = ajar * parts.door_exchange * (nodes[:, _AIR] - nodes[:, _ROOM])
    gain[:, _AIR] -= lost
    gain[:, _ROOM] += lost
    for wall in ("oven_floor", "oven_rear", "oven_top"):
        glow = ajar * 0.06 * SIGMA * (nodes[:, NODE[wall]] ** 4 - nodes[:, _ROOM] ** 4)
        gain[:, NODE[wall]] -= glow
        gain[:, _ROOM] += glow
    for pan in range(PANS):
        under = SPOT_WEIGHTS[firing.pan_cell[:, pan].astype(int)] * (firing.pan_cell[:, pan] >= 0)[:, None]
        heat = firing.pan_contact[:, pan, None] * under * (nodes[:, :CELLS] - nodes[:, _PAN + pan, None])
        gain[:, :CELLS] -= heat
        gain[:, _PAN + pan] += heat.sum(1)
    return np.asarray(passing[:, link("room", "outdoors")])


def _boil(firing: Firing, capacity: FloatArray, step: float) -> None:
    """Turn heat above the boiling point into steam, which leaves; take the steam's heat into the ledger."""
    columns = [_LOAD, *(_PAN + pan for pan in range(PANS))]
    waters = np.column_stack([firing.load_water * 0.35, firing.pan_water])  # crumb and crust keep most of their water
    over = np.maximum(firing.nodes[:, columns] - BOILING, 0.0) * capacity[:, columns]
    steam = np.minimum(over / VAPORISATION, waters)
    firing.nodes[:, columns] -= steam * VAPORISATION / capacity[:, columns]
    # steam takes its own sensible heat with it, measured from 0 K of liquid as the capacities are
    kept = firing.nodes[:, columns] * WATER_HEAT * steam
    firing.load_water = firing.load_water - steam[:, 0]
    firing.pan_water = firing.pan_water - steam[:, 1:]
    firing.ledger[:, 1] += (steam * VAPORISATION + kept).sum(1)


def put_in_oven(firing: Firing, row: int, water: float, dry: float, temperature: float) -> None:
    """Exchange the oven's load for another one (water [kg], dry [J/K], [K])."""
    firing.ledger[row, 1] += (RACK + firing.load_dry[row] + firing.load_water[row] * WATER_HEAT) * firing.nodes[
        row, _LOAD
    ]
    firing.load_water[row], firing.load_dry[row] = water, dry
    firing.nodes[row, _LOAD] = temperature
    firing.ledger[row, 2] += (RACK + dry + water * WATER_HEAT) * temperature


def put_on_top(
    firing: Firing, row: int, pan: int, where: int, water: float, metal: float, contact: float, temperature: float
) -> None:
    """Set a pan of water on a spot of the cooktop (0 to 5, front row first); `where` -1 takes it away."""
    node = _PAN + pan
    old = TRIVET + firing.pan_metal[row, pan] + firing.pan_water[row, pan] * WATER_HEAT
    firing.ledger[row, 1] += old * firing.nodes[row, node]
    firing.pan_cell[row, pan], firing.pan_water[row, pan] = where, water
    firing.pan_metal[row, pan], firing.pan_contact[row, pan] = metal, contact
    firing.nodes[row, node] = temperature
    firing.ledger[row, 2] += (TRIVET + metal + water * WATER_HEAT) * temperature


def cells_at(x: float, y: float) -> tuple[tuple[int, float], ...]:
    """Cooktop cells round a point (0..1, 0..1) with their weights."""
    u, v = np.clip(x * COLUMNS - 0.5, 0, COLUMNS - 1.0), np.clip(y * ROWS - 0.5, 0, ROWS - 1.0)
    left, front = int(min(u, COLUMNS - 2)), int(min(v, ROWS - 2))
    a, b = u - left, v - front
    corners = (
        (front, left, (1 - a) * (1 - b)),
        (front, left + 1, a * (1 - b)),
        (front + 1, left, (1 - a) * b),
        (front + 1, left + 1, a * b),
    )
    return tuple((row * COLUMNS + column, float(weight)) for row, column, weight in corners)


SPOT_WEIGHTS = np.zeros((6, CELLS))  # front left, middle, right, then back
for _number, (_x, _y) in enumerate((x, y) for y in (0.25, 0.75) for x in (1 / 6, 1 / 2, 5 / 6)):
    for _cell, _weight in cells_at(_x, _y):
        SPOT_WEIGHTS[_number, _cell] += _weight
