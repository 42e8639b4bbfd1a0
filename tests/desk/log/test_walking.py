"""A changed walk is kept for the stove; what is left out is passed by, and still read by name."""

from dataclasses import replace

import pytest

from cookstove_gui.desk import Desk
from cookstove_gui.desk.log.walking import leave_out, place_on_walk, read_sooner
from tests.held_clock import HeldClock


def order(desk: Desk) -> list[str]:
    return [spot.name for spot in desk.walk.on_walk]


def light(desk: Desk, name: str) -> None:
    desk.light(desk.walk.at(name))


def test_a_spot_is_read_later_and_stays_so_after_a_restart(held_desk: Desk, held_clock: HeldClock) -> None:
    first, second, *rest = order(held_desk)
    light(held_desk, first)
    read_sooner(held_desk, 1)
    assert order(held_desk) == [second, first, *rest]
    assert held_desk.walk.spot.name == first
    assert place_on_walk(held_desk) == (2, 2 + len(rest))
    assert order(Desk(held_desk.logbook, held_clock)) == [second, first, *rest]


@pytest.mark.parametrize(("end", "steps"), [(0, -1), (-1, 1)])
def test_the_walk_has_two_ends(held_desk: Desk, end: int, steps: int) -> None:
    before = order(held_desk)
    light(held_desk, before[end])
    read_sooner(held_desk, steps)
    assert order(held_desk) == before


@pytest.mark.parametrize(("steps", "order_wanted"), [(1, "bacd"), (2, "bcad"), (-1, "abcd"), (99, "bcda"), (0, "abcd")])
def test_a_named_spot_is_read_so_many_places_later_or_earlier(held_desk: Desk, steps: int, order_wanted: str) -> None:
    held_desk.save_stove(replace(held_desk.stove, spots=held_desk.stove.spots[:4]))
    names = dict(zip("abcd", order(held_desk), strict=True))
    light(held_desk, names["c"])
    read_sooner(held_desk, steps, names["a"])
    assert order(held_desk) == [names[letter] for letter in order_wanted]
    assert held_desk.walk.spot.name == names["c"]


def test_what_is_left_out_is_passed_by_in_both_directions(held_desk: Desk, held_clock: HeldClock) -> None:
    first, second, third, *rest = order(held_desk)
    light(held_desk, second)
    leave_out(held_desk, True)
    assert place_on_walk(held_desk) == (0, 2 + len(rest))
    assert held_desk.walk.moved_on().spot.name == third
    assert held_desk.walk.moved_on(-1).spot.name == first
    again = Desk(held_desk.logbook, held_clock)
    assert [again.walk.spot.name, again.walk.moved_on().spot.name] == [first, third]
    assert again.walk.at(third).moved_on(-1).spot.name == first


def test_moving_passes_what_is_left_out(held_desk: Desk) -> None:
    first, second, third, *rest = order(held_desk)
    light(held_desk, second)
    leave_out(held_desk, True)
    light(held_desk, first)
    read_sooner(held_desk, 1)
    assert order(held_desk) == [third, first, *rest]
    light(held_desk, second)
    leave_out(held_desk, False)
    assert order(held_desk) == [third, second, first, *rest]


def test_a_spot_left_out_is_read_by_name_and_is_never_lit_by_itself(held_desk: Desk) -> None:
    _, second, third, *_ = order(held_desk)
    held_desk.read("300")
    light(held_desk, second)
    leave_out(held_desk, True)
    held_desk.read("385")
    assert held_desk.entries[1].spot == second
    assert held_desk.walk.spot.name == third


def test_a_walk_with_nothing_on_it_still_goes_round(held_desk: Desk) -> None:
    for name in order(held_desk):
        light(held_desk, name)
        leave_out(held_desk, True)
    assert held_desk.walk.moved_on().spot.name != held_desk.walk.spot.name
