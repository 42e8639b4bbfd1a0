"""The entries in question: unlikely by rule or by the belief, and neither kept nor corrected yet."""

from __future__ import annotations

from bisect import bisect_left, bisect_right, insort
from collections.abc import Sequence
from dataclasses import dataclass
from datetime import datetime
from typing import TYPE_CHECKING

from cookstove_gui.phrases.heading import question_about
from cookstove_gui.stove.doubts import LATELY, MUCH_NEARER, Doubt, doubt
from cookstove_gui.stove.entries import Entry, Kind, numbers_kept, reading_kelvin
from cookstove_gui.units import kelvin, parse_number

if TYPE_CHECKING:
    from cookstove_gui.phrases.edge import Edge
    from cookstove_gui.situation import Standing
    from cookstove_gui.stove.stove import Stove


@dataclass(frozen=True, slots=True, kw_only=True)
class Question:
    """What is asked about an entry; it is in the log in any case."""

    number: int  # of the entry
    sentence: str
    other_unit: str = ""  # the unit in which the number would be likely, if there is one


class Questions:
    """The open questions, worked out once for each state of the log and of what is believed."""

    def __init__(self) -> None:
        self._asked: tuple[object, ...] = ()
        self._found: tuple[Question, ...] = ()
        self._by_rule = _ByRule()

    def of(
        self, stove: Stove, rows: tuple[Entry, ...], entries: Sequence[Entry], standing: Standing | None, edge: Edge
    ) -> tuple[Question, ...]:
        """The open questions about a session at the edge's now, in the order in which its rows were entered."""
        asked = (stove, rows, standing, edge.unit)
        if len(self._asked) != len(asked) or any(a is not b for a, b in zip(self._asked, asked, strict=True)):
            in_order = sorted(entries, key=lambda row: row.number)
            by_rule = self._by_rule.follow(stove, in_order, edge.now)
            kept = numbers_kept(rows)
            doubtful = by_rule.keys() | ({row.number for row in standing.doubted} if standing else set())
            open_rows = (row for row in in_order if row.number in doubtful and row.number not in kept)
            self._found = tuple(_question(row, by_rule.get(row.number), standing, edge) for row in open_rows)
            self._asked = asked
        return self._found


def _question(row: Entry, by_rule: Doubt | None, standing: Standing | None, edge: Edge) -> Question:
    """What a rule asks, or else what the belief does."""
    if by_rule is not None:
        other = _other(row.unit) if by_rule.field == "unit" else ""
        return Question(number=row.number, sentence=by_rule.sentence, other_unit=other)
    assert standing is not None
    slip = next(one for one in standing.doubted if one.number == row.number)
    meant = kelvin(parse_number(row.value), _other(row.unit)) + slip.typed - reading_kelvin(row)
    fits = abs(meant - slip.expected_p50) < abs(slip.typed - slip.expected_p50) / MUCH_NEARER
    sentence = question_about(standing, row.number, edge)
    return Question(number=row.number, sentence=sentence, other_unit=_other(row.unit) if fits else "")


class _ByRule:
    """What is unlikely by rule, each row against those entered before it; only new rows are looked at."""

    def __init__(self) -> None:
        self._stove: Stove | None = None
        self._followed: list[Entry] = []
        self._at_spot: dict[str, list[Entry]] = {}  # readings in order of time
        self._first: Entry | None = None  # in time
        self._found: dict[int, Doubt] = {}

    def follow(self, stove: Stove, entries: Sequence[Entry], now: datetime) -> dict[int, Doubt]:
        """The doubts by the number of their row; `entries` in the order in which they were entered."""
        done = len(self._followed)
        is_longer = len(entries) >= done and all(a is b for a, b in zip(self._followed, entries, strict=False))
        if stove is not self._stove or not is_longer:
            self._stove, self._at_spot, self._first, self._found, done = stove, {}, None, {}, 0
        for row in entries[done:]:
            self._take(row, stove, now)
        self._followed = list(entries)
        return self._found

    def _take(self, row: Entry, stove: Stove, now: datetime) -> None:
        before = self._at_spot.setdefault(row.spot, [])
        lately = before[bisect_left(before, row.at - LATELY, key=_at) : bisect_right(before, row.at, key=_at)]
        asked = doubt(row, stove, lately if self._first is None else (self._first, *lately), now)
        if asked is not None:
            self._found[row.number] = asked
        if self._first is None or row.at < self._first.at:
            self._first = row
        if row.kind is Kind.READING:
            insort(before, row, key=_at)


def _at(row: Entry) -> datetime:
    return row.at


def _other(unit: str) -> str:
    return "C" if unit == "F" else "F"
