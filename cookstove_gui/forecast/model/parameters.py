"""What is uncertain about a stove: each parameter's name, its prior among stoves, and how it varies between firings.

All are kept as logarithms, so that every value is positive. MODEL.md says where each number comes from: mostly common
practice for iron ranges of 100 to 250 kg, some moved toward what explains invented stoves.
"""

from dataclasses import dataclass

import numpy as np

from cookstove_gui.forecast.answers import FloatArray
from cookstove_gui.physics.firewood import heating_value_net
from cookstove_gui.stove.entries import USUAL_SPLIT


@dataclass(frozen=True, slots=True)
class Parameter:
    """One uncertain quantity; spreads are standard deviations of its logarithm."""

    name: str
    unit: str
    typical: float
    between_stoves: float
    between_firings: float


USUAL_WOOD = 18.7e6  # J/kg, net heating value of dry wood
USUAL_MOISTURE = 15.0  # % of the whole mass, of wood called dry
_WOOD_HEAT = float(heating_value_net(USUAL_WOOD, USUAL_MOISTURE)) / 1e3

PARAMETERS = (
    Parameter("wood_heat", "kJ/kg", _WOOD_HEAT, 0.15, 0.12),  # heat set free, the drying of the wood taken off
    Parameter("drying_min", "min", 2.0, 0.60, 0.20),  # fresh wood until it flames, in a warm firebox
    Parameter("flaming_min", "min", 19.0, 0.40, 0.15),  # of flaming wood at the usual air, at 0.85 kg
    Parameter("burn_power", "-", 0.45, 0.25, 0.05),  # exponent of the flaming wood's mass in its burning
    Parameter("coals_min", "min", 42.0, 0.40, 0.15),  # burn-down of coals at the usual air
    Parameter("coals_share", "-", 0.36, 0.25, 0.10),  # share of the heat that coals give
    Parameter("air_power", "-", 0.75, 0.40, 0.10),  # exponent of the air's effect on burning
    Parameter("radiant_share", "-", 0.44, 0.30, 0.05),  # share of the heat that flames and coals radiate
    Parameter("radiant_plate", "-", 0.60, 0.25, 0.05),  # share of that which falls on the cooktop, the rest on brick
    Parameter("gas_stream", "kJ/(min K)", 1.05, 0.40, 0.08),  # heat capacity rate of the gas with the air wide open
    Parameter("air_leak", "-", 0.22, 0.40, 0.08),  # share of the gas that flows with the air shut
    Parameter("plate_gas", "kJ/(min K)", 0.85, 0.40, 0.05),  # between gas and cooktop with the air wide open
    Parameter("walls_gas", "kJ/(min K)", 0.55, 0.40, 0.08),  # between gas and oven walls, the same
    Parameter("plate_capacity", "kJ/K", 28.0, 0.35, 0.03),  # cooktop
    Parameter("walls_capacity", "kJ/K", 22.0, 0.40, 0.03),  # oven walls
    Parameter("lining_capacity", "kJ/K", 70.0, 0.50, 0.03),  # firebrick and heavy castings
    Parameter("plate_loss", "kJ/(min K)", 0.70, 0.30, 0.05),  # to the room at small excess
    Parameter("walls_loss", "kJ/(min K)", 0.21, 0.35, 0.05),  # to the room at small excess
    Parameter("plate_lining", "kJ/(min K)", 0.35, 0.50, 0.03),  # between cooktop and lining
    Parameter("walls_lining", "kJ/(min K)", 0.25, 0.60, 0.03),  # between oven walls and lining
    Parameter("plate_walls", "kJ/(min K)", 0.23, 0.50, 0.03),  # between cooktop and oven walls
    Parameter("bypass_cut", "-", 0.65, 0.18, 0.05),  # share of the gas that goes past the oven with the bypass open
    Parameter("air_lag", "min", 2.8, 0.50, 0.05),  # oven air behind its walls
    Parameter("dial_lag", "min", 3.0, 0.45, 0.05),  # oven thermometer behind the air
    Parameter("split_mass", "kg", USUAL_SPLIT, 0.35, 0.10),  # a split
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
