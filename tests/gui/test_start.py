"""The program starts with its window, or says in one sentence why it cannot."""

import argparse
import subprocess
import sys
from pathlib import Path

import pytest
from PySide6.QtWidgets import QApplication, QPushButton, QWidget
from pytestqt.qtbot import QtBot

from cookstove_gui.errors import SurroundingsProblem
from cookstove_gui.gui.start import Program, first_sample, open_window, parse_arguments, tell_faults
from tests.gui.hands import click, control, words


@pytest.fixture
def options(tmp_path: Path) -> argparse.Namespace:
    return parse_arguments(["--logbook", str(tmp_path / "made" / "logbook.sqlite")])


def test_first_start_needs_no_setting_up_and_paints_before_the_plotting_library_is_asked_for(
    options: argparse.Namespace, qapp: QApplication, qtbot: QtBot
) -> None:
    program = Program(qapp, options)
    program.open()
    assert program.window is not None
    qtbot.addWidget(program.window)
    assert not program.window.findChildren(QWidget, "trend_plot")
    qtbot.waitSignal(program.window.painted, timeout=10_000).wait()
    assert program.window.findChildren(QWidget, "trend_plot")
    assert options.logbook.exists()
    program.close()


def test_a_bad_end_is_told_once_the_window_is_painted_and_a_good_one_is_not(
    options: argparse.Namespace, qapp: QApplication, qtbot: QtBot
) -> None:
    lock = options.logbook.parent / "window.lock"
    lock.parent.mkdir(exist_ok=True)
    lock.write_text("999999999\ncookstove-gui\n\n")  # no such process
    for is_told in (True, False):
        program = Program(qapp, options)
        program.open()
        assert program.window is not None
        with qtbot.waitSignal(program.window.painted, timeout=10_000):
            assert lock.exists() is is_told
        qtbot.waitUntil(lock.exists)
        qtbot.wait(50)
        assert ("did not end properly" in words(program.window, "fault_words")) is is_told
        program.close()
        assert not lock.exists()


def test_a_logbook_that_cannot_be_opened_is_told_in_a_sentence(
    options: argparse.Namespace, qapp: QApplication, qtbot: QtBot
) -> None:
    options.logbook.parent.write_text("a file where the folder should be")
    program = Program(qapp, options)
    program.open()
    assert program.window is None
    pane = program.pane
    assert pane is not None
    qtbot.addWidget(pane)
    assert "logbook" in words(pane, "problem_words")
    assert control(pane, "way_other", QPushButton).isVisible()
    options.logbook.parent.unlink()
    click(pane, "way_again")
    assert program.window is not None
    program.close()


@pytest.mark.parametrize("arguments", [["--unit", "K"], ["--nonsense"], ["--pace", "fast"]])
def test_a_wrong_argument_ends_with_one_line(arguments: list[str], capsys: pytest.CaptureFixture[str]) -> None:
    with pytest.raises(SystemExit) as ended:
        parse_arguments(arguments)
    assert ended.value.code == 2
    assert len(capsys.readouterr().err.splitlines()) == 1


def test_practice_without_samples_is_told(tmp_path: Path) -> None:
    with pytest.raises(SurroundingsProblem, match="no sample sessions"):
        first_sample(tmp_path)


def test_a_practice_folder_without_logs_ends_with_one_line(
    tmp_path: Path, qapp: QApplication, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(sys, "excepthook", sys.excepthook)
    assert open_window(["--practice", str(tmp_path)]) == 2
    assert len(capsys.readouterr().err.splitlines()) == 1


def test_what_goes_wrong_is_told_in_the_window_which_goes_on(
    options: argparse.Namespace, qapp: QApplication, qtbot: QtBot, capsys: pytest.CaptureFixture[str]
) -> None:
    options.logbook.parent.mkdir()
    (options.logbook.parent / "tasks.toml").write_text("[[task", encoding="utf-8")
    program = Program(qapp, options)
    program.open()
    assert program.window is not None
    qtbot.addWidget(program.window)
    qtbot.waitSignal(program.window.painted, timeout=10_000).wait()
    assert words(program.window, "fault_words").startswith("Your own tasks.toml")
    tell_faults(program)(SurroundingsProblem, SurroundingsProblem("The disk is full; make room."), None)
    assert words(program.window, "fault_words") == "The disk is full; make room."
    assert capsys.readouterr().err == ""
    tell_faults(program)(ValueError, ValueError("made up"), None)
    assert "made up" in words(program.window, "fault_words")
    assert "ValueError: made up" in capsys.readouterr().err
    program.close()


def test_the_program_paints_and_ends_by_itself_when_asked_to(tmp_path: Path) -> None:
    done = subprocess.run(
        [sys.executable, "-m", "cookstove_gui", "--quit-when-painted", "--logbook", str(tmp_path / "logbook.sqlite")],
        capture_output=True,
        text=True,
        timeout=60,
        check=False,
    )
    assert done.returncode == 0
    assert "Traceback" not in done.stderr


_LOADED_WHEN_PAINTED = """
import sys
from cookstove_gui.gui import start
from cookstove_gui.gui.window import MainWindow
MainWindow._tell_painted = lambda window: (print(*sys.modules), window.painted.emit())
sys.exit(start.open_window(["--quit-when-painted", "--logbook", sys.argv[1]]))
"""


def test_nothing_that_is_not_shown_is_loaded_before_the_window_is_painted(tmp_path: Path) -> None:
    done = subprocess.run(
        [sys.executable, "-c", _LOADED_WHEN_PAINTED, str(tmp_path / "logbook.sqlite")],
        capture_output=True, text=True, timeout=60, check=True,
    )  # fmt: skip
    loaded = set(done.stdout.split())
    assert "pyqtgraph" in loaded
    waits = (
        "one_road", "study", "forecast.model", "forecast.tracking", "cooking.safety.cautions",
        "cooking.baking.doneness", "cooking.pans", "reports", "gui.plan", "gui.my_stove", "gui.logbook",
    )  # fmt: skip
    assert loaded & {"scipy", "pandas", "matplotlib", *(f"cookstove_gui.{name}" for name in waits)} == set()
