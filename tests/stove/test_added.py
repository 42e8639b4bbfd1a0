"""What a plus in the drawing adds: by its own words, and nothing else of the stove changes."""

from dataclasses import replace

import pytest

from cookstove_gui.stove.added import Addition, with_added
from cookstove_gui.stove.redrawn import with_plates
from cookstove_gui.stove.stove import (
    FluePlace,
    SpotKind,
    Stove,
    TankPlace,
    default_spots,
    stove_with_default_spots,
)

STOVE = stove_with_default_spots("Kitchen")


def without(stove: Stove, *names: str) -> Stove:
    return replace(stove, spots=tuple(spot for spot in stove.spots if spot.name not in names))


@pytest.mark.parametrize("name", [spot.name for spot in default_spots() if spot.kind is not SpotKind.TOP])
def test_a_usual_spot_comes_back_as_every_stove_has_it_and_is_read_last(name: str) -> None:
    found = with_added(without(STOVE, name), Addition("spot", name))
    assert found.spots[-1] == STOVE.spot(name)
    assert {spot.name for spot in found.spots} == {spot.name for spot in STOVE.spots}
    assert with_added(found, Addition("spot", name)) == found


def test_a_spot_that_was_skipped_before_is_walked_to_again() -> None:
    skipped = replace(without(STOVE, "oven_floor"), left_out=("oven_floor", "room"))
    assert with_added(skipped, Addition("spot", "oven_floor")).left_out == ("room",)


@pytest.mark.parametrize(("side", "x"), [("left", 0.0), ("right", 1.0)])
def test_a_wall_stands_at_its_side_and_tells_nothing_of_the_fire(side: str, x: float) -> None:
    spot = with_added(STOVE, Addition("spot", f"wall_{side}")).spots[-1]
    assert (spot.kind, spot.x, spot.label) == (SpotKind.WALL, x, f"wall {side}")


def test_pipe_and_tank_go_where_they_are_put_and_no_spot_changes() -> None:
    assert with_added(STOVE, Addition("pipe", "middle")) == replace(STOVE, flue_place=FluePlace.MIDDLE)
    assert with_added(STOVE, Addition("tank", "left")) == replace(STOVE, water_tank=TankPlace.LEFT)


def test_a_plate_is_named_for_its_row_and_column_as_far_as_that_name_is_free() -> None:
    bare = without(with_plates(STOVE, 2, 3), "top_back_middle", "top_front_right")
    once = with_added(bare, Addition("plate", x=0.5, y=0.75))
    assert (once.spots[-1].name, once.spots[-1].x, once.spots[-1].y) == ("top_back_middle", 0.5, 0.75)
    twice = with_added(once, Addition("plate", x=0.83, y=0.25))
    assert twice.spots[-1].name == "top_front_right"
    more = with_added(twice, Addition("plate", x=0.9, y=0.1))  # every usual name is taken
    assert more.spots[-1].name == "top_spot_1"
    assert with_added(more, Addition("plate", x=0.9, y=0.1)).spots[-1].name == "top_spot_2"
