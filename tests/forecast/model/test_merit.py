"""Shares of the plain forecasters: ridge regression toward those that any stove begins with."""

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from cookstove_gui.forecast.model.merit import (
    DONE_BY,
    FIRM,
    FULL_FROM,
    KEPT_BEFORE,
    KEPT_SESSION,
    LEAD_MIDDLES,
    LEADS,
    MOST_SHARE,
    START,
    Merit,
    shares,
    shares_at,
)
from cookstove_gui.forecast.model.plain import Plain

ALL = len(Plain)


def _merit(apart, missed) -> Merit:
    """Of readings (n, forecasters) that the forecasters stood from the physics, and what it missed, at every lead."""
    x, y = np.asarray(apart, dtype=float), np.asarray(missed, dtype=float)
    return Merit(np.repeat((x.T @ x)[None], len(LEADS), 0), np.repeat((x.T @ y)[None], len(LEADS), 0))


def test_at_first_the_shares_are_those_of_any_stove():
    assert shares(Merit()) == pytest.approx(np.array(START).T)


@settings(max_examples=30)
@given(st.integers(0, 10_000))
def test_shares_are_ridge_regression_by_added_rows(seed):
    """Hoerl and Kennard 1970: least squares with a row of sqrt(FIRM) for each start share, by numpy's lstsq."""
    random = np.random.default_rng(seed)
    x, y = random.normal(0.0, 0.2, (8, ALL)), random.normal(0.0, 0.1, 8)
    found = shares(_merit(x, y))
    for lead in range(len(LEADS)):
        start = np.array(START)[:, lead]
        rows = np.vstack([x, np.diag(np.sqrt(FIRM))])
        known = np.linalg.lstsq(rows, np.concatenate([y, np.sqrt(FIRM) * start]), rcond=None)[0]
        assert found[lead] == pytest.approx(np.maximum(known, 0.0))


def test_a_forecaster_that_was_always_right_takes_all_that_one_may():
    apart = np.zeros((500, ALL))
    apart[:, Plain.LINE] = 3.0
    found = shares(_merit(apart, apart[:, Plain.LINE]))
    assert found.sum(axis=1) == pytest.approx(MOST_SHARE)
    assert found[:, Plain.LINE].min() > 0.5


def test_a_forecaster_that_was_wrong_takes_nothing_and_never_less():
    apart = np.zeros((500, ALL))
    apart[:, Plain.LINE] = 3.0
    assert shares(_merit(apart, -apart[:, Plain.LINE]))[:, Plain.LINE] == pytest.approx(0.0)


def test_the_more_is_proved_the_further_the_share_moves():
    apart = np.zeros((1, ALL))
    apart[0, Plain.LINE] = 1.0
    found = [shares(_merit(apart, [1.0]).times(count))[0, Plain.LINE] for count in (0, 1, 5, 50)]
    assert found == sorted(found)
    assert found[0] < found[1] < found[3]


def test_what_is_proved_at_one_lead_says_nothing_of_the_others():
    one = _merit(np.eye(ALL) * 5.0, np.ones(ALL) * 5.0)
    first = Merit(one.apart * [[[1.0]], [[0.0]], [[0.0]]], one.towards * [[1.0], [0.0], [0.0]])
    assert shares(first)[1:] == pytest.approx(shares(Merit())[1:])
    assert np.all(shares(first)[0] != shares(Merit())[0])


def test_a_share_comes_in_after_the_reading_and_goes_again():
    found = np.array([[0.4, 0.0, 0.1], [0.3, 0.1, 0.2], [0.2, 0.0, 0.4]])
    at = np.array([0.0, FULL_FROM / 2, FULL_FROM, *LEAD_MIDDLES, (LEAD_MIDDLES[-1] + DONE_BY) / 2, DONE_BY, 400.0])
    line = shares_at(found, at)[Plain.LINE]
    assert line == pytest.approx([0.0, 0.2, 0.4, 0.4, 0.3, 0.2, 0.1, 0.0, 0.0])


def test_what_a_stove_has_proved_fades_from_session_to_session():
    session = _merit(np.eye(ALL), np.ones(ALL))
    twice = Merit().after(session).after(session)
    assert twice.apart == pytest.approx(KEPT_SESSION * (1.0 + KEPT_BEFORE) * session.apart)
    assert twice.towards == pytest.approx(KEPT_SESSION * (1.0 + KEPT_BEFORE) * session.towards)
    idle = twice.after(Merit())
    assert idle.apart == pytest.approx(KEPT_BEFORE * twice.apart)


def test_merit_comes_back_from_its_numbers():
    merit = _merit(np.eye(ALL) * 2.0, np.ones(ALL))
    again = Merit.from_json(merit.to_json())
    assert np.array_equal(again.apart, merit.apart)
    assert np.array_equal(again.towards, merit.towards)
