"""Everything is entered, undone, mended and back-dated by keyboard, and nothing typed is lost."""

from datetime import timedelta

import pytest
from PySide6.QtCore import Qt, QTimer
from PySide6.QtWidgets import QLineEdit, QPushButton
from pytestqt.qtbot import QtBot

from cookstove_gui.desk import Desk
from cookstove_gui.gui.cook import questioning
from cookstove_gui.gui.cook.entry_panel import EntryPanel
from cookstove_gui.gui.cook.when_field import WhenField
from cookstove_gui.stove.entries import Kind
from tests.gui.conftest import START
from tests.gui.hands import click, control, ctrl, enter_number, lines, press, seen, type_text, words
from tests.held_clock import HeldClock
from tests.once import stood


def field(panel: EntryPanel, name: str = "number_field") -> str:
    return control(panel, name, QLineEdit).text()


def test_a_number_goes_to_the_lit_spot_and_the_next_lights_up(panel: EntryPanel, desk: Desk, qtbot: QtBot) -> None:
    first = desk.walk.spot
    enter_number(panel, "385")
    assert [(row.spot, row.value, row.unit) for row in desk.entries] == [(first.name, "385", "F")]
    qtbot.waitUntil(lambda: words(panel, "lit_spot") == desk.walk.spot.label)
    assert desk.walk.spot != first
    assert field(panel) == ""


def test_a_newcomer_is_told_what_to_type_until_something_was(panel: EntryPanel, qtbot: QtBot) -> None:
    assert words(panel, "said_verb") == "type a number, then Enter"
    enter_number(panel, "385")
    qtbot.waitUntil(lambda: words(panel, "said") == "oven centre 385 °F")


def test_the_unit_switches_by_a_press(panel: EntryPanel, desk: Desk, qtbot: QtBot) -> None:
    click(panel, "unit")
    assert desk.unit == "C"
    qtbot.waitUntil(lambda: control(panel, "unit", QPushButton).text() == "°C")


def test_arrows_walk_round_the_stove(panel: EntryPanel, desk: Desk) -> None:
    press(panel, Qt.Key.Key_Down)
    press(panel, Qt.Key.Key_Down)
    press(panel, Qt.Key.Key_Up)
    assert desk.walk.lit == 1


def test_arrows_inside_a_number_move_the_cursor(panel: EntryPanel, desk: Desk) -> None:
    type_text(panel, "35")
    press(panel, Qt.Key.Key_Left)
    type_text(panel, "8")
    assert field(panel) == "385"
    assert desk.walk.lit == 0


def test_part_of_a_name_lights_up_its_spot(panel: EntryPanel, desk: Desk) -> None:
    type_text(panel, "back right")
    assert words(panel, "lit_spot") == "→ top back right"
    press(panel, Qt.Key.Key_Return)
    assert desk.walk.spot.name == "top_back_right"
    assert desk.entries == ()


def test_name_and_number_together_are_a_reading_there(panel: EntryPanel, desk: Desk) -> None:
    enter_number(panel, "flue 410")
    assert [(row.spot, row.value) for row in desk.entries] == [("flue", "410")]


def test_the_other_unit_may_stand_behind_the_number(panel: EntryPanel, desk: Desk) -> None:
    enter_number(panel, "196c")
    assert (desk.entries[0].value, desk.entries[0].unit) == ("196", "C")


@pytest.mark.parametrize(
    ("typed", "said"),
    [
        ("38x5", "not a temperature"),
        ("chimney 300", "No spot of this stove"),
        ("99999", "hotter than any wood fire"),
        ("385K", "not a temperature unit"),
    ],
)
def test_bad_input_is_told_beside_the_field_and_stays_typed(
    panel: EntryPanel, desk: Desk, typed: str, said: str
) -> None:
    enter_number(panel, typed)
    assert said in words(panel, "answer")
    assert field(panel) == typed
    assert desk.entries == ()


def test_typing_on_clears_the_sentence(panel: EntryPanel) -> None:
    enter_number(panel, "38x5")
    type_text(panel, "3")
    assert words(panel, "answer") == ""


def test_a_reading_is_back_dated_by_clock_or_minutes_ago(panel: EntryPanel, desk: Desk) -> None:
    type_text(panel, "300")
    ctrl(panel, Qt.Key.Key_T)
    type_text(panel, "-10")
    press(panel, Qt.Key.Key_Return)
    assert desk.entries[0].at == START - timedelta(minutes=10)
    assert field(panel, "when_field") == desk.clock_meant("-10")


def test_now_typed_as_the_field_says_it_ends_the_pinned_clock(panel: EntryPanel, desk: Desk) -> None:
    ctrl(panel, Qt.Key.Key_T)
    enter_number(panel, "-10")
    ctrl(panel, Qt.Key.Key_T)
    control(panel, "when_field", WhenField).selectAll()
    enter_number(panel, "now")
    assert field(panel, "when_field") == ""
    enter_number(panel, "300")
    assert desk.entries[0].at == START
    assert not control(panel, "when_field", WhenField).is_pinned


def test_a_minus_typed_elsewhere_is_not_lost(panel: EntryPanel, qtbot: QtBot) -> None:
    panel.window().activateWindow()
    key = control(panel, "unit", QPushButton)
    key.setFocus()
    qtbot.waitUntil(key.hasFocus)
    qtbot.keyClicks(key, "-4")
    assert field(panel) == "-4"


def test_a_bad_clock_is_told_and_both_fields_stay(panel: EntryPanel, desk: Desk) -> None:
    type_text(panel, "300")
    ctrl(panel, Qt.Key.Key_T)
    type_text(panel, "25:99")
    press(panel, Qt.Key.Key_Return)
    assert "not a clock time" in words(panel, "answer")
    assert (field(panel), field(panel, "when_field")) == ("300", "25:99")
    assert desk.entries == ()


def test_undo_takes_the_last_row_back_and_says_which(panel: EntryPanel, desk: Desk) -> None:
    enter_number(panel, "385")
    ctrl(panel, Qt.Key.Key_Z)
    assert desk.entries == ()
    assert (words(panel, "said_verb"), words(panel, "said")) == ("taken back", "oven centre 385 °F")


def test_redo_brings_it_back(panel: EntryPanel, desk: Desk) -> None:
    enter_number(panel, "385")
    ctrl(panel, Qt.Key.Key_Z)
    press(panel, Qt.Key.Key_Z, Qt.KeyboardModifier.ControlModifier | Qt.KeyboardModifier.ShiftModifier)
    assert [row.value for row in desk.entries] == ["385"]


def test_nothing_to_undo_is_told(panel: EntryPanel) -> None:
    ctrl(panel, Qt.Key.Key_Z)
    assert words(panel, "answer")


def test_a_row_is_corrected_by_keyboard(panel: EntryPanel, desk: Desk, qtbot: QtBot) -> None:
    enter_number(panel, "385")
    enter_number(panel, "410")
    ctrl(panel, Qt.Key.Key_R)
    assert len(lines(panel, "recent_rows")) == 2
    press(panel, Qt.Key.Key_Down)
    press(panel, Qt.Key.Key_Return)
    assert field(panel) == "385"
    enter_number(panel, "358")
    assert sorted(row.value for row in desk.entries) == ["358", "410"]
    assert len(desk.rows) == 4  # both readings, the void, the corrected reading: nothing is overwritten


def test_a_row_is_moved_to_its_right_time(panel: EntryPanel, desk: Desk, qtbot: QtBot) -> None:
    enter_number(panel, "385")
    ctrl(panel, Qt.Key.Key_R)
    press(panel, Qt.Key.Key_Return)
    ctrl(panel, Qt.Key.Key_T)
    type_text(panel, "-7")
    press(panel, Qt.Key.Key_Return)
    assert [row.at for row in desk.entries] == [START - timedelta(minutes=7)]
    assert [row.value for row in desk.entries] == ["385"]


def test_escape_leaves_correcting_and_changes_nothing(panel: EntryPanel, desk: Desk, qtbot: QtBot) -> None:
    enter_number(panel, "385")
    ctrl(panel, Qt.Key.Key_R)
    press(panel, Qt.Key.Key_Return)
    press(panel, Qt.Key.Key_Escape)
    assert field(panel) == ""
    assert len(desk.rows) == 1
    assert words(panel, "lit_spot") == desk.walk.spot.label


def test_delete_takes_back_the_marked_row(panel: EntryPanel, desk: Desk, qtbot: QtBot) -> None:
    enter_number(panel, "385")
    enter_number(panel, "410")
    ctrl(panel, Qt.Key.Key_R)
    assert len(lines(panel, "recent_rows")) == 2
    press(panel, Qt.Key.Key_Down)
    press(panel, Qt.Key.Key_Delete)
    assert [row.value for row in desk.entries] == ["410"]


def test_an_unlikely_number_is_kept_and_questioned_in_the_line(panel: EntryPanel, desk: Desk) -> None:
    enter_number(panel, "940")
    assert [row.value for row in desk.entries] == ["940"]
    assert "is the number right" in seen(panel, "question")


def test_keeping_ends_the_question(panel: EntryPanel, desk: Desk) -> None:
    enter_number(panel, "940")
    ctrl(panel, Qt.Key.Key_K)
    assert seen(panel, "question") == ""
    assert [row.kind for row in desk.rows] == [Kind.READING, Kind.KEPT]


def test_correcting_puts_the_number_back_into_the_field(panel: EntryPanel, desk: Desk) -> None:
    enter_number(panel, "940")
    ctrl(panel, Qt.Key.Key_M)
    assert field(panel) == "940"
    enter_number(panel, "390")
    assert [row.value for row in desk.entries] == ["390"]


def test_the_next_number_may_be_typed_while_a_question_stands(panel: EntryPanel, desk: Desk) -> None:
    enter_number(panel, "940")
    enter_number(panel, "400")
    assert [row.value for row in desk.entries] == ["940", "400"]


def test_a_question_left_standing_gives_the_fires_buttons_their_place_back(panel: EntryPanel, desk: Desk) -> None:
    enter_number(panel, "940")
    lit = control(panel, "fire_lit", QPushButton)
    assert not lit.isVisible()
    patience = panel.findChild(QTimer, "patience")
    assert patience is not None
    assert patience.isActive()
    patience.timeout.emit()
    assert lit.isVisible()
    enter_number(panel, "2200")  # a new doubt is asked about anew
    assert "is the number right" in seen(panel, "question")
    assert not lit.isVisible()


def test_in_practice_a_question_gives_way_by_the_sessions_clock(
    fired_desk: Desk, panel: EntryPanel, clock: HeldClock, monkeypatch: pytest.MonkeyPatch, qtbot: QtBot
) -> None:
    monkeypatch.setattr(questioning, "LEAST_STANDS", 0)
    panel.light("oven_centre")
    enter_number(panel, "940")
    lit = control(panel, "fire_lit", QPushButton)
    clock.pass_minutes(2)
    fired_desk.show(stood(fired_desk.inputs()))
    qtbot.wait(50)  # what the desk says comes a moment later
    assert not lit.isVisible()
    clock.pass_minutes(2)
    fired_desk.show(stood(fired_desk.inputs()))
    qtbot.waitUntil(lit.isVisible)


def test_celsius_typed_for_fahrenheit_is_questioned(panel: EntryPanel, desk: Desk) -> None:
    desk.set_unit("C")
    enter_number(panel, "415")
    assert "415 °F meant?" in seen(panel, "question")


def test_a_slip_only_the_belief_can_see_is_questioned(
    fired_desk: Desk, panel: EntryPanel, clock: HeldClock, qtbot: QtBot
) -> None:
    clock.pass_minutes(2)
    fired_desk.read("620", spot="oven_centre")
    fired_desk.show(stood(fired_desk.inputs()))
    qtbot.waitUntil(lambda: "620" in seen(panel, "question"))
    assert "was expected" in seen(panel, "question")


def test_a_question_that_was_answered_is_not_asked_again(
    fired_desk: Desk, panel: EntryPanel, clock: HeldClock, qtbot: QtBot
) -> None:
    clock.pass_minutes(2)
    fired_desk.read("620", spot="oven_centre")
    fired_desk.show(stood(fired_desk.inputs()))
    qtbot.waitUntil(lambda: "620" in seen(panel, "question"))
    ctrl(panel, Qt.Key.Key_K)
    with qtbot.waitSignal(panel._link.changed):
        fired_desk.show(stood(fired_desk.inputs()))
    assert seen(panel, "question") == ""


# --- the fire ---------------------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("key", "answer", "kind", "value", "note"),
    [
        (Qt.Key.Key_F6, "2", Kind.WOOD, "", "two splits"),
        (Qt.Key.Key_F7, "3", Kind.AIR, "0.5", ""),
        (Qt.Key.Key_F8, "1", Kind.BYPASS, "0", ""),
        (Qt.Key.Key_F9, "1", Kind.OVEN_DOOR, "open", ""),
        (Qt.Key.Key_F10, "1", Kind.PAN, "on", ""),
    ],
    ids=lambda value: value.name if isinstance(value, Qt.Key) else None,
)
def test_fire_events_take_two_keys(
    panel: EntryPanel, desk: Desk, key: Qt.Key, answer: str, kind: Kind, value: str, note: str
) -> None:
    press(panel, key)
    type_text(panel, answer)
    assert [(row.kind, row.value, row.note) for row in desk.entries] == [(kind, value, note)]


def test_what_goes_into_the_oven_and_comes_out_takes_three_keys(panel: EntryPanel, desk: Desk) -> None:
    press(panel, Qt.Key.Key_F9)
    type_text(panel, "3")
    type_text(panel, "1")
    press(panel, Qt.Key.Key_F9)
    type_text(panel, "4")
    assert [(row.kind, row.note) for row in desk.entries] == [
        (Kind.OVEN_IN, "loaf of bread"),
        (Kind.OVEN_OUT, "loaf of bread"),
    ]


def test_part_of_a_name_says_what_goes_into_the_oven(panel: EntryPanel, desk: Desk) -> None:
    press(panel, Qt.Key.Key_F9)
    type_text(panel, "3")
    control(panel, "chooser_field", QLineEdit).setFocus()
    enter_number(panel, "pie")
    assert [(row.kind, row.note) for row in desk.entries] == [(Kind.OVEN_IN, "fruit pie")]


def test_nothing_comes_out_of_an_empty_oven(panel: EntryPanel, desk: Desk) -> None:
    press(panel, Qt.Key.Key_F9)
    type_text(panel, "4")
    assert "Nothing is in the oven" in seen(panel, "chooser_problem")
    assert desk.entries == ()


def test_lighting_takes_one_key(panel: EntryPanel, desk: Desk) -> None:
    press(panel, Qt.Key.Key_F5)
    assert [row.kind for row in desk.entries] == [Kind.LIT]


def test_the_keyboard_comes_back_to_the_number_field(panel: EntryPanel, desk: Desk) -> None:
    press(panel, Qt.Key.Key_F6)
    type_text(panel, "1")
    enter_number(panel, "385")
    assert [row.kind for row in desk.entries] == [Kind.WOOD, Kind.READING]


@pytest.mark.parametrize(("typed", "value", "unit"), [("4.5", "4.5", "lb"), ("2kg", "2", "kg")])
def test_wood_is_weighed(panel: EntryPanel, desk: Desk, typed: str, value: str, unit: str) -> None:
    press(panel, Qt.Key.Key_F6)
    press(panel, Qt.Key.Key_Tab)
    control(panel, "chooser_field", QLineEdit).setFocus()
    enter_number(panel, typed)
    assert [(row.value, row.unit) for row in desk.entries] == [(value, unit)]


def test_a_bad_weight_is_told_and_stays_typed(panel: EntryPanel, desk: Desk) -> None:
    press(panel, Qt.Key.Key_F6)
    control(panel, "chooser_field", QLineEdit).setFocus()
    enter_number(panel, "heavy")
    assert "isn't an amount of wood" in seen(panel, "chooser_problem")
    assert field(panel, "chooser_field") == "heavy"


def test_escape_leaves_the_chooser(panel: EntryPanel, desk: Desk) -> None:
    press(panel, Qt.Key.Key_F6)
    press(panel, Qt.Key.Key_Escape)
    enter_number(panel, "385")
    assert [row.kind for row in desk.entries] == [Kind.READING]


def test_a_note_is_typed(panel: EntryPanel, desk: Desk) -> None:
    press(panel, Qt.Key.Key_F11)
    enter_number(panel, "wind from the north")
    assert [(row.kind, row.note) for row in desk.entries] == [(Kind.NOTE, "wind from the north")]


def test_an_empty_note_is_told(panel: EntryPanel, desk: Desk) -> None:
    press(panel, Qt.Key.Key_F11)
    press(panel, Qt.Key.Key_Return)
    assert "note is empty" in seen(panel, "chooser_problem")


def test_a_fire_event_is_back_dated(panel: EntryPanel, desk: Desk) -> None:
    ctrl(panel, Qt.Key.Key_T)
    type_text(panel, "-15")
    press(panel, Qt.Key.Key_F6)
    type_text(panel, "2")
    assert desk.entries[0].at == START - timedelta(minutes=15)


def test_buttons_do_what_keys_do(panel: EntryPanel, desk: Desk) -> None:
    click(panel, "fire_air")
    click(panel, "choice_5")
    type_text(panel, "385")
    click(panel, "enter")
    assert [(row.kind, row.value) for row in desk.entries] == [(Kind.AIR, "1"), (Kind.READING, "385")]


def test_counted_splits_are_counted_anew(panel: EntryPanel, desk: Desk, qtbot: QtBot) -> None:
    press(panel, Qt.Key.Key_F6)
    type_text(panel, "2")
    ctrl(panel, Qt.Key.Key_R)
    press(panel, Qt.Key.Key_Return)
    assert field(panel) == "two splits"
    enter_number(panel, "3")
    assert [row.note for row in desk.entries] == ["3 splits"]


def test_a_questioned_load_is_corrected(panel: EntryPanel, desk: Desk) -> None:
    press(panel, Qt.Key.Key_F6)
    control(panel, "chooser_field", QLineEdit).setFocus()
    enter_number(panel, "900")
    assert "more wood than a firebox holds" in seen(panel, "question")
    ctrl(panel, Qt.Key.Key_M)
    enter_number(panel, "9")
    assert [(row.value, row.unit) for row in desk.entries] == [("9", "lb")]
