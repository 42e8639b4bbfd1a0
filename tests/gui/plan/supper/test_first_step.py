"""While no meal is planned the tab offers dishes and times; either may come first."""

from itertools import pairwise

import pytest
from PySide6.QtWidgets import QPushButton
from pytestqt.qtbot import QtBot

from cookstove_gui.desk import Desk
from cookstove_gui.gui.plan.page import PlanPage
from cookstove_gui.gui.plan.supper.dish_list import DishList
from cookstove_gui.gui.plan.supper.first_step import FirstStep, Sketch
from cookstove_gui.gui.widgets.look import Look
from cookstove_gui.units import clock_text
from tests.gui.clipping import settle
from tests.gui.hands import click, control, type_in
from tests.gui.pages import shown

pytestmark = pytest.mark.gui


@pytest.fixture
def page(qtbot: QtBot, desk: Desk) -> PlanPage:
    made, _ = shown(qtbot, desk, PlanPage)
    return made


def names(desk: Desk) -> list[str]:
    supper = desk.supper.supper
    return [] if supper is None else [dish.name for dish in supper.dishes]


def key_of(page: PlanPage, dish: str) -> str:
    return next(key.objectName() for key in page.findChildren(QPushButton) if key.accessibleName() == f"Have {dish}")


def test_dishes_are_pressed_then_a_time_and_the_meal_stands(page: PlanPage, desk: Desk) -> None:
    click(page, key_of(page, "Greens"))
    click(page, key_of(page, "Bread"))
    assert names(desk) == []
    time = control(page, "supper_time_1", QPushButton).text()
    click(page, "supper_time_1")
    assert sorted(names(desk)) == ["Bread", "Greens"]
    assert desk.supper.supper is not None
    assert clock_text(desk.supper.supper.table_at, desk.offset_minutes) == time
    settle()
    assert not control(page, "supper_first_step", FirstStep).isVisible()


def test_a_typed_time_does_as_well(page: PlanPage, desk: Desk) -> None:
    click(page, key_of(page, "Bread"))
    type_in(page, "supper_table", "+240")
    assert names(desk) == ["Bread"]
    assert not control(page, "dish_list", DishList).isVisible()


def test_with_the_time_given_first_a_dish_is_taken_as_it_is_pressed(page: PlanPage, desk: Desk) -> None:
    click(page, "supper_time_0")
    click(page, "dish_close")
    click(page, key_of(page, "Apple pie"))
    assert names(desk) == ["Apple pie"]


def test_a_dish_pressed_twice_is_not_wanted(page: PlanPage, desk: Desk) -> None:
    for _ in range(2):
        click(page, key_of(page, "Bread"))
    click(page, key_of(page, "Greens"))
    click(page, "supper_time_0")
    assert names(desk) == ["Greens"]


def test_the_half_hours_offered_are_to_come(page: PlanPage, desk: Desk) -> None:
    from cookstove_gui.desk.heading import here
    from cookstove_gui.desk.plan.texts import coming

    keys = [control(page, f"supper_time_{place}", QPushButton).text() for place in range(4)]
    ahead = [(coming(key, desk.clock(), here(desk)) - desk.clock()).total_seconds() / 60 for key in keys]
    assert 75 <= ahead[0] <= 105
    assert ahead == sorted(ahead)
    assert {later - sooner for sooner, later in pairwise(ahead)} == {30.0}


def test_the_sketch_is_left_out_where_there_is_no_room_for_it(qtbot: QtBot, look: Look) -> None:
    sketch = Sketch(look)
    qtbot.addWidget(sketch)
    for height, is_drawn in ((20, False), (90, False), (160, True)):
        sketch.resize(600, height)
        picture = sketch.grab().toImage()
        colours = {picture.pixel(x, y) for x in range(0, picture.width(), 7) for y in range(picture.height())}
        assert (len(colours) > 1) == is_drawn, height
