"""A pan on the cooktop takes heat until it comes off, or until it is taken to have come off."""

from dataclasses import replace

import numpy as np
import pytest

from cookstove_gui.forecast.futures.projection import project
from cookstove_gui.forecast.model import heat
from cookstove_gui.forecast.model.heat import PAN_STAYS, PAN_STAYS_ON
from cookstove_gui.stove.entries import Kind
from tests.following import track
from tests.forecast.logs import MODERATE, STOVE, Log, at, usual_morning

LAST = 60


def morning(*pans: tuple[float, str, str]):
    """A usual morning's rows up to an hour, with pans that come and go: minute, spot, on or off."""
    rows = [row for row in usual_morning() if row.at <= at(LAST)]
    more = Log()
    for minute, spot, way in pans:
        more.add(minute, Kind.PAN, spot, way)
    merged = sorted([*rows, *more.entries], key=lambda row: row.at)
    return tuple(replace(row, number=place) for place, row in enumerate(merged, start=1))


def counted(entries, minute: float) -> int:
    return track(STOVE, entries, at(minute)).controls.pans


def test_pans_are_counted_as_they_come_and_go():
    entries = morning((20, "top_front_left", "on"), (30, "top_back_left", "on"), (40, "top_front_left", "off"))
    assert [counted(entries, minute) for minute in (10, 25, 35, 45)] == [0, 1, 2, 1]


def test_a_second_pan_on_the_same_spot_is_the_same_pan_and_off_twice_is_once():
    entries = morning((20, "top_front_left", "on"), (25, "top_front_left", "on"), (30, "top_front_left", "off"),
                      (31, "top_front_left", "off"))  # fmt: skip
    assert [counted(entries, minute) for minute in (27, 32)] == [1, 0]


@pytest.mark.parametrize(("minutes", "stands"), [(PAN_STAYS - 1, 1), (PAN_STAYS + 1, 0)])
def test_a_pan_that_nobody_takes_off_is_taken_to_be_gone_after_a_while(minutes, stands):
    assert counted(morning((50, "top_front_left", "on")), 50 + minutes) == stands


def test_a_pan_makes_the_futures_of_the_top_cooler():
    with_pans = morning((58, "top_front_left", "on"), (58, "top_back_left", "on"), (58, "top_front_right", "on"))
    cool, hot = (project(track(STOVE, entries, at(LAST)), band=MODERATE) for entries in (with_pans, morning()))
    top = [
        float(np.median(one.of("top_back_middle")[:, (one.minutes > 10) & (one.minutes < 40)])) for one in (cool, hot)
    ]
    assert top[0] < top[1] - 3.0


def test_a_pan_that_stands_now_cools_the_futures_for_a_while_only(monkeypatch):
    """Longer than PAN_STAYS_ON from now nobody counts on it: what is further ahead hangs on that length alone."""
    entries = morning((58, "top_front_left", "on"), (58, "top_back_left", "on"), (58, "top_front_right", "on"))
    belief = track(STOVE, entries, at(LAST))
    tops = []
    for stays in (PAN_STAYS_ON, 2 * PAN_STAYS_ON, 200.0):
        monkeypatch.setattr(heat, "PAN_STAYS_ON", stays)
        told = project(belief, band=MODERATE)
        tops.append(np.median(told.of("top_back_middle"), axis=0))
    until = told.minutes <= PAN_STAYS_ON
    assert np.allclose(tops[0][until], tops[2][until])
    later = np.searchsorted(told.minutes, 2 * PAN_STAYS_ON)
    assert tops[0][later] > tops[1][later] + 1.0
    assert np.allclose(tops[1][: later + 1], tops[2][: later + 1])
