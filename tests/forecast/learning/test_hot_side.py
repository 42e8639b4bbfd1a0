"""A spot's lasting difference from the cooktop's mean: its sign, its doubt, and what does not sway it."""

from dataclasses import replace

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from cookstove_gui.forecast.learning.hot_side import spot_pattern
from cookstove_gui.stove.entries import Kind, Session
from cookstove_gui.stove.stove import SpotKind
from tests.forecast.logs import STOVE, Log, sessions

TOPS = [spot for spot in STOVE.spots if spot.kind is SpotKind.TOP]


def _session(log: Log) -> Session:
    return Session(number=1, stove=STOVE.name, title="", entries=tuple(log.entries))


def _walks(rounds: list[list[float]]) -> Session:
    """Rounds of the cooktop [K], one spot after the other, a quarter of a minute apart."""
    log = Log()
    for turn, values in enumerate(rounds):
        for place, (spot, value) in enumerate(zip(TOPS, values, strict=True)):
            log.add(20.0 * turn + 0.25 * place, Kind.READING, spot.name, f"{value - 273.15:.6f}", "C")
    return _session(log)


def _means(found) -> np.ndarray:
    return np.array([row.mean for row in found])


def _half(row) -> float:
    return row.p90 - row.mean


def test_hot_side_is_found_with_its_interval_and_count():
    pattern = spot_pattern(STOVE, sessions(4))
    assert pattern[0].spot == "top_front_left"
    assert pattern[0].mean > 0.0 > pattern[-1].mean
    assert all(row.p10 < row.mean < row.p90 and row.readings == 16 for row in pattern)
    assert sum(row.mean for row in pattern) == pytest.approx(0.0, abs=1e-6)


def test_hot_side_matches_plain_averages_when_readings_are_many():
    # The logs' pattern is a fall of 12 °F from spot to spot in walking order; centred, ±30, ±18, ±6 °F.
    expected = np.array([30.0, 18.0, 6.0, -6.0, -18.0, -30.0]) / 1.8
    assert _means(spot_pattern(STOVE, sessions(12))) == pytest.approx(expected, abs=1.5)


def test_hot_side_without_sessions_is_vague_and_level():
    pattern = spot_pattern(STOVE, [])
    assert all(row.readings == 0 and row.mean == 0.0 and row.p10 < -10.0 < 10.0 < row.p90 for row in pattern)


def test_a_stove_without_a_cooktop_has_no_hot_side():
    assert spot_pattern(replace(STOVE, spots=STOVE.spots[:1]), sessions(1)) == ()


@pytest.mark.parametrize(
    "hotter",
    [lambda spot: spot.x < 0.4, lambda spot: spot.x > 0.6, lambda spot: spot.y < 0.5, lambda spot: spot.y > 0.5],
)
def test_the_side_that_is_read_hotter_is_the_hot_side(hotter):
    found = spot_pattern(STOVE, [_walks([[500.0 + 30.0 * hotter(spot) for spot in TOPS]] * 10)])
    for row, spot in zip(found, TOPS, strict=True):
        assert (row.mean > 5.0) if hotter(spot) else (row.mean < -5.0)


@given(st.lists(st.floats(-60.0, 200.0), min_size=4, max_size=4))
@settings(max_examples=20)
def test_how_hot_the_fire_was_on_each_round_does_not_matter(levels):
    pattern = np.array([25.0, 10.0, -5.0, -15.0, 0.0, -15.0])
    level = spot_pattern(STOVE, [_walks([list(500.0 + pattern)] * 4)])
    other = spot_pattern(STOVE, [_walks([list(500.0 + pattern + rise) for rise in levels])])
    assert _means(other) == pytest.approx(_means(level), abs=1e-3)


def test_the_order_of_the_sessions_does_not_matter():
    chance = np.random.default_rng(4)
    past = [_walks([list(500.0 + 20.0 * chance.standard_normal(6)) for _ in range(3)]) for _ in range(4)]
    assert _means(spot_pattern(STOVE, past)) == pytest.approx(_means(spot_pattern(STOVE, past[::-1])))


@pytest.mark.parametrize(("rounds", "read"), [(3, 6), (12, 2)], ids=["all spots on few rounds", "two spots a round"])
def test_intervals_hold_four_in_five_truths(rounds, read):
    # Stoves drawn from what is believed of any stove, rounds with the scatter assumed. Binomial limits at 98 %.
    from scipy.stats import binom

    chance = np.random.default_rng(1)
    places = np.array([(spot.x, spot.y) for spot in TOPS])
    ratio = np.sqrt(3.0) * np.hypot(*(places[:, None] - places[None]).transpose(2, 0, 1)) / 0.45
    root = np.linalg.cholesky(30.0**2 * (1.0 + ratio) * np.exp(-ratio))
    held = 0
    for _ in range(200):
        truth = root @ chance.standard_normal(len(TOPS))
        log = Log()
        for turn in range(rounds):
            for place in chance.permutation(len(TOPS))[:read]:
                value = 500.0 + truth[place] + 14.0 * chance.standard_normal()
                log.add(20.0 * turn, Kind.READING, TOPS[place].name, f"{value - 273.15:.4f}", "C")
        first = spot_pattern(STOVE, [_session(log)])[0]
        held += first.p10 <= truth[0] - truth.mean() <= first.p90
    low, high = binom.ppf([0.01, 0.99], 200, 0.8)
    assert low <= held <= high


def test_more_rounds_leave_less_doubt_and_a_spot_never_read_keeps_most():
    few, many = (spot_pattern(STOVE, [_walks([[500.0] * 6] * rounds)]) for rounds in (2, 20))
    assert all(_half(more) < _half(less) for more, less in zip(many, few, strict=True))
    left_out = Log()
    for turn in range(20):
        for spot in TOPS[:5]:
            left_out.reads(20.0 * turn, spot.name, 400)
    found = spot_pattern(STOVE, [_session(left_out)])
    assert found[5].readings == 0
    assert _half(found[5]) > 2.0 * max(_half(row) for row in found[:5])


def test_rounds_that_scatter_leave_more_doubt():
    chance = np.random.default_rng(6)
    calm, wild = (
        spot_pattern(STOVE, [_walks([list(500.0 + spread * chance.standard_normal(6)) for _ in range(8)])])
        for spread in (5.0, 30.0)
    )
    assert min(_half(row) for row in wild) > 2.0 * max(_half(row) for row in calm)


def test_readings_that_agree_to_the_last_degree_are_not_believed_exact():
    assert min(_half(row) for row in spot_pattern(STOVE, [_walks([[500.0] * 6] * 4)])) > 1.0


def test_intervals_lie_evenly_about_the_mean():
    for row in spot_pattern(STOVE, sessions(3)):
        assert row.p90 - row.mean == pytest.approx(row.mean - row.p10)


def test_one_slip_hardly_moves_the_pattern():
    right = [[500.0] * 6] * 8
    slip = [*right[:4], [800.0, *[500.0] * 5], *right[5:]]
    moved = spot_pattern(STOVE, [_walks(slip)])[0].mean - spot_pattern(STOVE, [_walks(right)])[0].mean
    assert 0.0 < moved < 0.15 * 300.0 / 8


def _counted(log: Log) -> list[int]:
    return [row.readings for row in spot_pattern(STOVE, [_session(log)])[:2]]


@pytest.mark.parametrize(("minutes", "counted"), [(5.9, [1, 1]), (6.0, [1, 1]), (6.1, [0, 0])])
def test_readings_within_six_minutes_are_one_round(minutes, counted):
    assert _counted(Log().reads(0, TOPS[0].name, 400).reads(minutes, TOPS[1].name, 420)) == counted


def test_a_round_lasts_six_minutes_from_its_first_reading():
    log = Log()
    for minute, spot in ((0, 0), (4, 1), (8, 0), (9, 1)):
        log.reads(minute, TOPS[spot].name, 400)
    assert _counted(log) == [2, 2]
    # The one at 8 min begins a round of its own; alone it would say nothing.
    assert _counted(Log().reads(0, TOPS[0].name, 400).reads(4, TOPS[1].name, 420).reads(8, TOPS[0].name, 400)) == [1, 1]


def test_one_spot_read_twice_is_no_round():
    assert _counted(Log().reads(0, TOPS[0].name, 400).reads(1, TOPS[0].name, 420)) == [0, 0]


def test_rows_that_are_no_reading_of_the_cooktop_are_passed_over():
    log = Log().reads(0, TOPS[0].name, 400).add(0.1, Kind.PAN, TOPS[1].name, "on").reads(0.2, "oven_centre", 300)
    log.add(0.3, Kind.READING, TOPS[0].name, "hot", "F").reads(0.4, TOPS[1].name, 420)
    assert _counted(log) == [1, 1]


def test_readings_after_one_that_cannot_be_still_count():
    log = Log().reads(0, TOPS[0].name, 400).reads(1, TOPS[2].name, 4000).reads(2, TOPS[1].name, 420)
    assert _counted(log) == [1, 1]


def test_readings_that_cannot_be_are_passed_over():
    for value, counted in (("-3.1", 1), ("-3.2", 0), ("726.8", 1), ("726.9", 0)):
        log = Log().reads(0, TOPS[0].name, 400).add(1, Kind.READING, TOPS[1].name, value, "C")
        assert _counted(log) == [counted, counted]


def test_a_reading_taken_back_is_not_counted():
    log = Log().reads(0, TOPS[0].name, 400).reads(1, TOPS[1].name, 420).add(2, Kind.VOID, value="2")
    assert _counted(log) == [0, 0]


def test_sessions_are_not_walked_into_one_another():
    log = Log().reads(0, TOPS[0].name, 400)
    later = Log().reads(1, TOPS[1].name, 400)
    assert [row.readings for row in spot_pattern(STOVE, [_session(log), _session(later)])[:2]] == [0, 0]


def _oven_walks(rounds: list[dict[str, float]]) -> Session:
    """Rounds of the oven [K], one spot after the other, a quarter of a minute apart."""
    log = Log()
    for turn, values in enumerate(rounds):
        for place, (name, value) in enumerate(values.items()):
            log.add(20.0 * turn + 0.25 * place, Kind.READING, name, f"{value - 273.15:.6f}", "C")
    return _session(log)


def test_the_oven_is_taken_against_its_centre():
    walks = [
        {"oven_centre": level, "oven_left": level + 20.0, "oven_right": level - 8.0} for level in range(440, 500, 5)
    ]
    found = {row.spot: row for row in spot_pattern(STOVE, [_oven_walks(walks)], SpotKind.OVEN)}
    assert (found["oven_centre"].mean, _half(found["oven_centre"])) == (pytest.approx(0.0), pytest.approx(0.0))
    assert found["oven_left"].mean == pytest.approx(20.0, abs=2.0)
    assert found["oven_right"].mean == pytest.approx(-8.0, abs=2.0)
    assert _half(found["oven_rear"]) > _half(found["oven_left"])


def test_the_usual_heat_is_that_of_the_middle_walk():
    level = {0: 400.0, 1: 480.0, 2: 500.0}
    walks = [[heat + more for more in (25.0, 15.0, 5.0, -5.0, -15.0, -25.0)] for heat in level.values()]
    pattern = spot_pattern(STOVE, [_walks(walks)])
    assert [row.usual - row.mean for row in pattern] == pytest.approx([480.0] * 6, abs=0.5)
    assert spot_pattern(STOVE, [])[0].usual is None
