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
