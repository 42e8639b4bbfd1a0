"""Which side of the cooktop runs hotter: paired estimates, the two sides always of one round and of one row of plates.

Rounds of one session share its fire, so a session counts once: its mean. Only while there are fewer than three do
rounds count one by one.
"""

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from math import sqrt
from statistics import fmean, stdev

from cookstove_gui.forecast.learning.hot_side import walks
from cookstove_gui.stove.entries import Session, fold
from cookstove_gui.stove.redrawn import SAME_LINE
from cookstove_gui.stove.stove import Spot, SpotKind, Stove

LEAST_SESSIONS = 3  # from which sessions are the sample; judgement
NEAR, FAR = 0.4, 0.6  # shares of the cooktop up to and from which a spot lies on one side
_EIGHT_IN_TEN = 0.9  # the upper end of an interval that holds eight times in ten


@dataclass(frozen=True, slots=True, kw_only=True)
class Paired:
    """How much hotter one side ran than the other [K]; the interval holds eight times in ten, none of one pair."""

    mean: float
    low: float | None
    high: float | None
    rounds: int
    sessions: int

    @property
    def is_told_apart(self) -> bool:
        """Whether the interval leaves out that both run alike."""
        return self.low is not None and self.high is not None and not self.low <= 0.0 <= self.high


@dataclass(frozen=True, slots=True, kw_only=True)
class Sides:
    """Left less right and front less back; none where no round read both."""

    across: Paired | None
    deep: Paired | None


def sides(stove: Stove, sessions: Sequence[Session]) -> Sides:
    """The cooktop's sides by all rounds that read both."""
    across = [_differences(stove, session, lambda spot: (spot.x, spot.y)) for session in sessions]
    deep = [_differences(stove, session, lambda spot: (spot.y, spot.x)) for session in sessions]
    return Sides(across=paired(across), deep=paired(deep))


def paired(differences: Sequence[Sequence[float]]) -> Paired | None:
    """The mean difference with its interval, from the differences of each session's rounds [K]; none without any.

    Source
    ------
    Student's t for paired differences (Student, The probable error of a mean, 1908); checked against scipy's
    `ttest_rel` and statsmodels' `DescrStatsW`.
    """
    told = [list(own) for own in differences if own]
    if not told:
        return None
    sample = [fmean(own) for own in told] if len(told) >= LEAST_SESSIONS else [one for own in told for one in own]
    mean, reach = fmean(sample), None
    if len(sample) > 1:
        from scipy.special import stdtrit

        reach = float(stdtrit(len(sample) - 1, _EIGHT_IN_TEN)) * stdev(sample) / sqrt(len(sample))
    return Paired(
        mean=mean,
        low=None if reach is None else mean - reach,
        high=None if reach is None else mean + reach,
        rounds=sum(len(own) for own in told),
        sessions=len(told),
    )


def _differences(stove: Stove, session: Session, place: Callable[[Spot], tuple[float, float]]) -> list[float]:
    """For each round of a session that tells one: near side less far side, mean over the lines that read both."""
    tops = stove.spots_of(SpotKind.TOP)
    found = []
    for indices, values in walks(fold(session.entries), [spot.name for spot in tops]):
        read: dict[int, list[float]] = {}
        for index, value in zip(indices, values, strict=True):
            read.setdefault(index, []).append(float(value))
        lines: list[tuple[float, tuple[list[float], list[float]]]] = []  # where each lies, its near and its far side
        for index, heats in read.items():
            along, line = place(tops[index])
            if NEAR <= along <= FAR:
                continue
            own = next((one for one in lines if abs(one[0] - line) < SAME_LINE), None)
            if own is None:
                own = (line, ([], []))
                lines.append(own)
            own[1][0 if along < NEAR else 1].append(fmean(heats))
        both = [fmean(near) - fmean(far) for _, (near, far) in lines if near and far]
        if both:
            found.append(fmean(both))
    return found
