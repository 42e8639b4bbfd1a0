"""Deadlines stand still until something is read or done; a reading is asked for once the walk rests."""

from dataclasses import replace
from datetime import timedelta

import pytest

from cookstove_gui.advice import LONG_PAST, Deadline, Subject, advise
from cookstove_gui.forecast.answers import (
    TurnKind,
)
from cookstove_gui.one_road import Memory, work_out
from cookstove_gui.stove.entries import Kind
from tests.advice_cases import asked, rising, standing, turn, words
from tests.once import stood
from tests.rows import RISING, START, rows_of


def test_wood_is_the_thing_to_do_once_its_time_is_near():
    assert advise(standing(390.0, turns=(turn(TurnKind.RELOAD_DUE, 10),))).subject is Subject.WOOD_DUE
    far = advise(standing(390.0, turns=(turn(TurnKind.RELOAD_DUE, 40),)))
    assert far.subject is Subject.PUT_IN
    assert far.wood_by is not None


def test_a_deadline_that_has_passed_says_so_and_one_long_gone_nothing():
    found = replace(standing(390.0, turns=(turn(TurnKind.RELOAD_DUE, 2),)), now=START + timedelta(minutes=55))
    assert "Wood was due at 7:48: add some now" in words(found, 55)
    gone = replace(found, now=found.course.asked_at + timedelta(minutes=2) + LONG_PAST + timedelta(minutes=1))
    assert advise(gone).subject is not Subject.WOOD_DUE


@pytest.mark.parametrize(
    ("minutes_ago", "wanted"),
    [
        (-40.0, Deadline(at=START, passed=False)), (0.0, Deadline(at=START, passed=False)),
        (0.5, Deadline(at=START, passed=True)), (60.0, Deadline(at=START, passed=True)), (60.5, None),
    ],
)  # fmt: skip
def test_a_deadline_has_passed_once_its_minute_is_over_and_is_dropped_after_an_hour(minutes_ago, wanted):
    found = standing(390.0, turns=(turn(TurnKind.RELOAD_DUE, 0),), reading_in=0)
    course = replace(found.course, asked_at=START)
    told = advise(replace(found, course=course, now=START + timedelta(minutes=minutes_ago), rows=RISING[-2:-1]))
    assert (told.by or told.wood_by) == wanted


@pytest.mark.parametrize(("minutes", "is_asked"), [(60.0, True), (60.5, False)])
def test_a_reading_that_was_wanted_over_an_hour_ago_is_not_asked_for(minutes, is_asked):
    found = standing(390.0, reading_in=0)
    told = advise(replace(found, now=found.course.asked_at + timedelta(minutes=minutes)))
    assert (told.reading is not None) is is_asked


@pytest.mark.parametrize(("in_min", "is_due"), [(4, True), (5, False), (20, False)])
def test_a_reading_is_due_now_when_less_than_a_minute_is_left(in_min, is_due):
    # The latest row is four minutes old.
    found = advise(standing(390.0, reading_in=in_min)).reading
    assert found is not None
    assert found.is_due is is_due
    assert found.by.at == rising().course.asked_at + timedelta(minutes=in_min)


def test_deadlines_stand_still_while_nothing_is_read_or_done():
    memory = Memory()
    told = [advise(work_out(asked(RISING, minute), memory)) for minute in (49.5, 52.0, 58.0, 66.0)]
    fresh = advise(stood(asked(RISING, 66.0)))
    readings = {one.reading.by.at for one in told if one.reading is not None}
    assert len(readings) == 1
    assert fresh == told[-1]


def test_a_reading_moves_the_deadline():
    later = (*RISING, replace(RISING[-2], number=11, at=START + timedelta(minutes=60), value="330"))
    before, after = (stood(asked(rows, 64)).course for rows in (RISING, later))
    assert before.asked_at < after.asked_at == later[-1].at


@pytest.mark.parametrize(("minutes", "asks"), [(2.9, False), (3.0, True)])
def test_nothing_is_asked_for_while_the_walk_goes_on(minutes, asks):
    wood = rows_of((47, Kind.WOOD, "", "5", "lb"), first=len(RISING) + 1)  # no reading: the walk may be over
    found = replace(
        standing(390.0, reading_in=5), rows=(*RISING, *wood), now=RISING[-1].at + timedelta(minutes=minutes)
    )
    assert (advise(found).reading is not None) is asks


def test_no_reading_is_asked_for_where_none_is_worth_taking():
    assert advise(standing(390.0)).reading is None


def test_a_reading_due_is_asked_for_now_and_one_to_come_by_its_clock():
    late = replace(standing(390.0, reading_in=0), now=START + timedelta(minutes=50))
    assert "Worth reading now: oven centre." in words(late)
    assert "Worth reading by 7:56: oven centre." in words(standing(390.0, reading_in=10))
