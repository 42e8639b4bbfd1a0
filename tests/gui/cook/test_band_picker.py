"""The target band is picked by name or typed; a slip is told beside the field."""

import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QComboBox, QLabel, QLineEdit
from pytestqt.qtbot import QtBot

from cookstove_gui.desk import Desk
from cookstove_gui.gui.cook.band_picker import BandPicker
from cookstove_gui.gui.desk_link import DeskLink
from cookstove_gui.gui.widgets.look import Look
from cookstove_gui.units import degrees
from tests.gui.hands import control, enter_number


@pytest.fixture
def picker(link: DeskLink, look: Look, qtbot: QtBot) -> BandPicker:
    made = BandPicker(link)
    qtbot.addWidget(made)
    made.show()
    made.take_focus()
    return made


def limits(desk: Desk) -> tuple[int, int]:
    return round(degrees(desk.band.low, "F")), round(degrees(desk.band.high, "F"))


@pytest.mark.parametrize(("typed", "low", "high"), [("425-475", 425, 475), ("350", 325, 375), ("200-220C", 392, 428)])
def test_a_range_or_a_number_is_typed(picker: BandPicker, desk: Desk, typed: str, low: int, high: int) -> None:
    enter_number(picker, typed)
    assert limits(desk) == (low, high)


def test_a_name_is_typed(picker: BandPicker, desk: Desk) -> None:
    enter_number(picker, "slow")
    assert desk.band.name == "slow"


def test_a_name_is_picked_from_the_list(picker: BandPicker, desk: Desk) -> None:
    box = control(picker, "band", QComboBox)
    box.setCurrentIndex(box.findData("moderate"))
    box.activated.emit(box.currentIndex())
    assert desk.band.name == "moderate"


def test_a_slip_is_told_and_the_band_stays(picker: BandPicker, desk: Desk) -> None:
    before = desk.band
    enter_number(picker, "475-425")
    assert "lower end first" in control(picker, "band_problem", QLabel).text()
    assert desk.band == before


def test_ends_are_shown_in_the_unit_on_the_screen(picker: BandPicker, desk: Desk, qtbot: QtBot) -> None:
    desk.set_unit("C")
    box = control(picker, "band", QComboBox)
    wanted = f"{round(degrees(desk.band.low, 'C'))}–{round(degrees(desk.band.high, 'C'))}"
    qtbot.waitUntil(lambda: box.currentText().endswith(wanted))


def test_shortcut_marks_the_whole_field_for_typing_over(picker: BandPicker, qtbot: QtBot) -> None:
    line = control(picker, "band_line", QLineEdit)
    line.deselect()
    qtbot.keyClick(picker, Qt.Key.Key_B, Qt.KeyboardModifier.ControlModifier)
    assert line.selectedText() == line.text() != ""
