"""Progress through a new stove's first fires, read from logs tidy and messy."""

from dataclasses import replace
from datetime import timedelta

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from cookstove_gui.cooking.fires.first_fires import Lack, Shortfall, progress, shortfalls, stages
from cookstove_gui.cooking.fires.logged_fires import fires
from cookstove_gui.stove.entries import Entry, Kind, Session
from cookstove_gui.units import kelvin
from tests.cooking.fires.cases import FULL, KINDLING, MEDIUM, NEW, made
from tests.cooking.made import START, STOVE, log, session


def too_cool_at(fahrenheit: float) -> Shortfall:
    return Shortfall(Lack.TOO_COOL, kelvin(fahrenheit, "F"), kelvin(180.0, "F"))


def done_keys(sessions: list[Session]) -> list[str]:
    return [stage.stage.key for stage in progress(NEW, sessions).stages if stage.done]


def test_a_stove_fired_before_needs_none() -> None:
    found = progress(STOVE, [])
    assert found.done
    assert not found.needed


def test_a_new_stove_starts_with_the_kindling_fire() -> None:
    found = progress(NEW, [])
    assert not found.done
    assert found.next is not None
    assert found.next.stage.key == "kindling"


def test_three_tidy_fires_do_all_three() -> None:
    found = progress(NEW, made(KINDLING, MEDIUM, FULL))
    assert found.done
    assert found.next is None
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


@pytest.mark.parametrize(
    ("change", "missing"),
    [
        (lambda rows: rows[:2], [Shortfall(Lack.TOO_SHORT, 10.0, 25.0), too_cool_at(170.0)]),
        (
            lambda rows: [row for row in rows if row[1] != "reading"] + [(40, "note", "", "", "")],
            [Shortfall(Lack.NOT_READ)],
        ),
        (lambda rows: [(*row[:3], "150", "F") if row[1] == "reading" else row for row in rows], [too_cool_at(150.0)]),
        (
            lambda rows: [(*row[:3], "401", "F") if row[1] == "reading" else row for row in rows],
            [Shortfall(Lack.TOO_HOT, kelvin(401.0, "F"), kelvin(400.0, "F"))],
        ),
    ],
)
def test_what_is_missing_is_told(change, missing: list[Shortfall]) -> None:  # type: ignore[no-untyped-def]
    found = progress(NEW, made(tuple(change(KINDLING))))
    assert found.next is not None
    assert list(found.next.missing) == missing


def test_a_full_fire_needs_wood_and_air_as_well() -> None:
    (full,) = (one for one in stages() if one.key == "full")
    (fire,) = fires(NEW, [session(1, log(*fire_of(210, 430)))])
    assert shortfalls(full, fire) == (Shortfall(Lack.TOO_LITTLE_WOOD, 0, 1), Shortfall(Lack.AIR_NOT_SHUT))


def counted(stage: str, rows: tuple[tuple[float, str, str, str, str], ...]) -> bool:
    """Whether a fire counts as a stage."""
    (wanted,) = (one for one in stages() if one.key == stage)
    (fire,) = fires(NEW, [session(1, log(*rows))])
    return not shortfalls(wanted, fire)


def fire_of(
    minutes: float, heat: float, loads: int = 0, air: tuple[float, ...] = ()
) -> tuple[tuple[float, str, str, str, str], ...]:
    """A fire on record for some minutes, its cooktop read once, with so many loads and settings of the air."""
    return (
        (0, "lit", "", "", ""),
        *((1 + number, "wood", "", "1", "kg") for number in range(loads)),
        *((10 + number, "air", "", str(fraction), "") for number, fraction in enumerate(air)),
        (20, "reading", "top_back_left", str(heat), "F"),
        (minutes, "note", "", "", ""),
    )


# What resources/first_fires.toml asks for, at its edges; common practice, no source
@pytest.mark.parametrize(
    ("stage", "fire", "counts"),
    [
        ("kindling", fire_of(25, 180), True),
        ("kindling", fire_of(24, 180), False),
        ("kindling", fire_of(25, 179), False),
        ("kindling", fire_of(25, 400), True),
        ("kindling", fire_of(25, 401), False),
        ("kindling", fire_of(25, 200, loads=2), True),
        ("medium", fire_of(120, 325, loads=2), True),
        ("medium", fire_of(119, 325, loads=2), False),
        ("medium", fire_of(120, 324, loads=2), False),
        ("medium", fire_of(120, 641, loads=2), False),
        ("medium", fire_of(120, 640, loads=2), True),
        ("medium", fire_of(120, 325, loads=1), False),
        ("full", fire_of(210, 430, loads=1, air=(0.9, 0.4)), True),
        ("full", fire_of(209, 430, loads=1, air=(0.9, 0.4)), False),
        ("full", fire_of(210, 429, loads=1, air=(0.9, 0.4)), False),
        ("full", fire_of(210, 900, loads=1, air=(1.0, 0.0)), True),
        ("full", fire_of(210, 430, loads=0, air=(0.9, 0.4)), False),
        ("full", fire_of(210, 430, loads=1, air=(0.89, 0.4)), False),
        ("full", fire_of(210, 430, loads=1, air=(0.9, 0.41)), False),
        ("full", fire_of(210, 430, loads=1, air=(0.4, 0.9)), False),
        ("full", fire_of(210, 430, loads=1, air=(0.9, 0.6, 0.2)), True),
    ],
)
def test_a_stage_counts_at_its_edges(
    stage: str, fire: tuple[tuple[float, str, str, str, str], ...], counts: bool
) -> None:
    assert counted(stage, fire) is counts


def test_what_was_tried_and_does_not_count_is_told_of_the_next_stage_only() -> None:
    found = progress(NEW, made(KINDLING, KINDLING))
    assert [bool(stage.missing) for stage in found.stages] == [False, True, False]
    assert found.stages[1].session == 2


def test_a_later_try_replaces_an_earlier_one() -> None:
    found = progress(NEW, made(KINDLING[:2], KINDLING[:3]))
    assert found.stages[0].session == 2
    assert found.stages[0].missing == (Shortfall(Lack.TOO_SHORT, 20.0, 25.0),)


def test_a_stage_that_is_done_forgets_its_failed_tries() -> None:
    found = progress(NEW, made(KINDLING[:2], KINDLING))
    assert (found.stages[0].done, found.stages[0].missing, found.stages[0].session) == (True, (), 2)
    assert found.stages[1].missing == ()


def test_the_full_fire_must_be_shut_down_after_it_was_open() -> None:
    shut_first = tuple(row if row[1] != "air" else (*row[:3], "0.2" if row[0] < 50 else "1", "") for row in FULL)
    found = progress(NEW, made(KINDLING, MEDIUM, shut_first))
    assert found.next is not None
    assert found.next.missing == (Shortfall(Lack.AIR_NOT_SHUT),)


def test_several_fires_in_one_session_are_told_apart() -> None:
    later = tuple((minute + 300, *rest) for minute, *rest in MEDIUM)
    assert done_keys(made((*KINDLING, *later))) == ["kindling", "medium"]  # type: ignore[arg-type]


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
