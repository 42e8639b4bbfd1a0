"""The rows of sessions put together or taken apart; rows about other rows stay with the ones they name."""

from collections.abc import Sequence
from datetime import datetime

from cookstove_gui.errors import InputProblem
from cookstove_gui.logbook.rows import renumbered
from cookstove_gui.stove.entries import ABOUT_A_ROW, Entry, Session, named_number


def joined_rows(sessions: Sequence[Session]) -> tuple[Entry, ...]:
    """The rows of several sessions in one log, those of the first session in front."""
    rows: list[Entry] = []
    for session in sessions:
        rows.extend(renumbered(session.entries, first=len(rows) + 1))
    return tuple(rows)


def split_rows(rows: Sequence[Entry], at: datetime) -> tuple[tuple[Entry, ...], tuple[Entry, ...]]:
    """The rows before an instant, and those from it on; raises InputProblem where one side would have none.

    A row that takes another one back, or lets it stand, goes where that one goes, whenever it was written.
    """
    by_number = {row.number: row for row in rows}

    def clock(row: Entry) -> datetime:
        while row.kind in ABOUT_A_ROW and named_number(row) in by_number:
            row = by_number[named_number(row)]  # a row about a row names an earlier one, so this ends
        return row.at

    before = tuple(row for row in rows if clock(row) < at)
    after = tuple(row for row in rows if clock(row) >= at)
    if not before or not after:
        raise InputProblem("There is nothing to split there; choose an entry between the first and the last.")
    return renumbered(before), renumbered(after)
