"""Signs of what was done never overlap, words only where there is room for them, and all is said to who asks."""

from datetime import UTC, datetime, timedelta
from itertools import pairwise

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from pytestqt.qtbot import QtBot
from scipy.optimize import minimize

from cookstove_gui.gui.logbook.past_span import PastSpan
from cookstove_gui.gui.time_axis.fire_lane import FireLane, LaneMark
from cookstove_gui.gui.time_axis.lane_signs import sign_width
from cookstove_gui.gui.time_axis.span import TimeSpan
from cookstove_gui.gui.widgets.look import Look
from cookstove_gui.stove.drawn.apart import moved_apart
from cookstove_gui.stove.entries import Kind

BEGAN = datetime(2026, 1, 5, 12, 0, tzinfo=UTC)


@pytest.fixture
def lane(look: Look, qtbot: QtBot) -> FireLane:
    span = TimeSpan()
    span.set_width(764)
    span.show_session(BEGAN, BEGAN + timedelta(minutes=80), offset_minutes=0, is_live=True, arrival=None)
    made = FireLane(span, look)
    span.setParent(made)
    made.resize(764, made.height())
    qtbot.addWidget(made)
    return made


def mark(place: float, kind: Kind = Kind.WOOD, words: str = "2 splits") -> LaneMark:
    return LaneMark(place=place, kind=kind, words=words, said=f"{words} at {place:g}", count=2)


def test_marks_that_are_too_near_are_moved_apart_and_stay_in_order(lane: FireLane) -> None:
    lane.show_marks((mark(20, Kind.LIT, "lit"), mark(21), mark(22, Kind.AIR, "air ½"), mark(60)))
    places = [x for _, x in lane.placed()]
    assert all(later - one >= 27 - 1e-6 for one, later in pairwise(places))
    assert [one.place for one, _ in lane.placed()] == [20, 21, 22, 60]


def test_none_is_pushed_past_now(lane: FireLane) -> None:
    lane.show_marks(tuple(mark(79 + 0.1 * number) for number in range(6)))
    assert max(x for _, x in lane.placed()) < lane._span.x(80, 764)


def test_no_sign_is_cut_at_the_edge_where_the_session_ended(look: Look, qtbot: QtBot) -> None:
    span = PastSpan()
    span.set_width(764)
    span.show_past(BEGAN, 80, 0)
    lane = FireLane(span, look)
    span.setParent(lane)
    qtbot.addWidget(lane)
    lane.resize(764, lane.height())
    lane.show_marks(tuple(mark(79 + 0.1 * number) for number in range(6)))
    assert max(x for _, x in lane.placed()) + 0.5 * sign_width(Kind.WOOD, 2) <= lane.width()


def test_where_there_is_no_room_the_oldest_of_what_matters_least_is_left_out(lane: FireLane) -> None:
    airs = tuple(mark(10 + number, Kind.AIR, f"air {number}") for number in range(20))
    lane.show_marks((mark(0, Kind.LIT, "lit"), *airs, mark(40)))
    placed = lane.placed()
    assert all(later - one >= 27 - 1e-6 for (_, one), (_, later) in pairwise(placed))
    kept = [one for one, _ in placed]
    assert [kept[0].kind, kept[-1].kind] == [Kind.LIT, Kind.WOOD]
    assert 0 < len(kept) - 2 < 20
    assert tuple(kept[1:-1]) == airs[-(len(kept) - 2) :]
    assert "air 0 at 10" in lane.accessibleName()


def test_words_go_to_what_was_lit_then_wood_then_bypass_then_air(lane: FireLane) -> None:
    lane.show_marks(
        (mark(20, Kind.AIR, "air open, and how"), mark(21, Kind.LIT, "lit"), mark(22, Kind.BYPASS, "bypass shut now"))
    )
    assert [one.kind for one, _ in lane.worded()] == [Kind.LIT]
    assert "air open, and how at 20" in lane.accessibleName()


def test_no_two_words_touch_and_none_leaves_the_lane(lane: FireLane) -> None:
    lane.show_marks(tuple(mark(5 + 6 * number, words=f"{number} splits") for number in range(12)))
    boxes = [box for _, box in lane.worded()]
    assert boxes
    assert not any(one.intersects(other) for one in boxes for other in boxes if one is not other)
    assert all(lane.rect().contains(box.toAlignedRect().adjusted(1, 1, -1, -1)) for box in boxes)


def test_what_is_out_of_sight_is_not_drawn(lane: FireLane) -> None:
    lane.show_marks((mark(-100), mark(40)))
    assert [one.place for one, _ in lane.placed()] == [40]


@given(st.lists(st.floats(0, 300), min_size=2, max_size=7))
@settings(max_examples=25, deadline=None)
def test_places_are_as_near_to_the_wanted_ones_as_can_be(wanted: list[float]) -> None:
    """The same as a general solver of the least squares with these gaps as constraints."""
    wanted = sorted(wanted)
    gaps = [27.0] * (len(wanted) - 1)
    found = moved_apart(wanted, gaps, (10.0, 320.0))
    constraints = [
        {"type": "ineq", "fun": lambda x, n=number: x[n + 1] - x[n] - 27.0} for number in range(len(wanted) - 1)
    ]
    start = [10.0 + 27.0 * number for number in range(len(wanted))]
    theirs = minimize(
        lambda x: sum((one - other) ** 2 for one, other in zip(x, wanted, strict=True)),
        start, bounds=[(10.0, 320.0)] * len(wanted), constraints=constraints, method="SLSQP",
    )  # fmt: skip
    ours = sum((one - other) ** 2 for one, other in zip(found, wanted, strict=True))
    assert ours == pytest.approx(theirs.fun, rel=1e-4, abs=1e-3)
    assert min(found) >= 10.0 - 1e-9
    assert max(found) <= 320.0 + 1e-9


def test_where_there_is_no_room_all_stay_between_the_ends() -> None:
    found = moved_apart([5.0] * 30, [27.0] * 29, (0.0, 300.0))
    assert found[0] == pytest.approx(0.0)
    assert found[-1] == pytest.approx(300.0)
