"""The part Sessions: cards fill in, one is opened, its rows are corrected there, sessions go to the bin and back."""

from dataclasses import replace
from datetime import timedelta

import numpy as np
import pytest
from PySide6.QtCore import QRectF, Qt
from PySide6.QtGui import QPainter, QPixmap
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QLineEdit, QMenu, QMessageBox, QPushButton

from cookstove_gui.desk import Changed, Desk
from cookstove_gui.forecast.answers import Quantiles, RecordRow
from cookstove_gui.gui.background.job import Job
from cookstove_gui.gui.background.past_study import PastStudy
from cookstove_gui.gui.logbook import oven_picture
from cookstove_gui.gui.logbook.compare import CompareView
from cookstove_gui.gui.logbook.compare_picture import ComparePicture
from cookstove_gui.gui.logbook.difference_table import DifferenceTable
from cookstove_gui.gui.logbook.opened_session import OpenedSession
from cookstove_gui.gui.logbook.oven_picture import OvenPicture
from cookstove_gui.gui.logbook.page import LogbookPage
from cookstove_gui.gui.logbook.session_list import SessionList
from cookstove_gui.gui.widgets.one_line import OneLine
from cookstove_gui.gui.widgets.steps import px
from cookstove_gui.phrases.edge import heat_name
from cookstove_gui.phrases.logbook.sessions import came_words, foretold_words
from cookstove_gui.stove.entries import HeatBand, fold
from cookstove_gui.units import kelvin
from tests.gui.hands import control, ctrl, lines, mark, press, push, rows, seen, type_in
from tests.gui.pages import NOW, held_desk, keep_session, shown, the_look

pytestmark = [pytest.mark.gui, pytest.mark.usefixtures("worked_out_once")]


@pytest.fixture
def desk() -> Desk:
    made = held_desk()
    keep_session(made, "Sunday bread", NOW - timedelta(days=9))
    keep_session(made, "Jam", NOW - timedelta(days=2))
    return made


@pytest.fixture
def page(qtbot, desk):
    made, link = shown(qtbot, desk, LogbookPage)
    PastStudy.of(link).cancel()  # not what is looked at here
    settled(qtbot, made)
    return made


def settled(qtbot, page) -> None:
    qtbot.waitUntil(lambda: not any(job.is_busy for job in page.findChildren(Job)), timeout=20000)


def listed(page) -> list[str]:
    return [text.split("\n")[0] for text in lines(page, "session_list")]


def choose(page, words: str) -> None:
    session = control(page, "opened_session", OpenedSession)
    dict(session.ways(control(page, "session_list", SessionList).card))[words]()
    QApplication.processEvents()


def test_each_card_says_what_came_of_it(page):
    assert lines(page, "session_list")[0] == "Jam\nThu 12 Mar, 350 °F after 1 h 29"


def test_the_opened_session_is_drawn_and_read_out(page):
    picture = control(page, "oven_picture", OvenPicture)
    assert picture.isVisibleTo(page)
    assert picture.accessibleName() == "Oven in Jam: 350 °F after 1 h 29"
    picture.copy_values()
    assert QApplication.clipboard().text().startswith("clock\tp10 °F")


def test_what_was_foretold_stands_below_a_curve_that_would_cross_its_words(qtbot, page, monkeypatch):
    settled(qtbot, page)
    picture = control(page, "oven_picture", OvenPicture)
    found = picture._found
    row = RecordRow(
        session="x", made_at=found.began, offset_minutes=0, band=found.band,
        enters_min=Quantiles(p10=10.0, p50=20.0, p90=30.0), likely_min=20.0, came_true_min=20.0,
    )  # fmt: skip
    drawn: dict[str, float] = {}
    monkeypatch.setattr(
        oven_picture, "draw_words", lambda _painter, box, words, *_a, **_k: drawn.update({words: box.top()})
    )

    def top(above: float) -> float:
        flat = np.full_like(found.low, found.band.low + above)
        heats = replace(found, low=flat, middle=flat, high=flat, readings=(), foretold=row)
        picture.show_session(heats, "F", "said")
        picture.grab()
        return drawn[foretold_words(row)[0]]

    assert top(above=-30.0) > top(above=10.0) + px(20)


def test_words_keep_apart_and_whole_where_the_picture_is_at_its_lowest(qtbot, page, monkeypatch):
    settled(qtbot, page)
    picture = control(page, "oven_picture", OvenPicture)
    found = picture._found
    slow = HeatBand(name="slow", low=kelvin(250, "F"), high=kelvin(300, "F"))
    row = RecordRow(
        session="x", made_at=found.began, offset_minutes=0, band=slow,
        enters_min=Quantiles(p10=10.0, p50=20.0, p90=30.0), likely_min=20.0, came_true_min=25.0,
    )  # fmt: skip
    drawn: dict[str, QRectF] = {}
    monkeypatch.setattr(
        oven_picture, "draw_words", lambda _painter, box, words, *_a, **_k: drawn.update({words: QRectF(box)})
    )
    picture.resize(picture.width(), picture.minimumSizeHint().height())
    picture.show_session(replace(found, foretold=row), "F", "said")
    picture.grab()
    assert set(foretold_words(row)) <= set(drawn)
    assert not drawn[heat_name(found.band)].intersects(drawn[came_words(row)])


def test_another_one_is_drawn_when_it_is_chosen(qtbot, page):
    mark(page, "session_list", 1)
    settled(qtbot, page)
    assert "Sunday bread" in control(page, "oven_picture", OvenPicture).accessibleName()


def test_what_was_asked_above_is_said_only_until_it_is_answered(qtbot, page, desk, monkeypatch):
    monkeypatch.setattr(type(desk), "warm_start", object())
    push(page, "session_new")
    assert "say above" in seen(page, "session_told")
    monkeypatch.setattr(type(desk), "warm_start", None)
    desk.announce(Changed(session=True))
    qtbot.waitUntil(lambda: not seen(page, "session_told"), timeout=5000)


def test_an_entry_is_corrected_where_it_stands(qtbot, page, desk):
    facts = control(page, "session_facts", OneLine).rungs[0]
    push(page, "session_rows")
    place = next(at for at, row in enumerate(rows(page, "entries_table")) if row[1] == "oven centre 350 °F")
    mark(page, "entries_table", place)
    type_in(page, "entry_text", "358")
    qtbot.waitUntil(lambda: "oven centre 358 °F" in [row[1] for row in rows(page, "entries_table")], timeout=5000)
    number = control(page, "session_list", SessionList).card.number
    assert "358" in [row.value for row in fold(desk.logbook.session(number).entries)]
    assert control(page, "entry_text", QLineEdit).text() == "358"  # the corrected one is still marked
    assert control(page, "session_facts", OneLine).rungs[0] == facts  # as long and as many entries as before
    push(page, "entry_undo")
    qtbot.waitUntil(lambda: "oven centre 350 °F" in [row[1] for row in rows(page, "entries_table")], timeout=5000)


def test_a_correction_that_means_nothing_is_explained(page):
    push(page, "session_rows")
    mark(page, "entries_table", 1)
    type_in(page, "entry_text", "hot")
    assert "is not a temperature" in seen(page, "entries_problem")


def test_a_session_is_split_at_an_entry_and_joined_again(qtbot, page, desk):
    before = desk.logbook.session(control(page, "session_list", SessionList).card.number)
    push(page, "session_rows")
    mark(page, "entries_table", 30)
    push(page, "entry_split")
    qtbot.waitUntil(lambda: sorted(listed(page)) == ["Jam", "Jam 2", "Sunday bread"], timeout=5000)
    sessions = control(page, "session_list", SessionList)
    for place in (0, 1):
        mark(page, "session_list", place)
        QTest.keyClick(sessions, Qt.Key.Key_Space)
    choose(page, "Join the marked sessions")
    qtbot.waitUntil(lambda: listed(page) == ["Jam", "Sunday bread"], timeout=5000)
    assert desk.logbook.session(sessions.card.number).entries == before.entries


def test_joining_needs_two_marked(page):
    choose(page, "Join the marked sessions")
    assert "Mark two" in seen(page, "session_told")


def test_a_deleted_session_lies_in_the_bin_and_comes_back(qtbot, page):
    assert not control(page, "session_bin", QPushButton).isVisibleTo(page)
    choose(page, "Delete")
    qtbot.waitUntil(lambda: listed(page) == ["Sunday bread"], timeout=5000)
    assert "is in the bin" in seen(page, "session_told")
    push(page, "session_bin")
    qtbot.waitUntil(lambda: listed(page) == ["Jam"], timeout=5000)
    push(page, "session_return")
    qtbot.waitUntil(lambda: listed(page) == ["Jam", "Sunday bread"], timeout=5000)
    assert not seen(page, "session_told")  # it is in the bin no more


def test_the_bin_is_emptied_only_after_a_yes(qtbot, page, desk):
    choose(page, "Delete")
    qtbot.waitUntil(lambda: listed(page) == ["Sunday bread"], timeout=5000)
    push(page, "session_bin")
    qtbot.waitUntil(lambda: listed(page) == ["Jam"], timeout=5000)
    for answer, left in ((QMessageBox.StandardButton.Cancel, 1), (QMessageBox.StandardButton.Yes, 0)):
        push(page, "bin_empty")
        (asked,) = [one for one in page.findChildren(QMessageBox) if one.isVisible()]
        asked.button(answer).click()
        QApplication.processEvents()
        assert len(desk.logbook.keeping.binned(desk.stove.name)) == left
    qtbot.waitUntil(lambda: listed(page) == ["Sunday bread"], timeout=5000)


def test_tags_are_kept_and_shown(qtbot, page, desk):
    push(page, "session_rename")
    type_in(page, "session_tags", "quince, autumn")
    qtbot.waitUntil(lambda: "autumn, quince" in lines(page, "session_list")[0], timeout=5000)


def test_what_was_searched_for_is_said_under_the_list(qtbot, page):
    type_in(page, "session_find", "350")
    settled(qtbot, page)
    assert seen(page, "session_count") == "2 of 2 sessions: oven at 350 °F or more"
    type_in(page, "session_find", "351")
    assert listed(page) == []
    assert control(page, "session_facts", OneLine).rungs[0].startswith("No session has all of these words")


def test_any_number_is_marked(page, desk):
    sessions = control(page, "session_list", SessionList)
    sessions.setFocus()
    press(page, Qt.Key.Key_Down)
    first = sessions.card.number
    ctrl(page, Qt.Key.Key_A)
    assert sessions.marked_numbers[0] == first  # the chosen one is what the others are compared with
    assert set(sessions.marked_numbers) == {card.number for card in sessions.cards}
    ctrl(page, Qt.Key.Key_A)
    assert sessions.marked_numbers == ()


def test_marked_sessions_are_compared_from_the_match_and_by_the_clock(qtbot, page):
    sessions = control(page, "session_list", SessionList)
    push(page, "session_beside")
    assert "Mark two" in seen(page, "session_told")
    for place in (0, 1):
        mark(page, "session_list", place)
        QTest.keyClick(sessions, Qt.Key.Key_Space)
    push(page, "session_beside")
    assert seen(page, "compare_sentence") == "None of them rose from cold to bread heat."
    assert seen(page, "compare_behind").startswith("Both from the match.")
    table = control(page, "difference_table", DifferenceTable)
    assert table.rows()[-1] == ("left over right", "60 °F", "same")
    push(page, "compare_from_clock")
    assert seen(page, "compare_behind").startswith("Both by the clock.")
    offered = QMenu(page)
    control(page, "compare_picture", ComparePicture).add_ways_out(offered, "Curves")
    assert control(page, "compare_more", QPushButton).isVisibleTo(page)
    next(act for act in offered.actions() if act.text() == "Copy the values of “Curves”").trigger()
    assert len(QApplication.clipboard().text().splitlines()) == 1 + 2 * 7
    QTest.keyClick(control(page, "compare_view", CompareView), Qt.Key.Key_Escape)
    assert sessions.isVisibleTo(page)


@pytest.mark.parametrize(("wide", "share"), [(700, 1.0), (420, 0.62), (370, 0.4), (300, 0.0)])
def test_the_curve_gives_way_before_a_title_is_cut(page, wide, share):
    view = control(page, "session_list", SessionList)
    card = replace(view.cards[0], summary=replace(view.cards[0].summary, title="A loaf of rye and caraway"))
    assert view.itemDelegate()._curve_width(card, px(wide)) == px(160 * share)


def test_a_long_line_takes_no_curve_from_its_session(page):
    view = control(page, "session_list", SessionList)
    card = replace(view.cards[0], line="bread heat after 2 h 45")
    assert view.itemDelegate()._curve_width(card, px(310)) > 0
    card = replace(card, line=5 * card.line)
    assert view.itemDelegate()._curve_width(card, px(310)) == 0


def test_at_large_text_every_word_of_a_session_is_there(page, qapp):
    look, view = the_look(qapp), control(page, "session_list", SessionList)
    look.set_text_size(1.5)
    view.resize(330, 300)
    card = replace(view.cards[0], line="bread heat after 2 h 45", is_live=True)
    told = []
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(QPainter, "drawText", lambda _painter, _at, words: told.append(words))
        canvas = QPixmap(330, 90)
        painter = QPainter(canvas)
        view.itemDelegate()._paint_words(painter, card, QRectF(0, 0, 320, px(73)))
        painter.end()
    assert told == [card.day, "Jam", "bread heat after 2 h 45"]
