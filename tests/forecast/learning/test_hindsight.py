"""What is looked back on, what was known then, and widths learned from it that bring coverage where it was claimed."""

from dataclasses import replace

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from cookstove_gui.forecast.futures.outlook import outlook
from cookstove_gui.forecast.learning.hindsight import (
    Hindcast,
    aimed_band,
    corrections_from,
    hindcasts,
    oven_readings,
    pinball,
    questions,
)
from cookstove_gui.forecast.model.character import CORRECTION_MINUTES, Character
from cookstove_gui.forecast.tracking.tracker import Tracker
from cookstove_gui.stove.entries import Entry, Kind, Session
from cookstove_gui.stove.stove import unchecked
from cookstove_gui.units import kelvin
from tests.following import track
from tests.forecast.logs import STOVE, Log, at, usual_morning

CENTRE = "oven_centre"


@pytest.mark.parametrize(
    ("quantile", "level", "expected"),
    [(8.0, 0.1, 0.2), (12.0, 0.1, 1.8), (12.0, 0.9, 0.2), (8.0, 0.9, 1.8), (8.0, 0.5, 1.0)],
)
def test_pinball_matches_the_reference_rows(quantile, level, expected):
    # Reference 10.5, by scoringrules 0.10.0 and scikit-learn 1.9.1.
    assert pinball(np.array([quantile]), 10.0, (level,)) == pytest.approx(expected, abs=1e-12)


def test_pinball_agrees_with_scoringrules():
    random = np.random.default_rng(1)
    quantiles, truth, levels = np.sort(random.normal(size=3)), float(random.normal()), (0.1, 0.5, 0.9)
    assert pinball(quantiles, truth, levels) == pytest.approx(_quantile_score(quantiles, truth), rel=1e-9)


def test_twice_the_pinball_integral_is_the_crps():
    import scoringrules
    from scipy.stats import norm

    levels = (np.arange(4000) + 0.5) / 4000
    ours = 2.0 * pinball(norm.ppf(levels), 1.0, tuple(levels))
    assert ours == pytest.approx(float(scoringrules.crps_normal(1.0, 0.0, 1.0)), abs=1e-5)


def _quantile_score(quantiles, truth):
    import scoringrules

    levels = (0.1, 0.5, 0.9)
    scores = [float(scoringrules.quantile_score(truth, q, level)) for q, level in zip(quantiles, levels, strict=True)]
    return np.mean(scores)


# Which readings count


def test_only_the_ovens_own_readings_that_can_be_are_looked_back_on():
    log = Log().add(0, Kind.LIT).add(1, Kind.NOTE, CENTRE, "300", "F").reads(2, "top_front_left", 400)
    log.add(3, Kind.READING, CENTRE, "hot", "F")
    log.add(4, Kind.READING, CENTRE, "-40.1", "C").add(5, Kind.READING, CENTRE, "-40.2", "C")
    log.add(6, Kind.READING, CENTRE, "726.85", "C").add(7, Kind.READING, CENTRE, "726.9", "C")
    log.add(8, Kind.READING, CENTRE, "200", "C")
    rows, values = oven_readings(STOVE, log.entries, CENTRE)
    assert [row.value for row in rows] == ["-40.1", "726.85", "200"]
    assert values == pytest.approx([233.05, 1000.0, 473.15])


def test_what_the_thermometer_reads_too_high_is_taken_off():
    dial = replace(unchecked("dial", "oven thermometer"), offset=6.0)
    stove = replace(STOVE, instruments=(dial,))
    log = Log().reads(1, CENTRE, 300)
    (plain,), (corrected,) = oven_readings(STOVE, log.entries, CENTRE)[1], oven_readings(stove, log.entries, CENTRE)[1]
    assert plain - corrected == pytest.approx(6.0)


def test_a_spot_that_the_stove_does_not_know_is_read_as_typed():
    dial = replace(unchecked("dial", "oven thermometer"), offset=6.0)
    stove = replace(STOVE, spots=(), instruments=(dial,))
    assert oven_readings(stove, Log().reads(1, CENTRE, 300).entries, CENTRE)[1] == pytest.approx([kelvin(300.0, "F")])


@given(st.integers(0, 60), st.integers(1, 8))
def test_questions_are_asked_after_the_second_reading_and_before_the_last_one_evenly(count, most):
    places = questions([_row()] * count, most)
    inner = list(range(1, count - 1))
    assert places == sorted(set(places))
    assert set(places) <= set(inner)
    assert len(places) == min(most, len(inner))
    if len(places) > 1:
        assert (places[0], places[-1]) == (inner[0], inner[-1])
        steps = np.diff(places)
        assert steps.max() - steps.min() <= 1


def test_five_moments_of_a_long_session_are_looked_back_on():
    assert questions([_row()] * 43) == [1, 11, 21, 31, 41]


def _row() -> Entry:
    return Log().reads(0, CENTRE, 300).entries[0]


@given(st.lists(st.floats(300.0, 600.0), min_size=1, max_size=12), st.randoms())
def test_three_quarters_of_the_readings_lie_below_the_middle_of_the_aimed_band(values, chance):
    band = aimed_band(np.array(values))
    middle = 0.5 * (band.low + band.high)
    shuffled = list(values)
    chance.shuffle(shuffled)
    assert aimed_band(np.array(shuffled)) == band
    steps = len(values) - 1
    assert sum(value <= middle + 1e-9 for value in values) - 1 >= np.floor(0.75 * steps)
    assert sum(value >= middle - 1e-9 for value in values) - 1 >= np.floor(0.25 * steps)
    assert band.high - band.low == pytest.approx(28.0)


# What is projected, knowing only what was known then


def _session(entries: list[Entry]) -> Session:
    return Session(number=1, stove=STOVE.name, title="one", entries=tuple(entries))


def _casts(entries: list[Entry]) -> list[Hindcast]:
    return hindcasts(Tracker(STOVE), _session(entries))


@pytest.fixture(scope="module")
def morning() -> list[Hindcast]:
    return _casts(usual_morning())


def test_two_readings_are_too_few_to_look_back_on():
    assert _casts(Log().add(0, Kind.LIT).reads(5, CENTRE, 80).reads(40, CENTRE, 200).entries) == []


def test_three_readings_are_enough():
    log = Log().add(0, Kind.LIT).reads(5, CENTRE, 80).reads(20, CENTRE, 130).reads(40, CENTRE, 200)
    assert [cast.lead for cast in _casts(log.entries)] == [15.0]


def test_leads_reach_no_further_than_the_last_reading(morning):
    # Readings at 6, 14 ... 70 min; asked at 14, 30 (of 14, 22 ... 62, five evenly), so 70 - 62 is too short for any.
    by_lead = {lead: sum(cast.lead == lead for cast in morning) for lead in (15.0, 30.0, 60.0)}
    asked = [14.0, 30.0, 38.0, 46.0, 62.0]
    assert by_lead == {lead: sum(at + lead <= 70.0 for at in asked) for lead in by_lead}


def test_a_lead_that_ends_at_the_last_reading_counts():
    log = Log().add(0, Kind.LIT).reads(5, CENTRE, 80).reads(20, CENTRE, 130).reads(50, CENTRE, 220)
    assert [(cast.lead, round(cast.came_true, 2)) for cast in _casts(log.entries)] == [
        (15.0, round(kelvin(175.0, "F"), 2)),
        (30.0, round(kelvin(220.0, "F"), 2)),
    ]


def test_what_came_true_lies_on_the_straight_line_between_readings(morning):
    # At 14 min, 15 min on: between 140 °F at 22 min and 180 °F at 30 min.
    assert morning[0].came_true == pytest.approx(kelvin(175.0, "F"))


def test_projections_are_three_rising_quantiles_scored_by_their_pinball_loss(morning):
    for cast in morning:
        assert cast.quantiles == tuple(sorted(cast.quantiles))
        assert cast.loss == pytest.approx(_quantile_score(cast.quantiles, cast.came_true), rel=1e-9)


def test_what_was_read_later_changes_what_came_true_and_not_what_was_projected(morning):
    # The band aimed at is judged from the whole session; its upper quartile is the same in both.
    later = [
        replace(row, value="345") if row.kind is Kind.READING and row.spot == CENTRE and row.value == "333" else row
        for row in usual_morning()
    ]
    changed = _casts(later)
    assert [cast.quantiles for cast in changed] == [cast.quantiles for cast in morning]
    assert [cast.came_true for cast in changed] != [cast.came_true for cast in morning]


def test_a_reading_taken_back_in_the_end_is_not_what_came_true():
    log = Log()
    log.entries = list(usual_morning())
    wrong = len(log.entries) + 1
    log.reads(69, CENTRE, 900).add(71, Kind.VOID, value=str(wrong))
    assert max(cast.came_true for cast in _casts(log.entries)) < kelvin(340.0, "F")


def test_what_is_judged_is_what_was_shown(morning):
    entries = usual_morning()
    aimed = aimed_band(oven_readings(STOVE, entries, CENTRE)[1])
    shown = outlook(track(STOVE, entries, at(14)), aimed)
    for ahead, cast in zip(shown.ahead[:2], morning[:2], strict=True):
        assert (ahead.p10, ahead.p50, ahead.p90) == pytest.approx(cast.quantiles, abs=0.01)


def test_learned_corrections_do_not_come_into_what_they_are_learned_from(morning):
    generic = Character.generic(STOVE)
    wide = replace(generic, corrections=corrections_from(_misses(400, 6.408, 30.0)))
    assert hindcasts(Tracker(STOVE, wide), _session(usual_morning())) == morning


# Widths


def _misses(count: int, half: float, spread: float, lead: float = 30.0) -> list[Hindcast]:
    misses = np.random.default_rng(2).normal(0.0, spread, count)
    return [_cast(float(miss), half, lead) for miss in misses]


def _cast(miss: float, half: float, lead: float = 30.0) -> Hindcast:
    return Hindcast(lead, (400.0 - half, 400.0, 400.0 + half), 400.0 + miss, 1.0)


def _width(casts: list[Hindcast], lead: float = 30.0) -> float:
    return corrections_from(casts).width[CORRECTION_MINUTES.index(lead)]


def test_windows_that_were_too_narrow_become_wide_enough():
    # Half-width 6.4 K covers 80 % of a normal of 5 K; truth scatters by 8 K. Binomial limits at 95 % for n = 400.
    from scipy.stats import binom

    fresh = np.abs(np.random.default_rng(3).normal(0.0, 8.0, 400)) <= 6.408 * _width(_misses(400, 6.408, 8.0))
    low, high = binom.ppf([0.025, 0.975], 400, 0.8)
    assert low <= fresh.sum() <= high


def test_windows_that_were_right_stay():
    assert _width(_misses(300, 6.408, 5.0)) == pytest.approx(1.0, abs=0.1)


def test_a_few_casts_hardly_change_the_width():
    assert _width(_misses(2, 6.408, 15.0)) < 1.3


def test_with_as_many_casts_as_the_prior_is_worth_the_width_goes_half_the_way():
    # Twelve misses of 1.44 half-widths: the geometric mean of 1 and 1.44.
    assert _width([_cast(14.4, 10.0)] * 12) == pytest.approx(1.2)


@pytest.mark.parametrize("sign", [1.0, -1.0])
def test_misses_to_either_side_widen_alike(sign):
    assert _width([_cast(sign * 14.4, 10.0)] * 12) == pytest.approx(1.2)


def test_eight_misses_in_ten_decide():
    # One in ten far off does not make the windows wider, three in ten do.
    one, three = ([_cast(100.0, 10.0)] * bad + [_cast(10.0, 10.0)] * (100 - bad) for bad in (10, 30))
    assert _width(one) == pytest.approx(1.0)
    assert _width(three) == 1.8


def test_widths_stay_within_reason():
    assert _width([_cast(1000.0, 10.0)] * 500) == 1.8
    assert _width([_cast(0.0, 10.0)] * 500) == 0.9


def test_a_window_of_no_width_counts_as_one_kelvin_either_way():
    assert _width([_cast(1.44, 0.0)] * 12) == pytest.approx(1.2)


def test_each_lead_has_its_own_width_and_beyond_an_hour_that_of_the_hour():
    casts = [_cast(14.4, 10.0, 15.0)] * 12 + [_cast(12.1, 10.0, 60.0)] * 12
    assert corrections_from(casts).width == pytest.approx((1.0, 1.2, 1.0, 1.1, 1.1, 1.1))


def test_nothing_looked_back_on_corrects_nothing():
    assert set(corrections_from([]).width) == {1.0}
