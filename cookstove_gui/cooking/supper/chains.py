"""A meal as jobs that are chains of pieces on a grid of time, and the cheapest chain of one job by itself."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass

import numpy as np
from numpy.lib.stride_tricks import sliding_window_view
from numpy.typing import NDArray

from cookstove_gui.forecast.answers import FloatArray

EQUAL = 1e-9  # by which two costs may differ and be called the same


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


def _stretched(piece: Piece) -> FloatArray:
    """Cost (lengths,) or (slots, lengths) of each length from `least` on."""
    lengths = np.arange(piece.least, piece.most + 1)
    if piece.takes is not None:
        return np.where(lengths == piece.takes[:, None], 0.0, np.inf)
    return np.asarray(piece.stretch * np.abs(lengths - piece.usual), dtype=np.float64)


def stacked(piece: Piece) -> FloatArray:
    return np.array([option.cost for option in piece.options])


def cost_of(chains: Iterable[Chain]) -> float:
    return sum(chain.cost for chain in chains)


def used_by(problem: Problem, chains: Sequence[Chain]) -> NDArray[np.intp]:
    """Units of each resource (resources, slots) that are held."""
    used = np.zeros((len(problem.capacity), problem.slots), dtype=np.intp)
    for job, chain in zip(problem.jobs, chains, strict=True):
        hold(used, job, chain)
    return used


def hold(used: NDArray[np.intp], job: Job, chain: Chain, times: int = 1) -> None:
    """Adds what one chain holds to what is `used` (resources, slots); -1 `times` takes it out again."""
    for piece, placed in zip(job.pieces, chain.pieces, strict=True):
        resource = piece.options[placed.option].resource
        if resource is not None:
            used[resource, placed.begin : placed.begin + piece.held(placed.begin)] += times * piece.units
