"""Undo and redo as rows of the log: nothing is removed, a void row takes another one back.

A correction is the new row and, right behind it, a void of the old one with the note `corrected`.
"""

from collections.abc import Sequence
from datetime import datetime

from cookstove_gui.errors import InputProblem
from cookstove_gui.stove.entries import Entry, Kind, named_number

CORRECTED = "corrected"


def void(number: int, now: datetime, offset_minutes: int, note: str = "") -> Entry:
    """The row that takes back row `number`."""
    return Entry(number=0, at=now, offset_minutes=offset_minutes, kind=Kind.VOID, value=str(number), note=note)


def undo_rows(rows: Sequence[Entry], now: datetime, offset_minutes: int) -> list[Entry]:
    """The rows that take back the latest thing entered."""
    standing = _in_effect(rows)
    latest = max((row for row in rows if row.number in standing and not _is_plain_void(row)), default=None, key=_number)
    if latest is None:
        raise InputProblem("There is nothing to take back; this session's log is empty.")
    if latest.kind is Kind.VOID:  # the second half of a correction: the old row comes back, the new one goes
        new = max((row for row in rows if row.number < latest.number), key=_number)
        return [void(latest.number, now, offset_minutes), void(new.number, now, offset_minutes)]
    return [void(latest.number, now, offset_minutes)]


def redo_rows(rows: Sequence[Entry], now: datetime, offset_minutes: int) -> list[Entry]:
    """The rows that take back the latest undo, as long as nothing was entered since."""
    standing = _in_effect(rows)
    trail = []  # the void rows at the end of the log
    for row in sorted(rows, key=_number, reverse=True):
        if not _is_plain_void(row):
            break
        trail.append(row)
    undone = next((row for row in trail if row.number in standing and not _brings_back(row, rows)), None)
    if undone is None:
        raise InputProblem("There is nothing to bring back; something was entered since, or nothing was taken back.")
    found = [void(undone.number, now, offset_minutes)]
    before = next((row for row in rows if row.number == undone.number - 1), None)
    if before is not None and before in trail and _takes_back_correction(before, rows):
        found.append(void(before.number, now, offset_minutes))
    return found


def _in_effect(rows: Sequence[Entry]) -> set[int]:
    """Numbers of the rows, void rows among them, that were not taken back."""
    taken_back: set[int] = set()
    for row in sorted(rows, key=_number, reverse=True):
        if row.kind is Kind.VOID and row.number not in taken_back:
            taken_back.add(named_number(row))
    return {row.number for row in rows} - taken_back


def _is_plain_void(row: Entry) -> bool:
    return row.kind is Kind.VOID and row.note != CORRECTED


def _brings_back(row: Entry, rows: Sequence[Entry]) -> bool:
    """Whether a void row takes back an undo, and so is a redo itself."""
    target = next((other for other in rows if other.number == named_number(row)), None)
    return target is not None and _is_plain_void(target)


def _takes_back_correction(row: Entry, rows: Sequence[Entry]) -> bool:
    target = next((other for other in rows if other.number == named_number(row)), None)
    return target is not None and target.kind is Kind.VOID and target.note == CORRECTED


def _number(row: Entry) -> int:
    return row.number
