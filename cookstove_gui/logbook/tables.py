"""Sessions as one tidy table for other programs: a row an entry, as CSV, spreadsheet or Parquet.

pandas takes a third of a second to load, so it is imported only where a table is made.
"""

import io
import re
from collections.abc import Iterable, Sequence
from pathlib import Path
from typing import TYPE_CHECKING

from cookstove_gui.errors import InputProblem
from cookstove_gui.logbook.plain_cells import guarded
from cookstove_gui.logbook.whole_file import write_whole
from cookstove_gui.stove.entries import Entry, Kind, Session, fold, fraction_open, reading_kelvin, stated_mass
from cookstove_gui.stove.stove import Stove
from cookstove_gui.units import iso_clock, parse_number

if TYPE_CHECKING:
    from pandas import DataFrame

ENDINGS = (".csv", ".xlsx", ".parquet")
_TYPES = {
    "session": "int64",
    "title": "object",
    "stove": "object",
    "clock": "object",
    "utc_offset_min": "int64",
    "kind": "object",
    "spot": "object",
    "label": "object",
    "value": "float64",
    "unit": "object",
    "value_si": "float64",
    "unit_si": "object",
    "note": "object",
}
_SHEET_NAME = 31  # letters
_MOST_ROWS = 1_048_575  # what a sheet holds under its header
_IS_OPEN_OR_ON = {"open": 1.0, "closed": 0.0, "on": 1.0, "off": 0.0}


def check_ending(path: Path) -> None:
    """Raises InputProblem unless the name ends in one of `ENDINGS`."""
    if path.suffix.lower() not in ENDINGS:
        raise InputProblem(f"{path} must end in .csv, .xlsx or .parquet; give it one of these endings.")


def session_table(stove: Stove, sessions: Iterable[Session]) -> "DataFrame":
    """The entries in force of a stove's sessions, in order of session and time.

    Returns
    -------
    DataFrame
        Columns: `session` its number, `title`, `stove`, `clock` the instant in UTC, `utc_offset_min` of the local clock
        [min], `kind`, `spot` and its `label`, `value` in the `unit` typed, `value_si` in `unit_si` (K, kg, or 1 for a
        share; a door open or a pan on is 1, closed or off 0), `note`. Numbers are missing where an entry has none.
    """
    import pandas

    rows = [_row(stove, session, entry) for session in sessions for entry in fold(session.entries)]
    table = pandas.DataFrame(rows, columns=list(_TYPES)).astype(_TYPES)
    table["clock"] = pandas.to_datetime(table["clock"], utc=True)
    return table


def _row(stove: Stove, session: Session, entry: Entry) -> tuple[object, ...]:
    spot = stove.spot(entry.spot)
    typed, si, unit_si = _numbers(entry)
    return (
        session.number,
        session.title,
        session.stove,
        entry.at,
        entry.offset_minutes,
        str(entry.kind),
        entry.spot,
        spot.label if spot else entry.spot,
        typed,
        entry.unit,
        si,
        unit_si,
        entry.note,
    )


def _numbers(entry: Entry) -> tuple[float | None, float | None, str]:
    """The number typed, the same in SI, and its SI unit."""
    match entry.kind:
        case Kind.READING | Kind.PROBE | Kind.CARRIED:
            return parse_number(entry.value), reading_kelvin(entry), "K"
        case Kind.WOOD | Kind.OVEN_IN if entry.value:
            return parse_number(entry.value), stated_mass(entry), "kg"
        case Kind.AIR | Kind.BYPASS:
            return fraction_open(entry), fraction_open(entry), "1"
        case Kind.OVEN_DOOR | Kind.PAN:
            return _IS_OPEN_OR_ON[entry.value], _IS_OPEN_OR_ON[entry.value], "1"
        case Kind.DUE:
            return parse_number(entry.value), parse_number(entry.value) * 60.0, "s"
        case _:
            return None, None, ""


def write_table(path: Path, table: "DataFrame") -> None:
    """Write a table of sessions as .csv, .xlsx or .parquet, whole or not at all.

    A spreadsheet has all entries on its first sheet, then a sheet a session.
    CSV and spreadsheet say the clock as ISO 8601 text with its offset, since a spreadsheet's own dates know none.
    """
    check_ending(path)
    match path.suffix.lower():
        case ".csv":
            plain = _with_local_clocks(table).map(lambda cell: guarded(cell) if isinstance(cell, str) else cell)
            content = plain.to_csv(index=False, lineterminator="\r\n").encode("utf-8")
        case ".xlsx":
            content = _spreadsheet(_with_local_clocks(table), path)
        case _:
            stream = io.BytesIO()
            table.to_parquet(stream, engine="pyarrow", index=False)
            content = stream.getvalue()
    write_whole(path, content)


def _with_local_clocks(table: "DataFrame") -> "DataFrame":
    clocks = [iso_clock(at, int(offset)) for at, offset in zip(table["clock"], table["utc_offset_min"], strict=True)]
    return table.assign(clock=clocks).drop(columns="utc_offset_min")


def _spreadsheet(table: "DataFrame", path: Path) -> bytes:
    """Texts stay texts: one that begins with “=” would be taken for a formula, and control letters are refused."""
    import pandas

    if len(table) > _MOST_ROWS:
        raise InputProblem(f"{path} would have more rows than a sheet can hold; choose .csv or .parquet.")
    stream = io.BytesIO()
    plain = table.map(_printable)
    with pandas.ExcelWriter(stream, engine="openpyxl") as writer:
        plain.to_excel(writer, sheet_name="entries", index=False)
        names: list[str] = ["entries"]
        for (number, title), rows in plain.groupby(["session", "title"], sort=False):
            names.append(_sheet_name(str(title) or f"session {number}", names))
            rows.drop(columns=["session", "title", "stove"]).to_excel(writer, sheet_name=names[-1], index=False)
        for sheet in writer.book.worksheets:
            sheet.freeze_panes = "A2"
            for cell in (cell for row in sheet.iter_rows() for cell in row):
                if cell.data_type == "f":
                    cell.data_type = "s"
    return stream.getvalue()


def _sheet_name(title: str, taken: Sequence[str]) -> str:
    """A title as a sheet's name: 31 letters at the most, none of `[]:*?/\\`, no apostrophe at an end, each once.

    Source: ECMA-376, part 1, 18.2.19 (sheet), and what spreadsheets refuse.
    """
    plain = re.sub(r"[\[\]:*?/\\]", " ", title).strip("' ") or "session"
    name, number = plain[:_SHEET_NAME], 2
    while name.casefold() in {one.casefold() for one in taken}:
        tail = f" ({number})"
        name, number = plain[: _SHEET_NAME - len(tail)] + tail, number + 1
    return name


def _printable(value: object) -> object:
    if not isinstance(value, str):
        return value
    return "".join(letter if letter in "\n\t" or ord(letter) >= 32 else " " for letter in value)
