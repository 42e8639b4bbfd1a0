"""Pan, cooktop and oven together: what one gives the other takes, to 0.1 %, in every run."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from cookstove_gui.physics.boiling import time_to_heat
from cookstove_gui.physics.pan import Kitchen, heat_capacity_with_water, pan_heat_loss
from cookstove_gui.physics.pan_course import Cooktop, pan_course
from cookstove_gui.physics.water import boiling_temperature, heat_of_vaporisation
from tests.physics.laws import law
from tests.physics.test_pan import POT, _pot

KITCHEN = Kitchen()
BOILING = float(boiling_temperature(KITCHEN.pressure))
TOP = Cooktop(conductance=36.0, heat_capacity=28e3, to_oven=4.0, oven_conductance=14.0, oven_capacity=22e3)


def over_time(each, step: float) -> float:
    """Integral by trapezia: another rule than the course's own."""
    return float((each[:-1] + each[1:]).sum() * 0.5 * step)


@law
@given(
    st.floats(350.0, 700.0),
    st.floats(5.0, 80.0),
    st.floats(2e3, 6e4),
    st.floats(0.0, 20.0),
    st.floats(20.0, 300.0),
    st.floats(0.05, 1.0),
    st.floats(0.3, 6.0),
)
def test_no_heat_is_lost_between_fire_iron_oven_pan_and_steam(spot, given_, iron, between, conductance, openness, kg):
    """What fire and iron gave went through the base, and is in the pan, its water, steam and the room: to 0.1 %."""
    pan = _pot(water=kg, conductance=conductance, openness=openness)
    top = Cooktop(conductance=given_, heat_capacity=iron, to_oven=between, oven_conductance=12.0, oven_capacity=2.2e4)
    step = 5.0
    course = pan_course(pan, 290.0, np.full(721, spot), step, KITCHEN, top)
    taken = float(course.heat_taken[-1])
    fire = given_ * over_time(course.drawn_down, step) + 12.0 * over_time(course.oven_drawn_down, step)
    stood = iron * float(course.drawn_down[-1]) + 2.2e4 * float(course.oven_drawn_down[-1])
    moved = float(np.abs(np.diff(course.heat_taken)).sum())
    assert fire + stood == pytest.approx(taken, abs=1e-3 * moved)

    wet = int((course.boiled_away < kg * (1 - 1e-9)).sum())  # instants with water; it is gone within the step after
    capacity = float(heat_capacity_with_water(pan, 290.0 + 0.5 * (BOILING - 290.0), KITCHEN))
    dry_room = np.asarray(pan_heat_loss(_pot(water=kg, conductance=conductance, openness=openness, evaporation=0.0),
                                        course.temperature, KITCHEN))  # fmt: skip
    room = over_time(dry_room[: min(wet + 1, len(dry_room))], step)
    steam = float(heat_of_vaporisation(BOILING)) * float(course.boiled_away[-1])
    kept = capacity * float(course.temperature[-1] - 290.0)
    # at the boil's first step the water's temperature has a corner, of which a trapezium knows nothing
    assert kept + room + steam == pytest.approx(taken, abs=1e-3 * moved + 30.0)


def test_the_balance_closes_at_the_programs_own_step_too() -> None:
    step = 30.0
    course = pan_course(POT, 288.15, np.full(241, 560.0), step, KITCHEN, TOP)
    fire = 36.0 * over_time(course.drawn_down, step) + 14.0 * over_time(course.oven_drawn_down, step)
    stood = 28e3 * course.drawn_down[-1] + 22e3 * course.oven_drawn_down[-1]
    assert fire + stood == pytest.approx(course.heat_taken[-1], rel=1e-3)


def test_cooktop_and_oven_settle_where_their_balance_is() -> None:
    """After hours of an even heat: G D + K (D - O) = heat, K (D - O) = G' O, solved by numpy."""
    boils = _pot(water=400.0, conductance=120.0)
    course = pan_course(boils, BOILING, np.full(4001, 520.0), 20.0, KITCHEN, TOP)
    heat = float(np.diff(course.heat_taken)[-1] / 20.0)
    expected = np.linalg.solve([[36.0 + 4.0, -4.0], [-4.0, 14.0 + 4.0]], [heat, 0.0])
    assert [course.drawn_down[-1], course.oven_drawn_down[-1]] == pytest.approx(expected, rel=1e-3)


def test_it_follows_the_matrix_exponential() -> None:
    """One step under an even heat against scipy's own exponential of the coupled pair."""
    from scipy.linalg import expm

    big = _pot(water=4000.0, conductance=120.0, openness=0.0)  # its water hardly warms: an even heat
    course = pan_course(big, 290.0, np.full(31, 520.0), 20.0, KITCHEN, TOP)
    heat = np.diff(course.heat_taken) / 20.0
    rates = np.array([[-(36.0 + 4.0) / 28e3, 4.0 / 28e3], [4.0 / 22e3, -(14.0 + 4.0) / 22e3]])
    down = np.zeros(2)
    for each in heat:
        end = np.linalg.solve(-rates, [each / 28e3, 0.0])
        down = end + expm(20.0 * rates) @ (down - end)
    assert [course.drawn_down[-1], course.oven_drawn_down[-1]] == pytest.approx(down, rel=1e-9)


def test_what_boiled_dry_draws_nothing_more() -> None:
    course = pan_course(_pot(water=0.2), 290.0, np.full(1441, 600.0), 5.0, KITCHEN, TOP)
    dry = int((course.boiled_away >= 0.2 - 1e-12).argmax())
    assert 0 < dry < 1000
    assert course.boiled_away.max() == pytest.approx(0.2)
    assert np.diff(course.heat_taken[dry:]).max() == 0.0
    assert course.drawn_down[-1] < 0.2 * course.drawn_down[dry]


def test_on_iron_without_end_it_is_as_the_steady_spot_says() -> None:
    endless = Cooktop(conductance=1e9, heat_capacity=1e9)
    course = pan_course(POT, 288.15, np.full(400, 520.0), 10.0, KITCHEN, endless)
    expected = float(time_to_heat(POT, 288.15, 350.0, 520.0, KITCHEN))
    assert np.interp(350.0, course.temperature, course.time) == pytest.approx(expected, rel=0.01)


def test_a_pan_draws_no_more_than_the_fire_gives() -> None:
    """A canner of 15 litres, 0.09 m2, on a top of 450 °F: an endless one would give it 3 kW and more from cold."""
    canner = _pot(water=15.0, base_area=0.091, top_area=0.091, side_area=0.18, conductance=150.0, openness=0.1)
    endless = pan_course(canner, 288.15, np.full(721, 505.4), 5.0, KITCHEN)
    finite = pan_course(
        canner, 288.15, np.full(721, 505.4), 5.0, KITCHEN, Cooktop(conductance=40.0, heat_capacity=28e3)
    )
    mean = [float(course.heat_taken[240] / 1200.0) for course in (endless, finite)]
    assert mean[0] > 2400.0
    assert mean[1] < 0.88 * mean[0]
    assert finite.drawn_down.max() > 35.0
    assert endless.drawn_down.max() == 0.0
