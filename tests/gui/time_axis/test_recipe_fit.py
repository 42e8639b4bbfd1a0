"""The fit pane says what is good now, what later and when, and what not with this fire."""

from dataclasses import replace

import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QListWidget
from pytestqt.qtbot import QtBot

from cookstove_gui.cooking.fit.fit import FitState
from cookstove_gui.cooking.fit.tasks import Place
from cookstove_gui.desk import Desk, Memory, work_out
from cookstove_gui.gui.desk_link import DeskLink
from cookstove_gui.gui.time_axis.recipe_fit import RecipeFit
from cookstove_gui.gui.widgets.look import Look
from tests.gui.hands import click, control, lines, words

LISTS = {FitState.NOW: "fit_now", FitState.LATER: "fit_later", FitState.NOT: "fit_not"}


@pytest.fixture
def pane(link: DeskLink, look: Look, qtbot: QtBot) -> RecipeFit:
    made = RecipeFit(link, look)
    qtbot.addWidget(made)
    made.resize(304, 560)
    made.show()
    return made


def test_before_any_reading_nothing_is_promised(pane: RecipeFit) -> None:
    assert [lines(pane, name) for name in LISTS.values()] == [[], [], []]
    assert "After the first readings" in words(pane, "fit_told")


@pytest.mark.parametrize("state", list(LISTS))
def test_every_task_stands_in_its_list(stood_desk: Desk, pane: RecipeFit, state: FitState) -> None:
    assert stood_desk.standing is not None
    expected = [fit.task.name for fit in stood_desk.standing.fits if fit.state is state]
    assert sorted(lines(pane, LISTS[state])) == sorted(expected)


def test_what_is_good_later_stands_in_order_of_time(stood_desk: Desk, pane: RecipeFit) -> None:
    assert stood_desk.standing is not None
    when = {fit.task.name: fit.spots[0].in_min or 0.0 for fit in stood_desk.standing.fits}
    minutes = [when[name] for name in lines(pane, LISTS[FitState.LATER])]
    assert minutes == sorted(minutes)


def test_what_is_good_later_says_when(stood_desk: Desk, pane: RecipeFit) -> None:
    later = control(pane, "fit_later", QListWidget)
    assert later.count() > 0
    said = later.item(0).data(Qt.ItemDataRole.AccessibleTextRole)
    assert said.rstrip("0123456789").endswith(":")


def test_by_spot_lists_spots(stood_desk: Desk, pane: RecipeFit) -> None:
    click(pane, "fit_by_spot")
    labels = {spot.label.removeprefix("top ") for spot in stood_desk.stove.spots}
    assert set(lines(pane, "fit_now")) <= labels
    assert lines(pane, "fit_now")


def test_a_marked_task_tells_its_chances(stood_desk: Desk, pane: RecipeFit) -> None:
    control(pane, "fit_not", QListWidget).setCurrentRow(0)
    assert "chance now" in words(pane, "fit_told")


def test_enter_on_an_oven_task_asks_for_its_heat(stood_desk: Desk, pane: RecipeFit, qtbot: QtBot) -> None:
    assert stood_desk.standing is not None
    oven = next(fit for fit in stood_desk.standing.fits if fit.task.place is Place.OVEN)
    rows = control(pane, LISTS[oven.state], QListWidget)
    rows.setFocus()
    rows.setCurrentRow(lines(pane, LISTS[oven.state]).index(oven.task.name))
    qtbot.keyClick(rows, Qt.Key.Key_Return)
    assert (stood_desk.band.low, stood_desk.band.high) == pytest.approx((oven.task.low, oven.task.high), abs=0.6)


def test_a_new_stove_is_refused_food(fired_desk: Desk, pane: RecipeFit, qtbot: QtBot) -> None:
    fired_desk.save_stove(replace(fired_desk.stove, is_new=True))
    fired_desk.show(work_out(fired_desk.inputs(), Memory()))
    qtbot.waitUntil(lambda: "first fires" in words(pane, "fit_told"))
    assert fired_desk.standing is not None
    food = [fit.task.name for fit in fired_desk.standing.fits if fit.task.is_food]
    assert set(food) <= set(lines(pane, "fit_not"))


def test_side_by_side_shows_the_same(stood_desk: Desk, pane: RecipeFit) -> None:
    before = [lines(pane, name) for name in LISTS.values()]
    pane.set_side_by_side(True)
    assert [lines(pane, name) for name in LISTS.values()] == before
