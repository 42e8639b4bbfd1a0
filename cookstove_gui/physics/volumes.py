"""Control volumes of a body that warms in one dimension, and how heat runs among them."""

import numpy as np

from cookstove_gui.physics.quantities import Array

_TERMS = 10  # of the exponential series, to 1e-11 for matrices of norm 0.5


class Volumes:
    """Control volumes for one square metre of surface, their nodes on the middle and on the surface.

    Parameters
    ----------
    half_thickness : float
        Of a wall heated on both faces, radius of a cylinder or sphere [m].
    dimension : float
        1 wall, 2 long cylinder, 3 sphere [-].
    nodes : int
        How many.
    """

    def __init__(self, *, half_thickness: float, dimension: float, nodes: int) -> None:
        self.nodes = nodes
        self.position: Array = np.linspace(0.0, half_thickness, nodes)  # m from the middle
        middles = 0.5 * (self.position[1:] + self.position[:-1])
        faces = np.concatenate([[0.0], middles, [half_thickness]]) / half_thickness
        self.volume: Array = np.diff(faces**dimension) * half_thickness / dimension  # m3/m2
        self._spread = faces[1:-1] ** (dimension - 1.0) / (half_thickness / (nodes - 1))  # face area over distance, 1/m

    def step(self, conductivity: Array, heat_capacity: Array, time_step: float) -> tuple[Array, Array, Array]:
        """Exact step of the conduction, answer to a surface flux over the step, and heat capacity of each volume.

        `conductivity` [W/(m K)] and `heat_capacity` [J/(m3 K)] have shape (nodes,); the step is a matrix (nodes,
        nodes), the answer [K m2/W] and the capacity [J/(m2 K)] are (nodes,).
        """
        capacity = heat_capacity * self.volume
        rates = np.zeros((self.nodes + 1, self.nodes + 1))  # the last column is the flux, which stays as it is
        rates[:-1, :-1] = self._rates(conductivity, capacity)
        rates[-2, -1] = 1.0 / capacity[-1]
        whole = _exponential(rates * time_step)
        return np.ascontiguousarray(whole[:-1, :-1]), np.ascontiguousarray(whole[:-1, -1]), capacity

    def left_in_the_middle(self, biot: float, time: float) -> float:
        """Share of a sudden change that is left in the middle after a time, all properties 1.

        `biot` is that of one metre, h / k [1/m]; `time` is diffusivity times time [m2].
        """
        rates = self._rates(np.ones(self.nodes), self.volume)
        rates[-1, -1] -= biot / self.volume[-1]
        return float(_exponential(rates * time)[0].sum())

    def _rates(self, conductivity: Array, capacity: Array) -> Array:
        """How each volume's temperature changes with all of them [1/s], no heat at the surface."""
        across = 2.0 * conductivity[1:] * conductivity[:-1] / (conductivity[1:] + conductivity[:-1]) * self._spread
        rates = np.zeros((self.nodes, self.nodes))
        inner = np.arange(self.nodes - 1)
        rates[inner, inner + 1] = across / capacity[:-1]
        rates[inner + 1, inner] = across / capacity[1:]
        rates[inner, inner] -= across / capacity[:-1]
        rates[inner + 1, inner + 1] -= across / capacity[1:]
        return rates


def _exponential(matrix: Array) -> Array:
    """Matrix exponential by scaling and squaring.

    An eigenvalue routine would do, but the usual ones start threads for matrices as small as this and then wait for
    each other on a busy computer; products of this size do not.
    """
    halvings = max(0, int(np.ceil(np.log2(max(float(np.abs(matrix).sum(axis=1).max()), 1e-300) / 0.5))))
    small = matrix / 2.0**halvings
    one = np.eye(len(matrix))
    result: Array = one + small / _TERMS
    for order in range(_TERMS - 1, 0, -1):
        result = one + small @ result / order
    for _ in range(halvings):
        result = result @ result
    return result
