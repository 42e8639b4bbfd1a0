"""When many futures reach a goal, and quantiles of times of which some are never."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from cookstove_gui.forecast.futures.goal_times import first_reach, late_quantiles

SECONDS = np.array([0.0, 60.0, 180.0])


@pytest.mark.parametrize(
    ("path", "at"),
    [
        ([10.0, 20.0, 30.0], 90.0),  # half-way between steps: 22.5 lies a quarter of the way from 20 to 30
        ([22.5, 30.0, 30.0], 0.0),
        ([10.0, 22.5, 22.5], 60.0),
        ([10.0, 15.0, 22.5], 180.0),
        ([10.0, 10.0, 22.0], np.inf),
        ([40.0, 10.0, 10.0], 0.0),
        ([0.0, 30.0, 0.0], 45.0),
    ],
    ids=["between", "from the first", "at a step", "at the last", "never", "cooling", "and falls again"],
)
def test_goal_is_reached_where_the_ruler_says(path, at):
    assert first_reach(SECONDS, np.array([path]), 22.5) == pytest.approx([at])


def test_each_future_has_its_own_time():
    paths = np.array([[0.0, 30.0, 30.0], [0.0, 0.0, 0.0], [30.0, 30.0, 30.0]])
    assert first_reach(SECONDS, paths, 15.0) == pytest.approx([30.0, np.inf, 0.0])


@given(st.lists(st.floats(0.0, 100.0), min_size=3, max_size=3), st.floats(0.0, 100.0), st.floats(0.0, 50.0))
def test_a_higher_goal_is_reached_no_sooner(path, goal, more):
    paths = np.array([path])
    assert first_reach(SECONDS, paths, goal)[0] <= first_reach(SECONDS, paths, goal + more)[0]


def test_quantiles_are_times_that_came_true_in_at_least_that_share():
    # Eleven times, 0 to 100: numpy's “higher” takes the next one that occurred.
    found = late_quantiles(np.arange(0.0, 101.0, 10.0), 180.0)
    assert (found.p10, found.p50, found.p90) == (10.0, 50.0, 90.0)


def test_what_is_reached_too_late_or_never_is_none():
    times = np.array([10.0, 20.0, 30.0, 180.0, 180.1, *[np.inf] * 6])
    found = late_quantiles(times, 180.0)
    assert (found.p10, found.p50, found.p90) == (20.0, None, None)
    assert late_quantiles(np.array([180.0]), 180.0).p50 == 180.0
    assert late_quantiles(np.array([180.1]), 180.0).p50 is None


def test_between_a_time_and_never_lies_never():
    assert late_quantiles(np.array([10.0, np.inf]), 180.0).p50 is None
    assert late_quantiles(np.array([10.0, 10.0, np.inf]), 180.0).p50 == 10.0
