"""Undo and redo as rows of the log: nothing is removed, a void row takes another one back.

An act is one thing the cook did: a row entered, a row corrected, a row taken back, a questioned row kept. Undo takes
back the latest act that stands, whatever it was, and goes on backwards; redo goes forwards again until the next act.

In the log a correction is the new row and, right behind it, a void of the old one noted `corrected`. Undo writes voids
noted `undone` of all rows of an act, redo voids noted `redone` of those; a void without such a note is a taking back.
"""

from collections.abc import Sequence
from dataclasses import dataclass, field
from datetime import datetime

from cookstove_gui.errors import InputProblem
from cookstove_gui.stove.entries import Entry, Kind, named_number

CORRECTED, UNDONE, REDONE = "corrected", "undone", "redone"


def void(number: int, now: datetime, offset_minutes: int, note: str = "") -> Entry:
    """The row that takes back row `number`."""
    return Entry(number=0, at=now, offset_minutes=offset_minutes, kind=Kind.VOID, value=str(number), note=note)


def undo_rows(rows: Sequence[Entry], now: datetime, offset_minutes: int) -> list[Entry]:
    """The rows that undo the latest act that stands."""
    standing = _acts(rows).standing
    if not standing:
        raise InputProblem("There is nothing to undo in this session.")
    return [void(number, now, offset_minutes, UNDONE) for number in reversed(standing[-1])]


def redo_rows(rows: Sequence[Entry], now: datetime, offset_minutes: int) -> list[Entry]:
    """The rows that bring back the act undone last, as long as nothing was done since."""
    undone = _acts(rows).undone
    if not undone:
        raise InputProblem("There is nothing to bring back; something was done since, or nothing was undone.")
    return [void(number, now, offset_minutes, REDONE) for number in reversed(undone[-1].by)]


@dataclass(frozen=True, slots=True)
class _Undone:
    act: tuple[int, ...]  # numbers of its rows
    by: tuple[int, ...]  # numbers of the voids that undid it


@dataclass(slots=True)
class _Acts:
    """What was done, by the numbers of its rows, oldest first."""

    standing: list[tuple[int, ...]] = field(default_factory=list)
    undone: list[_Undone] = field(default_factory=list)
    _half: list[int] = field(default_factory=list)  # voids so far of an act being undone or redone

    def take(self, row: Entry) -> None:
        """Follow the log by one row, in order of number."""
        if row.kind is Kind.VOID and row.note == UNDONE and self.standing and self._goes_on(row, self.standing[-1]):
            if len(self._half) == len(self.standing[-1]):
                self.undone.append(_Undone(act=self.standing.pop(), by=self._done()))
        elif row.kind is Kind.VOID and row.note == REDONE and self.undone and self._goes_on(row, self.undone[-1].by):
            if len(self._half) == len(self.undone[-1].by):
                self._done()
                self.standing.append(self.undone.pop().act)
        elif row.kind is Kind.VOID and row.note == CORRECTED and self.standing:
            self.standing[-1] += (row.number,)
        else:
            self._half.clear()
            self.undone.clear()
            self.standing.append((row.number,))

    def _goes_on(self, row: Entry, target: tuple[int, ...]) -> bool:
        """Whether a void names the next row of what is being undone or redone; a log edited by hand may not."""
        if named_number(row) != target[len(target) - 1 - len(self._half)]:
            return False
        self._half.append(row.number)
        return True

    def _done(self) -> tuple[int, ...]:
        by = tuple(self._half)
        self._half.clear()
        return by


def _acts(rows: Sequence[Entry]) -> _Acts:
    found = _Acts()
    for row in sorted(rows, key=lambda row: row.number):
        found.take(row)
    return found
