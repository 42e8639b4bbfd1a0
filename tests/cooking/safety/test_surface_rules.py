"""Cautions about hot surfaces: walls by rise and by their heat alone, and what a hand may meet."""

from dataclasses import replace
from datetime import timedelta
from typing import Any

import pytest

from cookstove_gui.stove.stove import unchecked, with_spots_named
from tests.cooking.made import START, STOVE, log, zone
from tests.cooking.safety.asking import LIT, WARM_FLUE, cautions

WALLED = with_spots_named(STOVE, ("wall_left", "wall_rear"))
MIRROR = replace(STOVE, cooktop_surface="polished cast iron")
TOP_READ = log((0, "reading", "top_back_left", "300", "F"), (40, "reading", "top_back_left", "420", "F"))


def wall_cautions(wall: str, room: str, after: float = 31) -> set[str]:
    rows = log(LIT, (30, "reading", "room", room, "F"), (31, "reading", "wall_left", wall, "F"))
    return set(cautions(rows, [WARM_FLUE], stove=WALLED, after=after)) & {"wall", "wall_urgent"}


@pytest.mark.parametrize(
    ("wall", "expected"), [("150", None), ("161", "wall"), ("184", "wall"), ("188", "wall_urgent")]
)
def test_walls_are_compared_with_the_room(wall: str, expected: str | None) -> None:
    """Rows "8.caution-covered" and "8.caution-exposed" of tests/reference."""
    assert wall_cautions(wall, room="70") == ({expected} if expected else set())


@pytest.mark.parametrize(
    ("wall", "room", "expected"),
    [("208", "100", "wall_urgent"), ("186", "97", "wall_urgent"), ("184", "97", None), ("184", "92", "wall")],
)
def test_an_absolute_limit_counts_in_a_hot_room_too(wall: str, room: str, expected: str | None) -> None:
    """Row "8.caution-absolute" of tests/reference."""
    assert wall_cautions(wall, room) == ({expected} if expected else set())


def test_an_absolute_limit_is_not_used_as_a_rise() -> None:
    assert wall_cautions("180", room="50") == {"wall_urgent"}  # 130 °F above the room, though below 185 °F
    assert wall_cautions("150", room="50") == {"wall"}  # 100 °F above the room


def test_a_wall_read_long_ago_is_not_told_of() -> None:
    assert wall_cautions("208", room="70", after=92) == set()


def test_a_wall_caution_names_the_wall_its_heat_and_the_rise() -> None:
    rows = log(LIT, (30, "reading", "room", "70", "F"), (31, "reading", "wall_left", "190", "F"))
    found = cautions(rows, [WARM_FLUE], stove=WALLED)["wall_urgent"]
    assert "Wall left reads 190 °F (88 °C), 120 °F (67 °C) above the room" in found.text
    assert "never a clearance" in found.text
    assert (found.urgent, found.spot) == (True, "wall_left")


def test_the_hottest_spot_of_the_cooktop_is_told_of() -> None:
    found = cautions(log(LIT), [zone("top_back_left", 710), zone("top_front_left", 740), WARM_FLUE])
    assert found["over_fired_top"].spot == "top_front_left"
    assert "over_fired_top" not in cautions(log(LIT), [zone("top_back_left", 690), WARM_FLUE])


def test_a_hot_side_is_told_once_a_session_and_the_glass_by_itself() -> None:
    rows = log(LIT, (30, "reading", "side_left", "210", "F"), (60, "reading", "side_right", "240", "F"))
    assert "hot_surface" not in cautions(rows)
    assert cautions((*rows, *log((61, "reading", "door_glass", "300", "F"))))["hot_surface"].spot == "door_glass"


def test_a_side_or_glass_just_read_hot() -> None:
    assert "hot_surface" in cautions(log(LIT, (30, "reading", "side_left", "210", "F")))
    assert "hot_surface" in cautions(log(LIT, (30, "reading", "door_glass", "210", "F")))
    assert "hot_surface" not in cautions(log(LIT, (30, "reading", "side_left", "210", "F")), after=50)
    assert "hot_surface" not in cautions(log(LIT, (30, "reading", "side_left", "90", "F")))
    assert "hot_surface" not in cautions(log(LIT, (30, "reading", "top_back_left", "400", "F")))


@pytest.mark.parametrize(
    ("spot", "fahrenheit", "told"),
    [
        ("side_left", "125", True),
        ("side_left", "122", False),
        ("door_glass", "134", True),
        ("door_glass", "131", False),
    ],
)
def test_a_surface_burns_within_a_minute_from_its_threshold_on(spot: str, fahrenheit: str, told: bool) -> None:
    # rows 8.1 and 8.2: a minute on metal from 51 °C (124 °F), on glass from 56 °C (133 °F)
    assert ("hot_surface" in cautions(log(LIT, (30, "reading", spot, fahrenheit, "F")))) is told


@pytest.mark.parametrize(
    ("stove", "after", "told"),
    [
        (MIRROR, 5, True),
        (MIRROR, 41, False),  # once, at the first reading
        (STOVE, 5, False),
        (replace(MIRROR, instruments=(unchecked("gun", "infrared"),)), 5, True),
        (replace(MIRROR, instruments=(unchecked("dial", "oven thermometer"),)), 5, False),
    ],
    ids=["shiny", "later", "dull", "infrared", "no infrared"],
)
def test_a_shiny_cooktop_is_told_once_to_whoever_reads_it_by_infrared(stove: Any, after: float, told: bool) -> None:
    rows = [row for row in TOP_READ if row.at <= START + timedelta(minutes=after)]
    assert ("shiny_cooktop" in cautions(rows, stove=stove, after=after)) is told
