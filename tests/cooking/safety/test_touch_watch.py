"""Touch and walls: the shipped tables, their order, and the share of each limit."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from cookstove_gui.cooking.safety.touch_watch import (
    material_of,
    materials,
    seconds_to_burn,
    wall_answers,
)
from cookstove_gui.errors import InputProblem

METAL, WOOD = material_of("bare metal"), material_of("wood")


@pytest.mark.parametrize("material", materials(), ids=lambda material: material.name)
def test_it_inverts_the_burn_threshold(material) -> None:  # type: ignore[no-untyped-def]
    for seconds in (2.0, 30.0, 300.0, 5000.0):
        threshold = np.interp(np.log(seconds), np.log(material.contact_times), material.thresholds)
        assert seconds_to_burn(threshold, material) == pytest.approx(seconds, rel=1e-6)


# reference 8.1, after ISO 13732-1, from memory: bare metal 51 °C a minute, 48 °C ten minutes, 43 °C eight hours
@pytest.mark.parametrize(("celsius", "seconds"), [(51, 60), (48, 600), (43, 28_800)])
def test_bare_metal_table(celsius: float, seconds: float) -> None:
    assert seconds_to_burn(celsius + 273.15, METAL) == pytest.approx(seconds, rel=1e-6)


def test_a_cooktop_burns_in_less_than_a_second() -> None:
    assert seconds_to_burn(500.0, METAL) == 0.0


@given(st.floats(300, 420), st.floats(0, 40))
def test_hotter_never_takes_longer_and_wood_never_less_than_metal(heat: float, more: float) -> None:
    def seconds(at: float, material) -> float:  # type: ignore[no-untyped-def]
        found = seconds_to_burn(at, material)
        return np.inf if found is None else found

    assert seconds(heat + more, METAL) <= seconds(heat, METAL)
    assert seconds(heat, WOOD) >= seconds(heat, METAL)


# reference 8.11, 8.12: 117 °F = 65.0 K exposed, 90 °F = 50.0 K covered
def test_a_wall_is_held_against_both_limits_of_its_rise_and_that_of_its_heat() -> None:
    exposed, absolute, covered = wall_answers(wall=348.15, room=293.15)
    assert (exposed.limit, covered.limit) == (65.0, 50.0)
    assert exposed.share == pytest.approx(55 / 65)
    assert not absolute.of_rise
    assert absolute.limit == pytest.approx(358.15)  # 85 °C: reference 8.12-absolute
    assert absolute.share == pytest.approx(55 / 65)


def test_the_heat_itself_is_at_its_limit_in_any_room() -> None:
    for room in (263.15, 293.15, 323.15):
        (absolute,) = (answer for answer in wall_answers(wall=358.15, room=room) if not answer.of_rise)
        assert absolute.share == pytest.approx(1.0)


@pytest.mark.parametrize(("wall", "room"), [(1000.0, 293.15), (300.0, 900.0)])
def test_no_wall_is_that_hot(wall: float, room: float) -> None:
    with pytest.raises(InputProblem):
        wall_answers(wall=wall, room=room)


def test_an_unknown_material_lists_the_known_ones() -> None:
    with pytest.raises(InputProblem, match="soapstone"):
        material_of("cheese")
