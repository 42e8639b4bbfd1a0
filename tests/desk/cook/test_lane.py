"""The fire lane shows what was done to the fire and the oven, how far a thing is open, and how many splits went in."""

from datetime import timedelta

import pytest

from cookstove_gui.desk import Desk
from cookstove_gui.desk.cook.lane import lane_rows
from cookstove_gui.desk.log.burning import burning_since
from cookstove_gui.phrases.lane import LaneRow
from cookstove_gui.stove.entries import Kind
from tests.held_clock import HeldClock


def latest(desk: Desk) -> LaneRow:
    return lane_rows(desk)[-1]


@pytest.mark.parametrize(
    ("kind", "value", "note", "words", "opening", "count"),
    [
        (Kind.LIT, "", "", "lit", 0.0, 0),
        (Kind.OUT, "", "", "out", 0.0, 0),
        (Kind.WOOD, "", "two splits", "2 splits", 0.0, 2),
        (Kind.WOOD, "", "an armful", "an armful", 0.0, 0),
        (Kind.AIR, "0.25", "", "air ¼", 0.25, 0),
        (Kind.BYPASS, "1", "", "bypass open", 1.0, 0),
        (Kind.OVEN_DOOR, "open", "", "door open", 1.0, 0),
        (Kind.OVEN_DOOR, "closed", "", "door closed", 0.0, 0),
        (Kind.OVEN_IN, "", "apple pie", "apple pie in", 0.0, 0),
        (Kind.OVEN_OUT, "", "apple pie", "apple pie out", 0.0, 0),
    ],
)
def test_what_was_done_is_in_the_lane(
    held_desk: Desk, kind: Kind, value: str, note: str, words: str, opening: float, count: int
) -> None:
    held_desk.do(kind, value=value, note=note)
    row = latest(held_desk)
    assert (row.kind, row.words, row.opening, row.count) == (kind, words, opening, count)
    assert row.at == held_desk.clock()
    assert row.said.endswith(f" at {held_desk.edge.at(row.at)}")


def test_what_was_read_or_noted_is_not(held_desk: Desk) -> None:
    held_desk.read("300", spot="oven_centre")
    held_desk.do(Kind.NOTE, note="windy")
    held_desk.do(Kind.PAN, spot="top_front_left", value="on")
    assert lane_rows(held_desk) == ()


def test_what_was_taken_back_is_gone_and_what_was_entered_late_is_in_its_place(
    held_desk: Desk, held_clock: HeldClock
) -> None:
    held_desk.do(Kind.LIT)
    held_clock.pass_minutes(20)
    held_desk.do(Kind.OUT)
    held_desk.take_back(2)
    held_desk.do(Kind.WOOD, note="two splits")
    held_desk.do(Kind.AIR, value="1", at_text="-10")
    assert [row.kind for row in lane_rows(held_desk)] == [Kind.LIT, Kind.AIR, Kind.WOOD]


# --- whether it burns


def test_a_fire_burns_from_when_it_was_lit_until_it_is_out(held_desk: Desk, held_clock: HeldClock) -> None:
    assert burning_since(held_desk) is None
    lit_at = held_clock.now
    held_desk.do(Kind.LIT)
    held_clock.pass_minutes(30)
    held_desk.do(Kind.WOOD, note="two splits")
    assert burning_since(held_desk) == lit_at
    held_desk.do(Kind.OUT)
    assert burning_since(held_desk) is None
    held_clock.pass_minutes(30)
    held_desk.do(Kind.LIT)
    assert burning_since(held_desk) == lit_at + timedelta(minutes=60)
    held_clock.pass_minutes(24 * 60)
    assert burning_since(held_desk) is None
