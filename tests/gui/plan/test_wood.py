"""Wood on the Plan page, which answers without a fire too."""

import pytest
from PySide6.QtWidgets import QComboBox, QLabel

from cookstove_gui.desk import Desk
from cookstove_gui.gui.plan.page import PlanPage
from cookstove_gui.gui.plan.part import PlanPart
from tests.gui.hands import control, push, seen, type_in
from tests.gui.pages import held_desk, shown

pytestmark = [pytest.mark.gui, pytest.mark.usefixtures("worked_out_once")]


@pytest.fixture
def desk() -> Desk:
    return held_desk()


@pytest.fixture
def page(qtbot, desk):
    made, _ = shown(qtbot, desk, PlanPage)
    return made


def settle(qtbot, page, name: str) -> None:
    part = control(page, name, PlanPart)
    qtbot.waitUntil(lambda: not part.is_busy, timeout=10000)


def wood(qtbot, page) -> str:
    settle(qtbot, page, "plan_wood")
    return seen(page, "plan_wood_headline")


def test_wood_is_told_in_pounds_and_splits_with_a_range(qtbot, page):
    push(page, "part_wood")
    headline = wood(qtbot, page)
    assert "lb of wood" in headline
    assert "splits" in headline
    assert "common practice" in control(page, "wood_spans", QLabel).accessibleName()


def test_wood_is_told_in_kilograms_where_celsius_is_shown(qtbot, desk, page):
    push(page, "part_wood")
    desk.set_unit("C")
    qtbot.waitUntil(lambda: "kg of wood" in seen(page, "plan_wood_headline"), timeout=5000)


def test_a_longer_bake_takes_more_wood(qtbot, page):
    push(page, "part_wood")
    part = control(page, "plan_wood", PlanPart)
    settle(qtbot, page, "plan_wood")
    short = part.work_out(part.inputs()).mass.p50
    type_in(page, "wood_minutes", "240")
    settle(qtbot, page, "plan_wood")
    assert part.work_out(part.inputs()).mass.p50 > 1.5 * short


def test_wide_open_air_burns_a_load_quicker(qtbot, page):
    push(page, "part_wood")
    part = control(page, "plan_wood", PlanPart)
    box = control(page, "wood_air", QComboBox)
    minutes = {}
    for key in ("0", "1"):
        box.setCurrentIndex(box.findData(key))
        minutes[key] = part.work_out(part.inputs()).load.to_coals_min.p50
    assert minutes["1"] < minutes["0"]


@pytest.mark.parametrize(
    ("field", "typed", "said"),
    [
        ("wood_minutes", "9999", "longer than a day"),
        ("wood_split", "none", "is not a weight"),
        ("wood_thickness", "40", "plausible split thickness"),
    ],
)
def test_bad_input_gets_its_sentence_beside_the_field(qtbot, page, field, typed, said):
    push(page, "part_wood")
    type_in(page, field, typed)
    assert said in seen(page, f"{field}_problem")
    settle(qtbot, page, "plan_wood")
