"""What was entered is corrected, taken back, kept and back-dated in the block, and it says what became of it."""

from datetime import timedelta

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QLineEdit, QListWidget, QPushButton, QWidget
from pytestqt.qtbot import QtBot

from cookstove_gui.desk import Desk
from cookstove_gui.gui.cook.entry_panel import EntryPanel
from cookstove_gui.gui.cook.recent_rows import _ASKED
from cookstove_gui.gui.cook.when_field import WhenField
from cookstove_gui.gui.desk_link import DeskLink
from cookstove_gui.gui.widgets.look import Look
from cookstove_gui.stove.entries import Kind
from tests.gui.conftest import START
from tests.gui.hands import click, control, ctrl, enter_number, lines, mark, press, seen, type_text, words
from tests.held_clock import HeldClock
from tests.once import stood


def stand(desk: Desk) -> None:
    assert desk.show(stood(desk.inputs()))


def slip(desk: Desk, clock: HeldClock) -> int:
    """A number that only the belief can doubt; its row."""
    clock.pass_minutes(2)
    number = desk.read("38", spot="oven_centre").entry.number
    stand(desk)
    return number


def correct_newest(panel: EntryPanel) -> None:
    ctrl(panel, Qt.Key.Key_R)
    press(panel, Qt.Key.Key_Return)


# --- value, spot, clock ---------------------------------------------------------------------------------------------


def test_value_spot_and_clock_are_corrected_in_one_step(panel: EntryPanel, desk: Desk) -> None:
    enter_number(panel, "820")
    correct_newest(panel)
    assert words(panel, "lit_spot") == "correct oven centre"
    press(panel, Qt.Key.Key_Down)
    assert words(panel, "lit_spot") == "correct top front left"
    type_text(panel, "280")
    ctrl(panel, Qt.Key.Key_T)
    type_text(panel, "-6")
    press(panel, Qt.Key.Key_Return)
    (row,) = desk.entries
    assert (row.value, row.spot, row.at) == ("280", "top_front_left", START - timedelta(minutes=6))
    assert len(desk.rows) == 3


def test_a_name_typed_while_correcting_is_the_spot(panel: EntryPanel, desk: Desk) -> None:
    enter_number(panel, "280")
    correct_newest(panel)
    enter_number(panel, "flue")
    assert [(row.spot, row.value) for row in desk.entries] == [("flue", "280")]
    correct_newest(panel)
    enter_number(panel, "fl 290")
    type_text(panel, "2")
    assert [(row.spot, row.value) for row in desk.entries] == [("oven_floor", "290")]


def test_a_spot_chosen_on_the_stove_while_correcting_is_the_entrys(panel: EntryPanel, desk: Desk) -> None:
    enter_number(panel, "280")
    lit = desk.walk.spot
    correct_newest(panel)
    panel.light("flue")
    press(panel, Qt.Key.Key_Return)
    assert [row.spot for row in desk.entries] == ["flue"]
    assert desk.walk.spot == lit


# --- undo -----------------------------------------------------------------------------------------------------------


def test_undo_gives_back_what_was_taken_back(panel: EntryPanel, desk: Desk) -> None:
    enter_number(panel, "385")
    enter_number(panel, "410")
    ctrl(panel, Qt.Key.Key_R)
    press(panel, Qt.Key.Key_Down)
    press(panel, Qt.Key.Key_Delete)
    assert [row.value for row in desk.entries] == ["410"]
    ctrl(panel, Qt.Key.Key_Z)
    assert [row.value for row in desk.entries] == ["385", "410"]
    assert (words(panel, "said_verb"), words(panel, "said")) == ("put back", "oven centre 385 °F")


def test_the_undo_key_undoes(panel: EntryPanel, desk: Desk) -> None:
    enter_number(panel, "385")
    click(panel, "undo")
    assert desk.entries == ()


# --- the clock ------------------------------------------------------------------------------------------------------


def test_a_back_dated_entry_says_where_it_went(panel: EntryPanel, desk: Desk, clock: HeldClock) -> None:
    panel.resize(900, 201)
    enter_number(panel, "385")
    type_text(panel, "300")
    ctrl(panel, Qt.Key.Key_T)
    type_text(panel, "-10")
    press(panel, Qt.Key.Key_Return)
    then, now = desk.clock_meant("-10"), desk.clock_meant("-0")
    assert words(panel, "said") == f"top front left 300 °F at {then}, before the {now} reading"


def test_a_walk_from_paper_takes_as_many_numbers_as_readings(panel: EntryPanel, desk: Desk) -> None:
    ctrl(panel, Qt.Key.Key_T)
    type_text(panel, "-20")
    press(panel, Qt.Key.Key_Return)
    for number in range(300, 315):
        enter_number(panel, str(number))
    spots = [spot.name for spot in desk.walk.spots][:15]
    assert [(row.spot, row.at) for row in desk.entries] == [(spot, START - timedelta(minutes=20)) for spot in spots]
    when = control(panel, "when_field", WhenField)
    assert when.is_pinned
    assert "stays until changed" in when.accessibleName()


def test_escape_in_the_clock_is_now_again(panel: EntryPanel, desk: Desk) -> None:
    ctrl(panel, Qt.Key.Key_T)
    type_text(panel, "-20")
    press(panel, Qt.Key.Key_Return)
    ctrl(panel, Qt.Key.Key_T)
    press(panel, Qt.Key.Key_Escape)
    enter_number(panel, "385")
    assert desk.entries[0].at == START
    assert not control(panel, "when_field", WhenField).is_pinned


def test_a_clock_that_is_none_is_refused_at_once(panel: EntryPanel) -> None:
    ctrl(panel, Qt.Key.Key_T)
    type_text(panel, "25:99")
    press(panel, Qt.Key.Key_Return)
    assert "not a clock time" in seen(panel, "answer")


def test_the_clock_of_one_thing_done_is_for_it_alone(panel: EntryPanel, desk: Desk) -> None:
    press(panel, Qt.Key.Key_F6)
    control(panel, "chooser_when", WhenField).setFocus()
    type_text(panel, "-15")
    control(panel, "choice_2", QPushButton).setFocus()
    type_text(panel, "2")
    enter_number(panel, "385")
    assert [(row.kind, row.at) for row in desk.entries] == [
        (Kind.WOOD, START - timedelta(minutes=15)),
        (Kind.READING, START),
    ]


def test_correcting_gives_the_walk_its_clock_back(panel: EntryPanel, desk: Desk) -> None:
    ctrl(panel, Qt.Key.Key_T)
    type_text(panel, "-20")
    press(panel, Qt.Key.Key_Return)
    enter_number(panel, "300")
    correct_newest(panel)
    enter_number(panel, "310")
    enter_number(panel, "320")
    assert {row.at for row in desk.entries} == {START - timedelta(minutes=20)}


# --- questions ------------------------------------------------------------------------------------------------------


def test_a_question_is_reached_after_the_next_entry(
    fired_desk: Desk, panel: EntryPanel, clock: HeldClock, qtbot: QtBot
) -> None:
    number = slip(fired_desk, clock)
    qtbot.waitUntil(lambda: "38 typed where" in seen(panel, "question"))
    enter_number(panel, "flue 300")
    assert seen(panel, "question") == ""
    ctrl(panel, Qt.Key.Key_R)
    assert [control(panel, "recent_rows", QListWidget).item(place).data(_ASKED) for place in (0, 1)] == [False, True]
    press(panel, Qt.Key.Key_Escape)
    ctrl(panel, Qt.Key.Key_K)
    assert "38 typed where" in seen(panel, "question")
    assert not [row for row in fired_desk.rows if row.kind is Kind.KEPT]
    ctrl(panel, Qt.Key.Key_K)
    assert [row.value for row in fired_desk.rows if row.kind is Kind.KEPT] == [str(number)]
    assert seen(panel, "question") == ""


def test_the_question_is_put_again_after_a_restart(
    fired_desk: Desk, clock: HeldClock, look: Look, qtbot: QtBot
) -> None:
    slip(fired_desk, clock)
    again = Desk(fired_desk.logbook, clock)
    stand(again)
    link = DeskLink(again)
    panel = EntryPanel(link)
    qtbot.addWidget(panel)
    panel.show()
    assert "38 typed where" in seen(panel, "question")
    link.close()


def test_undoing_a_keep_asks_again(fired_desk: Desk, panel: EntryPanel, clock: HeldClock, qtbot: QtBot) -> None:
    slip(fired_desk, clock)
    qtbot.waitUntil(lambda: "38 typed where" in seen(panel, "question"))
    click(panel, "keep")
    ctrl(panel, Qt.Key.Key_Z)
    stand(fired_desk)
    qtbot.waitUntil(lambda: "38 typed where" in seen(panel, "question"))


def test_one_press_takes_the_number_in_the_other_unit(
    fired_desk: Desk, panel: EntryPanel, clock: HeldClock, qtbot: QtBot
) -> None:
    clock.pass_minutes(2)
    fired_desk.read("155", spot="oven_centre")
    stand(fired_desk)
    qtbot.waitUntil(lambda: "155 °C meant" in seen(panel, "question"))
    assert control(panel, "other_unit", QPushButton).text() == "It was °C"
    ctrl(panel, Qt.Key.Key_O)
    assert [(row.value, row.unit) for row in fired_desk.entries if row.spot == "oven_centre"][-1] == ("155", "C")


def test_an_entry_is_kept_from_the_list(fired_desk: Desk, panel: EntryPanel, clock: HeldClock, qtbot: QtBot) -> None:
    number = slip(fired_desk, clock)
    qtbot.waitUntil(lambda: "38 typed where" in seen(panel, "question"))
    ctrl(panel, Qt.Key.Key_R)
    click(panel, "row_keep")
    assert [row.value for row in fired_desk.rows if row.kind is Kind.KEPT] == [str(number)]


# --- the list -------------------------------------------------------------------------------------------------------


def test_six_entries_are_in_reach_each_to_correct_and_to_take_back(look: Look, link: DeskLink, qtbot: QtBot) -> None:
    holder = QWidget()
    qtbot.addWidget(holder)
    holder.resize(456, 700)
    panel = EntryPanel(link, holder)
    panel.setGeometry(0, 499, 456, 201)
    holder.show()
    panel.take_focus()
    for number in range(301, 309):
        enter_number(panel, str(number))
    ctrl(panel, Qt.Key.Key_R)
    view = control(holder, "recent_rows", QListWidget)
    rows = [view.visualItemRect(view.item(place)) for place in range(6)]
    assert all(view.viewport().rect().contains(row) and row.height() >= 40 for row in rows)
    mark(holder, "recent_rows", 5)
    click(holder, "row_take_back")
    qtbot.waitUntil(lambda: len(lines(holder, "recent_rows")) == 7)
    mark(holder, "recent_rows", 4)
    click(holder, "row_correct")
    assert control(panel, "number_field", QLineEdit).text() == "304"
    assert not view.isVisible()
