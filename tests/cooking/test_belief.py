"""A lognormal belief after readings: a worked conjugate example, and laws."""

from math import e, exp, log

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from cookstove_gui.cooking.belief import next_one, normal_rows, updated

values = st.lists(st.floats(0.1, 100.0), max_size=6)
spreads = st.floats(0.05, 2.0)


def test_two_readings_as_sure_as_the_belief_weigh_twice_as_much() -> None:
    # in the logarithm: 0 within 1, then 1 and 1 within 1 each: mean 2/3, standard deviation 1/sqrt(3)
    assert updated(1.0, 1.0, [e, e], 1.0) == pytest.approx((exp(2 / 3), 3**-0.5))


def test_nothing_shown_changes_nothing() -> None:
    assert updated(150.0, 0.4, [], 0.2) == pytest.approx((150.0, 0.4))


@given(st.floats(0.1, 100.0), spreads, values, values, spreads)
def test_one_after_the_other_is_all_at_once(
    median: float, log_sd: float, first: list[float], then: list[float], shown_log_sd: float
) -> None:
    between = updated(median, log_sd, first, shown_log_sd)
    assert updated(*between, then, shown_log_sd) == pytest.approx(
        updated(median, log_sd, first + then, shown_log_sd), rel=1e-6
    )


@given(st.floats(0.1, 100.0), spreads, st.floats(0.1, 100.0), spreads)
def test_the_belief_moves_toward_what_is_shown_and_narrows(
    median: float, log_sd: float, shown: float, shown_log_sd: float
) -> None:
    moved, narrower = updated(median, log_sd, [shown], shown_log_sd)
    assert min(median, shown) * (1 - 1e-9) <= moved <= max(median, shown) * (1 + 1e-9)
    assert narrower < min(log_sd, shown_log_sd)


def test_the_next_one_is_as_unsure_as_one_of_them_and_the_middle_together() -> None:
    # in the logarithm: 0 within sqrt(2), of which 1 from time to time; shown 1 and 1: middle 2/3 within 1/sqrt(3), and
    # the next one within sqrt(1/3 + 1)
    assert next_one(1.0, 2**0.5, [e, e], 1.0) == pytest.approx((exp(2 / 3), (4 / 3) ** 0.5))


def test_before_any_is_shown_the_next_one_is_as_believed() -> None:
    assert next_one(150.0, 0.5, [], 0.3) == pytest.approx((150.0, 0.5))


def test_however_many_are_shown_the_next_one_still_differs() -> None:
    middle, log_sd = next_one(100.0, 0.5, [200.0] * 1000, 0.3)
    assert log(middle) == pytest.approx(log(200.0), abs=0.01)
    assert 0.3 < log_sd < 0.301


@pytest.mark.parametrize("columns", [4, 9, 18])
def test_even_draws_are_of_mean_0_and_variance_1_and_go_with_no_other(columns: int) -> None:
    rows = normal_rows(64, columns)
    assert np.abs(rows.mean(axis=0)).max() < 1e-9
    assert rows.T @ rows / 64 == pytest.approx(np.eye(columns), abs=1e-9)
