"""What a session has proved: misses widen, what holds narrows, and the line takes part where it foretold better."""

from collections.abc import Sequence
from datetime import timedelta

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy import stats

from cookstove_gui.forecast.tracking.proof import (
    LINE_CHANCE,
    READ_NOISE,
    SAID_MINUTES,
    TAILS,
    USUAL,
    WIDTHS,
    WORST,
    Line,
    Proof,
    Said,
    leaning,
    proof_of,
)
from tests.forecast.logs import at

DEVIATION = 12.0


def _said(minute: float, read: float, foretold: float | None = None) -> Said:
    """A saying at a reading that foretells one heat, the same for all times."""
    middle = np.full(len(SAID_MINUTES), read if foretold is None else foretold)
    return Said(at(minute), read, middle, np.full(len(SAID_MINUTES), DEVIATION))


def _missing_by(deviations: float, count: int = 6, every: float = 25.0) -> list[Said]:
    """Readings that go up and down, each so many deviations from what the one before had foretold."""
    step = deviations * float(np.hypot(DEVIATION, READ_NOISE))
    return [_said(every * place, 400.0 + step * (place % 2), 400.0 + step * (place % 2)) for place in range(count)]


def _rising(foretold_slope: float, count: int = 6) -> list[Said]:
    """An oven that rises by 2 K a minute, and futures that rise by another."""
    reads = [(12.0 * place, 380.0 + 24.0 * place) for place in range(count)]
    return [
        Said(at(minute), read, read + foretold_slope * SAID_MINUTES, np.full(len(SAID_MINUTES), DEVIATION))
        for minute, read in reads
    ]


def test_before_anything_was_proved_the_width_is_the_usual_one():
    for said in ([], _missing_by(0.0, count=1)):
        proof = proof_of(said)
        assert proof.width == pytest.approx(1.0)
        assert proof.chance == pytest.approx(LINE_CHANCE)
        assert proof.line is None


def test_misses_as_large_as_foretold_leave_the_width():
    assert proof_of(_missing_by(1.0)).width == pytest.approx(1.0, rel=0.02)


def test_the_width_follows_the_misses_within_its_bounds():
    widths = [proof_of(_missing_by(size)).width for size in (0.0, 0.8, 1.5, 2.5, 20.0)]
    assert widths == sorted(widths)
    assert widths[0] == WIDTHS[0]
    assert 1.0 < widths[2] < widths[3] <= widths[-1] <= WIDTHS[1]


def test_old_misses_count_less_than_new_ones():
    early = [*_missing_by(2.5, 5), *(_said(125.0 + 25.0 * place, 400.0) for place in range(5))]
    late = [*(_said(25.0 * place, 400.0) for place in range(5)), *(
        _said(125.0 + one * 25.0, said.read) for one, said in enumerate(_missing_by(2.5, 5))
    )]  # fmt: skip
    assert proof_of(late).width > 1.1 * proof_of(early).width


def test_one_wild_miss_counts_no_more_than_a_bad_one():
    """Among readings that held, a hundred deviations widen as much as WORST does, and no more."""
    noise = float(np.hypot(DEVIATION, READ_NOISE))
    widths = []
    for size in (WORST, 100.0):
        said = [_said(25.0 * place, 400.0) for place in range(12)]
        said[6] = _said(150.0, 400.0 + size * noise, 400.0)
        widths.append(proof_of(said).width)
    assert widths[0] == pytest.approx(widths[1])
    assert 1.0 < widths[0] < WIDTHS[1]


def test_a_reading_proves_only_what_was_said_in_time():
    """Of what was said just before or hours ago, a reading says nothing."""
    for gap in (5.0, 50.0):
        assert proof_of([_said(0.0, 400.0), _said(gap, 600.0)]).width == pytest.approx(1.0)
    assert proof_of([_said(0.0, 400.0), _said(20.0, 600.0)]).width > 1.5


@given(st.lists(st.floats(-3.0, 3.0), min_size=2, max_size=7))
def test_the_width_is_the_scale_of_a_variances_posterior(deviations: Sequence[float]):
    """Scaled inverse chi squared with USUAL readings of prior (Gelman and others 2013, section 2.6), by scipy."""
    noise, said = float(np.hypot(DEVIATION, READ_NOISE)), [_said(0.0, 400.0)]
    for place, size in enumerate(deviations, start=1):
        said.append(_said(70.0 * place, 400.0))  # too late for the saying before it
        said.append(_said(70.0 * place + 20.0, 400.0 + size * noise, 400.0))
    last = said[-1].at
    weights = np.array([0.5 ** ((last - one.at).total_seconds() / 60.0 / 120.0) for one in said[2::2]])
    degrees = USUAL + float(weights.sum())
    scale = (USUAL + float((weights * np.square(deviations)).sum())) / degrees
    posterior = stats.invgamma(degrees / 2.0, scale=degrees * scale / 2.0)  # of the variance
    # Its mode is degrees * scale / (degrees + 2), where its density is largest.
    mode = degrees * scale / (degrees + 2.0)
    assert posterior.pdf(mode) >= max(posterior.pdf(0.99 * mode), posterior.pdf(1.01 * mode))
    assert proof_of(said).width == pytest.approx(float(np.clip(np.sqrt(scale), *WIDTHS)))


def test_the_line_gains_where_it_foretold_better_and_loses_where_it_did_not():
    physics_right, line_right = proof_of(_rising(2.0)), proof_of(_rising(-1.0))
    assert line_right.chance > 3.0 * LINE_CHANCE
    assert physics_right.chance < LINE_CHANCE


def test_the_odds_are_bayes_rule_with_students_t():
    said = _rising(0.0, count=3)  # at 0, 12 and 24 minutes: the last proves what was said at the second
    line = Line(said[1].at, said[1].read, 2.0)
    reach = np.interp(12.0, (0.0, 15.0), (0.5, 0.4))
    middle = said[1].read + reach * (float(line.ahead(np.array([12.0]))[0]) - said[1].read)
    scale = float(np.hypot(DEVIATION, READ_NOISE))
    first = said[1].read - said[0].read, said[2].read - said[0].read  # proved without a line: no odds from them
    assert first[0] > 0
    one = stats.t.logpdf(said[2].read, TAILS, middle, scale) - stats.t.logpdf(said[2].read, TAILS, said[1].read, scale)
    gained = 0.5 * one  # the mean with the saying of the first reading, which had no line yet
    odds = LINE_CHANCE / (1.0 - LINE_CHANCE) * np.exp(gained)
    assert proof_of(said).chance == pytest.approx(odds / (1.0 + odds))


def test_the_futures_lean_toward_the_line_and_less_the_later():
    proof = Proof(1.0, 0.6, Line(at(0), 400.0, 1.0))
    minutes = np.array([0.0, 15.0, 60.0, 120.0, 180.0])
    lean = leaning(proof, at(0), minutes, np.full(5, 390.0))
    line = 400.0 + 80.0 * (1.0 - np.exp(-minutes / 80.0))
    assert lean == pytest.approx(0.6 * np.array([0.5, 0.4, 0.1, 0.0, 0.0]) * (line - 390.0))


def test_an_old_line_leans_less():
    proof = Proof(1.0, 0.6, Line(at(0), 400.0, 0.0))
    now, later = (leaning(proof, at(minute), np.zeros(1), np.full(1, 380.0))[0] for minute in (0, 60))
    assert now == pytest.approx(6.0)
    assert later == pytest.approx(1.2)


def test_two_readings_close_together_make_no_line():
    close = [_said(0.0, 400.0), _said(5.0, 430.0)]
    assert proof_of(close).line is None
    line = proof_of([*close, _said(10.0, 440.0)]).line
    assert line is not None
    assert line.slope == pytest.approx(4.0)
    assert line.at == at(10) - timedelta(0)
