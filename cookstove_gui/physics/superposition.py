"""What an oven that changes does to a body whose answer to one sudden change is known (constant properties)."""

import numpy as np

from cookstove_gui.physics.quantities import Array, finite, within


def superposed_temperature(step_ratio: Array, temperature_initial: float, temperature_surroundings: Array) -> Array:
    """Temperature somewhere in a body under surroundings that change.

    Parameters
    ----------
    step_ratio : array, shape (instants,)
        Unaccomplished share of the change there after a sudden change of the surroundings (`temperature_ratio`,
        `product_ratio` ...), at evenly spaced instants from 0 on [-], 0 to 1.
    temperature_initial : float
        Of the whole body [K].
    temperature_surroundings : array, shape (instants,)
        At the same instants [K].

    Returns
    -------
    array, shape (instants,)
        [K]

    Raises
    ------
    ValueError
        If the series have different lengths or any value is missing.

    Notes
    -----
    Each change of the surroundings is a small step, counted half at both ends of its interval; the sum is done by a
    fast Fourier transform.

    Source
    ------
    Duhamel's theorem, Carslaw and Jaeger (1959), 1.14; checked against a closed form for a steady rise and against
    `warming.py`.
    """
    ratio = within("step_ratio", step_ratio, -1e-9, 1.0 + 1e-9)
    around = finite("temperature_surroundings", temperature_surroundings)
    if ratio.ndim != 1 or ratio.shape != around.shape:
        raise ValueError("step_ratio and temperature_surroundings must be series of the same length")
    start = float(finite("temperature_initial", temperature_initial))
    done = 1.0 - ratio
    between = np.concatenate([[0.0], 0.5 * (done[1:] + done[:-1])])  # answer to a change half an interval ago
    size = 2 * ratio.size
    changes = np.diff(around, prepend=around[0])
    spread = np.fft.irfft(np.fft.rfft(np.append(between[1:], 0.0), size) * np.fft.rfft(changes, size), size)
    result: Array = start + (around[0] - start) * done + spread[: ratio.size]
    return result
