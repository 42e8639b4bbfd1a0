"""In the oven: food that lies too long between 40 and 140 °F is told of, and what the height does to a bake."""

from dataclasses import replace
from datetime import timedelta

import numpy as np
import pytest
from PySide6.QtWidgets import QComboBox

from cookstove_gui.desk import Desk
from cookstove_gui.desk.my_stove.site import keep_barometer, keep_height
from cookstove_gui.gui.plan.page import PlanPage
from cookstove_gui.gui.plan.part import PlanPart
from cookstove_gui.units import kelvin
from tests.gui.hands import control, push, seen
from tests.gui.pages import NOW, held_desk, keep_session, shown
from tests.once import stood

pytestmark = [pytest.mark.gui, pytest.mark.usefixtures("worked_out_once")]


def at_heat(heat: float, height: str = "0 ft") -> Desk:
    """A desk whose oven stays at one heat [°F]."""
    desk = held_desk()
    keep_height(desk, height)
    desk.open_session(keep_session(desk, "Today", NOW - timedelta(minutes=95)))
    made = stood(desk.inputs())
    steady = np.full_like(made.projection.kelvin, kelvin(heat, "F"))
    desk.show(replace(made, projection=replace(made.projection, kelvin=steady)))
    return desk


def bake(qtbot, desk: Desk, key: str):
    page, _ = shown(qtbot, desk, PlanPage)
    push(page, "part_bake")
    box = control(page, "bake_what", QComboBox)
    box.setCurrentIndex(box.findData(key))
    box.activated.emit(box.currentIndex())
    part = control(page, "plan_bake", PlanPart)
    qtbot.waitUntil(lambda: not part.is_busy, timeout=10000)
    return page


@pytest.mark.parametrize(("heat", "told"), [(225.0, True), (375.0, False)])
def test_a_roast_that_warms_too_slowly_is_told_of(qtbot, heat, told):
    page = bake(qtbot, at_heat(heat), "chicken")
    assert ("too long" in seen(page, "bake_danger")) is told


def test_the_caution_goes_when_bread_is_asked_about(qtbot):
    page = bake(qtbot, at_heat(190.0), "bread_loaf")
    assert seen(page, "bake_danger") == ""


def test_what_the_height_does_to_a_bake_is_told_where_the_air_is_thin(qtbot):
    assert seen(bake(qtbot, at_heat(375.0), "bread_loaf"), "bake_height") == ""
    assert "Yeast dough rises faster" in seen(bake(qtbot, at_heat(375.0, "5000 ft"), "bread_loaf"), "bake_height")


def boiling_words(qtbot, page) -> str:
    push(page, "part_water")
    part = control(page, "plan_water", PlanPart)
    qtbot.waitUntil(lambda: not part.is_busy, timeout=10000)
    return seen(page, "water_boiling")


# 970 hPa boils at 98.75 °C = 209.75 °F (between the rows of 950 and 980 hPa in the references, IAPWS IF97)
def test_the_barometer_moves_the_boil_on_the_plan(qtbot):
    desk = at_heat(375.0)
    page, _ = shown(qtbot, desk, PlanPage)
    assert "212 °F" in boiling_words(qtbot, page)
    keep_barometer(desk, "970 hPa", as_at_sea=True)
    assert "210 °F" in boiling_words(qtbot, page)
