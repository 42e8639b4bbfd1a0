"""Entries and summaries from rows of the store and back, and the numbering of rows that are moved to another log."""

from collections.abc import Iterable
from dataclasses import dataclass, replace
from datetime import UTC, datetime, timedelta

from cookstove_gui.logbook.checksum import is_sound
from cookstove_gui.logbook.database import Row
from cookstove_gui.stove.entries import ABOUT_A_ROW, Entry, Kind, named_number

_EPOCH = datetime(1970, 1, 1, tzinfo=UTC)
_MICROSECOND = timedelta(microseconds=1)
_KINDS = {str(kind): kind for kind in Kind}  # a lifetime of entries is read at once, and this is quicker than Kind()


@dataclass(frozen=True, slots=True, kw_only=True)
class SessionSummary:
    """One line of the list of sessions; the clocks are none while nothing is entered."""

    number: int
    stove: str
    title: str
    first_at: datetime | None
    last_at: datetime | None
    offset_minutes: int  # of the local clock, as last written
    entry_count: int


def microseconds(at: datetime) -> int:
    """Microseconds from 1970 UTC to an instant; whole numbers, so that no instant is rounded."""
    return (at - _EPOCH) // _MICROSECOND


def instant(count: int) -> datetime:
    """Aware UTC instant of a count of microseconds since 1970."""
    return _EPOCH + timedelta(microseconds=count)


def row_of(session_number: int, entry: Entry) -> Row:
    """An entry as a row of the table `entry`."""
    return (
        session_number,
        entry.number,
        microseconds(entry.at),
        entry.offset_minutes,
        str(entry.kind),
        entry.spot,
        entry.value,
        entry.unit,
        entry.note,
    )


def sound_entries(rows: Iterable[Row]) -> tuple[Entry, ...]:
    """The entries of rows (session, number, at, offset_minutes, kind, spot, value, unit, note, checksum).

    A row whose checksum does not fit is left out: what it says was never written.
    """
    return tuple(_entry_of(row) for row in rows if is_sound(row) and row[4] in _KINDS)


def _entry_of(row: Row) -> Entry:
    _, number, at, offset_minutes, kind, spot, value, unit, note, _ = row
    return Entry(
        number=number,
        at=_EPOCH + timedelta(microseconds=at),
        offset_minutes=offset_minutes,
        kind=_KINDS[kind],
        spot=spot,
        value=value,
        unit=unit,
        note=note,
    )


def summary_of(row: Row) -> SessionSummary:
    """The summary of a row (number, stove, title, first_at, last_at, offset_minutes, entry_count)."""
    number, stove, title, first_at, last_at, offset_minutes, entry_count = row
    return SessionSummary(
        number=number,
        stove=stove,
        title=title,
        first_at=None if first_at is None else instant(first_at),
        last_at=None if last_at is None else instant(last_at),
        offset_minutes=offset_minutes,
        entry_count=entry_count,
    )


def renumbered(entries: Iterable[Entry], first: int = 1) -> tuple[Entry, ...]:
    """The same rows numbered without gaps from `first` on, the numbers that rows name following along.

    One that names a row not among the entries says nothing here, and stays as a note.
    """
    rows = sorted(entries, key=lambda row: row.number)
    new_number = {row.number: place for place, row in enumerate(rows, start=first)}
    return tuple(_moved(row, new_number) for row in rows)


def _moved(entry: Entry, new_number: dict[int, int]) -> Entry:
    number = new_number[entry.number]
    if entry.kind not in ABOUT_A_ROW:
        return replace(entry, number=number)
    target = named_number(entry)
    if target in new_number:
        return replace(entry, number=number, value=str(new_number[target]))
    words = f"{'took back' if entry.kind is Kind.VOID else 'kept'} row {target} of another log"
    return replace(
        entry, number=number, kind=Kind.NOTE, value="", note=f"{words}; {entry.note}" if entry.note else words
    )
