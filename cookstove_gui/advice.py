"""From how a stove stands to what its cook should do now: why, by when, how sure, and what to read next. No words.

The rules stand in `RULES`, in the order in which they speak: danger, first fires, what in the oven needs the cook
within minutes, the fire, what else is in the oven, the band. The first that has something to say makes the heading;
nothing else composes advice. What a planned meal calls for goes before what is only told of the oven, and behind all
that needs somebody.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, replace
from datetime import UTC, datetime, timedelta
from enum import Enum, auto
from typing import TYPE_CHECKING

from cookstove_gui.cooking.baking.whole_bake import Leaving, WholeBake, way_out, whole_bake
from cookstove_gui.cooking.fires.first_fires import cold_below
from cookstove_gui.cooking.fires.steps import feeds
from cookstove_gui.cooking.fit.bands import minutes_of_bake
from cookstove_gui.cooking.fit.fit import finds_its_heat
from cookstove_gui.cooking.safety.caution import Caution, speak_against
from cookstove_gui.cooking.supper.followed import called_as_planned
from cookstove_gui.cooking.supper.left import loads_are_planned
from cookstove_gui.cooking.supper.moments import Moment, due
from cookstove_gui.cooking.supper.plan import Plan
from cookstove_gui.forecast.answers import EVEN_CHANCE, JUST_READ_MINUTES, TurnKind
from cookstove_gui.forecast.futures.arrival import Arrival, arrival_of, leaving_of, touching_of
from cookstove_gui.situation import SURE_OF_TURN, Standing, fire_is_out, was_read
from cookstove_gui.stove.entries import Kind, reading_kelvin
from cookstove_gui.stove.stove import SpotKind

if TYPE_CHECKING:
    from cookstove_gui.cooking.baking.under_way import UnderWay
    from cookstove_gui.cooking.fires.steps import Alternative

SOON = timedelta(minutes=10)  # a deadline this near is the one thing to do now
LONG_PAST = timedelta(minutes=60)  # a deadline so long gone says nothing any more
JUST_READ = timedelta(minutes=JUST_READ_MINUTES)  # since the latest reading the walk is still going on
AIR_WORKS = timedelta(minutes=15)  # since the air was opened, while the fire catches; common practice, no source
PREPARE_MIN = (3.0, 45.0)  # before the heat comes, when the dough is to be made ready
WAS_THERE = timedelta(minutes=60)  # since the oven was at its heat, the dough is ready already


class Subject(Enum):
    """What a piece of advice is about."""

    DANGER = auto()
    LET_COOL = auto()
    FIRST_FIRE = auto()
    LOOK_AT = auto()
    TURN = auto()
    TAKE_OUT = auto()
    BAKING = auto()
    NOTHING_READ = auto()
    FIRE_OUT = auto()
    DOOR_OPEN = auto()
    AIR_OPEN = auto()
    WOOD_DUE = auto()
    PUT_IN = auto()
    TOO_SHORT = auto()  # at heat, but not for as long as the bake
    COMING = auto()
    COOLING_IN = auto()
    TOUCHES = auto()  # the band, but without holding it
    NOT_COMING = auto()
    TOO_HOT = auto()


@dataclass(frozen=True, slots=True, kw_only=True)
class Deadline:
    """When something is to be done; it stays as it is until something is read or done."""

    at: datetime
    passed: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class ReadingWanted:
    """The reading worth taking next."""

    spot: str
    by: Deadline
    is_due: bool  # now, rather than by a moment to come


@dataclass(frozen=True, slots=True, kw_only=True)
class Advice:
    """What to do now, and what is behind it."""

    subject: Subject
    caution: Caution | None = None  # of a danger
    by: Deadline | None = None  # for wood or air, or for what is in the oven
    inside: UnderWay | None = None  # what in the oven it is about
    arrival: Arrival | None = None
    touches: datetime | None = None  # the band, though the drawn line never enters it
    leaves: datetime | None = None  # when the oven likely leaves the band it is in; none: not within the horizon
    bake_min: float = 0.0  # of the bake that the band is for; 0: the band is for none
    bake: WholeBake | None = None  # what the oven does to a bake put in now
    leaving: Leaving | None = None  # of a bake that the oven does not stay for
    step: Alternative | None = None  # the least step that helps
    wood_by: Deadline | None = None  # beside a heading that is about something else
    reading: ReadingWanted | None = None
    prepares: bool = False  # it is time to make the dough ready
    planned: Moment | None = None  # what the planned meal calls for now


# Subjects that tell of the oven but need nobody now: what a planned meal calls for goes before them.
_TELL_ONLY = (
    Subject.BAKING,
    Subject.PUT_IN,
    Subject.TOO_SHORT,
    Subject.COMING,
    Subject.COOLING_IN,
    Subject.TOUCHES,
    Subject.NOT_COMING,
    Subject.TOO_HOT,
)


def advise(standing: Standing, plan: Plan | None = None) -> Advice:
    """The one piece of advice for a moment, with a planned meal or without."""
    holds_wood = plan is not None and loads_are_planned(
        plan, standing.rows, standing.now, something_bakes=bool(standing.bakes)
    )
    steers = plan is not None and plan.steers  # one voice: it says what is done to the fire for what bakes
    held = {rule for rule, is_held in ((_wood_due, holds_wood), (_air_open, steers)) if is_held}
    rules = [rule for rule in RULES if rule not in held]
    found = next(found for rule in rules if (found := rule(standing)) is not None)
    if holds_wood:
        found = replace(found, wood_by=None)
    if plan is not None and found.inside is not None:
        found = replace(found, inside=called_as_planned(found.inside, plan))
    planned = None if plan is None or found.subject not in _TELL_ONLY else due(plan, standing.now)
    if steers:
        found = replace(found, step=None)
    if planned is None:
        return found if plan is None else replace(found, prepares=False)  # the plan says what the hands do
    # What the meal wants of the fire now is the one step; another beside it would be a second voice.
    return replace(found, planned=planned, prepares=False, step=None if planned.step.helps else found.step)


# The rules, in the order in which they speak


def _danger(standing: Standing) -> Advice | None:
    """A caution about a present danger, which has an order of its own, comes before everything."""
    found = next((one for one in standing.cautions if one.order), None)
    return None if found is None else Advice(subject=Subject.DANGER, caution=found)


def _first_fires(standing: Standing) -> Advice | None:
    """While first fires run nothing is baked, and the next fire waits until the readings say that the stove is cold."""
    following = standing.first_fires.next
    if following is None:
        return None
    burning = any(row.kind is Kind.LIT for row in standing.rows) and not fire_is_out(standing.turns)
    if burning and not standing.first_fires.is_to_go_cold:
        return Advice(subject=Subject.FIRST_FIRE, reading=_reading(standing))
    if _is_hot(standing):
        return Advice(subject=Subject.LET_COOL)
    return Advice(subject=Subject.FIRST_FIRE)


def _oven_needs_you(standing: Standing) -> Advice | None:
    """What is in the oven and is to be looked at, turned or taken out within minutes; the first to come."""
    due = [
        (at, subject, one)
        for one in standing.bakes
        for at, subject in (
            (one.inside.due_at, Subject.LOOK_AT),
            (one.turn_at, Subject.TURN),
            (one.likely, Subject.TAKE_OUT),
        )
        if at is not None and at <= standing.now + SOON
    ]
    for at, subject, one in sorted(due, key=lambda found: found[0]):
        by = _told(standing, at)
        # Once it is likely done, turning it is no use any more.
        if by is not None and not (subject is Subject.TURN and _is_likely_done(one, standing.now)):
            return Advice(subject=subject, inside=one, by=by, reading=_reading(standing))
    return None


def _is_likely_done(one: UnderWay, now: datetime) -> bool:
    return one.likely is not None and one.likely <= now


def _nothing_read(standing: Standing) -> Advice | None:
    return None if was_read(standing.rows) else Advice(subject=Subject.NOTHING_READ)


def _fire_out(standing: Standing) -> Advice | None:
    return Advice(subject=Subject.FIRE_OUT, reading=_reading(standing)) if fire_is_out(standing.turns) else None


def _door_open(standing: Standing) -> Advice | None:
    is_open = any(turn.kind is TurnKind.DOOR_OPEN for turn in standing.turns)
    return Advice(subject=Subject.DOOR_OPEN) if is_open else None


def _air_open(standing: Standing) -> Advice | None:
    by = _deadline(standing, TurnKind.AIR_OPEN)
    if by is None or by.at > standing.now + SOON or speak_against(standing.cautions, "shut air"):
        return None
    opened = next((row.at for row in reversed(standing.rows) if row.kind is Kind.AIR), None)
    if opened is not None and standing.now - opened < AIR_WORKS:
        return None
    return Advice(subject=Subject.AIR_OPEN, by=by, reading=_reading(standing))


def _wood_due(standing: Standing) -> Advice | None:
    """In the band, wood before it falls out; on the way up wood is part of the course and stands beside the heading."""
    by = _deadline(standing, TurnKind.RELOAD_DUE)
    if by is None or by.at > standing.now + SOON or not _is_in_band(standing):
        return None
    return Advice(subject=Subject.WOOD_DUE, by=by, reading=_reading(standing))


def _baking(standing: Standing) -> Advice | None:
    """What is in the oven and needs nobody yet; the next that is done. What was done long ago is out by now."""
    inside = [one for one in standing.bakes if one.likely is None or standing.now - one.likely <= LONG_PAST]
    if not inside:
        return None
    one = min(inside, key=lambda found: found.likely or datetime.max.replace(tzinfo=UTC))
    known_late = one.answer is not None and one.likely is None
    return Advice(
        subject=Subject.BAKING,
        inside=one,
        step=standing.best_step if known_late else None,
        wood_by=_deadline(standing, TurnKind.RELOAD_DUE),
        reading=_reading(standing),
    )


def _in_band(standing: Standing) -> Advice | None:
    if not _is_in_band(standing):
        return None
    minutes = minutes_of_bake(standing.band)
    bake = whole_bake(standing.projection, standing.stove, standing.band, minutes) if minutes else None
    called_for = bake is None or bake.stays >= EVEN_CHANCE
    leaving = None
    if bake is not None and not called_for:
        leaving = way_out(_bake_told(standing, minutes), standing.outlook, standing.projection, standing.stove, minutes)
    return Advice(
        subject=Subject.PUT_IN if called_for else Subject.TOO_SHORT,
        leaves=leaving_of(standing.outlook),
        bake_min=minutes,
        bake=bake,
        leaving=leaving,
        step=None if called_for else _step_against(leaving, standing.best_step),
        wood_by=_deadline(standing, TurnKind.RELOAD_DUE),
        reading=_reading(standing),
    )


def _bake_told(standing: Standing, minutes: float) -> WholeBake:
    """What the latest row's futures do to a bake that goes in as the oven comes to heat: the same until the next."""
    told = standing.course.ahead
    from cookstove_gui.forecast.futures.outlook import outlook_of  # brings the forecast: not before the first paint

    comes = outlook_of(told, standing.stove, standing.band, ()).band.line_enters_min
    return whole_bake(told, standing.stove, standing.band, minutes, start_min=comes or 0.0)


def _step_against(leaving: Leaving | None, step: Alternative | None) -> Alternative | None:
    """A step that works against the way an oven leaves its band; a fire that runs too hot is not fed."""
    if step is None or leaving not in (Leaving.HOT, Leaving.COOL):
        return step
    return step if feeds(step.action) is (leaving is Leaving.COOL) else None


def _out_of_band(standing: Standing) -> Advice | None:
    oven = standing.outlook.oven.p50
    above = oven is not None and oven > standing.band.high
    arrival = arrival_of(standing.outlook)
    if arrival is None:
        touches = touching_of(standing.outlook)
        missed = Subject.TOO_HOT if above else Subject.NOT_COMING
        return Advice(
            subject=missed if touches is None else Subject.TOUCHES,
            touches=touches,
            step=standing.best_step,
            reading=_reading(standing),
        )
    wait = (arrival.likely - standing.now).total_seconds() / 60.0
    may_bake = not _was_in_band(standing) and finds_its_heat(standing.fits, standing.band)
    return Advice(
        subject=Subject.COOLING_IN if above else Subject.COMING,
        arrival=arrival,
        step=standing.best_step,
        wood_by=None if above or standing.best_step else _deadline(standing, TurnKind.RELOAD_DUE),
        reading=_reading(standing),
        prepares=may_bake and PREPARE_MIN[0] <= wait <= PREPARE_MIN[1],
    )


RULES: tuple[Callable[[Standing], Advice | None], ...] = (
    _danger,
    _first_fires,
    _oven_needs_you,
    _nothing_read,
    _fire_out,
    _door_open,
    _air_open,
    _wood_due,
    _baking,
    _in_band,
    _out_of_band,
)


def _was_in_band(standing: Standing) -> bool:
    """Whether the oven was at its heat a while ago, as after a look inside."""
    past = zip(standing.trace.at, standing.trace.p50, strict=True)
    return any(standing.now - at <= WAS_THERE and standing.band.holds(float(heat)) for at, heat in past)


def _is_in_band(standing: Standing) -> bool:
    oven = standing.outlook.oven.p50
    return oven is not None and standing.band.holds(oven)


def _deadline(standing: Standing, kind: TurnKind) -> Deadline | None:
    """When a likely turn needs the cook, by what the latest row told."""
    turns = standing.course.turns
    found = next((turn for turn in turns if turn.kind is kind and turn.chance >= SURE_OF_TURN), None)
    if found is None:
        return None
    return _told(standing, standing.course.asked_at + timedelta(minutes=found.in_min))


def _reading(standing: Standing) -> ReadingWanted | None:
    """What to read next once the walk is done; a spot just read is not asked for again."""
    wanted = standing.course.next_reading
    readings = [row for row in standing.rows if row.kind is Kind.READING]
    if wanted is None or not readings or standing.now - readings[-1].at < JUST_READ:
        return None
    by = _told(standing, standing.course.asked_at + timedelta(minutes=wanted.in_min))
    if by is None:
        return None
    return ReadingWanted(spot=wanted.spot, by=by, is_due=by.at < standing.now + timedelta(minutes=1))


def _told(standing: Standing, at: datetime) -> Deadline | None:
    if standing.now - at > LONG_PAST:
        return None
    return Deadline(at=at, passed=at < standing.now)


def waits_for_cold(standing: Standing) -> bool:
    """Whether a first fire has done its stage, and the stove is not yet known to be cold."""
    return standing.first_fires.is_to_go_cold and _is_hot(standing)


def _is_hot(standing: Standing) -> bool:
    """Whether the cooktop is not yet known to be cold: by its latest reading, and as believed at the latest row.

    A stove of which nobody tells anything more is not found cold and hot by turns.
    """
    limit = cold_below()
    if standing.course.hottest_top >= limit:
        return True
    tops = [spot.name for spot in standing.stove.spots_of(SpotKind.TOP)]
    read = [row for row in standing.rows if row.kind is Kind.READING and row.spot in tops]
    lit = any(row.kind is Kind.LIT for row in standing.rows)
    return lit and (not read or bool(reading_kelvin(read[-1]) >= limit))
