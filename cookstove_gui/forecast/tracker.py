"""From the log to the belief: entries are followed one by one, with a checkpoint after each.

A new row costs one step; a back-dated or taken-back row goes on from the last checkpoint before the change. Random
numbers are tied to the stove and to the entry's place, so a tracker and a fresh run agree to the last bit.
"""

import zlib
from collections.abc import Sequence
from dataclasses import dataclass, field, replace
from datetime import datetime, timedelta

import numpy as np

from cookstove_gui.errors import InputProblem
from cookstove_gui.forecast import heat
from cookstove_gui.forecast.answers import DoubtedReading
from cookstove_gui.forecast.belief import Belief, LastReading, TracePoint
from cookstove_gui.forecast.beside import apart
from cookstove_gui.forecast.character import Character
from cookstove_gui.forecast.ensemble import (
    FIRING,
    MEMBERS,
    SURPRISE,
    Ensemble,
    Verdict,
    assimilate,
    choose,
    judge,
    loosen,
    relax_spots,
    start,
)
from cookstove_gui.forecast.habits import Habits
from cookstove_gui.forecast.heat import Controls
from cookstove_gui.forecast.seeing import read, rounding_step
from cookstove_gui.forecast.spots import passing_covariance
from cookstove_gui.stove.entries import (
    Entry,
    Kind,
    door_is_open,
    fold,
    fraction_open,
    voided_number,
    wood_count,
    wood_mass,
)
from cookstove_gui.stove.stove import SpotKind, Stove, with_spots_named

LONGEST_RUN = 240  # steps between two entries, however far apart they are
KINDLING = (0.9, 0.5)  # kg, spread of the logarithm: what lies under a fire that is lit
PRELOAD_MINUTES = 45.0  # wood logged up to this long before `lit` was laid, not burning
FRESH_START_MINUTES = 4.0  # readings this soon after the first entry choose between a cold and a warm stove
SURPRISE_MINUTES = 40.0
DENSE_CHECKPOINTS = 24  # the latest ones are all kept, older ones every eighth
OVEN_SPOT = "oven_centre"  # added to a stove whose owner named no spot of its oven
_Q10, _Q50, _Q90 = (int(MEMBERS * q) for q in (0.1, 0.5, 0.9))


@dataclass(slots=True)
class _Course:
    """Where the tracker stands after some entry."""

    at: datetime
    ensemble: Ensemble
    controls: Controls
    habits: Habits
    last_load: datetime | None = None
    loads: int = 0
    lit_first: datetime | None = None
    lit_at: datetime | None = None
    door_opened: datetime | None = None
    door_openings: int = 0
    laid: float = 0.0  # kg of wood logged before any fire was
    air_was_logged: bool = False
    surprises: dict[SpotKind, tuple[datetime, float]] = field(default_factory=dict)  # the latest of each part
    doubted: tuple[DoubtedReading, ...] = ()
    last_readings: dict[str, LastReading] = field(default_factory=dict)
    points: tuple[TracePoint, ...] = ()  # since the checkpoint before

    def copy(self) -> "_Course":
        return replace(self, ensemble=self.ensemble.copy(), points=())


class Tracker:
    """Follows one session of one stove and remembers how far it has come."""

    def __init__(self, stove: Stove, character: Character | None = None) -> None:
        self._given = character
        self._stove = stove if stove.spots_of(SpotKind.OVEN) else with_spots_named(stove, (OVEN_SPOT,))
        self._character = self._character_for(self._stove)
        self._seed = zlib.crc32(stove.name.encode())
        self._passing = passing_covariance(self._stove.spots)
        self._entries: list[Entry] = []
        self._checkpoints: dict[int, _Course] = {}  # after so many entries
        self._points: list[tuple[TracePoint, ...]] = []  # of each entry

    @property
    def stove(self) -> Stove:
        """The stove with every spot that the log has named so far."""
        return self._stove

    def follow(self, entries: Sequence[Entry], now: datetime) -> Belief:
        """The belief at `now` from the raw log; rows after `now` are not looked at."""
        standing = standing_entries(entries, now)
        self._know_spots(standing)
        standing, beside = apart(self._stove, standing)
        course = self._catch_up(standing, now)
        ahead = course.copy()
        self._run(ahead, now, len(standing) + 1_000_000 // 2)
        points = tuple(point for some in self._points for point in some)
        return Belief(
            now=now,
            stove=self._stove,
            character=self._character,
            ensemble=ahead.ensemble,
            controls=ahead.controls,
            habits=ahead.habits,
            seed=self._seed,
            last_load=ahead.last_load,
            loads=ahead.loads,
            lit_first=ahead.lit_first,
            lit_at=ahead.lit_at,
            door_opened=ahead.door_opened,
            door_openings=ahead.door_openings,
            air_was_logged=ahead.air_was_logged,
            doubted=ahead.doubted,
            last_readings={**ahead.last_readings, **beside},
            points=points + ahead.points,
        )

    def _character_for(self, stove: Stove) -> Character:
        return (self._given or Character.generic(stove)).for_stove(stove)

    def _know_spots(self, standing: tuple[Entry, ...]) -> None:
        """A spot that only the log names is added, and the session followed anew."""
        names = tuple(row.spot for row in standing if row.kind is Kind.READING and row.spot)
        known = with_spots_named(self._stove, names)
        if len(known.spots) != len(self._stove.spots):
            self._stove = known
            self._character = self._character_for(known)
            self._passing = passing_covariance(known.spots)
            self._entries, self._checkpoints, self._points = [], {}, []

    def _catch_up(self, standing: tuple[Entry, ...], now: datetime) -> _Course:
        same = 0
        for old, new in zip(self._entries, standing, strict=False):
            if old is not new and old != new:
                break
            same += 1
        usable = [count for count in self._checkpoints if count <= same]
        begin = max(usable, default=0)
        self._checkpoints = {count: self._checkpoints[count] for count in usable}
        del self._points[begin:]
        if begin:
            course = self._checkpoints[begin]
        else:
            course = self._begin(standing, now)
        for place in range(begin, len(standing)):
            course = course.copy()
            entry = standing[place]
            self._run(course, entry.at, place + 1)
            self._apply(course, standing, place)
            self._points.append(course.points)
            self._checkpoints[place + 1] = course
            old_place = place + 1 - DENSE_CHECKPOINTS
            if old_place % 8:
                self._checkpoints.pop(old_place, None)
        self._entries = list(standing)
        return course

    def _random(self, purpose: int) -> np.random.Generator:
        return np.random.Generator(np.random.Philox(key=[self._seed, purpose]))

    def _begin(self, standing: tuple[Entry, ...], now: datetime) -> _Course:
        """Before the first entry: a stove that is lit first was cold, one that is read or fed first may be burning."""
        chance_warm = 0.0
        if standing:
            early = [row for row in standing if row.at - standing[0].at <= timedelta(minutes=2)]
            chance_warm = 0.1 if any(row.kind is Kind.LIT for row in early) else 0.5
        course = _Course(
            at=standing[0].at if standing else now,
            ensemble=start(self._stove, self._character, self._random(0), chance_warm),
            controls=Controls(),
            habits=self._character.habits,
        )
        if chance_warm > 0.3:
            course.controls = replace(course.controls, lit=True)
        return course

    def _run(self, course: _Course, until: datetime, purpose: int) -> None:
        """Let time pass in place, without entries."""
        minutes = (until - course.at).total_seconds() / 60.0
        if minutes <= 0.0:
            return
        steps = min(max(1, int(np.ceil(minutes / heat.STEP_MINUTES))), LONGEST_RUN)
        random = self._random(purpose)
        state = course.ensemble.x[: heat.STATE_ROWS]
        p = heat.positive(course.ensemble.x[FIRING])
        points = []
        for step in range(steps):
            heat.advance(state, p, course.controls, minutes / steps, random)
            at = course.at + (until - course.at) * ((step + 1) / steps)
            oven = np.sort(state[heat.AIR])
            points.append(TracePoint(at, float(oven[_Q10]), float(oven[_Q50]), float(oven[_Q90])))
        relax_spots(course.ensemble, self._passing, minutes)
        course.points += tuple(points)
        course.at = until

    def _apply(self, course: _Course, standing: tuple[Entry, ...], place: int) -> None:
        entry = standing[place]
        if entry.kind is Kind.READING:
            self._take_reading(course, standing, place)
        elif entry.kind is Kind.WOOD:
            self._take_wood(course, entry, place)
        elif entry.kind is Kind.LIT:
            self._light(course, entry, place)
        elif entry.kind is Kind.OVEN_DOOR:
            self._move_door(course, entry)
        elif entry.kind in (Kind.AIR, Kind.BYPASS):
            opening = _opening(entry)
            if opening is not None and entry.kind is Kind.AIR:
                course.controls = replace(course.controls, air=opening)
                course.air_was_logged = True
            elif opening is not None:
                course.controls = replace(course.controls, bypass=opening)

    def _move_door(self, course: _Course, entry: Entry) -> None:
        opened = door_is_open(entry)
        if opened and not course.controls.door_open:
            course.door_openings += 1
            course.door_opened = entry.at
        course.controls = replace(course.controls, door_open=opened)

    def _light(self, course: _Course, entry: Entry, place: int) -> None:
        middle, spread = KINDLING
        kindling = middle * np.exp(spread * self._random(2_000_000 + place).standard_normal(MEMBERS))
        x = course.ensemble.x
        if course.loads and course.laid > 0.0:
            kindling *= 0.7
        x[heat.FRESH] += kindling + course.laid
        course.laid = 0.0
        course.lit_first = course.lit_first or entry.at
        course.lit_at = entry.at
        course.controls = replace(course.controls, lit=True)

    def _take_wood(self, course: _Course, entry: Entry, place: int) -> None:
        random = self._random(3_000_000 + place)
        mass = _mass(entry)
        count = wood_count(entry)
        x = course.ensemble.x
        normal = random.standard_normal(MEMBERS)
        if mass is not None:
            loaded = mass * np.exp(0.15 * normal)
        elif count is not None:
            loaded = min(count, 12.0) * heat.positive(x[FIRING])["split_mass"] * np.exp(0.15 * normal)
        else:
            habits = course.habits
            loaded = np.exp(habits.mass_log + habits.mass_deviation * normal)
        if not course.controls.lit:
            course.laid += float(np.mean(loaded))
        else:
            x[heat.FRESH] += loaded
        if course.last_load is not None:
            course.habits = course.habits.after_interval((entry.at - course.last_load).total_seconds() / 60.0)
        course.habits = course.habits.after_mass(float(np.median(loaded)))
        course.last_load = entry.at
        course.loads += 1

    def _take_reading(self, course: _Course, standing: tuple[Entry, ...], place: int) -> None:
        entry = standing[place]
        index = next((i for i, spot in enumerate(self._stove.spots) if spot.name == entry.spot), None)
        if index is None:
            return
        recent = [row for row in standing[max(0, place - 60) : place + 1] if _like(row, entry)]
        reading = read(entry, self._stove, index, rounding_step(recent))
        if reading is None:
            return
        random = self._random(4_000_000 + place)
        spot = self._stove.spots[index]
        opening = (entry.at - standing[0].at).total_seconds() / 60.0 <= FRESH_START_MINUTES
        if opening and reading.possible and spot.kind is not SpotKind.ROOM:
            choose(course.ensemble, self._stove, reading, random)
        verdict = judge(course.ensemble, self._stove, reading)
        if reading.possible and _again(course.surprises.get(spot.kind), entry.at, verdict):
            loosen(course.ensemble, reading.value - verdict.expected, random)
            verdict = judge(course.ensemble, self._stove, reading)
            verdict = replace(verdict, slip_chance=min(verdict.slip_chance, 0.3))
        if reading.possible:
            course.surprises = {**course.surprises, spot.kind: (entry.at, verdict.score)}
        if verdict.slip_chance > 0.5:
            course.doubted += (_doubt(reading.number, reading.typed, verdict),)
        if reading.possible:
            assimilate(course.ensemble, self._stove, reading, verdict.slip_chance)
            course.last_readings = {**course.last_readings, spot.name: LastReading(entry.at, reading.value)}


def track(stove: Stove, entries: Sequence[Entry], now: datetime, character: Character | None = None) -> Belief:
    """The belief about a stove at `now` from its session's raw log."""
    return Tracker(stove, character).follow(entries, now)


def standing_entries(entries: Sequence[Entry], now: datetime) -> tuple[Entry, ...]:
    """What holds at `now`; a void row that names no row takes nothing back."""
    return fold([entry for entry in entries if not _is_empty_void(entry)], until=now)


def _like(row: Entry, entry: Entry) -> bool:
    return row.kind is Kind.READING and row.unit == entry.unit


def _is_empty_void(entry: Entry) -> bool:
    if entry.kind is not Kind.VOID:
        return False
    try:
        voided_number(entry)
    except InputProblem:
        return True
    return False


def _opening(entry: Entry) -> float | None:
    try:
        return min(max(fraction_open(entry), 0.0), 1.0)
    except InputProblem:
        return None


def _mass(entry: Entry) -> float | None:
    try:
        mass = wood_mass(entry)
    except InputProblem:
        return None
    return None if mass is None or not np.isfinite(mass) or mass <= 0.0 else min(mass, 20.0)


def _again(before: tuple[datetime, float] | None, at: datetime, verdict: Verdict) -> bool:
    """Whether a surprise follows another of the same sign soon enough to mean the stove, not the reading."""
    if before is None or min(abs(verdict.score), abs(before[1])) <= SURPRISE:
        return False
    then, score = before
    return at - then <= timedelta(minutes=SURPRISE_MINUTES) and score * verdict.score > 0.0


def _doubt(number: int, typed: float, verdict: Verdict) -> DoubtedReading:
    reach = 1.2816 * verdict.deviation
    return DoubtedReading(
        number=number,
        typed=typed,
        expected_p10=verdict.expected - reach,
        expected_p50=verdict.expected,
        expected_p90=verdict.expected + reach,
    )
