"""Wrong input is told in one line with code 2; what can be answered is answered."""

from collections.abc import Callable
from pathlib import Path

import pytest

from .conftest import Said


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
    (log.parent / "stove.toml").write_text('firebox = "behind"\n')
    said = say("outlook", log)
    assert (said.code, said.lines) == (2, [])
    assert "stove.toml line 1: firebox = 'behind'" in said.complaints[0]


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
