"""The fuel bed: pieces that dry, give off gas and leave coals, and the flame's heat balance."""

from dataclasses import dataclass

import numpy as np

from tests.world.parts import PIECES, FloatArray, Parts

SIGMA = 5.670374419e-8  # W/m2K4
GAS_HEAT = 1150.0  # J/kgK, flue gas
HEAT_OF_VOLATILES = 15.4e6  # J/kg, net
HEAT_OF_CHAR = 30.0e6  # J/kg
HEAT_OF_VAPORISATION = 2.6e6  # J/kg of water, with warming it up
CHAR_YIELD = 0.20
AIR_FOR_VOLATILES = 5.0  # kg/kg
AIR_FOR_CHAR = 11.5  # kg/kg
PAPER_POWER = 5000.0  # W of the paper that lights the kindling
SMALLEST_FLAME = 0.3  # share of the firebox that even a small flame fills
EXCESS_AIR = 1.8  # air that mixes into the flame, over what it burns
HEAT_PER_AIR = 3.1e6  # J/kg of air burnt
FULL_FLAME_POWER = 6000.0  # W at which the flame fills the firebox
PAPER_SECONDS = 360.0


@dataclass(slots=True, kw_only=True)
class FuelBed:
    """Fuel in a batch of fireboxes."""

    water: FloatArray  # (B, PIECES) kg
    wood: FloatArray  # (B, PIECES) kg, dry, not yet charred
    fresh: FloatArray  # (B, PIECES) kg the piece had when it was put in
    area: FloatArray  # (B, PIECES) m2 when it was put in
    char: FloatArray  # (B,) kg
    paper: FloatArray  # (B,) kg-equivalent of igniting paper left [J]
    flame: FloatArray  # (B,) K

    @classmethod
    def empty(cls, batch: int, temperature: FloatArray) -> "FuelBed":
        """Cold fireboxes."""
        zeros = np.zeros((batch, PIECES))
        return cls(
            water=zeros, wood=zeros.copy(), fresh=zeros + 1e-3, area=zeros.copy(),
            char=np.zeros(batch), paper=np.zeros(batch), flame=np.array(temperature),
        )  # fmt: skip

    def add(self, row: int, mass: float, moisture: float, thickness: float, pieces: int) -> None:
        """Put wood on one fire; what is left of the most burnt pieces is swept together with the new ones."""
        pieces = max(1, min(pieces, PIECES // 2))
        dry = mass / (1.0 + moisture)
        slots = np.argsort(self.wood[row] + self.water[row], kind="stable")[:pieces]
        # split wood: area of a square bar of that thickness, 500 kg/m3
        area = 4.0 * (dry / pieces) / (500.0 * thickness)
        left = self.area[row, slots] * (self.wood[row, slots] / self.fresh[row, slots]) ** (2 / 3)
        self.wood[row, slots] += dry / pieces
        self.water[row, slots] += dry * moisture / pieces
        self.fresh[row, slots] = self.wood[row, slots]
        self.area[row, slots] = area + left

    def energy(self) -> FloatArray:
        """Heat that the fuel can still give (B,) [J]."""
        wood = self.wood.sum(1)
        return np.asarray(
            wood * ((1 - CHAR_YIELD) * HEAT_OF_VOLATILES + CHAR_YIELD * HEAT_OF_CHAR)
            + self.char * HEAT_OF_CHAR
            + self.paper
        )


@dataclass(slots=True, kw_only=True)
class Burning:
    """What a step of the fire gives, per second."""

    release: FloatArray  # (B,) W set free in the firebox
    lost_unburnt: FloatArray  # (B,) W of gas that leaves unburnt
    drying: FloatArray  # (B,) W taken by drying, leaving as latent heat


def burn(bed: FuelBed, parts: Parts, brick: FloatArray, air: FloatArray, step: float) -> Burning:
    """Let the fuel burn for a step of `step` seconds with `air` kg/s, and say what heat came of it."""
    seen = 0.72 * bed.flame + 0.28 * brick  # pieces lie between flame and glowing brick
    blow = (air / parts.reference_flow) ** 0.5
    share_left = np.clip(bed.wood / bed.fresh, 0.0, 1.0) ** (2 / 3)
    front = bed.area * share_left
    wetness = bed.water / (bed.water + 0.08 * bed.wood + 1e-9)
    heat = 1.0 - np.exp(-np.maximum(seen - 480.0, 0.0) / 260.0)
    charring = (parts.burning_rate * heat * (0.72 + 0.36 * blow))[:, None] * front * (1.0 - 0.85 * wetness)
    charring = np.minimum(charring, bed.wood / step)
    flux = 11.0 * np.maximum(seen - 373.0, 0.0)[:, None]
    drying = np.minimum(flux * front * wetness / HEAT_OF_VAPORISATION, bed.water / step)

    glow = 1.0 / (1.0 + np.exp(-(seen + 120.0 - 640.0) / 45.0))
    coals = parts.char_rate * bed.char ** (2 / 3) * glow * (air / parts.reference_flow) ** 0.8
    coals = np.minimum(np.minimum(coals, bed.char / step), 0.6 * air / AIR_FOR_CHAR)

    gas = (1.0 - CHAR_YIELD) * charring.sum(1)
    spare = np.maximum(air - AIR_FOR_CHAR * coals, 0.0)
    enough = 1.0 - np.exp(-1.6 * spare / (AIR_FOR_VOLATILES * gas + 1e-9))
    lit = 1.0 / (1.0 + np.exp(-(bed.flame - 560.0) / 60.0))
    burnt = enough * lit
    paper = np.minimum(bed.paper / step, PAPER_POWER)

    bed.water = np.maximum(bed.water - drying * step, 0.0)
    bed.wood = np.maximum(bed.wood - charring * step, 0.0)
    bed.char = np.maximum(bed.char + (CHAR_YIELD * charring.sum(1) - coals) * step, 0.0)
    bed.paper = np.maximum(bed.paper - paper * step, 0.0)
    release = gas * burnt * HEAT_OF_VOLATILES + coals * HEAT_OF_CHAR + paper
    return Burning(
        release=release,
        lost_unburnt=gas * (1.0 - burnt) * HEAT_OF_VOLATILES,
        drying=drying.sum(1) * HEAT_OF_VAPORISATION,
    )


def flame_balance(
    bed: FuelBed, parts: Parts, nodes: FloatArray, power: FloatArray, flow: FloatArray
) -> tuple[FloatArray, FloatArray]:
    """Flame temperature, and heat to every node (B, N) [W], from power set free and gas flow.

    Newton steps on  power = flow cp (flame - room) + radiation + convection; what they leave over goes up with the gas.
    """
    fourth = nodes**4
    ratio = np.sqrt(flow / parts.reference_flow)
    size = np.clip(SMALLEST_FLAME + (1.0 - SMALLEST_FLAME) * power / FULL_FLAME_POWER, SMALLEST_FLAME, 1.0)
    seen = parts.flame_radiation * size[:, None]  # a small flame fills little of the firebox
    radiation = seen.sum(1)
    radiation_in = (seen * fourth).sum(1)
    convection = parts.flame_convection.sum(1) * ratio
    convection_in = (parts.flame_convection * nodes).sum(1) * ratio
    # the flame takes in what air it needs; the rest passes it by and mixes in above
    carried = np.clip(EXCESS_AIR * power / HEAT_PER_AIR, 0.12 * flow, flow) * GAS_HEAT
    room = nodes[:, -2]
    flame = np.maximum(bed.flame, 700.0)
    for _ in range(4):
        excess = (
            carried * (flame - room) + radiation * flame**4 - radiation_in + convection * flame - convection_in - power
        )
        slope = carried + 4.0 * radiation * flame**3 + convection
        flame = np.clip(flame - excess / slope, 250.0, 1700.0)
    bed.flame = flame
    to_nodes = seen * (flame[:, None] ** 4 - fourth) + parts.flame_convection * ratio[:, None] * (
        flame[:, None] - nodes
    )
    return flame, to_nodes
