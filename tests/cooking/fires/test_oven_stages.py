"""The stages of the oven follow each other without gaps and are named by the heat wanted."""

from itertools import pairwise

from hypothesis import given
from hypothesis import strategies as st

from cookstove_gui.cooking.fires.oven_stages import LEAST_MIN, Stage, oven_stages
from cookstove_gui.stove.entries import HeatBand

BAND = HeatBand(name="bread", low=450.0, high=490.0)


def test_a_firing_catches_rises_holds_and_falls() -> None:
    minutes = [0.0, 20.0, 40.0, 60.0, 80.0, 100.0, 120.0, 140.0]
    heats = [295.0, 310.0, 380.0, 430.0, 460.0, 470.0, 455.0, 420.0]
    found = oven_stages(minutes, heats, BAND)
    assert [one.stage for one in found] == [Stage.CATCHING, Stage.RISING, Stage.AT_HEAT, Stage.FALLING]
    assert [(one.start, one.end) for one in found] == [(0.0, 30.0), (30.0, 70.0), (70.0, 130.0), (130.0, 140.0)]


def test_an_oven_too_hot_is_above_the_heat_wanted() -> None:
    found = oven_stages([0.0, 30.0, 60.0, 90.0], [300.0, 400.0, 520.0, 470.0], BAND)
    assert [one.stage for one in found] == [Stage.CATCHING, Stage.RISING, Stage.ABOVE, Stage.AT_HEAT]


def test_an_oven_that_never_got_there_falls_after_its_highest() -> None:
    found = oven_stages([0.0, 30.0, 60.0, 90.0], [300.0, 380.0, 420.0, 400.0], BAND)
    assert [one.stage for one in found] == [Stage.CATCHING, Stage.RISING, Stage.FALLING]


def test_a_moment_below_the_heat_is_no_stage_of_its_own() -> None:
    minutes = [0.0, 30.0, 60.0, 61.0, 62.0, 63.0, 90.0]
    found = oven_stages(minutes, [300.0, 400.0, 460.0, 460.0, 449.0, 460.0, 460.0], BAND)
    assert [one.stage for one in found] == [Stage.CATCHING, Stage.RISING, Stage.AT_HEAT]


@given(st.lists(st.floats(280.0, 600.0), min_size=2, max_size=40), st.floats(0.5, 20.0))
def test_stages_leave_no_gap_and_none_but_the_first_is_short(heats: list[float], step: float) -> None:
    minutes = [step * place for place in range(len(heats))]
    found = oven_stages(minutes, heats, BAND)
    assert (found[0].start, found[-1].end) == (minutes[0], minutes[-1])
    assert all(one.end == other.start for one, other in pairwise(found))
    assert all(one.minutes >= LEAST_MIN for one in found[1:])
