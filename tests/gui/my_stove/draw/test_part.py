"""The owner draws the stove by mouse and keys: spots are selected, moved, sized, added, taken off, and all is kept."""

from datetime import timedelta
from pathlib import Path

import pytest
from PySide6.QtCore import QPoint, Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QComboBox, QFileDialog, QPushButton, QScrollArea
from pytestqt.qtbot import QtBot

from cookstove_gui.desk import Desk
from cookstove_gui.gui.my_stove.draw.editor import StoveEditor
from cookstove_gui.gui.my_stove.draw.part import DrawPart
from cookstove_gui.gui.my_stove.draw.stove_column import StoveColumn
from cookstove_gui.gui.widgets.sections import scrolling
from cookstove_gui.logbook.stove_file import stove_from_text, stove_text
from cookstove_gui.stove.stove import Firebox, FluePlace, SpotKind, TankPlace
from cookstove_gui.units import METRES_PER_FOOT
from tests.gui.clipping import settle
from tests.gui.hands import control, push, seen, type_in
from tests.gui.pages import NOW, held_desk, keep_session, shown

pytestmark = pytest.mark.gui
INCH = METRES_PER_FOOT / 12


@pytest.fixture
def desk() -> Desk:
    return held_desk()


@pytest.fixture
def part(qtbot: QtBot, desk: Desk) -> DrawPart:
    made, _ = shown(qtbot, desk, DrawPart, (1040, 720))
    assert isinstance(made, DrawPart)
    return made


def editor(part: DrawPart) -> StoveEditor:
    return control(part, "stove_editor", StoveEditor)


def spot(desk: Desk, name: str):
    found = desk.stove.spot(name)
    assert found is not None
    return found


def select(part: DrawPart, name: str) -> None:
    editor(part).patch(name).setFocus()
    QApplication.processEvents()


def key(part: DrawPart, name: str, wanted: Qt.Key, modifier=Qt.KeyboardModifier.NoModifier) -> None:
    QTest.keyClick(editor(part).patch(name), wanted, modifier)
    QApplication.processEvents()


def drag(part: DrawPart, name: str, start: QPoint, end: QPoint) -> None:
    """Press on a spot, move, and let go, in pixels of the drawing."""
    drawing = editor(part)
    patch = drawing.patch(name)
    QTest.mousePress(patch, Qt.MouseButton.LeftButton, pos=patch.mapFrom(drawing, start))
    for step in (0.5, 1.0):
        QTest.mouseMove(patch, patch.mapFrom(drawing, start + (end - start) * step))
    QTest.mouseRelease(patch, Qt.MouseButton.LeftButton, pos=patch.mapFrom(drawing, end))
    QApplication.processEvents()


def middle(part: DrawPart, name: str) -> QPoint:
    x, y = editor(part).drawn.places[name].words.centre
    return QPoint(round(x), round(y))


def test_nothing_selected_shows_the_stove_itself(part: DrawPart) -> None:
    assert control(part, "stove_setup", StoveColumn).isVisibleTo(part)
    assert editor(part).patch("oven_centre").face.number == "1"


def test_a_number_that_stands_beside_the_stove_says_that_it_is_the_room(part: DrawPart, desk: Desk) -> None:
    named = {one.name: editor(part).patch(one.name).face.name for one in desk.stove.spots}
    assert {name: word for name, word in named.items() if word} == {"room": "room"}


def test_a_spot_is_selected_by_a_press_and_told_in_the_words_of_the_log(part: DrawPart) -> None:
    QTest.mouseClick(editor(part).patch("top_front_middle"), Qt.MouseButton.LeftButton)
    QApplication.processEvents()
    assert seen(part, "spot_title") == "top front middle"
    assert seen(part, "spot_log_name") == "on the top; in the log: top_front_middle"
    assert seen(part, "spot_place") == "3rd of 16"
    assert editor(part).patch("top_front_middle").face.captions == ("front middle",)


def test_the_words_of_the_selected_spot_keep_clear_of_its_ring(part: DrawPart) -> None:
    select(part, "top_front_middle")
    faces = {name: editor(part).patch(name).face for name in ("top_front_middle", "oven_centre")}
    assert {name: face.is_lit for name, face in faces.items()} == {"top_front_middle": True, "oven_centre": False}


def test_arrows_move_a_spot_by_an_inch(part: DrawPart, desk: Desk) -> None:
    select(part, "top_front_middle")
    key(part, "top_front_middle", Qt.Key.Key_Right)
    key(part, "top_front_middle", Qt.Key.Key_Up)
    moved = spot(desk, "top_front_middle")
    assert moved.x * desk.stove.cooktop_width == pytest.approx(0.45 + INCH)
    assert moved.y * desk.stove.cooktop_depth == pytest.approx(0.15 + INCH)


def test_with_shift_arrows_make_its_plate_larger_and_it_is_drawn_so(part: DrawPart, desk: Desk) -> None:
    select(part, "top_front_left")
    before = editor(part).drawn.places["top_front_left"].words.width
    for _ in range(3):
        key(part, "top_front_left", Qt.Key.Key_Right, Qt.KeyboardModifier.ShiftModifier)
    assert spot(desk, "top_front_left").width == pytest.approx(0.30 + 3 * INCH)
    assert editor(part).drawn.places["top_front_left"].words.width > before


def test_a_size_is_typed(part: DrawPart, desk: Desk) -> None:
    select(part, "top_front_left")
    type_in(part, "spot_width", "10")
    assert spot(desk, "top_front_left").width == pytest.approx(10 * INCH)
    type_in(part, "spot_depth", "900")
    assert "isn't a plausible depth of a plate" in seen(part, "spot_depth_problem")


def test_a_spot_dropped_on_its_neighbour_changes_places_with_it(part: DrawPart, desk: Desk) -> None:
    left, right = spot(desk, "top_front_left"), spot(desk, "top_front_right")
    drag(part, "top_front_left", middle(part, "top_front_left"), middle(part, "top_front_right"))
    assert (spot(desk, "top_front_left").x, spot(desk, "top_front_right").x) == (right.x, left.x)


def test_a_spot_dropped_elsewhere_comes_to_lie_there(part: DrawPart, desk: Desk) -> None:
    start = middle(part, "top_front_left")
    drag(part, "top_front_left", start, start + QPoint(-20, 10))
    moved = spot(desk, "top_front_left")
    assert moved.x < 1 / 6
    assert moved.y < 0.25


def test_an_oven_spot_never_leaves_the_oven(part: DrawPart, desk: Desk) -> None:
    before = spot(desk, "oven_left")
    drag(part, "oven_left", middle(part, "oven_left"), middle(part, "top_back_left"))
    assert spot(desk, "oven_left") == before


def test_a_handle_makes_the_plate_wider(part: DrawPart, desk: Desk) -> None:
    select(part, "top_front_middle")
    x, y = editor(part)._overlay.handles[(1, 0)]
    drag(part, "top_front_middle", QPoint(round(x) - 4, round(y)), QPoint(round(x) + 16, round(y)))
    assert spot(desk, "top_front_middle").width > 0.31
    assert spot(desk, "top_front_middle").depth == pytest.approx(0.30)


def test_a_spot_of_ones_own_is_added_and_named(part: DrawPart, desk: Desk) -> None:
    select(part, "top_front_middle")
    key(part, "top_front_middle", Qt.Key.Key_Insert)
    assert seen(part, "spot_title") == "spot 1"
    type_in(part, "spot_label", "Griddle corner")
    assert desk.stove.spots[-1].label == "Griddle corner"
    assert desk.stove.spots[-1].kind is SpotKind.TOP


def test_a_place_off_the_cooktop_is_refused(part: DrawPart) -> None:
    select(part, "top_front_left")
    type_in(part, "spot_across", "900")
    assert "off the cooktop" in seen(part, "spot_across_problem")


def test_a_spot_taken_off_comes_back_with_ctrl_z(part: DrawPart, desk: Desk) -> None:
    before = desk.stove
    select(part, "oven_left")
    key(part, "oven_left", Qt.Key.Key_Delete)
    assert desk.stove.spot("oven_left") is None
    QTest.keyClick(editor(part), Qt.Key.Key_Z, Qt.KeyboardModifier.ControlModifier)
    assert desk.stove == before


def test_the_ovens_only_spot_is_not_taken_off(part: DrawPart, desk: Desk) -> None:
    for name in ("oven_left", "oven_right", "oven_rear", "oven_floor"):
        select(part, name)
        push(part, "spot_remove")
    select(part, "oven_centre")
    push(part, "spot_remove")
    assert "only spot" in seen(part, "spot_problem")
    assert desk.stove.spot("oven_centre") is not None


def test_mirror_exchanges_left_and_right(part: DrawPart, desk: Desk) -> None:
    push(part, "water_tank_left")
    push(part, "stove_mirror")
    assert (desk.stove.firebox, desk.stove.water_tank) == (Firebox.RIGHT, TankPlace.RIGHT)
    assert spot(desk, "top_front_left").x == pytest.approx(1 / 6)  # its name says where it lies


def test_more_columns_bring_more_plates_with_spots(part: DrawPart, desk: Desk) -> None:
    push(part, "columns_more")
    assert (desk.stove.cooktop_rows, desk.stove.cooktop_columns) == (2, 4)
    assert len(desk.stove.spots_of(SpotKind.TOP)) == 8
    assert seen(part, "columns_number") == "4"
    push(part, "columns_more")
    assert desk.stove.cooktop_columns == 4


def test_plates_that_were_read_are_asked_about_before_they_go(qtbot: QtBot, desk: Desk) -> None:
    keep_session(desk, "Sunday", NOW - timedelta(days=1))
    part, _ = shown(qtbot, desk, DrawPart, (1040, 720))
    before = desk.stove
    push(part, "columns_fewer")
    assert "top front middle" in seen(part, "plates_question")
    assert "have 14 readings" in seen(part, "plates_question")
    push(part, "plates_leave")
    assert desk.stove == before
    push(part, "columns_fewer")
    push(part, "plates_agree")
    assert [one.name for one in desk.stove.spots_of(SpotKind.TOP)] == [
        "top_front_left",
        "top_front_right",
        "top_back_right",
        "top_back_left",
    ]
    assert seen(part, "plates_question") == ""


def test_unread_plates_go_without_a_question(part: DrawPart, desk: Desk) -> None:
    push(part, "rows_fewer")
    assert len(desk.stove.spots_of(SpotKind.TOP)) == 3


def test_all_that_is_drawn_comes_back_from_the_file(part: DrawPart, desk: Desk) -> None:
    drawn = ("firebox_below", "flue_place_middle", "water_tank_right", "warming_closet_closet", "has_lids_plate")
    for name in (*drawn, "columns_more"):
        push(part, name)
    stove = desk.logbook.stove(desk.stove.name)
    assert stove == desk.stove == stove_from_text(stove_text(stove), "x")
    assert (stove.firebox, stove.flue_place, stove.water_tank) == (
        Firebox.BELOW,
        FluePlace.MIDDLE,
        TankPlace.RIGHT,
    )
    assert (stove.has_warming_closet, stove.has_lids) == (True, False)


def test_take_back_is_offered_only_while_there_is_something_to_take_back(part: DrawPart) -> None:
    back = control(part, "stove_take_back", QPushButton)
    assert not back.isEnabled()
    push(part, "firebox_right")
    assert back.isEnabled()
    push(part, "stove_take_back")
    assert not back.isEnabled()


def test_escape_selects_the_stove_again(part: DrawPart) -> None:
    select(part, "flue")
    key(part, "flue", Qt.Key.Key_Escape)
    assert part._whole.isVisibleTo(part)
    assert editor(part).chosen == ""


def test_the_walk_is_changed_by_its_keys(part: DrawPart, desk: Desk) -> None:
    select(part, "flue")
    place = [one.name for one in desk.stove.spots].index("flue")
    push(part, "spot_earlier")
    assert [one.name for one in desk.stove.spots].index("flue") == place - 1


def test_a_stove_is_given_on_and_taken_in_as_a_file(
    part: DrawPart, desk: Desk, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    path = str(tmp_path / "mine.toml")
    monkeypatch.setattr(QFileDialog, "getSaveFileName", staticmethod(lambda *_args: (path, "")))
    monkeypatch.setattr(QFileDialog, "getOpenFileName", staticmethod(lambda *_args: (path, "")))
    push(part, "stove_give")
    assert seen(part, "stove_file_told") == "“My stove” is written to mine.toml."
    push(part, "firebox_right")
    push(part, "stove_take")
    assert (desk.stove.name, desk.stove.firebox) == ("My stove", Firebox.RIGHT)
    assert (
        seen(part, "stove_file_told")
        == "“My stove 2” is among your stoves now; “My stove” is still the one on the table."
    )
    push(part, "stove_show_taken")
    assert (desk.stove.name, desk.stove.firebox) == ("My stove 2", Firebox.LEFT)
    assert seen(part, "stove_file_told") == ""
    assert not control(part, "stove_show_taken", QPushButton).isVisibleTo(part)
    Path(path).write_text('firebox = "behind"\n')
    push(part, "stove_take")
    assert "firebox" in seen(part, "stove_setup_problem")
    assert seen(part, "stove_file_told") == ""


def test_keys_go_from_the_drawing_to_its_spots_and_back(part: DrawPart) -> None:
    drawing = editor(part)
    drawing.setFocus()
    QTest.keyClick(drawing, Qt.Key.Key_Right)
    assert drawing.chosen == "oven_centre"
    assert drawing.patch("oven_centre").focusPolicy() is Qt.FocusPolicy.StrongFocus
    key(part, "oven_centre", Qt.Key.Key_Escape)
    assert drawing.chosen == ""
    assert drawing.patch("oven_centre").focusPolicy() is Qt.FocusPolicy.ClickFocus


def lay(part: DrawPart, kind: str) -> None:
    box = control(part, "spot_kind", QComboBox)
    box.setCurrentIndex(box.findData(kind))
    box.activated.emit(box.currentIndex())


def test_a_new_spot_is_said_to_lie_elsewhere(part: DrawPart, desk: Desk) -> None:
    push(part, "spot_add")
    type_in(part, "spot_label", "Mantel")
    lay(part, "wall")
    assert desk.stove.spots[-1].kind is SpotKind.WALL
    assert desk.stove.spots[-1].name == "mantel"
    assert seen(part, "spot_log_name") == "outside the stove; in the log: mantel"


def test_a_spot_that_was_read_stays_where_it_lies(qtbot: QtBot, desk: Desk) -> None:
    keep_session(desk, "Sunday", NOW - timedelta(days=1))
    part, _ = shown(qtbot, desk, DrawPart, (1040, 720))
    select(part, "top_front_left")
    lay(part, "wall")
    assert "has been read where it lies" in seen(part, "spot_problem")
    assert spot(desk, "top_front_left").kind is SpotKind.TOP


def test_a_spot_is_skipped_on_the_walk_and_taken_up_again(part: DrawPart, desk: Desk) -> None:
    skipped, following = (one.name for one in desk.walk.on_walk[1:3])
    select(part, skipped)
    push(part, "spot_skip")
    part.show_stove()  # as the page does when the stove has changed
    assert desk.stove.left_out == (skipped,)
    assert seen(part, "spot_place") == "left out"
    assert not control(part, "spot_later", QPushButton).isEnabled()
    faces = {name: editor(part).patch(name).face.number for name in (skipped, following)}
    assert faces == {skipped: "–", following: "2"}
    assert stove_from_text(stove_text(desk.stove), Path("stove.toml")).left_out == (skipped,)
    push(part, "spot_skip")
    part.show_stove()  # as the page does when the stove has changed
    assert desk.stove.left_out == ()
    assert seen(part, "spot_place").startswith("2nd of")


def test_one_bar_scrolls_the_page_or_the_column_beside_the_drawing_never_both(qtbot: QtBot, desk: Desk) -> None:
    area, _ = shown(qtbot, desk, lambda link, look: scrolling(DrawPart(link, look)), (1040, 330))
    assert isinstance(area, QScrollArea)
    column = control(area, "draw_column", QScrollArea)
    for height, bars in ((330, (True, False)), (560, (False, True)), (330, (True, False)), (1500, (False, False))):
        area.resize(1040, height)
        settle()
        assert tuple(one.verticalScrollBar().maximum() > 0 for one in (area, column)) == bars, height
