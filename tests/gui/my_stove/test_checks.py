"""Thermometer checks on My stove: the offset, its doubt and its day are kept and said; slips are asked about."""

import pytest
from PySide6.QtCore import QPoint, Qt
from PySide6.QtGui import QFontMetrics
from PySide6.QtWidgets import QComboBox, QLabel, QLineEdit, QPushButton, QWidget

from cookstove_gui.desk import Desk
from cookstove_gui.desk.my_stove import checks
from cookstove_gui.errors import InputProblem
from cookstove_gui.gui.my_stove.page import MyStovePage
from cookstove_gui.gui.my_stove.thermometer_row import ThermometerRow
from cookstove_gui.gui.widgets.steps import px
from cookstove_gui.gui.widgets.type import SMALL, font
from cookstove_gui.stove.checks import CheckPoint
from tests.gui.clipping import settle
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
    if not control(page, "check_add", QPushButton).isChecked():
        push(page, "check_add")
    box = control(page, "new_instrument_kind", QComboBox)
    box.setCurrentIndex(box.findData(kind))
    type_in(page, "new_instrument", name)


def test_before_the_first_thermometer_its_fields_stand_right_below_the_sentence(page):
    settle()
    box, sentence = control(page, "new_instrument_kind", QComboBox), control(page, "check_standing", QLabel)
    assert not control(page, "check_add", QPushButton).isVisible()
    assert box.isVisible()
    left = sentence.mapTo(page, QPoint()).x()
    assert box.mapTo(page, QPoint()).x() - left < 120  # its caption stands there
    add(page, "oven dial")
    settle()
    assert control(page, "check_add", QPushButton).isVisible()


def test_a_new_thermometer_is_said_to_be_unchecked(page):
    add(page, "oven dial")
    assert "Oven dial was never checked" in seen(page, "check_standing")


def test_a_check_in_boiling_water_gives_the_offset_and_its_day(page, desk):
    # At sea level water boils at 212 °F, so that 219 is 7 too high; the prior pulls it a little toward none.
    add(page, "oven dial")
    type_in(page, "check_shown", "219")
    instrument = desk.stove.instruments[0]
    assert instrument.error(373.15) == pytest.approx(7 / 1.8, rel=0.2)
    assert instrument.checked_on == "2026-03-14"
    assert "too high" in seen(page, "check_standing")
    assert "14 March 2026" in seen(page, "check_list")


def test_ice_water_is_right_at_32_degrees(page, desk):
    add(page, "oven dial")
    push(page, "check_point_ice")
    assert "shows 32 °F" in seen(page, "check_how")
    type_in(page, "check_shown", "32")
    assert abs(desk.stove.instruments[0].offset) < 0.05
    assert "reads right" in seen(page, "check_standing")
    assert "Checked at one heat only" in seen(page, "check_gain")
    assert desk.stove.instruments[0].doubt(477.0) > 2 * desk.stove.instruments[0].doubt(273.0)


def test_a_check_far_off_is_asked_about_and_stays_in_the_field(page, desk):
    add(page, "oven dial")
    type_in(page, "check_shown", "250")
    assert "Look at the unit and the bath" in seen(page, "check_problem")
    assert control(page, "check_shown", QLineEdit).text() == "250"
    assert desk.stove.instruments[0].checked_on == ""
    push(page, "check_keep_far_off")
    assert desk.stove.instruments[0].error(373.15) == pytest.approx(38 / 1.8, rel=0.1)
    assert control(page, "check_keep_far_off", QWidget).isHidden()


def test_another_number_answers_the_question(page, desk):
    add(page, "oven dial")
    type_in(page, "check_shown", "300")
    type_in(page, "check_shown", "213")
    assert abs(desk.stove.instruments[0].error(373.15)) < 1.0
    assert control(page, "check_keep_far_off", QWidget).isHidden()


def test_ice_and_boil_give_the_gain(page, desk):
    # 3.4 °F too high in ice, 10.4 at the boil: 7 °F in 180, which is 3.9 in each 100; the prior pulls toward none
    add(page, "thin probe", "probe")
    push(page, "check_point_ice")
    type_in(page, "check_shown", "35.4")
    push(page, "check_point_boil")
    type_in(page, "check_shown", "222.4")
    assert desk.stove.instruments[0].gain == pytest.approx(0.039, abs=0.006)
    assert "gains 3" in seen(page, "check_gain")
    assert "carried on" in seen(page, "check_gain")


def test_an_infrared_one_is_never_held_in_boiling_water(page, desk):
    add(page, "spot gun", "infrared")
    assert control(page, "check_point", QWidget).isHidden()
    assert "ice" in seen(page, "check_how")
    type_in(page, "check_shown", "33")
    assert "ice water" in seen(page, "check_list")
    with pytest.raises(InputProblem, match="never checked like that"):
        checks.record_check(desk, "spot gun", CheckPoint.BOIL, "212")


def test_a_flue_thermometer_is_not_for_water(page):
    add(page, "magnet", "flue thermometer")
    assert control(page, "check_shown_row", QWidget).isHidden()
    assert "not for water" in seen(page, "check_how")


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
    push(page, "check_compare")
    words = seen(page, "check_means")
    assert "Where this one shows 450 °F it is really about 4" in words
    type_in(page, "check_emissivity", "0.85")
    assert "really about 450 °F" in seen(page, "check_means")


def test_an_emissivity_that_is_none_is_refused(page):
    add(page, "spot gun", "infrared")
    push(page, "check_compare")
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
    push(page, "check_compare")
    type_in(page, "check_contact", "232.4C")
    assert seen(page, "check_measured") == ""
    type_in(page, "check_beside", "210.0C")
    assert "about 0.81" in seen(page, "check_measured")


def test_readings_that_do_not_belong_together_are_refused(page):
    add(page, "spot gun", "infrared")
    push(page, "check_compare")
    type_in(page, "check_contact", "300")
    type_in(page, "check_beside", "600")
    assert "don't go together" in seen(page, "check_beside_problem")


def test_thermometers_are_chosen_in_the_list_and_each_says_how_to_check_it(page):
    add(page, "oven dial")
    add(page, "magnet", "flue thermometer")
    assert "Magnet" in seen(page, "check_standing")
    push(page, "thermometer_oven dial")
    assert "Oven dial" in seen(page, "check_standing")
    assert "rolling boil" in seen(page, "check_how")
    told = control(page, "thermometer_magnet", QPushButton).accessibleName()
    assert "set it beside a checked one" in told


def test_the_list_says_the_latest_check_and_the_doubt_of_a_reading(page):
    add(page, "oven dial")
    before = control(page, "thermometer_oven dial", QPushButton).accessibleName()
    type_in(page, "check_shown", "219")
    after = control(page, "thermometer_oven dial", QPushButton).accessibleName()
    assert "latest check +7.0 °F" in after
    doubts = [float(name.rsplit("within ", 1)[1].split(" ")[0]) for name in (before, after)]
    assert doubts[1] < doubts[0]


@pytest.mark.parametrize("unit", ["F", "C"])
def test_the_plot_is_painted_with_every_kind_of_instrument(page, desk, unit):
    desk.set_unit(unit)
    add(page, "oven dial")
    type_in(page, "check_shown", "219F")
    plot = control(page, "check_plot", QWidget)
    drawn = plot.grab().toImage()
    push(page, "check_point_ice")
    type_in(page, "check_shown", "35F")
    assert plot.grab().toImage() != drawn
    add(page, "spot gun", "infrared")
    assert plot.accessibleName() == seen(page, "check_standing")
    assert not plot.grab().isNull()


def test_what_to_do_with_one_never_checked_has_room_for_two_lines(page):
    add(page, "oven dial")
    row = control(page, "thermometer_oven dial", ThermometerRow)
    beside = row.minimumSizeHint().width() - px(14 + 160 + 88)  # but for the name and the doubt
    metrics = QFontMetrics(font(SMALL))
    how = "check it in ice and boiling water"
    lines = metrics.boundingRect(0, 0, beside, 1000, Qt.TextFlag.TextWordWrap, how).height()
    assert lines < 3 * metrics.lineSpacing()
