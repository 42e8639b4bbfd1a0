"""Tables hold what the log holds, and come back as the same log."""

from dataclasses import replace
from pathlib import Path

import pandas
import pytest
from hypothesis import given, settings

from cookstove_gui.errors import InputProblem, SurroundingsProblem
from cookstove_gui.logbook.tables import (
    entries_from_table,
    entry_table,
    read_spreadsheet,
    reading_table,
    table_of_cells,
    write_table,
)
from cookstove_gui.stove.entries import Entry, Kind

from .strategies import logs, reading


@given(log=logs())
@settings(max_examples=25)
def test_any_log_comes_back_from_its_table(log: tuple[Entry, ...]) -> None:
    printable = tuple(replace(row, note=row.note.replace("\0", "").replace("\r", "")) for row in log)
    assert entries_from_table(entry_table(printable)).entries == printable


def test_mistake_in_a_table_is_told_with_its_line() -> None:
    table = entry_table([reading(1), reading(2, 5)])
    table.loc[1, "value"] = "38x"
    back = entries_from_table(table, "stew.xlsx")
    assert len(back.entries) == 1
    assert back.problems[0].sentence.startswith("stew.xlsx line 3, value: “38x”")


def test_column_missing_from_a_table_is_told() -> None:
    with pytest.raises(InputProblem, match="“unit” is missing"):
        entries_from_table(entry_table([reading(1)]).drop(columns="unit"))


def test_reading_table_has_a_column_for_each_spot_in_the_unit_asked_for() -> None:
    void = replace(reading(4), kind=Kind.VOID, value="2", spot="", unit="")
    log = [reading(1), reading(2, 5, "400"), reading(3, 5, "200", "flue", "C"), void]
    table = reading_table(log, "C")
    assert list(table.columns) == ["flue", "oven_centre"]
    assert table["oven_centre"].dropna().tolist() == pytest.approx([196.1111], abs=1e-4)  # (385 - 32) / 1.8
    assert table["flue"].dropna().tolist() == pytest.approx([200.0])


def test_no_readings_make_an_empty_table() -> None:
    assert reading_table([], "F").empty


@pytest.mark.parametrize("name", ["t.csv", "t.xlsx"])
def test_written_table_is_read_back_by_pandas(tmp_path: Path, name: str) -> None:
    table = table_of_cells(["spot", "highest"], [["oven centre", 402.5], ["flue", None]])
    write_table(tmp_path / name, table)
    back = pandas.read_csv(tmp_path / name) if name.endswith("csv") else pandas.read_excel(tmp_path / name)
    assert back["spot"].tolist() == ["oven centre", "flue"]
    assert back["highest"].tolist()[0] == 402.5


def test_instants_go_into_a_spreadsheet(tmp_path: Path) -> None:
    write_table(tmp_path / "t.xlsx", reading_table([reading(1)], "F"), with_index=True)
    back = pandas.read_excel(tmp_path / "t.xlsx")
    assert back["at (UTC)"].iloc[0] == pandas.Timestamp("2026-01-05 12:00")


def test_log_comes_back_from_a_spreadsheet(tmp_path: Path) -> None:
    log = (reading(1), replace(reading(2, 5), note="crême, “hot”\nvery"), replace(reading(3, 9), value="400.5"))
    write_table(tmp_path / "bread.xlsx", entry_table(log))
    assert read_spreadsheet(tmp_path / "bread.xlsx").entries == log


@pytest.mark.parametrize(("note", "kept"), [("=1+1", "=1+1"), ("bell\x07", "bell "), ("007", "007"), ("-", "-")])
def test_notes_stay_texts_in_a_spreadsheet(tmp_path: Path, note: str, kept: str) -> None:
    write_table(tmp_path / "bread.xlsx", entry_table([replace(reading(1), note=note)]))
    assert read_spreadsheet(tmp_path / "bread.xlsx").entries[0].note == kept


def test_spreadsheets_own_date_is_told_to_lack_its_offset(tmp_path: Path) -> None:
    table = entry_table([reading(1)])
    table["clock"] = [pandas.Timestamp("2026-01-05 07:00")]
    write_table(tmp_path / "bread.xlsx", table)
    back = read_spreadsheet(tmp_path / "bread.xlsx")
    assert back.entries == ()
    assert "line 2, clock: Clock “2026-01-05 07:00:00” has no UTC offset" in back.problems[0].sentence


@pytest.mark.parametrize("content", [b"", b"no spreadsheet", b"PK\x03\x04 broken"])
def test_file_that_is_no_spreadsheet_is_told(tmp_path: Path, content: bytes) -> None:
    (tmp_path / "bread.xlsx").write_bytes(content)
    with pytest.raises(InputProblem, match="no spreadsheet"):
        read_spreadsheet(tmp_path / "bread.xlsx")
    with pytest.raises(InputProblem, match="cannot be read"):
        read_spreadsheet(tmp_path / "none.xlsx")


def test_other_endings_and_places_are_told(tmp_path: Path) -> None:
    table = table_of_cells(["a"], [[1]])
    with pytest.raises(InputProblem, match=r"\.csv or \.xlsx"):
        write_table(tmp_path / "t.doc", table)
    with pytest.raises(SurroundingsProblem, match="cannot be written"):
        write_table(tmp_path / "none" / "t.csv", table)
