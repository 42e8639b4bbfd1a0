"""Walls against the room: the room as it was last read, or the usual one, and it says which."""

import pytest

from cookstove_gui.cooking.safety.wall_rises import greatest_of_each, latest_of_each, wall_rises
from cookstove_gui.units import kelvin
from tests.cooking.made import STOVE, log

ROWS = log(
    (0, "reading", "wall_left", "90", "F"),
    (5, "reading", "room", "70", "F"),
    (30, "reading", "wall_left", "160", "F"),
    (31, "reading", "floor_front", "100", "F"),
    (40, "reading", "room", "80", "F"),
    (60, "reading", "wall_left", "140", "F"),
    (61, "reading", "top_back_left", "500", "F"),
)


def rises_in_fahrenheit(rises) -> list[tuple[str, float]]:
    return [(rise.row.spot, round(rise.rise * 1.8, 6)) for rise in rises]


def test_each_reading_is_held_against_the_room_before_it_or_the_first_after():
    found = wall_rises(STOVE, ROWS)
    assert rises_in_fahrenheit(found) == [
        ("wall_left", 20.0), ("wall_left", 90.0), ("floor_front", 30.0), ("wall_left", 60.0),
    ]  # fmt: skip
    assert all(rise.room_was_read for rise in found)


def test_latest_and_greatest_of_each_spot_the_greatest_first():
    found = wall_rises(STOVE, ROWS)
    assert rises_in_fahrenheit(latest_of_each(found)) == [("wall_left", 60.0), ("floor_front", 30.0)]
    assert rises_in_fahrenheit(greatest_of_each(found)) == [("wall_left", 90.0), ("floor_front", 30.0)]


def test_without_a_room_reading_the_usual_room_is_taken_and_said():
    (found,) = wall_rises(STOVE, log((0, "reading", "shelf_over", "158", "F")))
    assert found.room == pytest.approx(kelvin(68.0, "F"))
    assert found.rise == pytest.approx(50.0)
    assert not found.room_was_read
