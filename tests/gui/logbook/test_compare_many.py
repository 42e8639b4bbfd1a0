"""Any number of sessions beside each other: those chosen stand out, the table scrolls."""

from datetime import timedelta

import pytest
from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QColor
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication

from cookstove_gui.gui.logbook import compare_picture
from cookstove_gui.gui.logbook.compare import CompareView
from cookstove_gui.gui.logbook.compare_picture import ComparePicture, runs_through
from cookstove_gui.gui.logbook.difference_table import DifferenceTable
from cookstove_gui.gui.logbook.many_differences import ManyDifferences
from cookstove_gui.gui.widgets.steps import px
from tests.gui.hands import control, mark, rows, seen
from tests.gui.pages import NOW, held_desk, keep_session, shown

pytestmark = pytest.mark.gui


def _enter(view, *places) -> None:
    for place in places:
        mark(view, "many_differences", place)
        QTest.keyClick(control(view, "many_differences", ManyDifferences), Qt.Key.Key_Return)


def _ink(picture) -> int:
    image, ink = picture.grab().toImage(), QColor(picture.look.theme.ink)
    places = ((x, y) for x in range(80, image.width(), 2) for y in range(0, image.height() // 2, 2))
    return sum(image.pixelColor(x, y) == ink for x, y in places)


def test_of_forty_those_chosen_stand_out_and_the_table_scrolls(qtbot):
    desk = held_desk()
    desk.choose_band("slow")
    numbers = [keep_session(desk, f"Firing {day}", NOW - timedelta(days=day + 1)) for day in range(40)]
    view, _ = shown(qtbot, desk, lambda link, look: CompareView(link.desk, look), size=(1000, 600))
    view.show_sessions(numbers)
    assert seen(view, "compare_sentence") == ("13 Mar came to slow heat after 58 min, sooner than 0 of 39 others.")
    assert seen(view, "compare_behind").startswith("All 40 from the match.")
    table, picture = (
        control(view, "many_differences", ManyDifferences),
        control(view, "compare_picture", ComparePicture),
    )
    assert not control(view, "difference_table", DifferenceTable).isVisibleTo(view)
    assert table.model().rowCount() == 40
    assert table.verticalScrollBar().maximum() > 0
    assert [place for place, row in enumerate(rows(view, "many_differences")) if row[1] == "yes"] == [0, 1]

    _enter(view, 7, 39)
    assert picture._strong == (0, 7, 39)
    three = _ink(picture)
    _enter(view, 39)
    assert picture._strong == (0, 7)
    _enter(view, *range(10, 20))
    assert len(picture._strong) == 8  # as many as have a mark of their own
    assert _ink(picture) != three

    picture.copy_values()
    assert len(QApplication.clipboard().text().splitlines()) == 1 + 40 * 7
    table.copy_values()
    assert len(QApplication.clipboard().text().splitlines()) == 1 + 40
    view.show_sessions(numbers[:8])
    assert control(view, "difference_table", DifferenceTable).isVisibleTo(view)
    assert picture._strong == tuple(range(8))


def test_a_line_is_found_to_run_through_a_box_or_past_it():
    box = QRectF(10, 10, 20, 10)
    past, through = [QPointF(0, 0), QPointF(40, 8)], [QPointF(0, 0), QPointF(40, 30)]
    assert not runs_through(past, box)
    assert runs_through(through, box)
    assert runs_through([QPointF(0, 15), QPointF(12, 15)], box)
    assert not runs_through([QPointF(0, 15), QPointF(9, 15)], box)


def test_now_is_named_before_its_line_where_the_words_have_room(look):
    drawing = compare_picture._Drawing(None, look, QRectF(0, 0, 600, 300), "F", by_clock=False)
    wide = drawing._before_now(400.0).width()
    for now, before in ((400.0, True), (drawing._left + wide + px(9), True), (drawing._left + wide, False)):
        box = drawing._before_now(now)
        assert box.right() < now if before else box.left() > now
        assert box.left() >= drawing._left
