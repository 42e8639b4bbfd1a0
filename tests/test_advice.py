"""What a cook is told to do follows one order of rules."""

from dataclasses import replace
from datetime import timedelta

import pytest

from cookstove_gui.advice import Subject, advise
from cookstove_gui.forecast.answers import (
    TurnKind,
)
from tests.advice_cases import DANGER, rising, standing, turn, words
from tests.rows import RISING


def test_danger_speaks_before_everything():
    found = advise(standing(390.0, cautions=(DANGER,), turns=(turn(TurnKind.RELOAD_DUE),)))
    assert found.subject is Subject.DANGER
    assert words(standing(390.0, cautions=(DANGER,))).startswith("Flue pipe too hot. Shut the air down.")


def test_a_caution_without_an_order_leaves_the_heading_alone():
    assert advise(standing(390.0, cautions=(replace(DANGER, order=""),))).subject is Subject.PUT_IN


def test_a_fire_that_is_out_speaks_before_the_oven_is_praised():
    found = advise(standing(390.0, turns=(turn(TurnKind.FIRE_OUT),)))
    assert found.subject is Subject.FIRE_OUT
    assert found.wood_by is None
    assert found.step is None


def test_an_open_door_is_to_be_closed_before_wood_is_asked_for():
    found = standing(390.0, turns=(turn(TurnKind.DOOR_OPEN), turn(TurnKind.RELOAD_DUE)))
    assert advise(found).subject is Subject.DOOR_OPEN
    assert "wood" not in words(found).lower()


def test_an_unlikely_turn_is_not_spoken_of():
    assert advise(standing(390.0, turns=(turn(TurnKind.FIRE_OUT, chance=0.5),))).subject is Subject.PUT_IN


@pytest.mark.parametrize(("chance", "subject"), [(0.59, Subject.PUT_IN), (0.6, Subject.WOOD_DUE)])
def test_a_turn_is_spoken_of_from_six_in_ten_on(chance, subject):
    assert advise(standing(390.0, turns=(turn(TurnKind.RELOAD_DUE, 5, chance),))).subject is subject


def test_without_a_reading_nothing_is_said_of_the_oven():
    unread = replace(standing(390.0), rows=RISING[:4])
    assert advise(unread).subject is Subject.NOTHING_READ
    assert advise(replace(unread, rows=RISING[:5])).subject is Subject.PUT_IN


@pytest.mark.parametrize(("in_min", "is_asked"), [(0, True), (10, True), (11, False)])
def test_air_left_wide_open_is_to_be_shut_within_ten_minutes_of_its_time(in_min, is_asked):
    # Ten minutes from now, which is four minutes after the latest row.
    found = advise(standing(390.0, turns=(turn(TurnKind.AIR_OPEN, in_min + 4),)))
    assert (found.subject is Subject.AIR_OPEN) is is_asked
    if is_asked:
        assert found.by is not None
        assert found.by.at == rising().now + timedelta(minutes=in_min)


@pytest.mark.parametrize(("minutes", "is_asked"), [(2, False), (14, False), (15, True)])
def test_air_that_was_just_opened_is_not_called_left_open(minutes, is_asked):
    left_open = standing(390.0, turns=(turn(TurnKind.AIR_OPEN),))
    opened = replace(RISING[1], at=left_open.now - timedelta(minutes=minutes))
    found = advise(replace(left_open, rows=(*left_open.rows, opened)))
    assert (found.subject is Subject.AIR_OPEN) is is_asked


def test_air_left_wide_open_comes_before_wood():
    both = (turn(TurnKind.RELOAD_DUE, 5), turn(TurnKind.AIR_OPEN, 5))
    assert advise(standing(390.0, turns=both)).subject is Subject.AIR_OPEN


@pytest.mark.parametrize(
    ("oven_f", "slope", "turns"),
    [
        (390.0, 0.0, ()), (378.0, -0.5, ()), (320.0, 0.5, ()), (300.0, 0.0, ()), (450.0, -0.5, ()), (450.0, 0.0, ()),
        (390.0, 0.0, (turn(TurnKind.AIR_OPEN, 5),)), (390.0, 0.0, (turn(TurnKind.RELOAD_DUE, 5),)),
        (390.0, 0.0, (turn(TurnKind.FIRE_OUT),)),
    ],
)  # fmt: skip
def test_a_reading_is_worth_taking_whatever_is_advised(oven_f, slope, turns):
    wanted = advise(standing(oven_f, slope, turns=turns, reading_in=10)).reading
    assert wanted is not None
    assert wanted.spot == "oven_centre"
