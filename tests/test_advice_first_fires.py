"""Between two first fires the stove goes cold, by what is read and by what is believed."""

from dataclasses import replace
from datetime import timedelta

import pytest

from cookstove_gui.advice import Subject, advise
from cookstove_gui.cooking.fires.first_fires import progress
from cookstove_gui.forecast.answers import (
    TurnKind,
)
from cookstove_gui.situation import Standing
from cookstove_gui.stove.entries import Entry, Kind
from cookstove_gui.units import kelvin
from tests.advice_cases import asked, rising, turn, words
from tests.cooking.fires.cases import KINDLING, NEW, made
from tests.cooking.made import STOVE
from tests.once import stood
from tests.rows import START, rows_of

KINDLED = rows_of(
    (0, Kind.LIT, "", "", ""),
    (10, Kind.READING, "top_back_right", "200", "F"),
    (20, Kind.READING, "top_back_right", "260", "F"),
    (28, Kind.READING, "oven_centre", "120", "F"),
)


COLD, WARM = kelvin(99.0, "F"), kelvin(100.0, "F")  # a cooktop is cold below 100 °F


def between_fires(believed: float, *rows: Entry, out: bool = True, done_now: bool = False) -> Standing:
    """A new stove whose first fire has burnt or burns: its cooktop as believed [K], and the rows of this session."""
    base = rising()
    stages = progress(NEW, made(KINDLING)).stages
    first = replace(stages[0], session=0 if done_now else 1)
    course = replace(base.course, hottest_top=believed)
    just_done = first if done_now else None
    fires = replace(base.first_fires, needed=True, stages=(first, *stages[1:]), just_done=just_done)
    turns = (turn(TurnKind.FIRE_OUT),) if out else ()
    return replace(base, rows=rows, course=course, first_fires=fires, turns=turns)


LIT = rows_of((0, Kind.LIT, "", "", ""))
READ_COLD = rows_of((40, Kind.READING, "top_back_right", "99", "F"), first=2)
READ_WARM = rows_of((30, Kind.READING, "top_back_right", "100", "F"), first=2)
OVEN_READ = rows_of((41, Kind.READING, "oven_centre", "300", "F"), first=3)


@pytest.mark.parametrize(
    ("believed", "rows", "subject"),
    [
        (COLD, (), Subject.FIRST_FIRE),  # a new day, nothing lit yet
        (WARM, (), Subject.LET_COOL),  # still warm from yesterday
        (COLD, READ_WARM, Subject.FIRST_FIRE),  # not lit: what is believed decides
        (COLD, LIT, Subject.LET_COOL),  # lit, and not read since
        (COLD, (*LIT, *READ_WARM), Subject.LET_COOL),
        (COLD, (*LIT, *READ_WARM, *READ_COLD, *OVEN_READ), Subject.FIRST_FIRE),
        (COLD, (*LIT, *READ_COLD, *OVEN_READ), Subject.FIRST_FIRE),
        (COLD, (*LIT, *OVEN_READ), Subject.LET_COOL),  # only the oven was read
        (WARM, (*LIT, *READ_COLD), Subject.LET_COOL),  # read cold in one place and believed warm in another
    ],
)  # fmt: skip
def test_the_cooktop_is_cold_when_it_is_believed_to_be_and_was_read_so_since_the_fire(believed, rows, subject):
    assert advise(between_fires(believed, *rows)).subject is subject


def test_a_stove_found_cold_stays_so_until_something_is_told_of_it() -> None:
    rows = rows_of(
        (0, Kind.LIT, "", "", ""), (8, Kind.READING, "top_back_right", "150", "F"),
        (16, Kind.READING, "top_back_right", "230", "F"), (95, Kind.READING, "top_back_right", "95", "F"),
    )  # fmt: skip
    found = [advise(stood(asked(rows, minute, NEW))).subject for minute in range(95, 160, 8)]
    assert len(set(found)) == 1


def test_a_first_fire_is_told_while_it_burns_and_the_cold_waited_for_once_it_has_done_its_stage():
    assert advise(between_fires(WARM, *LIT, out=False)).subject is Subject.FIRST_FIRE
    assert advise(between_fires(WARM, *LIT, out=False, done_now=True)).subject is Subject.LET_COOL
    assert advise(between_fires(WARM, out=False)).subject is Subject.LET_COOL  # nothing was lit today


def test_while_a_first_fire_burns_its_own_line_is_told():
    found = stood(asked(KINDLED[:2], 12, NEW))
    assert advise(found).subject is Subject.FIRST_FIRE
    assert words(found, 12).startswith("First fire 1 of 3")


def test_the_next_first_fire_waits_until_the_stove_is_cold():
    hot = stood(asked(KINDLED, 30, NEW))
    assert advise(hot).subject is Subject.LET_COOL
    assert "First fire 2" not in words(hot, 30)
    cooled = (
        *KINDLED,
        *(
            replace(KINDLED[1], number=5 + place, at=START + timedelta(minutes=400 + place), spot=spot.name, value="72")
            for place, spot in enumerate(STOVE.spots)
            if spot.name.startswith("top")
        ),
    )
    cold = stood(asked(cooled, 410, NEW))
    assert advise(cold).subject is Subject.FIRST_FIRE
    assert words(cold, 410).startswith("First fire 2 of 3")


def test_no_food_and_no_wood_before_the_first_fires_are_done():
    said = words(stood(asked(KINDLED, 30, NEW)), 30).lower()
    assert not any(word in said for word in ("loaves", "bread", "split", "add wood"))
