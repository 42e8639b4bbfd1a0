"""From the log to the belief: entries are followed one by one, with a checkpoint after each.

A new row costs one step; a back-dated or voided row goes on from the last checkpoint before it. Random numbers are
keyed by stove and place in the log, so a tracker and a fresh run agree to the last bit.
"""

import zlib
from collections.abc import Sequence
from datetime import datetime, timedelta
from itertools import pairwise, takewhile

import numpy as np

from cookstove_gui.errors import InputProblem
from cookstove_gui.forecast.model import heat
from cookstove_gui.forecast.model.character import Character
from cookstove_gui.forecast.model.ensemble import (
    FIRING,
    Ensemble,
    relax_spots,
    start,
)
from cookstove_gui.forecast.model.heat import Controls
from cookstove_gui.forecast.model.spots import passing_covariance
from cookstove_gui.forecast.model.walls import apart
from cookstove_gui.forecast.tracking import unlogged
from cookstove_gui.forecast.tracking.belief import Belief, Draws
from cookstove_gui.forecast.tracking.carried import burns, lit_ago, set_carried
from cookstove_gui.forecast.tracking.course import Course, take
from cookstove_gui.forecast.tracking.lookback import TracePoint, trace_point
from cookstove_gui.stove.carried import carried_of
from cookstove_gui.stove.entries import ABOUT_A_ROW, Entry, Kind, fold, named_number, numbers_kept
from cookstove_gui.stove.stove import SpotKind, Stove, with_spots_named

LONGEST_RUN = 240  # steps between two entries, however far apart they are
COLD_AFTER_HOURS = 72.0  # without a row, after which nothing before it bears on the stove
MOST_FOLLOWED = 1500  # rows; two days of a reading every two minutes
BLOCK = 500  # rows left out at once from the front of a longer log
_SETTINGS = (Kind.LIT, Kind.AIR, Kind.BYPASS, Kind.OVEN_DOOR)
DENSE_CHECKPOINTS = 24  # rows; the latest checkpoints are all kept
SPARSE_CHECKPOINTS = 8  # rows; of older ones, one in so many is kept
EARLY_MINUTES = 2.0  # min from the first row in which a lit row says that the stove was cold
CARRIED_MINUTES = 30.0  # min from the first row in which a carried row says how warm the stove was
WARM_IF_LIT, WARM_IF_NOT = 0.1, 0.5  # chance that the stove is warm or burning when the log begins
OVEN_SPOT = "oven_centre"  # added to a stove whose owner named no spot of its oven


class Tracker:
    """Follows one session of one stove and remembers how far it has come."""

    def __init__(self, stove: Stove, character: Character | None = None, *, keeps_past: bool = True) -> None:
        self._given = character
        self._keeps_past = keeps_past  # as later readings correct it, which is drawn
        self._described = stove if stove.spots_of(SpotKind.OVEN) else with_spots_named(stove, (OVEN_SPOT,))
        self._stove = self._described
        self._character = self._character_for(self._stove)
        self._seed = zlib.crc32(stove.name.encode())
        self._passing = passing_covariance(self._stove.spots)
        self._entries: list[Entry] = []
        self._confirmed: frozenset[int] = frozenset()  # numbers of the readings that the cook says are right
        self._checkpoints: dict[int, Course] = {}  # by the number of rows followed
        self._points: list[tuple[TracePoint, ...]] = []  # of each entry
        self._settled: list[tuple[TracePoint, ...]] = []  # of each entry

    @property
    def stove(self) -> Stove:
        """The stove with every spot that the log has named so far."""
        return self._stove

    def follow(self, entries: Sequence[Entry], now: datetime) -> Belief:
        """The belief at `now` from the raw log; rows after `now` are not looked at."""
        return self.follow_rows(worth_following(rows_in_force(entries, now)), confirmed(entries, now), now)

    def follow_rows(self, standing: tuple[Entry, ...], kept: frozenset[int], now: datetime) -> Belief:
        """The belief at `now` from rows in force by then, all worth following; `kept` are those confirmed."""
        self._know_spots(standing)
        standing, beside = apart(self._stove, standing)
        course = self._catch_up(standing, kept, now)
        ahead = course.copy()
        self._run(ahead, now, Draws.AHEAD + len(standing))
        points = tuple(point for some in self._points for point in some)
        settled = tuple(point for some in self._settled for point in some)
        return Belief(
            now=now,
            stove=self._stove,
            character=self._character,
            ensemble=ahead.ensemble,
            controls=ahead.controls_at(ahead.at),
            habits=ahead.habits,
            seed=self._seed,
            last_load=ahead.last_load,
            loads=ahead.loads,
            lit_first=ahead.lit_first,
            lit_at=ahead.lit_at,
            door_opened=ahead.door_opened,
            door_openings=ahead.door_openings,
            air_logged=ahead.air_logged,
            spot_width=ahead.spot_width,
            doubted=ahead.doubted,
            last_readings={**ahead.last_readings, **beside},
            points=points + ahead.points,
            settled=settled + ahead.look_back.settled,
            past_at=ahead.look_back.at,
        )

    def _character_for(self, stove: Stove) -> Character:
        return (self._given or Character.generic(stove)).for_stove(stove)

    def _know_spots(self, standing: tuple[Entry, ...]) -> None:
        """Add spots that only the log names; the session is then followed again from its start."""
        names = tuple(row.spot for row in standing if row.kind is Kind.READING and row.spot)
        known = with_spots_named(self._described, names)
        if known.spots != self._stove.spots:
            self._stove = known
            self._character = self._character_for(known)
            self._passing = passing_covariance(known.spots)
            self._entries, self._checkpoints, self._points, self._settled = [], {}, [], []

    def _catch_up(self, standing: tuple[Entry, ...], confirmed: frozenset[int], now: datetime) -> Course:
        same = 0
        changed = confirmed ^ self._confirmed
        for old, new in zip(self._entries, standing, strict=False):
            if (old is not new and old != new) or new.number in changed:
                break
            same += 1
        usable = [count for count in self._checkpoints if count <= same]
        if _carried_row(standing) != _carried_row(self._entries):
            usable = []
        begin = max(usable, default=0)
        self._checkpoints = {count: self._checkpoints[count] for count in usable}
        del self._points[begin:], self._settled[begin:]
        if begin:
            course = self._checkpoints[begin]
        else:
            course = self._begin(standing, now)
        for place in range(begin, len(standing)):
            course = course.copy()
            entry = standing[place]
            self._run(course, entry.at, Draws.STEPS + place)
            take(course, self._stove, standing, place, self._random, is_confirmed=entry.number in confirmed)
            self._points.append(course.points)
            self._settled.append(course.look_back.settled)
            self._checkpoints[place + 1] = course
            old_place = place + 1 - DENSE_CHECKPOINTS
            if old_place % SPARSE_CHECKPOINTS:
                self._checkpoints.pop(old_place, None)
        self._entries, self._confirmed = list(standing), confirmed
        return course

    def _random(self, purpose: int) -> np.random.Generator:
        return np.random.Generator(np.random.Philox(key=[self._seed, purpose]))

    def _begin(self, standing: tuple[Entry, ...], now: datetime) -> Course:
        """The start: as warm as it was carried; else one lit first was cold, one read or fed first may be burning."""
        row = _carried_row(standing)
        if row is not None:
            carried = carried_of(row)
            ensemble = start(self._stove, self._character, self._random(Draws.START), 0.0)
            set_carried(ensemble, carried, self._random(Draws.CARRIED))
            course = self._course(standing[0].at, ensemble, is_lit=burns(carried))
            course.began -= lit_ago(carried)
            course.loads = 1  # the first load after the kindling, which comes sooner, is behind it
            return course
        early = [row for row in standing if row.at - standing[0].at <= timedelta(minutes=EARLY_MINUTES)]
        lit = any(row.kind is Kind.LIT for row in early)
        chance_warm = 0.0 if not standing else WARM_IF_LIT if lit else WARM_IF_NOT
        ensemble = start(self._stove, self._character, self._random(Draws.START), chance_warm)
        return self._course(standing[0].at if standing else now, ensemble, is_lit=bool(standing) and not lit)

    def _course(self, at: datetime, ensemble: Ensemble, *, is_lit: bool) -> Course:
        return Course(
            at=at,
            began=at,
            ensemble=ensemble,
            controls=Controls(lit=is_lit),
            habits=self._character.habits,
            spot_width=self._character.spot_width,
        )

    def _run(self, course: Course, until: datetime, purpose: int) -> None:
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
            if course.controls.lit:
                burning = (course.at - course.began).total_seconds() / 60.0 + step * minutes / steps
                unlogged.let_pass(state, course.habits, burning, course.loads, minutes / steps, random)
            at = course.at + (until - course.at) * ((step + 1) / steps)
            heat.advance(state, p, course.controls_at(at), minutes / steps, random)
            points.append(trace_point(at, state[heat.AIR]))
            if self._keeps_past:
                course.look_back = course.look_back.remember(course.ensemble, at)
        relax_spots(course.ensemble, self._passing, minutes)
        course.points += tuple(points)
        course.at = until


def _carried_row(standing: Sequence[Entry]) -> Entry | None:
    """The row that says how warm the stove was when the session began; one that cannot be read says nothing."""
    soon = takewhile(lambda row: row.at - standing[0].at <= timedelta(minutes=CARRIED_MINUTES), standing)
    return next((row for row in soon if row.kind is Kind.CARRIED and _says_heat(row)), None)


def _says_heat(carried: Entry) -> bool:
    try:
        carried_of(carried)
    except InputProblem:
        return False
    return True


def rows_in_force(entries: Sequence[Entry], now: datetime) -> tuple[Entry, ...]:
    """What holds at `now`; a void row that names no row takes nothing back."""
    return fold(_naming_rows(entries), until=now)


def confirmed(entries: Sequence[Entry], now: datetime) -> frozenset[int]:
    """Numbers of the readings that the cook, asked about them by `now`, says are right."""
    return frozenset(numbers_kept([entry for entry in _naming_rows(entries) if entry.at <= now]))


def worth_following(standing: tuple[Entry, ...]) -> tuple[Entry, ...]:
    """The rows that still bear on a stove: none from before a pause in which any stove went cold, and not too many.

    Of a longer log the front is left out in blocks, so that a new row seldom makes all the others new; what was set
    there last (the fire, the air, the bypass, the door) is kept.
    """
    pause, begin = timedelta(hours=COLD_AFTER_HOURS), 0
    for place, (before, row) in enumerate(pairwise(standing), start=1):
        if row.at - before.at > pause:
            begin = place
    over = len(standing) - begin - MOST_FOLLOWED
    if over > 0:
        cut = begin + -(-over // BLOCK) * BLOCK
        set_last = {row.kind: row for row in standing[begin:cut] if row.kind in _SETTINGS}
        return (*sorted(set_last.values(), key=lambda row: (row.at, row.number)), *standing[cut:])
    return standing[begin:]


def _naming_rows(entries: Sequence[Entry]) -> list[Entry]:
    """Without the rows about another row that name none."""
    return [entry for entry in entries if entry.kind not in ABOUT_A_ROW or not _names_no_row(entry)]


def _names_no_row(entry: Entry) -> bool:
    try:
        named_number(entry)
    except InputProblem:
        return True
    return False
