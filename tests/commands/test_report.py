"""A report by command tells what the window's tells of the same logs."""

from collections.abc import Callable
from dataclasses import replace
from datetime import timedelta
from pathlib import Path
from types import SimpleNamespace

import pytest

from cookstove_gui.cooking.fit.bands import band_from_text
from cookstove_gui.desk import Desk
from cookstove_gui.desk.logbook.reporting import About, Wanted, made_report
from cookstove_gui.desk.logbook.season_cautions import CautionCounts
from cookstove_gui.desk.studying import study_reader
from cookstove_gui.forecast.answers import Quantiles, RecordRow
from cookstove_gui.logbook.folder import read_folder, stove_for
from cookstove_gui.logbook.log_file import write_log
from cookstove_gui.logbook.logbook import Logbook
from cookstove_gui.reports.season_report import SeasonReport
from cookstove_gui.situation import Inputs
from cookstove_gui.study import study
from tests.held_clock import HeldClock

from .conftest import SEVEN, Said, rows

Say = Callable[..., Said]


@pytest.fixture
def logs(past: Path) -> Path:
    """Two firings of one winter, the cooktop far too hot in the later one, and one of the next winter."""
    *most, last = rows(days=1)
    write_log(past / "later.csv", [*most, replace(last, value="860")])
    write_log(past / "next_winter.csv", rows(days=365))
    return past


def _desk(logs: Path) -> Desk:
    """A desk over the same sessions."""
    found = read_folder(logs)
    book = Logbook.in_memory()
    book.save_stove(stove_for(logs, found.sessions, found.stove))
    for one in found.sessions:
        book.add_session("Kitchen", one.title, one.entries)
    desk = Desk(book, HeldClock(SEVEN))
    desk.choose_stove("Kitchen")
    return desk


def _of_2025(desk: Desk) -> list[int]:
    return [one.number for one in reversed(desk.sessions) if "winter" not in one.title]


def test_a_season_asks_the_same_of_its_sessions_as_the_window(
    say: Say, logs: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    asked: list[Inputs] = []
    monkeypatch.setattr("cookstove_gui.reports.season_cautions.cautions_over", lambda one: asked.append(one) or ())
    monkeypatch.setattr("cookstove_gui.commands.report.past_lessons", lambda *_: SimpleNamespace(character=None))
    target = tmp_path / "winter.html"
    assert say("report", logs, "--season", "2025", "--cautions", "-o", target).code == 0
    by_command = [*asked]
    asked.clear()
    desk = _desk(logs)
    assert CautionCounts(desk).counted(_of_2025(desk), lambda *_: None, lambda: False) is not None
    assert len(by_command) == 2
    plain = [replace(one, earlier=(), serial=0, baked=()) for one in by_command]  # of a stove fired before
    assert plain == [replace(one, serial=0, baked=()) for one in sorted(asked, key=lambda one: one.now)]


@pytest.mark.slow
def test_a_season_counts_the_cautions_that_the_window_counts(say: Say, logs: Path, tmp_path: Path) -> None:
    target = tmp_path / "winter.html"
    assert say("report", logs, "--season", "2025", "--cautions", "-o", target).code == 0
    desk = _desk(logs)
    known = study(study_reader(desk)())
    assert known is not None
    desk.show_study(known)
    counted = CautionCounts(desk).counted(_of_2025(desk), lambda *_: None, lambda: False)
    assert counted is not None
    assert ("Cooktop too hot", 1) in counted.cautions
    by_window = made_report(desk, Wanted(about=About(season=2025), one_page=False, cautions=counted.cautions))
    assert isinstance(by_window, SeasonReport)
    page = target.read_text("utf-8")
    assert by_window.cautions_said in page
    for title, words in by_window.cautions:
        assert title in page
        assert words in page


def test_cautions_are_not_counted_unasked(say: Say, logs: Path, tmp_path: Path) -> None:
    target = tmp_path / "winter.html"
    assert say("report", logs, "--season", "2025", "-o", target).code == 0
    assert "Cooktop too hot" not in target.read_text("utf-8")


def test_cautions_are_counted_of_a_season_only(say: Say, log: Path, tmp_path: Path) -> None:
    said = say("report", log, "--cautions", "-o", tmp_path / "day.html")
    assert said.code == 2
    assert "--season YEAR" in said.complaints[0]


def test_a_session_is_reported_with_what_was_projected(
    say: Say, log: Path, past: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    row = RecordRow(
        session="bread", made_at=SEVEN + timedelta(minutes=20), offset_minutes=-300,
        band=band_from_text("bread", "F"), enters_min=Quantiles(p10=20.0, p50=28.0, p90=40.0),
        likely_min=27.0, came_true_min=25.0,
    )  # fmt: skip
    monkeypatch.setattr("cookstove_gui.commands.report.past_lessons", lambda *_: SimpleNamespace(record=[row]))
    told: list[tuple[RecordRow, ...]] = []
    monkeypatch.setattr(
        "cookstove_gui.reports.session_report.session_report", lambda *_, record, **_more: told.append(record)
    )
    monkeypatch.setattr("cookstove_gui.commands.report.write_report", lambda *_: None)
    for option in ([], ["--said"]):
        assert say("report", log, "--past", past, *option, "-o", tmp_path / "day.html").code == 0
    assert told == [(), (row,)]
