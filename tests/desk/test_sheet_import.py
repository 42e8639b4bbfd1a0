"""A table of another program: what it becomes is shown first, kept once, and understood the same way next time."""

from dataclasses import replace
from datetime import UTC, datetime
from pathlib import Path

import pandas
import pytest

from cookstove_gui.desk import Desk
from cookstove_gui.desk.files import accept_import
from cookstove_gui.desk.sheet_import import keep_mapping, meanings, offer_sheet, open_sheet
from cookstove_gui.errors import InputProblem
from cookstove_gui.logbook.logbook import Logbook
from cookstove_gui.logbook.sheet_mapping import NOTE, WOOD


@pytest.fixture
def desk() -> Desk:
    return Desk(Logbook.in_memory(), lambda: datetime(2026, 2, 1, tzinfo=UTC))


@pytest.fixture
def table(tmp_path: Path) -> Path:
    """Two firings in one spreadsheet, with a cell that cannot be read."""
    frame = pandas.DataFrame(
        {
            "when": ["2026-01-05 07:05", "2026-01-05 07:30", "2026-01-09 08:00"],
            "oven": [140, 250, 90],
            "thing over the fire": [300, "hot", 120],
            "fuel": ["two splits", None, None],
        }
    )
    frame.to_excel(tmp_path / "winter.xlsx", index=False)
    return tmp_path / "winter.xlsx"


def test_it_is_shown_before_it_is_kept(desk: Desk, table: Path) -> None:
    sheet, mapping = open_sheet(desk, table)
    assert mapping.meanings == {"oven": "oven_centre", "fuel": WOOD}
    found = offer_sheet(desk, sheet, mapping)
    assert found.entries == 4
    assert found.rows[0] == ("2026-01-05 07:05", "oven centre 140 °F")
    assert found.rows[1] == ("2026-01-05 07:05", "two splits")
    assert [file.title for file in found.offer.files] == ["winter, 2026-01-05", "winter, 2026-01-09"]
    assert found.offer.problems == ()
    assert desk.sessions == ()


def test_a_column_chosen_brings_its_numbers_and_its_problems(desk: Desk, table: Path) -> None:
    sheet, mapping = open_sheet(desk, table)
    mapping = replace(mapping, meanings={**mapping.meanings, "thing over the fire": "top_front_left"})
    found = offer_sheet(desk, sheet, mapping)
    (problem,) = found.offer.problems
    assert problem.startswith("winter.xlsx line 3, thing over the fire: “hot” is not a temperature")
    assert found.entries == 6


def test_it_is_kept_as_sessions_of_the_stove_in_use_and_only_once(desk: Desk, table: Path) -> None:
    sheet, mapping = open_sheet(desk, table)
    assert accept_import(desk, offer_sheet(desk, sheet, mapping).offer) == 2
    assert sorted(row.title for row in desk.sessions) == ["winter, 2026-01-05", "winter, 2026-01-09"]
    assert desk.session is None
    again = offer_sheet(desk, sheet, mapping).offer
    assert again.files == ()
    assert again.problems[0] == (
        "The session of 2026-01-05 is in the logbook already, row for row; it would not be kept twice."
    )


def test_one_firing_is_called_by_its_file(desk: Desk, tmp_path: Path) -> None:
    (tmp_path / "bread.csv").write_text("time,oven\n2026-01-05 07:05,140\n")
    sheet, mapping = open_sheet(desk, tmp_path / "bread.csv")
    assert [file.title for file in offer_sheet(desk, sheet, mapping).offer.files] == ["bread"]


def test_what_the_columns_mean_is_kept_for_the_next_table_like_it(desk: Desk, table: Path, tmp_path: Path) -> None:
    sheet, mapping = open_sheet(desk, table)
    chosen = replace(mapping, meanings={"thing over the fire": "flue"}, unit="C")
    keep_mapping(desk, sheet, replace(chosen, first_day="2026-01-05"))
    later = tmp_path / "spring.xlsx"
    table.rename(later)
    assert open_sheet(Desk(desk.logbook, desk.clock), later)[1] == chosen
    (tmp_path / "other.csv").write_text("time,oven\n2026-01-05 07:05,140\n")
    assert open_sheet(desk, tmp_path / "other.csv")[1].meanings == {"oven": "oven_centre"}


def test_a_mapping_of_nothing_is_not_kept(desk: Desk, table: Path) -> None:
    sheet, mapping = open_sheet(desk, table)
    with pytest.raises(InputProblem, match="choose at least one"):
        keep_mapping(desk, sheet, replace(mapping, meanings={}))
    assert open_sheet(desk, table)[1] == mapping


def test_a_column_may_mean_every_spot_wood_or_a_note(desk: Desk) -> None:
    keys = [key for key, _ in meanings(desk)]
    assert keys == ["", *(spot.name for spot in desk.stove.spots), WOOD, NOTE]
