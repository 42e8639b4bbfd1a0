"""The past is studied when hands are still, and what it teaches reaches the desk."""

from collections.abc import Iterator

import pytest
from pytestqt.qtbot import QtBot

from cookstove_gui.desk import Desk
from cookstove_gui.gui.background import past_study
from cookstove_gui.gui.background.past_study import PastStudy
from cookstove_gui.gui.desk_link import DeskLink
from cookstove_gui.gui.widgets.look import Look
from tests.held_clock import HeldClock


@pytest.fixture
def studying(link: DeskLink, look: Look, qtbot: QtBot, monkeypatch: pytest.MonkeyPatch) -> Iterator[PastStudy]:
    monkeypatch.setattr(past_study, "STILL_MS", 20)
    made = PastStudy.of(link)
    yield made
    made.close()


def test_the_past_is_studied_when_hands_are_still(
    fired_desk: Desk, studying: PastStudy, clock: HeldClock, qtbot: QtBot
) -> None:
    clock.pass_minutes(60 * 24)
    fired_desk.start_session()
    qtbot.waitUntil(lambda: fired_desk.study is not None, timeout=20_000)
    assert fired_desk.study.stove_name == fired_desk.stove.name


def test_without_sessions_there_is_nothing_to_study(desk: Desk, studying: PastStudy) -> None:
    studying.start_if_due()
    assert not studying.is_running


def test_a_link_has_one_study(link: DeskLink, studying: PastStudy) -> None:
    assert PastStudy.of(link) is studying
