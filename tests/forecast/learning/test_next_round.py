"""The round that settles most: what it will leave is worked out right, and no other round leaves less."""

from itertools import combinations

import numpy as np
import pytest

from cookstove_gui.forecast.learning.hot_side import PatternBelief, pattern_belief
from cookstove_gui.forecast.learning.next_round import next_round
from cookstove_gui.stove.entries import Kind
from tests.forecast.learning.test_hot_side import TOPS, _session, _walks
from tests.forecast.logs import STOVE, Log

P90 = 1.2815515655446004  # of the standard normal; scipy.stats.norm.ppf(0.9)


def _belief() -> PatternBelief:
    log = Log()
    for turn in range(3):
        for spot, heat in zip(TOPS[:4], (480.0, 500.0, 520.0, 510.0), strict=True):
            log.add(20.0 * turn, Kind.READING, spot.name, f"{heat - 273.15 + turn}", "C")
    return pattern_belief(STOVE, [_session(log)])


def _left_by(belief: PatternBelief, chosen: tuple[int, ...]) -> float:
    """Mean half interval after a round, by the information form with a nearly flat prior for the round's level."""
    number = len(belief.names)
    wide = np.zeros((number + 1, number + 1))
    wide[:number, :number] = belief.covariance
    wide[number, number] = 1e8
    sees = np.zeros((len(chosen), number + 1))
    sees[np.arange(len(chosen)), list(chosen)] = 1.0
    sees[:, number] = 1.0
    after = np.linalg.inv(np.linalg.inv(wide) + sees.T @ sees / belief.scatter**2)[:number, :number]
    centre = np.eye(number) - belief.against
    return P90 * float(np.mean(np.sqrt(np.diag(centre @ after @ centre.T))))


def test_it_leaves_less_than_any_other_round_by_another_way_of_working_it_out() -> None:
    belief = _belief()
    found = next_round(belief)
    assert found is not None
    left = {chosen: _left_by(belief, chosen) for chosen in combinations(range(len(belief.names)), 3)}
    best = min(left, key=lambda chosen: left[chosen])
    assert set(found.spots) == {belief.names[index] for index in best}
    assert found.after == pytest.approx(left[best], rel=1e-4)
    assert found.after < found.before


def test_spots_never_read_are_among_those_asked_for() -> None:
    found = next_round(_belief())
    assert found is not None
    assert {TOPS[4].name, TOPS[5].name} <= set(found.spots)


def test_the_more_is_known_the_less_a_round_changes() -> None:
    few, many = (
        next_round(pattern_belief(STOVE, [_walks([[500.0 + 10.0 * place for place in range(6)]] * rounds)]))
        for rounds in (1, 30)
    )
    assert few is not None
    assert many is not None
    assert few.before - few.after > 3.0 * (many.before - many.after)


def test_one_spot_has_nothing_to_be_told_against() -> None:
    from dataclasses import replace

    lone = replace(STOVE, spots=(TOPS[0],))
    assert next_round(pattern_belief(lone, [])) is None
