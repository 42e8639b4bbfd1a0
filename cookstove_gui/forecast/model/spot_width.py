"""How wide the windows of a stove's spots must be, learned reading by reading: adaptive conformal inference.

The pattern of one stove strays more than another's. Each reading of the cooktop that falls outside its window widens
the windows to come, each inside narrows them, so that in the long run the share asked for falls inside.
"""

import math

from cookstove_gui.forecast.model.ensemble import Ensemble, expectation
from cookstove_gui.forecast.model.normal import NINETIETH
from cookstove_gui.forecast.model.observation import Reading
from cookstove_gui.stove.stove import Stove

# By how much windows are too narrow, calibrated on invented stoves: of the physics below a spot, of its own deviation.
BASE_WIDTH = 1.35
OWN_WIDTH = 1.2
INSIDE = 0.8  # share of readings that should fall inside their windows
PACE = 0.05  # of the width's logarithm, for each reading
NARROWEST, WIDEST = 0.45, 1.8


def strays(ensemble: Ensemble, stove: Stove, reading: Reading) -> float:
    """How far a reading lies from what the ensemble expects, in half-widths of its 80 % window of width 1."""
    seen, row = expectation(ensemble, stove, reading.spot)
    own = float(row @ ensemble.remainder @ row)
    variance = BASE_WIDTH**2 * float(seen.var()) + OWN_WIDTH**2 * own + reading.variance
    return abs(reading.value - float(seen.mean())) / (NINETIETH * math.sqrt(variance))


def next_width(width: float, strayed: float) -> float:
    """The width after one more reading that lay `strayed` half-widths of width 1 from what was expected.

    Source
    ------
    Gibbs and Candes 2021, adaptive conformal inference, on the logarithm of the width; from memory.
    """
    step = INSIDE if strayed > width else INSIDE - 1.0
    return min(max(width * math.exp(PACE * step), NARROWEST), WIDEST)
