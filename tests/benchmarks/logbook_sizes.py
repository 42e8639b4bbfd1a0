"""A lifetime of sessions against an empty logbook, in one run: `python -m tests.benchmarks.logbook_sizes`.

Prints times and their ratios; the ratios are what counts.
"""

import tempfile
from collections.abc import Callable
from datetime import UTC, datetime, timedelta
from pathlib import Path
from statistics import median
from time import perf_counter

from cookstove_gui.logbook.logbook import Logbook
from cookstove_gui.stove.checking import check_entry
from cookstove_gui.stove.entries import Entry, Kind
from cookstove_gui.stove.stove import stove_with_default_spots

SESSIONS = 200
ENTRIES = 300
RUNS = 15
START = datetime(2020, 1, 1, 12, 0, tzinfo=UTC)


def filled(path: Path, sessions: int) -> Path:
    """A logbook with one stove, its past sessions and one that is just begun."""
    book = Logbook.open(path)
    book.save_stove(stove_with_default_spots("Kitchen"))
    for day in range(sessions):
        number = book.start_session("Kitchen", f"session {day}").number
        rows = [
            Entry(
                number=n,
                at=START + timedelta(days=day, minutes=n),
                offset_minutes=-300,
                kind=Kind.READING,
                spot="oven_centre",
                value=str(60 + n),
                unit="F",
            )
            for n in range(1, ENTRIES + 1)
        ]
        book.append(number, rows)
    book.start_session("Kitchen", "now")
    book.close()
    return path


def opened_and_listed(path: Path) -> None:
    """What a start needs of the logbook."""
    book = Logbook.open(path)
    book.stoves()
    book.sessions()
    book.close()


def appended(book: Logbook, number: int) -> None:
    """One entry."""
    book.append(number, [check_entry(at=START, offset_minutes=0, kind="reading", spot="flue", value="300", unit="F")])


def milliseconds(work: Callable[[], object]) -> float:
    """Median time of some runs [ms]."""
    times = []
    for _ in range(RUNS):
        begin = perf_counter()
        work()
        times.append(perf_counter() - begin)
    return 1000 * median(times)


def main() -> None:
    """Measure and print."""
    with tempfile.TemporaryDirectory() as place:
        empty, full = filled(Path(place) / "empty.sqlite", 0), filled(Path(place) / "full.sqlite", SESSIONS)
        few, many = (milliseconds(lambda path=path: opened_and_listed(path)) for path in (empty, full))  # type: ignore[misc]
        print(f"open and list: {few:.2f} ms empty, {many:.2f} ms with {SESSIONS} sessions, ratio {many / few:.2f}")
        books = [Logbook.open(path) for path in (empty, full)]
        newest = [book.sessions()[0].number for book in books]
        few, many = (
            milliseconds(lambda book=book, number=number: appended(book, number))  # type: ignore[misc]
            for book, number in zip(books, newest, strict=True)
        )
        print(f"one entry: {few:.2f} ms empty, {many:.2f} ms with {SESSIONS} sessions, ratio {many / few:.2f}")
        past = milliseconds(lambda: books[1].past_sessions("Kitchen"))
        print(f"all past sessions with {SESSIONS * ENTRIES} entries: {past:.0f} ms")
        for book in books:
            book.close()


if __name__ == "__main__":
    main()
