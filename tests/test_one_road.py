"""Window, command and report give the same answers about the same log."""

import json
import shutil
from collections.abc import Iterator
from dataclasses import replace
from datetime import datetime, timedelta
from pathlib import Path
from typing import Any

import pytest

from cookstove_gui.commands import run
from cookstove_gui.desk import Desk
from cookstove_gui.desk.logbook.reporting import About, Wanted, write_report
from cookstove_gui.desk.studying import study_reader
from cookstove_gui.logbook.folder import read_folder, stove_for
from cookstove_gui.logbook.log_file import read_log, write_log
from cookstove_gui.logbook.logbook import Logbook
from cookstove_gui.resource_files import folder
from cookstove_gui.situation import Standing
from cookstove_gui.stove.checking import check_entry
from cookstove_gui.stove.entries import Session
from cookstove_gui.study import study
from cookstove_gui.units import degrees, iso_clock
from tests.once import commands_work_once, stood

LOGS = sorted(folder("sample_sessions").glob("*/*.csv"))
QUICK = {"2025-11-01_top", "2025-12-06_kindling", "2025-11-02_bake"}  # short, of each stove one
SHORTEST = next(log for log in LOGS if log.stem == "2025-12-06_kindling")


@pytest.fixture(autouse=True)
def _worked_out_once(monkeypatch: pytest.MonkeyPatch) -> None:
    """A question asked again is answered as before; where window and command ask another, both are worked out."""
    commands_work_once(monkeypatch)


def as_the_window_has_it(log: Path, *, with_past: bool) -> tuple[Desk, int]:
    """A desk with the log on the table as if it were being written now, and the session's number."""
    past = read_folder(log.parent)
    stove = stove_for(log.parent, past.sessions, past.stove)
    logbook = Logbook.in_memory()
    logbook.save_stove(stove)
    this = next(session for session in past.sessions if session.title == log.stem)
    earlier = [session for session in past.sessions if _began(session) < _began(this)] if with_past else []
    for session in (*earlier, this):
        number = logbook.add_session(stove.name, session.title, session.entries).number
    desk = Desk(logbook, lambda: max(row.at for row in this.entries))
    desk.choose_stove(stove.name)
    desk.open_session(number)
    found = study(study_reader(desk)()) if with_past else None
    if found is not None:
        desk.show_study(found)
    return desk, number


def _began(session: Session) -> datetime:
    return min(row.at for row in session.entries)


def fits_of(standing: Standing) -> Iterator[dict[str, Any]]:
    for fit in standing.fits:
        best = fit.spots[0]
        yield {
            "task": fit.task.key,
            "state": str(fit.state),
            "spot": best.spot,
            "chance_now": round(best.chance_now, 4),
            "in_min": None if best.in_min is None else round(best.in_min, 1),
            "chance_then": round(best.chance_then, 4),
            "until_min": None if best.until_min is None else round(best.until_min, 1),
            "chances": [
                {"min": round((at - standing.now).total_seconds() / 60, 1), "chance": round(chance, 4)}
                for at, chance in zip(fit.starts, best.chances, strict=True)
            ],
        }


def heats_of(found: Any) -> dict[str, float]:
    return {level: round(float(degrees(getattr(found, level), "F")), 1) for level in ("p10", "p50", "p90")}


def said(capsys: pytest.CaptureFixture[str], *arguments: object) -> list[dict[str, Any]]:
    capsys.readouterr()
    assert run([str(argument) for argument in arguments]) == 0
    answers = [json.loads(line) for line in capsys.readouterr().out.splitlines()]
    return [{key: value for key, value in answer.items() if key != "log"} for answer in answers]


def agree(capsys: pytest.CaptureFixture[str], log: Path, *, with_past: bool) -> None:
    desk, _ = as_the_window_has_it(log, with_past=with_past)
    standing = stood(desk.inputs())
    past = ["--past", log.parent] if with_past else []
    assert said(capsys, "fit", log, *past, "--json") == list(fits_of(standing))
    zones = said(capsys, "zones", log, *past, "--json")
    assert [(zone["spot"], zone["p10"], zone["p50"], zone["p90"]) for zone in zones] == [
        (zone.spot, *heats_of(zone).values()) for zone in standing.zones.values()
    ]
    (outlook,) = said(capsys, "outlook", log, *past, "--json")
    assert outlook["oven"] == heats_of(standing.outlook.oven)
    assert [ahead["chance_in_band"] for ahead in outlook["ahead"]] == [
        round(ahead.chance_in_band, 4) for ahead in standing.outlook.ahead
    ]
    enters = standing.outlook.band.enters_min
    assert list(outlook["band"]["enters_min"].values()) == [
        None if minutes is None else round(minutes, 1) for minutes in (enters.p10, enters.p50, enters.p90)
    ]
    reading = standing.next_reading
    assert outlook["next_reading"] == ({"spot": reading.spot, "in_min": reading.in_min} if reading else None)


def reports_agree(tmp_path: Path, log: Path) -> None:
    desk, number = as_the_window_has_it(log, with_past=True)
    desk.rename_session(number, log.stem.replace("_", " "))
    write_report(desk, Wanted(about=About(session=number), one_page=False), tmp_path / "window.html")
    assert run(["report", str(log), "--past", str(log.parent), "-o", str(tmp_path / "command.html")]) == 0
    assert (tmp_path / "window.html").read_text("utf-8") == (tmp_path / "command.html").read_text("utf-8")


def _named(logs: list[Path]) -> list[Any]:
    """The logs as cases; all but the quick ones are slow."""
    return [
        pytest.param(log, id=f"{log.parent.name}/{log.stem}", marks=() if log.stem in QUICK else pytest.mark.slow)
        for log in logs
    ]


@pytest.mark.parametrize("log", _named(LOGS))
def test_a_stove_never_studied(capsys: pytest.CaptureFixture[str], log: Path) -> None:
    agree(capsys, log, with_past=False)


def test_a_stove_with_a_past(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """The first fire of a stove, and what was typed in the first hour of the next."""
    place = SHORTEST.parent
    shutil.copy(place / "stove.toml", tmp_path)
    shutil.copy(SHORTEST, tmp_path)
    begun = tmp_path / "2025-12-12_medium.csv"
    rows = read_log(place / begun.name).entries
    write_log(begun, [row for row in rows if row.at <= rows[0].at + timedelta(hours=1)])
    agree(capsys, begun, with_past=True)
    reports_agree(tmp_path, begun)


def test_what_is_in_the_oven_and_heat_carried_over(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """A log that begins warm and ends with a loaf in the oven says the same to the window and to the commands."""
    sample = SHORTEST
    rows = read_log(sample).entries
    first, last = rows[0], max(rows, key=lambda row: row.at)
    fields = {"number": 0, "offset_minutes": first.offset_minutes}
    warm = check_entry(
        at=first.at, kind="carried", value="220", unit="F", note="±20; oven 200 ±25; coals 0.2 ±0.1", **fields
    )
    loaf = check_entry(at=last.at - timedelta(minutes=12), kind="oven_in", note="loaf of bread", **fields)
    probe = check_entry(at=last.at - timedelta(minutes=3), kind="probe", value="90", unit="F", **fields)
    told = [replace(row, number=number) for number, row in enumerate((warm, *rows, loaf, probe), start=1)]
    write_log(tmp_path / "log.csv", told)
    shutil.copy(sample.parent / "stove.toml", tmp_path)
    agree(capsys, tmp_path / "log.csv", with_past=False)
    desk, _ = as_the_window_has_it(tmp_path / "log.csv", with_past=False)
    (bake,) = stood(desk.inputs()).bakes
    (outlook,) = said(capsys, "outlook", tmp_path / "log.csv", "--json")
    (inside,) = outlook["in_oven"]
    at = {"went_in": bake.inside.went_in, "done_likely": bake.likely, "turn_at": bake.turn_at}
    assert {name: inside[name] for name in at} == {
        name: None if moment is None else iso_clock(moment, first.offset_minutes) for name, moment in at.items()
    }


@pytest.mark.slow
@pytest.mark.parametrize("log", LOGS, ids=lambda log: f"{log.parent.name}/{log.stem}")
def test_every_sample_with_its_past(capsys: pytest.CaptureFixture[str], log: Path) -> None:
    agree(capsys, log, with_past=True)


@pytest.mark.slow
@pytest.mark.parametrize("log", LOGS, ids=lambda log: f"{log.parent.name}/{log.stem}")
def test_every_report_with_its_past(tmp_path: Path, log: Path) -> None:
    reports_agree(tmp_path, log)
