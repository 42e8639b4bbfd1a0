"""Tables of other programs become texts: whatever separator, dates as dates, whole numbers without a point."""

from datetime import date, datetime, time
from pathlib import Path

import openpyxl
import pandas
import pyarrow
import pyarrow.parquet
import pytest

from cookstove_gui.errors import InputProblem
from cookstove_gui.logbook.sheets import read_sheet


@pytest.mark.parametrize("mark", [",", ";", "\t", "|"])
def test_any_separator_is_found(tmp_path: Path, mark: str) -> None:
    path = tmp_path / "morning.csv"
    path.write_text("\n".join(mark.join(row) for row in (("time", "oven"), ("7:05", "140"), ("", ""), ("7:20", ""))))
    sheet = read_sheet(path)
    assert (sheet.columns, sheet.rows) == (("time", "oven"), (("7:05", "140"), ("7:20", "")))


def test_a_spreadsheets_cells_are_what_was_typed(tmp_path: Path) -> None:
    book = openpyxl.Workbook()
    for row in (
        ["day", "time", "oven", None, "oven", "note"],
        [date(2026, 1, 5), time(7, 5), 140.0, 1, 3.5, "windy"],
        [datetime.fromisoformat("2026-01-05T07:20"), None, None, None, None, None],
    ):
        book.active.append(row)
    book.save(tmp_path / "log.xlsx")
    sheet = read_sheet(tmp_path / "log.xlsx")
    assert sheet.columns[:4] == ("day", "time", "oven", "column 4")
    assert sheet.columns[5] == "note"
    assert sheet.columns[4].startswith("oven")
    assert len(set(sheet.columns)) == 6
    first, second = sheet.rows
    assert (first[0][:10], *first[1:]) == ("2026-01-05", "07:05:00", "140", "1", "3.5", "windy")
    assert second == ("2026-01-05T07:20:00", "", "", "", "", "")


def test_parquet_by_another_library(tmp_path: Path) -> None:
    table = pyarrow.table({"clock": [datetime.fromisoformat("2026-01-05T07:05")], "flue": [301.5]})
    pyarrow.parquet.write_table(table, tmp_path / "log.parquet")
    assert read_sheet(tmp_path / "log.parquet").rows == (("2026-01-05T07:05:00", "301.5"),)


def test_what_pandas_writes_is_read(tmp_path: Path) -> None:
    frame = pandas.DataFrame({"time": ["7:05"], "oven": [140]})
    frame.to_excel(tmp_path / "log.xlsx", index=False)
    frame.to_csv(tmp_path / "log.csv", index=False)
    assert read_sheet(tmp_path / "log.xlsx").rows == read_sheet(tmp_path / "log.csv").rows == (("7:05", "140"),)


@pytest.mark.parametrize(
    ("name", "content", "sentence"),
    [
        ("log.doc", b"x", "log.doc is no table that can be read; save it as CSV, .xlsx or .parquet."),
        ("log.csv", b"", "log.csv holds no rows under a line of names; is it the right file?"),
        ("log.csv", b"time,oven\n", "log.csv holds no rows under a line of names; is it the right file?"),
        ("log.xlsx", b"no zip", "log.xlsx cannot be read as a table"),
        ("log.parquet", b"none", "log.parquet cannot be read as a table"),
        ("log.csv", "größe;1\n".encode("latin-1"), "log.csv line 1: the text is not UTF-8"),
    ],
)
def test_what_is_no_table_gets_a_sentence(tmp_path: Path, name: str, content: bytes, sentence: str) -> None:
    (tmp_path / name).write_bytes(content)
    with pytest.raises(InputProblem) as refused:
        read_sheet(tmp_path / name)
    assert refused.value.sentence.startswith(sentence)


def test_a_file_that_is_not_there_gets_a_sentence(tmp_path: Path) -> None:
    with pytest.raises(InputProblem, match="cannot be read: No such file"):
        read_sheet(tmp_path / "none.csv")
