"""What every file of this room shares: the type of a quantity and the checks of its range."""

import numpy as np
from numpy.typing import ArrayLike, NDArray

Array = NDArray[np.float64]
Quantity = float | NDArray[np.float64]  # SI; a float for scalars in, an array for arrays in

STANDARD_GRAVITY = 9.80665  # m/s2, CGPM 1901
ZERO_CELSIUS = 273.15  # K
STANDARD_PRESSURE = 101325.0  # Pa


def quantity(values: ArrayLike) -> Quantity:
    """A float if there is one value without a shape, else a float array."""
    result: Quantity = np.asarray(values, dtype=np.float64)[()]
    return result


def within(name: str, values: ArrayLike, low: float, high: float = np.inf) -> Array:
    """The values as a float array, if all lie from `low` to `high`; else ValueError in the argument's name."""
    array = np.asarray(values, dtype=np.float64)
    bad = ~((array >= low) & (array <= high))
    if bad.any():
        raise ValueError(f"{name} must be from {low:g} to {high:g}, got {array[bad].flat[0]:g}")
    return array


def positive(name: str, values: ArrayLike, high: float = np.inf) -> Array:
    """The values as a float array, if all are above zero and at most `high`; else ValueError."""
    array = np.asarray(values, dtype=np.float64)
    bad = ~((array > 0.0) & (array <= high))
    if bad.any():
        raise ValueError(f"{name} must be above 0 and at most {high:g}, got {array[bad].flat[0]:g}")
    return array


def finite(name: str, values: ArrayLike) -> Array:
    """The values as a float array, if none is missing or infinite; else ValueError."""
    array = np.asarray(values, dtype=np.float64)
    if not np.isfinite(array).all():
        raise ValueError(f"{name} must be finite, got {array[~np.isfinite(array)].flat[0]:g}")
    return array
