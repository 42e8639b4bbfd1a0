"""The kitchen is as warm as it was read, within what a kitchen can be; a usual one where it was not read."""

import pytest

from cookstove_gui.cooking.instruments.kitchen import COLDEST_ROOM, WARMEST_ROOM, room_heat
from cookstove_gui.forecast.answers import Zone
from cookstove_gui.stove.stove import USUAL_ROOM, Spot, SpotKind, Stove, stove_with_default_spots
from cookstove_gui.units import kelvin

STOVE = stove_with_default_spots("Kitchen")


def zones(name: str, heat: float, read: float | None) -> dict[str, Zone]:
    return {name: Zone(spot=name, p10=heat - 5, p50=heat, p90=heat + 5, last_reading=read, last_reading_age_min=None)}


@pytest.mark.parametrize(
    ("heat", "expected"),
    [(289.0, 289.0), (200.0, COLDEST_ROOM), (400.0, WARMEST_ROOM)],
    ids=["as read", "too cold for a kitchen", "too warm for a kitchen"],
)
def test_a_room_that_was_read_counts(heat: float, expected: float) -> None:
    assert room_heat(STOVE, zones("room", heat, read=heat)) == expected


def test_a_room_that_was_not_read_is_a_usual_one() -> None:
    assert room_heat(STOVE, zones("room", 305.0, read=None)) == USUAL_ROOM == pytest.approx(kelvin(20.0, "C"))
    assert room_heat(STOVE, {}) == USUAL_ROOM
    assert room_heat(STOVE, zones("oven_centre", 450.0, read=450.0)) == USUAL_ROOM


def test_the_room_may_have_a_name_of_the_owners() -> None:
    stove = Stove(name="Cabin", spots=(Spot(name="by_the_window", label="by the window", kind=SpotKind.ROOM),))
    assert room_heat(stove, zones("by_the_window", 285.0, read=285.0)) == 285.0
