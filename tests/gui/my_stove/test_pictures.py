"""Every picture of My stove gives its numbers, lies on the clipboard and is saved where its owner says."""

import csv
from dataclasses import replace
from datetime import timedelta

import pytest
from PySide6.QtCore import QPoint, Qt
from PySide6.QtGui import QContextMenuEvent, QImage
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QFileDialog, QMenu, QWidget

from cookstove_gui.desk import Desk
from cookstove_gui.desk.my_stove.abilities import FALLS, abilities_asked, stove_abilities
from cookstove_gui.desk.my_stove.checks import add_instrument, check_picture, record_check
from cookstove_gui.desk.my_stove.first_fires import first_fires_picture
from cookstove_gui.desk.my_stove.hot_side import HotSideAsked, hot_side
from cookstove_gui.desk.my_stove.picture_values import checks_values, hills_values, hot_side_values, rises_values
from cookstove_gui.desk.studying import PastSessions
from cookstove_gui.gui.my_stove.checks import ChecksPart
from cookstove_gui.gui.my_stove.drawing import DrawingToKeep
from cookstove_gui.gui.my_stove.fire import FirePart
from cookstove_gui.gui.my_stove.first_fires import FirstFiresGuide
from cookstove_gui.gui.my_stove.hot_side import HotSidePart
from cookstove_gui.gui.my_stove.known import KnownAbilities
from cookstove_gui.gui.my_stove.rises_picture import RisesPicture
from cookstove_gui.gui.my_stove.shown_picture import ShownPicture
from cookstove_gui.stove.checks import CheckPoint
from tests.desk.my_stove.test_first_fires import KINDLING, fire
from tests.gui.hands import control, ctrl, push
from tests.gui.pages import NOW, held_desk, keep_session, shown

pytestmark = pytest.mark.gui


@pytest.fixture
def desk() -> Desk:
    made = held_desk()
    made.choose_band("slow")
    for day in (9, 6, 3):
        keep_session(made, f"Day {day}", NOW - timedelta(days=day))
    return made


@pytest.fixture
def offered(monkeypatch) -> list[str]:
    """What the menus that were opened offered."""
    found: list[str] = []

    def opened(menu, _at):
        found.extend(action.text() for action in menu.actions() if action.text())
        menu.close()

    monkeypatch.setattr(QMenu, "popup", opened)
    return found


def _cells(text: str) -> list[list[str]]:
    return list(csv.reader(text.splitlines(), delimiter="\t"))


def _hot_side(qtbot, desk):
    past = PastSessions(desk)

    def make(link, look):
        known = KnownAbilities(link, past, link)
        part = HotSidePart(link, look, past, known)
        known.show(stove_abilities(abilities_asked(desk, FALLS[1]), past))
        part._take(hot_side(HotSideAsked(stove=desk.stove), past))
        return part

    return shown(qtbot, desk, make)[0]


def test_rises_are_listed_reading_by_reading_as_they_were_typed(desk):
    found = stove_abilities(abilities_asked(desk, FALLS[1]), PastSessions(desk))
    heads, *rows = _cells(rises_values(found.rises, "F"))
    assert heads == ["day", "minutes since lit", "oven °F"]
    assert [row[0] for row in rows[::7]] == ["2026-03-05", "2026-03-08", "2026-03-11"]
    assert [(row[1], row[2]) for row in rows[:3]] == [("5.0", "80"), ("19.0", "125"), ("33.0", "170")]


def test_the_hot_side_is_listed_spot_by_spot(desk):
    found = hot_side(HotSideAsked(stove=desk.stove), PastSessions(desk))
    rows = {row[0]: row[1:] for row in _cells(hot_side_values(found, "F"))[1:]}
    left, right = (float(rows[f"top_front_{side}"][0]) for side in ("left", "right"))
    assert left - right == pytest.approx(60.0, abs=8.0)  # typed 30 °F either side of the middle
    assert float(rows["top_front_left"][1]) < left < float(rows["top_front_left"][2])
    assert rows["top_front_left"][3] == "21"
    assert rows["oven_left"] == ["", "", "", "0"]


def test_checks_and_first_fires_are_listed(desk):
    add_instrument(desk, "oven dial", "oven thermometer")
    record_check(desk, "oven dial", CheckPoint.ICE, "35")
    picture = check_picture(desk, "oven dial")
    assert _cells(checks_values(picture, "F"))[1:] == [["2026-03-14", "32", "3.0"]]
    fresh = held_desk()
    fresh.save_stove(replace(fresh.stove, is_new=True))
    fire(fresh, NOW - timedelta(hours=30), KINDLING)
    heads, *rows = _cells(hills_values(first_fires_picture(fresh), "F"))
    assert heads[0] == "first fire"
    assert [row[3] for row in rows] == ["200", "352", "300", "150"]


def test_the_hot_side_is_copied_by_its_key_by_keyboard_and_by_menu(qtbot, desk, offered):
    part = _hot_side(qtbot, desk)
    push(part, "hot_side_more")
    assert offered[:2] == ["Copy the picture of “Hot side”", "Copy the values of “Hot side”"]
    assert "Save the picture of “Rises” …" in offered
    drawing = control(part, "hot_side_drawing", DrawingToKeep)
    drawing.patch("top_front_left").setFocus()
    ctrl(part, Qt.Key.Key_C)
    assert QApplication.clipboard().text().startswith("spot\thotter by °F")
    drawing.copy_picture()
    assert QApplication.clipboard().image().size() == drawing.grab().toImage().size()


def test_a_picture_is_saved_where_the_owner_says(qtbot, desk, tmp_path, monkeypatch):
    part = _hot_side(qtbot, desk)
    offered = []

    def chosen(_parent, _title, name, _kinds):
        offered.append(name)
        return str(tmp_path / "mine"), ""

    monkeypatch.setattr(QFileDialog, "getSaveFileName", chosen)
    rises = control(part, "rises", RisesPicture)
    rises.setFocus()
    QTest.keyClick(rises, Qt.Key.Key_S, Qt.KeyboardModifier.ControlModifier)
    assert offered == ["rises.png"]
    assert QImage(str(tmp_path / "mine.png")).size() == rises.grab().toImage().size()


def test_the_firings_behind_a_figure_are_copied_as_they_are_listed(qtbot, desk, offered):
    def make(link, look):
        known = KnownAbilities(link, PastSessions(desk), link)
        part = FirePart(link, look, known)
        known.show(stove_abilities(abilities_asked(desk, FALLS[1]), PastSessions(desk)))
        return part

    part, _ = shown(qtbot, desk, make)
    part.open_figure("hottest_oven:")
    push(part, "fire_more")
    assert "Copy the values of “Firings”" in offered
    control(part, "shown_picture", ShownPicture).copy_values()
    heads, *rows = _cells(QApplication.clipboard().text())
    assert heads == ["Firing", "Shown", "Wood", "Outdoors"]
    assert [row[1] for row in rows] == ["350 °F"] * 3  # 80 + 45 * 6


def test_first_fires_and_checks_offer_their_pictures(qtbot, desk, offered):
    desk.save_stove(replace(desk.stove, is_new=True))
    add_instrument(desk, "oven dial", "oven thermometer")
    for part, name in ((FirstFiresGuide, "first_fires_more"), (ChecksPart, "checks_more")):
        push(shown(qtbot, desk, part)[0], name)
    assert {"Copy the values of “First fires”", "Copy the values of “Checks”"} < set(offered)


def test_the_right_button_offers_what_the_key_offers(qtbot, desk, offered):
    part = _hot_side(qtbot, desk)
    for picture in (control(part, "rises", QWidget), control(part, "spot_top_front_left", QWidget)):
        offered.clear()
        QApplication.sendEvent(picture, QContextMenuEvent(QContextMenuEvent.Reason.Mouse, QPoint(5, 5), QPoint(5, 5)))
        assert offered == ["Copy the picture", "Copy the values", "Save the picture …"]
