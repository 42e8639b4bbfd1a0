"""What a spot shows: the number as it was typed at first, then the belief with its age; what is doubted is marked."""

from dataclasses import replace

import pytest

from cookstove_gui.desk import Desk
from cookstove_gui.desk.cook.spot_heats import spot_heats
from cookstove_gui.stove.entries import Kind
from cookstove_gui.stove.stove import unchecked
from cookstove_gui.units import degrees, kelvin
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


@pytest.mark.parametrize(("minutes", "stands"), [(4.5, True), (5.5, False)])
def test_a_number_stands_as_typed_for_five_minutes_and_then_the_belief(
    burning_desk: Desk, held_clock: HeldClock, minutes: float, stands: bool
) -> None:
    stand(burning_desk)
    held_clock.pass_minutes(minutes)
    assert burning_desk.standing is not None
    heat = spot_heats(burning_desk)["oven_centre"]
    believed = burning_desk.standing.zones["oven_centre"]
    assert heat.age_min == pytest.approx(minutes)
    assert (heat.typed is not None) is stands
    assert heat.kelvin == (pytest.approx(kelvin(300.0, "F")) if stands else believed.p50)
    assert heat.doubt == (0.0 if stands else believed.p90 - believed.p10)


def test_a_number_read_long_ago_is_an_estimate_before_anything_is_worked_out(
    burning_desk: Desk, held_clock: HeldClock
) -> None:
    assert spot_heats(burning_desk)["flue"].typed is not None
    held_clock.pass_minutes(90)
    assert spot_heats(burning_desk)["flue"].typed is None


def test_a_corrected_number_stands_as_typed_with_what_it_means(burning_desk: Desk) -> None:
    gun = replace(unchecked("gun", "infrared"), emissivity=0.70)
    burning_desk.save_stove(replace(burning_desk.stove, instruments=(gun,), cooktop_surface="stove paint"))
    heat = spot_heats(burning_desk)["top_front_left"]
    assert heat.typed == pytest.approx(kelvin(470.0, "F"))
    assert heat.kelvin is not None
    assert heat.kelvin < kelvin(440.0, "F")  # paint of 0.94 gives off more than a thermometer set to 0.70 takes it for
    assert heat.remark.startswith("typed 470, meant ")


def test_a_number_in_question_gives_way_to_the_belief(burning_desk: Desk, held_clock: HeldClock) -> None:
    assert not any(heat.questioned for heat in spot_heats(stand(burning_desk)).values())
    held_clock.pass_minutes(1)
    burning_desk.read("38", spot="oven_centre")
    stand(burning_desk)
    standing = burning_desk.standing
    assert standing is not None
    heat = spot_heats(burning_desk)["oven_centre"]
    assert heat.questioned == pytest.approx(kelvin(38.0, "F"))
    assert (heat.typed, heat.kelvin) == (None, standing.zones["oven_centre"].p50)


def test_a_newer_number_stands_and_is_no_answer_to_the_question(burning_desk: Desk, held_clock: HeldClock) -> None:
    stand(burning_desk)
    held_clock.pass_minutes(1)
    burning_desk.read("38", spot="oven_centre")
    stand(burning_desk)
    held_clock.pass_minutes(1)
    burning_desk.read("312", spot="oven_centre")
    found = spot_heats(burning_desk)
    assert [name for name, heat in found.items() if heat.questioned is not None] == ["oven_centre"]
    assert found["oven_centre"].typed == pytest.approx(kelvin(312.0, "F"))


def test_a_spot_never_read_is_an_estimate_without_an_age(burning_desk: Desk) -> None:
    stand(burning_desk)
    heat = spot_heats(burning_desk)["top_back_right"]
    assert (heat.age_min, heat.typed) == (None, None)
    assert heat.doubt > 0


def test_ages_in_a_session_that_is_over_count_to_its_end(burning_desk: Desk, held_clock: HeldClock) -> None:
    held_clock.pass_minutes(10)
    burning_desk.do(Kind.NOTE, note="went to bed")
    held_clock.pass_minutes(400 * 24 * 60)
    assert spot_heats(burning_desk)["oven_centre"].age_min == pytest.approx(10)
    stand(burning_desk)
    assert spot_heats(burning_desk)["oven_centre"].age_min == pytest.approx(10)


def test_nothing_is_known_of_a_fire_of_which_nothing_was_read(held_desk: Desk) -> None:
    held_desk.do(Kind.LIT)
    stand(held_desk)
    assert held_desk.standing is not None
    assert {heat.kelvin for heat in spot_heats(held_desk).values()} == {None}
    held_desk.read("75", spot="oven_centre")
    stand(held_desk)
    assert None not in {heat.kelvin for heat in spot_heats(held_desk).values()}
