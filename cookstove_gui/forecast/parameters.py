"""What is uncertain about a stove: each parameter's name, its prior among stoves, and how it varies between firings.

All are kept as logarithms (the oven thermometer's offset excepted), so that every value is positive. The numbers are
common practice for iron ranges of 100 to 250 kg, no source: handbook heat capacities of iron and firebrick times usual
masses, surface losses of 17 to 30 W/m2K on usual areas.
"""

from dataclasses import dataclass

import numpy as np

from cookstove_gui.forecast.answers import FloatArray


@dataclass(frozen=True, slots=True)
class Parameter:
    """One uncertain quantity; spreads are standard deviations of its logarithm."""

    name: str
    typical: float
    between_stoves: float
    between_firings: float


PARAMETERS = (
    Parameter("wood_heat", 11500.0, 0.25, 0.15),  # kJ/kg that reaches the stove and its gas
    Parameter("drying_min", 5.0, 0.40, 0.20),  # min, fresh wood until it flames
    Parameter("flaming_min", 17.0, 0.40, 0.15),  # min, per kg of flaming wood at half-open air
    Parameter("coals_min", 45.0, 0.40, 0.15),  # min, burn-down of coals at half-open air
    Parameter("coals_share", 0.35, 0.25, 0.10),  # share of the heat that coals give
    Parameter("air_power", 0.70, 0.40, 0.10),  # exponent of the air's effect on burning
    Parameter("plate_share", 0.5, 0.20, 0.05),  # share of the heat that goes into the cooktop
    Parameter("walls_share", 0.15, 0.30, 0.08),  # share that goes into the oven's walls
    Parameter("plate_capacity", 26.0, 0.35, 0.03),  # kJ/K
    Parameter("walls_capacity", 22.0, 0.40, 0.03),  # kJ/K
    Parameter("lining_capacity", 70.0, 0.50, 0.03),  # kJ/K, brick and heavy castings
    Parameter("plate_loss", 0.58, 0.30, 0.05),  # kJ/min/K at small excess
    Parameter("walls_loss", 0.22, 0.30, 0.05),  # kJ/min/K
    Parameter("plate_lining", 0.45, 0.50, 0.03),  # kJ/min/K between cooktop and lining
    Parameter("walls_lining", 0.30, 0.60, 0.03),  # kJ/min/K between oven walls and lining
    Parameter("plate_walls", 0.25, 0.50, 0.03),  # kJ/min/K between cooktop and oven walls
    Parameter("bypass_cut", 0.65, 0.18, 0.05),  # share of the walls' heat lost with the bypass open
    Parameter("air_lag", 3.5, 0.40, 0.05),  # min, oven air behind its walls
    Parameter("dial_lag", 3.0, 0.45, 0.05),  # min, oven thermometer behind the air
    Parameter("split_mass", 1.1, 0.35, 0.10),  # kg a split
)
NAMES = tuple(parameter.name for parameter in PARAMETERS)
COUNT = len(PARAMETERS)


def prior_mean() -> FloatArray:
    """Mean (parameters,) of the logarithms among stoves."""
    return np.log(np.array([parameter.typical for parameter in PARAMETERS], dtype=np.float64))


def prior_covariance() -> FloatArray:
    """Covariance (parameters, parameters) of the logarithms among stoves."""
    return np.diag(np.array([parameter.between_stoves for parameter in PARAMETERS], dtype=np.float64) ** 2)


def firing_deviation() -> FloatArray:
    """Standard deviation (parameters,) of the logarithms between firings of one stove."""
    return np.array([parameter.between_firings for parameter in PARAMETERS], dtype=np.float64)
