"""Properties of foods from what they consist of, after Choi and Okos; gas in risen doughs as a porosity."""

from dataclasses import dataclass
from typing import Literal

import numpy as np

from cookstove_gui.physics.quantities import ZERO_CELSIUS, Array, Quantity, positive, quantity, within

Component = Literal["water", "protein", "fat", "carbohydrate", "fibre", "ash"]
Mixing = Literal["parallel", "series"]

# Choi and Okos (1986): a + b t + c t^2, t in °C from -40 (water 0) to 150
_SPECIFIC_HEAT: dict[Component, tuple[float, float, float]] = {  # J/(kg K)
    "water": (4176.2, -9.0864e-2, 5.4731e-3),  # the printing nearer to IAPWS; another begins with 4128.9
    "protein": (2008.2, 1.2089, -1.3129e-3),
    "fat": (1984.2, 1.4733, -4.8008e-3),
    "carbohydrate": (1548.8, 1.9625, -5.9399e-3),
    "fibre": (1845.9, 1.8306, -4.6509e-3),
    "ash": (1092.6, 1.8896, -3.6817e-3),
}
_CONDUCTIVITY: dict[Component, tuple[float, float, float]] = {  # W/(m K)
    "water": (0.57109, 1.7625e-3, -6.7036e-6),
    "protein": (0.17881, 1.1958e-3, -2.7178e-6),
    "fat": (0.18071, -2.7604e-4, -1.7749e-7),
    "carbohydrate": (0.20141, 1.3874e-3, -4.3312e-6),
    "fibre": (0.18331, 1.2497e-3, -3.1683e-6),
    "ash": (0.32962, 1.4011e-3, -2.9069e-6),
}
_DENSITY: dict[Component, tuple[float, float, float]] = {  # kg/m3
    "water": (997.18, 3.1439e-3, -3.7574e-3),
    "protein": (1329.9, -0.51840, 0.0),
    "fat": (925.59, -0.41757, 0.0),
    "carbohydrate": (1599.1, -0.31046, 0.0),
    "fibre": (1311.5, -0.36589, 0.0),
    "ash": (2423.8, -0.28063, 0.0),
}
COMPONENTS: tuple[Component, ...] = ("water", "protein", "fat", "carbohydrate", "fibre", "ash")
GAS_CONDUCTIVITY = 0.03  # W/(m K), moist air in the bubbles of a dough without its vapour transport


@dataclass(frozen=True, slots=True, kw_only=True)
class Composition:
    """Mass fractions of a food [-]; they sum to 1 within 0.03, which is what printed tables miss by, and are scaled."""

    water: float
    protein: float = 0.0
    fat: float = 0.0
    carbohydrate: float = 0.0  # without the fibre
    fibre: float = 0.0
    ash: float = 0.0

    def __post_init__(self) -> None:
        fractions = [getattr(self, name) for name in COMPONENTS]
        if not (min(fractions) >= 0.0 and abs(sum(fractions) - 1.0) <= 0.03):
            raise ValueError(f"composition must be fractions that sum to 1 within 0.03, got {sum(fractions):g}")

    def fractions(self) -> Array:
        """Mass fractions in the order of COMPONENTS, shape (6,), summing to 1."""
        values = np.array([getattr(self, name) for name in COMPONENTS])
        result: Array = values / values.sum()
        return result


def specific_heat(composition: Composition, temperature: Quantity) -> Quantity:
    """Specific heat of a thawed food.

    Parameters
    ----------
    composition : Composition
        Mass fractions.
    temperature : float or array, shape (...)
        [K], 273.15 to 423.15.

    Returns
    -------
    float or array, shape (...)
        [J/(kg K)]

    Raises
    ------
    ValueError
        If any temperature is outside the range.

    Validity
    --------
    Nothing freezes, melts or evaporates; starch setting (about 2 to 10 kJ per kg of bread) is left out.

    Source
    ------
    Mass-weighted sum, ASHRAE Handbook - Refrigeration, "Thermal properties of foods"; checked against the rows
    `5.19-*` to `5.28-*` in tests/reference.
    """
    return quantity(np.tensordot(composition.fractions(), _all(_SPECIFIC_HEAT, temperature), axes=1))


def density(composition: Composition, temperature: Quantity, porosity: Quantity = 0.0) -> Quantity:
    """Density of a food.

    Parameters
    ----------
    composition : Composition
        Mass fractions.
    temperature : float or array, shape (...)
        [K], 273.15 to 423.15.
    porosity : float or array, shape (...)
        Share of gas in the volume [-], 0 to 0.95; about 0.1 for kneaded dough, 0.55 to 0.8 for risen white bread
        (common practice, no source).

    Returns
    -------
    float or array, shape (...)
        [kg/m3]

    Raises
    ------
    ValueError
        If any argument is outside its range.

    Source
    ------
    1 / sum(x / rho), ASHRAE Handbook - Refrigeration; checked against the rows `5.19-*` to `5.21-*` in tests/reference.
    """
    gas = within("porosity", porosity, 0.0, 0.95)
    volume = np.tensordot(composition.fractions(), 1.0 / _all(_DENSITY, temperature), axes=1)
    return quantity((1.0 - gas) / volume)


def conductivity(
    composition: Composition, temperature: Quantity, porosity: Quantity = 0.0, mixing: Mixing = "parallel"
) -> Quantity:
    """Thermal conductivity of a food.

    Parameters
    ----------
    composition : Composition
        Mass fractions.
    temperature : float or array, shape (...)
        [K], 273.15 to 423.15.
    porosity : float or array, shape (...)
        Share of gas in the volume [-], 0 to 0.95.
    mixing : "parallel" or "series"
        Heat along or across the components; what is measured lies between, for meat along the fibres near parallel.

    Returns
    -------
    float or array, shape (...)
        [W/(m K)]

    Raises
    ------
    ValueError
        If any argument is outside its range.

    Validity
    --------
    Dry bubbles. In a hot crumb vapour carries more heat than this conduction: `crumb.crumb_conductivity`.

    Notes
    -----
    Volume-weighted sum, or the inverse of the sum of inverses; gas by `porous_conductivity`.

    Source
    ------
    ASHRAE Handbook - Refrigeration, "Thermal properties of foods"; checked against the rows
    `5.19-*` to `5.21-*` in tests/reference.
    """
    gas = within("porosity", porosity, 0.0, 0.95)
    shares = _volume_fractions(composition, temperature)
    parts = _all(_CONDUCTIVITY, temperature)
    if mixing not in ("parallel", "series"):
        raise ValueError(f"mixing must be parallel or series, got {mixing}")
    solid = (shares * parts).sum(axis=0) if mixing == "parallel" else 1.0 / (shares / parts).sum(axis=0)
    return porous_conductivity(solid, GAS_CONDUCTIVITY, gas)


def porous_conductivity(conductivity_solid: Quantity, conductivity_gas: Quantity, porosity: Quantity) -> Quantity:
    """Thermal conductivity of a solid with bubbles.

    Parameters
    ----------
    conductivity_solid, conductivity_gas : float or array, shape (...)
        Of what surrounds the bubbles and of what is in them [W/(m K)], above 0.
    porosity : float or array, shape (...)
        Share of bubbles in the volume [-], 0 to 0.95.

    Returns
    -------
    float or array, shape (...)
        [W/(m K)]

    Raises
    ------
    ValueError
        If any argument is outside its range.

    Source
    ------
    Maxwell (1873) and Eucken (1940), VDI Forschungsheft 353, from memory; checked against the row `5.porous` in
    tests/reference.
    """
    solid = positive("conductivity_solid", conductivity_solid)
    gas = positive("conductivity_gas", conductivity_gas)
    difference = within("porosity", porosity, 0.0, 0.95) * (solid - gas)
    whole = 2.0 * solid + gas
    return quantity(solid * (whole - 2.0 * difference) / (whole + difference))


def _polynomial(
    table: dict[Component, tuple[float, float, float]], component: Component, temperature: Quantity
) -> Array:
    if component not in table:
        raise ValueError(f"component must be one of {', '.join(COMPONENTS)}, got {component}")
    coldest = ZERO_CELSIUS if component == "water" else 233.15
    t = within("temperature", temperature, coldest, 423.15) - ZERO_CELSIUS
    a, b, c = table[component]
    return a + t * (b + t * c)


def _all(table: dict[Component, tuple[float, float, float]], temperature: Quantity) -> Array:
    """One row for each component, shape (6, ...)."""
    return np.stack([_polynomial(table, component, temperature) for component in COMPONENTS])


def _volume_fractions(composition: Composition, temperature: Quantity) -> Array:
    volumes = (composition.fractions() / _all(_DENSITY, temperature).T).T
    result: Array = volumes / volumes.sum(axis=0)
    return result
