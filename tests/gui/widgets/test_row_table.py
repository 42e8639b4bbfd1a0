"""The list of the pages is moved through, found in and opened by the keyboard, and keeps its marked row."""

from collections.abc import Callable

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from pytestqt.qtbot import QtBot

from cookstove_gui.gui.widgets.row_table import RowTable, TableRow
from cookstove_gui.gui.widgets.theme import TARGET_PIXELS
from tests.gui.hands import rows_of

BAKES = tuple(
    TableRow(cells=(name, when), key=name) for name, when in (("rye", "7:30"), ("pie", "8:05"), ("cake", "9"))
)
Made = Callable[..., RowTable]


@pytest.fixture
def made(qtbot: QtBot) -> Made:
    def make(rows: tuple[TableRow, ...] = BAKES, **options: object) -> RowTable:
        table = RowTable("bakes", "What is baked", ("what", "when"), **options)
        qtbot.addWidget(table)
        table.show_rows(rows)
        table.resize(400, 300)
        table.show()
        table.setFocus()
        return table

    return make


def test_every_cell_is_shown(made: Made) -> None:
    assert rows_of(made()) == [["rye", "7:30"], ["pie", "8:05"], ["cake", "9"]]


def test_arrow_keys_and_the_ends_mark_a_row(made: Made, qtbot: QtBot) -> None:
    table = made()
    chosen: list[str] = []
    table.chosen.connect(chosen.append)
    for key in (Qt.Key.Key_Down, Qt.Key.Key_End, Qt.Key.Key_Home):
        QTest.keyClick(table, key)
    assert chosen == ["pie", "cake", "rye"]
    assert table.key == "rye"


def test_the_marked_row_stays_marked_when_others_come_and_nothing_is_announced(made: Made) -> None:
    table = made()
    table.choose("pie")
    chosen: list[str] = []
    table.chosen.connect(chosen.append)
    table.show_rows((TableRow(cells=("roll", "6"), key="roll"), *BAKES))
    assert table.key == "pie"
    table.show_rows(BAKES[:1])
    assert table.key == "rye"
    table.show_rows(())
    assert table.key == ""
    assert chosen == []


def test_enter_opens_the_marked_row(made: Made) -> None:
    table = made()
    opened: list[str] = []
    table.opened.connect(opened.append)
    table.choose("cake")
    QTest.keyClick(table, Qt.Key.Key_Return)
    assert opened == ["cake"]


def test_as_tall_as_its_rows_with_none_cut_off(made: Made) -> None:
    table = made(shown_rows=0)
    assert table.height() >= 3 * TARGET_PIXELS + table.horizontalHeader().height()
    last = table.visualRect(table.model().index(2, 0))
    assert table.viewport().rect().contains(last)


def test_long_words_wrap_and_the_row_grows(made: Made) -> None:
    long = TableRow(cells=("a word and another " * 20, ""), key="long")
    table = made((long, *BAKES), wraps=True)
    assert table.rowHeight(0) > table.rowHeight(1) >= TARGET_PIXELS


def test_tab_goes_on_to_what_comes_next(made: Made) -> None:
    assert not made().tabKeyNavigation()


def test_rows_that_grow_make_the_table_taller_so_that_none_is_cut_off(made: Made) -> None:
    long = TableRow(cells=("a word and another " * 20, ""), key="long")
    table = made((long, *BAKES), wraps=True, shown_rows=0)
    last = table.visualRect(table.model().index(3, 0))
    assert table.viewport().rect().contains(last)
    assert table.height() > 5 * TARGET_PIXELS
