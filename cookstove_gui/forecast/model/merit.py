"""How far the oven's futures lean toward each plain forecaster, from what has held in this session and on this stove.

By lead, the shares are those that would have foretold best, drawn toward the ones that any stove begins with: a ridge
regression of what the physics missed on how far the plain forecasters stood from it. MODEL.md has the equations.
"""

from dataclasses import dataclass, field
from typing import Any

import numpy as np

from cookstove_gui.forecast.answers import FloatArray
from cookstove_gui.forecast.model.plain import Plain

LEADS = ((8.0, 21.0), (21.0, 42.0), (42.0, 75.0))  # min from a saying to the reading that proves it, by bin
LEAD_MIDDLES = (15.0, 30.0, 60.0)  # min ahead at which a bin's shares hold
START = ((0.3, 0.18, 0.04), (0.0, 0.0, 0.0), (0.3, 0.3, 0.2))  # share of each forecaster at LEAD_MIDDLES, at first
FIRM = (20.0, 40.0, 20.0)  # readings' worth of trust in that, by forecaster
MOST_SHARE = 0.8  # of all of them together: the physics is never left out
FULL_FROM = 10.0  # min after its last reading from which a plain forecaster takes its share
DONE_BY = 120.0  # min after it by which it takes none
KEPT_SESSION = 0.4  # of what one session proved, that the next one begins with
KEPT_BEFORE = 0.7  # of what was kept before it

_SHAPE = (len(LEADS), len(Plain))


@dataclass(frozen=True, slots=True, eq=False)
class Merit:
    """Sums over what was proved, in units of the foretold variance."""

    apart: FloatArray = field(default_factory=lambda: np.zeros((*_SHAPE, len(Plain))))  # products of the distances
    towards: FloatArray = field(default_factory=lambda: np.zeros(_SHAPE))  # products of distance and miss

    def plus(self, other: "Merit", weight: float = 1.0) -> "Merit":
        """Both together, the other one by its weight."""
        return Merit(self.apart + weight * other.apart, self.towards + weight * other.towards)

    def times(self, weight: float) -> "Merit":
        """The same, believed less or more."""
        return Merit(weight * self.apart, weight * self.towards)

    def after(self, session: "Merit") -> "Merit":
        """What is kept of a stove after one more session."""
        return self.times(KEPT_BEFORE).plus(session, KEPT_SESSION)

    def to_json(self) -> dict[str, Any]:
        """As plain numbers."""
        return {"apart": self.apart.tolist(), "towards": self.towards.tolist()}

    @staticmethod
    def from_json(table: dict[str, Any]) -> "Merit":
        """From what `to_json` gave."""
        return Merit(np.asarray(table["apart"], dtype=np.float64), np.asarray(table["towards"], dtype=np.float64))


def shares(merit: Merit) -> FloatArray:
    """Share (leads, forecasters) of each plain forecaster; the rest is the physics'."""
    firm = np.diag(FIRM)
    start = np.array(START).T
    found = np.linalg.solve(merit.apart + firm, (merit.towards + start @ firm)[..., None])[..., 0]
    found = np.maximum(found, 0.0)
    together = found.sum(axis=1, keepdims=True)
    return np.asarray(found * np.minimum(1.0, MOST_SHARE / np.maximum(together, MOST_SHARE)), dtype=np.float64)


def shares_at(found: FloatArray, minutes: FloatArray) -> FloatArray:
    """Shares (forecasters, times) so many minutes after the reading that the plain forecasters go on from."""
    at = (0.0, FULL_FROM, *LEAD_MIDDLES, DONE_BY)
    ends = np.zeros((1, found.shape[1]))
    knots = np.vstack([ends, found[:1], found, ends])
    return np.array([np.interp(minutes, at, knot) for knot in knots.T])
