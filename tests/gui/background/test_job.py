"""Slow work runs in another thread; the newest request wins, a stale result is dropped, no thread is left."""

import threading
import time
from collections.abc import Iterator

import pytest
from PySide6.QtCore import QObject, QThread
from pytestqt.qtbot import QtBot

from cookstove_gui.errors import InputProblem
from cookstove_gui.gui.background import job as job_module
from cookstove_gui.gui.background.job import Job, close_jobs, end_all


class Work:
    """Work that waits until it is let go."""

    def __init__(self) -> None:
        self.number = 0
        self.done: list[int] = []
        self.threads: set[int] = set()
        self.shown: list[int] = []
        self.may_go = threading.Event()
        self.began = threading.Event()

    def inputs(self) -> int:
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
def owner(qtbot: QtBot) -> QObject:
    return QObject()


@pytest.fixture
def job(work: Work, owner: QObject) -> Iterator[Job[int, int]]:
    made = Job(owner, work.inputs, work, work.shown.append)
    yield made
    work.may_go.set()
    made.close()


def settled(job: Job[int, int], qtbot: QtBot) -> None:
    qtbot.waitUntil(lambda: not job.is_busy)


def test_work_is_done_in_another_thread(job: Job[int, int], work: Work, qtbot: QtBot) -> None:
    work.may_go.set()
    job.ask()
    settled(job, qtbot)
    assert work.shown == [1]
    assert work.threads.isdisjoint({threading.get_ident()})


def test_newest_request_wins(job: Job[int, int], work: Work, qtbot: QtBot) -> None:
    job.ask()
    qtbot.waitUntil(work.began.is_set)
    for _ in range(5):
        job.ask()
    work.may_go.set()
    settled(job, qtbot)
    assert work.shown == [2]


def test_requests_of_one_turn_are_worked_on_once(job: Job[int, int], work: Work, qtbot: QtBot) -> None:
    work.may_go.set()
    for _ in range(5):
        job.ask()
    settled(job, qtbot)
    assert work.done == [1]


def test_without_inputs_nothing_is_worked_on(owner: QObject, work: Work, qtbot: QtBot) -> None:
    job = Job[int, int](owner, lambda: None, work, work.shown.append)
    job.ask()
    settled(job, qtbot)
    assert work.threads == set()


def test_a_request_made_while_a_result_is_shown_never_runs_beside_another(
    owner: QObject, work: Work, qtbot: QtBot
) -> None:
    running: list[int] = []
    most: list[int] = []

    def at_work(number: int) -> int:
        running.append(number)
        most.append(len(running))
        threading.Event().wait(0.06)  # longer than requests are gathered
        running.remove(number)
        return number

    def show(number: int) -> None:
        if number < 3:
            job.ask()
            job._start()
            job.ask()

    job = Job(owner, work.inputs, at_work, show)
    job.ask()
    settled(job, qtbot)
    assert most == [1] * len(most)
    assert work.number >= 3


def test_a_problem_becomes_a_sentence_and_the_next_request_is_worked_on(owner: QObject, qtbot: QtBot) -> None:
    asked = iter([0, 2])
    told: list[str] = []
    shown: list[int] = []

    def halved(number: int) -> int:
        if number == 0:
            raise InputProblem("Nothing there; type a number.")
        return number // 2

    job = Job(owner, lambda: next(asked), halved, shown.append, told.append)
    job.ask()
    settled(job, qtbot)
    assert told == ["Nothing there; type a number."]
    job.ask()
    settled(job, qtbot)
    assert shown == [1]


@pytest.mark.parametrize("error", [ZeroDivisionError("ours"), InputProblem("Nobody takes it.")])
def test_what_nobody_takes_goes_on_to_the_window(owner: QObject, qtbot: QtBot, error: Exception) -> None:
    def fail(_number: int) -> int:
        raise error

    refuse = None if isinstance(error, InputProblem) else [].append
    job = Job(owner, lambda: 1, fail, lambda _found: None, refuse)
    with qtbot.captureExceptions() as raised:
        job.ask()
        settled(job, qtbot)
    assert [one[1] for one in raised] == [error]


def test_progress_is_reported_in_the_windows_thread(owner: QObject, qtbot: QtBot) -> None:
    heard: list[tuple[int, int, bool]] = []

    def work(total: int) -> int:
        job.report(1, total)
        return total

    job = Job(owner, lambda: 3, work, lambda _found: None)
    here = threading.get_ident()
    job.progressed.connect(lambda done, total: heard.append((done, total, threading.get_ident() == here)))
    job.ask()
    settled(job, qtbot)
    qtbot.waitUntil(lambda: heard == [(1, 3, True)])


def test_cancelled_work_may_give_up_and_the_next_request_runs_whole(owner: QObject, qtbot: QtBot) -> None:
    shown: list[str] = []
    began = threading.Event()

    def work(_asked: int) -> str:
        began.set()
        waited = 0
        while patient and not job.is_cancelled() and waited < 500:
            threading.Event().wait(0.01)
            waited += 1
        return "given up" if job.is_cancelled() else "whole"

    patient = [True]
    job = Job(owner, lambda: 1, work, shown.append)
    job.ask()
    qtbot.waitUntil(began.is_set)
    job.cancel()
    settled(job, qtbot)
    patient.clear()
    job.ask()
    settled(job, qtbot)
    assert shown == ["given up", "whole"]


def test_a_request_cancelled_before_it_began_is_dropped(job: Job[int, int], work: Work, qtbot: QtBot) -> None:
    job.ask()
    job.cancel()
    assert not job.is_busy
    qtbot.wait(60)
    assert work.number == 0


def test_closing_waits_for_the_work_under_way(job: Job[int, int], work: Work, qtbot: QtBot) -> None:
    job.ask()
    qtbot.waitUntil(work.began.is_set)
    work.may_go.set()
    job.close()
    assert work.done == [1]
    assert job.is_cancelled()


def test_all_jobs_below_a_window_are_closed(owner: QObject, work: Work, qtbot: QtBot) -> None:
    part = QObject(QObject(owner))
    job = Job(part, work.inputs, work, work.shown.append)
    job.ask()
    qtbot.waitUntil(work.began.is_set)
    work.may_go.set()
    close_jobs(owner)
    assert not job.is_busy
    assert work.done == [1]


def test_requests_without_end_still_bring_results(
    job: Job[int, int], work: Work, qtbot: QtBot, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(job_module, "PATIENCE", -1.0)
    job.ask()
    qtbot.waitUntil(work.began.is_set)
    job.ask()
    work.may_go.set()
    settled(job, qtbot)
    assert work.shown == [1, 2]


def test_a_closed_job_begins_again_when_it_is_asked_again(job: Job[int, int], work: Work, qtbot: QtBot) -> None:
    work.may_go.set()
    for _ in range(3):
        job.ask()
        job._start()  # begun, and closed before the result could be taken
        job.close()
    job.ask()
    settled(job, qtbot)
    assert work.shown == [4]


def test_what_comes_back_after_closing_is_not_shown(job: Job[int, int], work: Work, qtbot: QtBot) -> None:
    job.ask()
    qtbot.waitUntil(work.began.is_set)
    work.may_go.set()
    job.close()
    qtbot.wait(30)
    assert work.shown == []


def test_no_thread_outlives_its_request(
    job: Job[int, int], work: Work, qtbot: QtBot, monkeypatch: pytest.MonkeyPatch
) -> None:
    started: list[QThread] = []
    start = QThread.start
    monkeypatch.setattr(QThread, "start", lambda self, *rest: (started.append(self), start(self, *rest)))
    work.may_go.set()
    job.ask()
    settled(job, qtbot)
    assert [thread.isRunning() for thread in started] == [False]


def test_work_that_is_late_is_told_and_then_replaced(
    work: Work, owner: QObject, qtbot: QtBot, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(job_module, "_LATE_MS", 20)
    monkeypatch.setattr(job_module, "_HUNG_MS", 60)
    told: list[bool] = []
    job = Job(owner, work.inputs, work, work.shown.append, late=told.append)
    job.ask()
    qtbot.waitUntil(lambda: told[:2] == [False, True])
    assert job.is_busy
    assert job_module.some_hang()
    work.may_go.set()
    settled(job, qtbot)
    assert work.shown[-1] >= 2  # of the run that took the place of the first
    assert 1 not in work.shown
    qtbot.waitUntil(lambda: not job_module.some_hang())
    job.close()


def test_inputs_that_fail_once_leave_the_job_ready(work: Work, owner: QObject, qtbot: QtBot) -> None:
    def inputs() -> int:
        if work.inputs() == 1:
            raise KeyError("made up")
        return work.number

    work.may_go.set()
    job = Job(owner, inputs, work, work.shown.append)
    with qtbot.captureExceptions() as raised:
        job.ask()
        qtbot.waitUntil(lambda: bool(raised))
    assert not job.is_busy
    job.ask()
    settled(job, qtbot)
    assert work.shown == [2]
    job.close()


def test_a_script_that_ends_early_leaves_no_thread_running(qtbot: QtBot) -> None:
    began, ended = threading.Event(), threading.Event()

    def work(_number: int) -> int:
        began.set()
        while not job.is_cancelled():
            time.sleep(0.001)
        ended.set()
        return 1

    owner = QObject()
    job = Job(owner, lambda: 1, work, lambda _found: None)
    job.ask()
    qtbot.waitUntil(began.is_set)
    end_all()
    assert ended.is_set()
    assert not any(thread.isRunning() for thread in job_module._begun)
    job.close()
