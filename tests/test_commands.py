"""The headless commands answer with the agreed keys, tell wrong input in one line, and load nothing of the window."""

import json
import subprocess
import sys
from collections.abc import Callable
from dataclasses import dataclass
from datetime import UTC, datetime, timedelta
from pathlib import Path
from typing import Any

import pytest

from cookstove_gui.commands import parsing, run
from cookstove_gui.commands.what_if import action_from_text
from cookstove_gui.errors import InputProblem
from cookstove_gui.forecast.answers import LEAVE, Action, ActionKind
from cookstove_gui.logbook.log_file import write_log
from cookstove_gui.logbook.stove_file import write_stove
from cookstove_gui.stove.checking import check_entry
from cookstove_gui.stove.entries import Entry
from cookstove_gui.stove.stove import Firebox, stove_with_default_spots

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


@pytest.fixture
def say(capsys: pytest.CaptureFixture[str]) -> Callable[..., Said]:
    def command(*arguments: object) -> Said:
        code = run([str(argument) for argument in arguments])
        captured = capsys.readouterr()
        return Said(code, captured.out.splitlines(), captured.err.splitlines())

    return command


def _rows(days: float = 0.0) -> list[Entry]:
    """A made-up morning: lit at seven, the oven at 300 °F an hour later."""
    rows: list[Entry] = []

    def add(minute: float, kind: str, **fields: str) -> None:
        at = SEVEN + timedelta(days=days, minutes=minute)
        rows.append(check_entry(number=len(rows) + 1, at=at, offset_minutes=-300, kind=kind, **fields))

    add(0, "lit")
    add(0.5, "air", value="1")
    for minute, oven, top in ((5, 75, 110), (20, 130, 260), (35, 215, 370), (50, 270, 430), (60, 300, 450)):
        add(minute, "reading", spot="oven_centre", value=str(oven), unit="F")
        add(minute + 0.2, "reading", spot="top_back_left", value=str(top), unit="F")
        if minute == 20:
            add(21, "wood", note="two splits")
    return rows


@pytest.fixture
def log(tmp_path: Path) -> Path:
    """A log with its stove's file beside it."""
    folder = tmp_path / "today"
    folder.mkdir()
    write_stove(folder / "stove.toml", stove_with_default_spots("Kitchen", Firebox.LEFT))
    write_log(folder / "bread.csv", _rows())
    return folder / "bread.csv"


@pytest.fixture
def past(tmp_path: Path) -> Path:
    """A folder with one earlier session."""
    folder = tmp_path / "past"
    folder.mkdir()
    write_stove(folder / "stove.toml", stove_with_default_spots("Kitchen", Firebox.LEFT))
    write_log(folder / "earlier.csv", _rows(days=-2))
    return folder


# --- outlook ----------------------------------------------------------------------------------------------------


def test_outlook_has_exactly_the_agreed_keys(say: Callable[..., Said], log: Path) -> None:
    said = say("outlook", log, "--json")
    assert (said.code, said.complaints) == (0, [])
    (answer,) = said.objects
    assert list(answer) == OUTLOOK_KEYS
    assert list(answer["oven"]) == ["p10", "p50", "p90"]
    assert [list(step) for step in answer["ahead"]] == [["min", "p10", "p50", "p90", "chance_in_band"]] * 3
    assert list(answer["band"]) == ["low", "high", "chance_reached_3h", "enters_min", "stays_min"]
    assert list(answer["band"]["enters_min"]) == list(answer["band"]["stays_min"]) == ["p10", "p50", "p90"]
    assert list(answer["next_reading"]) == ["spot", "in_min"]


def test_outlook_speaks_of_the_last_row_in_fahrenheit(say: Callable[..., Said], log: Path) -> None:
    (answer,) = say("outlook", log, "--json").objects
    assert answer["log"] == str(log)
    assert answer["now"] == "2026-01-05T08:00:12-05:00"
    assert answer["unit"] == "F"
    assert [step["min"] for step in answer["ahead"]] == [15, 30, 60]
    assert answer["oven"]["p10"] <= answer["oven"]["p50"] <= answer["oven"]["p90"]
    assert 200 < answer["oven"]["p50"] < 400
    assert 0 <= answer["band"]["chance_reached_3h"] <= 1


def test_outlook_in_celsius_is_the_same_outlook(say: Callable[..., Said], log: Path) -> None:
    (warm,) = say("outlook", log, "--json", "--band", 400, 450).objects
    (cool,) = say("outlook", log, "--json", "--band", 204.4444, 232.2222, "--unit", "c").objects
    assert cool["unit"] == "C"
    assert cool["oven"]["p50"] == pytest.approx((warm["oven"]["p50"] - 32) / 1.8, abs=0.1)
    assert cool["band"]["enters_min"] == warm["band"]["enters_min"]
    assert (warm["band"]["low"], warm["band"]["high"]) == (400.0, 450.0)


def test_outlook_answers_each_log_on_its_own_line(say: Callable[..., Said], log: Path, past: Path) -> None:
    answers = say("outlook", log, past / "earlier.csv", "--json").objects
    assert [answer["log"] for answer in answers] == [str(log), str(past / "earlier.csv")]
    assert answers[0]["oven"] == pytest.approx(answers[1]["oven"], abs=15.0)


def test_rows_after_the_moment_asked_about_are_not_looked_at(say: Callable[..., Said], log: Path) -> None:
    early = [row for row in _rows() if row.at <= SEVEN + timedelta(minutes=36)]
    write_log(log.with_name("early.csv"), early)
    for clock in ("2026-01-05T07:36:00-05:00", "2026-01-05T12:36:00Z", "7:36"):
        (asked,) = say("outlook", log, "--json", "--at", clock).objects
        (cut,) = say("outlook", log.with_name("early.csv"), "--json", "--at", clock).objects
        assert asked["now"] == "2026-01-05T07:36:00-05:00"
        assert asked | {"log": ""} == cut | {"log": ""}


@pytest.mark.parametrize(
    ("typed", "now"),
    [
        ("8:30", "2026-01-05T08:30:00-05:00"),
        ("8:30 pm", "2026-01-04T20:30:00-05:00"),
        ("19:30", "2026-01-05T19:30:00-05:00"),
        ("-10", "2026-01-05T07:50:12-05:00"),
    ],
)
def test_moment_may_be_a_wall_clock_near_the_last_row(
    say: Callable[..., Said], log: Path, typed: str, now: str
) -> None:
    evening = log.with_name("evening.csv")
    write_log(evening, [*_rows(days=-1)[:1], *_rows()[1:]])
    (answer,) = say("outlook", evening, "--json", "--at", typed).objects
    assert answer["now"] == now


def test_order_of_rows_in_the_file_does_not_matter(say: Callable[..., Said], log: Path) -> None:
    header, *rows = log.read_text("utf-8").splitlines()
    turned = log.with_name("turned.csv")
    turned.write_text("\n".join([header, *reversed(rows)]) + "\n", encoding="utf-8")
    (answer,) = say("outlook", turned, "--json").objects
    (straight,) = say("outlook", log, "--json").objects
    assert answer["now"] == straight["now"]
    assert answer["oven"]["p50"] == pytest.approx(straight["oven"]["p50"], abs=5.0)


def test_minutes_ahead_may_stand_before_the_log(say: Callable[..., Said], log: Path) -> None:
    (answer,) = say("outlook", "--json", "--ahead", 5, 170, log).objects
    assert [step["min"] for step in answer["ahead"]] == [5, 170]


def test_what_if_gives_an_outlook_of_its_own(say: Callable[..., Said], log: Path) -> None:
    leave, wood, shut = say("outlook", log, "--json", "--if", "leave", "--if", "two splits", "--if", "air 0.05").objects
    assert list(leave) == [*OUTLOOK_KEYS, "if"]
    assert [answer["if"] for answer in (leave, wood, shut)] == ["leave", "two splits", "air 0.05"]
    assert wood["ahead"][2]["p50"] > leave["ahead"][2]["p50"] > shut["ahead"][2]["p50"]
    (plain,) = say("outlook", log, "--json").objects
    assert plain == {key: leave[key] for key in OUTLOOK_KEYS}


def test_outlook_reads_as_sentences_without_json(say: Callable[..., Said], log: Path) -> None:
    said = say("outlook", log, "--if", "two splits")
    assert said.code == 0
    assert said.lines[0] == f"{log}, 2026-01-05 08:00, if: add two splits"
    assert "The oven is at about" in said.lines[1]
    assert any("bread heat" in line for line in said.lines)


# --- the past ---------------------------------------------------------------------------------------------------


def test_past_sessions_change_the_outlook(say: Callable[..., Said], log: Path, past: Path) -> None:
    said = say("outlook", log, "--json", "--past", past)
    assert (said.code, said.complaints) == (0, [])
    assert said.objects != say("outlook", log, "--json").objects


def test_log_itself_and_later_sessions_are_no_past(say: Callable[..., Said], log: Path, past: Path) -> None:
    known = say("outlook", log, "--json", "--past", past).objects
    write_log(past / "the same day.csv", _rows())
    write_log(past / "later.csv", [row for row in _rows(days=3) if row.kind != "wood"])
    assert say("outlook", log, "--json", "--past", past).objects == known


def test_stove_of_the_past_serves_a_log_without_one(say: Callable[..., Said], log: Path, past: Path) -> None:
    write_stove(past / "stove.toml", stove_with_default_spots("Cabin", Firebox.RIGHT))
    (log.parent / "stove.toml").unlink()
    for arguments, warmer in ((("--past", past), "top_front_right"), ((), "top_front_left")):
        zones = {row["spot"]: row for row in say("zones", log, "--json", "--at", "7:01", *arguments).objects}
        cooler = {"top_front_right": "top_front_left", "top_front_left": "top_front_right"}[warmer]
        assert zones[warmer]["p50"] > zones[cooler]["p50"]


def test_bad_rows_of_the_past_are_told_and_left_out(say: Callable[..., Said], log: Path, past: Path) -> None:
    (past / "prices.csv").write_text("wood,price\n")
    said = say("outlook", log, "--json", "--past", past)
    assert said.code == 0
    assert len(said.lines) == 1
    (complaint,) = said.complaints
    assert "prices.csv" in complaint
    assert "left out of the past" in complaint


# --- zones, fit, track record -----------------------------------------------------------------------------------


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
        list(row) == ["log", "task", "state", "spot", "chance_now", "in_min", "chance_then"] for row in said.objects
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


# --- wrong input ------------------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("arguments", "words"),
    [
        (["outlook"], "no log is named"),
        (["outlook", "LOG", "--band", "400"], "--band"),
        (["outlook", "LOG", "--band", "450", "400"], "lower end first"),
        (["outlook", "LOG", "--band", "nan", "400"], "“nan” is no end of a band"),
        (["outlook", "LOG", "--band", "x", "400"], "“x” is no end of a band"),
        (["outlook", "LOG", "--band", "-500", "400"], "colder than anything"),
        (["outlook", "LOG", "--unit", "K"], "--unit"),
        (["outlook", "LOG", "--at", "yesterday"], "not a clock time"),
        (["outlook", "LOG", "--at", "2026-01-05T07:20:00"], "no UTC offset"),
        (["outlook", "LOG", "--at", "2026-01-05 07:20:00 PM"], "12-hour"),
        (["outlook", "LOG", "--at", "2026-01-05T06:00:00-05:00"], "no row up to"),
        (["outlook", "LOG", "--ahead", "200"], "180 or fewer"),
        (["outlook", "LOG", "--ahead", "soon"], "no number of minutes"),
        (["outlook", "LOG", "--if", "dance"], "no step this program knows"),
        (["outlook", "LOG", "--past", "nowhere"], "not a folder"),
        (["outlook", "nowhere.csv"], "no such file"),
        (["outlook", "LOG", "--loud"], "--loud"),
        (["zones"], "no log is named"),
        (["fit", "LOG", "--ahead", "5"], "--ahead"),
        (["track-record", "nowhere"], "not a folder"),
        (["report", "LOG"], "-o"),
        (["report", "LOG", "-o", "report.doc"], ".html or .pdf"),
        (["report", "nowhere.csv", "-o", "report.html"], "no such file"),
        (["sing"], "sing"),
        ([], "COMMAND"),
    ],
    ids=lambda value: " ".join(value) if isinstance(value, list) else "",
)
def test_wrong_input_is_one_line_and_code_2(
    say: Callable[..., Said], log: Path, arguments: list[str], words: str
) -> None:
    said = say(*(log if argument == "LOG" else argument for argument in arguments))
    assert said.code == 2
    assert said.lines == []
    (complaint,) = said.complaints
    assert words in complaint


@pytest.mark.parametrize(
    ("content", "words"),
    [
        (b"", "is empty"),
        (b"clock,kind,spot,value,unit,note\n", "holds no rows"),
        (b"clock,kind,spot,value,note\n", "“unit” is missing"),
        ("clock,kind\n".encode("utf-16"), "UTF-16"),
        (b"clock,kind,spot,value,unit,note\n2026-01-05 7:02 PM,lit,,,,\n" * 1, "12-hour clock"),
        (b"clock,kind,spot,value,unit,note\n2026-01-05T07:02:00-05:00,note,,,,cr\xeame\n", "not UTF-8"),
    ],
)
def test_file_that_is_no_log_is_one_line_and_code_2(
    say: Callable[..., Said], tmp_path: Path, content: bytes, words: str
) -> None:
    (tmp_path / "bread.csv").write_bytes(content)
    for command in ("outlook", "zones", "fit"):
        said = say(command, tmp_path / "bread.csv", "--json")
        assert (said.code, said.lines, len(said.complaints)) == (2, [], 1)
        assert words in said.complaints[0]
        assert "bread.csv" in said.complaints[0]


def test_bad_stove_file_is_one_line_and_code_2(say: Callable[..., Said], log: Path) -> None:
    (log.parent / "stove.toml").write_text('firebox = "below"\n')
    said = say("outlook", log)
    assert (said.code, said.lines) == (2, [])
    assert "stove.toml line 1: firebox = 'below'" in said.complaints[0]


def test_bad_row_is_told_the_rest_is_answered_and_the_code_is_2(say: Callable[..., Said], log: Path) -> None:
    (known,) = say("outlook", log, "--json").objects
    text = log.read_text("utf-8")
    log.write_text(text + "2026-01-05T08:00:00-05:00,reading,oven_centre,3x0,F,\n", encoding="utf-8")
    said = say("outlook", log, "--json")
    assert said.code == 2
    assert said.objects == [known]
    assert said.complaints == [f"{log} line 15, value: “3x0” is not a temperature; type digits, such as 385."]


def test_bad_log_among_good_ones_does_not_keep_the_others_from_an_answer(say: Callable[..., Said], log: Path) -> None:
    said = say("outlook", "nowhere.csv", log, "--json")
    assert (said.code, len(said.lines), len(said.complaints)) == (2, 1, 1)


def test_repeated_row_is_told_and_counted_once(say: Callable[..., Said], log: Path) -> None:
    (known,) = say("outlook", log, "--json").objects
    text = log.read_text("utf-8")
    log.write_text(text + text.splitlines()[-1] + "\n", encoding="utf-8")
    said = say("outlook", log, "--json")
    assert (said.code, said.objects) == (0, [known])
    assert "counted once" in said.complaints[0]


def test_help_is_printed_and_is_no_mistake(say: Callable[..., Said]) -> None:
    said = say("outlook", "--help")
    assert (said.code, said.complaints) == (0, [])
    assert "--past" in "\n".join(said.lines)


def test_version_is_printed(say: Callable[..., Said]) -> None:
    assert say("--version").lines[0].startswith("cookstove-gui ")


# --- what-if words ----------------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("text", "action"),
    [
        ("leave", LEAVE),
        ("Leave it", LEAVE),
        ("two splits", Action(kind=ActionKind.WOOD, value=2.4)),
        ("add 1 split now", Action(kind=ActionKind.WOOD, value=1.2)),
        ("put a log on", Action(kind=ActionKind.WOOD, value=1.2)),
        ("half a split", None),
        ("2.5 kg", Action(kind=ActionKind.WOOD, value=2.5)),
        ("2,5kg of wood", Action(kind=ActionKind.WOOD, value=2.5)),
        ("10 lb", Action(kind=ActionKind.WOOD, value=4.5359237)),
        ("air 0.3", Action(kind=ActionKind.AIR, value=0.3)),
        ("set the air to 30 %", Action(kind=ActionKind.AIR, value=0.3)),
        ("air wide open", Action(kind=ActionKind.AIR, value=1.0)),
        ("shut the air", Action(kind=ActionKind.AIR, value=0.0)),
        ("shut the air to 0.1", Action(kind=ActionKind.AIR, value=0.1)),
        ("air half open", Action(kind=ActionKind.AIR, value=0.5)),
        ("bypass closed", Action(kind=ActionKind.BYPASS, value=0.0)),
        ("open the bypass", Action(kind=ActionKind.BYPASS, value=1.0)),
        ("air", None),
        ("air 3", None),
        ("air 0.3 0.4", None),
        ("air please", None),
        ("two", None),
        ("200 kg", None),
        ("0 splits", None),
        ("", None),
        ("leave two splits alone", None),
    ],
)
def test_steps_are_read_as_a_cook_says_them(text: str, action: Action | None) -> None:
    if action is None:
        with pytest.raises(InputProblem, match="write"):
            action_from_text(text)
    else:
        found = action_from_text(text)
        assert (found.kind, found.value) == (action.kind, pytest.approx(action.value))


def test_request_without_options_asks_for_the_usual() -> None:
    request = parsing.parsed(["outlook", "a.csv"])
    assert request is not None
    assert (request.ahead, request.unit, request.band, request.at) == ((15, 30, 60), "F", None, "")


# --- as a program -----------------------------------------------------------------------------------------------


def _loaded(script: str) -> list[str]:
    names = "('PySide6', 'shiboken6', 'pyqtgraph', 'pandas', 'matplotlib', 'sklearn', 'scipy.stats', 'scipy.optimize')"
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
    assert _loaded(script) == ["matplotlib"]


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
