"""The stages of a fire follow from the log by rule, without gaps, in order of time."""

from datetime import timedelta
from itertools import pairwise

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from cookstove_gui.reports.stages import StageName, stage_at, stages
from cookstove_gui.stove.entries import Kind, Session, fold

from .conftest import SEVEN, Log


def _told(log: Log) -> list[tuple[str, float]]:
    """Names of the stages with the minute at which each begins."""
    return [(str(stage.name), (stage.begins_at - SEVEN).total_seconds() / 60) for stage in stages(fold(log.rows))]


def test_whole_firing_runs_through_all_stages(session: Session) -> None:
    found = stages(fold(session.entries))
    assert [(str(stage.name), (stage.begins_at - SEVEN).total_seconds() / 60) for stage in found] == [
        ("kindling", 0),
        ("medium fire", 25),
        ("full load, air open", 60),
        ("air shut down", 120),
        ("coals", 210),
    ]


def test_rows_before_the_fire_are_told_as_such(log: Log) -> None:
    log.read(-30, "room", 62).add(0, "lit").add(40, "note", note="warm")
    assert _told(log) == [("before the fire", -30), ("kindling", 0)]


def test_kindling_laid_or_added_is_kindling_still(log: Log) -> None:
    log.add(-5, "wood", value="3", unit="kg").add(0, "lit").add(8, "wood", note="more kindling")
    log.add(12, "wood", value="0.5", unit="kg").add(40, "note")
    assert _told(log) == [("before the fire", -5), ("kindling", 0)]


def test_kindling_alone_falls_to_coals(log: Log) -> None:
    log.add(0, "lit").add(120, "note")
    assert _told(log) == [("kindling", 0), ("coals", 75)]


@pytest.mark.parametrize(
    "load",
    [
        {"value": "5", "unit": "kg"},
        {"value": "10", "unit": "lb"},
        {"note": "full load"},
        {"note": "four splits"},
    ],
)
def test_large_load_with_the_air_open_is_a_full_fire(log: Log, load: dict[str, str]) -> None:
    log.add(0, "lit").add(1, "air", value="0.9").add(20, "wood", **load).add(60, "note")
    assert _told(log) == [("kindling", 0), ("full load, air open", 20)]


def test_hot_top_with_the_air_open_is_a_full_fire_without_a_word_of_the_load(log: Log) -> None:
    log.add(0, "lit").add(1, "air", value="1").add(20, "wood").read(50, "top_back_left", 520).add(90, "note")
    assert _told(log) == [("kindling", 0), ("medium fire", 20), ("full load, air open", 50)]


def test_small_load_or_half_open_air_is_a_medium_fire(log: Log) -> None:
    log.add(0, "lit").add(20, "wood", note="full").add(40, "wood", note="one split").add(60, "note")
    assert _told(log) == [("kindling", 0), ("medium fire", 20)]


def test_wood_on_the_coals_makes_a_fire_again(log: Log) -> None:
    log.add(0, "lit").add(20, "wood").add(120, "wood").add(150, "note")
    assert _told(log) == [("kindling", 0), ("medium fire", 20), ("coals", 95), ("medium fire", 120)]


def test_coals_are_what_the_cook_says_they_are(log: Log) -> None:
    log.add(0, "lit").add(20, "wood").add(60, "note", note="nothing but coals now").add(80, "note")
    assert _told(log)[-1] == ("coals", 60)


@pytest.mark.parametrize(("minute", "told"), [(21, "medium fire"), (49, "medium fire"), (50, "coals")])
def test_a_note_about_the_coals_under_fresh_wood_makes_no_coals(log: Log, minute: float, told: str) -> None:
    log.add(0, "lit").add(20, "wood", note="two splits").add(minute, "note", note="raked coals forward").add(70, "note")
    assert _told(log)[-1][0] == told


@pytest.mark.parametrize("after", [1, 4])
def test_wood_put_on_the_coals_at_the_very_end_is_no_longer_coals(log: Log, after: float) -> None:
    log.add(0, "lit").add(20, "wood").add(120, "wood", note="two splits").add(120 + after, "note")
    assert _told(log) == [("kindling", 0), ("medium fire", 20), ("coals", 95), ("medium fire", 120)]


def test_wood_on_the_coals_with_the_air_shut_a_moment_later_was_never_coals_after_it(log: Log) -> None:
    log.add(0, "lit").add(20, "wood").add(120, "wood", note="two splits").add(123, "air", value="0.1").add(180, "note")
    assert _told(log) == [("kindling", 0), ("medium fire", 20), ("coals", 95), ("air shut down", 120)]


def test_no_row_of_wood_lies_in_coals_while_it_is_fresh(log: Log) -> None:
    log.add(0, "lit").add(20, "wood")
    for minute in (97, 180, 262, 345):
        log.add(minute, "wood", note="two splits").add(minute + 2, "air", value="0.5").add(
            minute + 3, "note", note="coals"
        )
    found = stages(fold(log.rows))
    loads = [row.at for row in fold(log.rows) if row.kind is Kind.WOOD]
    assert [stage_at(found, at) for at in loads] == [StageName.MEDIUM] * len(loads)
    assert StageName.COALS in {stage.name for stage in found}


def test_a_fire_noted_as_out_is_out_until_it_is_lit_again(log: Log) -> None:
    log.add(0, "lit").add(20, "wood").add(60, "out").add(90, "lit").add(120, "note")
    assert _told(log) == [("kindling", 0), ("medium fire", 20), ("fire out", 60), ("kindling", 90)]


def test_wood_on_coals_left_from_before_is_a_fire(log: Log) -> None:
    log.add(0, "carried", spot="", value="300", unit="F").add(10, "wood", note="two splits").add(40, "note")
    assert _told(log) == [("before the fire", 0), ("medium fire", 10)]


def test_shut_air_makes_the_wood_last(log: Log) -> None:
    log.add(0, "lit").add(20, "wood").add(40, "air", value="0.2").add(400, "note")
    assert _told(log) == [("kindling", 0), ("medium fire", 20), ("air shut down", 40), ("coals", 170)]


def test_air_shut_for_a_moment_is_no_stage(log: Log) -> None:
    log.add(0, "lit").add(20, "wood").add(40, "air", value="0.2").add(43, "air", value="0.6").add(80, "note")
    assert _told(log) == [("kindling", 0), ("medium fire", 20)]


def test_single_row_and_no_row(log: Log) -> None:
    assert stages(()) == ()
    log.add(0, "lit")
    assert _told(log) == [("kindling", 0)]


def test_stage_at_a_border_is_the_later_one(session: Session) -> None:
    found = stages(fold(session.entries))
    assert stage_at(found, SEVEN + timedelta(minutes=60)) is StageName.FULL
    assert stage_at(found, SEVEN + timedelta(minutes=1030)) is StageName.COALS
    assert stage_at(found, SEVEN + timedelta(minutes=1031)) is None
    assert stage_at(found, SEVEN - timedelta(minutes=1)) is None


_steps = st.sampled_from(
    [
        ("lit", {}),
        ("wood", {}),
        ("wood", {"value": "6", "unit": "kg"}),
        ("air", {"value": "1"}),
        ("air", {"value": "0.1"}),
        ("note", {"note": "coals"}),
        ("note", {}),
        ("reading", {"spot": "top_back_left", "value": "600", "unit": "F"}),
    ]
)


@given(steps=st.lists(st.tuples(st.integers(min_value=0, max_value=600), _steps), min_size=1, max_size=15))
@settings(max_examples=150)
def test_stages_cover_the_session_without_gaps(steps: list[tuple[int, tuple[str, dict[str, str]]]]) -> None:
    log = Log()
    for minute, (kind, fields) in steps:
        log.add(minute, kind, **fields)
    rows = fold(log.rows)
    found = stages(rows)
    assert (found[0].begins_at, found[-1].ends_at) == (rows[0].at, rows[-1].at)
    assert all(one.ends_at == following.begins_at for one, following in pairwise(found))
    assert all(one.name is not following.name for one, following in pairwise(found))
    assert all(stage_at(found, row.at) is not None for row in rows)
