"""A third invented world, unlike the first two where it matters, for judging on stoves that nobody tuned to.

Wood burns piece by piece: a split warms until it catches, then a front of char moves in from its skin; the draught is a
stack that the warm flue and the wind pull; hot gas gives off its heat along a row of plates and then round an oven
whose brick is a slab of layers; the oven's thermometer lags twice. Its cooks look at the fire instead of the clock,
overshoot, forget and leave rows out. Temperatures in kelvin, times in minutes, masses in kilograms, heat in kilojoules.
"""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from datetime import UTC, datetime, timedelta

import numpy as np

from cookstove_gui.stove.entries import Entry
from cookstove_gui.stove.stove import Firebox, Stove, stove_with_default_spots
from tests.world.batches import futures, rows_of
from tests.world.parts import FloatArray
from tests.world.third_hands import SPOTS, Happened, written

PIECES = 48  # splits that one firing can burn
PLATES, LAYERS = 4, 4  # plates along the gas's way, layers of the oven's brick
DRAWS = 9  # random numbers a minute for the cook and the weather
AFTER = 190  # minutes that the truth goes on after the last row
STEPS = 4  # a minute
AIR_HEAT = 1.1  # kJ/kg/K of flue gas
VOLATILE, CHAR = 15.0e3, 31.0e3  # kJ/kg
CHAR_SHARE = 0.2  # of dry wood
TOO_HOT_TOP = 700.0  # K of the first plate at which a cook shuts the air
BANDS_F = ((300, 350), (325, 375), (350, 400), (375, 425), (400, 450))


@dataclass(frozen=True, slots=True, kw_only=True)
class Make:
    """Numbers of a batch of stoves and their cooks, one row each."""

    draught: FloatArray  # kg/min of air at full opening and 200 K of flue
    leak: FloatArray  # opening that is left when the air is shut
    plate_capacity: FloatArray  # kJ/K of each plate
    plate_film: FloatArray  # kJ/min/K of gas to plate at 1 kg/min
    fire_view: FloatArray  # share of the fire's heat that radiates onto the first plate
    plate_loss: FloatArray  # kJ/min/K of each plate
    oven_film: FloatArray  # kJ/min/K of gas to the oven's shell at 1 kg/min
    shell_capacity: FloatArray  # kJ/K
    shell_loss: FloatArray
    brick_capacity: FloatArray  # kJ/K of each layer
    brick_path: FloatArray  # kJ/min/K between layers
    top_to_oven: FloatArray  # kJ/min/K
    air_pace: FloatArray  # 1/min of the oven's air toward its shell, at 40 K between them
    catch: FloatArray  # min for a split to catch over a hot bed
    front: FloatArray  # share of a split's radius that chars in a minute in a good fire
    char_pace: FloatArray  # 1/min at a draught of 1 kg/min
    lags: FloatArray  # (B, 2) min of the oven thermometer
    sides: FloatArray  # (B, 3) of the cooktop's six spots: left to right, front to back, unevenness
    eye: FloatArray  # kg of burning wood below which the cook feeds
    splits: FloatArray  # put in at a time
    mass: FloatArray  # kg of a split
    moisture: FloatArray  # share of water in the wood
    haste: FloatArray  # of the air a cook turns at a look
    forgets: FloatArray  # chance that a cook who should feed is away
    gusts: FloatArray  # standard deviation of the wind's pull


@dataclass(slots=True, kw_only=True)
class State:
    """What changes, one row a firing."""

    core: FloatArray  # (B, PIECES) kg of wood not yet charred
    whole: FloatArray  # (B, PIECES) kg that each piece was
    warmth: FloatArray  # (B, PIECES) 0 cold to 1 alight
    char: FloatArray  # kg
    plates: FloatArray  # (B, PLATES)
    shell: FloatArray
    brick: FloatArray  # (B, LAYERS)
    air: FloatArray
    bulb: FloatArray  # (B, 2)
    flue: FloatArray
    room: FloatArray
    wind: FloatArray
    opening: FloatArray
    bypass: FloatArray
    door: FloatArray  # minutes that it stays open yet
    dough: FloatArray  # kg of cold food in the oven
    away: FloatArray  # minutes the cook is away yet
    used: FloatArray


def make_stove(seed: int) -> tuple[Make, str, str]:
    """(make of one, kind, side of the firebox) of a stove."""
    rng = np.random.default_rng([171, seed])
    kind, side = ("sheet", "cast", "brick")[seed % 3], ("left", "right", "above")[(seed // 3) % 3]
    size = rng.uniform(0.75, 1.3)
    heavy = {"sheet": 0.55, "cast": 1.0, "brick": 1.25}[kind]
    brick = {"sheet": 2.0, "cast": 9.0, "brick": 34.0}[kind]
    tilt = {"left": -1.0, "right": 1.0, "above": 0.0}[side]
    one = {
        "draught": 0.40 * size * rng.uniform(0.85, 1.2), "leak": rng.uniform(0.04, 0.16),
        "plate_capacity": 9.0 * heavy * size * rng.uniform(0.85, 1.2),
        "plate_film": 0.30 * size * rng.uniform(0.8, 1.2),
        "fire_view": rng.uniform(0.12, 0.24), "plate_loss": 0.21 * size * rng.uniform(0.85, 1.2),
        "oven_film": 1.05 * size * rng.uniform(0.75, 1.3), "shell_capacity": 14.0 * heavy * size,
        "shell_loss": 0.2 * size * rng.uniform(0.8, 1.2), "brick_capacity": brick * size / LAYERS * 2.0,
        "brick_path": {"sheet": 0.5, "cast": 0.8, "brick": 1.5}[kind] * rng.uniform(0.7, 1.3),
        "top_to_oven": 0.14 * size * rng.uniform(0.6, 1.4), "air_pace": rng.uniform(0.09, 0.25),
        "catch": rng.uniform(2.0, 6.0), "front": rng.uniform(0.022, 0.045), "char_pace": rng.uniform(0.07, 0.13),
        "lags": rng.uniform([0.8, 0.8], [3.5, 3.5]), "sides": [tilt * rng.uniform(0.1, 0.4), rng.normal(0, 0.12), 0.06],
        "eye": rng.uniform(0.15, 0.8), "splits": float(rng.integers(1, 4)), "mass": rng.uniform(0.35, 0.9),
        "moisture": rng.uniform(0.1, 0.28), "haste": rng.uniform(0.1, 0.5), "forgets": rng.choice([0.0, 0.1, 0.3]),
        "gusts": rng.choice([0.03, 0.1, 0.22]),
    }  # fmt: skip
    return Make(**{name: np.asarray(value, dtype=np.float64)[None] for name, value in one.items()}), kind, side


def _burn(state: State, make: Make, flow: FloatArray, minutes: float) -> FloatArray:
    """Heat given off (B,) [kJ/min]; moves wood to char to ash."""
    glow = np.clip((state.plates[:, 0] - state.room) / 180.0, 0.12, 1.0)
    fire = np.clip(flow / 0.25, 0.15, 1.4)
    state.warmth = np.minimum(
        1.0, state.warmth + ((0.35 + 0.65 * glow) * (1.0 - 1.6 * make.moisture) / make.catch)[:, None] * minutes
    )
    radius = np.sqrt(np.clip(state.core / np.maximum(state.whole, 1e-9), 0.0, 1.0))
    alight = (state.warmth >= 1.0) & (state.core > 0.0)
    pace = (make.front * np.sqrt(fire) * (0.45 + 0.55 * glow))[:, None]
    after = np.where(alight, state.whole * np.maximum(radius - pace * minutes, 0.0) ** 2, state.core)
    charred = (state.core - after).sum(axis=1)
    state.core = after
    water = charred * make.moisture
    glowed = state.char * -np.expm1(-minutes * make.char_pace * (0.15 + flow))
    state.char = state.char + CHAR_SHARE * (charred - water) - glowed
    wished = VOLATILE * (1.0 - CHAR_SHARE) * (charred - water) + CHAR * glowed - 2600.0 * water
    # A kilogram of air burns about 3 MJ worth of wood; flames short of air leave as smoke.
    return np.minimum(np.maximum(wished, 0.0) / minutes, 2800.0 * np.maximum(flow, 0.02))


def heat(state: State, make: Make, draws: FloatArray) -> None:
    """One minute of fire, gas, iron and brick."""
    state.wind += -state.wind / 9.0 + make.gusts * np.sqrt(2.0 / 9.0) * (draws[:, 8] - 0.5) * 3.46
    minutes = 1.0 / STEPS
    for _ in range(STEPS):
        area = make.leak + (1.0 - make.leak) * state.opening
        pull = np.sqrt(np.clip((state.flue - state.room + 25.0) / 200.0, 0.05, 2.0)) * np.exp(state.wind)
        flow = make.draught * area * pull * (1.0 + 0.25 * state.bypass)
        power = _burn(state, make, flow, minutes)
        seen = make.fire_view * power
        stream = np.maximum(flow, 0.03) * AIR_HEAT * 1.15
        gas = state.room + (power - seen) / stream
        for place in range(PLATES):
            film = make.plate_film * flow**0.8
            given = stream * -np.expm1(-film / stream) * (gas - state.plates[:, place])
            gas = gas - given / stream
            rise = state.plates[:, place] - state.room
            lost = make.plate_loss * rise * (1.0 + np.clip(rise, 0.0, 600.0) / 240.0)
            below = make.top_to_oven / PLATES * (state.plates[:, place] - state.shell)
            beside = sum(
                0.12 * (state.plates[:, place] - state.plates[:, other])
                for other in (place - 1, place + 1)
                if 0 <= other < PLATES
            )
            heat = given + (seen if place == 0 else 0.0) - lost - below - beside
            state.plates[:, place] += heat / make.plate_capacity * minutes
            state.shell += below / make.shell_capacity * minutes
        round_oven = stream * (1.0 - 0.85 * state.bypass)
        taken = round_oven * -np.expm1(-make.oven_film * flow**0.8 / stream) * (gas - state.shell)
        into_brick = make.brick_path * (state.shell - state.brick[:, 0])
        lost = make.shell_loss * (state.shell - state.room)
        state.shell += (taken - into_brick - lost) / make.shell_capacity * minutes
        flows = make.brick_path[:, None] * (state.brick[:, :-1] - state.brick[:, 1:])
        state.brick[:, 0] += into_brick / make.brick_capacity * minutes
        state.brick[:, :-1] -= flows / make.brick_capacity[:, None] * minutes
        state.brick[:, 1:] += flows / make.brick_capacity[:, None] * minutes
        state.brick[:, -1] -= 0.05 * (state.brick[:, -1] - state.room) / make.brick_capacity * minutes
        state.flue += (gas - taken / stream - state.flue) / 2.5 * minutes
        apart = state.shell - state.air
        pace = make.air_pace * (np.abs(apart) / 40.0 + 0.2) ** 0.25
        ajar = np.clip(state.door, 0.0, 1.0)
        state.air += minutes * (pace * apart - 0.3 * ajar * (state.air - state.room) - 6.0 * state.dough)
        state.dough *= 1.0 - 0.05 * minutes
        state.door = np.maximum(state.door - minutes, 0.0)
        state.bulb[:, 0] += minutes * (state.air - state.bulb[:, 0]) / make.lags[:, 0]
        state.bulb[:, 1] += minutes * (state.bulb[:, 0] - state.bulb[:, 1]) / make.lags[:, 1]


def work(
    state: State, make: Make, minute: FloatArray, draws: FloatArray, band: FloatArray, until: FloatArray,
    log: list[Happened] | None,
) -> None:  # fmt: skip
    """What the cooks do in one minute, by the look of the fire; band (B, 2)."""
    low, high = band.T
    start, off = minute < 1, minute >= until
    seen = state.bulb[:, 1]
    burning = state.core.sum(axis=1)
    state.away = np.maximum(state.away - 1.0, 0.0)
    wants = ((burning < make.eye) & (seen < high)) | (burning < 0.3 * make.eye)
    due = wants & ~off & (state.away <= 0.0) & (minute > 4) & (draws[:, 0] < 0.4)
    gone = due & (draws[:, 1] < make.forgets)
    state.away = np.where(gone, 8.0 + 30.0 * draws[:, 2], state.away)
    puts = np.where(start, 3.0, np.where(due & ~gone, make.splits + (seen < low - 25.0), 0.0))
    put = np.zeros(len(minute))
    for row in np.flatnonzero(puts):
        for number in range(int(puts[row])):
            place = int(state.used[row])
            if place < PIECES:
                mass = make.mass[row] * (
                    0.35 if start[row] else 0.7 + 0.6 * ((draws[row, 3] * 7.3 + 0.37 * number) % 1.0)
                )
                state.core[row, place] = state.whole[row, place] = mass
                state.warmth[row, place] = 0.8 if start[row] else 0.0
                state.used[row] += 1
                put[row] += mass
    opening = np.where(start, 1.0, state.opening)
    looks = (minute > 12) & ~off & (state.away <= 0.0) & (draws[:, 4] < 0.08)
    turn = make.haste * (0.5 + draws[:, 5])
    over = (seen > low + 0.6 * (high - low)) | (state.plates[:, 0] > TOO_HOT_TOP)
    opening = np.where(looks & over, opening - turn, opening)
    opening = np.where(looks & ~over & (seen < low), opening + turn, opening)
    opening = np.clip(np.where(off & (draws[:, 4] < 0.05), 0.0, opening), 0.0, 1.0)
    bypass = np.where(start, 1.0, np.where((minute >= 10) & (draws[:, 6] < 0.25), 0.0, state.bypass))
    bakes = (seen > low) & (seen < high + 8) & ~off & (draws[:, 7] < 0.018)
    state.dough = np.where(bakes, 0.5 + draws[:, 5], state.dough)
    peeks = (draws[:, 7] > 0.992) & (seen > low - 60)
    door = np.where(bakes, 0.8, np.where(peeks, 0.2 + 2.5 * draws[:, 2] ** 2, state.door))
    if log is not None:
        for row, happened in enumerate(log):
            at = float(minute[row])
            for kind, was, new in (("air", state.opening, opening), ("bypass", state.bypass, bypass)):
                if was[row] != new[row]:
                    happened.append((at, kind, float(new[row])))
            if put[row]:
                happened.append((at, "lit" if start[row] else "wood", float(put[row])))
            if door[row] > state.door[row]:
                happened.append((at, "oven_door", float(door[row])))
    state.opening, state.bypass, state.door = opening, bypass, door


def cold(make: Make, rooms: FloatArray) -> State:
    batch = len(rooms)
    none, pieces = np.zeros(batch), np.zeros((batch, PIECES))
    return State(
        core=pieces.copy(), whole=pieces.copy(), warmth=pieces.copy(), char=none.copy(),
        plates=np.repeat(rooms[:, None], PLATES, axis=1), shell=rooms.copy(),
        brick=np.repeat(rooms[:, None], LAYERS, axis=1), air=rooms.copy(), bulb=np.repeat(rooms[:, None], 2, axis=1),
        flue=rooms + 5.0, room=rooms.copy(), wind=none.copy(), opening=none + 1.0, bypass=none + 1.0, door=none.copy(),
        dough=none.copy(), away=none.copy(), used=none.copy(),
    )  # fmt: skip


def spots(state: State, make: Make) -> FloatArray:
    """True heats (B, spots) [K] in the order of SPOTS."""
    mean = state.plates.mean(axis=1)
    rise = (mean - state.room)[:, None]
    across, deep = np.tile([-1.0, 0.0, 1.0], 2), np.repeat([1.0, -1.0], 3)
    near = state.plates[:, :1] - mean[:, None]
    wobble = make.sides[:, 2:] * np.sin(1.7 * np.arange(6) + 3.0)
    tops = mean[:, None] + 0.5 * near + rise * (make.sides[:, :1] * across + make.sides[:, 1:2] * deep + wobble)
    shell = state.shell - state.room
    walls = state.room[:, None] + shell[:, None] * (1.0 + 0.6 * make.sides[:, :1] * np.array([-0.4, 0.4, 0.0, -0.1]))
    sides = state.room[:, None] + rise * np.array([0.35, 0.3])
    flue = state.room + 0.6 * (state.flue - state.room)
    return np.column_stack([state.air, tops, walls, sides, flue, state.room])


@dataclass(frozen=True, slots=True, kw_only=True)
class ThirdSession:
    """One firing of the third world; what the skill study asks of a firing."""

    stove: Stove
    stove_seed: int
    family: str
    make: Make
    start: datetime
    band: tuple[float, float]
    entries: tuple[Entry, ...]
    times: FloatArray
    truth: FloatArray
    until: float
    states: tuple[State, ...]
    spots: tuple[str, ...] = SPOTS

    def without_moments(self) -> "ThirdSession":
        """The same without the state at each minute."""
        return replace(self, states=())

    def ceiling(self, minutes: Sequence[float], count: int) -> FloatArray:
        """Futures (minutes, count, 181) [K] of the oven with the true stove; cook and wind are drawn anew."""
        rng = np.random.default_rng([32, self.stove_seed, count])
        batch = len(minutes) * count
        make = rows_of(self.make, slice(None), batch)
        band = np.tile(self.band, (batch, 1))
        until = np.maximum(np.repeat(np.floor(minutes), count) + 1, self.until + rng.normal(0, 20, batch))

        def step(state: State, clock: FloatArray) -> None:
            draws = rng.random((batch, DRAWS))
            work(state, make, clock, draws, band, until, None)
            heat(state, make, draws)

        return futures(self.states, minutes, count, lambda state: state.air, step)


def of_today(make: Make, rngs: Sequence[np.random.Generator]) -> Make:
    """Makes of firings, each with a load of wood of its own: how dry it is, and what a split weighs."""
    return replace(
        make,
        moisture=np.clip(make.moisture + np.array([rng.normal(0, 0.04) for rng in rngs]), 0.06, 0.35),
        mass=make.mass * np.array([rng.uniform(0.75, 1.3) for rng in rngs]),
    )


def make_third_sessions(seed: int, firings: Sequence[int]) -> list[ThirdSession]:
    """Firings of a stove of the third world."""
    one, kind, side = make_stove(seed)
    rngs = [np.random.default_rng([172, seed, firing]) for firing in firings]
    count = len(firings)
    make = of_today(rows_of(one, slice(None), count), rngs)
    chosen = [BANDS_F[int(rng.integers(len(BANDS_F)))] for rng in rngs]
    band = (np.array(chosen, dtype=float) - 32.0) / 1.8 + 273.15
    until = np.array([rng.uniform(110, 280) for rng in rngs])
    state = cold(make, np.array([rng.uniform(284, 297) for rng in rngs]))
    length = round(until.max()) + 60 + AFTER
    draws = np.stack([rng.random((length, DRAWS)) for rng in rngs])
    truth, bulb, states = [], [], []
    log: list[Happened] = [[] for _ in firings]
    for minute in range(length):
        truth.append(spots(state, make))
        bulb.append(state.bulb[:, 1].copy())
        states.append(rows_of(state, slice(None)))
        work(state, make, np.full(count, float(minute)), draws[:, minute], band, until, log)
        heat(state, make, draws[:, minute])
    stove = replace(stove_with_default_spots(f"third {kind} {seed}", Firebox(side)), note="invented")
    whole, shown, times = np.array(truth), np.array(bulb), np.arange(length, dtype=float)
    sessions = []
    for row, (rng, firing) in enumerate(zip(rngs, firings, strict=True)):
        last = until[row] + 50
        start = datetime(2025, 2, 1, 12, tzinfo=UTC) + timedelta(days=firing % 300)
        sessions.append(
            ThirdSession(
                stove=stove, stove_seed=seed, family=f"{kind} {side}", start=start,
                make=rows_of(make, slice(row, row + 1)),
                band=(float(band[row, 0]), float(band[row, 1])),
                entries=written(rng, start, last, log[row], times, whole[:, row], shown[:, row]),
                times=times, truth=whole[:, row], until=float(until[row]),
                states=tuple(rows_of(state, slice(row, row + 1)) for state in states[: int(last) + 2]),
            )
        )  # fmt: skip
    return sessions
