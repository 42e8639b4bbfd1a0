"""A stove has the spots its owner names, and every spot that was read."""

from dataclasses import replace

import pytest

from cookstove_gui.stove.stove import (
    Firebox,
    Spot,
    SpotKind,
    Stove,
    default_spots,
    spot_kind_from_name,
    stove_with_default_spots,
    with_spots_named,
)


def test_default_spots_are_those_of_the_log_file() -> None:
    oven = {f"oven_{place}" for place in ("centre", "left", "right", "rear", "floor")}
    top = {f"top_{row}_{column}" for row in ("front", "back") for column in ("left", "middle", "right")}
    rest = {"side_left", "side_right", "door_glass", "flue", "room"}
    assert {spot.name for spot in default_spots()} == oven | top | rest


def test_walk_begins_at_the_oven_and_goes_round_the_cooktop() -> None:
    assert [spot.name for spot in default_spots()[:7]] == [
        "oven_centre",
        "top_front_left",
        "top_front_middle",
        "top_front_right",
        "top_back_right",
        "top_back_middle",
        "top_back_left",
    ]


def test_kind_of_a_default_spot_is_what_its_name_says() -> None:
    assert all(spot_kind_from_name(spot.name) is spot.kind for spot in default_spots())


@pytest.mark.parametrize("name", ["left", "griddle", "reservoir"])
def test_name_that_says_nothing_is_on_the_cooktop(name: str) -> None:
    assert spot_kind_from_name(name) is SpotKind.TOP


@pytest.mark.parametrize("name", ["wall_left", "floor_front", "ceiling", "shelf_over", "mantel", "cupboard", "hearth"])
def test_names_of_walls_and_floors_are_beside_the_stove(name: str) -> None:
    assert spot_kind_from_name(name) is SpotKind.WALL


def test_kind_is_the_owners_and_else_what_the_name_says() -> None:
    own = Spot(name="wall_end", label="end by the wall", kind=SpotKind.TOP)
    stove = Stove(name="Kitchen", spots=(own,))
    assert stove.kind_of("wall_end") is SpotKind.TOP
    assert stove.kind_of("wall_left") is SpotKind.WALL


def test_spots_are_found_by_name_and_kind() -> None:
    stove = stove_with_default_spots("Kitchen", Firebox.RIGHT)
    flue = stove.spot("flue")
    assert flue is not None
    assert flue.kind is SpotKind.FLUE
    assert stove.spot("attic") is None
    assert len(stove.spots_of(SpotKind.TOP)) == 6


def test_spots_are_added_once_and_only_if_unknown() -> None:
    stove = stove_with_default_spots("Kitchen")
    assert with_spots_named(stove, ("flue", "room", "")) is stove
    grown = with_spots_named(stove, ("side_shelf", "flue", "side_shelf"))
    assert [spot.name for spot in grown.spots[len(stove.spots) :]] == ["side_shelf"]


def test_the_oven_is_stood_for_by_its_centre_or_else_its_first_spot() -> None:
    whole = stove_with_default_spots("Kitchen")
    left, right = (Spot(name=name, label=name, kind=SpotKind.OVEN) for name in ("oven_left", "oven_right"))
    top = Spot(name="top", label="top", kind=SpotKind.TOP)
    assert whole.oven_spot == "oven_centre"
    assert replace(whole, spots=(top, right, *whole.spots)).oven_spot == "oven_centre"
    assert replace(whole, spots=(top, right, left)).oven_spot == "oven_right"
    assert replace(whole, spots=(top,)).oven_spot == "oven_centre"
