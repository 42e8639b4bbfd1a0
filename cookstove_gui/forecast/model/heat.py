"""The stove's heat: fuel that dries, flames and glows, and the iron, brick and air that it warms.

A state is an array (rows, members), one column a member of the ensemble, or (rows, courses, members) where several
courses are run on under the same draws; the constants below name its rows.
Steps are exact for each lump while its surroundings hold still, so that any step length is stable.
"""

from dataclasses import dataclass

import numpy as np

from cookstove_gui.forecast.answers import FloatArray
from cookstove_gui.forecast.model.kalman import relaxation
from cookstove_gui.forecast.model.parameters import NAMES
from cookstove_gui.physics.burning import burning_at, burning_share
from cookstove_gui.physics.lumped import cooled
from cookstove_gui.stove.stove import USUAL_ROOM

PLATE, WALLS, AIR, DIAL, LINING, ROOM = range(
    6
)  # K: cooktop's mean, oven walls, oven air, oven thermometer, brick, room
FRESH, FLAMING, COALS = 6, 7, 8  # kg of wood not yet alight, alight, and wood whose heat is still in its coals
EXTRA = 9  # kW the log does not explain, into the cooktop and the gas
DRAW = 10  # logarithm of the burning rate against what air and fuel say
INLET, BYPASS = 11, 12  # how far the air and the bypass stand open, 0 to 1
SINCE_FED = 13  # min since wood went in
STATE_ROWS = 14
TEMPERATURES = slice(PLATE, ROOM + 1)
FUELS = slice(FRESH, COALS + 1)

# Provenance of every constant: MODEL.md.
STEP_MINUTES = 2.5  # min, the longest step
EXTRA_MINUTES = 25.0  # min, time constant of the heat that the log does not explain
EXTRA_DEVIATION = 0.42  # kW, its standard deviation
EXTRA_TO_PLATE = 0.6  # share of it that warms the cooktop; the rest goes with the gas round the oven
WARM_BED = 150.0  # K of cooktop over the room from which the firebox helps wood to catch and burn fully
CATCH_COLD = 0.25  # pace of catching in a cold firebox, against a warm one
FLAME_COLD = 0.5  # pace of flaming in a cold firebox, against a warm one
GAS_POWER = 0.7  # exponent of the gas's flow in its heat transfer
DRAW_MINUTES = 18.0  # min, time constant of a draught that the log does not explain
DRAW_DEVIATION = 0.17  # of the logarithm of the burning rate
ROOM_WANDER = 0.35  # K per square root of a minute, at first
ROOM_MINUTES = 1440.0  # min, time constant with which the room comes back to its usual heat
RADIATION_RISE = 260.0  # K of excess at which a surface loses heat twice as readily as near the room's temperature
PAN_DRAW = 0.12  # kJ/min/K, cooktop to a pan of water
PAN_HEAT = 345.0  # K, that pan's mean between the well and the boil
PAN_STAYS = 45.0  # min that a pan is taken to stand where nobody says that it came off
PAN_STAYS_ON = 20.0  # min that one which stands there now is taken to stay yet
DOOR_MINUTES = 2.0  # min, time constant of the oven air toward the room with the door open
DOOR_WALLS_MINUTES = 40.0  # min, the same of the oven walls
USUAL_INLET = 0.6  # air opening, 0 to 1, at which burning times hold; assumed until it is logged
BURN_SHUT = 0.08  # burning with the air shut over that with it open, before the exponent `air_power`
LAST_FLAMES = 0.15  # kg added to the flaming wood in its pace, so that the last of it burns out in time
MOST_COALS = 0.8  # share of the heat that coals can give
MOST_LEAK = 0.9  # share of the gas that can flow with the air shut
MOST_RADIANT = 0.9  # share of the heat that can radiate
LEAST_THROUGH = 0.02  # share of the gas that goes round the oven, whatever the bypass
_USUAL_BURN = np.asarray(burning_share(USUAL_INLET, BURN_SHUT))


@dataclass(frozen=True, slots=True)
class Controls:
    """What is known and the same for all members."""

    door_open: bool = False
    pans: int | FloatArray = 0  # that stand on the cooktop; (doings, 1) where several run on together
    lit: bool = False
    went_out: bool = False  # the log says so, and no fire was lit since


def positive(logarithms: FloatArray) -> dict[str, FloatArray]:
    """Parameters (members,) by name from their logarithms (parameters, members)."""
    values = np.exp(logarithms)
    return {name: values[index] for index, name in enumerate(NAMES)}


def burn(state: FloatArray, p: dict[str, FloatArray], controls: Controls, minutes: float) -> FloatArray:
    """Move wood from fresh to flaming to coals in place; heat released per minute (members,) [kJ/min]."""
    if not controls.lit:
        return np.zeros(state.shape[1:])
    drive = (burning_at(state[INLET], BURN_SHUT) / _USUAL_BURN) ** p["air_power"] * np.exp(state[DRAW])
    fresh, flaming, coals = state[FRESH], state[FLAMING], state[COALS]
    warm = np.minimum(np.maximum((state[PLATE] - state[ROOM]) / WARM_BED, 0.0), 1.0)
    caught = fresh * -np.expm1(-minutes * (CATCH_COLD + (1.0 - CATCH_COLD) * warm) / p["drying_min"])
    thickness = (flaming + LAST_FLAMES) ** (p["burn_power"] - 1.0)
    rate = drive * (FLAME_COLD + (1.0 - FLAME_COLD) * warm) / p["flaming_min"] * thickness
    burnt = flaming * -np.expm1(-minutes * rate)
    glowed = coals * -np.expm1(-minutes * drive / p["coals_min"])
    share = np.minimum(p["coals_share"], MOST_COALS)
    state[FRESH] = fresh - caught
    state[FLAMING] = flaming - burnt + caught
    state[COALS] = coals - glowed + share * burnt
    return np.asarray(p["wood_heat"] * ((1.0 - share) * burnt + glowed) / minutes, dtype=np.float64)


def warm(state: FloatArray, p: dict[str, FloatArray], controls: Controls, minutes: float, power: FloatArray) -> None:
    """Move the temperatures on in place under a heat release (members,) [kJ/min]."""
    room = state[ROOM]
    plate, walls, lining, air = state[PLATE], state[WALLS], state[LINING], state[AIR]
    extra = 60.0 * state[EXTRA]
    # Share of the gas that goes round the oven; all of it while every bypass is shut, as it mostly is.
    is_shut = not state[BYPASS].any()
    through = 1.0 if is_shut else np.maximum(1.0 - p["bypass_cut"] * state[BYPASS], LEAST_THROUGH)
    leak = np.minimum(p["air_leak"], MOST_LEAK)
    draught = leak + (1.0 - leak) * state[INLET]
    stream = p["gas_stream"] * draught
    flow = draught**GAS_POWER
    to_plate = picked_up(stream, p["plate_gas"] * flow)
    flow_round = flow if is_shut else flow * through**GAS_POWER
    to_walls = picked_up(stream * through, p["walls_gas"] * flow_round)
    radiant = np.minimum(p["radiant_share"], MOST_RADIANT) * power
    lit_plate = np.minimum(p["radiant_plate"], 1.0) * radiant
    gas = room + (power - radiant) / stream
    spent = gas - to_plate * (gas - plate) / stream
    loss_plate = p["plate_loss"] * (1.0 + np.maximum(plate - room, 0.0) / RADIATION_RISE)
    loss_walls = p["walls_loss"] * (1.0 + np.maximum(walls - room, 0.0) / RADIATION_RISE)
    if controls.door_open:
        loss_walls = loss_walls + p["walls_capacity"] / DOOR_WALLS_MINUTES
    to_pans = PAN_DRAW * controls.pans * (plate > PAN_HEAT)
    to_lining, walls_lining, between = p["plate_lining"], p["walls_lining"], p["plate_walls"]
    new_plate = _toward(
        plate,
        lit_plate + EXTRA_TO_PLATE * extra + to_plate * gas + loss_plate * room + to_lining * lining + between * walls
        + to_pans * PAN_HEAT,
        loss_plate + to_lining + between + to_plate + to_pans, p["plate_capacity"], minutes,
    )  # fmt: skip
    new_walls = _toward(
        walls,
        (1.0 - EXTRA_TO_PLATE) * through * extra
        + to_walls * spent + loss_walls * room + walls_lining * lining + between * plate,
        loss_walls + walls_lining + between + to_walls, p["walls_capacity"], minutes,
    )  # fmt: skip
    state[LINING] = _toward(
        lining, radiant - lit_plate + to_lining * plate + walls_lining * walls, to_lining + walls_lining,
        p["lining_capacity"], minutes,
    )  # fmt: skip
    pace = 1.0 / p["air_lag"]
    toward_walls = pace * 0.5 * (walls + new_walls)
    if controls.door_open:
        toward_walls, pace = toward_walls + room / DOOR_MINUTES, pace + 1.0 / DOOR_MINUTES
    new_air = cooled(air, toward_walls / pace, minutes * pace)
    state[DIAL] = cooled(state[DIAL], 0.5 * (air + new_air), minutes / p["dial_lag"])
    state[PLATE], state[WALLS], state[AIR] = new_plate, new_walls, new_air
    state[SINCE_FED] += minutes


def wander(state: FloatArray, minutes: float, random: np.random.Generator) -> None:
    """Let draught, unexplained heat and the room wander in place, as nobody can log them."""
    kept, fresh = relaxation(minutes, EXTRA_MINUTES)
    kept_draw, fresh_draw = relaxation(minutes, DRAW_MINUTES)
    jolts = random.standard_normal((3, state.shape[-1]))
    kept_room, fresh_room = relaxation(minutes, ROOM_MINUTES)
    deviation = ROOM_WANDER * np.sqrt(0.5 * ROOM_MINUTES)
    state[ROOM] = USUAL_ROOM + kept_room * (state[ROOM] - USUAL_ROOM) + deviation * fresh_room * jolts[2]
    state[EXTRA] = kept * state[EXTRA] + EXTRA_DEVIATION * fresh * jolts[0]
    state[DRAW] = kept_draw * state[DRAW] + DRAW_DEVIATION * fresh_draw * jolts[1]


def advance(
    state: FloatArray,
    p: dict[str, FloatArray],
    controls: Controls,
    minutes: float,
    random: np.random.Generator | None = None,
) -> None:
    """One step of the whole stove in place; without a generator nothing wanders."""
    power = burn(state, p, controls, minutes)
    warm(state, p, controls, minutes, power)
    if random is not None:
        wander(state, minutes, random)


def picked_up(stream: FloatArray, conductance: FloatArray) -> FloatArray:
    """Conductance [kJ/min/K] between gas as it comes and a wall of one temperature that it flows past.

    Parameters
    ----------
    stream : array
        Heat capacity rate of the gas [kJ/min/K].
    conductance : array
        Between gas and wall, as if the gas did not cool [kJ/min/K].

    Source
    ------
    Effectiveness 1 - exp(-NTU) of a heat exchanger with one side of constant temperature, Kays and London 1984.
    """
    return np.asarray(stream * -np.expm1(-conductance / stream), dtype=np.float64)


def _toward(
    temperature: FloatArray, inflow: FloatArray, conductance: FloatArray, capacity: FloatArray, minutes: float
) -> FloatArray:
    """A lump after some minutes: first order toward inflow / conductance."""
    return cooled(temperature, inflow / conductance, minutes * conductance / capacity)
