"""Where a drawn stove offers a plus: exactly where nothing is, and never over a part that is there."""

import itertools
from dataclasses import replace

import pytest

from cookstove_gui.stove.added import with_added
from cookstove_gui.stove.drawn.layout import stove_layout
from cookstove_gui.stove.drawn.shapes import bounds
from cookstove_gui.stove.drawn.spare import Spare, spare_places
from cookstove_gui.stove.redrawn import with_plates
from cookstove_gui.stove.stove import Firebox, SpotKind, Stove, TankPlace, default_spots, stove_with_default_spots

STOVE = stove_with_default_spots("Kitchen")


def offered(stove: Stove, width: float = 620.0, height: float = 440.0) -> tuple[Spare, ...]:
    return spare_places(stove, stove_layout(stove, width, height, has_spare=True))


def keys(stove: Stove) -> set[str]:
    return {f"{one.adds.kind} {one.adds.what}".strip() for one in offered(stove)}


def without(*names: str) -> Stove:
    return replace(STOVE, spots=tuple(spot for spot in STOVE.spots if spot.name not in names))


def test_a_whole_stove_offers_a_tank_a_wall_and_another_place_for_the_pipe() -> None:
    assert keys(STOVE) == {"pipe middle", "tank right", "spot wall_right"}  # at the left the room is written
    mirrored = replace(STOVE, firebox=Firebox.RIGHT)
    assert {"tank left", "spot wall_left"} <= keys(mirrored)


@pytest.mark.parametrize("name", [spot.name for spot in default_spots() if spot.kind is not SpotKind.TOP])
def test_what_is_not_read_is_offered_where_it_would_be_drawn(name: str) -> None:
    if name == "oven_centre":  # without it the rear wall takes its room
        return
    bare = without(name)
    (plus,) = (one for one in offered(bare) if one.adds.what == name)
    drawn = stove_layout(with_added(bare, plus.adds), 620.0, 440.0, has_spare=True)
    there, here = bounds(drawn.places[name].shape), bounds(plus.shape)
    assert (here.x, here.y) == pytest.approx((there.x, there.y), abs=2.0)
    assert f"spot {name}" not in keys(STOVE)


@pytest.mark.parametrize("place", [(0, 0), (1, 2), (0, 1)])
def test_a_plate_that_nobody_reads_is_offered_and_comes_to_lie_there(place: tuple[int, int]) -> None:
    row, column = place
    stove = with_plates(STOVE, 2, 3)
    gone = f"top_{('back', 'front')[row]}_{('left', 'middle', 'right')[column]}"
    bare = replace(stove, spots=tuple(spot for spot in stove.spots if spot.name != gone))
    (plus,) = (one for one in offered(bare) if one.adds.kind == "plate")
    whole = with_added(bare, plus.adds)
    assert whole.spots[-1].name == gone
    shape = stove_layout(whole, 620.0, 440.0, has_spare=True).places[gone].shape
    assert list(shape) == [pytest.approx(point, abs=2.0) for point in plus.shape]


def test_a_tank_that_hangs_there_is_not_offered_again() -> None:
    assert "tank right" not in keys(replace(STOVE, water_tank=TankPlace.RIGHT))


@pytest.mark.parametrize("firebox", Firebox)
@pytest.mark.parametrize("size", [(330.0, 250.0), (460.0, 330.0), (700.0, 470.0)])
def test_no_plus_lies_over_another_or_over_a_spot_or_leaves_the_drawing(
    firebox: Firebox, size: tuple[float, float]
) -> None:
    for bare, tank, closet in itertools.product(
        (STOVE, without("flue", "room", "door_glass")), TankPlace, (False, True)
    ):
        stove = replace(bare, firebox=firebox, water_tank=tank, has_warming_closet=closet)
        drawn = stove_layout(stove, *size, has_spare=True)
        pluses = [bounds(one.shape) for one in spare_places(stove, drawn) if one.is_on_page]
        boxes = [bounds(place.shape) for place in drawn.places.values()]
        for one in pluses:
            assert min(one.x, one.y) >= -1
            assert (one.right <= size[0] + 1, one.bottom <= size[1] + 1) == (True, True)
            assert not any(_share(one, box) > 0.02 for box in boxes)
        for one, other in itertools.combinations(pluses, 2):
            assert _share(one, other) <= 0.02


def _share(one, other) -> float:  # type: ignore[no-untyped-def]
    wide = min(one.right, other.right) - max(one.x, other.x)
    high = min(one.bottom, other.bottom) - max(one.y, other.y)
    return max(wide, 0.0) * max(high, 0.0) / max(one.width * one.height, 1.0)
