"""A table of sessions says what the entries say, and reads back the same in other programs."""

import csv
import math
from dataclasses import replace
from datetime import UTC, datetime
from pathlib import Path

import openpyxl
import pandas
import pyarrow.parquet
import pytest
from frictionless import validate

from cookstove_gui.errors import InputProblem, SurroundingsProblem
from cookstove_gui.logbook.plain_cells import unguarded
from cookstove_gui.logbook.tables import ENDINGS, session_table, write_table
from cookstove_gui.stove.checking import check_entry
from cookstove_gui.stove.entries import Entry, Kind, Session
from cookstove_gui.stove.stove import stove_with_default_spots

from .strategies import reading

STOVE = stove_with_default_spots("Kitchen")
SEVEN = datetime(2026, 1, 5, 12, 0, tzinfo=UTC)
TEXTS = ["title", "stove", "kind", "spot", "label", "unit", "unit_si", "note"]


def _entry(number: int, kind: str, **fields: str) -> Entry:
    return check_entry(number=number, at=SEVEN, offset_minutes=-300, kind=kind, **fields)


# by hand: (385 - 32) / 1.8 + 273.15 K, 200 + 273.15 K, 4 lb of 0.45359237 kg
ROWS = (
    (_entry(1, "reading", spot="oven_centre", value="385", unit="F"), 385.0, 469.261111, "K"),
    (_entry(2, "reading", spot="flue", value="200", unit="C"), 200.0, 473.15, "K"),
    (_entry(3, "wood", value="4", unit="lb", note="=2 splits\nof ash, “dry”"), 4.0, 1.81436948, "kg"),
    (_entry(4, "wood", note="two splits"), math.nan, math.nan, ""),
    (_entry(5, "air", value="0.33"), 0.33, 0.33, "1"),
    (_entry(6, "oven_door", value="open"), 1.0, 1.0, "1"),
    (_entry(7, "pan", spot="top_back_left", value="off"), 0.0, 0.0, "1"),
    (_entry(8, "note", note="007"), math.nan, math.nan, ""),
    (_entry(9, "oven_in", value="4", unit="lb", note="loaf of bread"), 4.0, 1.81436948, "kg"),
    (_entry(10, "probe", value="200", unit="C"), 200.0, 473.15, "K"),
    (_entry(11, "due", value="20"), 20.0, 1200.0, "s"),
    (_entry(12, "oven_out"), math.nan, math.nan, ""),
)
BREAD = Session(number=3, stove="Kitchen", title="Bread, Sunday", entries=tuple(row[0] for row in ROWS))
STEW = Session(number=4, stove="Kitchen", title="Stew", entries=(reading(1),))


def _table() -> pandas.DataFrame:
    return session_table(STOVE, [BREAD, STEW])


@pytest.mark.parametrize("place", range(len(ROWS)), ids=[str(row[0].kind) for row in ROWS])
def test_an_entry_is_a_row_of_numbers(place: int) -> None:
    entry, typed, si, unit = ROWS[place]
    row = _table().iloc[place]
    assert row["value"] == pytest.approx(typed, nan_ok=True)
    assert row["value_si"] == pytest.approx(si, nan_ok=True)
    assert (row["unit"], row["unit_si"], row["note"]) == (entry.unit, unit, entry.note)


def test_a_row_says_where_it_belongs() -> None:
    row = _table().iloc[0]
    assert (row["session"], row["title"], row["stove"]) == (3, "Bread, Sunday", "Kitchen")
    assert (row["spot"], row["label"]) == ("oven_centre", "oven centre")
    assert (row["clock"], row["utc_offset_min"]) == (pandas.Timestamp("2026-01-05T07:00:00-05:00"), -300)


def test_what_was_taken_back_is_not_in_the_table() -> None:
    void = replace(reading(3), kind=Kind.VOID, value="1", spot="", unit="")
    taken = replace(STEW, entries=(reading(1), reading(2, 5, "400"), void))
    assert session_table(STOVE, [taken])["value"].tolist() == [400.0]


def test_no_session_makes_a_table_with_no_rows(tmp_path: Path) -> None:
    for ending in ENDINGS:
        write_table(tmp_path / f"none{ending}", session_table(STOVE, []))
    assert pandas.read_parquet(tmp_path / "none.parquet").empty


def _same(back: pandas.DataFrame) -> None:
    table = _table()
    for column in TEXTS:
        assert back[column].fillna("").tolist() == table[column].tolist(), column
    for column in ("session", "value", "value_si"):
        assert back[column].tolist() == pytest.approx(table[column].tolist(), nan_ok=True), column
    assert pandas.to_datetime(back["clock"], utc=True).tolist() == table["clock"].tolist()


def test_pandas_reads_each_kind_of_file_back(tmp_path: Path) -> None:
    for ending in ENDINGS:
        write_table(tmp_path / f"t{ending}", _table())
    texts = dict.fromkeys(TEXTS, str)
    _same(
        pandas.read_csv(
            tmp_path / "t.csv",
            dtype={name: kind for name, kind in texts.items() if name != "note"},
            converters={"note": unguarded},
        )
    )
    _same(pandas.read_excel(tmp_path / "t.xlsx", dtype=texts))
    _same(pandas.read_parquet(tmp_path / "t.parquet"))


def test_parquet_keeps_aware_instants_and_numbers(tmp_path: Path) -> None:
    write_table(tmp_path / "t.parquet", _table())
    back = pyarrow.parquet.read_table(tmp_path / "t.parquet")
    assert str(back.schema.field("clock").type.tz) == "UTC"
    assert str(back.schema.field("value_si").type) == "double"
    assert back.column("clock")[0].as_py() == SEVEN
    assert back.column("utc_offset_min").to_pylist() == [-300] * len(ROWS) + [STEW.entries[0].offset_minutes]
    assert back.column("note").to_pylist()[2] == "=2 splits\nof ash, “dry”"


def test_spreadsheet_has_numbers_and_texts_that_stay_texts(tmp_path: Path) -> None:
    bell = replace(STEW, entries=(replace(reading(1), note="bell\x07"),))
    write_table(tmp_path / "t.xlsx", session_table(STOVE, [BREAD, bell]))
    header, *rows = openpyxl.load_workbook(tmp_path / "t.xlsx").active.iter_rows()
    cells = [dict(zip([cell.value for cell in header], row, strict=True)) for row in rows]
    assert cells[0]["clock"].value == "2026-01-05T07:00:00-05:00"
    assert cells[0]["value"].data_type == "n"
    assert cells[2]["note"].data_type == "s"
    assert cells[2]["note"].value == "=2 splits\nof ash, “dry”"
    assert cells[3]["value"].value is None
    assert cells[7]["note"].value == "007"
    assert cells[len(ROWS)]["note"].value == "bell "


def test_csv_is_a_table_to_other_readers(tmp_path: Path) -> None:
    write_table(tmp_path / "t.csv", _table())
    assert validate("t.csv", basepath=str(tmp_path)).valid
    with (tmp_path / "t.csv").open(encoding="utf-8", newline="") as stream:
        rows = list(csv.DictReader(stream))
    assert rows[0]["clock"] == "2026-01-05T07:00:00-05:00"
    assert rows[2]["note"] == "'=2 splits\nof ash, “dry”"
    assert [row["value"] for row in rows[:4]] == ["385.0", "200.0", "4.0", ""]


def test_other_endings_and_places_are_told(tmp_path: Path) -> None:
    with pytest.raises(InputProblem, match=r"must end in \.csv, \.xlsx or \.parquet"):
        write_table(tmp_path / "t.doc", _table())
    with pytest.raises(SurroundingsProblem, match="cannot be written"):
        write_table(tmp_path / "none" / "t.csv", _table())


@pytest.mark.parametrize("ending", ENDINGS)
def test_nothing_half_written_is_left(tmp_path: Path, monkeypatch: pytest.MonkeyPatch, ending: str) -> None:
    def full(_: int) -> None:
        raise OSError(28, "No space left on device")

    target = tmp_path / f"t{ending}"
    target.write_bytes(b"as before")
    monkeypatch.setattr("os.fsync", full)
    with pytest.raises(SurroundingsProblem, match="No space left"):
        write_table(target, _table())
    assert [path.name for path in tmp_path.iterdir()] == [target.name]
    assert target.read_bytes() == b"as before"


def test_each_session_has_a_sheet_of_its_own_behind_all_entries(tmp_path: Path) -> None:
    long = replace(STEW, number=5, title="Bread: rye/wheat [two] and a very long Sunday")
    again = replace(STEW, number=6, title="stew")
    write_table(tmp_path / "t.xlsx", session_table(STOVE, [BREAD, STEW, long, again]))
    sheets = pandas.read_excel(tmp_path / "t.xlsx", sheet_name=None)
    assert list(sheets) == ["entries", "Bread, Sunday", "Stew", "Bread  rye wheat  two  and a ve", "stew (2)"]
    assert [len(sheet) for sheet in sheets.values()] == [len(ROWS) + 3, len(ROWS), 1, 1, 1]
    book = openpyxl.load_workbook(tmp_path / "t.xlsx")
    assert [cell.value for cell in book["Stew"][1]][:3] == ["clock", "kind", "spot"]
    assert book["Bread, Sunday"].cell(4, 9).value == "=2 splits\nof ash, “dry”"
    assert book["Bread, Sunday"].cell(4, 9).data_type == "s"


@pytest.mark.parametrize("title", ["", "'", "[]", "entries", "x" * 40, "=1+1"])
def test_any_title_makes_a_sheet(tmp_path: Path, title: str) -> None:
    write_table(tmp_path / "t.xlsx", session_table(STOVE, [replace(STEW, title=title), replace(BREAD, title=title)]))
    names = openpyxl.load_workbook(tmp_path / "t.xlsx").sheetnames
    assert len(set(names)) == 3
    assert all(0 < len(name) <= 31 for name in names)
