"""The walk goes round the spots in order."""

import pytest

from cookstove_gui.desk.log.walk import walk_of
from cookstove_gui.stove.stove import stove_with_default_spots

WALK = walk_of(stove_with_default_spots("Invented stove"))


@pytest.mark.parametrize("steps", [-1, 0, 1, 5, 40])
def test_going_on_and_back_again_ends_where_it_began(steps: int) -> None:
    assert WALK.moved_on(steps).moved_on(-steps) == WALK
