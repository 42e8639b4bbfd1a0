"""How the stove is set is what the latest rows say."""

from cookstove_gui.desk import Desk
from cookstove_gui.desk.cook.stove_set import StoveSet, stove_set
from cookstove_gui.stove.entries import Kind


def test_nothing_is_known_of_a_log_that_says_nothing(held_desk: Desk) -> None:
    assert stove_set(held_desk) == StoveSet()


def test_the_latest_row_holds(held_desk: Desk) -> None:
    for kind, value in ((Kind.AIR, "1"), (Kind.BYPASS, "1"), (Kind.OVEN_DOOR, "open"), (Kind.AIR, "0.25")):
        held_desk.do(kind, value=value)
    found = stove_set(held_desk)
    assert (found.air, found.bypass, found.door_is_open) == (0.25, 1.0, True)
    held_desk.do(Kind.OVEN_DOOR, value="closed")
    assert not stove_set(held_desk).door_is_open


def test_a_pan_stands_until_it_is_taken_off(held_desk: Desk) -> None:
    for spot in ("top_front_left", "top_back_left"):
        held_desk.do(Kind.PAN, value="on", spot=spot)
    held_desk.do(Kind.PAN, value="off", spot="top_front_left")
    assert stove_set(held_desk).pans == {"top_back_left"}
