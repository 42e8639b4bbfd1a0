"""Flue and draught, touch and walls: real fields by keys, answers that follow the log, cautions that always stand."""

import re

import pytest
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QComboBox, QLabel, QLineEdit
from pytestqt.qtbot import QtBot

from cookstove_gui.desk import Desk
from cookstove_gui.desk.my_stove import chimney as chimney_here
from cookstove_gui.desk.my_stove.surroundings import side_material
from cookstove_gui.gui.my_stove.page import MyStovePage
from cookstove_gui.gui.widgets.signs import Sign
from cookstove_gui.phrases.my_stove.surroundings import NO_HEAT, NO_WALL
from cookstove_gui.stove.stove import FlueReading
from tests.gui.hands import control, push, seen, type_in
from tests.gui.pages import held_desk, shown
from tests.once import stood


@pytest.fixture
def stood_page(qtbot: QtBot, stood_desk: Desk) -> MyStovePage:
    made, _ = shown(qtbot, stood_desk, MyStovePage)
    assert isinstance(made, MyStovePage)
    return made


@pytest.fixture
def cold_page(qtbot: QtBot) -> tuple[MyStovePage, Desk]:
    desk = held_desk()
    made, _ = shown(qtbot, desk, MyStovePage)
    assert isinstance(made, MyStovePage)
    return made, desk


def pascals(page: MyStovePage) -> float:
    shown_number = re.search(r"about (\d+) Pa", seen(page, "flue_draught"))
    assert shown_number is not None
    return float(shown_number[1])


def test_a_taller_chimney_typed_draws_more(stood_page: MyStovePage, stood_desk: Desk) -> None:
    push(stood_page, "part_flue")
    type_in(stood_page, "chimney_height", "12")
    low = pascals(stood_page)
    type_in(stood_page, "chimney_height", "30")
    assert pascals(stood_page) > 1.5 * low
    assert chimney_here.chimney_here(stood_desk).chimney.height == pytest.approx(9.144)


def test_a_warm_day_and_a_cold_flue_warn_of_smoke(cold_page: tuple[MyStovePage, Desk]) -> None:
    page, _desk = cold_page
    push(page, "part_flue")
    assert seen(page, "flue_caution") == "" or "warm the flue" in seen(page, "flue_caution")
    type_in(page, "outdoors", "90")
    assert "the wrong way" in seen(page, "flue_draught")
    assert "smoke comes into the room" in seen(page, "flue_caution")
    assert "licensed sweep" in seen(page, "flue_caution")
    assert seen(page, "flue_decides") == ""  # said once


def test_what_is_no_chimney_stays_typed_with_its_sentence(cold_page: tuple[MyStovePage, Desk]) -> None:
    page, _desk = cold_page
    push(page, "part_flue")
    type_in(page, "chimney_height", "400")
    assert "isn't a plausible chimney height" in seen(page, "chimney_height_problem")
    assert control(page, "chimney_height", QLineEdit).text() == "400"


def test_celsius_turns_the_fields_round(cold_page: tuple[MyStovePage, Desk]) -> None:
    page, desk = cold_page
    push(page, "part_flue")
    type_in(page, "chimney_height", "20")
    desk.set_unit("C")
    QApplication.processEvents()
    assert control(page, "chimney_height", QLineEdit).text() == "6"
    assert "246 °C" in seen(page, "flue_bands")


def test_hot_surfaces_are_told_by_part_and_follow_the_material(stood_page: MyStovePage, stood_desk: Desk) -> None:
    push(stood_page, "part_surroundings")
    assert seen(stood_page, "touch_part_0") == "Cooktop"
    assert "burns within" in seen(stood_page, "touch_text_0")
    box = control(stood_page, "side_material", QComboBox)
    box.setFocus()
    QTest.keyClicks(box, "soap")
    box.activated.emit(box.currentIndex())
    assert side_material(stood_desk) == "soapstone"
    assert "soapstone" in seen(stood_page, "touch_text_1")


def test_a_wall_read_on_the_cook_page_stands_here_with_its_limits(stood_page: MyStovePage, stood_desk: Desk) -> None:
    push(stood_page, "part_surroundings")
    assert seen(stood_page, "wall_rises") == NO_WALL
    stood_desk.read("68", spot="room")
    stood_desk.read("150", spot="wall_left")
    QApplication.processEvents()
    assert seen(stood_page, "wall_rises").startswith("Wall left, read at")
    assert "82 °F above the room" in seen(stood_page, "wall_rises")


def test_who_decides_stands_there_whatever_was_read(cold_page: tuple[MyStovePage, Desk]) -> None:
    page, _desk = cold_page
    push(page, "part_surroundings")
    assert seen(page, "touch_as_of") == NO_HEAT
    assert seen(page, "wall_decides").startswith("This is a caution, never a clearance: the label on the stove")
    assert "manual and local code" in seen(page, "touch_decides")


@pytest.mark.parametrize(
    ("part", "name"), [("surroundings", "wall_decides"), ("surroundings", "touch_decides"), ("flue", "flue_caution")]
)
def test_a_caution_has_its_sign_beside_it_and_not_its_colour_alone(
    cold_page: tuple[MyStovePage, Desk], part: str, name: str
) -> None:
    page, _desk = cold_page
    push(page, "part_flue")
    type_in(page, "outdoors", "90")
    push(page, f"part_{part}")
    assert seen(page, name) != ""
    beside = control(page, name, QLabel).parentWidget()
    assert beside is not None
    assert beside.findChild(Sign).isVisible()  # type: ignore[union-attr]


@pytest.mark.parametrize("part", ["flue", "surroundings", "air"])
def test_no_word_on_these_parts_says_safe(stood_page: MyStovePage, part: str) -> None:
    push(stood_page, f"part_{part}")
    told = " ".join(label.text() for label in stood_page.findChildren(QLabel) if label.isVisibleTo(stood_page))
    assert re.search(r"\bsafe(ly|ty)?\b", told, re.IGNORECASE) is None


def choose(page: MyStovePage, name: str, key: str) -> None:
    box = control(page, name, QComboBox)
    box.setCurrentIndex(box.findData(key))
    box.activated.emit(box.currentIndex())


def test_what_the_flue_thermometer_reads_is_asked_once_and_kept(cold_page: tuple[MyStovePage, Desk]) -> None:
    page, desk = cold_page
    push(page, "part_flue")
    assert control(page, "flue_reading", QComboBox).currentText() == "not said"
    for kind in (FlueReading.GAS, FlueReading.DOUBLE, FlueReading.SINGLE):
        choose(page, "flue_reading", str(kind))
        assert desk.stove.flue_reading is kind
        assert desk.logbook.stove(desk.stove.name).flue_reading is kind
        assert control(page, "flue_reading", QComboBox).currentText() == str(kind)


def test_the_flue_is_judged_by_what_its_thermometer_reads(stood_page: MyStovePage, stood_desk: Desk) -> None:
    push(stood_page, "part_flue")
    for kind, judged in ((FlueReading.DOUBLE, False), (FlueReading.SINGLE, True)):
        choose(stood_page, "flue_reading", str(kind))
        assert stood_desk.show(stood(stood_desk.inputs()))
        QApplication.processEvents()
        assert seen(stood_page, "flue_heat").startswith("The flue pipe is about")
        assert ("not judged" not in seen(stood_page, "flue_heat")) is judged


def test_a_water_back_is_told_once_and_kept(cold_page: tuple[MyStovePage, Desk]) -> None:
    page, desk = cold_page
    push(page, "part_flue")
    assert not desk.stove.has_water_back
    choose(page, "water_back", "yes")
    assert desk.logbook.stove(desk.stove.name).has_water_back
    choose(page, "water_back", "no")
    assert not desk.logbook.stove(desk.stove.name).has_water_back
