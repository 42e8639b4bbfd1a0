"""From a LOG and a folder of past logs to what is asked: the stove, its rows, the moment, and what the past taught."""

from collections.abc import Callable
from dataclasses import dataclass, replace
from datetime import datetime, timedelta, timezone
from pathlib import Path

from cookstove_gui.commands.parsing import Request
from cookstove_gui.cooking.fit.bands import band_from_text
from cookstove_gui.cooking.instruments.meant_rows import meant_sessions
from cookstove_gui.errors import InputProblem
from cookstove_gui.forecast.learning.learn import learn
from cookstove_gui.forecast.model.character import Character
from cookstove_gui.logbook.folder import PastLogs, read_folder, stove_beside, stove_for
from cookstove_gui.logbook.log_file import LogReading, in_one_sentence, read_log
from cookstove_gui.situation import Inputs
from cookstove_gui.stove.entries import Entry, Session
from cookstove_gui.stove.stove import Stove
from cookstove_gui.units import parse_iso_clock, parse_wall_clock

_HALF_A_DAY = timedelta(hours=12)


@dataclass(frozen=True, slots=True, kw_only=True)
class Asked:
    """One LOG at one moment."""

    log: Path
    inputs: Inputs
    offset_minutes: int
    is_whole: bool  # every row of the file could be read


class Asker:
    """Reads the past once and learns once for each set of past sessions."""

    def __init__(self, request: Request, complain: Callable[[str], None]) -> None:
        self._request = request
        self._complain = complain
        self._past: PastLogs | None = None
        self._learned: dict[tuple[Stove, tuple[int, ...]], Character] = {}
        if request.past is not None:
            self._past = read_folder(request.past)
            for sentence in self._past.problems[:1]:
                more = len(self._past.problems) - 1
                complain(f"{sentence} (left out of the past{f', and {more} more' if more else ''})")

    def ask(self, log: Path) -> Asked:
        """Everything about one log; raises InputProblem when it cannot be used at all."""
        described = stove_beside(log.parent) or (self._past.stove if self._past else None)
        reading = read_log(log)
        rows = _rows(reading, log)
        last = max(rows, key=lambda row: (row.at, row.number))
        now = _moment(self._request.at, last)
        if min(row.at for row in rows) > now:
            raise InputProblem(f"{log} holds no row up to {self._request.at}; ask for a later moment.")
        before = self._past_before(min(row.at for row in rows))
        session = Session(number=0, stove="", title=log.stem, entries=tuple(row for row in rows if row.at <= now))
        stove = stove_for(log.parent, (*before, session), described)
        past = tuple(replace(one, stove=stove.name) for one in before)
        if reading.problems:
            self._complain(in_one_sentence(reading.unreadable or reading.problems))
        return Asked(
            log=log,
            inputs=Inputs(
                stove=stove,
                rows=session.entries,
                now=now,
                band=self._request.band or band_from_text("bread", "F"),
                character=self._character(stove, past),
                earlier=past,
                baked=past,
                ahead=self._request.ahead,
            ),
            offset_minutes=last.offset_minutes,
            is_whole=not reading.unreadable,
        )

    def _past_before(self, began: datetime) -> tuple[Session, ...]:
        """What came before: neither the log itself nor anything after it began."""
        sessions = self._past.sessions if self._past else ()
        cut = (
            replace(session, entries=tuple(row for row in session.entries if row.at < began)) for session in sessions
        )
        return tuple(session for session in cut if session.entries)

    def _character(self, stove: Stove, past: tuple[Session, ...]) -> Character | None:
        if not past:
            return None
        key = (stove, tuple(session.number for session in past))
        if key not in self._learned:
            self._learned[key] = learn(stove, meant_sessions(stove, past))
        return self._learned[key]


def folder_of_logs(folder: Path, complain: Callable[[str], None]) -> tuple[PastLogs, Stove]:
    """The logs of a folder and the stove they are of; raises InputProblem when none can be read."""
    past = read_folder(folder)
    if not past.sessions:
        why = f": {past.problems[0]}" if past.problems else "; put the sessions' CSV files there."
        raise InputProblem(f"{folder} holds no log that can be read{why}")
    if past.problems:
        more = len(past.problems) - 1
        complain(f"{past.problems[0]}{f' (and {more} more like this)' if more else ''}")
    return past, stove_for(folder, past.sessions, past.stove)


def _rows(reading: LogReading, log: Path) -> tuple[Entry, ...]:
    if reading.entries:
        return reading.entries
    if reading.unreadable:
        raise InputProblem(f"No row could be read: {in_one_sentence(reading.unreadable)}")
    raise InputProblem(f"{log} holds no rows under its header; there is nothing to answer yet.")


def _moment(typed: str, last: Entry) -> datetime:
    """The moment asked about: an ISO clock, a wall clock near the last row, or `-10`, minutes before that row."""
    if not typed:
        return last.at
    if len(typed.strip()) > len("12:00:00 a.m."):
        return parse_iso_clock(typed)[0]
    if typed.strip().startswith("-"):
        return parse_wall_clock(typed, last.at, last.offset_minutes)
    local = last.at.astimezone(timezone(timedelta(minutes=last.offset_minutes)))
    at = parse_wall_clock(typed, local.replace(hour=23, minute=59), last.offset_minutes)  # on the last row's day
    if at - last.at > _HALF_A_DAY:
        return at - timedelta(days=1)
    return at + timedelta(days=1) if last.at - at > _HALF_A_DAY else at
