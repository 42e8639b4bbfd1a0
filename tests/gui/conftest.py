"""A desk in memory with a held clock, the window on it, and a failure for whatever a test leaves behind."""

import gc
from collections.abc import Callable, Iterator
from datetime import UTC, datetime

import pytest
from PySide6.QtCore import QCoreApplication, QEvent, QThread, QTimer
from PySide6.QtWidgets import QApplication
from pytestqt.qtbot import QtBot

from cookstove_gui.desk import Desk
from cookstove_gui.desk.first_start import begin
from cookstove_gui.gui.alarms import bell, voice
from cookstove_gui.gui.desk_link import DeskLink
from cookstove_gui.gui.widgets.look import Look
from cookstove_gui.gui.window import MainWindow
from cookstove_gui.logbook.logbook import Logbook
from tests.gui.leftovers import left_behind
from tests.gui.pages import held_desk, light, the_look, undressed
from tests.held_clock import HeldClock
from tests.once import pages_work_once, stood

START = datetime(2026, 1, 5, 12, 2, tzinfo=UTC)


def pytest_collection_modifyitems(items: list[pytest.Item]) -> None:
    """A test that drives widgets is marked so by the fixture it uses."""
    for item in items:
        if "qtbot" in getattr(item, "fixturenames", ()):
            item.add_marker(pytest.mark.gui)


@pytest.fixture(autouse=True)
def _no_leftovers(request: pytest.FixtureRequest, monkeypatch: pytest.MonkeyPatch) -> Iterator[None]:
    """Fails a test that leaves a thread, a running timer or a window behind."""
    if "qtbot" not in request.fixturenames:
        yield
        return
    started: list[QThread | QTimer] = []
    for kind in (QThread, QTimer):
        start: Callable[..., None] = kind.start

        def noted(self: QThread | QTimer, *arguments: object, _start: Callable[..., None] = start) -> None:
            started.append(self)
            _start(self, *arguments)

        monkeypatch.setattr(kind, "start", noted)
    the_look(request.getfixturevalue("qapp"))
    gc.disable()  # as in the program: never in a working thread, where a widget destroyed may stop the window
    yield
    gc.enable()
    for widget in QApplication.topLevelWidgets():  # of a program, which froze its parts out of all collecting
        if isinstance(widget, MainWindow) and not widget.isVisible():
            widget.deleteLater()  # else it is dressed again with every window to come
    # Qt deletes later, in an event loop; here there is none, and a closed widget would go on listening.
    QCoreApplication.sendPostedEvents(None, QEvent.Type.DeferredDelete.value)
    if QApplication.topLevelWidgets() or left_behind(started):
        gc.collect()  # a window that was closed may hold itself, its timers and what would be dressed again
        QCoreApplication.sendPostedEvents(None, QEvent.Type.DeferredDelete.value)
    left = left_behind(started)
    assert not left, f"left behind: {', '.join(left)}"


@pytest.fixture(autouse=True)
def _no_sound(monkeypatch: pytest.MonkeyPatch) -> None:
    """No test is heard on the machine it runs on, and none waits for an engine of it."""
    monkeypatch.setattr(bell, "_output", lambda: None)
    monkeypatch.setattr(voice, "_first_engine", lambda: "")


@pytest.fixture
def worked_out_once(monkeypatch: pytest.MonkeyPatch) -> None:
    """Standings, studies and followed sessions are those of earlier tests where these asked the same."""
    pages_work_once(monkeypatch)


@pytest.fixture
def clock() -> HeldClock:
    return HeldClock(START)


@pytest.fixture
def desk(clock: HeldClock) -> Iterator[Desk]:
    logbook = Logbook.in_memory()
    made = Desk(logbook, clock)
    begin(made)
    yield made
    logbook.close()


@pytest.fixture
def fired_desk(desk: Desk, clock: HeldClock) -> Desk:
    """A desk with forty minutes of a fire behind it."""
    light(desk, clock)
    return desk


@pytest.fixture
def stood_desk(fired_desk: Desk) -> Desk:
    """The same, with its standing worked out (once for all tests: the same log gives the same standing)."""
    assert fired_desk.show(stood(fired_desk.inputs()))
    return fired_desk


@pytest.fixture
def link(desk: Desk) -> Iterator[DeskLink]:
    made = DeskLink(desk)
    yield made
    made.close()


@pytest.fixture(scope="session")
def look(qapp: QApplication) -> Look:
    return the_look(qapp)


@pytest.fixture
def window(desk: Desk, look: Look, qtbot: QtBot, worked_out_once: None) -> MainWindow:
    """The whole window, plot and all."""
    with undressed(look):
        made = MainWindow(desk, look)
    qtbot.addWidget(made)
    with qtbot.waitSignal(made.painted, timeout=10_000):
        made.show()
    return made


@pytest.fixture
def opened(look: Look, qtbot: QtBot, worked_out_once: None) -> Iterator[MainWindow]:
    """The window over a new logbook, with the keyboard."""
    desk = held_desk()
    with undressed(look):
        made = MainWindow(desk, look)
    qtbot.addWidget(made)
    with qtbot.waitSignal(made.painted, timeout=20_000), qtbot.waitActive(made):
        made.show()
        made.activateWindow()
    yield made
    made.close()
    desk.logbook.close()
