"""Runs invented firings and writes them down: the log that a person kept, and the truth behind it."""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from datetime import UTC, datetime, timedelta

import numpy as np

from cookstove_gui.stove.entries import Entry
from cookstove_gui.stove.stove import Stove
from tests.world.cooks import DRAWS, Crew, Event, Tending, copy_tending, gather_tending, tend
from tests.world.firing import SPOT_WEIGHTS, STEP, Firing, advance, copy, gather
from tests.world.habits import Plan, make_plan
from tests.world.hands import as_entries, walk_minutes, write_events, write_readings
from tests.world.parts import CELLS, NODE, FloatArray, stack
from tests.world.stoves import WorldStove

AFTER = 185  # minutes simulated beyond the last walk, so that every question has its answer
SPOTS = (
    "oven_centre", "top_front_left", "top_front_middle", "top_front_right", "top_back_left", "top_back_middle",
    "top_back_right", "oven_left", "oven_right", "oven_rear", "oven_floor", "side_left", "side_right", "door_glass",
    "flue", "room",
)  # fmt: skip
_SPOT_NODES = [
    NODE[name]
    for name in [
        "oven_left",
        "oven_right",
        "oven_rear",
        "oven_floor",
        "side_left",
        "side_right",
        "glass",
        "flue",
        "room",
    ]
]


@dataclass(frozen=True, slots=True, kw_only=True)
class WorldSession:
    """One firing: what was written, and what was true."""

    world: WorldStove
    seed: int
    start: datetime
    duration: float  # minutes from lighting to the last walk
    unit: str
    plan: Plan
    entries: tuple[Entry, ...]
    times: FloatArray  # (T,) minutes from lighting, one a minute
    spots: tuple[str, ...]  # (S,)
    truth: FloatArray  # (T, S) K
    thermometer: FloatArray  # (T,) K, the oven thermometer's own temperature
    events: tuple[Event, ...]  # everything that happened, written down or not
    moments: tuple[tuple[Firing, Tending], ...]  # (T,) the whole state each minute

    @property
    def stove(self) -> Stove:
        """What the owner says about the stove."""
        return self.world.stove

    @property
    def stove_seed(self) -> int:
        """The stove's seed."""
        return self.world.seed

    @property
    def family(self) -> str:
        """The stove's kind."""
        return self.world.family

    @property
    def band(self) -> tuple[float, float]:
        """The heat that the cook wants [K]."""
        return self.plan.low, self.plan.high

    def without_moments(self) -> "WorldSession":
        """The same without the state at each minute, which is most of its size."""
        return replace(self, moments=())

    def ceiling(self, minutes: Sequence[float], count: int) -> FloatArray:
        """Futures (minutes, count, 181) [K] of the oven by the true physics; only what the cook will do is unknown."""
        paths = futures([(self, minute) for minute in minutes], count, 181, seed=self.seed)
        past = np.array([minute - int(minute) for minute in minutes])[:, None, None]
        return np.asarray((1.0 - past) * paths[..., :-1] + past * paths[..., 1:])

    def minute_of(self, at: datetime) -> float:
        """Minutes from lighting."""
        return (at - self.start).total_seconds() / 60.0

    def true_oven(self, minute: float | FloatArray) -> FloatArray:
        """True air temperature in the middle of the oven [K]."""
        return np.asarray(np.interp(minute, self.times, self.truth[:, 0]))

    def true_spot(self, spot: str, minute: float) -> float:
        """True temperature of a spot [K]."""
        return float(np.interp(minute, self.times, self.truth[:, self.spots.index(spot)]))


def spot_temperatures(nodes: FloatArray) -> FloatArray:
    """Temperatures of SPOTS (B, S) [K] from those of the nodes."""
    tops = nodes[:, :CELLS] @ SPOT_WEIGHTS.T
    return np.concatenate([nodes[:, [NODE["oven_air"]]], tops, nodes[:, _SPOT_NODES]], axis=1)


def make_session(
    world: WorldStove, seed: int, *, purpose: str | None = None, unit: str = "F", hours: float | None = None
) -> WorldSession:
    """One firing of an invented stove; the same seeds give the same firing."""
    return make_sessions([(world, seed)], purpose=purpose, unit=unit, hours=hours)[0]


def make_sessions(
    wanted: Sequence[tuple[WorldStove, int]], *, purpose: str | None = None, unit: str = "F", hours: float | None = None
) -> list[WorldSession]:
    """Many firings at once, which costs little more than one."""
    rngs = [np.random.default_rng([9137, world.seed, seed]) for world, seed in wanted]
    plans = [make_plan(rng, world.cook, purpose) for rng, (world, _) in zip(rngs, wanted, strict=True)]
    durations = [
        hours * 60.0 if hours else (55.0 if plan.purpose == "kindling" else plan.until + rng.uniform(20, 90))
        for rng, plan in zip(rngs, plans, strict=True)
    ]
    walks = [
        walk_minutes(rng, world.hands, duration)
        for rng, (world, _), duration in zip(rngs, wanted, durations, strict=True)
    ]
    length = round(max(durations)) + AFTER
    draws = np.stack([rng.random((1200, DRAWS))[:length] for rng in rngs])
    gusts = np.stack([_gusts(rng, 1200)[:length] for rng in rngs])
    crew = crew_of([world for world, _ in wanted], plans)
    parts = stack([world.parts for world, _ in wanted])
    rooms = np.array([rng.uniform(286.0, 296.0) for rng in rngs])
    firing = Firing.cold(parts, rooms)
    tending = Tending.start([plan.batches for plan in plans])
    events: list[list[Event]] = [[] for _ in wanted]
    due = [{round(minute) for minute in walk} for walk in walks]
    offsets = np.array([world.hands.oven_offset for world, _ in wanted])
    truth, thermometer = [], []
    moments: list[list[tuple[Firing, Tending]]] = [[] for _ in wanted]
    for minute in range(length):
        truth.append(spot_temperatures(firing.nodes))
        thermometer.append(firing.thermometer.copy())
        for row in range(len(wanted)):
            if minute in due[row]:
                tending.seen[row] = firing.thermometer[row] + offsets[row]
            if minute <= durations[row] + 1:
                one = copy_tending(Tending(**{k: v[row : row + 1] for k, v in _arrays(tending)}))
                moments[row].append((copy(firing, slice(row, row + 1)), one))
        clock = np.full(len(wanted), float(minute))
        tend(crew, tending, firing, clock, draws[:, minute], events, minute <= np.array(durations))
        firing.gust = gusts[:, minute].copy()
        for _ in range(round(60 / STEP)):
            advance(firing, parts)
    sessions = []
    all_truth, all_thermometer, times = np.array(truth), np.array(thermometer), np.arange(length, dtype=float)
    for row, (world, seed) in enumerate(wanted):
        rng, end = rngs[row], round(durations[row]) + AFTER
        start = datetime(2025, 10, 1, tzinfo=UTC) + timedelta(days=seed % 400, minutes=int(rng.integers(600, 1200)))
        readings = write_readings(
            rng, world.hands, world.stove, walks[row], times, SPOTS, all_truth[:, row], all_thermometer[:, row], unit
        )
        rows = write_events(rng, world.hands, events[row], "lb" if unit == "F" else "kg")
        sessions.append(
            WorldSession(
                world=world, seed=seed, start=start, duration=durations[row], unit=unit, plan=plans[row],
                entries=as_entries(start, -300, readings, rows, unit), times=times[:end], spots=SPOTS,
                truth=all_truth[:end, row], thermometer=all_thermometer[:end, row], events=tuple(events[row]),
                moments=tuple(moments[row]),
            )
        )  # fmt: skip
    return sessions


def futures(
    moments: Sequence[tuple[WorldSession, float]], count: int, minutes: int, seed: int, *, hands_off: bool = False,
    step: float = 30.0,
) -> FloatArray:  # fmt: skip
    """True physics from the true state on, with the cook's habits but other draws of what the cook will do.

    `moments` are (session, minute) pairs; returns oven temperatures (moments, count, minutes + 1) [K]. With
    `hands_off` nobody does anything any more.
    """
    states = [session.moments[min(int(minute), len(session.moments) - 1)] for session, minute in moments]
    firing = copy(gather([state for state, _ in states]), times=count)
    tending = copy_tending(gather_tending([mind for _, mind in states]), times=count)
    worlds = [session.world for session, _ in moments for _ in range(count)]
    clock = np.repeat([float(int(minute)) for _, minute in moments], count)
    plans = [session.plan for session, _ in moments for _ in range(count)]
    rng = np.random.default_rng([4409, seed])
    oven = run_on(worlds, plans, firing, tending, clock, minutes, rng, hands_off=hands_off, step=step)
    return oven.reshape(len(moments), count, minutes + 1)


def run_on(
    worlds: list[WorldStove], plans: list[Plan], firing: Firing, tending: Tending, clock: FloatArray, minutes: int,
    rng: np.random.Generator, *, hands_off: bool = False, step: float = 30.0,
) -> FloatArray:  # fmt: skip
    """The oven (B, minutes + 1) [K] of firings run on from where they stand, in place; `clock` (B,) since lighting."""
    parts, crew = stack([world.parts for world in worlds]), crew_of(worlds, plans)
    offsets = np.array([world.hands.oven_offset for world in worlds])
    gaps = np.array([world.hands.interval for world in worlds])
    oven = np.zeros((len(clock), minutes + 1))
    for minute in range(minutes + 1):
        oven[:, minute] = firing.nodes[:, NODE["oven_air"]]
        reads = rng.random(len(clock)) < 1.0 / gaps
        tending.seen = np.where(reads, firing.thermometer + offsets, tending.seen)
        draws = rng.random((len(clock), DRAWS))
        if not hands_off:
            tend(crew, tending, firing, clock + minute, draws, None)
        firing.gust = 1.0 + 0.93 * (firing.gust - 1.0) + 0.05 * rng.standard_normal(len(clock))
        firing.gust = np.clip(firing.gust, 0.4, 1.8)
        for _ in range(round(60 / step)):
            advance(firing, parts, step)
    return oven


def _arrays(tending: Tending) -> list[tuple[str, FloatArray]]:
    return [(name, getattr(tending, name)) for name in ("stage", "batches", "remaining", "seen", "since_wood")]


def crew_of(worlds: list[WorldStove], plans: list[Plan]) -> Crew:
    """The cooks of a batch, each with a plan."""
    return Crew(
        cooks=[world.cook for world in worlds],
        plans=plans,
        moisture=np.array([world.moisture for world in worlds]),
        thickness=np.array([world.thickness for world in worlds]),
        split_mass=np.array([world.split_mass for world in worlds]),
        limit=np.array([float(world.parts.firebox_limit[0]) for world in worlds]),
    )


def _gusts(rng: np.random.Generator, length: int) -> FloatArray:
    wind = np.zeros(length)
    for minute, kick in enumerate(rng.standard_normal(length - 1), start=1):
        wind[minute] = 0.93 * wind[minute - 1] + 0.05 * kick
    return np.clip(1.0 + wind, 0.4, 1.8)
