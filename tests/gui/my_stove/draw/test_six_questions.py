"""Six questions make the drawing beside them the owner's own: each answer is drawn and kept, the way back open."""

import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QLabel, QPushButton, QWidget

from cookstove_gui.desk import Desk
from cookstove_gui.desk.my_stove.read_groups import GROUPS, is_read, read_group
from cookstove_gui.gui.my_stove.draw.editor import StoveEditor
from cookstove_gui.gui.my_stove.draw.part import DrawPart
from cookstove_gui.gui.my_stove.draw.plus_place import PlusPlace
from cookstove_gui.gui.my_stove.page import MyStovePage
from cookstove_gui.stove.stove import Firebox, FluePlace, SpotKind, TankPlace
from tests.gui.hands import control, press, push, seen, type_in, type_text
from tests.gui.pages import NOW, held_desk, keep_session, shown

pytestmark = pytest.mark.gui


@pytest.fixture
def desk() -> Desk:
    return held_desk()


@pytest.fixture
def part(qtbot, desk) -> DrawPart:
    made, _ = shown(qtbot, desk, MyStovePage, (1010, 610))
    made.ask_six()
    return control(made, "draw_stove", DrawPart)


def questions(part) -> list[str]:
    """The question that stands there."""
    names = [f"six_question_{place}" for place in range(6)]
    return [text.text() for name in names if (text := control(part, name, QLabel)).isVisibleTo(part)]


def test_new_or_used_is_asked_first_and_a_new_stove_has_its_first_fires_before_it(part, desk):
    assert questions(part) == ["Is it new, or was it fired before?"]
    assert seen(part, "six_place") == "Question 1 of 6"
    push(part, "six_fired_new")
    assert desk.logbook.stove(desk.stove.name).is_new
    assert desk.first_fires.next is not None


def test_the_whole_way_draws_the_stove_and_nothing_is_lost_on_the_way_back(part, desk):
    drawing = control(part, "stove_editor", StoveEditor)
    type_in(part, "six_name", "Cabin")
    push(part, "six_next")
    push(part, "six_firebox_right")
    assert drawing._stove.firebox is Firebox.RIGHT  # drawn at once
    push(part, "six_next")
    type_in(part, "six_width", "36")
    control(control(part, "six_columns", QWidget), "columns_fewer", QPushButton).click()
    push(part, "six_next")
    push(part, "six_lids_plate")
    push(part, "six_next")
    push(part, "six_pipe_middle")
    push(part, "six_tank_left")
    push(part, "six_next")
    push(part, "six_sides")
    push(part, "six_wall_right")
    for _ in range(5):
        push(part, "six_back")
    assert questions(part) == ["Is it new, or was it fired before?"]
    stove = desk.logbook.stove("Cabin")
    assert (stove.firebox, stove.flue_place, stove.water_tank) == (Firebox.RIGHT, FluePlace.MIDDLE, TankPlace.LEFT)
    assert stove.cooktop_width == pytest.approx(0.9144)
    assert not stove.has_lids
    assert len(stove.spots_of(SpotKind.TOP)) == 4
    assert stove.spots_of(SpotKind.SIDE) == ()
    assert stove.spot("wall_right") is not None


def test_the_drawing_is_calm_until_spots_are_asked_for(part):
    drawing = control(part, "stove_editor", StoveEditor)
    assert not control(part, "stove_mirror", QPushButton).isVisibleTo(part)
    pluses = lambda: [one for one in drawing.findChildren(PlusPlace) if one.isVisibleTo(part)]  # noqa: E731
    assert pluses() == []
    for _ in range(5):
        push(part, "six_next")
    assert questions(part) == ["Which spots do you read?"]
    assert pluses() != []
    push(part, "six_next")
    assert questions(part) == []
    assert seen(part, "stove_file_told").startswith("It is drawn.")
    assert control(part, "stove_mirror", QPushButton).isVisibleTo(part)


def test_by_the_keyboard_alone_and_escape_leaves_what_was_answered(part, desk):
    assert part.focusWidget().objectName() == "six_fired_used"
    press(part, Qt.Key.Key_Right)  # within the choice by the arrows
    assert part.focusWidget().objectName() == "six_fired_new"
    press(part, Qt.Key.Key_Space)
    press(part, Qt.Key.Key_Tab)  # and on by Tab
    type_text(part, "Cabin")
    press(part, Qt.Key.Key_Return)
    press(part, Qt.Key.Key_Tab)
    press(part, Qt.Key.Key_Space)
    assert questions(part) == ["Where does the firebox sit?"]
    press(part, Qt.Key.Key_Escape)
    assert desk.stove.is_new
    assert "Cabin" in desk.stove.name
    assert questions(part) == []


def test_another_stove_is_asked_about_at_once(qtbot, desk):
    part, _ = shown(qtbot, desk, DrawPart, (860, 640))
    push(part, "another_stove")
    type_in(part, "new_stove_name", "Hut")
    assert desk.stove.name == "Hut"
    assert questions(part) == ["Is it new, or was it fired before?"]


@pytest.mark.parametrize("group", GROUPS, ids=lambda group: group.key)
def test_a_group_that_nobody_read_goes_and_comes(desk, group):
    before = desk.stove
    read_group(desk, group.key, wanted=not is_read(before, group))
    assert is_read(desk.stove, group) is not is_read(before, group)
    read_group(desk, group.key, wanted=is_read(before, group))
    assert {spot.name for spot in desk.stove.spots} == {spot.name for spot in before.spots}
    assert desk.stove.spot("oven_centre") is not None


def test_what_was_read_before_is_only_skipped(desk):
    keep_session(desk, "Bread", NOW)
    desk.read("300", spot="flue")
    desk.read("310", spot="oven_left")
    for key in ("flue", "oven_walls"):
        read_group(desk, key, wanted=False)
    assert desk.stove.left_out == ("flue", "oven_left")
    assert desk.stove.spot("oven_floor") is None
    read_group(desk, "flue", wanted=True)
    assert desk.stove.left_out == ("oven_left",)
