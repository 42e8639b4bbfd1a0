"""Progress through a new stove's first fires, read from logs tidy and messy."""

from dataclasses import replace
from datetime import timedelta

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from cookstove_gui.cooking.fires.fires import fires
from cookstove_gui.cooking.fires.first_fires import progress, stages
from cookstove_gui.stove.entries import Entry, Kind, Session
from tests.cooking.made import START, STOVE, fahrenheit, log, session

NEW = replace(STOVE, is_new=True)
DAY = timedelta(days=1)

KINDLING = (
    (0, "lit", "", "", ""),
    (10, "reading", "top_back_left", "170", "F"),
    (20, "reading", "top_back_left", "240", "F"),
    (32, "reading", "top_back_left", "225", "F"),
)
MEDIUM = (
    (0, "lit", "", "", ""),
    (20, "wood", "", "", ""),
    (60, "wood", "", "", ""),
    (90, "reading", "top_back_left", "420", "F"),
    (130, "reading", "top_back_left", "380", "F"),
)
FULL = (
    (0, "lit", "", "", ""),
    (10, "air", "", "1", ""),
    (40, "wood", "", "5", "kg"),
    (90, "reading", "top_back_left", "590", "F"),
    (100, "air", "", "0.2", ""),
    (230, "reading", "top_back_left", "400", "F"),
)


def made(*logs: tuple[tuple[float, str, str, str, str], ...]) -> list[Session]:
    return [session(number, log(*rows, start=START + number * DAY)) for number, rows in enumerate(logs, start=1)]


def done_keys(sessions: list[Session]) -> list[str]:
    return [stage.stage.key for stage in progress(NEW, sessions).stages if stage.done]


def test_a_stove_fired_before_needs_none() -> None:
    found = progress(STOVE, [])
    assert found.done
    assert not found.needed
    assert found.line == ""


def test_a_new_stove_starts_with_the_kindling_fire() -> None:
    found = progress(NEW, [])
    assert not found.done
    assert found.next is not None
    assert found.next.stage.key == "kindling"
    assert "kindling" in found.line
    assert "manual" in found.line


def test_three_tidy_fires_do_all_three() -> None:
    found = progress(NEW, made(KINDLING, MEDIUM, FULL))
    assert found.done
    assert found.next is None
    assert found.line == ""
    assert [stage.session for stage in found.stages] == [1, 2, 3]


def test_each_fire_brings_the_next_stage() -> None:
    assert done_keys(made(KINDLING)) == ["kindling"]
    assert done_keys(made(KINDLING, MEDIUM)) == ["kindling", "medium"]


def test_one_fire_does_one_stage_only() -> None:
    assert done_keys(made(KINDLING, FULL)) == ["kindling"]


def test_waiving_ends_the_guide_but_does_not_say_done() -> None:
    found = progress(replace(NEW, first_fires_waived=True), [])
    assert found.waived
    assert not found.done
    assert found.line == ""


def test_a_fire_too_hot_for_its_stage_does_not_count_and_says_so() -> None:
    found = progress(NEW, made(FULL))
    assert done_keys(made(FULL)) == []
    assert found.next is not None
    assert "manual" in " ".join(found.next.missing)


@pytest.mark.parametrize(
    ("change", "words"),
    [
        (lambda rows: rows[:2], "minutes"),
        (lambda rows: [row for row in rows if row[1] != "reading"] + [(40, "note", "", "", "")], "not read"),
        (lambda rows: [(*row[:3], "150", "F") if row[1] == "reading" else row for row in rows], "150 °F"),
    ],
)
def test_what_is_missing_is_told(change, words: str) -> None:  # type: ignore[no-untyped-def]
    found = progress(NEW, made(tuple(change(KINDLING))))
    assert found.next is not None
    assert words in " ".join(found.next.missing)


def test_the_full_fire_must_be_shut_down_after_it_was_open() -> None:
    shut_first = tuple(row if row[1] != "air" else (*row[:3], "0.2" if row[0] < 50 else "1", "") for row in FULL)
    found = progress(NEW, made(KINDLING, MEDIUM, shut_first))
    assert found.next is not None
    assert "air" in " ".join(found.next.missing)


def test_several_fires_in_one_session_are_told_apart() -> None:
    later = tuple((minute + 300, *rest) for minute, *rest in MEDIUM)
    assert done_keys(made((*KINDLING, *later))) == ["kindling", "medium"]  # type: ignore[arg-type]


def test_lighting_again_at_once_is_the_same_fire() -> None:
    found = fires(NEW, made(((0, "lit", "", "", ""), (8, "lit", "", "", ""), (30, "note", "", "", ""))))
    assert len(found) == 1
    assert found[0].minutes == 30


def test_a_silence_of_a_night_ends_a_fire() -> None:
    found = fires(NEW, made((*KINDLING, (700, "reading", "room", "60", "F"))))
    assert [fire.minutes for fire in found] == [32]


def test_one_slip_among_many_readings_does_not_decide() -> None:
    slipped = (
        *KINDLING[:3],
        (25, "reading", "top_back_left", "2400", "F"),
        (26, "reading", "top_back_left", "930", "F"),
    )
    found = fires(NEW, made((*slipped, KINDLING[3])))
    assert found[0].hottest == pytest.approx(fahrenheit(240))


def test_void_rows_are_honoured() -> None:
    rows = log(*KINDLING)
    void = Entry(number=9, at=rows[0].at, offset_minutes=0, kind=Kind.VOID, value="1")
    assert done_keys([session(1, (*rows, void))]) == []


def test_celsius_readings_count() -> None:
    in_celsius = tuple((*row[:3], "115", "C") if row[1] == "reading" else row for row in KINDLING)
    assert done_keys(made(in_celsius)) == ["kindling"]


def test_other_stoves_fires_do_not_count() -> None:
    sessions = [replace(one, stove="another") for one in made(KINDLING)]
    assert done_keys(sessions) == []


def test_sessions_may_come_in_any_order() -> None:
    sessions = made(KINDLING, MEDIUM, FULL)
    assert done_keys(sessions[::-1]) == done_keys(sessions)


def test_stages_grow_hotter_and_longer() -> None:
    found = stages()
    assert [stage.key for stage in found] == ["kindling", "medium", "full"]
    assert sorted(stage.minutes for stage in found) == [stage.minutes for stage in found]
    assert sorted(stage.top_reaches for stage in found) == [stage.top_reaches for stage in found]


entries = st.builds(
    Entry,
    number=st.integers(1, 40),
    at=st.integers(-500, 5000).map(lambda minute: START + timedelta(minutes=minute)),
    offset_minutes=st.just(0),
    kind=st.sampled_from(Kind),
    spot=st.sampled_from(["", "top_back_left", "oven_centre", "nowhere", "flue"]),
    value=st.sampled_from(["", "1", "0.2", "999999", "abc", "240", "-3", "open", "on", "1e9"]),
    unit=st.sampled_from(["", "F", "C", "kg", "K"]),
    note=st.sampled_from(["", "two splits"]),
)


@given(st.lists(entries, max_size=25))
@settings(max_examples=80)
def test_any_log_gets_an_answer(rows: list[Entry]) -> None:
    found = progress(NEW, [session(1, tuple(rows)), session(2, ())])
    assert len(found.stages) == 3
    states = [stage.done for stage in found.stages]
    assert states == sorted(states, reverse=True)  # in order
    assert found.done == (found.next is None)


def test_fires_after_the_last_stage_change_nothing() -> None:
    found = progress(NEW, made(KINDLING, MEDIUM, FULL, KINDLING))
    assert found.done
    assert [stage.session for stage in found.stages] == [1, 2, 3]
