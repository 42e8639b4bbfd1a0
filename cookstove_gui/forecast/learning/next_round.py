"""The few readings, taken in one round, that would tell most about the hot side."""

from dataclasses import dataclass
from itertools import combinations

import numpy as np

from cookstove_gui.forecast.answers import FloatArray
from cookstove_gui.forecast.learning.hot_side import PatternBelief
from cookstove_gui.forecast.model.normal import NINETIETH

READINGS = 3  # a round that nobody puts off
_MOST_TRIED = 14  # spots, the least known, of which rounds are made; of larger cooktops there are too many rounds


@dataclass(frozen=True, slots=True, kw_only=True)
class NextRound:
    """Spots to read one after the other, and how sure each difference is before and after [K], mean over the spots."""

    spots: tuple[str, ...]
    before: float
    after: float


def next_round(belief: PatternBelief, readings: int = READINGS) -> NextRound | None:
    """The round of so many readings after which the differences are surest, of all there are; none below two spots.

    Notes
    -----
    How sure a Gaussian belief will be does not depend on what is read, so each round is worked out as it will stand.
    """
    number = len(belief.names)
    if number < 2:
        return None
    doubtful = np.argsort(-belief.told(belief.covariance), kind="stable")[:_MOST_TRIED]
    rounds = list(combinations(sorted(doubtful.tolist()), min(readings, number)))
    after = [_reach(belief, _after(belief, chosen)) for chosen in rounds]
    best = int(np.argmin(after))
    return NextRound(
        spots=tuple(belief.names[index] for index in rounds[best]),
        before=_reach(belief, belief.covariance),
        after=after[best],
    )


def _after(belief: PatternBelief, chosen: tuple[int, ...]) -> FloatArray:
    """The covariance after one round of these spots, whose common level is not known."""
    covariance, number = belief.covariance, len(chosen)
    level = np.eye(number) - np.full((number, number), 1.0 / number)
    basis = np.linalg.qr(level)[0][:, : number - 1].T  # (readings - 1, readings): what is left without the level
    sees = basis @ np.eye(len(belief.names))[list(chosen)]
    spread = sees @ covariance @ sees.T + belief.scatter**2 * np.eye(number - 1)
    gain = covariance @ sees.T @ np.linalg.inv(spread)
    return np.asarray(covariance - gain @ sees @ covariance)


def _reach(belief: PatternBelief, covariance: FloatArray) -> float:
    return NINETIETH * float(np.mean(belief.told(covariance)))
