"""Earlier sessions of what is in the oven are found by its name, before this one, of this stove."""

from dataclasses import replace

from cookstove_gui.desk.desk import Desk
from cookstove_gui.stove.entries import Kind
from tests.held_clock import HeldClock
from tests.once import stood

LOAF = "loaf of bread"


def bake(desk: Desk, clock: HeldClock, name: str, minutes: float = 50.0) -> None:
    """A session of its own: a hot oven, one thing in and out."""
    desk.start_session()
    desk.do(Kind.LIT)
    desk.read("390", spot="oven_centre")
    desk.do(Kind.OVEN_IN, note=name)
    clock.pass_minutes(minutes)
    desk.read("390", spot="oven_centre")
    desk.do(Kind.OVEN_OUT, note=name)
    clock.pass_minutes(600)


def test_only_what_was_baked_by_that_name_before_is_found(held_desk: Desk, held_clock: HeldClock) -> None:
    for name in (LOAF, "fruit pie", "Loaf of Bread "):
        bake(held_desk, held_clock, name)
    loaves = held_desk.baked.of(held_desk.stove, LOAF, None)
    assert [session.number for session in loaves] == [1, 3]
    assert held_desk.baked.of(replace(held_desk.stove, name="another"), LOAF, None) == ()
    third = held_desk.logbook.session(3)
    assert [session.number for session in held_desk.baked.of(held_desk.stove, LOAF, third)] == [1]


def test_what_is_in_the_oven_is_narrowed_by_what_it_took_before(held_desk: Desk, held_clock: HeldClock) -> None:
    for _ in range(4):
        bake(held_desk, held_clock, LOAF, minutes=40.0)
    held_desk.start_session()
    held_desk.do(Kind.LIT)
    held_clock.pass_minutes(30)
    held_desk.read("390", spot="oven_centre")
    held_desk.do(Kind.OVEN_IN, note=LOAF)
    asked = held_desk.inputs()
    assert len(asked.baked) == 4
    (narrowed,), (usual,) = stood(asked).bakes, stood(replace(asked, baked=())).bakes
    assert narrowed.answer is not None
    assert usual.answer is not None
    assert (narrowed.answer.learned_from, usual.answer.learned_from) == (4, 0)
    assert narrowed.latest - narrowed.earliest < usual.latest - usual.earliest


def test_with_an_empty_oven_nothing_is_looked_up(held_desk: Desk, held_clock: HeldClock) -> None:
    bake(held_desk, held_clock, LOAF)
    held_desk.start_session()
    held_desk.do(Kind.LIT)
    assert held_desk.inputs().baked == ()
