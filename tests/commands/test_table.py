"""`table` writes a folder's entries as one file, and says in one sentence what it could not read."""

import subprocess
import sys
from collections.abc import Callable
from pathlib import Path

import pandas
import pytest

from .conftest import Said, rows


@pytest.mark.parametrize(
    ("ending", "read"),
    [(".csv", pandas.read_csv), (".xlsx", pandas.read_excel), (".parquet", pandas.read_parquet)],
)
def test_a_folder_becomes_a_table(
    say: Callable[..., Said], past: Path, tmp_path: Path, ending: str, read: Callable[[Path], pandas.DataFrame]
) -> None:
    target = tmp_path / f"stove{ending}"
    said = say("table", past, "-o", target)
    assert (said.code, said.lines, said.complaints) == (0, [], [])
    table = read(target)
    assert table["kind"].tolist() == [str(row.kind) for row in sorted(rows(), key=lambda row: row.at)]
    assert set(table["stove"]) == {"Kitchen"}
    assert set(table["title"]) == {"earlier"}


def test_rows_that_cannot_be_read_are_told_and_the_rest_is_written(
    say: Callable[..., Said], past: Path, tmp_path: Path
) -> None:
    bad = past / "bad.csv"
    bad.write_text("clock,kind,spot,value,unit,note\n2026-01-02T08:00:00-05:00,reading,flue,38x,F,\n", "utf-8")
    said = say("table", past, "-o", tmp_path / "stove.csv")
    assert said.code == 2
    assert len(said.complaints) == 1
    assert "bad.csv line 2, value" in said.complaints[0]
    assert len(pandas.read_csv(tmp_path / "stove.csv")) == len(rows())


@pytest.mark.parametrize(
    ("folder", "target", "sentence"),
    [
        ("past", "stove.doc", "must end in .csv, .xlsx or .parquet"),
        ("past", "no such folder/stove.csv", "cannot be written"),
        ("none", "stove.csv", "is not a folder"),
        ("empty", "stove.csv", "holds no log that can be read; put the sessions' CSV files there"),
    ],
)
def test_wrong_input_gets_one_sentence_and_no_file(
    say: Callable[..., Said], past: Path, tmp_path: Path, folder: str, target: str, sentence: str
) -> None:
    (tmp_path / "empty").mkdir()
    said = say("table", tmp_path / folder, "-o", tmp_path / target)
    assert said.code == 2
    assert len(said.complaints) == 1
    assert sentence in said.complaints[0]
    assert not (tmp_path / target).exists()


def test_pandas_is_loaded_for_a_table_only(log: Path) -> None:
    script = (
        "import sys; from cookstove_gui.commands import run; "
        f"code = run(['zones', {str(log)!r}]); assert code == 0; assert not {{'pandas', 'pyarrow'}} & set(sys.modules)"
    )
    done = subprocess.run([sys.executable, "-c", script], capture_output=True, text=True, check=False)
    assert done.returncode == 0, done.stderr
