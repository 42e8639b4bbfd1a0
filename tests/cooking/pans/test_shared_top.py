"""Several pots share what the fire gives: each draws the cooktop down for the others, and none is counted twice."""

from datetime import timedelta

import numpy as np
import pytest
from scipy.integrate import solve_ivp

from cookstove_gui.cooking.pans.doubts import usual_doubts
from cookstove_gui.cooking.pans.shared_top import drawn_down, pans_counted, with_pots
from cookstove_gui.forecast.model.heat import PAN_DRAW, PAN_HEAT, PAN_STAYS
from tests.cooking.made import START, STOVE, log, projection

MINUTES = np.arange(0.0, 181.0, 5.0)


@pytest.mark.parametrize("pots", [1, 3])
def test_the_cooktop_comes_down_as_its_balance_says(pots):
    """C dD/dt = n g (T - D - PAN_HEAT) - G D by scipy, where the heat holds."""
    top = usual_doubts().cooktop
    draw, gives = pots * PAN_DRAW * 1000.0 / 60.0, top.conductance + top.to_oven
    heat = 560.0

    def rate(_minute, down):
        return 60.0 * (draw * (heat - down - PAN_HEAT) - gives * down) / top.heat_capacity

    expected = solve_ivp(rate, (0.0, 180.0), [0.0], t_eval=MINUTES, rtol=1e-9, atol=1e-9).y
    found = drawn_down(MINUTES, np.full((1, len(MINUTES)), heat), pots)
    assert found == pytest.approx(expected, abs=1e-3)


def test_energy_is_kept_between_pots_iron_and_fire():
    """Taken by the pots = given by the fire + given by the iron, to 0.1 %, at a minute's step."""
    top = usual_doubts().cooktop
    minutes = np.arange(0.0, 181.0)
    down = drawn_down(minutes, np.full((1, len(minutes)), 560.0), 2)[0]
    watts = 2 * PAN_DRAW * 1000.0 / 60.0 * (560.0 - down - PAN_HEAT)
    fire = (top.conductance + top.to_oven) * down
    taken, given = (60.0 * float(((each[:-1] + each[1:]) / 2).sum()) for each in (watts, fire))
    assert given + top.heat_capacity * down[-1] == pytest.approx(taken, rel=1e-3)


def test_more_pots_draw_it_down_further_but_each_takes_less():
    downs = [drawn_down(MINUTES, np.full((1, len(MINUTES)), 560.0), pots)[0, -1] for pots in (1, 2, 4)]
    assert 0.0 < downs[0] < downs[1] < downs[2]
    assert downs[2] < 4 * downs[0]
    assert downs[2] < 560.0 - PAN_HEAT


def test_a_cooktop_cooler_than_a_pan_is_not_cooled():
    assert not drawn_down(MINUTES, np.full((1, len(MINUTES)), PAN_HEAT - 5.0), 3).any()


def test_pots_cool_the_cooktop_and_not_the_oven():
    before = projection({"top_front_left": [500.0] * 20, "oven_centre": [350.0] * 20})
    after = with_pots(before, STOVE, 2)
    assert (after.of("top_front_left")[:, 1:] < before.of("top_front_left")[:, 1:]).all()
    assert (after.of("oven_centre") == before.of("oven_centre")).all()
    assert with_pots(before, STOVE, 0) is before


def test_a_pan_by_the_log_counts_until_it_is_taken_off_or_has_long_stood():
    rows = log(
        (0.0, "pan", "top_front_left", "on", ""),
        (2.0, "pan", "top_front_right", "on", ""),
        (10.0, "pan", "top_front_right", "off", ""),
    )
    assert pans_counted(rows, START + timedelta(minutes=12)) == {"top_front_left"}
    assert pans_counted(rows, START + timedelta(minutes=5)) == {"top_front_left", "top_front_right"}
    assert pans_counted(rows, START + timedelta(minutes=PAN_STAYS + 1)) == frozenset()
