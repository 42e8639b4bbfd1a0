"""A stove's character: what its past firings taught, as a small record that can be kept and computed again."""

from dataclasses import dataclass, field, replace
from typing import Any

import numpy as np

from cookstove_gui.errors import InputProblem
from cookstove_gui.forecast.answers import ARRIVAL_MISSED, FloatArray
from cookstove_gui.forecast.model import parameters
from cookstove_gui.forecast.model.habits import Habits
from cookstove_gui.forecast.model.merit import Merit
from cookstove_gui.forecast.model.plain import Rise
from cookstove_gui.forecast.model.spots import lasting_covariance, lasting_mean
from cookstove_gui.stove.stove import Stove, with_spots_named

VERSION = 7
RISES = 12  # past sessions whose oven is kept
CORRECTION_MINUTES = (0.0, 15.0, 30.0, 60.0, 120.0, 180.0)
# At CORRECTION_MINUTES: what the model leaves out makes its near futures too sure, found on invented stoves.
WIDTH_BEFORE = (1.3, 1.42, 1.23, 1.17, 1.17, 1.17)  # the band has not been reached yet
WIDTH_AFTER = (1.3, 1.27, 1.28, 1.33, 1.33, 1.33)


@dataclass(frozen=True, slots=True, kw_only=True)
class Corrections:
    """What hindsight does to the oven's futures: a factor of their width at each of CORRECTION_MINUTES."""

    width: tuple[float, ...] = (1.0,) * len(CORRECTION_MINUTES)


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Character:
    """What is believed about one stove before its next firing."""

    version: int = VERSION
    firings: int = 0  # sessions it was learned from
    mean: FloatArray = field(default_factory=parameters.prior_mean)  # (parameters,) logarithms
    covariance: FloatArray = field(default_factory=parameters.prior_covariance)
    spots: tuple[str, ...] = ()
    spot_share: FloatArray = field(default_factory=lambda: np.zeros(0))  # (spots,) lasting share of the excess
    spot_covariance: FloatArray = field(default_factory=lambda: np.zeros((0, 0)))
    spot_width: float = 1.0  # factor of the spots' windows that readings have asked for
    habits: Habits = field(default_factory=Habits)
    corrections: Corrections = field(default_factory=Corrections)
    merit: Merit = field(default_factory=Merit)  # of the plain forecasters beside the physics
    rises: tuple[Rise, ...] = ()  # the oven in the latest past sessions, oldest first
    # Share of the futures' arrivals that a window leaves out, before and after the band was first reached.
    arrival_missed: tuple[float, float] = ARRIVAL_MISSED

    @staticmethod
    def generic(stove: Stove) -> "Character":
        """What is believed about a stove of this kind that was never seen."""
        return Character(
            spots=tuple(spot.name for spot in stove.spots),
            spot_share=lasting_mean(stove.spots, stove.firebox),
            spot_covariance=lasting_covariance(stove.spots),
        )

    def for_stove(self, stove: Stove) -> "Character":
        """The same with exactly this stove's spots, in its order; spots never seen get the generic prior."""
        names = tuple(spot.name for spot in stove.spots)
        if names == self.spots:
            return self
        generic = Character.generic(with_spots_named(stove, ()))
        share, covariance = generic.spot_share.copy(), generic.spot_covariance.copy()
        place = {name: index for index, name in enumerate(self.spots)}
        new = [index for index, name in enumerate(names) if name in place]
        old = [place[names[index]] for index in new]
        fresh = [index for index in range(len(names)) if index not in new]
        share[new] = self.spot_share[old]
        covariance[np.ix_(new, new)] = self.spot_covariance[np.ix_(old, old)]
        covariance[np.ix_(new, fresh)] = 0.0
        covariance[np.ix_(fresh, new)] = 0.0
        return replace(self, spots=names, spot_share=share, spot_covariance=covariance)

    def to_json(self) -> dict[str, Any]:
        """As a plain dict of numbers, texts and lists."""
        return {
            "version": self.version,
            "firings": self.firings,
            "parameters": list(parameters.NAMES),
            "mean": self.mean.tolist(),
            "covariance": self.covariance.tolist(),
            "spots": list(self.spots),
            "spot_share": self.spot_share.tolist(),
            "spot_covariance": self.spot_covariance.tolist(),
            "spot_width": self.spot_width,
            "habits": self.habits.to_json(),
            "width": list(self.corrections.width),
            "merit": self.merit.to_json(),
            "arrival_missed": list(self.arrival_missed),
            "rises": [rise.to_json() for rise in self.rises],
        }

    @staticmethod
    def from_json(table: dict[str, Any]) -> "Character":
        """From what `to_json` gave; raises InputProblem when another version of the program wrote it."""
        if table.get("version") != VERSION or table.get("parameters") != list(parameters.NAMES):
            raise InputProblem(
                "This stove's learned character is of another version; learn it again from its sessions."
            )
        return Character(
            firings=int(table["firings"]),
            mean=np.asarray(table["mean"], dtype=np.float64),
            covariance=np.asarray(table["covariance"], dtype=np.float64),
            spots=tuple(table["spots"]),
            spot_share=np.asarray(table["spot_share"], dtype=np.float64),
            spot_covariance=np.asarray(table["spot_covariance"], dtype=np.float64).reshape(len(table["spots"]), -1),
            spot_width=float(table["spot_width"]),
            habits=Habits.from_json(table["habits"]),
            corrections=Corrections(width=tuple(table["width"])),
            merit=Merit.from_json(table["merit"]),
            arrival_missed=(float(table["arrival_missed"][0]), float(table["arrival_missed"][1])),
            rises=tuple(Rise.from_json(rise) for rise in table["rises"]),
        )
