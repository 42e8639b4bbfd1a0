"""The page Plan answers when water boils and when a bake is done, from how the stove stands."""

from dataclasses import replace
from datetime import timedelta

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QComboBox, QLabel, QLineEdit, QPushButton, QScrollArea

from cookstove_gui.desk import Desk
from cookstove_gui.gui.drawn_stove.spot_patch import SpotPatch
from cookstove_gui.gui.plan.page import PlanPage
from cookstove_gui.gui.plan.part import PlanPart
from cookstove_gui.gui.plan.water_on_top import WaterOnTop
from cookstove_gui.gui.plan.water_runs import WaterRuns
from cookstove_gui.stove.entries import Kind
from cookstove_gui.stove.stove import SpotKind
from tests.gui.clipping import settle as laid_out
from tests.gui.hands import control, push, seen, type_in
from tests.gui.pages import NOW, held_desk, keep_session, shown
from tests.once import stood

pytestmark = [pytest.mark.gui, pytest.mark.usefixtures("worked_out_once")]


@pytest.fixture
def desk() -> Desk:
    """A desk whose stove has been warming for an hour and a half, and stands as worked out now."""
    made = held_desk()
    number = keep_session(made, "Today", NOW - timedelta(minutes=95))
    made.open_session(number)
    show_standing(made)
    return made


def show_standing(desk: Desk) -> None:
    """Give the desk how its stove stands."""
    desk.show(stood(desk.inputs()))


@pytest.fixture
def page(qtbot, desk):
    made, _ = shown(qtbot, desk, PlanPage)
    push(made, "part_bake")
    return made


def settle(qtbot, page, name: str) -> None:
    part = control(page, name, PlanPart)
    qtbot.waitUntil(lambda: not part.is_busy, timeout=30000)


def test_without_a_fire_it_says_so_instead_of_answering(qtbot):
    made, _ = shown(qtbot, held_desk(), PlanPage)
    push(made, "part_bake")
    assert seen(made, "plan_bake_headline").endswith("this page then says when it is done.")


def test_without_an_answer_the_pans_need_no_bar_and_promise_no_minutes(qtbot):
    made, _ = shown(qtbot, held_desk(), PlanPage)
    push(made, "part_water")
    made.resize(1366, 614)
    laid_out()
    assert control(made, "scroll_water", QScrollArea).verticalScrollBar().maximum() == 0
    assert "minutes" not in [label.text() for label in made.findChildren(QLabel) if label.isVisible()]


def test_a_loaf_is_told_with_its_window_and_the_steady_oven_beside_it(qtbot, page):
    settle(qtbot, page, "plan_bake")
    headline = control(page, "plan_bake_headline", QLabel)
    assert "loaf of bread" in headline.accessibleName()
    assert "about" in headline.text()
    assert "In a steady oven of" in control(page, "bake_steady", QLabel).accessibleName()


def test_a_roast_is_told_with_its_safe_minimum_and_that_the_thermometer_decides(qtbot, page):
    box = control(page, "bake_what", QComboBox)
    box.setCurrentIndex(box.findData("chicken"))
    box.activated.emit(box.currentIndex())
    settle(qtbot, page, "plan_bake")
    words = seen(page, "bake_safe")
    assert "165 °F" in words
    assert "the thermometer decides" in words


def test_choosing_another_bake_shows_its_usual_weight(qtbot, page):
    before = control(page, "plan_bake", PlanPart)._mass.text
    box = control(page, "bake_what", QComboBox)
    box.setCurrentIndex(box.findData("beef_roast"))
    box.activated.emit(box.currentIndex())
    settle(qtbot, page, "plan_bake")
    assert control(page, "plan_bake", PlanPart)._mass.text != before


@pytest.mark.parametrize(
    ("field", "typed", "said"),
    [
        ("bake_mass", "heavy", "is not a weight"),
        ("bake_mass", "500", "not a plausible weight"),
        ("bake_start", "900", "not a plausible temperature for food"),
        ("bake_when", "soon", "isn't a time"),
    ],
)
def test_bad_input_gets_its_sentence_beside_the_field(qtbot, page, field, typed, said):
    settle(qtbot, page, "plan_bake")
    type_in(page, field, typed)
    assert said in seen(page, f"{field}_problem")


def test_a_probe_in_a_loaf_that_is_not_in_yet_is_questioned(qtbot, page):
    settle(qtbot, page, "plan_bake")
    type_in(page, "bake_core", "120")
    settle(qtbot, page, "plan_bake")
    assert "type when it went in" in seen(page, "plan_bake_problem")


def test_a_loaf_that_is_in_already_tells_its_core(qtbot, page):
    type_in(page, "bake_when", "-20")
    settle(qtbot, page, "plan_bake")
    assert seen(page, "bake_core_words").startswith("The core is now about")


def test_no_food_is_timed_while_first_fires_are_to_be_done(qtbot, desk, page):
    desk.save_stove(replace(desk.stove, is_new=True))
    qtbot.waitUntil(lambda: "No food yet" in seen(page, "bake_first_fires"), timeout=2000)
    assert seen(page, "plan_bake_headline") == ""


def test_an_answer_that_comes_too_late_is_not_shown(qtbot, desk, page):
    settle(qtbot, page, "plan_bake")
    part = control(page, "plan_bake", PlanPart)
    part.show_standing()
    qtbot.waitUntil(lambda: part._job._run is not None)
    desk.save_stove(replace(desk.stove, is_new=True))
    qtbot.waitUntil(lambda: not part.is_busy, timeout=10_000)
    assert "No food yet" in seen(page, "bake_first_fires")
    assert seen(page, "plan_bake_headline") == ""


def test_water_is_answered_for_every_spot_of_the_cooktop(qtbot, desk, page):
    push(page, "part_water")
    assert seen(page, "plan_water_headline") == "Working it out …"  # until the first answer
    settle(qtbot, page, "plan_water")
    control(page, "plan_water", PlanPart).show_standing()
    assert "Working" not in seen(page, "plan_water_headline")  # it stands until the next is there
    settle(qtbot, page, "plan_water")
    top = control(page, "water_on_top", WaterOnTop)
    assert len([spot for spot in page_stove(desk) if top.patch(spot).face.number not in ("", "–")]) == 6
    assert "boil" in seen(page, "plan_water_headline").casefold()


def page_stove(desk) -> list[str]:
    return [spot.name for spot in desk.stove.spots_of(SpotKind.TOP)]


def asked(page) -> str:
    """The spot with the ring."""
    top = control(page, "water_on_top", WaterOnTop)
    (lit,) = [patch.name for patch in top.findChildren(SpotPatch) if patch.face.is_lit]
    return lit


def test_another_spot_is_asked_for_on_the_cooktop(qtbot, page):
    push(page, "part_water")
    settle(qtbot, page, "plan_water")
    before = asked(page)
    other = next(name for name in ("top_back_left", "top_front_right") if name != before)
    control(page, "water_on_top", WaterOnTop).patch(other).click()
    settle(qtbot, page, "plan_water")
    assert asked(page) == other
    assert other.replace("_", " ").removeprefix("top ") in control(page, "plan_water_headline", QLabel).accessibleName()
    assert other.replace("_", " ").removeprefix("top ") in seen(page, "water_on")


def test_another_pan_is_chosen_by_arrow_keys(qtbot, page):
    push(page, "part_water")
    settle(qtbot, page, "plan_water")
    part = control(page, "plan_water", PlanPart)
    assert part.inputs().choice.pan_key == "saucepan"
    row = control(page, "water_pan_saucepan", QPushButton)
    row.setFocus()
    QTest.keyClick(row, Qt.Key.Key_Down)
    settle(qtbot, page, "plan_water")
    assert part.inputs().choice.pan_key == "enamel pot"
    assert "min" in control(page, "water_pan_enamel_pot", QPushButton).accessibleName()


def test_pans_of_the_log_are_shown_once_there_are_some(qtbot, page):
    push(page, "part_water")
    settle(qtbot, page, "plan_water")
    assert "usual guess" in seen(page, "water_learned")
    assert not control(page, "water_runs", WaterRuns).isVisible()


def test_water_boils_cooler_up_high(qtbot, desk, page):
    # Water boils at about 203 °F at 5000 ft, by the boiling points that cookery books print for high places.
    desk.save_stove(replace(desk.stove, altitude=1524.0))
    show_standing(desk)
    push(page, "part_water")
    settle(qtbot, page, "plan_water")
    qtbot.waitUntil(lambda: "203 °F" in seen(page, "water_boiling"), timeout=5000)


def test_more_water_takes_longer(qtbot, desk, page):
    push(page, "part_water")
    settle(qtbot, page, "plan_water")
    part = control(page, "plan_water", PlanPart)
    little = part.work_out(part.inputs()).rows[0].answer.minutes.p50
    type_in(page, "water_amount", "6")
    settle(qtbot, page, "plan_water")
    much = part.work_out(part.inputs()).rows[0].answer.minutes.p50
    assert little is not None
    assert much is None or much > little


def test_no_water_at_all_gets_a_sentence(qtbot, page):
    push(page, "part_water")
    type_in(page, "water_amount", "0")
    assert "not a plausible amount" in seen(page, "water_amount_problem")


def test_the_unit_switch_converts_what_was_typed(qtbot, desk, page):
    push(page, "part_water")
    type_in(page, "water_amount", "4")
    settle(qtbot, page, "plan_water")
    desk.set_unit("C")
    part = control(page, "plan_water", PlanPart)
    qtbot.waitUntil(lambda: part._amount.text == "3.79", timeout=2000)
    settle(qtbot, page, "plan_water")


@pytest.mark.parametrize(("days", "answered"), [(0, True), (9, False)])
def test_a_session_that_is_over_is_planned_nothing_for(qtbot, days, answered):
    desk = held_desk()
    number = keep_session(desk, "Old", NOW - timedelta(days=days, minutes=95))
    desk.open_session(number)
    show_standing(desk)
    assert desk.entries[0].kind is Kind.LIT
    made, _ = shown(qtbot, desk, PlanPage)
    push(made, "part_bake")
    for part in ("bake", "pots", "water"):
        push(made, f"part_{part}")
        settle(qtbot, made, f"plan_{part}")
        assert ("This session is over" not in seen(made, f"plan_{part}_headline")) is answered


def test_a_loaf_that_went_in_ten_minutes_ago_is_not_put_off_by_the_clock(qtbot, page):
    type_in(page, "bake_when", "-10")
    settle(qtbot, page, "plan_bake")
    # It is 10:00 on a clock five hours behind.
    assert control(page, "bake_when", QLineEdit).text() == "9:50"
