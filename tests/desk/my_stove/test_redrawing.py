"""A change of the drawing is kept at once, and can be taken back on the stove it was made on."""

from dataclasses import replace

import pytest

from cookstove_gui.desk import Desk
from cookstove_gui.desk.my_stove.redrawing import Redrawing
from cookstove_gui.errors import InputProblem
from cookstove_gui.stove.stove import Firebox


def test_changes_are_taken_back_one_by_one(held_desk: Desk) -> None:
    before, redrawing = held_desk.stove, Redrawing(held_desk)
    assert not redrawing.can_take_back
    redrawing.draw(replace(before, firebox=Firebox.RIGHT))
    redrawing.draw(replace(held_desk.stove, cooktop_width=1.2))
    redrawing.take_back()
    assert (held_desk.stove.firebox, held_desk.stove.cooktop_width) == (Firebox.RIGHT, before.cooktop_width)
    redrawing.take_back()
    assert held_desk.logbook.stove(before.name) == before
    assert not redrawing.can_take_back


def test_a_change_of_one_stove_is_not_taken_back_on_another(held_desk: Desk) -> None:
    redrawing = Redrawing(held_desk)
    redrawing.draw(replace(held_desk.stove, firebox=Firebox.RIGHT))
    held_desk.save_stove(replace(held_desk.stove, name="Cabin"))
    assert not redrawing.can_take_back
    redrawing.take_back()
    assert held_desk.stove.name == "Cabin"


def test_a_refused_change_leaves_nothing_to_take_back(held_desk: Desk) -> None:
    redrawing = Redrawing(held_desk)

    def refused() -> None:
        raise InputProblem("No.")

    with pytest.raises(InputProblem):
        redrawing.change(refused)
    assert not redrawing.can_take_back


def test_before_spots_are_left_out_their_readings_are_counted_on_this_stove_only(held_desk: Desk) -> None:
    redrawing = Redrawing(held_desk)
    for spot, times in (("top_front_left", 2), ("top_front_right", 1), ("oven_centre", 3)):
        for _ in range(times):
            held_desk.read("200", spot=spot)
    gone = ("top_front_left", "top_front_right", "side_left")
    after = replace(held_desk.stove, spots=tuple(spot for spot in held_desk.stove.spots if spot.name not in gone))
    assert [redrawing.readings_of(name) for name in ("oven_centre", "top_front_left", "side_left")] == [3, 2, 0]
    assert redrawing.readings_lost(after) == 3
    assert redrawing.readings_lost(held_desk.stove) == 0
    held_desk.save_stove(replace(held_desk.stove, name="Cabin"))
    assert (redrawing.readings_of("oven_centre"), redrawing.readings_lost(replace(after, name="Cabin"))) == (0, 0)


def test_what_changes_nothing_cannot_be_taken_back_and_a_hundred_changes_can(held_desk: Desk) -> None:
    redrawing = Redrawing(held_desk)
    redrawing.draw(held_desk.stove)
    assert not redrawing.can_take_back
    widths = [1.0 + number / 1000.0 for number in range(102)]
    for width in widths:
        redrawing.draw(replace(held_desk.stove, cooktop_width=width))
    for _ in range(100):
        assert redrawing.can_take_back
        redrawing.take_back()
    assert not redrawing.can_take_back
    assert held_desk.stove.cooktop_width == widths[1]
