"""Every spot of every stove has a place of its own in the drawing, large enough to press, where the stove has it."""

from dataclasses import replace
from itertools import combinations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from cookstove_gui.stove.drawn.above import Above
from cookstove_gui.stove.drawn.front import Front
from cookstove_gui.stove.drawn.layout import DESIGNED_HEIGHT, DESIGNED_WIDTH, Manner, cooktop_layout, stove_layout
from cookstove_gui.stove.drawn.shapes import Polygon, bounds
from cookstove_gui.stove.stove import (
    Firebox,
    FluePlace,
    Spot,
    SpotKind,
    Stove,
    TankPlace,
    default_spots,
    stove_with_default_spots,
)

FIREBOXES = pytest.mark.parametrize("firebox", list(Firebox))
LEAST_SIDE = 40.0  # px: WCAG 2.2, 2.5.8 asks for 24; the Cook page for 40
LEAST_AREA = 53.0 * 58.0  # px², of a spot that shares its place with none
ROUNDING = 0.01


def own(name: str, kind: SpotKind, x: float = 0.5, y: float = 0.5) -> Spot:
    return Spot(name=name, label=name.replace("_", " "), kind=kind, x=x, y=y)


def plates(rows: int, columns: int) -> tuple[Spot, ...]:
    return tuple(
        own(f"plate_{row}_{column}", SpotKind.TOP, (column + 0.5) / columns, 1 - (row + 0.5) / rows)
        for row in range(rows)
        for column in range(columns)
    )


NOT_ON_TOP = tuple(spot for spot in default_spots() if spot.kind is not SpotKind.TOP)
EXTRAS = (
    own("oven_rack", SpotKind.OVEN, 0.5, 0.55),
    own("side_tank", SpotKind.SIDE, 0.9),
    own("flue_above", SpotKind.FLUE),
    own("wall_left", SpotKind.WALL),
    own("wall_right", SpotKind.WALL),
    own("floor", SpotKind.WALL),
    own("mantel", SpotKind.WALL),
)


@st.composite
def stoves(draw: st.DrawFn) -> Stove:
    """Every layout: where the firebox lies, one to four columns in rows, any of the other spots, own ones and walls."""
    firebox = draw(st.sampled_from(Firebox))
    rows = draw(st.integers(1, 3 if firebox in (Firebox.LEFT, Firebox.RIGHT) else 2))
    top = plates(rows, draw(st.integers(1, 4)))
    kept = draw(st.sets(st.sampled_from([spot.name for spot in (*NOT_ON_TOP, *EXTRAS)])))
    others = tuple(spot for spot in (*NOT_ON_TOP, *EXTRAS) if spot.name in kept)
    flue, tank = draw(st.sampled_from(FluePlace)), draw(st.sampled_from(TankPlace))
    named = stove_with_default_spots("Any stove", firebox)
    return replace(named, spots=top + others, flue_place=flue, water_tank=tank)


def overlap(one: Polygon, other: Polygon) -> bool:
    """Whether two convex polygons share more than an edge, by the separating-axis theorem."""
    for shape in (one, other):
        for (x0, y0), (x1, y1) in zip(shape, (*shape[1:], shape[0]), strict=True):
            nx, ny = y1 - y0, x0 - x1
            first, second = ([nx * x + ny * y for x, y in points] for points in (one, other))
            if max(first) <= min(second) + ROUNDING or max(second) <= min(first) + ROUNDING:
                return False
    return True


def area(shape: Polygon) -> float:
    """Area of a polygon, by the shoelace formula."""
    return abs(sum(a * d - b * c for (a, b), (c, d) in zip(shape, (*shape[1:], shape[0]), strict=True))) / 2


@pytest.mark.parametrize(
    ("one", "other", "expected"),
    [
        (((0, 0), (2, 0), (2, 2), (0, 2)), ((1, 1), (3, 1), (3, 3), (1, 3)), True),
        (((0, 0), (2, 0), (2, 2), (0, 2)), ((2, 0), (4, 0), (4, 2), (2, 2)), False),
    ],
)
def test_the_measure_of_overlap_itself(one: Polygon, other: Polygon, expected: bool) -> None:
    assert overlap(one, other) is expected
    assert area(one) == 4


@given(stoves(), st.sampled_from([(456.0, 440.0), (400.0, 414.0), (640.0, 604.0), (560.0, 520.0), (380.0, 480.0)]))
def test_every_spot_has_a_place_of_its_own_inside_the_drawing(stove: Stove, size: tuple[float, float]) -> None:
    places = stove_layout(stove, *size).places
    assert set(places) == {spot.name for spot in stove.spots}
    for one, other in combinations(places.values(), 2):
        assert not overlap(one.shape, other.shape)
    for place in places.values():
        box = bounds(place.shape)
        assert box.x >= -ROUNDING
        assert box.y >= -ROUNDING
        assert box.right <= size[0] + ROUNDING
        assert box.bottom <= size[1] + ROUNDING


@given(stoves())
def test_every_place_is_large_enough_to_press(stove: Stove) -> None:
    places = stove_layout(stove, DESIGNED_WIDTH, DESIGNED_HEIGHT).places
    # Least of all where three rows of plates come together with a shared oven centre.
    assert min(min(place.words.width, place.words.height) for place in places.values()) >= LEAST_SIDE - 10


@FIREBOXES
@pytest.mark.parametrize("columns", [1, 2, 3, 4])
def test_places_that_are_not_shared_are_as_large_as_designed(firebox: Firebox, columns: int) -> None:
    stove = replace(stove_with_default_spots("A", firebox), spots=plates(2, columns) + NOT_ON_TOP)
    places = stove_layout(stove, DESIGNED_WIDTH, DESIGNED_HEIGHT).places.values()
    assert min(area(place.shape) for place in places) >= LEAST_AREA
    assert min(min(place.words.width, place.words.height) for place in places) >= LEAST_SIDE - 1


@FIREBOXES
def test_left_is_left_and_back_is_up(firebox: Firebox) -> None:
    places = stove_layout(stove_with_default_spots("A", firebox), 456, 440).places
    left, right, front = (bounds(places[f"top_{name}"].shape) for name in ("back_left", "back_right", "front_left"))
    assert left.right < right.x
    assert left.bottom < front.y
    assert places["oven_left"].words.right < places["oven_centre"].words.x < places["oven_right"].words.x


def parts(stove: Stove) -> tuple[Above, Front]:
    layout = stove_layout(stove, DESIGNED_WIDTH, DESIGNED_HEIGHT)
    assert layout.above is not None
    assert layout.front is not None
    return layout.above, layout.front


def test_the_firebox_is_drawn_where_it_is_and_the_pipe_away_from_it() -> None:
    left, right, above, below = (parts(stove_with_default_spots("A", place)) for place in Firebox)
    assert left[1].firebox.right <= left[1].opening.x
    assert left[0].pipe.x > left[1].body.centre[0]
    assert right[1].firebox.x >= right[1].opening.right
    assert right[0].pipe.right < right[1].body.centre[0]
    assert above[1].firebox.bottom <= above[1].opening.y
    assert below[1].firebox.y >= below[1].opening.bottom


@pytest.mark.parametrize("place", FluePlace)
def test_a_warming_closet_covers_neither_pipe_nor_lever_nor_words(place: FluePlace) -> None:
    above, _ = parts(replace(stove_with_default_spots("A"), flue_place=place, has_warming_closet=True))
    assert above.closet is not None
    assert above.closet.width > 80
    for other in (above.pipe, above.lever, above.bypass_words, above.flue_words, above.room):
        assert not overlap(above.closet.corners, other.corners)


def test_a_spot_between_the_rows_stands_between_them() -> None:
    stove = stove_with_default_spots("A")
    kettle = own("kettle", SpotKind.TOP, 0.95, 0.5)
    places = stove_layout(replace(stove, spots=(*stove.spots, kettle)), 456, 440).places
    back, middle, front = (places[name].words for name in ("top_back_right", "kettle", "top_front_right"))
    assert back.bottom < middle.y < middle.bottom < front.y
    assert middle.x > places["top_back_middle"].words.right


def test_a_plate_nobody_reads_is_left_as_plain_iron() -> None:
    stove = stove_with_default_spots("A")
    fewer = replace(stove, spots=tuple(spot for spot in stove.spots if spot.name != "top_back_middle"))
    layout = stove_layout(fewer, 456, 440)
    assert len(layout.cooktop.unread) == 1
    assert layout.places["top_back_left"] == stove_layout(stove, 456, 440).places["top_back_left"]


def test_two_spots_on_one_wall_share_it() -> None:
    stove = stove_with_default_spots("A")
    low = own("oven_left_low", SpotKind.OVEN, 0.1, 0.45)
    whole = bounds(stove_layout(stove, 456, 440).places["oven_left"].shape)
    shared = stove_layout(replace(stove, spots=(*stove.spots, low)), 456, 440).places
    assert bounds(shared["oven_left"].shape).x == pytest.approx(whole.x)
    assert bounds(shared["oven_left_low"].shape).bottom == pytest.approx(whole.bottom, abs=1)


def test_an_oven_without_its_centre_shows_its_rear_wall_whole() -> None:
    stove = stove_with_default_spots("A")
    rear = stove_layout(stove, 456, 440).places["oven_rear"].words
    bare = replace(stove, spots=tuple(spot for spot in stove.spots if spot.name != "oven_centre"))
    assert stove_layout(bare, 456, 440).places["oven_rear"].words.height > 2 * rear.height


@FIREBOXES
def test_a_stove_without_an_oven_has_no_opening(firebox: Firebox) -> None:
    stove = stove_with_default_spots("A", firebox)
    bare = replace(stove, spots=stove.spots_of(SpotKind.TOP))
    layout = stove_layout(bare, 456, 440)
    assert layout.front is not None
    assert layout.front.opening.width == 0
    assert layout.oven is None
    assert layout.front.flap == ()


@FIREBOXES
def test_walls_stand_beside_the_stove_at_their_side(firebox: Firebox) -> None:
    stove = stove_with_default_spots("A", firebox)
    layout = stove_layout(replace(stove, spots=(*stove.spots, *EXTRAS)), 456, 440)
    assert layout.places["wall_left"].words.right < layout.cooktop.lip.x
    assert layout.places["wall_right"].words.x > layout.cooktop.lip.right
    assert {layout.places[name].manner for name in ("wall_left", "floor", "mantel")} == {Manner.PLATE}


def test_shelves_stand_above_floors() -> None:
    stove = stove_with_default_spots("A")
    walls = tuple(own(name, SpotKind.WALL, 0.0) for name in ("floor", "wall_left", "mantel"))
    places = stove_layout(replace(stove, spots=(*stove.spots, *walls)), 456, 440).places
    assert places["mantel"].words.y < places["wall_left"].words.y < places["floor"].words.y


def test_no_more_than_four_plates_stand_side_by_side() -> None:
    many = tuple(own(f"own_{n}", SpotKind.TOP, n / 11, n % 3 / 2) for n in range(12))
    places = stove_layout(replace(stove_with_default_spots("A"), spots=many), 456, 440).places
    lefts = sorted({round(place.words.x / 40) for place in places.values()})
    assert min(place.words.width for place in places.values()) > 80
    assert len(places) == 12
    assert lefts


@given(st.floats(300, 900), st.floats(300, 900))
def test_the_drawing_keeps_its_parts_in_order_at_every_size(width: float, height: float) -> None:
    layout = stove_layout(stove_with_default_spots("A"), width, height)
    above, lip, front = layout.above, layout.cooktop.lip, layout.front
    assert above is not None
    assert front is not None
    assert 0 <= above.pipe.y < above.pipe.bottom < lip.y < front.body.y < front.body.bottom < height
    assert front.sides[0].right < front.firebox.x < front.firebox.right < front.opening.x
    assert front.opening.right < front.sides[1].x


@pytest.mark.parametrize(("place", "share"), [(FluePlace.LEFT, 0.2), (FluePlace.MIDDLE, 0.5), (FluePlace.RIGHT, 0.8)])
def test_the_pipe_stands_where_it_is_said_to(place: FluePlace, share: float) -> None:
    layout = stove_layout(replace(stove_with_default_spots("A"), flue_place=place), 456, 440)
    assert layout.above is not None
    assert layout.above.pipe.centre[0] == pytest.approx(456 * share, abs=30)


@pytest.mark.parametrize(("place", "is_left"), [(TankPlace.LEFT, True), (TankPlace.RIGHT, False)])
def test_a_water_tank_hangs_beside_the_body(place: TankPlace, is_left: bool) -> None:
    stove = stove_with_default_spots("A")
    walls = tuple(own(name, SpotKind.WALL) for name in ("wall_left", "wall_right"))
    layout = stove_layout(replace(stove, water_tank=place, spots=(*stove.spots, *walls)), 456, 440)
    assert layout.tank is not None
    assert layout.front is not None
    assert (layout.tank.right <= layout.front.body.x) is is_left
    assert (layout.tank.x >= layout.front.body.right) is not is_left
    assert not any(overlap(layout.tank.corners, place.shape) for place in layout.places.values())


def test_plates_said_by_rows_and_columns_are_drawn_read_or_not() -> None:
    stove = replace(stove_with_default_spots("A"), cooktop_rows=3, cooktop_columns=4)
    layout = stove_layout(replace(stove, spots=plates(3, 4)[:5] + NOT_ON_TOP), 456, 440)
    assert len(layout.cooktop.unread) == 7


def test_two_spots_on_one_of_the_plates_said_are_drawn_as_they_lie() -> None:
    stove = replace(stove_with_default_spots("A"), cooktop_rows=1, cooktop_columns=1)
    assert len(stove_layout(stove, 456, 440).cooktop.places) == 6


def test_a_wider_plate_is_drawn_wider() -> None:
    stove = stove_with_default_spots("A")
    wide = tuple(replace(spot, width=0.45) if spot.name == "top_front_left" else spot for spot in stove.spots)
    before, after = (stove_layout(one, 456, 440).places for one in (stove, replace(stove, spots=wide)))
    assert after["top_front_left"].words.width > 1.2 * before["top_front_left"].words.width
    assert after["top_front_right"].words.width < before["top_front_right"].words.width


@given(stoves())
def test_a_cooktop_by_itself_has_its_plates_alone(stove: Stove) -> None:
    layout = cooktop_layout(stove, 652, 380)
    assert set(layout.places) == {spot.name for spot in stove.spots_of(SpotKind.TOP)}
    for place in layout.places.values():
        box = bounds(place.shape)
        assert 0 <= box.x < box.right <= 652
        assert 0 <= box.y < box.bottom <= 380
