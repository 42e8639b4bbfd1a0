"""Zones, fit and track record have their keys, and read as lines without JSON."""

from collections.abc import Callable
from dataclasses import replace
from datetime import timedelta
from pathlib import Path

import pytest

from cookstove_gui.logbook.log_file import write_log
from cookstove_gui.logbook.stove_file import write_stove
from cookstove_gui.stove.checking import check_entry
from cookstove_gui.stove.entries import Entry
from cookstove_gui.stove.stove import stove_with_default_spots

from .conftest import SEVEN, Said


def test_zones_name_every_spot_read_or_not(say: Callable[..., Said], log: Path) -> None:
    said = say("zones", log, "--json")
    assert said.code == 0
    assert all(
        list(row) == ["log", "spot", "p10", "p50", "p90", "last_reading", "last_reading_age_min"]
        for row in said.objects
    )
    zones = {row["spot"]: row for row in said.objects}
    assert set(zones) == {spot.name for spot in stove_with_default_spots("x").spots}
    assert zones["oven_centre"]["last_reading"] == 300.0
    assert zones["oven_centre"]["last_reading_age_min"] == 0.2
    assert zones["flue"]["last_reading"] is None
    assert zones["flue"]["last_reading_age_min"] is None
    assert all(row["p10"] <= row["p50"] <= row["p90"] for row in zones.values())


def test_spot_that_only_the_log_names_has_a_zone(say: Callable[..., Said], log: Path) -> None:
    text = log.read_text("utf-8")
    log.write_text(text + "2026-01-05T08:02:00-05:00,reading,warming_shelf,140,F,\n", encoding="utf-8")
    assert say("zones", log, "--json").objects[-1]["spot"] == "warming_shelf"


def test_zones_read_as_lines_without_json(say: Callable[..., Said], log: Path) -> None:
    lines = say("zones", log, "--unit", "C").lines
    assert lines[0].startswith(str(log))
    assert any("top back left" in line and "°C" in line and "read 232 °C 0 min ago" in line for line in lines)


def test_fit_gives_every_task_its_best_spot(say: Callable[..., Said], log: Path) -> None:
    said = say("fit", log, "--json")
    assert said.code == 0
    assert all(
        list(row) == ["log", "task", "state", "spot", "chance_now", "in_min", "chance_then", "until_min", "chances"]
        for row in said.objects
    )
    fits = {row["task"]: row for row in said.objects}
    assert {"keep_warm", "boil", "bread"} <= set(fits)
    assert fits["bread"]["spot"] == "oven_centre"
    assert all(0 <= row["chance_now"] <= 1 for row in fits.values())


def test_fit_refuses_food_on_a_new_stove(say: Callable[..., Said], log: Path) -> None:
    stove_file = log.parent / "stove.toml"
    stove_file.write_text('name = "Kitchen"\nis_new = true\n', encoding="utf-8")
    states = {row["task"]: row["state"] for row in say("fit", log, "--json").objects}
    assert states["bread"] == "first fires not done"
    stove_file.write_text('name = "Kitchen"\nis_new = true\nfirst_fires_waived = true\n', encoding="utf-8")
    states = {row["task"]: row["state"] for row in say("fit", log, "--json").objects}
    assert states["bread"] != "first fires not done"


def test_new_stove_is_told_its_first_fires_and_their_fumes(say: Callable[..., Said], log: Path) -> None:
    write_stove(log.parent / "stove.toml", replace(stove_with_default_spots("Kitchen"), is_new=True))
    for command in ("outlook", "fit"):
        lines = say(command, log).lines
        assert any(line.startswith("  Caution, fumes of the first fires: ") for line in lines)
    assert any("First fire 1 of 3" in line for line in lines)


def test_first_fires_of_the_past_count(say: Callable[..., Said], log: Path, past: Path) -> None:
    new = replace(stove_with_default_spots("Kitchen"), is_new=True)
    for folder in (log.parent, past):
        write_stove(folder / "stove.toml", new)
    (past / "earlier.csv").unlink()
    fires = (
        [(0, "lit", {}), (30, "top", {"value": "240"})],
        [(0, "lit", {}), (20, "wood", {}), (60, "wood", {}), (90, "top", {"value": "420"}), (150, "note", {})],
        [(0, "lit", {}), (5, "air", {"value": "1"}), (20, "wood", {}), (90, "top", {"value": "600"}),
         (100, "air", {"value": "0.1"}), (240, "note", {})],
    )  # fmt: skip
    for day, fire in enumerate(fires, start=-5):
        write_log(past / f"fire {day}.csv", [_row(day, *row) for row in fire])
    states = {row["task"]: row["state"] for row in say("fit", log, "--json", "--past", past).objects}
    assert states["bread"] != "first fires not done"
    (past / "fire -3.csv").unlink()
    states = {row["task"]: row["state"] for row in say("fit", log, "--json", "--past", past).objects}
    assert states["bread"] == "first fires not done"


def _row(day: int, minute: float, kind: str, fields: dict[str, str]) -> Entry:
    if kind == "top":
        kind, fields = "reading", {"spot": "top_back_left", "unit": "F", **fields}
    at = SEVEN + timedelta(days=day, minutes=minute)
    return check_entry(number=round(minute * 10) + 1, at=at, offset_minutes=-300, kind=kind, **fields)


def test_fit_reads_as_lines_without_json(say: Callable[..., Said], log: Path) -> None:
    assert len(say("fit", log).lines) > 10


def test_track_record_counts_what_came_true(say: Callable[..., Said], past: Path) -> None:
    said = say("track-record", past, "--json")
    assert (said.code, said.complaints) == (0, [])
    (record,) = said.objects
    assert list(record) == ["stove", "sessions", "projections", "inside_window", "typical_miss_min", "rows"]
    assert (record["stove"], record["sessions"]) == ("Kitchen", 1)
    assert 0 <= record["inside_window"] <= record["projections"] <= len(record["rows"])
    assert say("track-record", past).lines[0] == "Kitchen, 1 session"


def test_a_task_of_the_cooks_own_is_answered_and_a_bad_file_is_told_beside_the_answers(
    say: Callable[..., Said], log: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setenv("XDG_DATA_HOME", str(tmp_path / "home"))
    place = tmp_path / "home" / "cookstove-gui"
    place.mkdir(parents=True)
    own = '[[task]]\nkey = "lard"\nname = "lard"\nplace = "top"\nband = [240, 300]\nminutes = 90\nevenness = 100\n'
    (place / "tasks.toml").write_text(own, encoding="utf-8")
    (place / "foods.toml").write_text("[[food", encoding="utf-8")
    said = say("fit", log, "--json")
    assert said.code == 0
    assert said.objects[-1]["task"] == "lard"
    (complaint,) = said.complaints
    assert complaint.startswith("Your own foods.toml")
