"""Control volumes of a body that warms in one dimension, and how heat runs among them."""

import numpy as np

from cookstove_gui.physics.quantities import Array, Quantity

_TERMS = 10  # of the exponential series, to 1e-11 for matrices of norm 0.5


class Volumes:
    """Control volumes for one square metre of surface, their nodes on the middle and on the surface.

    Parameters
    ----------
    half_thickness : float or array, shape (...)
        Of a wall heated on both faces, radius of a cylinder or sphere [m].
    dimension : float or array, shape (...)
        1 wall, 2 long cylinder, 3 sphere [-].
    nodes : int
        How many.
    """

    def __init__(self, *, half_thickness: Quantity, dimension: Quantity, nodes: int) -> None:
        half, power = np.asarray(half_thickness)[..., None], np.asarray(dimension)[..., None]
        self.nodes = nodes
        places = np.linspace(0.0, 1.0, nodes)
        middles = 0.5 * (places[1:] + places[:-1])
        faces = np.concatenate([[0.0], middles, [1.0]])
        self.position: Array = places * half  # m from the middle, (..., nodes)
        self.volume: Array = np.diff(faces**power, axis=-1) * half / power  # m3/m2, (..., nodes)
        self.spread: Array = middles ** (power - 1.0) * (nodes - 1) / half  # face area over distance, 1/m

    def left_in_the_middle(self, biot: float, time: float) -> float:
        """Share of a sudden change that is left in the middle of one body after a time, all properties 1.

        `biot` is that of one metre, h / k [1/m]; `time` is diffusivity times time [m2].
        """
        rates = np.zeros((self.nodes, self.nodes))
        inner = np.arange(self.nodes - 1)
        rates[inner, inner + 1] = self.spread / self.volume[:-1]
        rates[inner + 1, inner] = self.spread / self.volume[1:]
        rates[inner, inner] -= self.spread / self.volume[:-1]
        rates[inner + 1, inner + 1] -= self.spread / self.volume[1:]
        rates[-1, -1] -= biot / self.volume[-1]
        return float(_exponential(rates * time)[0].sum())


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
