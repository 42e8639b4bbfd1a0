"""The log as a CSV file (RFC 4180): readable rows are kept, every other one is listed with its line and the reason."""

import csv
import io
import re
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from datetime import timedelta
from pathlib import Path

from cookstove_gui.errors import InputProblem
from cookstove_gui.logbook.log_text import RawRow, decoded, header_notes, header_of, raw_rows
from cookstove_gui.logbook.plain_cells import guarded, unguarded
from cookstove_gui.logbook.rows import renumbered
from cookstove_gui.logbook.whole_file import write_whole
from cookstove_gui.stove.checking import FieldProblem, check_entry
from cookstove_gui.stove.doubts import doubt
from cookstove_gui.stove.entries import ABOUT_A_ROW, Entry, Kind, named_number, numbers_taken_back
from cookstove_gui.stove.stove import MOST_SPOTS, Stove
from cookstove_gui.units import iso_clock, parse_iso_clock

COLUMNS = ("clock", "kind", "spot", "value", "unit", "note")
LARGEST_FILE = 20_000_000  # bytes; eight hours of readings take about 50 000
LARGEST_LINE = 10_000  # bytes of a header
MOST_ROWS = 200_000  # as many as a session of the logbook takes
_MOST_BROKEN = 1_000  # rows that could not be read, after which the file is taken for something else
_FAR_FROM_THE_REST = timedelta(days=1)


@dataclass(frozen=True, slots=True, kw_only=True)
class LogProblem:
    """What is wrong or doubtful about one row of a log file; `kept` when the row is in the log all the same."""

    line: int  # in the file, the header being line 1
    field: str
    why: str
    sentence: str
    kept: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class LogReading:
    """A log file as read.

    `entries` are the good rows, each numbered by its place under the header; `repeats` are good rows that say the same
    as an earlier one, left out of `entries`.
    """

    entries: tuple[Entry, ...]
    problems: tuple[LogProblem, ...]
    repeats: tuple[Entry, ...] = ()

    @property
    def unreadable(self) -> tuple[LogProblem, ...]:
        """The problems of rows that are not in the log."""
        return tuple(problem for problem in self.problems if not problem.kept)

    def with_repeats(self) -> tuple[Entry, ...]:
        """All good rows, for a logbook that keeps everything: the repeats too, each voided at once."""
        rows = self.entries + self.repeats
        # A row may name one that could not be read; its number must not be given away.
        named = [named_number(row) for row in rows if row.kind in ABOUT_A_ROW]
        last = max([row.number for row in rows] + named, default=0)
        voids = tuple(
            Entry(
                number=number,
                at=row.at,
                offset_minutes=row.offset_minutes,
                kind=Kind.VOID,
                value=str(row.number),
                note="repeated row",
            )
            for number, row in enumerate(self.repeats, start=last + 1)
        )
        return tuple(sorted(rows, key=lambda row: row.number)) + voids


def read_log(path: Path, stove: Stove | None = None) -> LogReading:
    """Read a log file; with a stove, unlikely numbers are questioned too.

    Raises InputProblem when there is no such file, or when the whole of it is not a log: empty, wrong encoding, a
    column missing, far too large.
    """
    try:
        with path.open("rb") as stream:
            content = stream.read(LARGEST_FILE + 1)
    except OSError as error:
        reason = "there is no such file" if isinstance(error, FileNotFoundError) else error.strerror
        raise InputProblem(f"{path} cannot be read: {reason}.") from error
    if len(content) > LARGEST_FILE:
        raise InputProblem(
            f"{path} is larger than {LARGEST_FILE // 1_000_000} MB; a log of one session is far smaller, "
            "so choose another file or split it by session."
        )
    return read_log_text(decoded(content, str(path)), str(path), stove)


def looks_like_log(path: Path) -> bool:
    """Whether the first line of a file names most of a log's columns; a file that cannot be read may be one."""
    try:
        with path.open("rb") as stream:
            first = stream.readline(LARGEST_LINE).decode("utf-8-sig", "replace")
    except OSError:
        return True
    return len(set(re.findall(r"[a-z]+", first.casefold())) & set(COLUMNS)) > len(COLUMNS) / 2


def read_log_text(text: str, where: str, stove: Stove | None = None) -> LogReading:
    """Read a log from its text; `where` names it in a sentence."""
    header = header_of(text, where, COLUMNS)
    problems = [_problem(where, 1, "header", "unusual", note, kept=True) for note in header_notes(header, COLUMNS)]
    entries: list[Entry] = []
    line_of: dict[int, int] = {}
    for raw in raw_rows(text, header):
        if raw.number > MOST_ROWS:
            raise InputProblem(f"{where} has more than {MOST_ROWS} rows; split it by session.")
        line_of[raw.number] = raw.line
        try:
            entry = _entry(raw)
        except FieldProblem as problem:
            if len(problems) > _MOST_BROKEN:
                raise InputProblem(
                    f"{where} has more than {_MOST_BROKEN} rows that cannot be read; is it a log of this program?"
                ) from None
            problems.append(_problem(where, raw.line, problem.field, problem.why, problem.sentence))
        else:
            if entry is not None:
                entries.append(entry)
    spots = {row.spot for row in entries}
    if len(spots) > MOST_SPOTS:
        raise InputProblem(
            f"{where} names more than {MOST_SPOTS} spots; no stove has so many, so is it the right file?"
        )
    entries, idle = _without_idle_rows(entries, len(line_of))
    standing, repeats = _without_repeats(entries)
    for number, why, sentence in idle:
        problems.append(_problem(where, line_of[number], "value", why, sentence))
    for row, first in repeats:
        sentence = f"The same as line {line_of[first]}; counted once."
        problems.append(_problem(where, line_of[row.number], "row", "repeated", sentence, kept=True))
    problems.extend(_questions(where, standing, line_of, stove))
    return LogReading(
        entries=tuple(standing),
        problems=tuple(sorted(problems, key=lambda problem: problem.line)),
        repeats=tuple(row for row, _ in repeats),
    )


def log_text(entries: Iterable[Entry]) -> str:
    """The text of a log file with these rows, in the order of their numbers, which become 1, 2, 3 ..."""
    stream = io.StringIO(newline="")
    writer = csv.writer(stream, lineterminator="\r\n")
    writer.writerow(COLUMNS)
    for row in renumbered(entries):
        clock = iso_clock(row.at, row.offset_minutes)
        writer.writerow((clock, str(row.kind), *map(guarded, (row.spot, row.value, row.unit, row.note))))
    return stream.getvalue()


def write_log(path: Path, entries: Iterable[Entry]) -> None:
    """Write a log file, whole or not at all."""
    write_whole(path, log_text(entries).encode("utf-8"))


def in_one_sentence(problems: Sequence[LogProblem]) -> str:
    """The first problem, and how many more there are."""
    more = len(problems) - 1
    tail = f" (and {more} more like this)" if more else ""
    return f"{problems[0].sentence}{tail}"


def _problem(where: str, line: int, field: str, why: str, sentence: str, kept: bool = False) -> LogProblem:
    return LogProblem(line=line, field=field, why=why, sentence=f"{where} line {line}, {field}: {sentence}", kept=kept)


def _entry(raw: RawRow) -> Entry | None:
    """The entry of a row; none for a row of nothing but empty fields."""
    if raw.complaint:
        raise FieldProblem("row", "not six fields", raw.complaint)
    fields = raw.fields
    if not any(text.strip() for text in fields.values()):
        return None
    try:
        at, offset_minutes = parse_iso_clock(fields["clock"])
    except InputProblem as problem:
        raise FieldProblem("clock", "not a clock", _capital(problem.sentence)) from None
    return check_entry(
        number=raw.number,
        at=at,
        offset_minutes=offset_minutes,
        kind=fields["kind"],
        spot=unguarded(fields["spot"]),
        value=unguarded(fields["value"]),
        unit=unguarded(fields["unit"]),
        note=unguarded(fields["note"]),
    )


def _capital(sentence: str) -> str:
    return sentence[:1].upper() + sentence[1:]


def _without_idle_rows(entries: list[Entry], rows: int) -> tuple[list[Entry], list[tuple[int, str, str]]]:
    """The entries without those that name a row the file does not have, and what to say of them."""
    kept: list[Entry] = []
    idle: list[tuple[int, str, str]] = []
    for row in entries:
        if row.kind in ABOUT_A_ROW and named_number(row) > rows:
            what = "take back" if row.kind is Kind.VOID else "keep"
            sentence = f"There is no row {row.value} to {what}; the file has {rows}, counted under the header."
            idle.append((row.number, "no such row", sentence))
        else:
            kept.append(row)
    return kept, idle


def _without_repeats(entries: list[Entry]) -> tuple[list[Entry], list[tuple[Entry, int]]]:
    """The rows without those that say the same as an earlier standing row, and the latter with that row's number.

    What was taken back does not count, so that a row may be typed again after it was voided.
    """
    taken_back = numbers_taken_back(entries)
    first_of: dict[tuple[object, ...], int] = {}
    kept: list[Entry] = []
    repeats: list[tuple[Entry, int]] = []
    for row in entries:
        content = (row.at, row.kind, row.spot, row.value, row.unit, row.note)
        if row.number in taken_back:
            kept.append(row)
        elif content in first_of:
            repeats.append((row, first_of[content]))
        else:
            first_of[content] = row.number
            kept.append(row)
    return kept, repeats


def _questions(
    where: str, entries: Sequence[Entry], line_of: dict[int, int], stove: Stove | None
) -> Iterator[LogProblem]:
    in_time = sorted(entries, key=lambda row: (row.at, row.number))
    for row in _lonely(in_time):
        sentence = "More than a day from the other rows; is the date right?"
        yield _problem(where, line_of[row.number], "clock", "far from the rest", sentence, kept=True)
    last_at_spot: dict[str, Entry] = {}
    for row in in_time if stove else ():
        last = last_at_spot.get(row.spot)
        question = doubt(row, stove, (last,) if last else ()) if stove else None
        if question:
            yield _problem(where, line_of[row.number], question.field, question.why, question.sentence, kept=True)
        if row.kind is Kind.READING:
            last_at_spot[row.spot] = row


def _lonely(in_time: Sequence[Entry]) -> list[Entry]:
    """Rows that stand alone, more than a day before and after any other; a log of many days has none."""
    found = []
    for place, row in enumerate(in_time):
        beside = [*in_time[max(0, place - 1) : place], *in_time[place + 1 : place + 2]]
        if beside and all(abs(other.at - row.at) > _FAR_FROM_THE_REST for other in beside):
            found.append(row)
    return found
