"""Firings of the invented worlds run through the one road, and the pairs of moments that the rules look at."""

from collections.abc import Iterator
from dataclasses import dataclass, replace
from datetime import datetime, timedelta
from enum import StrEnum
from functools import cache

import numpy as np

from cookstove_gui.cooking.fit.bands import band_from_text
from cookstove_gui.cooking.instruments.meant_rows import meant_sessions
from cookstove_gui.forecast.learning.learn import learn
from cookstove_gui.forecast.model.character import Character
from cookstove_gui.one_road import Memory, work_out
from cookstove_gui.situation import Inputs
from cookstove_gui.stove.entries import Entry, Kind, Session, reading_kelvin
from cookstove_gui.stove.stove import OVEN_CENTRE, Stove
from cookstove_gui.units import kelvin
from tests.voice.moment import Moment, moment_of
from tests.voice.plan_answers import NO_POTS
from tests.world.other import make_other_sessions
from tests.world.sessions import make_sessions
from tests.world.stoves import FAMILIES, make_stove, renamed

BANDS = ("bread", "biscuit", "cake", "roast", "pie", "300-350")
KINDS = ("first", "new", "other", "first learned", "kindled", "other learned")
_PAST = 3  # sessions that a learned character knows
_LEARNED_STOVES = 24  # numbers apart by so many are firings of the same stove, where it has a learned character
_AFTER = 180.0  # min after the last row, when nobody types any more, that are still looked at
_LOAF_EVERY = 3
_BAKES = kelvin(340.0, "F")
_LOAF = ((1.0, Kind.OVEN_IN, ""), (22.0, Kind.PROBE, "140"), (24.0, Kind.TURNED, ""), (40.0, Kind.PROBE, "188"))
_DOOR_EVERY, _DOOR_FIRST = 2, 1  # of the stretches of a firing, in which the oven door is opened as well


class Step(StrEnum):
    """What lies between two moments."""

    TIME = "time"  # nothing but minutes
    ROWS = "rows"  # something was typed
    DOOR = "door"  # the same minute, with the oven door noted open


@dataclass(frozen=True, slots=True, kw_only=True)
class Pair:
    """Two moments and what lies between them."""

    before: Moment
    after: Moment
    step: Step


@dataclass(frozen=True, slots=True, kw_only=True)
class Case:
    """One firing to be followed."""

    name: str
    stove: Stove
    rows: tuple[Entry, ...]
    band: str
    earlier: tuple[Session, ...] = ()
    character: Character | None = None


def make_case(number: int) -> Case:
    """The invented firing of a number; kinds, stoves and bands take turns, and in every third a loaf is baked."""
    case = _case(number)
    return replace(case, rows=_with_a_loaf(case.rows)) if number % _LOAF_EVERY == 0 else case


def _with_a_loaf(rows: tuple[Entry, ...]) -> tuple[Entry, ...]:
    """The same with a loaf put in once the oven was read at baking heat, probed twice and turned, never taken out."""
    hot = next((row for row in rows if row.spot == OVEN_CENTRE and reading_kelvin(row) >= _BAKES), None)
    if hot is None:
        return rows
    done = tuple(
        replace(
            hot,
            number=len(rows) + place,
            at=hot.at + timedelta(minutes=minute),
            kind=kind,
            spot="",
            value=value,
            unit="F" if value else "",
            note="loaf of bread",
        )
        for place, (minute, kind, value) in enumerate(_LOAF, start=1)
    )
    return tuple(sorted((*rows, *done), key=lambda row: row.at))


def _case(number: int) -> Case:
    kind, band = KINDS[number % len(KINDS)], BANDS[(number // 2) % len(BANDS)]
    name = f"{number}, {kind}, {band}"
    if kind.endswith("learned"):
        seed, firing = 300000 + number % _LEARNED_STOVES, _PAST + number // _LEARNED_STOVES
        stove, past, character = _studied(kind, seed)
        _, (rows,) = _fired(kind, seed, range(firing, firing + 1))
        return Case(name=name, stove=stove, rows=rows, band=band, earlier=past, character=character)
    seed = 300000 + number
    if kind in ("first", "other"):
        stove, (rows,) = _fired(kind, seed, range(1))
        return Case(name=name, stove=stove, rows=rows, band=band)
    world = renamed(make_stove(seed, FAMILIES[number % len(FAMILIES)]), is_new=True)
    purposes = ("kindling",) if kind == "new" else ("kindling", "medium")
    fired = [make_sessions([(world, firing)], purpose=purpose)[0] for firing, purpose in enumerate(purposes)]
    *earlier, last = (one.entries for one in fired)
    return Case(name=name, stove=world.stove, rows=last, band=band, earlier=_sessions(world.stove, earlier))


@cache
def _studied(kind: str, seed: int) -> tuple[Stove, tuple[Session, ...], Character]:
    """A stove with the sessions that its character is learned from."""
    stove, fired = _fired(kind, seed, range(_PAST))
    past = _sessions(stove, fired)
    return stove, past, learn(stove, meant_sessions(stove, past))


def _fired(kind: str, seed: int, firings: range) -> tuple[Stove, list[tuple[Entry, ...]]]:
    """Firings of a stove of the first or the other world."""
    if kind.startswith("other"):
        others = make_other_sessions(seed, firings)
        return others[-1].stove, [one.entries for one in others]
    world = make_stove(seed, FAMILIES[seed % len(FAMILIES)])
    return world.stove, [one.entries for one in make_sessions([(world, firing) for firing in firings])]


def _sessions(stove: Stove, rows: list[tuple[Entry, ...]]) -> tuple[Session, ...]:
    return tuple(
        Session(number=number, stove=stove.name, title="", entries=one) for number, one in enumerate(rows, start=1)
    )


def follow(case: Case, stretches: int) -> Iterator[Pair]:
    """Pairs of consecutive moments: a minute and the minute after, somewhere in each of the stretches of a firing.

    In every second stretch the oven door is opened as well, beside the same minute without it.
    """
    memory, before = Memory(), None
    for number, now in enumerate(_moments(case, stretches)):
        after = _stand(case, case.rows, now, memory, before)
        if before is not None:
            typed = len(_up_to(case.rows, now)) != len(_up_to(case.rows, before.now))
            yield Pair(before=before, after=after, step=Step.ROWS if typed else Step.TIME)
        if number % (2 * _DOOR_EVERY) == 2 * _DOOR_FIRST:
            # A memory of its own: a row that is taken away again would be read as a correction of the log.
            yield Pair(
                before=after, after=_stand(case, _door_opened(case.rows, now), now, Memory(), after), step=Step.DOOR
            )
        before = after


def last_moment(case: Case) -> Moment:
    """The end of the firing's log, as an old session is asked about."""
    return _stand(case, case.rows, case.rows[-1].at, Memory())


def inputs_at(case: Case, rows: tuple[Entry, ...], now: datetime) -> Inputs:
    """The question at a moment: of the rows typed by then."""
    return Inputs(
        stove=case.stove,
        rows=_up_to(rows, now),
        now=now,
        band=band_from_text(case.band, "F"),
        character=case.character,
        earlier=case.earlier,
    )


def _stand(case: Case, rows: tuple[Entry, ...], now: datetime, memory: Memory, before: Moment | None = None) -> Moment:
    asked = inputs_at(case, rows, now)
    minute = (now - case.rows[0].at).total_seconds() / 60.0
    kept = before.plan.kept if before else NO_POTS
    return moment_of(f"{case.name}, minute {minute:.0f}", asked, work_out(asked, memory), case.earlier, kept)


def _moments(case: Case, stretches: int) -> list[datetime]:
    """The first row, then two moments a minute apart in each stretch of the firing and of the hours after it."""
    start, end = case.rows[0].at, max(row.at for row in case.rows)
    length = ((end - start).total_seconds() / 60.0 + _AFTER) / stretches
    random = np.random.default_rng(list(case.name.encode()))
    found = [start]
    for place in range(stretches):
        minute = (place + random.random()) * length
        found += [start + timedelta(minutes=minute), start + timedelta(minutes=minute + 1.0)]
    return sorted(found)


def _up_to(rows: tuple[Entry, ...], now: datetime) -> tuple[Entry, ...]:
    return tuple(row for row in rows if row.at <= now)


def _door_opened(rows: tuple[Entry, ...], now: datetime) -> tuple[Entry, ...]:
    known = _up_to(rows, now)
    row = replace(known[-1], number=len(rows) + 1, at=now, kind=Kind.OVEN_DOOR, spot="", value="open", unit="", note="")
    return (*known, row)
