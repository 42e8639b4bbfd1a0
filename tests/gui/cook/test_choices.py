"""What could mean several things is asked in place, each answer with a key; Escape leaves everything as typed."""

import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QApplication, QLabel, QLineEdit, QPushButton

from cookstove_gui.desk import Desk
from cookstove_gui.gui.cook.entry_panel import EntryPanel
from cookstove_gui.gui.widgets.key import Key
from cookstove_gui.stove.entries import Kind
from tests.gui.hands import click, control, ctrl, enter_number, press, seen, type_text, words
from tests.held_clock import HeldClock
from tests.once import stood


def choices(panel: EntryPanel) -> list[tuple[str, str]]:
    """The word and the key of each answer that is seen."""
    keys = [key for key in panel.findChildren(Key) if key.objectName().startswith("choice_")]
    return [(key.text(), key.keys) for key in keys if key.isVisibleTo(panel)]


def read(desk: Desk) -> list[tuple[str, str]]:
    return [(row.spot, row.value) for row in desk.entries if row.kind is Kind.READING]


def done(desk: Desk) -> list[tuple[Kind, str]]:
    return [(row.kind, row.spot or row.value or row.note) for row in desk.entries]


# --- names that fit several spots ---------------------------------------------------------------------------------


def test_a_name_that_fits_several_spots_shows_them_and_takes_a_key(panel: EntryPanel, desk: Desk) -> None:
    enter_number(panel, "fl 410")
    assert choices(panel) == [("top front left", "1"), ("oven floor", "2"), ("flue pipe", "3")]
    assert words(panel, "chooser_question") == "410 °F: where?"
    assert desk.entries == ()
    type_text(panel, "3")
    assert read(desk) == [("flue", "410")]
    assert control(panel, "number_field", QLineEdit).text() == ""


def test_the_spot_is_chosen_by_a_click_too(panel: EntryPanel, desk: Desk) -> None:
    enter_number(panel, "back 395")
    click(panel, "choice_2")
    assert read(desk) == [("top_back_middle", "395")]


def test_escape_leaves_a_name_that_fits_several_spots_as_typed(panel: EntryPanel, desk: Desk) -> None:
    enter_number(panel, "right 230")
    press(panel, Qt.Key.Key_Escape)
    assert control(panel, "number_field", QLineEdit).text() == "right 230"
    assert choices(panel) == []
    assert desk.entries == ()


def test_a_name_alone_lights_up_the_spot_that_is_chosen(panel: EntryPanel, desk: Desk) -> None:
    type_text(panel, "side")
    assert words(panel, "lit_spot") == "→ 2 spots"
    press(panel, Qt.Key.Key_Return)
    type_text(panel, "2")
    assert desk.walk.spot.name == "side_right"
    assert desk.entries == ()


def test_the_key_of_an_answer_stands_apart_from_its_word(panel: EntryPanel) -> None:
    press(panel, Qt.Key.Key_F7)
    assert choices(panel) == [("shut", "1"), ("¼", "2"), ("½", "3"), ("¾", "4"), ("open", "5")]


# --- lit while it burns ---------------------------------------------------------------------------------------------


def test_lit_while_a_fire_burns_asks_before_anything_is_kept(panel: EntryPanel, desk: Desk) -> None:
    press(panel, Qt.Key.Key_F5)
    press(panel, Qt.Key.Key_F5)
    assert [word for word, _ in choices(panel)] == ["lit again", "fire is out", "a slip"]
    assert len(desk.rows) == 1


@pytest.mark.parametrize(("key", "added"), [("1", [Kind.LIT]), ("2", [Kind.OUT]), ("3", [])])
def test_lit_again_takes_what_is_answered(panel: EntryPanel, desk: Desk, key: str, added: list[Kind]) -> None:
    press(panel, Qt.Key.Key_F5)
    press(panel, Qt.Key.Key_F5)
    type_text(panel, key)
    assert [row.kind for row in desk.rows] == [Kind.LIT, *added]
    assert choices(panel) == []


def test_a_fire_that_went_out_is_lit_without_a_question(panel: EntryPanel, desk: Desk) -> None:
    press(panel, Qt.Key.Key_F5)
    press(panel, Qt.Key.Key_F5)
    type_text(panel, "2")
    press(panel, Qt.Key.Key_F5)
    assert [row.kind for row in desk.rows] == [Kind.LIT, Kind.OUT, Kind.LIT]


def test_a_fire_that_is_believed_out_is_lit_without_a_question(
    fired_desk: Desk, panel: EntryPanel, clock: HeldClock
) -> None:
    for heat in (250, 160, 90):
        clock.pass_minutes(100)
        fired_desk.read(str(heat), spot="oven_centre")
        fired_desk.read(str(heat), spot="top_front_left")
    assert fired_desk.show(stood(fired_desk.inputs()))
    press(panel, Qt.Key.Key_F5)
    assert [row.kind for row in fired_desk.entries].count(Kind.LIT) == 2


# --- pans, wood -----------------------------------------------------------------------------------------------------


def test_a_pan_is_put_on_a_place_of_the_cooktop_and_taken_off_it(panel: EntryPanel, desk: Desk) -> None:
    panel.light("room")
    press(panel, Qt.Key.Key_F10)
    assert [word for word, _ in choices(panel)] == [
        "back left", "back middle", "back right", "front left", "front middle", "front right",
    ]  # fmt: skip
    type_text(panel, "2")
    press(panel, Qt.Key.Key_F10)
    assert choices(panel)[1] == ("back middle off", "2")
    type_text(panel, "2")
    assert [(row.kind, row.spot, row.value) for row in desk.entries] == [
        (Kind.PAN, "top_back_middle", "on"),
        (Kind.PAN, "top_back_middle", "off"),
    ]


def test_a_pan_cannot_be_moved_to_the_room(panel: EntryPanel, desk: Desk) -> None:
    press(panel, Qt.Key.Key_F10)
    type_text(panel, "1")
    ctrl(panel, Qt.Key.Key_R)
    press(panel, Qt.Key.Key_Return)
    panel.light("room")
    press(panel, Qt.Key.Key_Return)
    assert seen(panel, "answer") == "No pan stands on the room; choose a spot of the cooktop, as front left."
    assert [row.spot for row in desk.entries] == ["top_back_left"]


@pytest.mark.parametrize(("key", "note"), [("1", "one split"), ("6", "six splits"), ("k", "kindling")])
def test_wood_is_counted_by_the_key_of_its_number(panel: EntryPanel, desk: Desk, key: str, note: str) -> None:
    press(panel, Qt.Key.Key_F6)
    type_text(panel, key)
    assert [row.note for row in desk.entries] == [note]


def test_any_amount_of_wood_is_typed(panel: EntryPanel, desk: Desk) -> None:
    press(panel, Qt.Key.Key_F6)
    control(panel, "chooser_field", QLineEdit).setFocus()
    enter_number(panel, "half a split")
    assert [row.note for row in desk.entries] == ["half a split"]


# --- keys from anywhere ---------------------------------------------------------------------------------------------


def test_digits_typed_anywhere_reach_the_number_field(panel: EntryPanel, desk: Desk) -> None:
    control(panel, "fire_air", QPushButton).setFocus()
    type_text(panel, "38")
    type_text(panel, "5")
    press(panel, Qt.Key.Key_Return)
    assert [row.value for row in desk.entries] == ["385"]


def test_digits_typed_over_the_list_close_it_and_reach_the_number_field(panel: EntryPanel, desk: Desk) -> None:
    enter_number(panel, "385")
    ctrl(panel, Qt.Key.Key_R)
    type_text(panel, "4")
    type_text(panel, "00")
    press(panel, Qt.Key.Key_Return)
    assert [row.value for row in desk.entries] == ["385", "400"]


# --- the walk -------------------------------------------------------------------------------------------------------


def test_whoever_comes_back_to_the_page_finds_the_keyboard_on_the_choice(panel: EntryPanel) -> None:
    press(panel, Qt.Key.Key_F7)
    panel.take_focus()
    at = panel.focusWidget()
    assert at is not None
    assert at.objectName() == "choice_1"


def test_the_walk_is_changed_at_the_lit_spot_and_kept(panel: EntryPanel, desk: Desk) -> None:
    ctrl(panel, Qt.Key.Key_J)
    count = len(desk.stove.spots)
    assert words(panel, "chooser_question") == f"oven centre: 1 of {count} on the walk"
    type_text(panel, "2")
    type_text(panel, "2")
    assert words(panel, "chooser_question") == f"oven centre: 3 of {count} on the walk"
    type_text(panel, "3")
    press(panel, Qt.Key.Key_Escape)
    assert [spot.name for spot in desk.logbook.stoves()[0].spots][:3] == [
        "top_front_left",
        "top_front_middle",
        "oven_centre",
    ]
    assert desk.logbook.stoves()[0].left_out == ("oven_centre",)
    assert desk.entries == ()


def test_tab_goes_through_a_choice_before_what_stands_elsewhere(panel: EntryPanel) -> None:
    after = QPushButton("More", panel.window())  # of another part of the page, there before the answers
    after.show()
    for key in (Qt.Key.Key_F6, Qt.Key.Key_F7):
        press(panel, key)
        order, at = [], panel.window().nextInFocusChain()
        while at is not None and at is not panel.window():
            order.append(at)
            at = at.nextInFocusChain()
        answers = [part for part in order if part.objectName().startswith("choice_") and part.isVisible()]
        assert order.index(answers[-1]) < order.index(after)


def test_the_words_before_wood_is_put_on_are_whole_at_any_width(panel: EntryPanel) -> None:
    press(panel, Qt.Key.Key_F6)
    said = control(panel, "chooser_first", QLabel)
    for width in (456, 394):
        panel.resize(width, 400)
        QApplication.processEvents()
        assert said.height() >= said.heightForWidth(said.width()) - 1
