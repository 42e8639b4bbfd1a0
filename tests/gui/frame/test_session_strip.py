"""An old session on the table is announced as old; a live one is not."""

import pytest
from pytestqt.qtbot import QtBot

from cookstove_gui.desk import Desk
from cookstove_gui.gui.desk_link import DeskLink
from cookstove_gui.gui.frame.session_strip import SessionStrip
from cookstove_gui.gui.widgets.look import Look
from tests.gui.hands import click, words
from tests.held_clock import HeldClock


@pytest.fixture
def strip(link: DeskLink, look: Look, qtbot: QtBot) -> SessionStrip:
    made = SessionStrip(link)
    qtbot.addWidget(made)
    return made


def test_a_live_session_needs_no_words(fired_desk: Desk, strip: SessionStrip) -> None:
    assert strip.isHidden()


def test_an_old_session_is_called_old(fired_desk: Desk, strip: SessionStrip, clock: HeldClock, qtbot: QtBot) -> None:
    assert fired_desk.session is not None
    number, title = fired_desk.session.number, fired_desk.session.title
    clock.pass_minutes(60 * 24)
    fired_desk.open_session(number)
    qtbot.waitUntil(lambda: not strip.isHidden())
    assert title in words(strip, "session_words")


def test_a_new_session_begins_at_the_press(
    fired_desk: Desk, strip: SessionStrip, clock: HeldClock, qtbot: QtBot
) -> None:
    assert fired_desk.session is not None
    number = fired_desk.session.number
    clock.pass_minutes(60 * 24)
    fired_desk.open_session(number)
    qtbot.waitUntil(lambda: not strip.isHidden())
    click(strip, "new_session")
    qtbot.waitUntil(strip.isHidden)
    assert fired_desk.session.number != number


def test_on_a_warm_stove_the_cook_says_how_the_new_session_begins(
    fired_desk: Desk, strip: SessionStrip, clock: HeldClock, qtbot: QtBot
) -> None:
    assert fired_desk.session is not None
    number = fired_desk.session.number
    clock.pass_minutes(40)
    fired_desk.ask_new_session()
    qtbot.waitUntil(lambda: not strip.isHidden())
    assert "still warm" in words(strip, "session_words")
    assert "40 minutes ago" in words(strip, "session_words")
    click(strip, "warm_new")
    qtbot.waitUntil(strip.isHidden)
    assert fired_desk.session.number != number
    assert len(fired_desk.rows) == 1


@pytest.mark.parametrize(("key", "same"), [("warm_carry_on", True), ("warm_cold", False), ("warm_leave", True)])
def test_every_answer_closes_the_question(
    fired_desk: Desk, strip: SessionStrip, clock: HeldClock, qtbot: QtBot, key: str, same: bool
) -> None:
    assert fired_desk.session is not None
    number = fired_desk.session.number
    clock.pass_minutes(40)
    fired_desk.ask_new_session()
    qtbot.waitUntil(lambda: not strip.isHidden())
    click(strip, key)
    qtbot.waitUntil(strip.isHidden)
    assert (fired_desk.session.number == number) is same
