"""From the bytes of a CSV file to its raw rows: encoding, separator, header, quotation marks and line numbers."""

import csv
import io
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from itertools import islice

from cookstove_gui.errors import InputProblem

_SEPARATORS = {",": "commas", ";": "semicolons", "\t": "tabs"}
LONGEST_FIELD = 131_072  # characters; the csv module's own limit, which another library in the process may have lifted
_TOO_LONG = "A field is longer than any note; shorten it."


@dataclass(frozen=True, slots=True, kw_only=True)
class Header:
    """The first line of a log file."""

    separator: str
    columns: tuple[str, ...]  # names, small letters


@dataclass(frozen=True, slots=True, kw_only=True)
class RawRow:
    """One row under the header, as text."""

    number: int  # from 1
    line: int  # of the file, where the row begins
    fields: Mapping[str, str] = field(default_factory=dict)
    complaint: str = ""  # why it could not be split into fields


def decoded(content: bytes, where: str) -> str:
    """The text of a file; a byte-order mark is taken off. Raises InputProblem for anything but UTF-8."""
    begin = content[:200]
    if begin.startswith((b"\xff\xfe", b"\xfe\xff")) or begin.count(0) > len(begin) // 4:
        raise InputProblem(f"{where} is written in UTF-16 or is not text; save it as CSV in UTF-8.")
    try:
        return content.decode("utf-8-sig")
    except UnicodeDecodeError as error:
        line = content.count(b"\n", 0, error.start) + 1
        raise InputProblem(
            f"{where} line {line}: the text is not UTF-8 (perhaps Latin-1 or Windows-1252); save it as CSV in UTF-8."
        ) from None


def header_of(text: str, where: str, wanted: Sequence[str]) -> Header:
    """The header, with its columns in any order; raises InputProblem when one is missing."""
    expected = ",".join(wanted)
    if not text.strip():
        raise InputProblem(f"{where} is empty; a log begins with the line {expected}.")
    first_line = next(line for line in io.StringIO(text, newline="") if line.strip())
    readings = {mark: _names(first_line, mark) for mark in _SEPARATORS}
    separator = max(readings, key=lambda mark: len(set(readings[mark]) & set(wanted)))
    columns = readings[separator]
    missing = [name for name in wanted if name not in columns]
    if len(missing) == len(wanted):
        raise InputProblem(f"{where} line 1: the header is missing; a log begins with the line {expected}.")
    if missing:
        names = ", ".join(f"“{name}”" for name in missing)
        plural = "columns" if len(missing) > 1 else "column"
        verb = "are" if len(missing) > 1 else "is"
        raise InputProblem(f"{where} line 1: the {plural} {names} {verb} missing; the header must read {expected}.")
    twice = next((name for name in wanted if columns.count(name) > 1), None)
    if twice:
        raise InputProblem(f"{where} line 1: the column “{twice}” appears twice; the header must read {expected}.")
    return Header(separator=separator, columns=columns)


def header_notes(header: Header, wanted: Sequence[str]) -> Iterator[str]:
    """What is unusual about a header that was understood all the same."""
    if header.separator != ",":
        yield f"The fields are separated by {_SEPARATORS[header.separator]}; they were read, but commas are the rule."
    unknown = [name for name in header.columns if name not in wanted]
    if unknown:
        names = ", ".join(f"“{name}”" for name in unknown)
        yield f"The unknown columns {names} were ignored; put such remarks in the column note."


def raw_rows(text: str, header: Header) -> Iterator[RawRow]:
    """The rows under the header; blank lines do not count, and after a broken row reading goes on with the next one."""
    lines = list(io.StringIO(text, newline=""))
    start = next(place for place, line in enumerate(lines) if line.strip()) + 1
    number = 0
    while start < len(lines):
        reader = csv.reader(islice(lines, start, None), delimiter=header.separator, strict=True)
        begin = start
        while True:
            begin = start + reader.line_num
            try:
                cells = next(reader)
            except StopIteration:
                return
            except csv.Error as error:
                number += 1
                if begin + 1 > len(lines):
                    return
                yield RawRow(number=number, line=begin + 1, complaint=_broken(error))
                break
            if not cells:
                continue
            number += 1
            if any(len(cell) > LONGEST_FIELD for cell in cells):
                yield RawRow(number=number, line=begin + 1, complaint=_TOO_LONG)
                continue
            yield _row(number, begin + 1, cells, header)
        start = begin + 1


def _broken(error: csv.Error) -> str:
    if "limit" in str(error):
        return _TOO_LONG
    return "A quotation mark is not closed, or is inside a text; double it inside quoted text."


def _row(number: int, line: int, cells: list[str], header: Header) -> RawRow:
    extra = len(cells) - len(header.columns)
    if extra > 0 and any(cell.strip() for cell in cells[-extra:]):
        complaint = (
            f"{len(cells)} fields where the header names {len(header.columns)}; "
            "put a text that holds the separator in quotation marks."
        )
        return RawRow(number=number, line=line, complaint=complaint)
    padded = cells + [""] * max(0, -extra)
    return RawRow(number=number, line=line, fields=dict(zip(header.columns, padded, strict=False)))


def _names(line: str, separator: str) -> tuple[str, ...]:
    return tuple(cell.strip().strip('"').strip().lower() for cell in line.split(separator))
