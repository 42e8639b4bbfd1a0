"""The meal as a scheduling problem on a grid of time, solved to the least cost, or to a known distance from it.

Each job is a chain of pieces. A piece begins at some slot, holds one of its resources for so many slots, and the next
piece begins between its least and most length later. Without the resources every job is solved exactly by itself, by
dynamic programming from its end (`chain_of`). Where the best chains together want more of a resource in a slot than
there is, one of the pieces in that slot must not hold it then: each such choice is a branch, whose cost can only be
greater. Branches are opened cheapest first, so that the first without a clash is the best there is: conflict-based
search. A plan without clashes found by placing one job after the other bounds the search from above, and is the answer
where the search is not over within its nodes.

Source
------
Sharon, Stern, Felner and Sturtevant, Conflict-based search for optimal multi-agent pathfinding, Artificial Intelligence
219 (2015) 40-66, with jobs for agents and slots of a resource for places.
"""

import heapq
from collections.abc import Sequence
from dataclasses import dataclass
from itertools import count
from typing import TypeAlias

import numpy as np
from numpy.typing import NDArray

from cookstove_gui.cooking.supper.chains import EQUAL, Chain, Problem, chain_of, cost_of, hold, stacked, used_by
from cookstove_gui.cooking.supper.one_by_one import one_after_the_other

MOST_NODES = 60  # branches opened; judgement, from what a dozen dishes cost


@dataclass(frozen=True, slots=True, kw_only=True)
class Solution:
    """All jobs placed without a clash."""

    chains: tuple[Chain, ...]
    cost: float
    bound: float  # no solution costs less
    proven: bool  # this one costs no more than that


Forbidden: TypeAlias = frozenset[tuple[int, int, int]]  # piece, resource, slot in which the piece may not hold it


def solve(problem: Problem, most_nodes: int = MOST_NODES) -> Solution | None:
    """The cheapest placing of all jobs, or the best found and a bound; None where a job cannot be placed at all."""
    alone = _Alone(problem)
    none: Forbidden = frozenset()
    root = tuple(alone.chain(job, none) for job in range(len(problem.jobs)))
    chains = [chain for chain in root if chain is not None]
    if len(chains) < len(root):
        return None
    best = one_after_the_other(problem, chains)
    order = count()
    start = tuple(none for _ in chains)
    queue = [(sum(chain.cost for chain in chains), 0, next(order), start, tuple(chains), used_by(problem, chains))]
    bound = queue[0][0]
    for _ in range(most_nodes):
        if not queue:
            break
        cost, _, _, forbidden, now, used = heapq.heappop(queue)
        bound = cost
        if best is not None and cost >= cost_of(best) - EQUAL:
            break
        clash = _clash(problem, now, used)
        if clash is None:
            return Solution(chains=now, cost=cost, bound=cost, proven=True)
        resource, slot, members = clash
        for job, piece in members:
            more = forbidden[job] | {(piece, resource, slot)}
            again = alone.chain(job, more)
            if again is None:
                continue
            changed = (*now[:job], again, *now[job + 1 :])
            total = cost - now[job].cost + again.cost
            if best is None or total < cost_of(best) - EQUAL:
                limits, held = (*forbidden[:job], more, *forbidden[job + 1 :]), used.copy()
                hold(held, problem.jobs[job], now[job], -1)
                hold(held, problem.jobs[job], again)
                heapq.heappush(queue, (total, _clashing(problem, held), next(order), limits, changed, held))
    if best is None:
        return None
    bound = min(max(bound, queue[0][0] if queue else np.inf), cost_of(best))
    return Solution(chains=best, cost=cost_of(best), bound=bound, proven=bound >= cost_of(best) - 1e-6)


class _Alone:
    """Each job's cheapest chain by itself, with some slots forbidden to some of its pieces."""

    def __init__(self, problem: Problem) -> None:
        self._problem = problem
        self._costs = [[stacked(piece) for piece in job.pieces] for job in problem.jobs]
        self._known: dict[tuple[int, Forbidden], Chain | None] = {}

    def chain(self, job: int, forbidden: Forbidden) -> Chain | None:
        key = (job, forbidden)
        if key not in self._known:
            self._known[key] = self._found(job, forbidden)
        return self._known[key]

    def _found(self, job: int, forbidden: Forbidden) -> Chain | None:
        costs, pieces = list(self._costs[job]), self._problem.jobs[job].pieces
        for place in {piece for piece, _, _ in forbidden}:
            costs[place] = costs[place].copy()
        for place, resource, slot in forbidden:
            first = np.flatnonzero(pieces[place].frees(self._problem.slots) > slot)
            for row, option in enumerate(pieces[place].options):
                if option.resource == resource:
                    costs[place][row, first[first <= slot]] = np.inf
        return chain_of(self._problem.jobs[job], costs, self._problem.slots)


def _clashing(problem: Problem, used: NDArray[np.intp]) -> int:
    over = used - np.array(problem.capacity, dtype=np.intp)[:, None]
    return int(np.maximum(over, 0).sum())


def _clash(
    problem: Problem, chains: Sequence[Chain], used: NDArray[np.intp]
) -> tuple[int, int, list[tuple[int, int]]] | None:
    """A resource, a slot in which too much of it is held, and by whom (job, piece); None where all fit."""
    over = used > np.array(problem.capacity, dtype=np.intp)[:, None]
    if not over.any():
        return None
    resource = int(over.any(axis=1).argmax())
    first = int(over[resource].argmax())
    length = int(np.append(~over[resource, first:], True).argmax())
    slot = first + length // 2  # the middle of the overlap keeps both from most of it
    members = [
        (place, number)
        for place, (job, chain) in enumerate(zip(problem.jobs, chains, strict=True))
        for number, (piece, placed) in enumerate(zip(job.pieces, chain.pieces, strict=True))
        if piece.options[placed.option].resource == resource
        and placed.begin <= slot < placed.begin + piece.held(placed.begin)
    ]
    return resource, slot, members
