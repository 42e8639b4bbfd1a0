"""What is uncertain about a stove: each parameter's name, its prior among stoves, and how it varies between firings.

All are kept as logarithms (the oven thermometer's offset excepted), so that every value is positive. The numbers are
common practice for iron ranges of 100 to 250 kg, no source: handbook heat capacities of iron and firebrick times usual
masses, surface losses of 17 to 30 W/m2K on usual areas. Those of the fire and its gas were moved toward what explains
the design stoves of two unlike invented worlds, within what common practice says a usual fire does.
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
    Parameter("wood_heat", 15500.0, 0.15, 0.12),  # kJ/kg set free, the drying of the wood taken off
    Parameter("drying_min", 2.0, 0.60, 0.20),  # min, fresh wood until it flames
    Parameter("flaming_min", 19.0, 0.40, 0.15),  # min, per kg of flaming wood at half-open air
    Parameter("burn_power", 0.45, 0.25, 0.05),  # exponent of the flaming wood's mass in its burning
    Parameter("coals_min", 42.0, 0.40, 0.15),  # min, burn-down of coals at half-open air
    Parameter("coals_share", 0.36, 0.25, 0.10),  # share of the heat that coals give
    Parameter("air_power", 0.75, 0.40, 0.10),  # exponent of the air's effect on burning
    Parameter("radiant_share", 0.44, 0.30, 0.05),  # share of the heat that flames and coals radiate
    Parameter("radiant_plate", 0.60, 0.25, 0.05),  # share of that which falls on the cooktop, the rest on brick
    Parameter("gas_stream", 1.05, 0.40, 0.08),  # kJ/min/K, heat capacity of the gas with the air wide open
    Parameter("air_leak", 0.22, 0.40, 0.08),  # share of the gas that flows with the air shut
    Parameter("plate_gas", 0.85, 0.40, 0.05),  # kJ/min/K between gas and cooktop with the air wide open
    Parameter("walls_gas", 0.55, 0.40, 0.08),  # kJ/min/K between gas and oven walls, the same
    Parameter("plate_capacity", 28.0, 0.35, 0.03),  # kJ/K
    Parameter("walls_capacity", 22.0, 0.40, 0.03),  # kJ/K
    Parameter("lining_capacity", 70.0, 0.50, 0.03),  # kJ/K, brick and heavy castings
    Parameter("plate_loss", 0.70, 0.30, 0.05),  # kJ/min/K at small excess
    Parameter("walls_loss", 0.21, 0.35, 0.05),  # kJ/min/K
    Parameter("plate_lining", 0.35, 0.50, 0.03),  # kJ/min/K between cooktop and lining
    Parameter("walls_lining", 0.25, 0.60, 0.03),  # kJ/min/K between oven walls and lining
    Parameter("plate_walls", 0.23, 0.50, 0.03),  # kJ/min/K between cooktop and oven walls
    Parameter("bypass_cut", 0.65, 0.18, 0.05),  # share of the gas that goes past the oven with the bypass open
    Parameter("air_lag", 2.8, 0.50, 0.05),  # min, oven air behind its walls
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
