"""The outlook has the agreed keys, looks at nothing after its moment, and takes the past only from before it."""

from collections.abc import Callable
from dataclasses import replace
from datetime import timedelta
from pathlib import Path

import pytest

from cookstove_gui.logbook.log_file import write_log
from cookstove_gui.logbook.stove_file import write_stove
from cookstove_gui.stove.checking import check_entry
from cookstove_gui.stove.stove import Firebox, stove_with_default_spots

from .conftest import OUTLOOK_KEYS, SEVEN, Said, rows


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


def test_what_is_in_the_oven_is_told_with_its_clocks(say: Callable[..., Said], log: Path) -> None:
    last = max(row.at for row in rows())
    loaf = check_entry(at=last, offset_minutes=-300, kind="oven_in", note="loaf of bread")
    write_log(log, [*rows(), replace(loaf, number=len(rows()) + 1)])
    (answer,) = say("outlook", log, "--json").objects
    assert list(answer) == [*OUTLOOK_KEYS, "in_oven"]
    (told,) = answer["in_oven"]
    assert list(told) == ["name", "went_in", "turn_at", "done_earliest", "done_likely", "done_latest"]
    assert (told["name"], told["went_in"]) == ("loaf of bread", answer["now"])
    text = "\n".join(say("outlook", log).lines)
    assert "In the oven since 8:00: " in text
    assert "Put the loaves in" not in text


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
    early = [row for row in rows() if row.at <= SEVEN + timedelta(minutes=36)]
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
    write_log(evening, [*rows(days=-1)[:1], *rows()[1:]])
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


def test_too_hot_a_flue_is_told_in_sentences(say: Callable[..., Said], log: Path) -> None:
    text = log.read_text("utf-8")
    rising = enumerate((300, 400, 480, 540, 590, 620), start=1)
    hot = "".join(f"2026-01-05T08:{5 * n:02d}:00-05:00,reading,flue,{heat},F,\r\n" for n, heat in rising)
    log.write_text(text + hot, encoding="utf-8", newline="")
    said = say("outlook", log)
    assert any(line.startswith("  Caution, flue pipe too hot: ") for line in said.lines)
    assert list(say("outlook", log, "--json").objects[0]) == OUTLOOK_KEYS


def test_outlook_reads_as_sentences_without_json(say: Callable[..., Said], log: Path) -> None:
    said = say("outlook", log, "--if", "two splits")
    assert said.code == 0
    assert said.lines[0] == f"{log}, 2026-01-05 08:00, if: add two splits"
    assert "The oven is at about" in said.lines[1]
    assert any("bread heat" in line for line in said.lines)


def test_past_sessions_change_the_outlook(say: Callable[..., Said], log: Path, past: Path) -> None:
    said = say("outlook", log, "--json", "--past", past)
    assert (said.code, said.complaints) == (0, [])
    assert said.objects != say("outlook", log, "--json").objects


def test_a_bad_row_of_a_past_session_costs_that_row_alone(say: Callable[..., Said], log: Path, past: Path) -> None:
    known = say("outlook", log, "--json", "--past", past).objects
    with (past / "earlier.csv").open("a", encoding="utf-8") as session:
        session.write("2026-01-03T07:31:00-05:00,reading,oven_centre,99999,F,\n")
    said = say("outlook", log, "--json", "--past", past)
    assert (said.code, said.objects) == (0, known)
    (complaint,) = said.complaints
    assert "earlier.csv line 15, value: 99999" in complaint
    assert "left out of the past" in complaint


def test_log_itself_and_later_sessions_are_no_past(say: Callable[..., Said], log: Path, past: Path) -> None:
    known = say("outlook", log, "--json", "--past", past).objects
    write_log(past / "the same day.csv", rows())
    write_log(past / "later.csv", [row for row in rows(days=3) if row.kind != "wood"])
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
