"""What a session has proved: misses widen, what holds narrows, and plain forecasters take part as they have earned."""

from collections.abc import Sequence

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy import stats

from cookstove_gui.forecast.model.merit import DONE_BY, START, Merit, shares, shares_at
from cookstove_gui.forecast.model.plain import MINUTES, Plain, Rise, Rises
from cookstove_gui.forecast.tracking.proof import (
    FADES,
    READ_NOISE,
    REMEMBERED,
    USUAL,
    WIDTHS,
    WORST,
    Held,
    Lean,
    Proof,
    Said,
    leaning,
    merit_of,
    proof_of,
    say,
)
from tests.forecast.logs import at

DEVIATION = 12.0
NOISE = float(np.hypot(DEVIATION, READ_NOISE))
NOTHING = np.zeros((len(Plain), len(MINUTES)))


def _session(reads: Sequence[tuple[float, float]], pace: float = 0.0, known: Merit | None = None) -> list[Said]:
    """Sayings at readings (minute, K), by a physics that foretells a straight line of `pace` K/min from each."""
    said: list[Said] = []
    for minute, read in reads:
        foretold = read + pace * MINUTES, np.full(len(MINUTES), DEVIATION)
        said.append(say(said, at(minute), read, foretold, minute, known=known))
    return said


def _held(minute: float, squared: float | None) -> Said:
    """A saying at whose reading the earlier ones missed by so much."""
    flat = np.zeros(len(MINUTES))
    return Said(at(minute), 400.0, flat, flat, NOTHING, flat, Held(Merit(), squared))


def _rising(pace: float, foretold: float, count: int = 7) -> list[Said]:
    return _session([(12.0 * place, 350.0 + 12.0 * pace * place) for place in range(count)], foretold)


# How wide


def test_before_anything_was_proved_the_width_is_the_usual_one():
    for said in ([], _session([(0, 400.0)])):
        assert proof_of(said).width == pytest.approx(1.0)
    assert proof_of([]).lean is None


def test_misses_as_large_as_foretold_leave_the_width():
    assert proof_of([_held(10.0 * place, 1.0) for place in range(8)]).width == pytest.approx(1.0)


def test_the_width_follows_the_misses_within_its_bounds():
    widths = [proof_of([_held(20.0 * place, size) for place in range(6)]).width for size in (0.0, 0.9, 2.2, 6.0, 20.0)]
    assert widths == sorted(widths)
    assert widths[0] == WIDTHS[0]
    assert 1.0 < widths[2] < widths[3] <= widths[-1] == WIDTHS[1]


@given(st.lists(st.floats(0.0, 9.0), min_size=1, max_size=7))
def test_the_width_is_the_scale_of_a_variances_posterior(squares: Sequence[float]):
    """Scaled inverse chi squared with USUAL readings of prior (Gelman and others 2013, section 2.6), by scipy."""
    said = [_held(20.0 * place, size) for place, size in enumerate(squares)]
    weights = 0.5 ** ((said[-1].at - said[0].at).total_seconds() / 60.0 / FADES - 20.0 * np.arange(len(said)) / FADES)
    degrees = USUAL + float(weights.sum())
    scale = (USUAL + float((weights * np.array(squares)).sum())) / degrees
    posterior = stats.invgamma(degrees / 2.0, scale=degrees * scale / 2.0)  # of the variance
    mode = degrees * scale / (degrees + 2.0)
    assert posterior.pdf(mode) >= max(posterior.pdf(0.99 * mode), posterior.pdf(1.01 * mode))
    assert proof_of(said).width == pytest.approx(float(np.clip(np.sqrt(scale), *WIDTHS)))


def test_what_was_proved_long_ago_counts_for_nothing():
    late = REMEMBERED + 10.0
    assert proof_of([_held(0.0, 9.0), _held(late, None)]).width == pytest.approx(1.0)
    assert proof_of([_held(20.0, 9.0), _held(late, None)]).width > 1.0


@pytest.mark.parametrize("size", [0.0, 1.0, -2.5])
def test_a_miss_is_told_in_foretold_deviations(size):
    said = _session([(0, 400.0), (20, 400.0 + size * NOISE)])
    assert said[1].held.miss == pytest.approx(size**2)


def test_one_wild_miss_counts_no_more_than_a_bad_one():
    bad, wild = (_session([(0, 400.0), (20, 400.0 + size * NOISE)])[1].held.miss for size in (WORST, 100.0))
    assert bad == wild == pytest.approx(WORST**2)


@pytest.mark.parametrize(("gap", "counts"), [(5, False), (8, True), (45, True), (50, False)])
def test_a_reading_proves_only_what_was_said_in_time(gap, counts):
    assert (_session([(0, 400.0), (gap, 420.0)])[1].held.miss is not None) is counts


def test_a_miss_is_measured_from_what_was_told_plain_forecasters_and_all():
    said = _session([(0, 400.0), (60, 400.0), (80, 440.0), (100, 480.0)])
    leaned = said[2].middle + said[2].lean
    assert said[2].lean[4] > 5.0  # of a flat physics toward a rising line
    expected = ((480.0 - leaned[4]) / NOISE) ** 2, ((480.0 - 400.0) / NOISE) ** 2
    assert said[3].held.miss == pytest.approx((expected[0] + min(expected[1], WORST**2)) / 2)


# Whom the futures lean toward


def test_at_first_the_futures_lean_by_the_usual_shares():
    said = _session([(0, 380.0), (7, 380.0), (10, 400.0)])[-1]  # nothing was foretold long enough ago to be proved
    assert said.apart[Plain.LINE][-1] > 50.0
    assert said.lean == pytest.approx((shares_at(np.array(START).T, MINUTES) * said.apart).sum(axis=0))


def test_the_line_gains_where_it_foretold_better_and_loses_where_it_did_not():
    line_right, physics_right = (shares(merit_of(said)) for said in (_rising(2.0, 0.0), _rising(0.0, 2.0)))
    start = np.array(START)[Plain.LINE]
    assert np.all(line_right[:2, Plain.LINE] > start[:2])
    both = _session([(0, 400.0), (10, 430.0), (20, 400.0), (30, 430.0), (40, 400.0), (50, 430.0), (60, 400.0)])
    assert shares(merit_of(both))[0, Plain.LINE] < start[0]
    assert physics_right.min() >= 0.0


def test_futures_lean_more_the_more_the_line_has_proved():
    early, late = (_rising(2.0, 0.0, count)[-1] for count in (3, 9))
    assert late.lean[3] / late.apart[Plain.LINE][3] > early.lean[3] / early.apart[Plain.LINE][3] > 0.0


def test_what_earlier_sessions_proved_counts_too():
    known = merit_of(_rising(2.0, 0.0)).times(5.0)
    reads = [(0.0, 380.0), (10.0, 390.0)]
    told, untold = _session(reads, known=known)[-1], _session(reads)[-1]
    assert told.lean[4] > 1.3 * untold.lean[4]


def test_a_far_miss_moves_the_shares_less_than_its_size():
    merits = [merit_of(_session([(0, 380.0), (10, 390.0), (30, 400.0 + size)])) for size in (60.0, 6000.0)]
    assert merits[1].towards[0, Plain.LINE] < 3.0 * merits[0].towards[0, Plain.LINE]


def test_the_lean_counts_from_the_reading_it_was_found_at_and_ends():
    proof = Proof(1.0, Lean(at(0), tuple(MINUTES / 10.0)))
    soon = leaning(proof, at(0), np.array([0.0, 15.0, 75.0, (75.0 + DONE_BY) / 2.0, DONE_BY, 180.0]))
    assert soon == pytest.approx([0.0, 1.5, 7.5, 3.75, 0.0, 0.0])
    assert leaning(proof, at(30), np.array([0.0, 15.0])) == pytest.approx([3.0, 4.5])
    assert leaning(proof, at(200), np.array([0.0, 15.0])) == pytest.approx([0.0, 0.0])
    assert leaning(Proof(), at(0), np.array([15.0])) == pytest.approx([0.0])


def test_the_stoves_own_rises_speak_on_the_first_rise_only():
    clock = np.arange(0.0, 200.0, 10.0)
    rises = Rises.of([Rise(clock, 300.0 + 3.0 * clock.clip(0.0, 60.0))] * 5)
    flat = np.full(len(MINUTES), 360.0), np.full(len(MINUTES), DEVIATION)
    first = say([], at(10), 330.0, flat, 10.0, rises)
    up = say([first], at(20), 360.0, flat, 20.0, rises)
    assert up.apart[Plain.RISES][6] > 40.0
    down = say([up], at(40), 340.0, flat, 40.0, rises)
    again = say([up, down], at(50), 350.0, flat, 50.0, rises)
    for one in (first, down, again):
        assert one.apart[Plain.RISES] == pytest.approx(0.0)


def test_a_session_that_proved_nothing_leaves_its_futures_as_they_are() -> None:
    assert (Proof().width, Proof().lean) == (1.0, None)
