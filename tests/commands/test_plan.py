"""`plan`: a meal on the fire of a log, on one to be lit, and what is said of a slip."""

from collections.abc import Callable
from pathlib import Path

import pytest

from .conftest import Said

DISHES = '[[dish]]\nkey = "greens"\n[[dish]]\nkey = "apple_pie"\n'


@pytest.fixture
def dishes(tmp_path: Path) -> Path:
    path = tmp_path / "sunday.toml"
    path.write_text(DISHES, encoding="utf-8")
    return path


def test_a_meal_on_a_fire_that_burns(say: Callable[..., Said], dishes: Path, log: Path) -> None:
    said = say("plan", dishes, "--table", "11:30", log, "--json")
    assert (said.code, said.complaints) == (0, [])
    (plan,) = said.objects
    assert list(plan) == [
        "table", "now", "margin", "lit", "firings", "chance", "proven", "steps", "clashes",
    ]  # fmt: skip
    assert (plan["table"], plan["lit"], plan["margin"]) == ("2026-01-05T11:30:00-05:00", True, "usual")
    steps = {step["step"]: step for step in plan["steps"]}
    assert steps["apple_pie/1"]["spot"] == "oven_centre"
    assert steps["greens/2"]["end"] <= plan["table"]
    assert all(step["begin"] >= "2026-01-05T07:55" for step in plan["steps"])
    assert {"fire/let_go"} <= set(steps)


def test_it_reads_as_lines(say: Callable[..., Said], dishes: Path, log: Path) -> None:
    lines = say("plan", dishes, "--table", "11:30", log).lines
    assert lines[0].startswith("Table at 11:30. ")
    assert any("apple pie in, if at 360" in line for line in lines)
    assert any("turn the apple pie" in line for line in lines)
    assert lines[-1] == "Planned from the fire as it burns; every reading plans again."
    clocks = [line.split()[0] for line in lines[1:-1]]
    assert clocks == sorted(clocks, key=lambda clock: tuple(map(int, clock.split(":"))))


def test_with_nothing_lit_it_says_when_to_light(say: Callable[..., Said], dishes: Path, past: Path) -> None:
    said = say("plan", dishes, "--table", "18:30", "--past", past, "--at", "2026-01-06T12:00:00-05:00")
    assert said.code == 0
    assert any(line.endswith("light the fire") for line in said.lines)
    assert said.lines[-1].startswith("Nothing is lit: planned from ")


def test_the_dishes_file_may_name_the_time(say: Callable[..., Said], dishes: Path, log: Path) -> None:
    dishes.write_text(f'table = "11:30"\n{DISHES}', encoding="utf-8")
    assert say("plan", dishes, log).lines[0].startswith("Table at 11:30.")


@pytest.mark.parametrize(
    ("arguments", "says"),
    [
        (["missing.toml", "--table", "18:30"], "cannot be read"),
        (["{dishes}"], "No time for the table"),
        (["{dishes}", "--table", "late"], "“late” is not a clock time"),
        (["{dishes}", "--table", "18:30", "{log}", "{log}"], "one LOG"),
    ],
)
def test_what_is_wrong_is_said_in_a_line(
    say: Callable[..., Said], dishes: Path, log: Path, arguments: list[str], says: str
) -> None:
    said = say("plan", *(one.format(dishes=dishes, log=log) for one in arguments))
    assert said.code == 2
    assert len(said.complaints) == 1
    assert says in said.complaints[0]


def test_no_food_is_planned_before_the_first_fires(say: Callable[..., Said], dishes: Path, log: Path) -> None:
    (log.parent / "stove.toml").write_text('name = "Kitchen"\nis_new = true\n', encoding="utf-8")
    said = say("plan", dishes, "--table", "11:30", log)
    assert said.code == 2
    assert "first fires" in said.complaints[0]
