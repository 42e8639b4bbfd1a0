"""The spot that is lit up for the next number is the one worth reading, unless the cook chose another."""

from cookstove_gui.advice import advise
from cookstove_gui.desk import Desk
from tests.desk.conftest import stand
from tests.held_clock import HeldClock


def wanted(desk: Desk) -> str:
    assert desk.standing is not None
    reading = advise(desk.standing).reading
    assert reading is not None
    return reading.spot


def elsewhere(desk: Desk) -> None:
    """Light a spot that is not the one worth reading, as a reading leaves it: not by the cook's choice."""
    desk.read("65", spot="room")


def test_the_spot_worth_reading_is_lit_once_the_walk_rests(burning_desk: Desk, held_clock: HeldClock) -> None:
    elsewhere(burning_desk)
    before = burning_desk.walk.spot.name
    stand(burning_desk)
    assert burning_desk.walk.spot.name == before  # the walk still goes on
    held_clock.pass_minutes(5)
    stand(burning_desk)
    assert burning_desk.walk.spot.name == wanted(burning_desk)


def test_a_spot_that_the_cook_chose_stays_lit(burning_desk: Desk, held_clock: HeldClock) -> None:
    elsewhere(burning_desk)
    burning_desk.light(burning_desk.walk.at("flue"))
    held_clock.pass_minutes(5)
    stand(burning_desk)
    assert burning_desk.walk.spot.name == "flue"


def test_a_number_half_typed_goes_to_the_spot_it_was_begun_for(burning_desk: Desk, held_clock: HeldClock) -> None:
    elsewhere(burning_desk)
    before = burning_desk.walk.spot.name
    burning_desk.hold_walk()
    held_clock.pass_minutes(5)
    stand(burning_desk)
    assert burning_desk.walk.spot.name == before
    burning_desk.read("300")
    held_clock.pass_minutes(5)
    stand(burning_desk)
    assert burning_desk.walk.spot.name == wanted(burning_desk)
