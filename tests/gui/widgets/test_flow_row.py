"""Parts side by side go on in a new row where the width ends, and a hidden one takes no room."""

import gc

from PySide6.QtWidgets import QApplication, QTabWidget, QVBoxLayout, QWidget
from pytestqt.qtbot import QtBot

from cookstove_gui.gui.widgets.flow_row import FlowRow

GAP = 10


class Part(QWidget):
    """Of one size."""

    def __init__(self) -> None:
        super().__init__()
        self.setFixedSize(100, 40)


def row_of(qtbot: QtBot, count: int, width: int) -> tuple[FlowRow, list[Part]]:
    parts = [Part() for _ in range(count)]
    made = FlowRow(GAP, *parts)
    qtbot.addWidget(made)
    made.resize(width, 300)
    made.show()
    QApplication.processEvents()
    return made, parts


def test_parts_stand_beside_one_another_as_long_as_there_is_width(qtbot: QtBot) -> None:
    made, parts = row_of(qtbot, 3, 320)
    assert [(part.x(), part.y()) for part in parts] == [(0, 0), (110, 0), (220, 0)]
    assert made.heightForWidth(320) == 40
    assert made.heightForWidth(319) == 90
    made.resize(210, 300)
    assert [(part.x(), part.y()) for part in parts] == [(0, 0), (110, 0), (0, 50)]


def test_it_asks_for_the_widest_part_at_least_and_for_one_row_if_it_may(qtbot: QtBot) -> None:
    made, _ = row_of(qtbot, 3, 320)
    assert made.minimumSizeHint().toTuple() == (100, 40)
    assert made.sizeHint().toTuple() == (320, 40)


def test_a_hidden_part_takes_no_room(qtbot: QtBot) -> None:
    made, parts = row_of(qtbot, 3, 320)
    parts[0].hide()
    QApplication.processEvents()
    assert [(part.x(), part.y()) for part in parts[1:]] == [(0, 0), (110, 0)]
    assert made.sizeHint().width() == 210


def test_it_outlasts_a_collection_of_garbage(qtbot: QtBot) -> None:
    made, parts = row_of(qtbot, 3, 320)
    gc.collect()
    made.resize(100, 300)
    assert [part.y() for part in parts] == [0, 50, 100]


def test_a_part_that_shrank_while_its_page_was_hidden_takes_no_more_room_than_it_needs(qtbot: QtBot) -> None:
    tabs, page, parts = QTabWidget(), QWidget(), [Part(), Part()]
    column = QVBoxLayout(page)
    column.addWidget(FlowRow(GAP, *parts))
    tabs.addTab(page, "one")
    tabs.addTab(QWidget(), "other")
    qtbot.addWidget(tabs)
    tabs.show()
    QApplication.processEvents()
    before = column.minimumSize().width()
    tabs.setCurrentIndex(1)
    for part in parts:
        part.setFixedSize(60, 40)
    QApplication.processEvents()
    tabs.setCurrentIndex(0)
    QApplication.processEvents()
    assert column.minimumSize().width() == before - 40
