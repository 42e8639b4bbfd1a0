"""The solver against all placings tried, against integer programming, and where it may not look at everything."""

import numpy as np
import pytest

from cookstove_gui.cooking.supper.chains import Job, Option, Piece, Problem
from cookstove_gui.cooking.supper.solver import solve
from tests.cooking.supper.small_problems import by_integer_programming, by_trying_all, cost_of, drawn
from tests.reference import check

_IN_A_BLOCK = 30


@pytest.mark.parametrize("block", range(int(check("16.2").value) // _IN_A_BLOCK))
def test_it_finds_what_trying_every_placing_finds(block: int) -> None:
    """Problems of two and three jobs."""
    random = np.random.default_rng(400 + block)
    for number in range(_IN_A_BLOCK):
        problem = drawn(random, jobs=2 + number % 2, slots=10, most_pieces=2)
        found = solve(problem, most_nodes=5000)
        best = by_trying_all(problem)
        if found is None:
            assert best == np.inf
            continue
        assert found.proven
        assert found.cost == pytest.approx(best)
        assert cost_of(problem, found) == pytest.approx(best)


@pytest.mark.parametrize("seed", range(int(check("16.3").value)))
def test_it_agrees_with_integer_programming_on_larger_ones(seed: int) -> None:
    problem = drawn(np.random.default_rng(900 + seed), jobs=4, slots=16, most_pieces=3)
    found = solve(problem, most_nodes=20_000)
    assert found is not None
    assert found.proven
    assert found.cost == pytest.approx(by_integer_programming(problem), abs=1e-6)
    assert cost_of(problem, found) == pytest.approx(found.cost)


def test_cut_short_it_keeps_every_rule_and_tells_how_far_the_best_may_be() -> None:
    for seed in range(20):
        problem = drawn(np.random.default_rng(seed), jobs=4, slots=16, most_pieces=3)
        short, whole = solve(problem, most_nodes=1), solve(problem, most_nodes=20_000)
        assert short is not None
        assert whole is not None
        assert short.bound - 1e-9 <= whole.cost <= short.cost + 1e-9
        assert cost_of(problem, short) == pytest.approx(short.cost)
        assert not short.proven or short.cost == pytest.approx(whole.cost)


def _one(length: int, due: int, slots: int = 8) -> Job:
    free = Option(resource=0, cost=np.zeros(slots))
    piece = Piece(options=(free,), holds=length, least=length, most=length, usual=length)
    return Job(pieces=(piece,), ready=np.abs(np.arange(slots + 1) - due).astype(float))


def test_two_that_want_the_same_hands_are_placed_side_by_side() -> None:
    found = solve(Problem(slots=8, capacity=(1,), jobs=(_one(2, 6), _one(2, 6))))
    assert found is not None
    assert sorted(chain.end for chain in found.chains) in ([4, 6], [5, 7], [6, 8])
    assert found.cost == 2.0


def test_what_cannot_be_placed_at_all_has_no_answer() -> None:
    nowhere = Option(resource=None, cost=np.full(8, np.inf))
    job = Job(pieces=(Piece(options=(nowhere,), holds=1, least=1, most=1, usual=1),), ready=np.zeros(9))
    assert solve(Problem(slots=8, capacity=(), jobs=(job,))) is None
