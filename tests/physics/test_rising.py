"""How warmth hurries a dough, against a published table."""

import pytest

from cookstove_gui.physics.rising import rising_time_factor
from tests.reference import check


def test_half_as_long_ten_kelvin_warmer():
    assert rising_time_factor(303.0, 293.0) == pytest.approx(0.5)
    assert rising_time_factor(293.0, 303.0) == pytest.approx(2.0)


def test_beyond_a_warm_or_cold_kitchen_it_stays_as_it_is():
    assert rising_time_factor(330.0, 298.0) == rising_time_factor(308.0, 298.0)
    assert rising_time_factor(270.0, 298.0) == rising_time_factor(283.0, 298.0)


def test_first_rises_of_a_published_table():
    row = check("16.1")
    hours = [float(text) for text in str(row.value).replace(" h", "").split(", ")]
    found = [2.0 * rising_time_factor(kitchen + 273.15, 21.5 + 273.15) for kitchen in (16.5, 21.5, 25.5, 29.0)]
    assert found == pytest.approx(hours, rel=0.25)
