"""Everything a bake's time hangs on besides its recipe, as a quasi-random ensemble of equally likely members.

A member is a row of standard normal numbers, one for each thing in doubt. What is learned of a dish or shown by a probe
moves and narrows those numbers; nothing else changes.
"""

from dataclasses import dataclass
from enum import IntEnum, StrEnum

import numpy as np

from cookstove_gui.cooking.belief import normal_rows
from cookstove_gui.forecast.answers import FloatArray

MEMBERS = 64
_FURTHEST = 3.0  # standard deviations


class Doubt(IntEnum):
    """Places in a member's row."""

    OVEN = 0  # hotter or cooler than the middle of its futures
    SIZE = 1  # thicker or thinner than its weight says
    CONDUCTION = 2
    DRYING = 3  # how well vapour passes its crust
    OPENNESS = 4
    HEAT = 5  # how well the oven passes heat on
    WALLS = 6  # hotter or cooler than the oven's air
    DONE = 7  # the core at which it counts as done
    GAS = 8  # how far it has risen, at the same weight
    CRUST = 9  # how well its crust conducts
    START = 10  # warmer or cooler than said as it went in


class Source(StrEnum):
    """What a cook would call them."""

    OVEN = "oven"
    FOOD = "food"
    SIZE = "size"
    DONE = "done"


SOURCE_OF = {
    Doubt.OVEN: Source.OVEN,
    Doubt.SIZE: Source.SIZE,
    Doubt.CONDUCTION: Source.FOOD,
    Doubt.DRYING: Source.FOOD,
    Doubt.OPENNESS: Source.FOOD,
    Doubt.HEAT: Source.FOOD,
    Doubt.WALLS: Source.FOOD,
    Doubt.DONE: Source.DONE,
    Doubt.GAS: Source.SIZE,
    Doubt.CRUST: Source.FOOD,
    Doubt.START: Source.FOOD,
}
_PASSING = (Doubt.OVEN, Doubt.SIZE, Doubt.GAS, Doubt.START)
LASTING = tuple(doubt for doubt in Doubt if doubt not in _PASSING)  # the same from bake to bake


@dataclass(frozen=True, slots=True, kw_only=True)
class Ensemble:
    """Equally likely members."""

    rows: FloatArray  # (members, doubts) standard normal before anything is learned

    def of(self, doubt: Doubt) -> FloatArray:
        """One doubt's numbers, (members,)."""
        return np.asarray(self.rows[:, doubt], dtype=np.float64)

    def factor(self, doubt: Doubt, log_sd: float) -> FloatArray:
        """Lognormal factors round 1, (members,)."""
        return np.asarray(np.exp(log_sd * self.of(doubt)), dtype=np.float64)


@dataclass(frozen=True, slots=True, kw_only=True)
class Learned:
    """What past bakes of a dish in this oven say of the doubts: mean and covariance of a member's row."""

    mean: FloatArray  # (doubts,)
    covariance: FloatArray  # (doubts, doubts)
    bakes: int = 0


def usual_ensemble(learned: Learned | None = None, members: int = MEMBERS) -> Ensemble:
    """The members before any probe."""
    rows = normal_rows(members, len(Doubt))
    if learned is None:
        return Ensemble(rows=rows)
    spread = np.linalg.cholesky(learned.covariance + 1e-9 * np.eye(len(Doubt)))
    return Ensemble(rows=np.clip(learned.mean + rows @ spread.T, -_FURTHEST, _FURTHEST))


def single() -> Ensemble:
    """The one member in the middle of everything."""
    return Ensemble(rows=np.zeros((1, len(Doubt))))
