"""The page My stove keeps what its owner types, and shows what the past taught."""

from dataclasses import replace
from datetime import timedelta
from io import BytesIO

import pytest
from pypdf import PdfReader
from PySide6.QtCore import QPoint, QPointF, Qt
from PySide6.QtGui import QWheelEvent
from PySide6.QtPrintSupport import QPrintDialog
from PySide6.QtWidgets import (
    QApplication,
    QComboBox,
    QDialog,
    QFileDialog,
    QPushButton,
    QWidget,
)

from cookstove_gui.desk import Desk
from cookstove_gui.desk.my_stove.describing import add_stove
from cookstove_gui.desk.studying import learning_is_due
from cookstove_gui.gui.background.past_study import PastStudy
from cookstove_gui.gui.drawn_stove.stove_view import StoveView
from cookstove_gui.gui.my_stove.ability_list import AbilityRow
from cookstove_gui.gui.my_stove.draw.stove_column import StoveColumn
from cookstove_gui.gui.my_stove.first_fires import FirstFiresGuide
from cookstove_gui.gui.my_stove.hot_side import HotSidePart
from cookstove_gui.gui.my_stove.page import MyStovePage
from cookstove_gui.gui.widgets import printing
from cookstove_gui.gui.widgets.form import Answer
from cookstove_gui.stove.stove import Firebox
from tests.desk.my_stove.test_first_fires import FULL, KINDLING, MEDIUM, fire
from tests.gui.hands import control, push, seen, type_in
from tests.gui.pages import NOW, held_desk, keep_session, shown, the_look
from tests.once import stood

pytestmark = [pytest.mark.gui, pytest.mark.usefixtures("worked_out_once")]


@pytest.fixture
def desk() -> Desk:
    return held_desk()


@pytest.fixture
def studies() -> None:
    """The page begins a study of its own when it is shown, as in the program."""


@pytest.fixture(autouse=True)
def _no_study_but_where_asked_for(request: pytest.FixtureRequest, monkeypatch: pytest.MonkeyPatch) -> None:
    if "studies" not in request.fixturenames:
        monkeypatch.setattr(PastStudy, "learn_if_due", lambda _self: None)


def test_width_typed_in_inches_is_kept_in_metres(qtbot, desk):
    page, _ = shown(qtbot, desk, MyStovePage)
    type_in(page, "cooktop_width", "40")
    assert desk.logbook.stove("My stove").cooktop_width == pytest.approx(1.016)


def test_width_typed_in_centimetres_while_the_screen_shows_celsius(qtbot, desk):
    desk.set_unit("C")
    page, _ = shown(qtbot, desk, MyStovePage)
    type_in(page, "cooktop_width", "80")
    assert desk.stove.cooktop_width == pytest.approx(0.80)


def test_letters_for_a_width_get_a_sentence_and_stay_in_the_field(qtbot, desk):
    page, _ = shown(qtbot, desk, MyStovePage)
    type_in(page, "cooktop_width", "wide")
    assert "“wide” is not a width" in seen(page, "cooktop_width_problem")
    push(page, "firebox_right")
    assert find_text(page, "cooktop_width") == "wide"
    assert desk.stove.cooktop_width == pytest.approx(0.90)


def test_a_height_nobody_cooks_at_gets_a_sentence(qtbot, desk):
    page, _ = shown(qtbot, desk, MyStovePage)
    type_in(page, "altitude", "99999")
    assert "isn't a plausible height for a kitchen" in seen(page, "altitude_problem")


def test_altitude_typed_in_feet_is_kept_in_metres(qtbot, desk):
    page, _ = shown(qtbot, desk, MyStovePage)
    type_in(page, "altitude", "5000")
    assert desk.stove.altitude == pytest.approx(1524.0)


def test_firebox_is_chosen_by_its_button(qtbot, desk):
    page, _ = shown(qtbot, desk, MyStovePage)
    push(page, "firebox_above")
    assert desk.stove.firebox is Firebox.ABOVE


def test_renaming_a_stove_keeps_its_sessions(qtbot, desk):
    number = keep_session(desk, "Sunday bread", NOW - timedelta(days=2))
    page, _ = shown(qtbot, desk, MyStovePage)
    push(page, "part_setup")
    type_in(page, "stove_name", "Kitchen stove")
    assert [stove.name for stove in desk.stoves] == ["Kitchen stove"]
    assert [row.number for row in desk.sessions] == [number]


def test_another_stove_is_added_and_used(qtbot, desk):
    page, _ = shown(qtbot, desk, MyStovePage)
    push(page, "another_stove")
    type_in(page, "new_stove_name", "Hut")
    assert desk.stove.name == "Hut"
    assert {stove.name for stove in desk.stoves} == {"Hut", "My stove"}


def test_a_second_stove_of_the_same_name_is_refused(qtbot, desk):
    page, _ = shown(qtbot, desk, MyStovePage)
    push(page, "another_stove")
    type_in(page, "new_stove_name", "My stove")
    assert "already" in seen(page, "new_stove_name_problem")


def test_set_up_and_spots_are_one_drawing_with_another_thing_selected(qtbot, desk):
    page, _ = shown(qtbot, desk, MyStovePage)
    push(page, "part_spots")
    assert seen(page, "spot_title") == "oven centre"
    push(page, "part_setup")
    assert seen(page, "spot_title") == ""
    assert control(page, "stove_setup", StoveColumn).isVisibleTo(page)


def test_hot_side_shows_the_hotter_left(qtbot, desk):
    for day in (9, 6, 3):
        keep_session(desk, f"Day {day}", NOW - timedelta(days=day))
    page, _ = shown(qtbot, desk, MyStovePage)
    qtbot.waitUntil(lambda: seen(page, "hot_side_sentence").startswith("The left runs about"), timeout=20000)
    drawing = control(page, "hot_side_drawing", StoveView)
    left, right = (drawing.patch(f"top_front_{side}") for side in ("left", "right"))
    assert left.face.number.startswith("+")
    assert right.face.number.startswith("−")
    assert left.face.captions[0].startswith("±")
    assert left.face.fill != right.face.fill
    assert left.accessibleDescription() == "21 readings"
    assert drawing.patch("oven_left").face.number == "–"
    assert seen(page, "hot_side_behind").startswith("Over 3 sessions and 126 readings, at a cooktop mean of ")
    assert seen(page, "hot_side_unknown").startswith("Each spot of the top is known to about ±")


def test_at_large_text_the_hot_side_is_drawn_larger_with_it(qtbot, desk, qapp):
    page, _ = shown(qtbot, desk, MyStovePage)
    push(page, "part_hot_side")
    drawing, look = control(page, "hot_side_drawing", StoveView), the_look(qapp)
    look.set_text_size(1.5)
    look.set_scale(1.5)
    try:
        qtbot.waitUntil(lambda: drawing.height() > 500 and drawing.width() > 640)  # px, its most in usual text
    finally:
        look.set_text_size(1.0)
        look.set_scale(1.0)


def test_hot_side_is_told_by_the_stage_of_the_fire(qtbot, desk):
    for day in (9, 6, 3):
        keep_session(desk, f"Day {day}", NOW - timedelta(days=day))
    page, _ = shown(qtbot, desk, MyStovePage)
    push(page, "part_hot_side")
    box, part = control(page, "hot_side_stage", QComboBox), control(page, "hot_side", HotSidePart)
    qtbot.waitUntil(lambda: box.count() > 1, timeout=20000)
    before = seen(page, "hot_side_behind")
    assert [box.itemData(place) for place in range(box.count())][:2] == ["any", "kindling"]
    box.setCurrentIndex(1)
    box.activated.emit(1)
    qtbot.waitUntil(lambda: seen(page, "hot_side_behind") != before, timeout=20000)
    assert "on a kindling fire" in seen(page, "hot_side_behind")
    add_stove(desk, "Hut")
    qtbot.waitUntil(lambda: seen(page, "stove_foot_name") == "Hut" and not part.is_busy, timeout=20000)
    assert seen(page, "hot_side_behind") == ""  # of another stove all readings are asked for, and it has none


def test_opening_the_page_starts_learning_from_a_past_not_learned_yet(qtbot, desk, studies):
    keep_session(desk, "Day 3", NOW - timedelta(days=3))
    _, link = shown(qtbot, desk, MyStovePage)
    studying = PastStudy.of(link)
    qtbot.waitUntil(lambda: desk.study is not None and not studying.is_running, timeout=20000)
    assert not learning_is_due(desk)


def test_first_fires_of_a_new_stove_say_windows_open_and_the_manual_first(qtbot, desk):
    page, _ = shown(qtbot, desk, MyStovePage)
    push(page, "fired_new")
    push(page, "part_first_fires")
    caution = seen(page, "first_fires_always")
    assert "Open the windows" in caution
    assert "manual comes first" in caution
    assert "first fire 1 of 3" in seen(page, "first_fires_now_title")


def test_waiving_first_fires_asks_once_and_can_be_taken_back(qtbot, desk):
    page, _ = shown(qtbot, desk, MyStovePage)
    push(page, "fired_new")
    push(page, "part_first_fires")
    push(page, "first_fires_waive")
    assert not desk.stove.first_fires_waived
    push(page, "first_fires_sure")
    assert desk.stove.first_fires_waived
    push(page, "first_fires_resume")
    assert not desk.stove.first_fires_waived


def find_text(page, name):
    from PySide6.QtWidgets import QLineEdit

    return control(page, name, QLineEdit).text()


def test_a_figure_of_the_hot_side_opens_its_firings(qtbot, desk):
    page, _ = shown(qtbot, desk, MyStovePage)
    push(page, "part_hot_side")
    qtbot.waitUntil(lambda: bool(control(page, "main_abilities", QWidget).findChildren(AbilityRow)), timeout=20000)
    rise = control(page, "main_abilities", QWidget).findChildren(AbilityRow)[0]
    assert rise.accessibleName() == "cold to bread heat: –"
    rise.click()
    assert control(page, "stove_fire", QWidget).isVisibleTo(page)
    assert control(page, "figure_sentence", Answer).accessibleName() == "Cold to bread heat: not seen yet."


def test_scrolling_over_a_choice_does_not_choose(qtbot, desk):
    add_stove(desk, "Hut")
    page, _ = shown(qtbot, desk, MyStovePage)
    box = control(page, "stove_choice", QComboBox)
    turn = QWheelEvent(
        QPointF(20, 20), QPointF(box.mapToGlobal(QPoint(20, 20))), QPoint(), QPoint(0, -120),
        Qt.MouseButton.NoButton, Qt.KeyboardModifier.NoModifier, Qt.ScrollPhase.NoScrollPhase, False,
    )  # fmt: skip
    QApplication.sendEvent(box, turn)
    assert desk.stove.name == "Hut"
    assert box.currentText() == "Hut"


def test_a_first_fire_that_burns_is_under_way_not_failed(qtbot, desk):
    desk.save_stove(replace(desk.stove, is_new=True))
    number = fire(desk, NOW - timedelta(minutes=10), KINDLING[:1])
    desk.open_session(number)
    assert desk.show(stood(desk.inputs()))
    page, _ = shown(qtbot, desk, MyStovePage)
    push(page, "part_first_fires")
    assert control(page, "stage_kindling", QWidget).accessibleName() == "Kindling fire: under way"
    assert seen(page, "first_fires_now_title") == "Now: first fire 1 of 3"


def test_first_fires_are_drawn_with_their_stages_and_the_certificate_goes_to_paper_when_full(
    qtbot, desk, tmp_path, monkeypatch
):
    desk.save_stove(replace(desk.stove, is_new=True))
    fire(desk, NOW - timedelta(hours=72), KINDLING)
    page, _ = shown(qtbot, desk, MyStovePage)
    push(page, "part_first_fires")
    assert "1 of 3 done" in control(page, "fire_hills", QWidget).accessibleName()
    assert control(page, "stage_kindling", QWidget).accessibleName() == "Kindling fire: done"
    assert control(page, "stage_medium", QWidget).accessibleName() == "Medium fire: next"
    assert "312 °F" in seen(page, "certificate_1_2")
    assert seen(page, "first_fires_now_title") == "Next: first fire 2 of 3"
    assert not control(page, "certificate_write", QPushButton).isVisibleTo(page)
    assert not control(page, "fire_hills", QWidget).grab().isNull()
    fire(desk, NOW - timedelta(hours=48), MEDIUM, wood=(20, 50))
    fire(desk, NOW - timedelta(hours=24), FULL, wood=(15,), air=((5, 1.0), (75, 0.2)))
    control(page, "first_fires", FirstFiresGuide).show_progress()
    assert seen(page, "first_fires_standing").startswith("All first fires are done")
    target = tmp_path / "first.pdf"
    monkeypatch.setattr(QFileDialog, "getSaveFileName", lambda *_args: (str(target), ""))
    push(page, "certificate_write")
    assert target.read_bytes().startswith(b"%PDF-")
    monkeypatch.setattr(QFileDialog, "getSaveFileName", lambda *_args: (str(tmp_path / "first.txt"), ""))
    push(page, "certificate_write")
    assert "must end in" in seen(page, "first_fires_problem")
    on_paper: list[bytes] = []
    monkeypatch.setattr(QPrintDialog, "exec", lambda _dialog: QDialog.DialogCode.Accepted)
    monkeypatch.setattr(printing, "print_pages", lambda pdf, _printer: on_paper.append(pdf))
    push(page, "certificate_print")
    text = PdfReader(BytesIO(on_paper[0])).pages[0].extract_text()
    told = [seen(page, f"certificate_{line}_{column}") for line in (1, 2, 3) for column in range(3)]
    assert all(told)
    assert [words for words in (seen(page, "certificate_title"), *told) if words not in text] == []
    assert seen(page, "first_fires_problem") == ""
    type_in(page, "certificate_name", "  Invented   Owner ")
    assert seen(page, "certificate_foot") == "complete by the log, signed by Invented Owner"
    push(page, "certificate_print")
    assert "Invented Owner" in PdfReader(BytesIO(on_paper[1])).pages[0].extract_text()
    type_in(page, "certificate_name", "x" * 61)
    assert "too long" in seen(page, "certificate_name_problem")
