"""What is offered to put into the oven or take out of it, and what a few typed letters mean."""

import pytest

from cookstove_gui.cooking.baking.catalogue import bakes
from cookstove_gui.cooking.fit.tasks import task_of
from cookstove_gui.desk import Desk
from cookstove_gui.desk.cook.into_the_oven import named_bake, offered_in, offered_out
from cookstove_gui.errors import InputProblem
from cookstove_gui.stove.entries import Kind


@pytest.mark.parametrize("band", ["200-250", "350-400", "425-475"])
def test_what_bakes_at_the_heat_wanted_is_offered_the_nearest_first(held_desk: Desk, band: str) -> None:
    held_desk.choose_band(band)
    middle = (held_desk.band.low + held_desk.band.high) / 2.0
    apart = {}
    for bake in bakes():
        task = task_of(bake.task)
        if task is not None:
            apart[bake.name] = abs((task.low + task.high) / 2.0 - middle)
    offered = offered_in(held_desk)
    assert len(offered) == 3
    distances = [apart[name] for name in offered]
    assert distances == sorted(apart.values())[:3]


def test_what_is_in_is_offered_to_be_taken_out_once_by_name_and_no_more_than_three(burning_desk: Desk) -> None:
    with pytest.raises(InputProblem, match="Nothing is in the oven"):
        offered_out(burning_desk)
    for name in ("rye", "rolls", "rye", "pie", "beans"):
        burning_desk.do(Kind.OVEN_IN, note=name)
    offered = offered_out(burning_desk)
    assert len(offered) == len(set(offered)) == 3
    assert set(offered) <= {"rye", "rolls", "pie", "beans"}


def test_part_of_a_name_means_the_whole_and_an_unknown_one_itself() -> None:
    whole = bakes()[3].name
    assert named_bake(f"  {whole.upper()} ") == whole
    assert named_bake(" Sunday pudding ") == "Sunday pudding"
    with pytest.raises(InputProblem, match="What went into the oven"):
        named_bake("  ")
