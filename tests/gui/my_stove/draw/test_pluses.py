"""A plus in the drawing adds what it stands for, by the mouse and by the keyboard alone."""

from dataclasses import replace

import pytest
from PySide6.QtCore import QPoint, Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication

from cookstove_gui.desk import Desk
from cookstove_gui.gui.my_stove.draw.editor import StoveEditor
from cookstove_gui.gui.my_stove.draw.part import DrawPart
from cookstove_gui.gui.my_stove.draw.plus_place import PlusPlace
from cookstove_gui.stove.redrawn import with_plates
from cookstove_gui.stove.stove import FluePlace, TankPlace
from tests.gui.hands import control, seen
from tests.gui.pages import held_desk, shown

pytestmark = pytest.mark.gui
GONE = ("top_back_middle", "oven_floor", "side_right")


@pytest.fixture
def desk() -> Desk:
    made = held_desk()
    stove = with_plates(made.stove, 2, 3)
    made.save_stove(replace(stove, spots=tuple(spot for spot in stove.spots if spot.name not in GONE)))
    return made


@pytest.fixture
def part(qtbot, desk) -> DrawPart:
    made, _ = shown(qtbot, desk, DrawPart, (1040, 720))
    return made


def pluses(part) -> dict[str, PlusPlace]:
    every = control(part, "stove_editor", StoveEditor).findChildren(PlusPlace)
    return {one.accessibleName(): one for one in every if one.isVisibleTo(part)}


def middle(plus: PlusPlace) -> QPoint:
    return plus.rect().center()


def test_each_says_what_it_adds(part):
    assert set(pluses(part)) == {
        "Read this plate too", "Read the oven floor too", "Read the right side too", "Read the wall right too",
        "Hang a water tank at the right", "Let the pipe leave at the middle",
    }  # fmt: skip


@pytest.mark.parametrize(
    ("words", "name"),
    [
        ("Read this plate too", "top_back_middle"),
        ("Read the oven floor too", "oven_floor"),
        ("Read the right side too", "side_right"),
        ("Read the wall right too", "wall_right"),
    ],
)
def test_a_press_adds_the_spot_selects_it_and_can_be_taken_back(part, desk, words, name):
    before = desk.stove
    plus = pluses(part)[words]
    QTest.mouseClick(plus, Qt.MouseButton.LeftButton, pos=middle(plus))
    assert desk.logbook.stove(desk.stove.name).spots[-1].name == name
    assert control(part, "stove_editor", StoveEditor).chosen == name
    assert name in seen(part, "spot_log_name")
    assert words not in pluses(part)
    QTest.keyClick(control(part, "stove_editor", StoveEditor), Qt.Key.Key_Z, Qt.KeyboardModifier.ControlModifier)
    assert desk.stove == before
    assert words in pluses(part)


def test_tank_and_pipe_go_where_they_are_pressed(part, desk):
    pluses(part)["Hang a water tank at the right"].click()
    pluses(part)["Let the pipe leave at the middle"].click()
    assert (desk.stove.water_tank, desk.stove.flue_place) == (TankPlace.RIGHT, FluePlace.MIDDLE)
    assert "Let the pipe leave at the right" in pluses(part)


def test_by_the_keyboard_alone(qtbot, part, desk):
    drawing = control(part, "stove_editor", StoveEditor)
    last = drawing.patch(desk.stove.spots[-1].name)
    drawing.patch(desk.stove.spots[0].name).setFocus()
    last.setFocus()
    QTest.keyClick(last, Qt.Key.Key_Tab)  # after the last spot of the walk
    focused = QApplication.focusWidget() or part.focusWidget()
    assert isinstance(focused, PlusPlace)
    seen_by_arrows = [focused.accessibleName()]
    while True:
        QTest.keyClick(part.focusWidget(), Qt.Key.Key_Right)
        if part.focusWidget().accessibleName() == seen_by_arrows[0]:
            break
        seen_by_arrows.append(part.focusWidget().accessibleName())
    assert sorted(seen_by_arrows) == sorted(pluses(part))
    while part.focusWidget().accessibleName() != "Read the oven floor too":
        QTest.keyClick(part.focusWidget(), Qt.Key.Key_Left)
    QTest.keyClick(part.focusWidget(), Qt.Key.Key_Return)
    assert desk.stove.spots[-1].name == "oven_floor"
    assert part.focusWidget() is drawing.patch("oven_floor")


def test_escape_on_a_plus_selects_the_stove(part):
    drawing = control(part, "stove_editor", StoveEditor)
    drawing.patch("oven_centre").setFocus()
    plus = pluses(part)["Read this plate too"]
    plus.setFocus()
    QTest.keyClick(plus, Qt.Key.Key_Escape)
    assert drawing.chosen == ""


def test_a_spot_can_be_dragged_onto_an_empty_plate(part, desk):
    drawing = control(part, "stove_editor", StoveEditor)
    plus, patch = pluses(part)["Read this plate too"], drawing.patch("top_front_left")
    target = plus.mapTo(drawing, middle(plus))
    QTest.mousePress(patch, Qt.MouseButton.LeftButton, pos=patch.rect().center())
    QTest.mouseMove(patch, patch.mapFrom(drawing, target))
    QTest.mouseRelease(patch, Qt.MouseButton.LeftButton, pos=patch.mapFrom(drawing, target))
    spot = desk.stove.spot("top_front_left")
    assert (spot.x, spot.y) == pytest.approx((0.5, 0.75), abs=0.08)
    assert "Read this plate too" in pluses(part)  # where it was before
