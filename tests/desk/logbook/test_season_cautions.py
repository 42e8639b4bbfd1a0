"""Cautions of past sessions are those that the desk would have shown at their entries, counted once a session."""

from datetime import timedelta

import pytest

from cookstove_gui.desk import Desk
from cookstove_gui.desk.logbook.opened import asked_about
from cookstove_gui.desk.logbook.season_cautions import CautionCounts
from cookstove_gui.one_road import at_moment, cautions_over, present
from cookstove_gui.stove.entries import Kind
from tests.held_clock import HeldClock

from .made import keep


@pytest.fixture
def hot(burning_desk: Desk, held_clock: HeldClock) -> int:
    """A session in which the cooktop was read far too hot, twice."""
    for _ in range(2):
        held_clock.pass_minutes(8)
        burning_desk.read("860", spot="top_front_left")
        burning_desk.do(Kind.WOOD, note="two splits")
    assert burning_desk.session is not None
    return burning_desk.session.number


def test_they_are_those_that_the_one_road_gives_at_each_entry(burning_desk: Desk, hot: int) -> None:
    asked = asked_about(burning_desk, hot)
    assert asked is not None
    found = {caution.key for caution in cautions_over(asked.inputs)}
    shown = {
        caution.key
        for moment in {row.at for row in asked.inputs.rows}
        for caution in present(at_moment(asked.inputs, moment)).cautions
    }  # fmt: skip
    assert len(found) > 1
    assert found == shown


def test_a_caution_counts_once_a_session(burning_desk: Desk, held_clock: HeldClock, hot: int) -> None:
    cold = keep(burning_desk, "Cold", held_clock() - timedelta(days=3), (60, 61))
    told: list[tuple[int, int]] = []
    counts = CautionCounts(burning_desk)
    found = counts.counted([hot, cold], lambda *done: told.append(done), lambda: False)
    assert found is not None
    assert found.sessions == 2
    assert all(1 <= number <= 2 for _, number in found.cautions)
    assert told == [(1, 2), (2, 2)]
    assert counts.counted([hot, cold], lambda *_: None, lambda: False) == found


def test_counting_can_be_given_up(burning_desk: Desk, hot: int) -> None:
    assert CautionCounts(burning_desk).counted([hot], lambda *_: None, lambda: True) is None


def test_the_commonest_caution_stands_first_and_a_session_without_entries_has_none(
    burning_desk: Desk, held_clock: HeldClock, hot: int
) -> None:
    empty = burning_desk.logbook.start_session(burning_desk.stove.name, "Empty").number
    found = CautionCounts(burning_desk).counted([hot, empty], lambda *_: None, lambda: False)
    assert found is not None
    assert found.sessions == 2
    numbers = [number for _, number in found.cautions]
    assert numbers == sorted(numbers, reverse=True)
    assert set(numbers) == {1}


def test_a_session_that_grew_is_followed_again(burning_desk: Desk, held_clock: HeldClock) -> None:
    assert burning_desk.session is not None
    number, counts = burning_desk.session.number, CautionCounts(burning_desk)
    before = counts.counted([number], lambda *_: None, lambda: False)
    held_clock.pass_minutes(8)
    burning_desk.read("860", spot="top_front_left")
    after = counts.counted([number], lambda *_: None, lambda: False)
    assert before is not None
    assert after is not None
    assert len(after.cautions) > len(before.cautions)
