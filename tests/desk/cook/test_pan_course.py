"""The two spots that a pan may be put on: the best free ones of a row, with their own futures."""

from dataclasses import replace
from datetime import timedelta

import numpy as np
import pytest

from cookstove_gui.desk import Desk
from cookstove_gui.desk.cook.good_rows import GoodRow, good_for
from cookstove_gui.desk.cook.pan_course import course_said, pan_course, pan_spots, spots_at
from cookstove_gui.stove.entries import Kind
from cookstove_gui.units import degrees
from tests.desk.conftest import stand


@pytest.fixture
def row(burning_desk: Desk) -> GoodRow:
    stand(burning_desk)
    found = good_for(burning_desk, by_spot=False)
    assert found is not None
    return next(row for row in found.rows if not row.is_oven and len(row.spots) > 2)


def test_a_spot_with_a_pan_on_it_is_left_out(burning_desk: Desk, row: GoodRow) -> None:
    before = pan_course(burning_desk, row)
    assert before is not None
    assert len(before.spots) == 2
    burning_desk.do(Kind.PAN, value="on", spot=before.spots[0].spot)
    after = pan_course(burning_desk, row)
    assert after is not None
    assert before.spots[0].spot not in [one.spot for one in after.spots]
    for spot in row.spots:
        if spot in pan_spots(burning_desk, row):
            burning_desk.do(Kind.PAN, value="on", spot=spot)
    for spot in pan_spots(burning_desk, row):
        burning_desk.do(Kind.PAN, value="on", spot=spot)
    assert pan_course(burning_desk, row) is None


def test_the_oven_is_no_place_for_a_pan(burning_desk: Desk, row: GoodRow) -> None:
    assert pan_course(burning_desk, replace(row, is_oven=True)) is None


def test_a_moment_to_come_is_read_off_the_spots_futures_and_one_past_is_not(burning_desk: Desk, row: GoodRow) -> None:
    standing, course = burning_desk.standing, pan_course(burning_desk, row)
    assert standing is not None
    assert course is not None
    minutes = standing.projection.minutes
    at = standing.now + timedelta(minutes=float(minutes[3]))
    found = spots_at(burning_desk, course, at)
    assert found is not None
    heats = [float(np.median(standing.projection.of(one.spot)[:, 3])) for one in course.spots]
    assert found[0] == pytest.approx(heats[0])
    for one, heat in zip(course.spots, heats, strict=True):
        assert f"{one.name} about {degrees(heat, 'F'):.0f}" in found[1]
        assert f"{one.number} °F now" in course_said(burning_desk, course)
    assert spots_at(burning_desk, course, standing.now - timedelta(minutes=1)) is None
    assert spots_at(burning_desk, course, standing.now + timedelta(minutes=float(minutes[-1]) + 1)) is None
