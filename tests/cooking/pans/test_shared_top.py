"""Pans of the log count among those that the heat model draws for, until they are off or have long stood."""

from datetime import timedelta

from cookstove_gui.cooking.pans.shared_top import pans_counted
from cookstove_gui.forecast.model.heat import PAN_STAYS
from tests.cooking.made import START, log


def test_a_pan_by_the_log_counts_until_it_is_taken_off_or_has_long_stood():
    rows = log(
        (0.0, "pan", "top_front_left", "on", ""),
        (2.0, "pan", "top_front_right", "on", ""),
        (10.0, "pan", "top_front_right", "off", ""),
    )
    assert pans_counted(rows, START + timedelta(minutes=12)) == {"top_front_left"}
    assert pans_counted(rows, START + timedelta(minutes=5)) == {"top_front_left", "top_front_right"}
    assert pans_counted(rows, START + timedelta(minutes=PAN_STAYS + 1)) == frozenset()
