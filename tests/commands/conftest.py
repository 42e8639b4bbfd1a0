"""Commands run as the program runs them, and a made-up morning with and without a past."""

import json
from collections.abc import Callable
from dataclasses import dataclass
from datetime import UTC, datetime, timedelta
from pathlib import Path
from typing import Any

import pytest

from cookstove_gui.commands import run
from cookstove_gui.logbook.log_file import write_log
from cookstove_gui.logbook.stove_file import write_stove
from cookstove_gui.stove.checking import check_entry
from cookstove_gui.stove.entries import Entry
from cookstove_gui.stove.stove import Firebox, stove_with_default_spots
from tests.once import commands_work_once

SEVEN = datetime(2026, 1, 5, 12, 0, tzinfo=UTC)
OUTLOOK_KEYS = ["log", "now", "unit", "oven", "ahead", "band", "next_reading"]


@dataclass(frozen=True)
class Said:
    """What a command printed, and its exit code."""

    code: int
    lines: list[str]
    complaints: list[str]

    @property
    def objects(self) -> list[dict[str, Any]]:
        return [json.loads(line, parse_constant=pytest.fail) for line in self.lines]


@pytest.fixture(autouse=True)
def _worked_out_once(monkeypatch: pytest.MonkeyPatch) -> None:
    commands_work_once(monkeypatch)


@pytest.fixture
def say(capsys: pytest.CaptureFixture[str]) -> Callable[..., Said]:
    def command(*arguments: object) -> Said:
        code = run([str(argument) for argument in arguments])
        captured = capsys.readouterr()
        return Said(code, captured.out.splitlines(), captured.err.splitlines())

    return command


def rows(days: float = 0.0) -> list[Entry]:
    """A made-up morning: lit at seven, the oven at 300 °F an hour later."""
    made: list[Entry] = []

    def add(minute: float, kind: str, **fields: str) -> None:
        at = SEVEN + timedelta(days=days, minutes=minute)
        made.append(check_entry(number=len(made) + 1, at=at, offset_minutes=-300, kind=kind, **fields))

    add(0, "lit")
    add(0.5, "air", value="1")
    for minute, oven, top in ((5, 75, 110), (20, 130, 260), (35, 215, 370), (50, 270, 430), (60, 300, 450)):
        add(minute, "reading", spot="oven_centre", value=str(oven), unit="F")
        add(minute + 0.2, "reading", spot="top_back_left", value=str(top), unit="F")
        if minute == 20:
            add(21, "wood", note="two splits")
    return made


@pytest.fixture
def log(tmp_path: Path) -> Path:
    """A log with its stove's file beside it."""
    folder = tmp_path / "today"
    folder.mkdir()
    write_stove(folder / "stove.toml", stove_with_default_spots("Kitchen", Firebox.LEFT))
    write_log(folder / "bread.csv", rows())
    return folder / "bread.csv"


@pytest.fixture
def past(tmp_path: Path) -> Path:
    """A folder with one earlier session."""
    folder = tmp_path / "past"
    folder.mkdir()
    write_stove(folder / "stove.toml", stove_with_default_spots("Kitchen", Firebox.LEFT))
    write_log(folder / "earlier.csv", rows(days=-2))
    return folder
