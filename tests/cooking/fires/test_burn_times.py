"""Measured burn times: from a load with the air shut down until the oven has fallen."""

import pytest

from cookstove_gui.cooking.fires.burn_times import burn_times, summary
from tests.cooking.made import STOVE, fahrenheit, session
from tests.cooking.made import log as made_log

BURN = (
    (0, "lit", "", "", ""),
    (30, "wood", "", "6", "kg"),
    (35, "wood", "", "2", "kg"),
    (50, "air", "", "0.1", ""),
    (60, "reading", "oven_centre", "400", "F"),
    (90, "reading", "oven_centre", "440", "F"),
    (200, "reading", "oven_centre", "420", "F"),
    (260, "reading", "oven_centre", "380", "F"),
)


def test_a_burn_ends_where_the_oven_has_fallen_between_readings() -> None:
    # hottest 440; 390 lies three quarters from 420 to 380, at 200 + 45 min; from the load at 35 that is 210
    (found,) = burn_times(STOVE, [session(1, made_log(*BURN))])
    assert found.fell
    assert found.minutes == pytest.approx(210)
    assert found.mass == pytest.approx(8.0)
    assert found.air_open == pytest.approx(0.1)
    assert found.hottest == pytest.approx(fahrenheit(440))


def test_the_fall_may_be_chosen() -> None:
    (found,) = burn_times(STOVE, [session(1, made_log(*BURN))], fall=30 / 1.8)
    assert found.minutes == pytest.approx(200 + 15 - 35)  # 410 lies a quarter of the way from 420 to 380


def test_a_burn_cut_short_lasted_at_least_so_long() -> None:
    (found,) = burn_times(STOVE, [session(1, made_log(*BURN[:-1]))])
    assert not found.fell
    assert found.minutes == pytest.approx(165)
    whole = summary(burn_times(STOVE, [session(1, made_log(*BURN[:-1]))]))
    assert (whole.burns, whole.typical_min, whole.longest_min) == (0, None, pytest.approx(165))


def test_the_next_load_ends_a_burn() -> None:
    rows = (*BURN[:-1], (210, "wood", "", "2", "kg"), BURN[-1])
    (found,) = burn_times(STOVE, [session(1, made_log(*rows))])
    assert not found.fell


def with_row(rows: tuple[tuple[float, str, str, str, str], ...], at: float, value: str):  # type: ignore[no-untyped-def]
    """The log with the air set at another time to another fraction."""
    return tuple(sorted((at, "air", "", value, "") if row[1] == "air" else row for row in rows))


@pytest.mark.parametrize(
    ("at", "fraction", "counts"), [(80, "0.1", 1), (81, "0.1", 0), (50, "0.4", 1), (50, "0.41", 0)]
)
def test_the_air_is_shut_down_within_45_minutes_of_the_load(at: float, fraction: str, counts: int) -> None:
    assert len(burn_times(STOVE, [session(1, made_log(*with_row(BURN, at, fraction)))])) == counts


@pytest.mark.parametrize(("second", "loaded", "mass"), [(45, 45, 8.0), (46, 46, 2.0)])
def test_wood_within_a_quarter_of_an_hour_is_one_load(second: float, loaded: float, mass: float) -> None:
    rows = tuple((second, *row[1:]) if row[0] == 35 else row for row in BURN)
    burns = burn_times(STOVE, [session(1, made_log(*rows))])
    assert burns[-1].mass == pytest.approx(mass)
    assert burns[-1].minutes == pytest.approx(245 - loaded)


def test_a_load_of_unknown_mass_is_timed_without_it() -> None:
    rows = tuple((*row[:3], "", "") if row[0] == 35 else row for row in BURN)
    (found,) = burn_times(STOVE, [session(1, made_log(*rows))])
    assert found.mass is None
    assert found.minutes == pytest.approx(210)


def test_two_readings_are_enough() -> None:
    rows = (*BURN[:5], (110, "reading", "oven_centre", "340", "F"))
    (found,) = burn_times(STOVE, [session(1, made_log(*rows))])
    # 50 of the 60 °F from 60 to 110 min: at 101.67, counted from the load at 35
    assert found.minutes == pytest.approx(60 + 50 * 50 / 60 - 35)


def test_air_left_open_is_no_such_burn() -> None:
    rows = tuple(row if row[1] != "air" else (*row[:3], "0.8", "") for row in BURN)
    assert burn_times(STOVE, [session(1, made_log(*rows))]) == ()


def test_air_shut_down_in_the_minute_of_the_load_counts() -> None:
    rows = ((0, "lit", "", "", ""), (35, "wood", "", "6", "kg"), (35, "air", "", "0.1", ""), *BURN[4:])
    (found,) = burn_times(STOVE, [session(1, made_log(*rows))])
    assert found.air_open == pytest.approx(0.1)


def test_opening_the_air_again_ends_it() -> None:
    rows = (*BURN[:-1], (205, "air", "", "1", ""), BURN[-1])
    (found,) = burn_times(STOVE, [session(1, made_log(*rows))])
    assert not found.fell
    assert found.minutes == pytest.approx(165)


def test_summary_of_several() -> None:
    found = burn_times(STOVE, [session(1, made_log(*BURN)), session(2, made_log(*BURN))])
    assert summary(found).burns == 2
    assert summary(found).typical_min == pytest.approx(210)
    assert summary([]).longest_min is None


def test_the_longest_burn_may_be_one_without_an_end() -> None:
    cut_short = (*BURN[:-1], (400, "reading", "oven_centre", "420", "F"))
    found = summary(burn_times(STOVE, [session(1, made_log(*BURN)), session(2, made_log(*cut_short))]))
    assert (found.burns, found.typical_min, found.longest_min) == (1, pytest.approx(210), pytest.approx(365))


def test_one_seen_to_its_end_is_not_typical_of_more_that_lasted_longer() -> None:
    cut_short = (*BURN[:-1], (400, "reading", "oven_centre", "420", "F"))
    lasting = [session(number, made_log(*cut_short)) for number in (2, 3)]
    found = summary(burn_times(STOVE, [session(1, made_log(*BURN)), *lasting]))
    assert (found.burns, found.typical_min) == (1, None)


def test_a_burn_with_one_reading_of_the_oven_tells_nothing() -> None:
    assert burn_times(STOVE, [session(1, made_log(*BURN[:5]))]) == ()
