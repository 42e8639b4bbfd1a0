"""Every spot has its own place in the drawing, whatever the stove and the size."""

from dataclasses import replace
from itertools import combinations

import pytest
from PySide6.QtCore import QRectF

from cookstove_gui.gui.drawn_stove.stove_geometry import stove_geometry
from cookstove_gui.stove.stove import Firebox, Spot, SpotKind, Stove, stove_with_default_spots

SIZES = pytest.mark.parametrize(("width", "height"), [(448.0, 300.0), (448.0, 170.0), (900.0, 700.0)])
FIREBOXES = pytest.mark.parametrize("firebox", list(Firebox))


def stove(firebox: Firebox) -> Stove:
    return stove_with_default_spots("Kitchen stove", firebox)


@SIZES
@FIREBOXES
def test_patches_do_not_overlap(firebox: Firebox, width: float, height: float) -> None:
    patches = stove_geometry(stove(firebox), width, height).patches
    assert not [pair for pair in combinations(patches.values(), 2) if pair[0].intersects(pair[1])]


@SIZES
@FIREBOXES
def test_patches_lie_on_the_plan(firebox: Firebox, width: float, height: float) -> None:
    paper = QRectF(-0.01, -0.01, width + 0.02, height + 0.02)
    assert all(paper.contains(patch) for patch in stove_geometry(stove(firebox), width, height).patches.values())


@FIREBOXES
def test_every_spot_has_a_patch(firebox: Firebox) -> None:
    made = stove(firebox)
    assert set(stove_geometry(made, 448, 300).patches) == {spot.name for spot in made.spots}


@FIREBOXES
def test_left_is_left_and_back_is_up(firebox: Firebox) -> None:
    patches = stove_geometry(stove(firebox), 448, 300).patches
    assert patches["top_back_left"].right() < patches["top_back_right"].left()
    assert patches["top_back_left"].bottom() < patches["top_front_left"].top()


def test_firebox_is_drawn_where_it_is() -> None:
    layouts = {place: stove_geometry(stove(place), 448, 300) for place in Firebox}
    assert layouts[Firebox.LEFT].firebox.center().x() < layouts[Firebox.LEFT].cooktop.center().x()
    assert layouts[Firebox.RIGHT].firebox.center().x() > layouts[Firebox.RIGHT].cooktop.center().x()
    assert layouts[Firebox.ABOVE].firebox.bottom() <= layouts[Firebox.ABOVE].oven.top()


def test_own_spots_have_their_place_too() -> None:
    kettle = Spot(name="kettle_plate", label="kettle plate", kind=SpotKind.TOP, x=0.95, y=0.5)
    made = replace(stove(Firebox.LEFT), spots=(*stove(Firebox.LEFT).spots, kettle))
    patches = stove_geometry(made, 448, 300).patches
    assert patches["kettle_plate"].left() >= patches["top_back_middle"].right()


@pytest.mark.parametrize("firebox", Firebox)
def test_walls_have_a_patch_outside_the_stove(firebox: Firebox) -> None:
    walls = tuple(Spot(name=name, label=name, kind=SpotKind.WALL) for name in ("wall_left", "wall_back", "floor"))
    made = replace(stove(firebox), spots=(*stove(firebox).spots, *walls))
    layout = stove_geometry(made, 448, 300)
    assert set(layout.patches) == {spot.name for spot in made.spots}
    for wall in walls:
        patch = layout.patches[wall.name]
        assert not patch.intersects(layout.cooktop)
        assert not patch.intersects(layout.oven)
        assert patch.height() >= 24


def test_a_stove_without_an_oven_has_no_oven_box() -> None:
    made = stove(Firebox.LEFT)
    bare = replace(made, spots=tuple(spot for spot in made.spots if spot.kind is not SpotKind.OVEN))
    assert stove_geometry(bare, 448, 300).oven.isEmpty()


def test_many_spots_still_leave_room_for_their_numbers() -> None:
    many = tuple(
        Spot(name=f"own_{number}", label=f"own {number}", kind=SpotKind.TOP, x=number / 11, y=number % 3 / 2)
        for number in range(12)
    )
    patches = stove_geometry(replace(stove(Firebox.LEFT), spots=many), 448, 300).patches
    assert min(patch.width() for patch in patches.values()) >= 44
    assert min(patch.height() for patch in patches.values()) >= 44
