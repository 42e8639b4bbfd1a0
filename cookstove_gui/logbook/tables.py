"""Tables in and out through pandas: entries as a table, and a table as CSV or a spreadsheet file.

pandas takes a third of a second to load, so it is imported only where a table is really made.
"""

import zipfile
from collections.abc import Sequence
from pathlib import Path
from typing import TYPE_CHECKING

from cookstove_gui.errors import InputProblem, SurroundingsProblem
from cookstove_gui.logbook.log_file import COLUMNS, LogReading, log_text, read_log_text
from cookstove_gui.stove.entries import Entry, Kind, fold, reading_kelvin
from cookstove_gui.units import TemperatureUnit, degrees

if TYPE_CHECKING:
    from pandas import DataFrame


def entry_table(entries: Sequence[Entry]) -> "DataFrame":
    """The log as a table of texts, one row an entry, with the columns of the log file."""
    import io

    import pandas

    return pandas.read_csv(
        io.StringIO(log_text(entries), newline=""), dtype=str, keep_default_na=False, na_filter=False
    )


def entries_from_table(table: "DataFrame", where: str = "table") -> LogReading:
    """The entries of a table with the columns of the log file, judged like a log file."""
    texts = table.reindex(columns=[name for name in COLUMNS if name in table.columns]).fillna("").astype(str)
    return read_log_text(texts.to_csv(index=False), where)


def read_spreadsheet(path: Path) -> LogReading:
    """The entries of a log kept as .xlsx, its first sheet having the columns of the log file, all cells as text.

    Raises InputProblem for a file that is no spreadsheet. A clock kept as a spreadsheet's own date has no UTC offset
    and is told like any other clock without one.
    """
    import pandas

    try:
        table = pandas.read_excel(path, dtype=str, keep_default_na=False, na_filter=False)
    except OSError as error:
        raise InputProblem(f"{path} cannot be read: {error.strerror or error}.") from error
    except (ValueError, KeyError, zipfile.BadZipFile) as error:
        raise InputProblem(
            f"{path} is no spreadsheet that can be read; save it as .xlsx or as CSV in UTF-8."
        ) from error
    return entries_from_table(table, str(path))


def reading_table(entries: Sequence[Entry], unit: TemperatureUnit) -> "DataFrame":
    """Standing readings as numbers: index the UTC instant, one column a spot, in the unit asked for.

    Where a spot was read twice at one instant the later row counts.
    """
    import pandas

    readings = [row for row in fold(entries) if row.kind is Kind.READING]
    long = pandas.DataFrame(
        {
            "at": pandas.to_datetime([row.at for row in readings], utc=True),
            "spot": [row.spot for row in readings],
            "value": [float(degrees(reading_kelvin(row), unit)) for row in readings],
        }
    )
    return long.pivot_table(index="at", columns="spot", values="value", aggfunc="last", sort=True)


def table_of_cells(header: Sequence[str], rows: Sequence[Sequence[object]]) -> "DataFrame":
    """A table of what a report shows."""
    import pandas

    return pandas.DataFrame([list(row) for row in rows], columns=list(header))


def write_table(path: Path, table: "DataFrame", with_index: bool = False) -> None:
    """Write a table as .csv or .xlsx, told by the ending of the name."""
    try:
        match path.suffix.lower():
            case ".csv":
                table.to_csv(path, index=with_index)
            case ".xlsx":
                _write_spreadsheet(path, _without_zones(table), with_index)
            case _:
                raise InputProblem(f"{path} must end in .csv or .xlsx; give it one of these endings.")
    except OSError as error:
        raise SurroundingsProblem(f"{path} cannot be written ({error.strerror}); choose another place.") from error


def _write_spreadsheet(path: Path, table: "DataFrame", with_index: bool) -> None:
    """Texts stay texts: one that begins with “=” would else be taken for a formula, and control letters are refused."""
    import pandas

    with pandas.ExcelWriter(path, engine="openpyxl") as writer:
        table.map(_printable).to_excel(writer, index=with_index)
        for row in writer.book.active.iter_rows():
            for cell in row:
                if cell.data_type == "f":
                    cell.data_type = "s"


def _printable(value: object) -> object:
    if not isinstance(value, str):
        return value
    return "".join(letter if letter in "\n\t" or ord(letter) >= 32 else " " for letter in value)


def _without_zones(table: "DataFrame") -> "DataFrame":
    """A copy with UTC instants bare, because spreadsheet files know no time zones."""
    import pandas

    copy = table.copy()
    if isinstance(copy.index, pandas.DatetimeIndex) and copy.index.tz is not None:
        copy.index = copy.index.tz_localize(None).rename(f"{copy.index.name or 'at'} (UTC)")
    return copy
