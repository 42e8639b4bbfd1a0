"""Practice plays an invented session as if live, at the pace that is chosen, and keeps it out of the cook's logbook."""

import shutil
from collections.abc import Iterator
from pathlib import Path

import pytest
from pytestqt.qtbot import QtBot

from cookstove_gui.desk import Desk
from cookstove_gui.desk.practice import Practice
from cookstove_gui.desk.practice_session import practice_desk
from cookstove_gui.errors import InputProblem
from cookstove_gui.gui.frame.practice_bar import PracticeBar
from cookstove_gui.gui.widgets.look import Look
from cookstove_gui.resource_files import folder
from tests.gui.hands import click, words

SAMPLE = "brown_cast_stove"


class Seconds:
    """Seconds that pass when told."""

    def __init__(self) -> None:
        self.now = 0.0

    def __call__(self) -> float:
        return self.now


@pytest.fixture
def seconds() -> Seconds:
    return Seconds()


@pytest.fixture
def played(seconds: Seconds) -> Iterator[tuple[Desk, Practice]]:
    desk, practice = practice_desk(folder("sample_sessions") / SAMPLE, 60.0, seconds)
    yield desk, practice
    desk.logbook.close()


@pytest.fixture
def bar(played: tuple[Desk, Practice], look: Look, qtbot: QtBot) -> PracticeBar:
    made = PracticeBar(*played)
    qtbot.addWidget(made)
    made.show()
    return made


def test_past_sessions_are_there_and_the_played_one_is_still_empty(played: tuple[Desk, Practice]) -> None:
    desk, _ = played
    assert len(desk.sessions) == 7
    assert desk.rows == ()


def test_rows_come_when_their_time_comes(played: tuple[Desk, Practice], bar: PracticeBar, seconds: Seconds) -> None:
    desk, practice = played
    seconds.now = 20.0
    bar.play()
    assert desk.rows
    assert all(row.at <= practice.clock() for row in desk.rows)
    assert not practice.is_over


def test_pause_stands_still(played: tuple[Desk, Practice], bar: PracticeBar, seconds: Seconds) -> None:
    _, practice = played
    click(bar, "pace_0")
    before = practice.clock()
    seconds.now = 100.0
    assert practice.clock() == before


def test_the_end_is_told(played: tuple[Desk, Practice], bar: PracticeBar, seconds: Seconds) -> None:
    seconds.now = 24 * 60.0
    bar.play()
    assert "It has ended" in words(bar, "practice_words")


def test_the_samples_are_not_written_to(tmp_path: Path, seconds: Seconds, look: Look, qtbot: QtBot) -> None:
    place = tmp_path / SAMPLE
    shutil.copytree(folder("sample_sessions") / SAMPLE, place)
    before = {path: path.read_bytes() for path in place.iterdir()}
    desk, practice = practice_desk(place, 60.0, seconds)
    bar = PracticeBar(desk, practice)
    qtbot.addWidget(bar)
    seconds.now = 24 * 60.0
    bar.play()
    desk.logbook.close()
    assert {path: path.read_bytes() for path in place.iterdir()} == before


def test_a_folder_without_logs_is_told(tmp_path: Path) -> None:
    with pytest.raises(InputProblem, match="holds no log"):
        practice_desk(tmp_path, 60.0)
