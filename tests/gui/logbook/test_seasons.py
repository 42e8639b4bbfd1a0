"""The part Seasons: a winter's figures and pictures, each of which can be copied; a day opens its session."""

from datetime import timedelta

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QComboBox

from cookstove_gui.gui.background.past_study import PastStudy
from cookstove_gui.gui.logbook.hours_picture import HoursPicture
from cookstove_gui.gui.logbook.page import LogbookPage
from cookstove_gui.gui.logbook.seasons import SeasonsPart
from cookstove_gui.gui.logbook.session_list import SessionList
from tests.gui.hands import control, push, seen
from tests.gui.pages import NOW, held_desk, keep_session, shown

pytestmark = pytest.mark.gui


@pytest.fixture
def page(qtbot):
    desk = held_desk()
    for days in (3, 6, 40, 400):
        keep_session(desk, f"{days} days ago", NOW - timedelta(days=days))
    made, link = shown(qtbot, desk, LogbookPage)
    PastStudy.of(link).cancel()
    push(made, "part_seasons")
    qtbot.waitUntil(lambda: seen(made, "season_sentence").startswith("3 fires"), timeout=20000)
    return made


def test_the_latest_winter_is_told_and_drawn(page):
    assert seen(page, "season_sentence") == "3 fires, 5 hours lit, about 42 lb of wood."
    assert control(page, "season_which", QComboBox).currentText() == "Winter 2025–26"
    assert set(control(page, "seasons_part", SeasonsPart).pictures()) == {"Hours lit", "Wood", "Oven heats"}


def test_all_years_and_an_earlier_winter_are_chosen(qtbot, page):
    which = control(page, "season_which", QComboBox)
    for place, said in ((2, "4 fires"), (1, "1 fire")):
        which.setCurrentIndex(place)
        which.activated.emit(place)
        qtbot.waitUntil(lambda said=said: seen(page, "season_sentence").startswith(said), timeout=20000)


def test_every_picture_gives_its_values(page):
    for name, picture in control(page, "seasons_part", SeasonsPart).pictures().items():
        picture.copy_values()
        lines = QApplication.clipboard().text().splitlines()
        assert len(lines) > 1, name
        assert all("\t" in line for line in lines), name


def test_a_day_opens_its_session(page):
    hours = control(page, "hours_picture", HoursPicture)
    hours.setFocus()
    QTest.keyClick(hours, Qt.Key.Key_Left)
    QTest.keyClick(hours, Qt.Key.Key_Left)
    assert "Sunday 8 March 2026: 1 fire" in hours.accessibleDescription()
    QTest.keyClick(hours, Qt.Key.Key_Return)
    sessions = control(page, "session_list", SessionList)
    assert sessions.isVisibleTo(page)
    assert sessions.card.summary.title == "6 days ago"


def test_without_a_session_the_page_says_so(qtbot):
    made, _ = shown(qtbot, held_desk(), LogbookPage)
    push(made, "part_seasons")
    assert seen(made, "season_sentence").startswith("No session yet")
    assert control(made, "seasons_part", SeasonsPart).pictures() == {}


def test_the_cautions_of_a_winter_are_counted_when_asked(qtbot, page):
    assert "3 sessions" in seen(page, "cautions_words")
    push(page, "cautions_count")
    qtbot.waitUntil(lambda: seen(page, "cautions_words").startswith("In "), timeout=20000)
