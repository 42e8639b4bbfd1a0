"""The walk goes round the spots in order and understands what a cook types for a spot."""

import pytest

from cookstove_gui.desk.log.walk import walk_of
from cookstove_gui.errors import InputProblem
from cookstove_gui.stove.stove import stove_with_default_spots

WALK = walk_of(stove_with_default_spots("Invented stove"))


@pytest.mark.parametrize(
    ("typed", "spot"),
    [
        ("oven centre", "oven_centre"),
        ("Oven Cen", "oven_centre"),
        ("back right", "top_back_right"),
        ("tbr", "top_back_right"),
        ("oc", "oven_centre"),
        ("flue", "flue"),
        ("glass", "door_glass"),
    ],
)
def test_typed_name_lights_its_spot(typed: str, spot: str) -> None:
    assert WALK.matching(typed).spot.name == spot


def test_unknown_name_is_refused_in_a_sentence() -> None:
    with pytest.raises(InputProblem, match="type part of its name"):
        WALK.matching("warming shelf")


@pytest.mark.parametrize("steps", [-1, 0, 1, 5, 40])
def test_going_on_and_back_again_ends_where_it_began(steps: int) -> None:
    assert WALK.moved_on(steps).moved_on(-steps) == WALK
