"""The foot of a supper, and the clocks over its picture: a bell is pressed there, and no clock covers another."""

from dataclasses import replace
from datetime import UTC, datetime

import pytest
from PySide6.QtCore import QRectF, Qt
from PySide6.QtGui import QPainter
from PySide6.QtWidgets import QWidget
from pytestqt.qtbot import QtBot

from cookstove_gui.desk.plan.supper_next import Bell, NextStep
from cookstove_gui.desk.plan.supper_shown import SupperShown
from cookstove_gui.gui.plan.lane import Lane
from cookstove_gui.gui.plan.supper.next_steps import NextSteps
from cookstove_gui.gui.plan.supper.plates import plates_of
from cookstove_gui.gui.widgets.look import Look
from cookstove_gui.phrases.alarms import bell_words
from cookstove_gui.phrases.edge import Edge
from tests.gui.hands import words

EDGE = Edge(unit="F", now=datetime(2026, 1, 5, 17, 5, tzinfo=UTC), offset_minutes=0)
EMPTY = SupperShown(
    edge=EDGE, start=-150.0, end=0.0, table=0.0, rows=(), oven=None, oven_now=None, wanted=(), done=(), fire=(),
    fits=("", ""), does_not_fit=False, next=(), moved="", source="", chance="",
)  # fmt: skip


def _bell(foot: NextSteps, place: int) -> QWidget:
    found = foot.findChild(QWidget, f"next_bell_{place}")
    assert found is not None
    return found


def test_each_step_has_the_bell_that_rings_then_and_a_press_is_for_its_alarm(qtbot: QtBot, look: Look) -> None:
    foot = NextSteps(look)
    qtbot.addWidget(foot)
    steps = (
        NextStep(clock="now", words="shape", bell=None),
        NextStep(clock="17:20", words="bread in", bell=Bell(key="plan/bread/1/put in", is_silent=False)),
        NextStep(clock="18:00", words="bread out", bell=Bell(key="plan/bread/1/take out", is_silent=True)),
    )
    foot.show_steps(steps)
    assert [words(foot, f"next_clock_{place}") for place in range(4)] == ["now", "17:20", "18:00", ""]
    said = [_bell(foot, place).accessibleName() for place in range(4)]
    assert said == ["", bell_words(is_silent=False), bell_words(is_silent=True), ""]
    heard: list[str] = []
    foot.bell_pressed.connect(heard.append)
    for place in range(4):
        qtbot.mouseClick(_bell(foot, place), Qt.MouseButton.LeftButton)
    assert heard == ["plan/bread/1/put in", "plan/bread/1/take out"]


@pytest.mark.parametrize("table", [-120.0, -20.0, -5.0, -1.0, 0.0, 1.0, 5.0, 20.0])
@pytest.mark.parametrize(
    ("before", "behind"), [(150.0, 2.0), (150.0, 150.0), (2.0, 200.0)], ids=["room before", "all round", "room behind"]
)
def test_the_clocks_of_now_and_of_the_table_never_cover_each_other(
    qapp: object, table: float, before: float, behind: float
) -> None:
    shown = replace(EMPTY, table=table, start=min(table, 0.0) - before, end=max(table, 0.0) + behind)
    lane = Lane(QPainter(), shown.start, shown.end, QRectF(206, 0, 900, 500), 0.0, 1.0)
    of_table, of_now = plates_of(lane, shown, 0.0)
    assert not of_table.box.intersects(of_now.box)
    for plate in (of_table, of_now):
        assert lane.box.left() <= plate.box.left()
        assert plate.box.right() <= lane.box.right() + 0.5
    if before == behind:
        assert (of_table.box.left() < of_now.box.left()) is (table <= 0.0)
    assert (of_table.x, of_now.x) == (lane.x(table), lane.x(0.0))
