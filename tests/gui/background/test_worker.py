"""Slow work runs in another thread; the newest request wins and a stale result is dropped."""

import threading
from collections.abc import Iterator

import pytest
from PySide6.QtCore import QObject
from pytestqt.qtbot import QtBot

from cookstove_gui.gui.background import worker as worker_module
from cookstove_gui.gui.background.worker import Worker


class Work:
    """Work that waits until it is let go."""

    def __init__(self) -> None:
        self.number = 0
        self.done: list[int] = []
        self.threads: set[int] = set()
        self.may_go = threading.Event()
        self.began = threading.Event()

    def supply(self) -> int:
        self.number += 1
        return self.number

    def __call__(self, number: int) -> int:
        self.threads.add(threading.get_ident())
        self.began.set()
        self.may_go.wait(5)
        self.done.append(number)
        return number


@pytest.fixture
def work() -> Work:
    return Work()


@pytest.fixture
def worker(work: Work, qtbot: QtBot) -> Iterator[Worker]:
    owner = QObject()
    made = Worker(work.supply, work, owner)
    yield made
    work.may_go.set()
    made.close()


def test_work_is_done_in_another_thread(worker: Worker, work: Work, qtbot: QtBot) -> None:
    work.may_go.set()
    with qtbot.waitSignal(worker.finished):
        worker.ask()
    assert work.threads.isdisjoint({threading.get_ident()})


def test_newest_request_wins(worker: Worker, work: Work, qtbot: QtBot) -> None:
    results: list[int] = []
    worker.finished.connect(results.append)
    worker.ask()
    qtbot.waitUntil(work.began.is_set)
    for _ in range(5):
        worker.ask()
    work.may_go.set()
    qtbot.waitUntil(lambda: not worker.is_busy)
    assert results == [2]


def test_requests_of_one_turn_are_worked_on_once(worker: Worker, work: Work, qtbot: QtBot) -> None:
    work.may_go.set()
    with qtbot.waitSignal(worker.finished):
        for _ in range(5):
            worker.ask()
    assert work.done == [1]


def test_an_error_comes_back_and_the_next_request_is_worked_on(qtbot: QtBot) -> None:
    owner = QObject()
    asked = iter([0, 2])
    worker = Worker(lambda: next(asked), lambda number: 10 // number, owner)
    with qtbot.waitSignal(worker.failed) as failed:
        worker.ask()
    assert isinstance(failed.args[0], ZeroDivisionError)
    with qtbot.waitSignal(worker.finished) as finished:
        worker.ask()
    assert finished.args == [5]
    worker.close()


def test_closing_waits_for_the_work_under_way(worker: Worker, work: Work, qtbot: QtBot) -> None:
    worker.ask()
    qtbot.waitUntil(work.began.is_set)
    work.may_go.set()
    worker.close()
    assert work.done == [1]


def test_requests_without_end_still_bring_results(
    worker: Worker, work: Work, qtbot: QtBot, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(worker_module, "PATIENCE", -1.0)
    results: list[int] = []
    worker.finished.connect(results.append)
    worker.ask()
    qtbot.waitUntil(work.began.is_set)
    worker.ask()
    work.may_go.set()
    qtbot.waitUntil(lambda: not worker.is_busy)
    assert results == [1, 2]


def test_a_closed_worker_begins_anew_when_it_is_asked_again(worker: Worker, work: Work, qtbot: QtBot) -> None:
    work.may_go.set()
    for _ in range(3):
        worker.ask()
        worker._send()  # sent, and closed before the thread could take it up
        worker.close()
    with qtbot.waitSignal(worker.finished) as finished:
        worker.ask()
    assert finished.args == [4]


def test_what_comes_back_after_closing_is_not_told(worker: Worker, work: Work, qtbot: QtBot) -> None:
    worker.ask()
    qtbot.waitUntil(work.began.is_set)
    work.may_go.set()
    worker.close()
    with qtbot.assertNotEmitted(worker.finished, wait=30):
        pass
