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
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from itertools import count
from typing import TypeAlias

import numpy as np
from numpy.lib.stride_tricks import sliding_window_view
from numpy.typing import NDArray

from cookstove_gui.forecast.answers import FloatArray

MOST_NODES = 120  # branches opened; judgement, from what a dozen dishes cost
_PASSES = 4  # over all jobs, each taken out and put back where it now costs least
_EQUAL = 1e-9


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Option:
    """One way to do a piece."""

    resource: int | None  # index of what it holds; none: nothing
    cost: FloatArray  # (slots,) of beginning in each slot; infinite where it cannot


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Piece:
    """One part of a job; lengths in slots."""

    options: tuple[Option, ...]
    holds: int  # slots for which it keeps its resource
    units: int = 1  # of the resource
    least: int  # from its beginning to that of the next
    most: int
    usual: int
    stretch: float = 0.0  # cost of each slot more or less than usual
    names: tuple[str, ...] = ()  # of the options, where they have any
    # (slots,) its one length from each slot on, for which it keeps its resource too, where that hangs on the slot
    takes: NDArray[np.intp] | None = None

    def held(self, begin: int) -> int:
        """Slots for which it keeps its resource if it begins then."""
        return self.holds if self.takes is None else int(self.takes[begin])

    def frees(self, slots: int) -> NDArray[np.intp]:
        """The slot (slots,) from which its resource is free again, for each slot in which it may begin."""
        return np.arange(slots) + (self.holds if self.takes is None else self.takes)


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Job:
    """Pieces in order, and what it costs to be ready at each slot."""

    pieces: tuple[Piece, ...]
    ready: FloatArray  # (slots + 1,) cost of the last piece's end in each slot


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Problem:
    """Jobs that share resources."""

    slots: int
    capacity: tuple[int, ...]  # of each resource
    jobs: tuple[Job, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Placed:
    """Where a piece was put."""

    begin: int  # slot
    option: int


@dataclass(frozen=True, slots=True, kw_only=True)
class Chain:
    """One job placed."""

    pieces: tuple[Placed, ...]
    end: int  # slot in which it is ready
    cost: float


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
    best = _one_after_the_other(problem, chains)
    order = count()
    start = tuple(none for _ in chains)
    queue = [(sum(chain.cost for chain in chains), 0, next(order), start, tuple(chains))]
    bound = queue[0][0]
    for _ in range(most_nodes):
        if not queue:
            break
        cost, _, _, forbidden, now = heapq.heappop(queue)
        bound = cost
        if best is not None and cost >= _cost(best) - _EQUAL:
            break
        clash = _clash(problem, now)
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
            if best is None or total < _cost(best) - _EQUAL:
                limits = (*forbidden[:job], more, *forbidden[job + 1 :])
                heapq.heappush(queue, (total, _clashing(problem, changed), next(order), limits, changed))
    if best is None:
        return None
    bound = min(max(bound, queue[0][0] if queue else np.inf), _cost(best))
    return Solution(chains=best, cost=_cost(best), bound=bound, proven=bound >= _cost(best) - 1e-6)


def chain_of(job: Job, costs: Sequence[FloatArray], slots: int) -> Chain | None:
    """The cheapest chain of one job, given what the options (options, slots) of each piece cost; None without one."""
    then = job.ready
    lengths: list[NDArray[np.intp]] = []
    chosen: list[NDArray[np.intp]] = []
    for piece, cost in zip(reversed(job.pieces), reversed(costs), strict=True):
        width = piece.most - piece.least + 1
        padded = np.concatenate((then[piece.least :], np.full(piece.most, np.inf)))[: slots + width]
        stretched = _stretched(piece)
        windows = sliding_window_view(padded, width)[:slots] + stretched
        length = windows.argmin(axis=1)
        option = cost.argmin(axis=0)
        at = np.arange(slots)
        then = np.append(windows[at, length] + cost[option, at], np.inf)
        lengths.append(length + piece.least)
        chosen.append(option)
    begin = int(then.argmin())
    total = float(then[begin])
    if not np.isfinite(total):
        return None
    placed: list[Placed] = []
    for length, option in zip(reversed(lengths), reversed(chosen), strict=True):
        placed.append(Placed(begin=begin, option=int(option[begin])))
        begin += int(length[begin])
    return Chain(pieces=tuple(placed), end=begin, cost=total)


class _Alone:
    """Each job's cheapest chain by itself, with some slots forbidden to some of its pieces."""

    def __init__(self, problem: Problem) -> None:
        self._problem = problem
        self._costs = [[_stacked(piece) for piece in job.pieces] for job in problem.jobs]
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


def _stretched(piece: Piece) -> FloatArray:
    """Cost (lengths,) or (slots, lengths) of each length from `least` on."""
    lengths = np.arange(piece.least, piece.most + 1)
    if piece.takes is not None:
        return np.where(lengths == piece.takes[:, None], 0.0, np.inf)
    return np.asarray(piece.stretch * np.abs(lengths - piece.usual), dtype=np.float64)


def _stacked(piece: Piece) -> FloatArray:
    return np.array([option.cost for option in piece.options])


def _cost(chains: Iterable[Chain]) -> float:
    return sum(chain.cost for chain in chains)


def _used(problem: Problem, chains: Sequence[Chain | None]) -> NDArray[np.intp]:
    """Units of each resource (resources, slots) that are held."""
    used = np.zeros((len(problem.capacity), problem.slots), dtype=np.intp)
    for job, chain in zip(problem.jobs, chains, strict=True):
        if chain is not None:
            for piece, placed in zip(job.pieces, chain.pieces, strict=True):
                resource = piece.options[placed.option].resource
                if resource is not None:
                    used[resource, placed.begin : placed.begin + piece.held(placed.begin)] += piece.units
    return used


def _clashing(problem: Problem, chains: Sequence[Chain]) -> int:
    over = _used(problem, chains) - np.array(problem.capacity, dtype=np.intp)[:, None]
    return int(np.maximum(over, 0).sum())


def _clash(problem: Problem, chains: Sequence[Chain]) -> tuple[int, int, list[tuple[int, int]]] | None:
    """A resource, a slot in which too much of it is held, and by whom (job, piece); None where all fit."""
    over = _used(problem, chains) > np.array(problem.capacity, dtype=np.intp)[:, None]
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


def _one_after_the_other(problem: Problem, alone: Sequence[Chain]) -> tuple[Chain, ...] | None:
    """A placing without clashes: those first that hold resources longest; then each again where it costs least."""

    def held(place: int) -> int:
        return -sum(piece.holds * piece.units for piece in problem.jobs[place].pieces)

    found: list[tuple[Chain, ...]] = []
    by_need = sorted(range(len(alone)), key=held)
    by_end = sorted(range(len(alone)), key=lambda place: alone[place].pieces[0].begin)
    for order in (by_need, by_end, by_need[::-1]):
        chains: list[Chain | None] = [None] * len(alone)
        for place in order:
            chains[place] = _placed_among(problem, chains, place)
        whole = tuple(chain for chain in chains if chain is not None)
        if len(whole) == len(chains):
            found.append(_improved(problem, whole, order))
    return min(found, key=_cost, default=None)


def _improved(problem: Problem, chains: tuple[Chain, ...], order: Sequence[int]) -> tuple[Chain, ...]:
    for _ in range(_PASSES):
        before = _cost(chains)
        for place in order:
            others = (*chains[:place], None, *chains[place + 1 :])
            again = _placed_among(problem, others, place)
            if again is not None and again.cost < chains[place].cost - _EQUAL:
                chains = (*chains[:place], again, *chains[place + 1 :])
        if _cost(chains) > before - _EQUAL:
            break
    return chains


def _placed_among(problem: Problem, chains: Sequence[Chain | None], place: int) -> Chain | None:
    """One job's cheapest chain beside the others as they are placed."""
    used = _used(problem, chains)
    job = problem.jobs[place]
    costs = []
    for piece in job.pieces:
        cost = _stacked(piece)
        for row, option in enumerate(piece.options):
            if option.resource is not None and piece.holds:
                full = used[option.resource] + piece.units > problem.capacity[option.resource]
                until = np.concatenate(([0], np.cumsum(full)))
                ends = np.minimum(piece.frees(problem.slots), problem.slots)
                cost[row, until[ends] > until[:-1]] = np.inf
        costs.append(cost)
    return chain_of(job, costs, problem.slots)
