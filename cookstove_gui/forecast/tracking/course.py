"""What each row of the log does to the belief, one function for each kind."""

import math
from collections.abc import Callable
from dataclasses import dataclass, field, replace
from datetime import datetime, timedelta

import numpy as np

from cookstove_gui.errors import InputProblem
from cookstove_gui.forecast.answers import DoubtedReading
from cookstove_gui.forecast.model import heat
from cookstove_gui.forecast.model.ensemble import (
    FIRING,
    MEMBERS,
    SURPRISE,
    Ensemble,
    Verdict,
    assimilate,
    choose,
    judge,
    loosen,
)
from cookstove_gui.forecast.model.habits import Habits
from cookstove_gui.forecast.model.heat import Controls
from cookstove_gui.forecast.model.normal import NINETIETH
from cookstove_gui.forecast.model.observation import LastReading, Reading, read, rounding_step
from cookstove_gui.forecast.model.spot_width import next_width, strays
from cookstove_gui.forecast.tracking.belief import Draws
from cookstove_gui.forecast.tracking.lookback import LookBack, TracePoint
from cookstove_gui.stove.entries import (
    USUAL_KINDLING,
    Entry,
    Kind,
    door_is_open,
    fraction_open,
    stated_mass,
    wood_count,
)
from cookstove_gui.stove.stove import SpotKind, Stove

KINDLING = (USUAL_KINDLING, 0.5)  # kg, spread of the logarithm: what lies under a fire that is lit
KINDLING_UNDER_WOOD = 0.7  # of that, when wood was laid before
FRESH_START_MINUTES = 4.0  # min; readings this soon after the first entry choose between a cold and a warm stove
SURPRISE_MINUTES = 40.0  # min within which a second surprise confirms the first
LIKE_SURPRISES = 2.0  # times the first, up to which a second surprise confirms it
CONFIRMED_SLIP = 0.3  # chance, the most that a confirmed surprise is a slip
DOUBTED = 0.5  # chance of a slip above which a reading is questioned
ROUNDED_ROWS = 60  # rows before a reading that show what the cook rounds to
WARMING_DOUBT, WARMING_MINUTES = 30.0, 25.0  # K by which a fire just lit may heat a part otherwise; fades so fast
WARMING_NOISE = 0.5  # of that, in what such a surface's reading tells
WARMED = 8.0  # K of that doubt below which a fire no longer counts as just lit
AIR_SETTLES_MINUTES = 30.0  # from lighting on, in which the air is set by the fire rather than by the oven
LONGEST_AIR_WAIT = 120.0  # min
STATED_SPREAD = 0.15  # of the logarithm of a stated mass
MOST_SPLITS, MOST_MASS = 12.0, 20.0  # pieces and kg of one load; more is clipped

Generators = Callable[[int], np.random.Generator]  # purpose -> its random numbers


@dataclass(slots=True)
class Course:
    """The belief after some row, as the tracker carries it on."""

    at: datetime
    began: datetime  # when the log began, or the fire
    ensemble: Ensemble
    controls: Controls
    habits: Habits
    last_load: datetime | None = None
    loads: int = 0
    lit_first: datetime | None = None
    lit_at: datetime | None = None
    door_opened: datetime | None = None
    door_openings: int = 0
    pans: dict[str, datetime] = field(default_factory=dict)  # when one went on each spot
    laid: float = 0.0  # kg of wood logged before any fire was
    air_logged: float | None = None  # the latest, 0 shut to 1 open
    air_set: datetime | None = None  # when
    spot_width: float = 1.0  # factor of the spots' windows
    surprises: dict[SpotKind, tuple[datetime, float]] = field(default_factory=dict)  # the latest of each part
    doubted: tuple[DoubtedReading, ...] = ()
    last_readings: dict[str, LastReading] = field(default_factory=dict)
    points: tuple[TracePoint, ...] = ()  # since the checkpoint before
    look_back: LookBack = field(default_factory=LookBack)

    def controls_at(self, at: datetime) -> Controls:
        """What is known then: a pan that nobody took off is taken to be gone after a while."""
        if not self.controls.pans:
            return self.controls
        stay = timedelta(minutes=heat.PAN_STAYS)
        return replace(self.controls, pans=sum(at - on < stay for on in self.pans.values()))

    def copy(self) -> "Course":
        return replace(
            self,
            ensemble=self.ensemble.copy(),
            pans=dict(self.pans),
            points=(),
            look_back=replace(self.look_back, settled=()),
        )


def take(
    course: Course,
    stove: Stove,
    standing: tuple[Entry, ...],
    place: int,
    generators: Generators,
    *,
    is_confirmed: bool = False,
) -> None:
    """Let one row change the course, in place; `standing` is the whole log up to now, `place` the row's index.

    `is_confirmed`: the cook was asked about this reading and says that it is right.
    """
    entry = standing[place]
    if entry.kind is Kind.READING:
        _take_reading(course, stove, standing, place, generators(Draws.READING + place), is_confirmed)
    elif entry.kind is Kind.WOOD:
        _take_wood(course, entry, generators(Draws.WOOD + place))
    elif entry.kind is Kind.LIT:
        _light(course, entry, generators(Draws.LIT + place))
    elif entry.kind is Kind.OUT:
        _put_out(course)
    elif entry.kind is Kind.OVEN_DOOR:
        _move_door(course, entry)
    elif entry.kind is Kind.PAN:
        _move_pan(course, entry)
    elif entry.kind in (Kind.AIR, Kind.BYPASS):
        opening = _opening(entry)
        if opening is not None and entry.kind is Kind.AIR:
            _set_air(course, entry, opening)
        elif opening is not None:
            course.ensemble.x[heat.BYPASS] = opening


def _set_air(course: Course, entry: Entry, opening: float) -> None:
    course.ensemble.x[heat.INLET] = opening
    lit, before = course.lit_first, course.air_set
    if lit is not None and entry.at - lit > timedelta(minutes=AIR_SETTLES_MINUTES):
        waited = (entry.at - (before or lit)).total_seconds() / 60.0
        course.habits = course.habits.after_air(min(waited, LONGEST_AIR_WAIT))
    course.air_logged, course.air_set = opening, entry.at


def _move_door(course: Course, entry: Entry) -> None:
    opened = door_is_open(entry)
    if opened and not course.controls.door_open:
        course.door_openings += 1
        course.door_opened = entry.at
    course.controls = replace(course.controls, door_open=opened)


def _move_pan(course: Course, entry: Entry) -> None:
    if entry.value == "on":
        course.pans[entry.spot] = entry.at
    else:
        course.pans.pop(entry.spot, None)
    stay = timedelta(minutes=heat.PAN_STAYS)
    course.pans = {spot: at for spot, at in course.pans.items() if entry.at - at < stay}
    course.controls = replace(course.controls, pans=len(course.pans))


def _light(course: Course, entry: Entry, random: np.random.Generator) -> None:
    middle, spread = KINDLING
    kindling = middle * np.exp(spread * random.standard_normal(MEMBERS))
    x = course.ensemble.x
    if course.loads and course.laid > 0.0:
        kindling *= KINDLING_UNDER_WOOD
    x[heat.FRESH] += kindling + course.laid
    course.laid = 0.0
    course.began = course.began if course.lit_first else entry.at
    course.lit_first = course.lit_first or entry.at
    x[heat.SINCE_FED] = 0.0
    course.lit_at = entry.at
    course.controls = replace(course.controls, lit=True, went_out=False)


def _put_out(course: Course) -> None:
    """Nothing burns or glows any more, and wood put in waits for the next fire."""
    course.ensemble.x[heat.FUELS] = 0.0
    course.controls = replace(course.controls, lit=False, went_out=True)


def _take_wood(course: Course, entry: Entry, random: np.random.Generator) -> None:
    mass = _mass(entry)
    count = wood_count(entry)
    x = course.ensemble.x
    normal = random.standard_normal(MEMBERS)
    if mass is not None:
        loaded = mass * np.exp(STATED_SPREAD * normal)
    elif count is not None:
        loaded = min(count, MOST_SPLITS) * heat.positive(x[FIRING])["split_mass"] * np.exp(STATED_SPREAD * normal)
    else:
        habits = course.habits
        loaded = np.exp(habits.mass_log + habits.mass_deviation * normal)
    waited = float(np.median(x[heat.SINCE_FED]))  # since a load, logged or believed
    if not course.controls.lit:
        course.laid += float(np.mean(loaded))
    else:
        x[heat.FRESH] += loaded
        x[heat.SINCE_FED] = 0.0
    if course.last_load is not None:
        course.habits = course.habits.after_interval(waited)
    course.habits = course.habits.after_mass(float(np.median(loaded)))
    course.last_load = entry.at
    course.loads += 1


def _take_reading(
    course: Course,
    stove: Stove,
    standing: tuple[Entry, ...],
    place: int,
    random: np.random.Generator,
    is_confirmed: bool,
) -> None:
    entry = standing[place]
    index = next((i for i, spot in enumerate(stove.spots) if spot.name == entry.spot), None)
    if index is None:
        return
    recent = [row for row in standing[max(0, place - ROUNDED_ROWS) : place + 1] if _like(row, entry)]
    reading = read(entry, stove, index, rounding_step(recent))
    if reading is None:
        return
    reading = replace(reading, confirmed=is_confirmed)
    spot = stove.spots[index]
    opening = (entry.at - standing[0].at).total_seconds() / 60.0 <= FRESH_START_MINUTES
    if opening and reading.possible and spot.kind is not SpotKind.ROOM:
        choose(course.ensemble, stove, reading, random)
    burning = (entry.at - (course.lit_at or standing[0].at)).total_seconds() / 60.0
    warming = WARMING_DOUBT * math.exp(-burning / WARMING_MINUTES)
    verdict = judge(course.ensemble, stove, reading, warming)
    if reading.possible and _is_true_surprise(reading, course.surprises.get(spot.kind), entry.at, verdict):
        loosen(course.ensemble, spot.kind, reading.value - verdict.expected, random)
        verdict = judge(course.ensemble, stove, reading, warming)
        verdict = replace(verdict, slip_chance=min(verdict.slip_chance, CONFIRMED_SLIP))
    if reading.possible:
        course.surprises = {**course.surprises, spot.kind: (entry.at, verdict.score)}
    if verdict.slip_chance > DOUBTED:
        course.doubted += (_doubt(reading, verdict),)
    elif reading.possible and spot.kind is SpotKind.TOP and warming < WARMED:
        course.spot_width = next_width(course.spot_width, strays(course.ensemble, stove, reading))
    if reading.possible:
        if spot.kind not in (SpotKind.OVEN, SpotKind.ROOM):
            reading = replace(reading, variance=reading.variance + (WARMING_NOISE * warming) ** 2)
        assimilate(course.ensemble, stove, reading, verdict.slip_chance)
        course.last_readings = {**course.last_readings, spot.name: LastReading(entry.at, reading.value)}


def _like(row: Entry, entry: Entry) -> bool:
    return row.kind is Kind.READING and row.unit == entry.unit


def _opening(entry: Entry) -> float | None:
    try:
        return min(max(fraction_open(entry), 0.0), 1.0)
    except InputProblem:
        return None


def _mass(entry: Entry) -> float | None:
    try:
        mass = stated_mass(entry)
    except InputProblem:
        return None
    return None if mass is None or not math.isfinite(mass) or mass <= 0.0 else min(mass, MOST_MASS)


def _is_true_surprise(reading: Reading, before: tuple[datetime, float] | None, at: datetime, verdict: Verdict) -> bool:
    """Whether a surprise shows that the stove is not as believed, rather than that the reading is wrong.

    The cook says so, or it confirms one like it. A far larger one confirms nothing: after a wall warmer than expected,
    a centre at bread heat is still a slip.
    """
    if abs(verdict.score) <= SURPRISE:
        return False
    if reading.confirmed:
        return True
    if before is None or abs(before[1]) <= SURPRISE:
        return False
    then, score = before
    alike = score * verdict.score > 0.0 and abs(verdict.score) <= LIKE_SURPRISES * abs(score)
    return alike and at - then <= timedelta(minutes=SURPRISE_MINUTES)


def _doubt(reading: Reading, verdict: Verdict) -> DoubtedReading:
    """The reading with what the instrument, its known offset included, was expected to show."""
    middle = verdict.expected + reading.typed - reading.value
    reach = NINETIETH * verdict.deviation
    return DoubtedReading(
        number=reading.number,
        typed=reading.typed,
        expected_p10=middle - reach,
        expected_p50=middle,
        expected_p90=middle + reach,
    )
