"""A stove drawn otherwise keeps its spots' names, so that their readings stay with them."""

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from cookstove_gui.stove.redrawn import (
    left_out,
    mirrored,
    moved,
    plate_size,
    plates_of,
    sized,
    swapped,
    with_plates,
)
from cookstove_gui.stove.stove import PLATE_LENGTHS, Firebox, FluePlace, Spot, SpotKind, stove_with_default_spots

STOVE = stove_with_default_spots("A")
COUNTS = st.integers(1, 4)


def tops(stove) -> list[str]:
    return [spot.name for spot in stove.spots_of(SpotKind.TOP)]


@given(COUNTS, COUNTS)
def test_every_plate_has_a_spot_of_its_own_and_all_else_stays(rows: int, columns: int) -> None:
    drawn = with_plates(STOVE, rows, columns)
    plates = drawn.spots_of(SpotKind.TOP)
    assert len({(spot.x, spot.y) for spot in plates}) == len(set(tops(drawn))) == rows * columns
    assert plates_of(drawn) == (rows, columns)
    others = [spot for spot in STOVE.spots if spot.kind is not SpotKind.TOP]
    assert [spot for spot in drawn.spots if spot.kind is not SpotKind.TOP] == others


def test_the_usual_plates_are_those_of_a_stove_nobody_drew() -> None:
    assert plates_of(STOVE) == (2, 3)
    drawn = with_plates(STOVE, 2, 3)
    assert [spot.name for spot in drawn.spots] == [spot.name for spot in STOVE.spots]
    assert all(
        (spot.x, spot.y) == pytest.approx((STOVE.spot(spot.name).x, STOVE.spot(spot.name).y)) for spot in drawn.spots
    )


@given(COUNTS, COUNTS)
def test_there_and_back_is_the_same_plates(rows: int, columns: int) -> None:
    there = with_plates(with_plates(STOVE, rows, columns), 2, 3)
    assert set(tops(there)) == set(tops(STOVE))


def test_fewer_columns_leave_out_the_middle() -> None:
    drawn = with_plates(STOVE, 2, 2)
    assert {spot.name for spot in left_out(STOVE, drawn)} == {"top_front_middle", "top_back_middle"}


def test_a_spot_of_ones_own_keeps_its_plate() -> None:
    kettle = Spot(name="kettle", label="kettle", kind=SpotKind.TOP, x=0.9, y=0.9)
    drawn = with_plates(replace(STOVE, spots=(*STOVE.spots, kettle)), 2, 3)
    assert drawn.spot("kettle") == kettle
    assert drawn.spot("top_back_right") is None


@given(st.sampled_from(Firebox), st.sampled_from(FluePlace), st.floats(0, 1))
def test_mirrored_twice_is_as_before(firebox: Firebox, flue: FluePlace, x: float) -> None:
    kettle = Spot(name="kettle", label="kettle", kind=SpotKind.TOP, x=x)
    stove = replace(STOVE, firebox=firebox, flue_place=flue, spots=(*STOVE.spots, kettle))
    once, twice = mirrored(stove), mirrored(mirrored(stove))
    assert once.spot("kettle").x == pytest.approx(1 - x)
    assert (twice.firebox, twice.flue_place) == (firebox, flue)
    assert twice.spot("kettle").x == pytest.approx(x)


def test_a_spot_whose_name_says_its_side_stays_there() -> None:
    assert mirrored(STOVE).spot("top_front_left") == STOVE.spot("top_front_left")


def test_spots_change_places_within_one_kind_only() -> None:
    drawn = swapped(STOVE, "top_front_left", "top_back_right")
    assert (drawn.spot("top_front_left").x, drawn.spot("top_front_left").y) == pytest.approx((5 / 6, 0.75))
    assert (drawn.spot("top_back_right").x, drawn.spot("top_back_right").y) == pytest.approx((1 / 6, 0.25))
    assert swapped(STOVE, "top_front_left", "oven_left") == STOVE


@given(st.floats(-2, 3), st.floats(-2, 3))
def test_a_spot_never_leaves_its_part(x: float, y: float) -> None:
    spot = moved(STOVE, "oven_left", x, y).spot("oven_left")
    assert 0 <= spot.x <= 1
    assert 0 <= spot.y <= 1


@given(st.floats(0, 9), st.floats(0, 9))
def test_a_plate_stays_within_what_a_plate_may_be(width: float, depth: float) -> None:
    spot = sized(STOVE, "top_front_left", width, depth).spot("top_front_left")
    assert PLATE_LENGTHS[0] <= spot.width <= PLATE_LENGTHS[1]
    assert PLATE_LENGTHS[0] <= spot.depth <= PLATE_LENGTHS[1]


def test_a_plate_whose_size_nobody_said_has_its_even_share() -> None:
    assert plate_size(STOVE, STOVE.spot("top_front_left")) == pytest.approx((0.30, 0.30))
