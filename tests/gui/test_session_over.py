"""What is over gives no orders: no step, no time to come, no caution, and the clock on the wall is this computer's."""

from dataclasses import replace
from datetime import timedelta

import pytest
from PySide6.QtWidgets import QApplication, QPushButton
from pytestqt.qtbot import QtBot

from cookstove_gui.desk import Desk
from cookstove_gui.desk.heading import shown_clock
from cookstove_gui.desk.large import large
from cookstove_gui.gui.cook.what_if import WhatIf
from cookstove_gui.gui.desk_link import DeskLink
from cookstove_gui.gui.frame import large_view
from cookstove_gui.gui.frame.large_view import LargeView
from cookstove_gui.gui.time_axis.good_list import GoodList
from cookstove_gui.gui.time_axis.time_axis import TimeAxis
from cookstove_gui.gui.widgets.look import Look
from cookstove_gui.units import clock_text, local_offset_minutes
from tests.gui.hands import control, words
from tests.held_clock import HeldClock

A_DAY = 24 * 60.0


def is_over(desk: Desk, clock: HeldClock) -> None:
    """A day goes by without an entry."""
    desk.catch_up()
    clock.pass_minutes(A_DAY)
    desk.catch_up()  # as the window does every so often
    QApplication.processEvents()
    assert not desk.is_live


def test_what_was_good_later_is_no_longer_promised(
    stood_desk: Desk, link: DeskLink, look: Look, qtbot: QtBot, clock: HeldClock
) -> None:
    axis = TimeAxis(link, look)
    qtbot.addWidget(axis)
    axis.resize(764, 600)
    axis.show()
    QApplication.processEvents()
    rows = control(axis, "good_for_rows", GoodList)
    assert rows.isVisible()
    assert any(not row.when.startswith("now") for row in rows.rows())
    is_over(stood_desk, clock)
    assert not rows.isVisible()
    assert rows.rows() == []
    assert "over" in words(axis, "good_for_why")


def test_minutes_alone_take_back_what_was_promised(
    stood_desk: Desk, link: DeskLink, look: Look, qtbot: QtBot, clock: HeldClock
) -> None:
    axis = TimeAxis(link, look)
    qtbot.addWidget(axis)
    axis.resize(764, 600)
    axis.show()
    QApplication.processEvents()
    clock.pass_minutes(A_DAY)
    link.time_passed.emit()
    assert control(axis, "good_for_rows", GoodList).rows() == []


def test_no_step_is_offered(stood_desk: Desk, link: DeskLink, qtbot: QtBot, clock: HeldClock) -> None:
    row = WhatIf(link)
    qtbot.addWidget(row)
    row.show()
    offered = [button for button in row.findChildren(QPushButton) if button.isVisible()]
    assert len(offered) > 1
    clock.pass_minutes(A_DAY)
    link.time_passed.emit()  # nothing was typed; the minutes alone end it
    assert not any(button.isVisible() for button in offered)


def test_the_large_view_gives_the_last_heat_and_no_arrival(
    stood_desk: Desk, link: DeskLink, look: Look, qtbot: QtBot, clock: HeldClock, monkeypatch: pytest.MonkeyPatch
) -> None:
    view = LargeView(link, look)
    qtbot.addWidget(view)
    oven = view.shown.oven
    assert view.shown.heat == "bread heat"
    assert view.shown.window
    is_over(stood_desk, clock)
    assert (view.shown.heat, view.shown.window, view.shown.likely) == ("", "", "")
    assert view.shown.oven == oven
    assert view.shown.to_do[0] == "This session is over. You see it as it was at its end."
    assert max(minute for minute, _ in view.shown.ribbon) == 0
    told: list[str] = []
    monkeypatch.setattr(large_view, "_write", lambda _painter, words, *_a, **_k: told.append(words) or 0.0)
    view.grab()
    assert "end" in told
    assert "now" not in told


@pytest.mark.parametrize("days", [0, 190])
def test_the_clock_on_the_wall_is_the_sessions_only_while_it_lasts(desk: Desk, clock: HeldClock, days: int) -> None:
    now, nine_hours_ahead = clock(), 9 * 60
    desk.read("300", spot="oven_centre")
    rows = [replace(row, offset_minutes=nine_hours_ahead, at=now - timedelta(days=days)) for row in desk.rows]
    desk.open_session(desk.logbook.add_session(desk.stove.name, "Elsewhere", rows).number)
    offset = nine_hours_ahead if days == 0 else local_offset_minutes(now)
    assert large(desk).clock == shown_clock(desk) == clock_text(now, offset)
    assert desk.edge.at(rows[0].at) == clock_text(rows[0].at, nine_hours_ahead)  # what was done keeps its own clock
