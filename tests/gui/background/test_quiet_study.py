"""The past is studied when hands are still, and what it teaches reaches the desk."""

from collections.abc import Iterator

import pytest
from pytestqt.qtbot import QtBot

from cookstove_gui.desk import Desk
from cookstove_gui.gui.background import quiet_study
from cookstove_gui.gui.background.quiet_study import QuietStudy
from cookstove_gui.gui.background.study_worker import StudyWorker
from cookstove_gui.gui.desk_link import DeskLink
from cookstove_gui.gui.widgets.look import Look
from tests.held_clock import HeldClock


@pytest.fixture
def waiting(link: DeskLink, look: Look, qtbot: QtBot, monkeypatch: pytest.MonkeyPatch) -> Iterator[QuietStudy]:
    monkeypatch.setattr(quiet_study, "STILL_MS", 20)
    made = QuietStudy(link)
    yield made
    made.stop()
    StudyWorker.of(link).close()


def test_the_past_is_studied_when_hands_are_still(
    fired_desk: Desk, waiting: QuietStudy, clock: HeldClock, qtbot: QtBot
) -> None:
    clock.pass_minutes(60 * 24)
    fired_desk.start_session()
    qtbot.waitUntil(lambda: fired_desk.study is not None, timeout=20_000)
    assert fired_desk.study.stove_name == fired_desk.stove.name


def test_without_sessions_there_is_nothing_to_study(desk: Desk, waiting: QuietStudy, link: DeskLink) -> None:
    waiting.start_if_due()
    assert not StudyWorker.of(link).is_running
