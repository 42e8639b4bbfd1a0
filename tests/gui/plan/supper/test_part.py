"""The tab Supper driven by hands: a time, dishes, steps moved by keys and dragged, what is done."""

from dataclasses import replace
from datetime import timedelta

import pytest
from PySide6.QtCore import QPoint, Qt
from PySide6.QtWidgets import QComboBox, QLabel, QScrollArea, QTableView
from pytestqt.qtbot import QtBot

from cookstove_gui.cooking.supper.alarms import is_silent
from cookstove_gui.cooking.supper.plan import FireStep, PlannedStep, StepKind
from cookstove_gui.desk import Desk
from cookstove_gui.desk.alarms.kept import kept_answers
from cookstove_gui.gui.plan.page import PlanPage
from cookstove_gui.gui.plan.supper.dish_list import DishList
from cookstove_gui.gui.plan.supper.next_steps import NextSteps
from cookstove_gui.gui.plan.supper.part import SupperPart
from cookstove_gui.gui.plan.supper.picture import SupperPicture
from cookstove_gui.stove.entries import Kind
from tests.gui.clipping import settle
from tests.gui.hands import control, push, seen, type_in
from tests.gui.pages import shown

pytestmark = [pytest.mark.gui, pytest.mark.usefixtures("worked_out_once")]


@pytest.fixture
def page(qtbot: QtBot, stood_desk: Desk) -> PlanPage:
    made, _ = shown(qtbot, stood_desk, PlanPage)
    return made


@pytest.fixture
def part(qtbot: QtBot, page: PlanPage, stood_desk: Desk) -> SupperPart:
    """The tab, a meal of greens and a pie planned for four hours from now."""
    desk = stood_desk
    desk.supper.set_table(desk.clock() + timedelta(hours=4))
    dishes = {dish.key: dish for dish in desk.supper.dishes}
    for key in ("greens", "apple_pie"):
        desk.supper.add(dishes[key])
    found = control(page, "plan_supper", SupperPart)
    qtbot.waitUntil(lambda: desk.supper.plan is not None and not found.is_busy, timeout=20_000)
    return found


def _picture(part: SupperPart) -> SupperPicture:
    found = part.findChild(SupperPicture)
    assert found is not None
    return found


def _settled(qtbot: QtBot, part: SupperPart) -> None:
    qtbot.wait(80)
    qtbot.waitUntil(lambda: not part.is_busy, timeout=20_000)


def test_a_time_and_a_dish_make_a_plan(qtbot: QtBot, page: PlanPage, stood_desk: Desk) -> None:
    type_in(page, "supper_table", "+240")
    listed = control(page, "dish_list", DishList)
    assert listed.isVisible()
    rows = control(listed, "dishes", QTableView)
    rows.setCurrentIndex(rows.model().index(0, 0))
    qtbot.keyClick(rows, Qt.Key.Key_Return)
    push(page, "dish_close")
    assert not listed.isVisible()
    qtbot.waitUntil(lambda: stood_desk.supper.plan is not None, timeout=20_000)
    assert stood_desk.supper.supper is not None
    assert len(stood_desk.supper.supper.dishes) == 1


def test_what_is_no_time_is_explained_beside_the_field(page: PlanPage, stood_desk: Desk) -> None:
    type_in(page, "supper_table", "soonish")
    assert "isn't a time" in seen(page, "supper_table_problem")
    assert stood_desk.supper.kept is None


def test_a_dish_of_the_cooks_own_is_made_changed_and_copied_in_the_form(page: PlanPage, stood_desk: Desk) -> None:
    type_in(page, "supper_table", "+240")
    push(page, "dish_new")
    type_in(page, "dish_name", "Sunday stew")
    type_in(page, "part_0_what", "cut")
    type_in(page, "part_0_minutes", "20")
    control(page, "part_1_kind", QComboBox).setCurrentIndex(3)
    type_in(page, "part_1_what", "simmer")
    type_in(page, "part_1_minutes", "a while")
    control(page, "part_1_heat", QComboBox).setEditText("simmer")
    push(page, "dish_keep")
    assert "isn't a number of minutes" in seen(page, "dish_form_problem")
    type_in(page, "part_1_minutes", "120")
    push(page, "dish_keep")
    made = stood_desk.supper.dishes[0]
    assert (made.name, made.minutes) == ("Sunday stew", 140.0)
    rows = control(page, "dishes", QTableView)
    for key, name, minutes in (("dish_change", "Sunday stew", 110.0), ("dish_copy", "Sunday stew 2", 100.0)):
        rows.setCurrentIndex(rows.model().index(0, 0))
        push(page, key)
        type_in(page, "part_1_minutes", f"{minutes - 20:.0f}")
        push(page, "dish_keep")
        assert next(one.minutes for one in stood_desk.supper.dishes if one.name == name) == minutes
    own = [one.name for one in stood_desk.supper.dishes if stood_desk.supper.is_own(one.key)]
    assert own == ["Sunday stew", "Sunday stew 2"]


def test_arrows_choose_a_step_and_set_it(qtbot: QtBot, part: SupperPart) -> None:
    picture, desk = _picture(part), part.desk
    picture.setFocus()
    picture.choose("greens/0")
    before = desk.supper.plan.of_dish("greens")[0].begin  # type: ignore[union-attr]
    qtbot.keyClick(picture, Qt.Key.Key_Left)
    _settled(qtbot, part)
    step = desk.supper.plan.of_dish("greens")[0]  # type: ignore[union-attr]
    assert step.begin == before - timedelta(minutes=5)
    assert step.is_own
    qtbot.keyClick(picture, Qt.Key.Key_Backspace)
    _settled(qtbot, part)
    assert not desk.supper.plan.of_dish("greens")[0].is_own  # type: ignore[union-attr]


def test_what_is_typed_of_the_oven_on_cook_is_done_in_the_plan(qtbot: QtBot, part: SupperPart) -> None:
    part.desk.do(Kind.OVEN_IN, note="apple pie")
    at, table = part.desk.entries[-1].at, part.desk.supper
    qtbot.waitUntil(lambda: table.supper is not None and table.supper.mark("apple_pie/1").began == at)


def test_in_a_low_window_the_next_steps_stay_in_sight_and_a_chosen_step_comes_into_it(
    qtbot: QtBot, part: SupperPart
) -> None:
    picture, window = _picture(part), part.window()
    area, following = picture.parent().parent(), part.findChild(NextSteps)
    assert isinstance(area, QScrollArea)
    assert following is not None
    window.resize(1024, 510)
    qtbot.waitUntil(lambda: area.verticalScrollBar().maximum() > 0)
    foot = following.mapTo(window, following.rect().bottomLeft()).y()
    assert foot <= window.height()
    picture.grab()  # drawn, it knows where its steps stand
    area.verticalScrollBar().setValue(0)
    picture.choose(picture._all_blocks()[-1].step)
    assert area.verticalScrollBar().value() > 0


def test_where_even_the_oven_and_the_fire_have_no_room_one_bar_scrolls_the_whole_tab(
    qtbot: QtBot, page: PlanPage, part: SupperPart
) -> None:
    picture = _picture(part)
    inner, outer = picture.parent().parent(), control(page, "scroll_supper", QScrollArea)
    assert isinstance(inner, QScrollArea)
    part.window().resize(1024, 330)
    qtbot.waitUntil(lambda: outer.verticalScrollBar().maximum() > 0)
    qtbot.waitUntil(lambda: inner.verticalScrollBar().maximum() == 0)
    picture.grab()  # drawn, it knows where its steps stand
    picture.choose(picture._all_blocks()[-1].step)
    assert outer.verticalScrollBar().value() > 0
    part.window().resize(1024, 510)
    qtbot.waitUntil(lambda: outer.verticalScrollBar().maximum() == 0)
    assert inner.verticalScrollBar().maximum() > 0


def test_a_step_is_dragged_to_another_time(qtbot: QtBot, part: SupperPart) -> None:
    picture, desk = _picture(part), part.desk
    picture.grab()
    spot = next(one for one in picture._spots if one.step == "greens/0")
    start = spot.box.center().toPoint()
    before = desk.supper.plan.of_dish("greens")[0].begin  # type: ignore[union-attr]
    qtbot.mousePress(picture, Qt.MouseButton.LeftButton, pos=start)
    qtbot.mouseMove(picture, start - QPoint(60, 0))
    qtbot.mouseRelease(picture, Qt.MouseButton.LeftButton, pos=start - QPoint(60, 0))
    _settled(qtbot, part)
    step = desk.supper.plan.of_dish("greens")[0]  # type: ignore[union-attr]
    assert step.is_own
    assert step.begin < before
    assert step.begin.minute % 5 == 0


def test_delete_takes_the_dish_away(qtbot: QtBot, part: SupperPart) -> None:
    picture = _picture(part)
    picture.choose("greens/0")
    qtbot.keyClick(picture, Qt.Key.Key_Delete)
    _settled(qtbot, part)
    assert [dish.key for dish in part.desk.supper.supper.dishes] == ["apple_pie"]  # type: ignore[union-attr]


def test_one_key_says_that_the_next_step_is_done_and_another_takes_it_back(qtbot: QtBot, part: SupperPart) -> None:
    desk: Desk = part.desk
    following = desk.supper.due or desk.supper.next
    assert following is not None
    rows = len([row for row in desk.entries if row.kind is Kind.WOOD])
    push(part.window(), "supper_done")
    if following.step.what == "wood":
        assert len([row for row in desk.entries if row.kind is Kind.WOOD]) == rows + 1
    else:
        assert desk.supper.supper.marks  # type: ignore[union-attr]
        qtbot.keyClick(part, Qt.Key.Key_F10, Qt.KeyboardModifier.ControlModifier | Qt.KeyboardModifier.ShiftModifier)
        assert not desk.supper.supper.marks  # type: ignore[union-attr]


def _bells(part: SupperPart) -> dict[str, QPoint]:
    """Alarm to where its bell is drawn."""
    _picture(part).grab()
    return {one.step: one.box.center().toPoint() for one in _picture(part)._spots if one.is_bell}


def test_a_click_on_a_bell_silences_it_and_another_lets_it_ring_again(qtbot: QtBot, part: SupperPart) -> None:
    bells = _bells(part)
    assert len(bells) > 2
    key = next(iter(bells))
    for silent in (True, False):
        qtbot.mouseClick(_picture(part), Qt.MouseButton.LeftButton, pos=_bells(part)[key])
        assert [is_silent(kept_answers(part.desk), one) for one in bells] == [silent, *[False] * (len(bells) - 1)]
    _picture(part).choose("apple_pie/1")
    qtbot.keyClick(_picture(part), Qt.Key.Key_B)
    assert is_silent(kept_answers(part.desk), "plan/apple_pie/1/put in")


@pytest.mark.parametrize(
    ("step", "kind", "value", "note"),
    [
        ({"what": FireStep.LIGHT}, Kind.LIT, "", ""),
        ({"what": FireStep.WOOD, "splits": 2}, Kind.WOOD, "", "2 splits"),
        ({"what": FireStep.BYPASS_SHUT}, Kind.BYPASS, "0", ""),
        ({"what": FireStep.AIR, "opening": 0.3}, Kind.AIR, "0.3", ""),
        ({"what": FireStep.LET_GO, "key": "fire/let_go"}, None, "", ""),
    ],
)
def test_done_on_a_step_of_the_fire_logs_it_but_letting_it_go_is_no_row(
    part: SupperPart, step: dict[str, object], kind: Kind | None, value: str, note: str
) -> None:
    desk = part.desk
    now, supper, plan = desk.clock(), desk.supper.supper, desk.supper.plan
    assert supper is not None
    assert plan is not None
    made = PlannedStep(**{"key": "fire/x", "kind": StepKind.FIRE, "begin": now, "end": now, "helps": True} | step)  # type: ignore[arg-type]
    desk.supper.take(supper, replace(plan, steps=(made,)))
    rows = len(desk.entries)
    push(part.window(), "supper_done")
    if kind is None:
        assert len(desk.entries) == rows
        assert desk.supper.supper is not None
        assert desk.supper.supper.mark("fire/let_go").ended == now
    else:
        row = desk.entries[-1]
        assert (row.kind, row.value, row.note) == (kind, value, note)


def test_the_foot_names_the_next_steps_with_their_clocks(part: SupperPart) -> None:
    words = [control(part, f"next_step_{place}", QLabel).text() for place in range(6)]
    assert any(words)
    clocks = [control(part, f"next_clock_{place}", QLabel).text() for place in range(6)]
    assert all(bool(clock) == bool(said) for clock, said in zip(clocks, words, strict=True))


def test_how_sure_it_should_be_is_kept(qtbot: QtBot, part: SupperPart) -> None:
    box = control(part.window(), "supper_margin", QComboBox)
    box.setCurrentIndex(1)
    box.activated.emit(1)
    _settled(qtbot, part)
    assert str(part.desk.supper.supper.margin) == "safe"  # type: ignore[union-attr]


def test_without_a_plan_the_time_to_eat_stands_whole_though_it_grew_on_another_tab(page: PlanPage) -> None:
    part = control(page, "plan_supper", SupperPart)
    settle()
    before = part._scroll.height()
    push(page, "part_wood")
    part._table.show_problem("Type first when you want to eat.")
    settle()
    push(page, "part_supper")
    settle()
    assert part._scroll.height() == _picture(part).sizeHint().height() > before
