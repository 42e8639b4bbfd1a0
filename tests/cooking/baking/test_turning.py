"""When to turn what is in the oven, by the difference between its walls."""

import numpy as np
import pytest

from cookstove_gui.cooking.baking.turning import turn_reminder
from tests.cooking.made import STOVE, projection

TIMES = 37


def uneven(left: float, right: float):  # type: ignore[no-untyped-def]
    heats = {"oven_centre": [395.0] * TIMES, "oven_left": [left] * TIMES, "oven_right": [right] * TIMES}
    return projection(heats)


def test_a_hot_wall_asks_for_a_turn_half_way() -> None:
    found = turn_reminder(uneven(440, 360), STOVE, elapsed_min=10, whole_min=50)
    assert found is not None
    assert (found.hotter, found.cooler) == ("oven_left", "oven_right")
    assert found.difference == pytest.approx(80 / 1.8)
    assert found.least <= found.difference <= found.most
    assert found.in_min == 15
    assert found.chance == 1.0


def test_past_half_way_it_was_due_before() -> None:
    found = turn_reminder(uneven(360, 440), STOVE, elapsed_min=40, whole_min=50)
    assert found is not None
    assert found.hotter == "oven_right"
    assert found.in_min == -15


def test_even_walls_or_unknown_ones_need_no_turn() -> None:
    assert turn_reminder(uneven(410, 386), STOVE, 0, 50) is None  # 24 °F: browns evenly enough
    assert turn_reminder(uneven(410, 384), STOVE, 0, 50) is not None  # 26 °F
    assert turn_reminder(projection({"oven_centre": [395.0] * TIMES}), STOVE, 0, 50) is None


def test_neither_the_floor_nor_the_centre_is_a_wall() -> None:
    heats = {"oven_centre": [330.0] * TIMES, "oven_left": [400.0] * TIMES, "oven_floor": [500.0] * TIMES}
    assert turn_reminder(projection(heats), STOVE, 0, 50) is None


def test_the_hottest_and_the_coolest_of_all_walls_are_named() -> None:
    heats = {"oven_left": [400.0] * TIMES, "oven_right": [440.0] * TIMES, "oven_rear": [380.0] * TIMES}
    found = turn_reminder(projection(heats), STOVE, 0, 50)
    assert found is not None
    assert (found.hotter, found.cooler) == ("oven_right", "oven_rear")
    assert found.difference == pytest.approx(60 / 1.8)


def test_only_the_next_hour_counts() -> None:
    late = np.full(TIMES, 395.0)
    late[13:] = 500.0  # after 60 min
    heats = {"oven_left": late, "oven_right": np.full(TIMES, 395.0)}
    assert turn_reminder(projection(heats), STOVE, 0, 50) is None


def test_doubt_of_the_walls_is_doubt_of_the_difference() -> None:
    # ten futures with the left wall 0, 10, ... 90 °F hotter: seven of them differ by 25 °F or more
    heats = {"oven_left": 395.0 + 10.0 * np.arange(10)[:, None] + np.zeros(TIMES), "oven_right": [395.0] * TIMES}
    found = turn_reminder(projection(heats), STOVE, 0, 50)
    assert found is not None
    assert found.chance == pytest.approx(0.7)
    # percentiles between the ten values: 0.1 * 9 = 0.9 steps of 10 °F from the lowest, and so on
    assert (found.least, found.difference, found.most) == pytest.approx((9 / 1.8, 45 / 1.8, 81 / 1.8))
