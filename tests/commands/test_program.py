"""The program hands commands over, and loads nothing of the window for them."""

import io
import json
import subprocess
import sys
from pathlib import Path

import pytest

from cookstove_gui.__main__ import main

from .conftest import OUTLOOK_KEYS


def _loaded(script: str) -> list[str]:
    names = "('PySide6', 'shiboken6', 'pyqtgraph', 'pandas', 'sklearn', 'scipy.stats', 'scipy.optimize')"
    code = f"{script}\nimport json, sys\nprint(json.dumps([name for name in {names} if name in sys.modules]))"
    made = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True, timeout=60)
    found = json.loads(made.stdout.splitlines()[-1])
    assert isinstance(found, list)
    return found


@pytest.mark.parametrize("command", ["outlook", "zones", "fit"])
def test_answers_load_no_window_no_tables_no_charts(log: Path, command: str) -> None:
    script = f"from cookstove_gui.commands import run\nassert run([{command!r}, {str(log)!r}, '--json']) == 0"
    assert _loaded(script) == []


def test_report_loads_no_window_and_no_tables(log: Path, tmp_path: Path) -> None:
    target = str(tmp_path / "report.html")
    script = f"from cookstove_gui.commands import run\nassert run(['report', {str(log)!r}, '-o', {target!r}]) == 0"
    assert _loaded(script) == []


@pytest.mark.parametrize(("option", "whole"), [("", True), ("'--one-page', ", False)])
def test_a_report_is_the_whole_record_unless_it_is_for_a_visitor(
    log: Path, tmp_path: Path, option: str, whole: bool
) -> None:
    target = tmp_path / "report.html"
    asked = f"['report', {option}{str(log)!r}, '-o', {str(target)!r}]"
    script = f"from cookstove_gui.commands import run\nrun({asked})"
    made = subprocess.run([sys.executable, "-c", script], check=True, capture_output=True, timeout=60)
    assert made.stderr == b""
    page = target.read_text("utf-8")
    assert "Highest of each spot" in page
    assert ("What was done" in page) is whole


def test_program_hands_commands_over_and_gives_their_code(log: Path) -> None:
    program = [sys.executable, "-m", "cookstove_gui"]
    good = subprocess.run([*program, "outlook", str(log), "--json"], capture_output=True, text=True, timeout=60)
    assert (good.returncode, good.stderr) == (0, "")
    assert list(json.loads(good.stdout)) == OUTLOOK_KEYS
    bad = subprocess.run([*program, "outlook", "nowhere.csv"], capture_output=True, text=True, timeout=60)
    assert (bad.returncode, bad.stdout, len(bad.stderr.splitlines())) == (2, "", 1)


def test_program_bears_a_reader_that_has_seen_enough(log: Path) -> None:
    program = (
        f"{sys.executable} -m cookstove_gui zones {' '.join([str(log)] * 3)} --json | true; exit ${{PIPESTATUS[0]}}"
    )
    made = subprocess.run(["bash", "-c", program], capture_output=True, text=True, timeout=60)
    assert (made.returncode, made.stderr) == (0, "")


def test_fault_of_the_program_itself_is_one_line_and_no_traceback(monkeypatch: pytest.MonkeyPatch) -> None:
    def fail(_: object) -> int:
        raise ZeroDivisionError("division by zero")

    monkeypatch.setattr("cookstove_gui.commands.run", fail)
    monkeypatch.setattr(sys, "argv", ["cookstove-gui", "outlook", "bread.csv"])
    complaints = io.StringIO()
    monkeypatch.setattr(sys, "stderr", complaints)
    assert main() == 1
    assert complaints.getvalue() == (
        "cookstove-gui failed by a fault of its own (ZeroDivisionError: division by zero).\n"
    )
