"""A placing of all jobs without a clash, good but not proven the best: one job after the other."""

from collections.abc import Sequence

import numpy as np
from numpy.typing import NDArray

from cookstove_gui.cooking.supper.chains import EQUAL, Chain, Job, Problem, chain_of, cost_of, hold, stacked, used_by

_PASSES = 4  # over all jobs, each taken out and put back where it now costs least


def one_after_the_other(problem: Problem, alone: Sequence[Chain]) -> tuple[Chain, ...] | None:
    """A placing without clashes: those first that hold resources longest; then each again where it costs least."""

    def held(place: int) -> int:
        return -sum(piece.holds * piece.units for piece in problem.jobs[place].pieces)

    found: list[tuple[Chain, ...]] = []
    by_need = sorted(range(len(alone)), key=held)
    by_end = sorted(range(len(alone)), key=lambda place: alone[place].pieces[0].begin)
    for order in (by_need, by_end, by_need[::-1]):
        chains: list[Chain | None] = [None] * len(alone)
        used = np.zeros((len(problem.capacity), problem.slots), dtype=np.intp)
        for place in order:
            chains[place] = placed = _placed_among(problem, used, place, alone[place])
            if placed is None:
                break
            hold(used, problem.jobs[place], placed)
        whole = tuple(chain for chain in chains if chain is not None)
        if len(whole) == len(chains):
            found.append(_improved(problem, whole, order, alone))
    return min(found, key=cost_of, default=None)


def _improved(
    problem: Problem, chains: tuple[Chain, ...], order: Sequence[int], alone: Sequence[Chain]
) -> tuple[Chain, ...]:
    used = used_by(problem, chains)
    for _ in range(_PASSES):
        before = cost_of(chains)
        for place in order:
            if chains[place].cost <= alone[place].cost + EQUAL:
                continue  # it could not be better by itself
            hold(used, problem.jobs[place], chains[place], -1)
            again = _placed_among(problem, used, place, alone[place])
            if again is not None and again.cost < chains[place].cost - EQUAL:
                chains = (*chains[:place], again, *chains[place + 1 :])
            hold(used, problem.jobs[place], chains[place])
        if cost_of(chains) > before - EQUAL:
            break
    return chains


def _placed_among(problem: Problem, used: NDArray[np.intp], place: int, alone: Chain) -> Chain | None:
    """One job's cheapest chain beside what the others use (resources, slots); `alone` is its cheapest by itself."""
    job = problem.jobs[place]
    if _fits_in(problem, job, alone, used):
        return alone
    costs = []
    for piece in job.pieces:
        cost = stacked(piece)
        for row, option in enumerate(piece.options):
            if option.resource is not None and piece.holds:
                full = used[option.resource] + piece.units > problem.capacity[option.resource]
                until = np.concatenate(([0], np.cumsum(full)))
                ends = np.minimum(piece.frees(problem.slots), problem.slots)
                cost[row, until[ends] > until[:-1]] = np.inf
        costs.append(cost)
    return chain_of(job, costs, problem.slots)


def _fits_in(problem: Problem, job: Job, chain: Chain, used: NDArray[np.intp]) -> bool:
    """Whether a chain finds every resource free enough as the others use it (resources, slots)."""
    for piece, placed in zip(job.pieces, chain.pieces, strict=True):
        resource, until = piece.options[placed.option].resource, placed.begin + piece.held(placed.begin)
        if (
            resource is not None
            and (used[resource, placed.begin : until] + piece.units > problem.capacity[resource]).any()
        ):
            return False
    return True
