"""Sides are compared within one round and one row of plates, and their interval is Student's for paired differences."""

import numpy as np
import pytest
from scipy.stats import ttest_1samp, ttest_rel
from statsmodels.stats.weightstats import DescrStatsW

from cookstove_gui.cooking.fires.sides import paired, sides
from cookstove_gui.stove.entries import Session
from tests.cooking.made import STOVE, log, session


def _round(minute: float, **heats: float) -> list[tuple[float, str, str, str, str]]:
    return [
        (minute + 0.2 * place, "reading", f"top_{spot}", f"{heat:.4f}", "C")
        for place, (spot, heat) in enumerate(heats.items())
    ]


def _session(number: int, *rounds: list[tuple[float, str, str, str, str]]) -> Session:
    return session(number, log(*(row for one in rounds for row in one)))


def test_the_interval_of_rounds_is_that_of_scipy_and_statsmodels() -> None:
    chance = np.random.default_rng(3)
    left, right = 250.0 + 20.0 * chance.standard_normal(7), 230.0 + 20.0 * chance.standard_normal(7)
    rounds = [
        _round(20.0 * turn, front_left=one, front_right=other)
        for turn, (one, other) in enumerate(zip(left, right, strict=True))
    ]
    found = sides(STOVE, [_session(1, *rounds)]).across
    assert found is not None
    expected = ttest_rel(left, right).confidence_interval(0.8)
    assert (found.low, found.high) == pytest.approx((expected.low, expected.high), abs=1e-3)
    assert (found.low, found.high) == pytest.approx(DescrStatsW(left - right).tconfint_mean(alpha=0.2), abs=1e-3)
    assert found.mean == pytest.approx(float(np.mean(left - right)), abs=1e-3)
    assert (found.rounds, found.sessions) == (7, 1)


def test_from_three_sessions_on_each_counts_once_however_many_rounds_it_has() -> None:
    chance = np.random.default_rng(4)
    rounds = [list(10.0 * session + chance.standard_normal(2 + 3 * session)) for session in range(4)]
    found = paired(rounds)
    assert found is not None
    means = [float(np.mean(own)) for own in rounds]
    expected = ttest_1samp(means, 0.0).confidence_interval(0.8)
    assert (found.low, found.high) == pytest.approx((expected.low, expected.high))
    assert found.mean == pytest.approx(np.mean(means))


def test_an_interval_holds_eight_times_in_ten() -> None:
    from scipy.stats import binom

    chance = np.random.default_rng(5)
    held = 0
    for _ in range(400):
        truth = 30.0 * chance.standard_normal()
        found = paired([[truth + 12.0 * chance.standard_normal() + 6.0 * chance.standard_normal()] for _ in range(5)])
        assert found is not None
        held += found.low <= truth <= found.high  # type: ignore[operator]
    low, high = binom.ppf([0.01, 0.99], 400, 0.8)
    assert low <= held <= high


def test_one_round_tells_a_difference_and_no_interval() -> None:
    found = sides(STOVE, [_session(1, _round(0.0, front_left=260.0, front_right=240.0))])
    assert found.across is not None
    assert (found.across.mean, found.across.low, found.across.high) == (pytest.approx(20.0), None, None)
    assert not found.across.is_told_apart
    assert found.deep is None


def test_sides_are_compared_row_by_row_so_that_a_hot_front_is_no_hot_left() -> None:
    # The front is 100 K hotter; the left was read at the front and the back, the right at the back only.
    rows = _round(0.0, front_left=350.0, back_left=250.0, back_right=250.0)
    found = sides(STOVE, [_session(1, rows)])
    assert found.across is not None
    assert found.deep is not None
    assert found.across.mean == pytest.approx(0.0, abs=1e-6)
    assert found.deep.mean == pytest.approx(100.0)


def test_a_round_that_reads_one_side_only_tells_nothing() -> None:
    found = sides(STOVE, [_session(1, _round(0.0, front_left=350.0, back_left=250.0, front_middle=300.0))])
    assert found.across is None


@pytest.mark.parametrize(("values", "apart"), [((20.0, 21.0, 22.0), True), ((-20.0, 25.0, 1.0), False)])
def test_sides_are_told_apart_where_the_interval_leaves_out_none(values: tuple[float, ...], apart: bool) -> None:
    found = paired([[value] for value in values])
    assert found is not None
    assert found.is_told_apart is apart
