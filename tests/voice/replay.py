"""Firings of the invented worlds run through the one road, and the pairs of moments that the rules look at."""

from collections.abc import Iterator
from dataclasses import dataclass, replace
from datetime import datetime, timedelta
from enum import StrEnum

from cookstove_gui.cooking.fit.bands import band_from_text
from cookstove_gui.cooking.instruments.meant_rows import meant_sessions
from cookstove_gui.forecast import Character, learn
from cookstove_gui.situation import Inputs, Memory, work_out
from cookstove_gui.stove.entries import Entry, Kind, Session
from cookstove_gui.stove.stove import Stove
from tests.voice.moment import Moment, moment_of
from tests.world.other import make_other_sessions
from tests.world.sessions import make_sessions
from tests.world.stoves import FAMILIES, make_stove, renamed

BANDS = ("bread", "biscuit", "cake", "roast", "pie", "300-350")
KINDS = ("first", "new", "other", "first learned", "kindled", "other learned")
_PAST = 3  # sessions that a learned character knows
_AFTER = (2, 3, 20, 45, 90, 180)  # min after the last row, when nobody types any more


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
    """The invented firing of a number; kinds, stoves and bands take turns."""
    kind, band = KINDS[number % len(KINDS)], BANDS[(number // 2) % len(BANDS)]
    seed = 300000 + number
    name = f"{number}, {kind}, {band}"
    if kind.startswith("other"):
        firings = range(_PAST + 1 if kind.endswith("learned") else 1)
        others = make_other_sessions(seed, firings)
        return _with_past(name, others[-1].stove, [one.entries for one in others], band, kind.endswith("learned"))
    world = make_stove(seed, FAMILIES[number % len(FAMILIES)])
    if kind in ("new", "kindled"):
        world = renamed(world, is_new=True)
        purposes = ("kindling",) if kind == "new" else ("kindling", "medium")
        fired = [make_sessions([(world, firing)], purpose=purpose)[0] for firing, purpose in enumerate(purposes)]
        rows = [one.entries for one in fired]
        return replace(
            _with_past(name, world.stove, rows, band, learned=False), earlier=_sessions(world.stove, rows[:-1])
        )
    firings = range(_PAST + 1 if kind.endswith("learned") else 1)
    made = make_sessions([(world, firing) for firing in firings])
    return _with_past(name, world.stove, [one.entries for one in made], band, kind.endswith("learned"))


def _with_past(name: str, stove: Stove, rows: list[tuple[Entry, ...]], band: str, learned: bool) -> Case:
    past = _sessions(stove, rows[:-1]) if learned else ()
    character = learn(stove, meant_sessions(stove, past)) if past else None
    return Case(name=name, stove=stove, rows=rows[-1], band=band, earlier=past, character=character)


def _sessions(stove: Stove, rows: list[tuple[Entry, ...]]) -> tuple[Session, ...]:
    return tuple(
        Session(number=number, stove=stove.name, title="", entries=one) for number, one in enumerate(rows, start=1)
    )


def follow(case: Case, every: float) -> Iterator[Pair]:
    """Pairs of consecutive moments: each `every` minutes and the minute after, at rows, and long after the last.

    In every fifth pair the oven door is opened as well, beside the same minute without it.
    """
    memory, before = Memory(), None
    for number, now in enumerate(_moments(case, every)):
        after = _stand(case, case.rows, now, memory)
        if before is not None:
            typed = len(_up_to(case.rows, now)) != len(_up_to(case.rows, before.now))
            yield Pair(before=before, after=after, step=Step.ROWS if typed else Step.TIME)
        if number % 5 == 3:
            # A memory of its own: a row that is taken away again would be read as a correction of the log.
            yield Pair(before=after, after=_stand(case, _door_opened(case.rows, now), now, Memory()), step=Step.DOOR)
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


def _stand(case: Case, rows: tuple[Entry, ...], now: datetime, memory: Memory) -> Moment:
    asked = inputs_at(case, rows, now)
    minute = (now - case.rows[0].at).total_seconds() / 60.0
    return moment_of(f"{case.name}, minute {minute:.0f}", asked, work_out(asked, memory), case.earlier)


def _moments(case: Case, every: float) -> list[datetime]:
    start, end = case.rows[0].at, max(row.at for row in case.rows)
    minutes = (end - start).total_seconds() / 60.0
    found = {end + timedelta(minutes=wait) for wait in _AFTER}
    place = 0.0
    while place < minutes:
        found |= {start + timedelta(minutes=place), start + timedelta(minutes=place + 1.0)}
        place += every
    found |= {row.at for row in case.rows[:: max(1, round(every / 2))]}
    return sorted(found)


def _up_to(rows: tuple[Entry, ...], now: datetime) -> tuple[Entry, ...]:
    return tuple(row for row in rows if row.at <= now)


def _door_opened(rows: tuple[Entry, ...], now: datetime) -> tuple[Entry, ...]:
    known = _up_to(rows, now)
    row = replace(known[-1], number=len(rows) + 1, at=now, kind=Kind.OVEN_DOOR, spot="", value="open", unit="", note="")
    return (*known, row)
