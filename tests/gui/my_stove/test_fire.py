"""The figures of a stove on the screen: walked by the arrows, each with its firings, a firing opening its session."""

import itertools
from datetime import timedelta

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QComboBox, QScrollArea, QTableView, QWidget

from cookstove_gui.desk import Desk
from cookstove_gui.desk.my_stove.abilities import FALLS, abilities_asked, stove_abilities
from cookstove_gui.desk.studying import PastSessions
from cookstove_gui.gui.my_stove.ability_list import AbilityList, AbilityRow
from cookstove_gui.gui.my_stove.fire import FirePart
from cookstove_gui.gui.my_stove.known import KnownAbilities
from cookstove_gui.gui.my_stove.shown_picture import ShownPicture
from cookstove_gui.gui.my_stove.shown_scale import ticks
from cookstove_gui.gui.widgets.form import Answer
from tests.gui.hands import control, press, rows, seen
from tests.gui.pages import NOW, held_desk, keep_session, shown

pytestmark = pytest.mark.gui


@pytest.fixture
def desk() -> Desk:
    made = held_desk()
    made.choose_band("slow")
    return made


def _part(qtbot, desk, fall=FALLS[1]):
    """The part with what is known, without the thread that would have searched for it."""

    def make(link, look):
        known = KnownAbilities(link, PastSessions(desk), link)
        part = FirePart(link, look, known)
        known.show(stove_abilities(abilities_asked(desk, fall), PastSessions(desk)))
        return part

    return shown(qtbot, desk, make)


def _figures(part):
    return {row.key: row for row in control(part, "abilities", AbilityList).findChildren(AbilityRow)}


def test_above_the_answer_the_figures_show_as_many_rows_in_larger_text(qtbot, desk, look):
    part, _ = _part(qtbot, desk)
    area, row = control(part, "abilities_area", QScrollArea), next(iter(_figures(part).values()))
    before = area.minimumHeight() / row.sizeHint().height()
    look.set_text_size(1.5)
    assert area.minimumHeight() / row.sizeHint().height() == pytest.approx(before, rel=0.05)


def test_a_figure_lists_its_firings_and_enter_on_one_opens_its_session(qtbot, desk):
    numbers = [keep_session(desk, f"Day {day}", NOW - timedelta(days=day)) for day in (9, 6, 3)]
    part, link = _part(qtbot, desk)
    # 45 °F in 14 minutes from 80 °F at 5 minutes: 250 °F after 5 + 14 * 170 / 45 = 57.9 minutes.
    assert control(part, "figure_sentence", Answer).accessibleName() == "Cold to slow heat: 58 min."
    assert seen(part, "figure_range") == "3 firings"
    assert [row[1] for row in rows(part, "firings")] == ["58 min"] * 3
    assert control(part, "fire_rises", QWidget).accessibleName().endswith("3 rises")
    firings = control(part, "firings", QTableView)
    with qtbot.waitSignal(link.session_wanted) as asked:
        firings.activated.emit(firings.model().index(0, 0))
    assert asked.args == [numbers[-1]]


def test_the_arrows_walk_the_figures_and_a_shut_down_load_says_who_decides(qtbot, desk):
    part, _ = _part(qtbot, desk)
    figures = list(_figures(part).values())
    figures[0].setFocus()
    press(part, Qt.Key.Key_Down)
    press(part, Qt.Key.Key_Return)
    assert figures[1].isChecked()
    assert seen(part, "fire_caution") == ""
    _figures(part)["burn:"].click()
    assert "decide" in seen(part, "fire_caution")
    assert seen(part, "firings_open") == ""


def test_another_fall_is_asked_for(qtbot, desk):
    part, _ = _part(qtbot, desk)
    assert _figures(part)["burn:"].accessibleName().startswith("shut down, until 50 °F down")
    _figures(part)["burn:"].click()
    box = control(part, "fire_fall", QComboBox)
    box.activated.emit(box.count() - 1)
    qtbot.waitUntil(lambda: _figures(part)["burn:"].accessibleName().startswith("shut down, until 150 °F down"))


def test_the_firings_are_drawn_and_a_click_on_one_opens_it(qtbot, desk):
    numbers = [keep_session(desk, f"Day {day}", NOW - timedelta(days=day)) for day in (9, 6, 3)]
    part, link = _part(qtbot, desk)
    _figures(part)["hottest_top:"].click()
    picture = control(part, "shown_picture", ShownPicture)
    assert picture.isVisibleTo(part)
    assert picture.accessibleName().startswith("3 firings: ")
    assert not picture.grab().isNull()
    assert [session for _, session in sorted((picture.place(one).x(), one.session) for one in picture.marks)] == numbers
    with qtbot.waitSignal(link.session_wanted) as asked:
        QTest.mouseClick(picture, Qt.MouseButton.LeftButton, pos=picture.place(picture.marks[0]).toPoint())
    assert asked.args == [numbers[0]]


@pytest.mark.parametrize(("low", "high"), [(58.0, 58.0), (82.0, 115.0), (3.0, 161.0), (0.4, 0.9), (-7.0, 24.0)])
def test_ticks_enclose_what_is_shown_and_are_few(low, high):
    found = ticks(low, high, (1, 2, 5, 10, 15, 30, 60, 120))
    assert found[0] <= low
    assert found[-1] >= high
    assert 2 <= len(found) <= 6
    assert len({round(after - before, 9) for before, after in itertools.pairwise(found)}) == 1
