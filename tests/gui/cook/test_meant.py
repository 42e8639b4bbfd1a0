"""A reading by an infrared thermometer set wrong shows what was typed beside what it means; a shiny cooktop is told.

What it shows is checked against the band radiance after Planck (8 to 14 µm), by the infrared rows of the references.
"""

from dataclasses import replace

import pytest
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QComboBox, QListWidget, QWidget
from pytestqt.qtbot import QtBot

from cookstove_gui.cooking.instruments.meant_rows import meant_kelvin
from cookstove_gui.desk import Desk
from cookstove_gui.gui.cook.recent_rows import RecentRows
from cookstove_gui.gui.desk_link import DeskLink
from cookstove_gui.gui.drawn_stove.spot_patch import SpotPatch
from cookstove_gui.gui.drawn_stove.stove_drawing import StoveDrawing
from cookstove_gui.gui.frame.caution_strip import CautionStrip
from cookstove_gui.gui.my_stove.page import MyStovePage
from cookstove_gui.gui.widgets.look import Look
from cookstove_gui.phrases.heading import question_about
from cookstove_gui.physics.infrared import shown_temperature
from cookstove_gui.stove.stove import unchecked
from cookstove_gui.units import degrees, kelvin
from tests.gui.hands import control, lines, push, seen
from tests.gui.pages import held_desk, shown
from tests.once import stood


def set_wrong(desk: Desk) -> None:
    """An infrared thermometer set to 0.70 over a painted cooktop."""
    gun = replace(unchecked("gun", "infrared"), emissivity=0.70)
    desk.save_stove(replace(desk.stove, instruments=(gun,), cooktop_surface="stove paint"))


def shown_for(fahrenheit: float) -> float:
    """What that thermometer shows of such a surface, in °F."""
    return float(degrees(shown_temperature(kelvin(fahrenheit, "F"), 0.94, 0.70, 293.15), "F"))


def test_the_list_shows_what_was_typed_and_what_it_means(desk: Desk, link: DeskLink, qtbot: QtBot) -> None:
    set_wrong(desk)
    holder = QWidget()
    qtbot.addWidget(holder)
    rows = RecentRows(link, holder)
    typed = f"{shown_for(400.0):.0f}"
    desk.read(typed, spot="top_front_left")
    desk.read("380", spot="oven_centre")
    holder.show()
    rows.open()
    newest, first = lines(holder, "recent_rows")
    assert newest == "oven centre 380 °F"
    assert first == f"front left typed {typed}, meant 400"
    assert "set to 0.70, stove paint is about 0.94" in control(holder, "recent_rows", QListWidget).item(1).toolTip()


def test_the_plan_says_it_at_the_patch(desk: Desk, link: DeskLink, look: Look, qtbot: QtBot) -> None:
    set_wrong(desk)
    plan = StoveDrawing(link, look)
    qtbot.addWidget(plan)
    plan.resize(448, 300)
    plan.show()
    typed = f"{shown_for(400.0):.0f}"
    desk.read(typed, spot="top_front_left")
    patch = control(plan, "spot_top_front_left", SpotPatch)
    qtbot.waitUntil(lambda: f"typed {typed}, meant 400" in patch.toolTip())
    assert f"typed {typed}, meant 400" in patch.accessibleName()
    assert (patch.face.number, patch.face.captions) == (f"{typed}*", ("= 400",))


def test_a_reading_that_means_what_was_typed_says_no_more(fired_desk: Desk) -> None:
    assert all(meant_kelvin(fired_desk.stove, row) is None for row in fired_desk.entries)


def test_a_shiny_cooktop_is_told_when_it_is_chosen(qtbot: QtBot) -> None:
    desk = held_desk()
    page, _ = shown(qtbot, desk, MyStovePage)
    push(page, "part_setup")
    assert seen(page, "surface_warning") == ""
    box = control(page, "cooktop_surface", QComboBox)
    box.setFocus()
    QTest.keyClicks(box, "polished")
    box.activated.emit(box.currentIndex())
    assert desk.stove.cooktop_surface == "polished cast iron"
    assert "blacken or tape a spot" in seen(page, "surface_warning")


@pytest.mark.parametrize(("surface", "told"), [("polished cast iron", True), ("stove paint", False)])
def test_a_shiny_cooktop_is_told_on_the_cook_page_when_it_is_first_read(
    desk: Desk, link: DeskLink, look: Look, qtbot: QtBot, surface: str, told: bool
) -> None:
    desk.save_stove(replace(desk.stove, cooktop_surface=surface))
    desk.read("300", spot="top_front_left")
    assert desk.show(stood(desk.inputs()))
    assert desk.standing is not None
    strip = CautionStrip(link, look)
    qtbot.addWidget(strip)
    assert ("shiny_cooktop" in {caution.key for caution in desk.standing.cautions}) is told
    assert strip.isHidden() is not bool(desk.standing.cautions)


def test_the_question_about_a_slip_tells_the_number_that_was_typed(fired_desk: Desk) -> None:
    set_wrong(fired_desk)
    fired_desk.read("900", spot="top_front_left")
    standing = stood(fired_desk.inputs())
    meant = meant_kelvin(fired_desk.stove, fired_desk.entries[-1])
    assert meant is not None
    asked = question_about(standing, fired_desk.entries[-1].number, fired_desk.edge)
    assert f"900 typed, meant {degrees(meant, 'F'):.0f}, where about" in asked
