"""A second invented world, unlike the first, so that a forecast cannot be fitted to the first one's habits.

No heat network and no fuel bed: every charge of wood gives off its heat along a curve of its own age, which air
hurries; top, oven walls and oven air follow the fire as delayed lags with gains that flatten at high power; people work
by the clock. Temperatures in kelvin, times in minutes.
"""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from datetime import UTC, datetime, timedelta

import numpy as np
from numpy.typing import NDArray

from cookstove_gui.stove.entries import Entry, Kind
from cookstove_gui.stove.stove import Firebox, Stove, stove_with_default_spots
from cookstove_gui.units import degrees, tidy
from tests.world.batches import futures, rows_of

FloatArray = NDArray[np.float64]
TOPS = ("top_front_left", "top_front_middle", "top_front_right", "top_back_left", "top_back_middle", "top_back_right")
SPOTS = ("oven_centre", *TOPS, "oven_left", "oven_right", "oven_rear", "oven_floor", "side_left", "side_right", "flue")
CHARGES = 40  # charges of wood that one firing can hold
DELAYS = 12  # minutes of fire remembered, the longest dead time
DRAWS = 8
AFTER = 185
BANDS_F = ((300, 350), (325, 375), (350, 400), (375, 425))


@dataclass(frozen=True, slots=True, kw_only=True)
class Build:
    """Numbers of a batch of stoves and their cooks, one row each; lags in minutes, gains in kelvin."""

    top_gain: FloatArray  # (B, 6) at 8 kW
    top_lag: FloatArray
    wall_gain: FloatArray  # (B,) of the oven's walls at 8 kW, bypass shut
    wall_lag: FloatArray
    air_lag: FloatArray
    stone_lag: FloatArray
    stone_share: FloatArray  # of the oven's heat that comes by way of stone
    dead_time: FloatArray  # fire to oven
    bend: FloatArray  # exponent of the power
    burn_time: FloatArray  # of a charge at usual air
    door_lag: FloatArray
    wall_spread: FloatArray  # (B, 4) of the walls about their mean, share
    side_share: FloatArray  # (B, 2) of the top's rise
    thermometer_lag: FloatArray
    reload_every: FloatArray
    reload_mass: FloatArray  # kg
    usual_air: FloatArray
    forgets: FloatArray  # chance a minute
    steers: FloatArray  # chance a minute of looking and correcting


@dataclass(slots=True, kw_only=True)
class State:
    """What changes, one row a firing."""

    mass: FloatArray  # (B, CHARGES) kg
    age: FloatArray  # (B, CHARGES) of its own burn time
    powers: FloatArray  # (B, DELAYS) kW, the latest first
    top: FloatArray  # (B, 6)
    wall: FloatArray
    air: FloatArray
    stone: FloatArray
    thermometer: FloatArray
    room: FloatArray
    damper: FloatArray
    bypass: FloatArray
    door: FloatArray  # minutes that it stays open yet
    load: FloatArray  # cold mass in the oven, 1 when just put in
    next_reload: FloatArray
    used: FloatArray  # charges put in
    done: FloatArray


def make_build(seed: int) -> tuple[Build, str, str]:
    """(build of one, kind, side of the firebox) of a stove."""
    rng = np.random.default_rng([88, seed])
    kind, side = ("quick", "slow", "stone")[seed % 3], ("left", "right", "above")[(seed // 3) % 3]
    lag = {"quick": 19.0, "slow": 26.0, "stone": 38.0}[kind] * rng.uniform(0.8, 1.25)
    x = np.tile([1 / 6, 0.5, 5 / 6], 2)
    near = {"left": 1.0 - x, "right": x, "above": 0.9 - np.abs(x - 0.5)}[side]
    top = rng.uniform(185, 230) * (0.65 + 0.75 * near) / (0.65 + 0.75 * near.mean()) * rng.uniform(0.93, 1.07, 6)
    one = {
        "top_gain": top, "top_lag": lag * rng.uniform(0.3, 0.6, 6), "wall_gain": rng.uniform(150, 205), "wall_lag": lag,
        "air_lag": rng.uniform(4, 9), "stone_lag": rng.uniform(90, 200),
        "stone_share": {"quick": 0.05, "slow": 0.15, "stone": 0.35}[kind] * rng.uniform(0.8, 1.2),
        "dead_time": rng.integers(1, 7), "bend": rng.uniform(0.65, 0.95), "burn_time": rng.uniform(11, 19),
        "door_lag": rng.uniform(2, 5), "wall_spread": rng.normal(0, 0.09, 4),
        "side_share": rng.uniform(0.15, 0.5, 2), "thermometer_lag": rng.uniform(1, 6),
        "reload_every": rng.uniform(16, 40), "reload_mass": rng.uniform(0.6, 1.5), "usual_air": rng.uniform(0.3, 0.7),
        "forgets": rng.choice([0.0, 0.004, 0.012]), "steers": rng.uniform(0.02, 0.12),
    }  # fmt: skip
    return Build(**{name: np.asarray(value, dtype=np.float64)[None] for name, value in one.items()}), kind, side


def _burn(state: State, build: Build) -> FloatArray:
    """Heat of one minute (B,) [kW]: flames as a gamma curve of the charge's age, coals as a slow exponential."""

    def given(age: FloatArray) -> FloatArray:
        flames = 1.0 - (1.0 + age) * np.exp(-age)
        coals = np.where(age > 1.0, 1.0 - np.exp(-(age - 1.0) / 3.5), 0.0)
        return np.asarray(0.66 * flames + 0.34 * coals)

    before = given(state.age)
    hurry = (0.25 + 1.35 * state.damper**0.9) * (0.7 + 0.3 * np.clip((state.wall - state.room) / 120.0, 0, 1))
    state.age = state.age + (hurry / build.burn_time)[:, None]
    energy = (state.mass * (given(state.age) - before)).sum(1) * 14.0e3  # kJ
    return np.asarray(energy * (1.0 - 0.25 * state.damper) / 60.0)


def heat(state: State, build: Build) -> None:
    """One minute of heat."""
    power = _burn(state, build)
    state.powers = np.column_stack([power, state.powers[:, :-1]])
    pull = (state.powers[:, :3].mean(1) / 8.0) ** build.bend
    state.top += (state.room[:, None] + build.top_gain * pull[:, None] - state.top) / build.top_lag
    rows = np.arange(len(power))
    late = (state.powers[rows, build.dead_time.astype(int)] / 8.0) ** build.bend
    reach = build.wall_gain * late * (1.0 - 0.75 * state.bypass)
    below_top = 0.18 * (state.top.mean(1) - state.room)
    stone = build.stone_share * (state.stone - state.wall)
    state.wall += (state.room + reach + below_top - state.wall + stone) / build.wall_lag
    state.stone += (state.wall - state.stone) / build.stone_lag
    ajar = np.minimum(state.door, 1.0)
    state.air += (state.wall - state.air) / build.air_lag
    state.air -= (1.0 - np.exp(-ajar / build.door_lag)) * (state.air - state.room) * 0.8
    state.air -= 4.0 * state.load
    state.load *= 0.93
    state.door = np.maximum(state.door - 1.0, 0.0)
    state.thermometer += (state.air - state.thermometer) / np.maximum(build.thermometer_lag, 1.0)


def work(
    state: State, build: Build, minute: FloatArray, draws: FloatArray, band: FloatArray, until: FloatArray,
    log: list[list[tuple[float, str, float]]] | None,
) -> None:  # fmt: skip
    """What the cooks do in one minute, by the clock; band (B, 2)."""
    low, high = band.T
    start = minute < 1
    off = minute >= until
    seen = state.thermometer
    due = (minute >= state.next_reload) & ~off & (state.used < CHARGES)
    forgot = due & (draws[:, 0] < build.forgets * 20)
    mass = build.reload_mass * (0.75 + 0.5 * draws[:, 1])
    mass = np.where(seen < low - 20, 1.35 * mass, np.where(seen > high, 0.4 * mass, mass))
    mass = np.where(start, 1.1, mass)
    put = start | (due & ~forgot)
    rows = np.flatnonzero(put)
    state.mass[rows, state.used[rows].astype(int)] = mass[rows]
    state.age[rows, state.used[rows].astype(int)] = 0.0
    state.used = state.used + put
    pause = np.where(start, 9.0, build.reload_every * (0.8 + 0.4 * draws[:, 2]))
    state.next_reload = np.where(
        put, minute + pause, np.where(forgot, minute + 15 + 30 * draws[:, 3], state.next_reload)
    )
    damper = np.where(start, 1.0, state.damper)
    settle = (minute >= 22) & (minute < 23)
    damper = np.where(settle, build.usual_air, damper)
    steer = (minute > 30) & ~off & (draws[:, 4] < build.steers)
    damper = np.where(steer & (seen > high), damper - 0.25, np.where(steer & (seen < low), damper + 0.25, damper))
    damper = np.where(off & (draws[:, 4] < 0.05), 0.05, damper).clip(0.05, 1.0)
    bypass = np.where(start, 1.0, np.where((minute >= 14) & (minute < 15), 0.0, state.bypass))
    bake = (seen > low) & (seen < high + 10) & ~off & (draws[:, 5] < 0.02)
    state.load = np.where(bake, 1.0, state.load)
    door = np.where(bake, 1.0, np.where(draws[:, 6] < 0.006, 0.3 + 3.0 * draws[:, 7] ** 2, state.door))
    if log is not None:
        for row in range(len(log)):
            at = float(minute[row])
            for kind, was, new in (("air", state.damper, damper), ("bypass", state.bypass, bypass)):
                if was[row] != new[row]:
                    log[row].append((at, kind, float(new[row])))
            if put[row]:
                log[row].append((at, "lit" if start[row] else "wood", float(mass[row])))
            if door[row] > state.door[row]:
                log[row].append((at, "oven_door", float(door[row])))
    state.damper, state.bypass, state.door = damper, bypass, door


def cold(build: Build, rooms: FloatArray) -> State:
    batch = len(rooms)
    zero = np.zeros(batch)
    warm = [rooms.copy() for _ in range(5)]
    return State(
        mass=np.zeros((batch, CHARGES)), age=np.zeros((batch, CHARGES)), powers=np.zeros((batch, DELAYS)),
        top=np.repeat(rooms[:, None], 6, axis=1), wall=warm[0], air=warm[1], stone=warm[2], thermometer=warm[3],
        room=warm[4], damper=zero + 0.3, bypass=zero + 1.0, door=zero.copy(), load=zero.copy(), next_reload=zero.copy(),
        used=zero.copy(), done=zero.copy(),
    )  # fmt: skip


def spots(state: State, build: Build) -> FloatArray:
    rise = state.wall - state.room
    walls = state.room[:, None] + rise[:, None] * (1.08 + build.wall_spread)
    top = state.top.mean(1) - state.room
    sides = state.room[:, None] + build.side_share * top[:, None]
    flue = state.room + 0.55 * top + 60.0 * np.sqrt(state.powers[:, 0] / 8.0) * (0.6 + 0.8 * state.bypass)
    return np.column_stack([state.air, state.top, walls, sides, flue])


@dataclass(frozen=True, slots=True, kw_only=True)
class OtherSession:
    """One firing of the other world; what the skill study asks of a firing."""

    stove: Stove
    stove_seed: int
    family: str
    build: Build
    start: datetime
    band: tuple[float, float]
    entries: tuple[Entry, ...]
    times: FloatArray
    truth: FloatArray
    until: float
    states: tuple[State, ...]
    spots: tuple[str, ...] = SPOTS

    def without_moments(self) -> "OtherSession":
        """The same without the state at each minute."""
        return replace(self, states=())

    def ceiling(self, minutes: Sequence[float], count: int) -> FloatArray:
        """Futures (minutes, count, 181) [K] of the oven with the true stove; what the cook will do is drawn anew."""
        rng = np.random.default_rng([31, self.stove_seed, count])
        batch = len(minutes) * count
        build = rows_of(self.build, slice(None), batch)
        band = np.tile(self.band, (batch, 1))
        until = np.maximum(np.repeat(np.floor(minutes), count) + 1, self.until + rng.normal(0, 20, batch))

        def step(state: State, clock: FloatArray) -> None:
            work(state, build, clock, rng.random((batch, DRAWS)), band, until, None)
            heat(state, build)

        return futures(self.states, minutes, count, lambda state: state.air, step)


def make_other_sessions(seed: int, firings: Sequence[int]) -> list[OtherSession]:
    """Firings of a stove of the other world."""
    one, kind, side = make_build(seed)
    rngs = [np.random.default_rng([89, seed, firing]) for firing in firings]
    count = len(firings)
    build = rows_of(one, slice(None), count)
    chosen = [BANDS_F[int(rng.integers(len(BANDS_F)))] for rng in rngs]
    band = (np.array(chosen, dtype=float) - 32.0) / 1.8 + 273.15
    until = np.array([rng.uniform(110, 280) for rng in rngs])
    state = cold(build, np.array([rng.uniform(287, 295) for rng in rngs]))
    length = round(until.max()) + 60 + AFTER
    draws = np.stack([rng.random((length, DRAWS)) for rng in rngs])
    truth, thermometer, states = [], [], []
    log: list[list[tuple[float, str, float]]] = [[] for _ in firings]
    for minute in range(length):
        truth.append(spots(state, build))
        thermometer.append(state.thermometer.copy())
        states.append(rows_of(state, slice(None)))
        work(state, build, np.full(count, float(minute)), draws[:, minute], band, until, log)
        heat(state, build)
    stove = replace(stove_with_default_spots(f"other {kind} {seed}", Firebox(side)), note="invented")
    all_truth, all_thermometer, times = np.array(truth), np.array(thermometer), np.arange(length, dtype=float)
    sessions = []
    for row, (rng, firing) in enumerate(zip(rngs, firings, strict=True)):
        last = until[row] + 50
        start = datetime(2025, 9, 1, 12, tzinfo=UTC) + timedelta(days=firing % 300)
        sessions.append(
            OtherSession(
                stove=stove, stove_seed=seed, family=f"{kind} {side}", build=one, start=start,
                band=(float(band[row, 0]), float(band[row, 1])),
                entries=_written(rng, start, last, log[row], times, all_truth[:, row], all_thermometer[:, row]),
                times=times, truth=all_truth[:, row], until=float(until[row]),
                states=tuple(rows_of(state, slice(row, row + 1)) for state in states[: int(last) + 2]),
            )
        )  # fmt: skip
    return sessions


def _written(
    rng: np.random.Generator, start: datetime, last: float, log: list[tuple[float, str, float]], times: FloatArray,
    truth: FloatArray, thermometer: FloatArray,
) -> tuple[Entry, ...]:  # fmt: skip
    """What a person of habit writes: rounds at even times, heavy-tailed noise, two slips in a hundred."""
    rows: list[tuple[float, Kind, str, str, str, str]] = []
    every, offset, rounding = rng.uniform(6, 12), rng.normal(0, 4), int(rng.choice([1, 5]))
    full_walk = rng.uniform(0.2, 0.9)
    for at in np.arange(5.0, last, every) + rng.uniform(-1, 1):
        spots = ["oven_centre", *(SPOTS[1:7] if rng.random() < full_walk else rng.choice(SPOTS[1:], 1))]
        for number, spot in enumerate(spots):
            minute = float(at) + 0.15 * number
            source = thermometer if spot == "oven_centre" else truth[:, SPOTS.index(spot)]
            kelvin = float(np.interp(minute, times, source)) + (offset if spot == "oven_centre" else 0.0)
            noise = 1.2 if spot == "oven_centre" else 0.012 * (kelvin - 250.0)
            shown = float(degrees(kelvin + noise * rng.standard_t(4), "F"))
            if rng.random() < 0.02:
                shown = shown * rng.choice([0.1, 1.27, 0.8])
            rows.append((minute, Kind.READING, spot, tidy(round(shown / rounding) * rounding), "F", ""))
    for minute, kind, value in log:
        if minute > last or rng.random() > {"lit": 1.0, "wood": 0.9, "oven_door": 0.5}.get(kind, 0.8):
            continue
        if kind == "lit":
            rows.append((minute, Kind.LIT, "", "", "", ""))
        elif kind == "wood":
            rows.append((minute, Kind.WOOD, "", tidy(value * rng.uniform(0.85, 1.15) * 2.2), "lb", ""))
        elif kind == "oven_door":
            rows.append((minute, Kind.OVEN_DOOR, "", "open", "", ""))
            rows.append((minute + value, Kind.OVEN_DOOR, "", "closed", "", ""))
        else:
            rows.append((minute, Kind(kind), "", tidy(value, 2), "", ""))
    rows.sort(key=lambda row: row[0])
    return tuple(
        Entry(
            number=number, at=start + timedelta(seconds=round(minute * 60)), offset_minutes=-360, kind=kind, spot=spot,
            value=value, unit=unit, note=note,
        )
        for number, (minute, kind, spot, value, unit, note) in enumerate(rows, start=1)
    )  # fmt: skip
