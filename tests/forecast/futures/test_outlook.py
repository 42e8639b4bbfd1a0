"""Arrival, stay and chances follow from the futures."""

from dataclasses import replace

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from cookstove_gui.forecast.answers import Action, ActionKind, Outlook, oven_spot
from cookstove_gui.forecast.futures.outlook import arrivals, outlook, outlook_of, oven_ahead, oven_at
from cookstove_gui.forecast.futures.projection import project
from cookstove_gui.stove.entries import HeatBand
from cookstove_gui.stove.stove import SpotKind
from tests.following import track
from tests.forecast.futures.made import BAND, MINUTES, futures, lines, stove_with
from tests.forecast.logs import MODERATE, STOVE, at, usual_morning


def _line(start, slope):
    return start + slope * MINUTES


def test_arrival_on_a_straight_line_is_where_the_ruler_says():
    enters, stays = arrivals(MINUTES, np.array([_line(380.0, 1.0), _line(470.0, -2.0)]), BAND)
    assert enters == pytest.approx([20.0, 25.0])
    assert stays == pytest.approx([20.0, 10.0])


def test_already_in_band_enters_at_once():
    enters, stays = arrivals(MINUTES, np.array([_line(410.0, 0.5)]), BAND)
    assert enters == pytest.approx([0.0])
    assert stays == pytest.approx([20.0])


def test_never_reached_is_later_than_the_horizon():
    enters, stays = arrivals(MINUTES, np.array([_line(300.0, 0.0)]), BAND)
    assert np.isinf(enters).all()
    assert np.isinf(stays).all()


def test_a_band_jumped_across_between_two_times_was_reached():
    narrow = HeatBand(name="narrow", low=402.0, high=403.0)
    enters, _ = arrivals(MINUTES, np.array([_line(400.0, 2.0)]), narrow)
    assert enters == pytest.approx([1.0])


def test_cooling_through_an_exponential_arrives_at_the_closed_form():
    # Reference 4.2: 200 °C in 20 °C, tau 45 min, is 100 °C after 36.4919 min; the grid of 5 min allows 0.1 min.
    oven = 20.0 + 180.0 * np.exp(-MINUTES / 45.0)
    enters, _ = arrivals(MINUTES, oven[None, :], HeatBand(name="x", low=50.0, high=100.0))
    assert enters == pytest.approx([36.4919], abs=0.15)


@pytest.mark.parametrize(
    ("path", "enters", "stays"),
    [
        ([390.0, 410.0, 430.0, 410.0], 2.5, 5.0),  # comes from below, leaves above
        ([390.0, 410.0, 390.0, 410.0], 2.5, 5.0),  # leaves below
        ([430.0, 410.0, 390.0, 410.0], 2.5, 5.0),  # comes from above, leaves below
        ([430.0, 410.0, 430.0, 410.0], 2.5, 5.0),
        ([410.0, 410.0, 410.0, 430.0], 0.0, 12.5),  # there from the first
        ([410.0, 390.0, 410.0, 430.0], 0.0, 2.5),  # the first stay counts
        ([400.0, 420.0, 400.0, 420.0], 0.0, np.inf),  # both ends belong to the band
        ([399.0, 400.0, 400.0, 399.0], 5.0, 5.0),
        ([421.0, 420.0, 420.0, 421.0], 5.0, 5.0),
        ([380.0, 390.0, 399.0, 399.0], np.inf, np.inf),
        ([380.0, 440.0, 380.0, 380.0], 5.0 / 3.0, 5.0 / 3.0),  # rushes through within one step
    ],
)
def test_ways_into_the_band_and_out_of_it(path, enters, stays):
    found = arrivals(np.array([0.0, 5.0, 10.0, 15.0]), np.array([path]), BAND)
    assert found[0] == pytest.approx([enters])
    assert found[1] == pytest.approx([stays])


@given(st.lists(st.integers(370, 450).map(float), min_size=2, max_size=8))
def test_arrival_and_stay_are_those_of_a_ruler_laid_from_point_to_point(path):
    # By brute force: the straight lines looked at every hundredth of a minute.
    minutes = 5.0 * np.arange(len(path))
    fine = np.linspace(0.0, minutes[-1], 500 * (len(path) - 1) + 1)
    oven = np.interp(fine, minutes, path)
    inside = (oven >= BAND.low - 1e-9) & (oven <= BAND.high + 1e-9)
    first = fine[inside.argmax()] if inside.any() else np.inf
    out = fine[(fine >= first) & ~inside]
    enters, stays = (float(found[0]) for found in arrivals(minutes, np.array([path]), BAND))
    assert enters == pytest.approx(first, abs=0.011)
    if np.isfinite(first):
        assert stays == pytest.approx(out[0] - first if len(out) else np.inf, abs=0.021)


def _view(oven: np.ndarray, ahead: tuple[int, ...] = (15, 30, 60)) -> Outlook:
    return outlook_of(futures(oven_centre=oven), STOVE, BAND, ahead)


def test_quantiles_beyond_three_hours_are_none_and_chances_count_futures():
    band = _view(lines(np.array([380.0] * 6 + [300.0] * 4), np.array([1.0] * 6 + [0.0] * 4))).band
    assert band.chance_reached_3h == pytest.approx(0.6)
    assert band.enters_min.p10 == pytest.approx(20.0)
    assert band.enters_min.p90 is None
    assert (band.low, band.high) == (400.0, 420.0)


@pytest.mark.parametrize(
    ("there", "on_the_way", "never", "window"),
    [
        (0, 100, 0, (10.0, 90.0)),  # a tenth at either end
        (0, 92, 8, (10.0, 90.0)),
        (0, 85, 15, (15.0, None)),  # no end can leave out what never comes, so the beginning leaves out as much
        (0, 60, 40, (20.0, None)),  # up to a fifth
        (15, 85, 0, (0.0, 70.0)),  # no beginning can leave out what is there now
        (40, 60, 0, (0.0, 40.0)),
        (40, 20, 40, (0.0, None)),
        (0, 10, 90, (None, None)),
    ],
)
def test_an_arrival_window_leaves_out_a_fifth_of_the_futures(there, on_the_way, never, window):
    # A hundred futures: some in the band, some a minute apart, some that never come.
    starts = np.concatenate([np.full(there, 410.0), 399.5 - np.arange(on_the_way), np.full(never, 300.0)])
    slopes = np.repeat([0.0, 1.0, 0.0], [there, on_the_way, never])
    view = outlook_of(futures(oven_centre=lines(starts, slopes)), STOVE, BAND, ()).band.enters_min
    for told, minutes in zip((view.p10, view.p90), window, strict=True):
        assert told == (None if minutes is None else pytest.approx(minutes, abs=1.0))


def test_a_stay_is_that_of_the_futures_that_come():
    # Eleven futures stay 10 to 110 min, as many never come; the tenth and the ninetieth percentile of those that do.
    stays = np.arange(10.0, 111.0, 10.0)
    oven = np.concatenate([lines(np.full(11, 420.0), -20.0 / stays), lines(np.full(11, 300.0), np.zeros(11))])
    band = _view(oven).band
    assert (band.stays_min.p10, band.stays_min.p50, band.stays_min.p90) == pytest.approx((20.0, 60.0, 100.0))
    assert band.chance_reached_3h == 0.5
    nowhere = _view(lines(300.0, 0.0)).band
    assert (nowhere.stays_min.p10, nowhere.enters_min.p50, nowhere.chance_reached_3h) == (None, None, 0.0)


def test_the_line_enters_where_the_median_of_each_time_does_by_a_ruler():
    # Three futures; the middle one at every time is the second: 380 K and 1 K a minute, in 400 to 420 K after 20 min.
    band = _view(lines(np.array([300.0, 380.0, 430.0]), np.array([0.0, 1.0, 1.0]))).band
    assert (band.line_enters_min, band.line_leaves_min) == pytest.approx((20.0, 40.0))


def test_a_line_that_only_cools_towards_the_band_enters_it_from_above():
    band = _view(lines(np.array([440.0, 470.0, 500.0]), np.full(3, -2.0))).band
    assert (band.line_enters_min, band.line_leaves_min) == pytest.approx((25.0, 35.0))


def test_futures_that_each_pass_the_band_at_another_time_leave_the_line_below_it():
    # Nine of ten futures are in the band one after another: nearly all come, and the line stays at 350 K.
    oven = np.full((10, len(MINUTES)), 350.0)
    for row in range(9):
        oven[row, 3 * row + 2 : 3 * row + 4] = 410.0
    band = _view(oven).band
    assert band.chance_reached_3h == 0.9
    assert band.enters_min.p50 is not None
    assert (band.line_enters_min, band.line_leaves_min) == (None, None)


def test_a_line_in_the_band_entered_it_now_and_one_that_stays_never_leaves():
    still = _view(lines(410.0, 0.0)).band
    assert (still.line_enters_min, still.line_leaves_min) == (0.0, None)
    falling = _view(lines(410.0, -1.0)).band
    assert (falling.line_enters_min, falling.line_leaves_min) == pytest.approx((0.0, 10.0))


def test_the_line_is_never_in_the_band_before_half_of_the_futures_were():
    belief = track(STOVE, usual_morning(), at(54))
    for low in (MODERATE.low - 20, MODERATE.low, MODERATE.low + 20):
        band = outlook(belief, HeatBand(name="x", low=low, high=low + 25)).band
        if band.line_enters_min is not None:
            assert band.enters_min.p50 is not None
            assert band.line_enters_min >= band.enters_min.p50 - 1e-9


def test_between_a_time_and_never_lies_never():
    # The middle of three is one that comes; the middle of two lies between one that comes and one that does not.
    three = _view(lines(np.array([390.0, 380.0, 300.0]), np.array([1.0, 1.0, 0.0]))).band.enters_min
    two = _view(lines(np.array([390.0, 300.0]), np.array([1.0, 0.0]))).band.enters_min
    assert (three.p50, three.p90, two.p50) == (pytest.approx(20.0), None, None)


def test_quantiles_of_the_oven_are_numpys():
    heats = np.array([400.0, 407.0, 411.0, 430.0])
    view = _view(lines(heats, np.zeros(4)))
    expected = np.quantile(heats, (0.1, 0.5, 0.9))
    assert (view.oven.p10, view.oven.p50, view.oven.p90) == pytest.approx(tuple(expected))
    assert (view.ahead[0].p10, view.ahead[0].p50, view.ahead[0].p90) == pytest.approx(tuple(expected))


def test_chance_in_the_band_counts_both_its_ends():
    view = _view(lines(np.array([399.9, 400.0, 420.0, 420.1]), np.zeros(4)))
    assert [ahead.chance_in_band for ahead in view.ahead] == [0.5] * 3


@pytest.mark.parametrize(
    ("minute", "kelvin"), [(-5.0, 400.0), (0.0, 400.0), (2.0, 402.0), (5.0, 405.0), (172.5, 572.5), (500.0, 580.0)]
)
def test_between_projected_times_the_oven_lies_on_a_straight_line_and_beyond_them_at_the_last(minute, kelvin):
    assert oven_at(MINUTES, lines(400.0, 1.0), minute) == pytest.approx([kelvin])


def test_without_a_centre_the_first_spot_of_the_oven_stands_for_it():
    kinds = {"top_a": SpotKind.TOP, "oven_left": SpotKind.OVEN, "oven_rear": SpotKind.OVEN}
    paths = dict.fromkeys([*kinds, "oven_centre"], lines(400.0, 0.0))
    future = futures(**paths)
    assert oven_spot(stove_with(**kinds, oven_centre=SpotKind.OVEN), future) == "oven_centre"
    assert oven_spot(stove_with(**kinds), future) == "oven_left"


def test_outlook_has_rising_quantiles_and_chances_between_none_and_certain():
    view = outlook(track(STOVE, usual_morning(), at(70)), MODERATE, ahead=(0, 15, 30, 60, 180))
    assert [ahead.minutes for ahead in view.ahead] == [0, 15, 30, 60, 180]
    assert all(ahead.p10 <= ahead.p50 <= ahead.p90 and 0.0 <= ahead.chance_in_band <= 1.0 for ahead in view.ahead)


def test_doubt_grows_with_the_lead():
    view = outlook(track(STOVE, usual_morning(), at(70)), MODERATE)
    widths = [ahead.p90 - ahead.p10 for ahead in view.ahead]
    assert widths == sorted(widths)


def test_a_wider_band_is_reached_no_later_and_no_less_likely():
    belief = track(STOVE, usual_morning(), at(54))
    narrow = outlook(belief, MODERATE).band
    wide = outlook(belief, HeatBand(name="wide", low=MODERATE.low - 15, high=MODERATE.high + 15)).band
    assert wide.chance_reached_3h >= narrow.chance_reached_3h
    assert wide.enters_min.p50 <= narrow.enters_min.p50  # type: ignore[operator]


def _hour_ahead(action: Action) -> float:
    return outlook(track(STOVE, usual_morning(), at(72)), MODERATE, action=action).ahead[2].p50


def test_more_wood_means_a_hotter_hour():
    assert _hour_ahead(Action(kind=ActionKind.WOOD, value=2.5)) > _hour_ahead(Action(kind=ActionKind.WOOD, value=0.3))


def test_an_open_bypass_means_a_cooler_hour():
    assert _hour_ahead(Action(kind=ActionKind.BYPASS, value=1.0)) < _hour_ahead(Action())


@pytest.mark.parametrize("left_out", [(), ("oven_centre",), tuple(spot.name for spot in STOVE.spots_of(SpotKind.OVEN))])
def test_the_oven_alone_is_as_among_all_spots(left_out):
    spots = tuple(spot for spot in STOVE.spots if spot.name not in left_out)
    belief = track(replace(STOVE, spots=spots), [row for row in usual_morning() if row.spot not in left_out], at(60))
    whole, alone = project(belief, band=BAND), oven_ahead(belief, band=BAND)
    assert alone.spots == (oven_spot(belief.stove, whole),)
    np.testing.assert_array_equal(alone.of(alone.spots[0]), whole.of(alone.spots[0]))
