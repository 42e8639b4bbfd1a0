"""A table of another program as texts: CSV with any separator, a spreadsheet's first sheet, Parquet."""

import csv
import io
from dataclasses import dataclass
from datetime import date, datetime, time
from pathlib import Path
from typing import TYPE_CHECKING

from cookstove_gui.errors import InputProblem
from cookstove_gui.logbook.log_file import LARGEST_FILE, MOST_ROWS
from cookstove_gui.logbook.log_text import decoded

if TYPE_CHECKING:
    from pandas import DataFrame

SHEET_ENDINGS = (".csv", ".tsv", ".txt", ".xlsx", ".parquet")
_MOST_COLUMNS = 200


@dataclass(frozen=True, slots=True, kw_only=True)
class Sheet:
    """Names of the columns, and the cells under them as texts; an empty cell is an empty text."""

    path: Path
    columns: tuple[str, ...]
    rows: tuple[tuple[str, ...], ...]


def read_sheet(path: Path) -> Sheet:
    """Read a table; raises InputProblem for what is none, is far too large, or has no names over its columns."""
    ending = path.suffix.lower()
    if ending not in SHEET_ENDINGS:
        raise InputProblem(f"{path.name} is no table that can be read; save it as CSV, .xlsx or .parquet.")
    try:
        if path.stat().st_size > LARGEST_FILE:
            raise InputProblem(f"{path.name} is larger than {LARGEST_FILE // 1_000_000} MB; split it.")
        cells = _csv_cells(path) if ending in (".csv", ".tsv", ".txt") else _framed_cells(path, ending)
    except OSError as error:
        raise InputProblem(f"{path} cannot be read: {error.strerror}.") from error
    cells = [row for row in cells if any(cell for cell in row)]
    if len(cells) < 2:
        raise InputProblem(f"{path.name} holds no rows under a line of names; is it the right file?")
    columns, *rows = cells
    if len(rows) > MOST_ROWS or len(columns) > _MOST_COLUMNS:
        raise InputProblem(f"{path.name} has more than {MOST_ROWS} rows or {_MOST_COLUMNS} columns; split it.")
    width = len(columns)
    names = tuple(name or f"column {place}" for place, name in enumerate(columns, start=1))
    return Sheet(path=path, columns=_each_once(names), rows=tuple((*row, *[""] * width)[:width] for row in rows))


def _csv_cells(path: Path) -> list[tuple[str, ...]]:
    text = decoded(path.read_bytes(), path.name)
    try:
        dialect: type[csv.Dialect] | csv.Dialect = csv.Sniffer().sniff(text[:4096], delimiters=",;\t|")
    except csv.Error:
        dialect = csv.excel
    try:
        return [tuple(cell.strip() for cell in row) for row in csv.reader(io.StringIO(text, newline=""), dialect)]
    except csv.Error as error:
        raise InputProblem(f"{path.name} cannot be split into cells ({error}); save it as CSV again.") from None


def _framed_cells(path: Path, ending: str) -> list[tuple[str, ...]]:
    import pandas

    try:
        frame: DataFrame
        if ending == ".parquet":
            frame = pandas.read_parquet(path)
        else:
            frame = pandas.read_excel(path, dtype=object)
    except OSError:
        raise
    except Exception as error:  # whatever a damaged file makes the reading library say
        raise InputProblem(f"{path.name} cannot be read as a table ({error}); save it again.") from None
    names = ["" if str(name).startswith("Unnamed: ") else _text(name) for name in frame.columns]
    rows = [tuple(_text(cell) for cell in row) for row in frame.itertuples(index=False, name=None)]
    return [tuple(names), *rows]


def _text(cell: object) -> str:
    """A cell as it would be typed: a date as 2026-01-05, a whole number without its point."""
    import pandas

    if cell is None or cell is pandas.NaT or cell != cell:
        return ""
    if isinstance(cell, datetime | date | time):
        return cell.isoformat()
    if isinstance(cell, float) and cell.is_integer():
        return str(int(cell))
    return str(cell).strip()


def _each_once(names: tuple[str, ...]) -> tuple[str, ...]:
    found: list[str] = []
    for name in names:
        number, free = 2, name
        while free in found:
            free, number = f"{name} ({number})", number + 1
        found.append(free)
    return tuple(found)
