"""Loaves and roasts that warm through and dry under an oven that changes: finite volumes, many bodies at once.

Each body is a moist inside, which conducts and never passes boiling, under a crust that grows as water leaves. Heat
comes in through the crust; vapour goes out through skin, crust and the still air outside. The step is implicit, one
tridiagonal solution for all bodies together, so that no step is ever unstable; what cannot be linear, the drying, is
solved for the surface alone.
"""

from dataclasses import dataclass

import numpy as np

from cookstove_gui.physics.drying import Outside, Surface
from cookstove_gui.physics.quantities import STANDARD_PRESSURE, Array, Quantity, positive, within
from cookstove_gui.physics.volumes import Volumes

_IMPLICIT = 0.55  # share of a step's conduction that is taken at its end: a little over half never rings
_SURFACE = 0.65  # the same of what passes the surface, which is stiffer


@dataclass(frozen=True, slots=True, kw_only=True)
class Body:
    """What is warmed; each number may be an array of shape (bodies,)."""

    half_thickness: Quantity  # m; of a wall heated on both faces, radius of a cylinder or sphere
    dimension: Quantity = 1.0  # 1 wall, 2 long cylinder, 3 sphere; others for bricks, see equivalent_body
    conductivity: Quantity | tuple[Array, Array]  # W/(m K); or a table of temperatures [K], rising, and values
    conduction: Quantity = 1.0  # factor on the conductivity
    heat_capacity: Quantity  # J/(m3 K), density times specific heat
    water: Quantity = 0.0  # kg/m3 that can leave; 0: nothing dries, and nothing is held at boiling


@dataclass(frozen=True, slots=True, kw_only=True)
class Exposure:
    """How the oven gives heat to its surface and takes its vapour; each number may be an array of shape (bodies,)."""

    convection_coefficient: Quantity  # W/(m2 K); 5 to 12 in a still oven, common practice
    emissivity: Quantity = 0.0  # of the surface and the oven walls together, 0 to 1
    openness: Quantity = 1.0  # share of the surface by which vapour leaves: 1 all round, less in a tin or a dish
    skin: Quantity = 0.0  # s/m, resistance to vapour before there is any crust: potato 500, meat 0
    crust_diffusivity: Quantity = 1e-5  # m2/s, of vapour through the crust; 2.6e-5 would be still air
    crust_conductivity: Quantity = 0.1  # W/(m K)
    water_activity: float = 1.0  # vapour pressure of what is moist over that of water
    vapour_pressure: float = 2000.0  # Pa, of the water in the oven's air
    pressure: float = STANDARD_PRESSURE  # Pa, sets the boiling point


@dataclass(frozen=True, slots=True, kw_only=True)
class Warming:
    """Course of a warming; the first axis is the instants, then the bodies, if there are many."""

    time: Array  # s, shape (steps + 1,)
    temperature: Array  # K of the moist inside, from the middle to under the crust, shape (steps + 1, ..., nodes)
    mean_temperature: Array  # K over the volume, shape (steps + 1, ...)
    surface: Array  # K outside, shape (steps + 1, ...)
    heat_taken: Array  # J per m2 of surface since the start, shape (steps + 1, ...)
    water_lost: Array  # kg per m2 of surface since the start, shape (steps + 1, ...); falls while steam condenses on it
    crust: Array  # m, shape (steps + 1, ...)

    @property
    def core(self) -> Array:
        """Temperature [K] in the middle, shape (steps + 1, ...)."""
        return self.temperature[..., 0]

    def first(self, instants: int) -> "Warming":
        """Its first instants alone."""
        return Warming(**{name: getattr(self, name)[:instants] for name in self.__slots__})


def warm_through(
    body: Body,
    exposure: Exposure,
    temperature_initial: Quantity,
    temperature_oven: Array,
    time_step: float,
    temperature_walls: Array | None = None,
    nodes: int = 60,
    until: tuple[float, int] | None = None,
) -> Warming:
    """Temperatures inside bodies under an oven that changes.

    Parameters
    ----------
    body : Body
        Shape and properties.
    exposure : Exposure
        Heat and vapour at its surface.
    temperature_initial : float or array, shape (bodies,)
        At the start [K], 230 to 370; what is frozen is warmed as if it were not.
    temperature_oven : array, shape (steps + 1,) or (steps + 1, bodies)
        Air of the oven at the instants 0, time_step, 2 time_step ... [K], 230 to 900.
    time_step : float
        [s], above 0, to 60.
    temperature_walls : array, shape (steps + 1,) or (steps + 1, bodies), optional
        What the surface sees [K], 230 to 900; the oven's air if not given.
    nodes : int
        Places from the middle to under the crust, 5 to 400.
    until : tuple of float and int, optional
        Once every middle has this temperature [K] nothing more is followed, but for so many steps at least.

    Returns
    -------
    Warming
        Course over all instants that were followed.

    Raises
    ------
    ValueError
        If any argument is outside its range.

    Validity
    --------
    One dimension. The crust holds no heat and takes no room from the inside, so it must stay thin: bread and roasts,
    not rusks. Vapour that carries heat inwards through a risen crumb must be in the conductivity
    (`crumb.crumb_conductivity`).
    Fat and juice that drip are not counted among the water lost.

    Notes
    -----
    With 60 nodes and steps of five seconds the middle agrees with the exact series within 0.1 % of the change. Heat is
    conserved to rounding: taken = kept + latent heat of the water lost.

    Source
    ------
    Patankar, Numerical Heat Transfer and Fluid Flow (1980), implicit control volumes; the surface as in `drying.py`;
    checked against the series of `conduction.py`, an energy balance, the wet-bulb temperature and published mass
    losses.
    """
    step = float(positive("time_step", time_step, 60.0))
    oven = within("temperature_oven", temperature_oven, 230.0, 900.0)
    walls = oven if temperature_walls is None else within("temperature_walls", temperature_walls, 230.0, 900.0)
    if oven.ndim not in (1, 2) or len(oven) < 2 or walls.shape != oven.shape:
        raise ValueError("temperature_oven and temperature_walls must be series of the same length, two or more")
    numbers = [value for part in (body, exposure) for value in _numbers(part)] + [temperature_initial, oven[0]]
    shape = np.broadcast_shapes(*(np.shape(value) for value in numbers))
    if len(shape) > 1:
        raise ValueError("bodies must be one number or a series")
    bodies = int(np.prod(shape))
    across = _Conduction(body, bodies, int(within("nodes", nodes, 5, 400)), step)
    outside = Outside(exposure, bodies, across.water_content, step)
    rows = np.empty((len(oven), bodies, across.nodes))
    rows[0] = np.broadcast_to(within("temperature_initial", temperature_initial, 230.0, 370.0), (bodies,))[:, None]
    across.begin(rows[0])
    surface = Surface.at_start(rows[0, :, -1])
    followed = [surface]
    for index in range(1, len(oven)):
        alone, answer = across.step(rows[index - 1])
        heats = (0.5 * (series[index] + series[index - 1]) for series in (oven, walls))
        # the heat that comes in is that of within the step: by its end alone a bake would lag by half a step
        within_step = (1.0 - _SURFACE) * rows[index - 1, :, -1] + _SURFACE * alone[:, -1]
        surface = outside.step(surface, within_step, _SURFACE * answer[:, -1], *heats)
        rows[index] = alone + answer * surface.flux[:, None]
        followed.append(surface)
        if until is not None and index >= until[1] and rows[index, :, 0].min() >= until[0]:
            break
    rows = rows[: len(followed)]
    flux = np.array([one.flux for one in followed])
    lost = np.array([one.lost for one in followed])
    many = (len(followed), *shape)
    return Warming(
        time=np.arange(len(followed), dtype=np.float64) * step,
        temperature=rows.reshape(*many, across.nodes),
        mean_temperature=(rows * across.weight).sum(axis=-1).reshape(many),
        surface=np.array([one.temperature for one in followed]).reshape(many),
        heat_taken=(np.cumsum(flux, axis=0) * step + outside.latent * lost).reshape(many),
        water_lost=lost.reshape(many),
        crust=np.array([one.crust for one in followed]).reshape(many),
    )


class _Conduction:
    """The moist insides: one implicit step of all of them, flattened into one tridiagonal system."""

    def __init__(self, body: Body, bodies: int, nodes: int, time_step: float) -> None:
        from scipy.linalg.lapack import dgtsv

        def each(name: str, values: Quantity, high: float = np.inf) -> Array:
            return np.broadcast_to(positive(name, values, high), (bodies,))

        self._solve = dgtsv
        self.nodes = nodes
        volumes = Volumes(
            half_thickness=each("half_thickness", body.half_thickness, 1.0),
            dimension=each("dimension", within("dimension", body.dimension, 1.0, 4.5)),
            nodes=nodes,
        )
        whole = volumes.volume.sum(axis=-1, keepdims=True)
        self.weight = volumes.volume / whole
        self.water_content = (np.broadcast_to(within("water", body.water, 0.0, 1000.0), (bodies,)), whole[:, 0])
        self._inertia = volumes.volume * each("heat_capacity", body.heat_capacity)[:, None] / time_step  # W/(m2 K)
        self._spread = volumes.spread * each("conduction", body.conduction)[:, None]
        self._table = body.conductivity if isinstance(body.conductivity, tuple) else None
        if self._table is not None:
            positive("conductivity", self._table[1])
        else:
            self._spread = self._spread * each("conductivity", np.asarray(body.conductivity))[:, None]
        self._right = np.zeros((bodies * nodes, 2), order="F")
        self._right[nodes - 1 :: nodes, 1] = 1.0
        self._off = np.zeros((bodies, nodes))
        self._last: Array = np.zeros((bodies, nodes))

    def begin(self, temperature: Array) -> None:
        """From temperatures (bodies, nodes) that have not begun to change."""
        self._last = temperature

    def step(self, before: Array) -> tuple[Array, Array]:
        """Temperatures after a step without heat at the surface, and their answer to a flux; both (bodies, nodes)."""
        across = self._spread
        if self._table is not None:
            # by where it will be in the step: a lag here is a lag of the whole bake
            conducts = np.interp(before + _IMPLICIT * (before - self._last), *self._table)
            self._last = before
            across = across * (2.0 * conducts[:, 1:] * conducts[:, :-1] / (conducts[:, 1:] + conducts[:, :-1]))
        flow = (1.0 - _IMPLICIT) * across * np.diff(before, axis=1)
        across = _IMPLICIT * across
        self._off[:, :-1] = -across
        middle = self._inertia.copy()
        middle[:, :-1] += across
        middle[:, 1:] += across
        right = self._inertia * before
        right[:, :-1] += flow
        right[:, 1:] -= flow
        self._right[:, 0] = right.ravel()
        off = self._off.ravel()[:-1]
        *_, found, _ = self._solve(off, middle.ravel(), off, self._right)
        return found[:, 0].reshape(before.shape), found[:, 1].reshape(before.shape)


def _numbers(part: Body | Exposure) -> list[Quantity]:
    values = (getattr(part, name) for name in part.__slots__)
    return [value for value in values if not isinstance(value, tuple)]
