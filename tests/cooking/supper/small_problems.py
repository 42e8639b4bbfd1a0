"""Small invented scheduling problems, and two other ways to solve them: all placings tried, and integer programming."""

from itertools import product

import numpy as np
from scipy.optimize import Bounds, LinearConstraint, milp
from scipy.sparse import lil_matrix

from cookstove_gui.cooking.supper.chains import Job, Option, Piece, Problem
from cookstove_gui.cooking.supper.solver import Solution


def drawn(random: np.random.Generator, jobs: int, slots: int, most_pieces: int = 3) -> Problem:
    """Jobs with costs in whole numbers, so that equal costs are equal."""
    capacity = (1, int(random.integers(1, 3)), 1)
    made = []
    for _ in range(jobs):
        pieces = []
        for _ in range(int(random.integers(1, most_pieces + 1))):
            least = int(random.integers(1, 4))
            usual = least + int(random.integers(0, 2))
            most = usual + int(random.integers(0, 3))
            options = tuple(
                Option(resource=int(one) if one < 3 else None, cost=_cost(random, slots))
                for one in random.choice(4, size=int(random.integers(1, 3)), replace=False)
            )
            pieces.append(
                Piece(
                    options=options, holds=least, units=1, least=least, most=most, usual=usual,
                    stretch=float(random.integers(0, 3)),
                    takes=random.integers(least, most + 1, slots) if random.random() < 0.3 else None,
                )
            )  # fmt: skip
        due = int(random.integers(slots // 2, slots))
        late = np.maximum(np.arange(slots + 1) - due, 0) * 7.0 + np.maximum(due - np.arange(slots + 1), 0)
        made.append(Job(pieces=tuple(pieces), ready=late))
    return Problem(slots=slots, capacity=capacity, jobs=tuple(made))


def _cost(random: np.random.Generator, slots: int) -> np.ndarray:
    cost = random.integers(0, 6, slots).astype(float)
    cost[random.random(slots) < 0.15] = np.inf
    return cost


def _held(piece: Piece, begin: int) -> int:
    return piece.holds if piece.takes is None else int(piece.takes[begin])


def _cost_of_length(piece: Piece, begin: int, length: int) -> float:
    if piece.takes is not None:
        return 0.0 if piece.takes[begin] == length else np.inf
    return piece.stretch * abs(length - piece.usual)


def cost_of(problem: Problem, found: Solution) -> float:
    """Worked out from the definition, with every rule checked; infinite where one is broken."""
    total = 0.0
    used = np.zeros((len(problem.capacity), problem.slots), dtype=int)
    for job, chain in zip(problem.jobs, found.chains, strict=True):
        begins = [placed.begin for placed in chain.pieces] + [chain.end]
        for number, (piece, placed) in enumerate(zip(job.pieces, chain.pieces, strict=True)):
            length = begins[number + 1] - begins[number]
            if not piece.least <= length <= piece.most:
                return np.inf
            option = piece.options[placed.option]
            total += option.cost[placed.begin] + _cost_of_length(piece, placed.begin, length)
            if option.resource is not None:
                used[option.resource, placed.begin : placed.begin + _held(piece, placed.begin)] += piece.units
        total += job.ready[chain.end]
    return total if (used <= np.array(problem.capacity)[:, None]).all() else np.inf


def by_trying_all(problem: Problem) -> float:
    """The least cost of all placings; infinite where there is none."""
    every = [_all_chains(job, problem.slots) for job in problem.jobs]
    return _try(problem, every, np.zeros((len(problem.capacity), problem.slots), dtype=int), 0)


def _try(problem: Problem, every: list, used: np.ndarray, job: int) -> float:
    if job == len(every):
        return 0.0
    best = np.inf
    limit = np.array(problem.capacity)[:, None]
    for cost, held in every[job]:
        if cost >= best:
            break
        now = used + held
        if (now <= limit).all():
            best = min(best, cost + _try(problem, every, now, job + 1))
    return best


def _all_chains(job: Job, slots: int) -> list:
    found = []
    spans = [range(piece.least, piece.most + 1) for piece in job.pieces]
    choices = [range(len(piece.options)) for piece in job.pieces]
    for start, lengths, chosen in product(range(slots), product(*spans), product(*choices)):
        if start + sum(lengths) > slots:
            continue
        cost, at, held = 0.0, start, np.zeros((3, slots), dtype=int)
        for piece, length, row in zip(job.pieces, lengths, chosen, strict=True):
            option = piece.options[row]
            cost += option.cost[at] + _cost_of_length(piece, at, length)
            if option.resource is not None:
                held[option.resource, at : at + _held(piece, at)] += piece.units
            at += length
        cost += job.ready[at]
        if np.isfinite(cost):
            found.append((cost, held))
    return sorted(found, key=lambda one: one[0])


def by_integer_programming(problem: Problem) -> float:
    """The least cost by HiGHS: a variable of 0 or 1 for each piece's beginning, option and length."""
    columns = []  # job, piece, option, begin, length, cost
    for place, job in enumerate(problem.jobs):
        for number, piece in enumerate(job.pieces):
            for row, option in enumerate(piece.options):
                for begin in range(problem.slots):
                    for length in range(piece.least, piece.most + 1):
                        if begin + length > problem.slots or not np.isfinite(option.cost[begin]):
                            continue
                        cost = option.cost[begin] + _cost_of_length(piece, begin, length)
                        if not np.isfinite(cost):
                            continue
                        if number == len(job.pieces) - 1:
                            cost += job.ready[begin + length]
                        columns.append((place, number, row, begin, length, cost))
    rows, low, high = [], [], []
    for place, job in enumerate(problem.jobs):
        for number in range(len(job.pieces)):
            rows.append([float(one[:2] == (place, number)) for one in columns])
            low.append(1.0), high.append(1.0)
            if number:
                for slot in range(problem.slots + 1):  # one ends in the slot where the next begins
                    ends = [float(one[:2] == (place, number - 1) and one[3] + one[4] == slot) for one in columns]
                    begins = [float(one[:2] == (place, number) and one[3] == slot) for one in columns]
                    rows.append([end - begin for end, begin in zip(ends, begins, strict=True)])
                    low.append(0.0), high.append(0.0)
    for resource, limit in enumerate(problem.capacity):
        for slot in range(problem.slots):
            rows.append(
                [
                    float(
                        (piece := problem.jobs[one[0]].pieces[one[1]]).options[one[2]].resource == resource
                        and one[3] <= slot < one[3] + _held(piece, one[3])
                    )
                    * piece.units
                    for one in columns
                ]
            )
            low.append(0.0), high.append(float(limit))
    if not columns:
        return np.inf
    answer = milp(
        np.array([one[5] for one in columns]), integrality=np.ones(len(columns)), bounds=Bounds(0, 1),
        constraints=LinearConstraint(lil_matrix(np.array(rows)).tocsr(), low, high),
    )  # fmt: skip
    return float(answer.fun) if answer.success else np.inf
