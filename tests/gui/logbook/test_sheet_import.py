"""A table of another program is opened on the Files tab, its columns are given a meaning, and its sessions kept."""

from datetime import timedelta
from pathlib import Path

import pandas
import pytest
from PySide6.QtWidgets import QWidget
from pytestqt.qtbot import QtBot

from cookstove_gui.desk import Desk
from cookstove_gui.gui.logbook.log_import import ImportPart
from cookstove_gui.gui.logbook.page import LogbookPage
from cookstove_gui.gui.logbook.sheet_import import SheetPart
from cookstove_gui.gui.widgets.form import Choice
from tests.gui.hands import control, push, rows, seen, type_in
from tests.gui.pages import NOW, held_desk, keep_session, shown

pytestmark = [pytest.mark.gui, pytest.mark.usefixtures("worked_out_once")]


@pytest.fixture
def desk() -> Desk:
    made = held_desk()
    keep_session(made, "Sunday", NOW - timedelta(days=4))
    return made


@pytest.fixture
def table(tmp_path: Path) -> Path:
    frame = pandas.DataFrame(
        {"time": ["7:05", "7:30"], "oven": [140, 250], "hot corner": [300, 410], "empty": [None, None]}
    )
    frame.to_excel(tmp_path / "monday.xlsx", index=False)
    return tmp_path / "monday.xlsx"


@pytest.fixture
def page(qtbot: QtBot, desk: Desk) -> QWidget:
    page, _ = shown(qtbot, desk, LogbookPage)
    push(page, "part_files")
    return page


def bring_in(qtbot: QtBot, page: QWidget, path: Path) -> SheetPart:
    part = control(page, "sheet_part", SheetPart)
    control(page, "import_part", ImportPart).bring_in([path])
    settle(qtbot, part)
    return part


def settle(qtbot: QtBot, part: SheetPart) -> None:
    qtbot.waitUntil(lambda: not part.reading.is_busy, timeout=10000)


def choose(qtbot: QtBot, part: SheetPart, name: str, words: str) -> None:
    (choice,) = (made for made in part.findChildren(Choice) if made.box.objectName() == name)
    place = choice.box.findText(words)
    assert place >= 0
    choice.box.setCurrentIndex(place)
    choice.box.activated.emit(place)
    settle(qtbot, part)


def say_the_day(qtbot: QtBot, part: SheetPart, day: str) -> None:
    type_in(part, "sheet_first_day", day)
    settle(qtbot, part)


def test_a_time_of_day_wants_its_day_and_then_makes_a_session(
    qtbot: QtBot, desk: Desk, page: QWidget, table: Path
) -> None:
    part = bring_in(qtbot, page, table)
    assert "makes nothing yet" in seen(page, "sheet_makes")
    assert "choose the column of the day, or type the first day" in rows(page, "sheet_problems")[0][0]
    say_the_day(qtbot, part, "2026-03-09")
    assert seen(page, "sheet_makes") == "This makes 2 entries in 1 session of My stove."
    assert [row[1] for row in rows(page, "sheet_rows")] == ["oven centre 140 °F", "oven centre 250 °F"]
    choose(qtbot, part, "sheet_column_2", "top front left")
    assert seen(page, "sheet_makes") == "This makes 4 entries in 1 session of My stove."
    before = desk.session
    push(page, "sheet_keep")
    assert seen(page, "sheet_told") == "Kept: 1 session with 4 entries."
    assert [row.title for row in desk.sessions] == ["Sunday", "monday"]
    assert desk.session == before


def test_what_was_said_of_the_columns_stands_there_next_time(qtbot: QtBot, page: QWidget, table: Path) -> None:
    part = bring_in(qtbot, page, table)
    say_the_day(qtbot, part, "2026-03-09")
    choose(qtbot, part, "sheet_column_2", "flue pipe")
    push(page, "sheet_keep")
    part = bring_in(qtbot, page, table)
    (choice,) = (made for made in part.findChildren(Choice) if made.box.objectName() == "sheet_column_2")
    assert choice.key == "flue"
    say_the_day(qtbot, part, "2026-03-09")
    assert "already, row for row" in rows(page, "sheet_problems")[0][0]
    push(page, "sheet_nothing")
    assert seen(page, "sheet_told") == "Nothing was brought in; the logbook has not changed."


def test_what_is_no_table_gets_a_sentence(qtbot: QtBot, page: QWidget, tmp_path: Path) -> None:
    (tmp_path / "log.doc").write_text("x")
    bring_in(qtbot, page, tmp_path / "log.doc")
    assert "save it as CSV" in seen(page, "sheet_problem")
