"""Thermometer checks on My stove: the offset, its doubt and its day are kept and said; slips are refused."""

import pytest
from PySide6.QtWidgets import QComboBox, QLineEdit

from cookstove_gui.desk import Desk
from cookstove_gui.gui.my_stove.page import MyStovePage
from tests.gui.hands import control, push, seen, type_in
from tests.gui.pages import held_desk, shown

pytestmark = pytest.mark.gui


@pytest.fixture
def desk() -> Desk:
    return held_desk()


@pytest.fixture
def page(qtbot, desk):
    made, _ = shown(qtbot, desk, MyStovePage)
    push(made, "part_checks")
    return made


def add(page, name: str, kind: str = "oven thermometer") -> None:
    box = control(page, "new_instrument_kind", QComboBox)
    box.setCurrentIndex(box.findData(kind))
    type_in(page, "new_instrument", name)


def test_a_new_thermometer_is_said_to_be_unchecked(page):
    add(page, "oven dial")
    assert seen(page, "check_standing").startswith("Never checked")


def test_a_check_in_boiling_water_gives_the_offset_and_its_day(page, desk):
    # At sea level water boils at 212 °F, so that 219 is 7 too high; the prior pulls it a little toward none.
    add(page, "oven dial")
    type_in(page, "check_shown", "219")
    instrument = desk.stove.instruments[0]
    assert instrument.offset == pytest.approx(7 / 1.8, rel=0.08)
    assert instrument.checked_on == "2026-03-14"
    assert "too high" in seen(page, "check_standing")
    assert "14 March 2026" in seen(page, "check_standing")


def test_ice_water_is_right_at_32_degrees(page, desk):
    add(page, "oven dial")
    push(page, "check_point_ice")
    assert "shows 32 °F" in seen(page, "check_how")
    type_in(page, "check_shown", "32")
    assert abs(desk.stove.instruments[0].offset) < 0.05
    assert seen(page, "check_standing").startswith("It reads right")


def test_a_check_far_off_is_refused_and_stays_in_the_field(page, desk):
    add(page, "oven dial")
    type_in(page, "check_shown", "300")
    assert "check again" in seen(page, "check_shown_problem")
    assert control(page, "check_shown", QLineEdit).text() == "300"
    assert desk.stove.instruments[0].checked_on == ""


def test_the_latest_check_is_taken_back(page, desk):
    add(page, "oven dial")
    type_in(page, "check_shown", "219")
    push(page, "check_undo")
    assert (desk.stove.instruments[0].offset, desk.stove.instruments[0].checked_on) == (0.0, "")


def test_checks_go_with_a_stove_that_is_renamed(page, desk):
    add(page, "oven dial")
    type_in(page, "check_shown", "219")
    push(page, "part_setup")
    type_in(page, "stove_name", "Kitchen stove")
    push(page, "part_checks")
    assert "219 °F in boiling water" in seen(page, "check_list")


def test_an_infrared_one_set_too_high_for_the_cooktop_reads_too_low(page, desk):
    add(page, "spot gun", "infrared")
    words = seen(page, "check_means")
    assert "Where this one shows 450 °F it is really about 4" in words
    type_in(page, "check_emissivity", "0.85")
    assert "really about 450 °F" in seen(page, "check_means")


def test_an_emissivity_that_is_none_is_refused(page):
    add(page, "spot gun", "infrared")
    type_in(page, "check_emissivity", "95")
    assert "isn't an emissivity setting" in seen(page, "check_emissivity_problem")


def test_two_thermometers_of_one_name_are_refused(page):
    add(page, "oven dial")
    add(page, "Oven dial")
    assert "already" in seen(page, "new_instrument_problem")


def test_a_contact_thermometer_beside_it_gives_the_emissivity(page):
    # Contact 232.4 °C, an instrument set to 0.95 shows 210.0 °C with surroundings of 20 °C: 0.8095 (8 to 14 µm band,
    # computed with scipy; see the infrared rows of tests/reference).
    add(page, "spot gun", "infrared")
    type_in(page, "check_contact", "232.4C")
    assert seen(page, "check_measured") == ""
    type_in(page, "check_beside", "210.0C")
    assert "about 0.81" in seen(page, "check_measured")


def test_readings_that_do_not_belong_together_are_refused(page):
    add(page, "spot gun", "infrared")
    type_in(page, "check_contact", "300")
    type_in(page, "check_beside", "600")
    assert "don't go together" in seen(page, "check_beside_problem")
