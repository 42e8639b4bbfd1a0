"""Course of a pan of water over time, on iron and beside an oven that it cools: no heat is lost between them."""

from dataclasses import dataclass

import numpy as np

from cookstove_gui.physics.pan import Kitchen, Pan, heat_capacity_with_water, loss_areas, loss_fluxes
from cookstove_gui.physics.quantities import Array, Quantity, positive, within
from cookstove_gui.physics.water import boiling_temperature, heat_of_vaporisation

_LEVELS = 100  # of the table of what a pan loses, from freezing to boiling


@dataclass(frozen=True, slots=True, kw_only=True)
class Cooktop:
    """What feeds the pans: iron that the fire warms and that a pan cools, and the oven that comes down with it.

    The conductances say how much more heat fire and room leave to the iron for each kelvin that it is drawn down.
    """

    conductance: Quantity  # W/K, of the cooktop
    heat_capacity: Quantity  # J/K, of the iron that is drawn down
    to_oven: Quantity = 0.0  # W/K, between cooktop and oven walls
    oven_conductance: Quantity = 1.0  # W/K, of the oven walls
    oven_capacity: Quantity = 1.0  # J/K


@dataclass(frozen=True, slots=True, kw_only=True)
class PanCourse:
    """Course of a pan on a spot whose heat changes; first axis the instants, shapes (steps + 1, ...)."""

    time: Array  # s, shape (steps + 1,)
    temperature: Array  # K, of the water
    boiled_away: Array  # kg since the start, by boiling and by drying
    drawn_down: Array  # K by which it has cooled the cooktop
    oven_drawn_down: Array  # K by which it has cooled the oven's walls
    heat_taken: Array  # J out of the cooktop since the start


def pan_course(
    pan: Pan,
    temperature_initial: Quantity,
    temperature_spot: Array,
    time_step: float,
    kitchen: Kitchen,
    cooktop: Cooktop | None = None,
) -> PanCourse:
    """Course of a pan on a spot whose heat changes.

    Parameters
    ----------
    pan : Pan
        Shape (...) or single numbers.
    temperature_initial : float or array, shape (...)
        [K], 273.15 to the boiling point.
    temperature_spot : array, shape (steps + 1,) or (steps + 1, ...)
        Without the pan, at the instants 0, time_step, 2 time_step ... [K], 230 to 1200.
    time_step : float
        [s], above 0, to 60.
    kitchen : Kitchen
        Air round it.
    cooktop : Cooktop, optional
        What it draws its heat from; a spot that no pan cools if left out.

    Returns
    -------
    PanCourse
        At boiling all surplus heat makes steam, until the water is gone; then the pan is taken off.

    Raises
    ------
    ValueError
        If any argument is outside its range.

    Validity
    --------
    The water lost on the way to the boil is not taken off what must be warmed. What has boiled dry keeps its last
    temperature and draws no more heat: look at when the water is gone, not at how hot the pan gets then.

    Notes
    -----
    Heun's method for the water, whose specific heat is taken midway to boiling. Cooktop and oven are drawn down by D
    and O: C dD/dt = heat taken - G D - K (D - O), C' dO/dt = K (D - O) - G' O, solved exactly under a heat that holds
    over the step. So heat taken = what the fire gives up for it + what the iron gave; it is in water, steam and room.

    Source
    ------
    First law for a well-stirred pan; tested against `time_to_heat`, closed forms and the balance, closed to 0.1 %.
    """
    spot = within("temperature_spot", temperature_spot, 230.0, 1200.0)
    step = float(positive("time_step", time_step, 60.0))
    boiling = float(boiling_temperature(kitchen.pressure))
    latent = float(heat_of_vaporisation(boiling))
    start = within("temperature_initial", temperature_initial, 273.15, boiling)
    iron = None if cooktop is None else _Iron(cooktop, step)
    sizes = (np.shape(getattr(pan, name)) for name in Pan.__slots__)
    shape = np.broadcast_shapes(start.shape, spot.shape[1:], () if iron is None else iron.shape, *sizes)
    temperature, gone, taken = (np.zeros((len(spot), *shape)) for _ in range(3))
    down, oven = (np.zeros((len(spot), *shape)) for _ in range(2))
    temperature[0] = start
    levels: Array = np.linspace(273.15, boiling, _LEVELS + 1)
    curves = loss_fluxes(levels, kitchen)
    rises, to_level = np.diff(curves), _LEVELS / (boiling - 273.15)
    side_area, top_area, glowing_area, wet_area = loss_areas(pan)
    path = positive("conductance", pan.conductance) * positive("base_area", pan.base_area)
    capacity = heat_capacity_with_water(pan, start + 0.5 * (boiling - start), kitchen)
    water, to_kelvin = within("water", pan.water, 0.05), step / capacity

    def loss_and_drying(heat: Array) -> tuple[Array, Array]:
        place = (heat - 273.15) * to_level
        below = np.minimum(place.astype(np.intp), _LEVELS - 1)
        side, top, glow, drying = curves.take(below, axis=1) + (place - below) * rises.take(below, axis=1)
        wet_loss = wet_area * drying
        return side_area * side + top_area * top + glowing_area * glow + wet_loss, np.maximum(wet_loss, 0.0)

    for index in range(len(spot) - 1):
        now, left = temperature[index], water - gone[index]
        plate, plate_then = spot[index] - down[index], spot[index + 1] - down[index]
        lost, drying = loss_and_drying(now)
        guess = np.minimum(np.maximum(now + to_kelvin * (path * (plate - now) - lost), 273.15), boiling)
        lost_then, drying_then = loss_and_drying(guess)
        passed = 0.5 * path * (plate - now + plate_then - guess)
        free = now + to_kelvin * (passed - 0.5 * (lost + lost_then))
        steam = 0.5 * step * (drying + drying_then) + np.maximum(free - boiling, 0.0) * capacity
        missing = np.maximum(steam - left * latent, 0.0)  # heat for which there is no water left to make steam of
        is_dry = left <= 0.0
        passed = np.where(is_dry, 0.0, passed - missing / step)
        temperature[index + 1] = np.where(is_dry, now, np.minimum(np.maximum(free, 273.15), boiling))
        gone[index + 1] = gone[index] + np.where(is_dry, 0.0, np.minimum(steam / latent, left))
        taken[index + 1] = taken[index] + passed * step
        if iron is not None:
            down[index + 1], oven[index + 1] = iron.after(down[index], oven[index], passed)
    time = np.arange(len(spot), dtype=np.float64) * step
    return PanCourse(
        time=time, temperature=temperature, boiled_away=gone, drawn_down=down, oven_drawn_down=oven, heat_taken=taken
    )


class _Iron:
    """Cooktop and oven walls under a heat that holds over a step: two coupled first-order equations, exactly."""

    def __init__(self, cooktop: Cooktop, step: float) -> None:
        top, oven = positive("conductance", cooktop.conductance), positive("oven_conductance", cooktop.oven_conductance)
        between = within("to_oven", cooktop.to_oven, 0.0)
        capacity, walls = (
            positive("heat_capacity", cooktop.heat_capacity), positive("oven_capacity", cooktop.oven_capacity)
        )  # fmt: skip
        whole = (top + between) * (oven + between) - between**2
        self._per_watt = (oven + between) / whole, between / whole  # K/W in the end
        mean = 0.5 * ((top + between) / capacity + (oven + between) / walls)
        apart = 0.5 * ((top + between) / capacity - (oven + between) / walls)
        split = np.maximum(np.sqrt(apart**2 + between**2 / (capacity * walls)), 1e-12)
        even, odd = np.exp(-mean * step) * np.cosh(split * step), np.exp(-mean * step) * np.sinh(split * step) / split
        self._kept = even - odd * apart, even + odd * apart
        self._crossed = odd * between / capacity, odd * between / walls
        self.shape = np.shape(self._kept[0])

    def after(self, down: Array, oven: Array, passed: Array) -> tuple[Array, Array]:
        """Drawn down [K] after a step in which so much heat [W] was taken from the cooktop."""
        end, oven_end = passed * self._per_watt[0], passed * self._per_watt[1]
        gap, oven_gap = down - end, oven - oven_end
        return (
            end + self._kept[0] * gap + self._crossed[0] * oven_gap,
            oven_end + self._crossed[1] * gap + self._kept[1] * oven_gap,
        )
