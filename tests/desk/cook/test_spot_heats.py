"""What a spot shows: the number as it was read at first, then the belief, with its age; a doubted reading never."""

from dataclasses import replace

import pytest

from cookstove_gui.desk import Desk
from cookstove_gui.desk.cook.spot_heats import spot_heats
from cookstove_gui.units import degrees
from tests.desk.conftest import stand
from tests.held_clock import HeldClock


def shown(desk: Desk, spot: str) -> float:
    kelvin = spot_heats(desk)[spot].kelvin
    assert kelvin is not None
    return float(degrees(kelvin, "F"))


def test_nothing_is_known_of_a_cold_log(held_desk: Desk) -> None:
    assert {heat.kelvin for heat in spot_heats(held_desk).values()} == {None}


def test_before_anything_is_worked_out_the_latest_reading_is_shown(burning_desk: Desk, held_clock: HeldClock) -> None:
    held_clock.pass_minutes(90)
    assert shown(burning_desk, "top_front_left") == pytest.approx(470)
    assert spot_heats(burning_desk)["top_back_right"].kelvin is None


@pytest.mark.parametrize(("minutes", "as_read"), [(1.5, True), (2.5, False)])
def test_a_number_stands_as_read_for_two_minutes(
    burning_desk: Desk, held_clock: HeldClock, minutes: float, as_read: bool
) -> None:
    stand(burning_desk)
    held_clock.pass_minutes(minutes)
    assert burning_desk.standing is not None
    heat = spot_heats(burning_desk)["oven_centre"]
    believed = burning_desk.standing.zones["oven_centre"]
    assert heat.kelvin is not None
    assert (heat.kelvin == believed.p50) is not as_read
    assert heat.doubt == (0.0 if as_read else believed.p90 - believed.p10)


def test_a_doubted_number_is_not_shown_as_read(burning_desk: Desk) -> None:
    stand(burning_desk)
    standing = burning_desk.standing
    assert standing is not None
    newest = next(row for row in reversed(burning_desk.entries) if row.spot == "oven_centre")
    burning_desk._standing = replace(standing, doubted=(newest,))
    assert spot_heats(burning_desk)["oven_centre"].kelvin == standing.zones["oven_centre"].p50


@pytest.mark.parametrize(("minutes", "is_fresh"), [(4.0, True), (6.0, False)])
def test_after_five_minutes_a_number_is_an_estimate(
    burning_desk: Desk, held_clock: HeldClock, minutes: float, is_fresh: bool
) -> None:
    held_clock.pass_minutes(minutes)
    heat = spot_heats(burning_desk)["flue"]
    assert heat.age_min == pytest.approx(minutes)
    assert heat.is_fresh is is_fresh


def test_a_spot_never_read_is_never_fresh(burning_desk: Desk) -> None:
    stand(burning_desk)
    heat = spot_heats(burning_desk)["top_back_right"]
    assert heat.age_min is None
    assert not heat.is_fresh
    assert heat.doubt > 0
