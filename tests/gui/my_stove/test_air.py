"""Height and weather: typed by keys, kept at once, and felt by the thermometer checks and the plan."""

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QComboBox, QLineEdit, QPushButton
from pytestqt.qtbot import QtBot

from cookstove_gui.desk import Desk
from cookstove_gui.desk.my_stove.site import barometer_of, site_here
from cookstove_gui.gui.my_stove.ability_list import AbilityList, AbilityRow
from cookstove_gui.gui.my_stove.page import MyStovePage
from tests.gui.hands import control, push, seen, type_in
from tests.gui.pages import held_desk, shown


@pytest.fixture
def page(qtbot: QtBot) -> tuple[MyStovePage, Desk]:
    desk = held_desk()
    made, _ = shown(qtbot, desk, MyStovePage)
    assert isinstance(made, MyStovePage)
    push(made, "part_air")
    return made, desk


def test_a_height_typed_in_feet_shows_where_water_boils(page: tuple[MyStovePage, Desk]) -> None:
    made, desk = page
    assert "212" in seen(made, "air_boils")
    type_in(made, "air_height", "5000")
    assert desk.stove.altitude == pytest.approx(1524.0)
    assert seen(made, "air_boils") == "Water boils at 202.8 °F here."
    assert "Yeast dough" in seen(made, "air_hints")


def test_a_weather_reports_pressure_asks_for_the_height(page: tuple[MyStovePage, Desk]) -> None:
    made, _desk = page
    type_in(made, "air_pressure", "30.1 inHg")
    assert "type its height" in seen(made, "air_question")
    type_in(made, "air_height", "5000 ft")
    assert seen(made, "air_question") == ""
    assert "by the barometer read at" in seen(made, "air_line")


def test_what_the_barometer_shows_is_chosen_by_a_key(page: tuple[MyStovePage, Desk]) -> None:
    made, desk = page
    type_in(made, "air_height", "600 ft")
    type_in(made, "air_pressure", "1000 hPa")
    as_at_sea = site_here(desk).pressure
    push(made, "air_shows_here")
    kept = barometer_of(desk)
    assert kept is not None
    assert not kept.as_at_sea
    assert site_here(desk).pressure > as_at_sea


def test_what_is_not_understood_stays_with_its_sentence(page: tuple[MyStovePage, Desk]) -> None:
    made, desk = page
    type_in(made, "air_pressure", "850 psi")
    assert "type it as 25.1 inHg or 850 hPa" in seen(made, "air_pressure_problem")
    assert control(made, "air_pressure", QLineEdit).text() == "850 psi"
    assert barometer_of(desk) is None


def test_the_set_up_and_the_checks_follow(page: tuple[MyStovePage, Desk]) -> None:
    made, desk = page
    type_in(made, "air_pressure", "26 inHg")
    assert control(made, "altitude", QLineEdit).text() == "3836"
    push(made, "part_checks")
    type_in(made, "new_instrument", "dial")
    assert "205 °F" in seen(made, "check_how")
    desk.set_unit("C")
    QApplication.processEvents()
    push(made, "part_air")
    assert control(made, "air_pressure", QLineEdit).text() == "880.5 hPa"


def test_names_of_heats_are_read_in_the_table_that_was_chosen(qtbot: QtBot, page: tuple[MyStovePage, Desk]) -> None:
    made, desk = page
    push(made, "part_fire")
    qtbot.waitUntil(lambda: "1942" in seen(made, "band_table_words"), timeout=10000)
    box = control(made, "band_table", QComboBox)
    box.setFocus()
    QTest.keyClick(box, Qt.Key.Key_Down)
    box.activated.emit(box.currentIndex())
    qtbot.waitUntil(lambda: "1976" in seen(made, "band_table_words"), timeout=10000)
    assert "very slow" in {band.name for band in desk.bands}
    figures = control(made, "abilities", AbilityList)
    qtbot.waitUntil(
        lambda: any("very slow" in row.accessibleName() for row in figures.findChildren(AbilityRow)), timeout=10000
    )


def test_the_rail_scrolls_where_cautions_leave_the_page_little_height(page: tuple[MyStovePage, Desk]) -> None:
    made, _desk = page
    made.resize(1024, 360)
    QApplication.processEvents()
    assert made.height() == 360
    first, last = (control(made, f"part_{key}", QPushButton) for key in ("setup", "first_fires"))
    first.setFocus()
    while QApplication.focusWidget() is not last:
        QTest.keyClick(QApplication.focusWidget(), Qt.Key.Key_Down)
        QApplication.processEvents()
    assert last.isChecked()
    assert not last.visibleRegion().isEmpty()
    assert last.visibleRegion().boundingRect().height() == last.height()
