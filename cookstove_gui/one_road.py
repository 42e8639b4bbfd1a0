"""The one road from the log to the answers: rows, stove, character, settings and moment in, a `Standing` out.

Window, commands and reports all take what they say from here, and the track record judges the same outlook. No words
are made here; `phrases` turns a standing into sentences.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from datetime import datetime, timedelta

from cookstove_gui.cooking.baking.in_oven import InOven, in_oven
from cookstove_gui.cooking.baking.under_way import UnderWay, those_under_way
from cookstove_gui.cooking.fires.best_step import after_each, best_step, wants_step, what_if
from cookstove_gui.cooking.fires.first_fires import FirstFires, progress
from cookstove_gui.cooking.fires.steps import steps
from cookstove_gui.cooking.fit.fit import TaskFit, fits
from cookstove_gui.cooking.fit.promises import as_told
from cookstove_gui.cooking.instruments.meant_rows import meant_rows
from cookstove_gui.cooking.instruments.site import site_at
from cookstove_gui.cooking.safety.caution import Caution
from cookstove_gui.cooking.safety.cautions import due
from cookstove_gui.forecast.answers import (
    LEAVE,
    Action,
    Projection,
    Trace,
    Turn,
    Zone,
)
from cookstove_gui.forecast.futures.cook import Doing
from cookstove_gui.forecast.futures.forecaster import Forecaster
from cookstove_gui.forecast.futures.next_reading import next_reading
from cookstove_gui.forecast.futures.outlook import outlook_of, oven_ahead, oven_of
from cookstove_gui.forecast.futures.projection import project, project_each
from cookstove_gui.forecast.futures.turns import turns, turns_to_come
from cookstove_gui.forecast.futures.zones import zones
from cookstove_gui.forecast.model.character import Character
from cookstove_gui.forecast.tracking.belief import Belief, doubted_readings, trace, trace_as_believed
from cookstove_gui.forecast.tracking.carried import carried_heat, is_warm
from cookstove_gui.forecast.tracking.tracker import Tracker
from cookstove_gui.situation import Course, Inputs, Standing, fire_is_out, was_read
from cookstove_gui.stove.carried import CarriedHeat
from cookstove_gui.stove.entries import Entry, HeatBand, Session, fold, numbers_kept
from cookstove_gui.stove.stove import SpotKind, Stove

_JUST_AFTER = timedelta(seconds=20)


@dataclass(frozen=True, slots=True, kw_only=True)
class Present:
    """How a stove is at one moment, without what is likely to come."""

    belief: Belief
    rows: tuple[Entry, ...]  # in force, in order of time
    first_fires: FirstFires
    zones: dict[str, Zone]
    turns: tuple[Turn, ...]
    course: Course
    cautions: tuple[Caution, ...]


class Memory:
    """What the latest answers left to go on from; it belongs to the one worker that calls, and only saves time."""

    def __init__(self) -> None:
        self._stove: Stove | None = None
        self._character: Character | None = None
        self._forecaster: Forecaster | None = None
        self._course: tuple[tuple[Entry, ...], HeatBand, Course] | None = None
        self.wanted_step = False  # by the latest answer; the next one then tries the steps along with its course

    def forecaster(self, stove: Stove, character: Character | None) -> Forecaster:
        """The forecaster for a stove and its character, kept while both stay the same."""
        if self._forecaster is None or stove != self._stove or character is not self._character:
            self._stove, self._character, self._course = stove, character, None
            self._forecaster = Forecaster(stove, character)
        return self._forecaster

    def course(self, rows: tuple[Entry, ...], band: HeatBand) -> Course | None:
        """The course kept, if it is of these rows and this band."""
        kept = self._course
        return kept[2] if kept is not None and kept[0] == rows and kept[1] == band else None

    def keep_course(self, rows: tuple[Entry, ...], band: HeatBand, found: Course) -> None:
        """Keep the course that these rows told of."""
        self._course = (rows, band, found)


def present(inputs: Inputs, memory: Memory | None = None) -> Present:
    """How the stove is at the moment asked about."""
    memory = memory or Memory()
    forecaster = memory.forecaster(inputs.stove, inputs.character)
    told = meant_rows(inputs.stove, inputs.rows)
    seen = tuple(row for row in inputs.rows if row.at <= inputs.now)
    latest = max((row.at for row in seen), default=inputs.now)
    # Just after a row the stove is as it was at the row, so that one projection serves both.
    belief = forecaster.follow(told, latest if inputs.now - latest < _JUST_AFTER else inputs.now)
    rows = fold(inputs.rows, inputs.now)
    first_fires = progress(inputs.stove, (*inputs.earlier, _this_session(inputs.stove, rows)))
    zone_rows = zones(belief)
    course = memory.course(seen, inputs.band)
    if course is None:
        then = belief if belief.now == latest else forecaster.follow(told, latest)
        heats = zone_rows if then is belief else zones(then)
        tries = [*(steps(rows) if memory.wanted_step else ()), *(() if inputs.action == LEAVE else (inputs.action,))]
        course = _course(then, heats, rows, inputs.band, first_fires, inputs.baked, tries)
        memory.keep_course(seen, inputs.band, course)
    turn_rows = (*turns(belief), *course.turns)
    return Present(
        belief=belief,
        rows=rows,
        first_fires=first_fires,
        zones={zone.spot: zone for zone in zone_rows},
        turns=turn_rows,
        course=course,
        cautions=due(
            belief.stove, rows, zone_rows, turn_rows, now=inputs.now, first_fires_done=first_fires.next is None
        ),
    )


def _doing(first_fires: FirstFires) -> Doing:
    """What is done now if nothing out of the ordinary is; nobody feeds a fire that is to go cold."""
    return Doing(unfed=first_fires.is_to_go_cold)


def _fits(found: Present, projection: Projection, fit_for_food: bool) -> tuple[TaskFit, ...]:
    """What the stove is good for now, and later by what the latest row told."""
    told = found.course.fits
    since = (found.belief.now - found.course.asked_at).total_seconds() / 60.0
    return as_told(fits(projection, found.belief.stove, first_fires_done=fit_for_food), told, since) if since else told


def _course(
    belief: Belief,
    heats: Sequence[Zone],
    rows: Sequence[Entry],
    band: HeatBand,
    first_fires: FirstFires,
    baked: tuple[Session, ...],
    tries: Sequence[Action],
) -> Course:
    inside, is_read, tries = in_oven(rows), was_read(rows), tuple(dict.fromkeys(tries))
    courses = [(_doing(first_fires), belief.stove.spots), (Doing(unfed=True), oven_of(belief.stove))]
    ahead, untended, *tried = project_each(belief, [*courses, *after_each(tries, belief.stove)], band)
    return Course(
        asked_at=belief.now,
        ahead=ahead,
        turns=turns_to_come(belief, untended, band),
        next_reading=next_reading(belief, ahead, band) if is_read else None,
        fits=fits(ahead, belief.stove, first_fires_done=first_fires.next is None),
        bakes=_bakes(inside, belief, ahead, baked),
        hottest_top=_hottest_top(belief.stove, heats),
        tried=dict(zip(tries, tried, strict=True)),
    )


def _hottest_top(stove: Stove, heats: Sequence[Zone]) -> float:
    return max((zone.p50 for zone in heats if stove.kind_of(zone.spot) is SpotKind.TOP), default=0.0)


def _bakes(
    inside: tuple[InOven, ...], belief: Belief, ahead: Projection, baked: tuple[Session, ...]
) -> tuple[UnderWay, ...]:
    pressure = site_at(belief.stove.altitude).pressure
    return those_under_way(inside, ahead, trace(belief), belief.stove, pressure, baked) if inside else ()


def work_out(inputs: Inputs, memory: Memory | None = None) -> Standing:
    """How the stove stands and what is likely to come; the same with and without a memory."""
    memory = memory or Memory()
    found = present(inputs, memory)
    belief, stove, band = found.belief, found.belief.stove, inputs.band
    fit_for_food = found.first_fires.next is None
    # One projection for the fan on the screen, the arrival and the fit alike; at the latest row it is the course's.
    is_at_row = found.course.asked_at == belief.now
    projection = found.course.ahead if is_at_row else project(belief, band=band, unfed=_doing(found.first_fires).unfed)
    ahead = outlook_of(projection, stove, band, inputs.ahead)
    known = found.course.tried if is_at_row else {}
    may_act = was_read(found.rows) and fit_for_food and not fire_is_out(found.turns)
    memory.wanted_step = may_act and wants_step(ahead, band)
    asked = () if inputs.action == LEAVE else (inputs.action,)
    return Standing(
        serial=inputs.serial,
        now=inputs.now,
        stove=stove,
        band=band,
        rows=found.rows,
        belief=belief,
        first_fires=found.first_fires,
        cautions=found.cautions,
        outlook=ahead,
        projection=projection,
        unfed=None if fit_for_food else project(belief, unfed=True),
        trace=trace(belief),
        believed=trace_as_believed(belief),
        zones=found.zones,
        fits=_fits(found, projection, fit_for_food),
        course=found.course,
        turns=found.turns,
        doubted=doubted_readings(belief),
        best_step=best_step(belief, band, found.rows, ahead, found.cautions, known) if may_act else None,
        alternative=next(iter(what_if(belief, band, asked, inputs.ahead, known)), None),
    )


def with_pots(standing: Standing, pots: Sequence[int], minutes: float) -> list[Projection]:
    """The standing's futures with so many more pots on the cooktop from now on, and for so many minutes.

    Each draws what a pan of the log draws; below 0 so many of those are not there. What the pots change on the whole is
    laid on the standing's own futures.
    """
    stove, before = standing.belief.stove, standing.projection
    kinds = (SpotKind.TOP, SpotKind.OVEN)
    spots = [spot for spot in stove.spots if spot.kind in kinds and spot.name in before.spots]
    places = [before.spots.index(spot.name) for spot in spots]
    usual = _doing(standing.first_fires)
    doings = [usual, *(replace(usual, pots=more, pots_min=minutes) for more in pots)]
    same, *found = project_each(standing.belief, [(doing, spots) for doing in doings], standing.band)
    after = []
    for each in found:
        kelvin = before.kelvin.copy()
        kelvin[:, :, places] += (each.kelvin - same.kelvin).mean(axis=0)
        after.append(replace(before, kelvin=kelvin))
    return after


def left_warm(inputs: Inputs) -> CarriedHeat | None:
    """What a stove still holds at the moment asked about, after the rows of its last session; none if it is cold."""
    told = meant_rows(inputs.stove, inputs.rows)
    carried = carried_heat(Tracker(inputs.stove, inputs.character).follow(told, inputs.now))
    return carried if is_warm(carried) else None


def looked_back(inputs: Inputs) -> tuple[Trace, frozenset[int]]:
    """The oven over a log up to the moment asked about, as it is known now, and the rows that look like slips."""
    told = meant_rows(inputs.stove, inputs.rows)
    belief = Tracker(inputs.stove, inputs.character).follow(told, inputs.now)
    kept = numbers_kept(inputs.rows)
    return trace(belief), frozenset(row.number for row in doubted_readings(belief) if row.number not in kept)


def cautions_by_moment(inputs: Inputs) -> Iterator[tuple[datetime, tuple[Caution, ...]]]:
    """The cautions that were due at each entry of a log, in order of time."""
    forecaster = Memory().forecaster(inputs.stove, inputs.character)
    told = meant_rows(inputs.stove, inputs.rows)
    for moment in sorted({row.at for row in inputs.rows if row.at <= inputs.now}):
        belief, rows = forecaster.follow(told, moment), fold(inputs.rows, moment)
        first_fires = progress(inputs.stove, (*inputs.earlier, _this_session(inputs.stove, rows)))
        turn_rows = (*turns(belief), *turns_to_come(belief, oven_ahead(belief, unfed=True), inputs.band))
        yield (
            moment,
            due(belief.stove, rows, zones(belief), turn_rows, now=moment, first_fires_done=first_fires.next is None),
        )


def cautions_over(inputs: Inputs) -> tuple[Caution, ...]:
    """Each kind of caution that was due at any entry of a log, in the order in which they first were."""
    found: dict[str, Caution] = {}
    for _, cautions in cautions_by_moment(inputs):
        for caution in cautions:
            found.setdefault(caution.key, caution)
    return tuple(found.values())


def _this_session(stove: Stove, rows: tuple[Entry, ...]) -> Session:
    return Session(number=0, stove=stove.name, title="", entries=rows)


def at_moment(inputs: Inputs, now: datetime) -> Inputs:
    """The same asked about another moment of the log."""
    return replace(inputs, now=now)
