"""Files that are no logs, made to hurt: each is refused in one sentence, with a bound on the work."""

import os
from contextlib import suppress
from dataclasses import replace
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from cookstove_gui.errors import InputProblem, Problem, SurroundingsProblem
from cookstove_gui.logbook.log_file import COLUMNS, log_text, read_log_text
from cookstove_gui.logbook.plain_cells import guarded, unguarded
from cookstove_gui.logbook.stove_file import stove_from_text
from cookstove_gui.logbook.whole_file import write_whole

from .strategies import reading, texts

HEADER = ",".join(COLUMNS) + "\n"
ROW = "2026-01-05T07:02:00-05:00,reading,{spot},300,F,{note}\n"


@pytest.mark.parametrize(
    ("rows", "sentence"),
    [
        ('"x"y\n' * 100_000, "more than 1000 rows that cannot be read"),
        ('2026-01-05T07:02:00-05:00,note,,,,"' + "x\n" * 100_000, "more than 1000 rows that cannot be read"),
        ("".join(ROW.format(spot=f"spot{number}", note="") for number in range(200)), "more than 120 spots"),
        ("x," * 100_000 + "\n", None),
        (ROW.format(spot="oven_centre", note="long " * 5_000), None),
    ],
)
def test_a_hostile_log_is_refused_in_one_sentence(rows: str, sentence: str | None) -> None:
    if sentence is None:
        reading_of = read_log_text(HEADER + rows, "f.csv")
        assert reading_of.entries == ()
        assert len(reading_of.problems) == 1
        return
    with pytest.raises(InputProblem, match=sentence) as told:
        read_log_text(HEADER + rows, "f.csv")
    assert "\n" not in told.value.sentence


@pytest.mark.parametrize(
    ("text", "sentence"),
    [
        ("a=" + "[" * 50_000 + "]" * 50_000, "without end"),
        (".".join("a" * 20_000) + "=1", "more than 500 parts"),
        ('[[spot]]\nname="a"\n' * 5_000, "more than 120"),
        ("altitude_m=" + "9" * 5_000, "thousands of digits"),
        ("altitude_m=1e400", "cannot be used"),
        ("cooktop_width_m=nan", "cannot be used"),
    ],
)
def test_a_hostile_stove_file_is_refused_in_one_sentence(text: str, sentence: str) -> None:
    with pytest.raises(InputProblem, match=sentence):
        stove_from_text(text, "stove.toml")


@given(st.text(max_size=300))
def test_any_text_is_a_stove_or_a_problem(text: str) -> None:
    with suppress(Problem):
        stove_from_text(text, "stove.toml")


@given(st.text(max_size=300))
def test_any_text_is_a_log_or_a_problem(text: str) -> None:
    for content in (text, HEADER + text):
        with suppress(Problem):
            read_log_text(content, "f.csv")


@given(st.one_of(texts, st.from_regex(r"'{0,3}[=+\-@\t][a-z0-9']{0,5}", fullmatch=True)))
def test_a_guarded_cell_runs_nothing_and_comes_back_to_the_letter(text: str) -> None:
    cell = guarded(text)
    assert unguarded(cell) == text
    number = cell.lstrip("+-").replace(".", "", 1).replace(",", "", 1)
    assert not cell.startswith(("=", "+", "-", "@", "\t", "\r")) or number.isdecimal()


def test_a_formula_in_a_note_goes_out_plain_and_comes_back() -> None:
    """OWASP, CSV Injection: =, +, -, @, tab and return begin a formula."""
    entry = reading(1, value="-5", spot="@room")
    note = '=HYPERLINK("nowhere")'
    text = log_text([replace(entry, note=note)])
    assert ",'@room,-5,F," in text
    assert "'=HYPERLINK" in text
    (back,) = read_log_text(text, "f.csv").entries
    assert (back.spot, back.value, back.note) == ("@room", "-5", note)


def test_a_file_is_written_beside_its_place_under_a_name_nobody_foresees(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    trap = tmp_path / "elsewhere"
    (tmp_path / "log.csv.part").symlink_to(trap)
    synced = []
    fsync = os.fsync
    monkeypatch.setattr("os.fsync", lambda handle: (synced.append(handle), fsync(handle)))
    write_whole(tmp_path / "log.csv", b"whole")
    assert (tmp_path / "log.csv").read_bytes() == b"whole"
    assert not trap.exists()
    assert synced


def test_a_folder_that_is_gone_is_told(tmp_path: Path) -> None:
    with pytest.raises(SurroundingsProblem, match="cannot be written"):
        write_whole(tmp_path / "gone" / "log.csv", b"whole")
