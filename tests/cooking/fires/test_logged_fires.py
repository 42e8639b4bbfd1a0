"""The fires in a log, tidy or messy: where one ends and the next begins, and how hot it got."""

import pytest

from cookstove_gui.cooking.fires.logged_fires import fires
from tests.cooking.fires.cases import KINDLING, MEDIUM, NEW, made
from tests.cooking.made import fahrenheit


def test_lighting_again_at_once_is_the_same_fire() -> None:
    found = fires(NEW, made(((0, "lit", "", "", ""), (8, "lit", "", "", ""), (30, "note", "", "", ""))))
    assert len(found) == 1
    assert found[0].minutes == 30


@pytest.mark.parametrize(("again", "count"), [(19, 1), (20, 2)])
def test_lighting_again_within_twenty_minutes_is_the_same_fire(again: float, count: int) -> None:
    rows = ((0, "lit", "", "", ""), (again, "lit", "", "", ""), (60, "note", "", "", ""))
    assert len(fires(NEW, made(rows))) == count


def test_lighting_again_after_the_fire_went_out_is_a_new_fire() -> None:
    rows = ((0, "lit", "", "", ""), (9, "out", "", "", ""), (10, "wood", "", "", ""), (12, "lit", "", "", ""))
    assert len(fires(NEW, made(rows))) == 2


def test_twenty_minutes_count_from_the_last_wood() -> None:
    rows = ((0, "lit", "", "", ""), (30, "wood", "", "", ""), (45, "lit", "", "", ""))
    assert len(fires(NEW, made(rows))) == 1


def test_wood_after_lighting_belongs_to_the_same_fire_and_lights_a_cold_stove() -> None:
    assert [fire.loads for fire in fires(NEW, made(MEDIUM))] == [2]
    wood_only = ((0, "note", "", "", ""), (5, "wood", "", "", ""), (50, "wood", "", "", ""))
    assert [(fire.loads, fire.minutes) for fire in fires(NEW, made(wood_only))] == [(2, 45)]


@pytest.mark.parametrize(("silent_until", "minutes"), [(272, [272]), (273, [32])])
def test_a_silence_of_more_than_four_hours_ends_a_fire(silent_until: float, minutes: list[float]) -> None:
    found = fires(NEW, made((*KINDLING, (silent_until, "reading", "room", "60", "F"))))
    assert [fire.minutes for fire in found] == minutes


def test_a_silence_of_a_night_ends_a_fire() -> None:
    found = fires(NEW, made((*KINDLING, (700, "reading", "room", "60", "F"))))
    assert [fire.minutes for fire in found] == [32]


def test_one_slip_among_many_readings_does_not_decide() -> None:
    slipped = (
        *KINDLING[:3],
        (25, "reading", "top_back_left", "2400", "F"),
        (26, "reading", "top_back_left", "930", "F"),
    )
    found = fires(NEW, made((*slipped, KINDLING[3])))
    assert found[0].hottest == pytest.approx(fahrenheit(240))


def test_of_three_readings_the_hottest_decides_and_of_four_the_next() -> None:
    heats = [(n, "reading", "top_back_left", heat, "F") for n, heat in ((5, "200"), (6, "300"), (7, "250"))]
    assert fires(NEW, made((KINDLING[0], *heats)))[0].hottest == pytest.approx(fahrenheit(300))
    fourth = (8, "reading", "top_back_left", "220", "F")
    assert fires(NEW, made((KINDLING[0], *heats, fourth)))[0].hottest == pytest.approx(fahrenheit(250))


@pytest.mark.parametrize(("typed", "counts"), [("1200", True), ("1201", False), ("-40", True), ("-41", False)])
def test_a_reading_that_no_cooktop_has_is_a_slip(typed: str, counts: bool) -> None:
    found = fires(NEW, made((KINDLING[0], (5, "reading", "top_back_left", typed, "F"))))
    assert (found[0].hottest is not None) is counts


def test_only_the_cooktop_counts() -> None:
    found = fires(
        NEW, made((KINDLING[0], (5, "reading", "oven_centre", "300", "F"), (9, "reading", "flue", "500", "F")))
    )
    assert found[0].hottest is None
