"""How soon a hot surface burns, and how near a wall comes to what heaters are tested to.

Cautions only: nothing here calls a surface safe or a distance enough.
"""

from dataclasses import dataclass
from functools import cache
from math import exp, log

import numpy as np

from cookstove_gui.errors import InputProblem
from cookstove_gui.physics.touch import share_of_rise_limit
from cookstove_gui.resource_files import table
from cookstove_gui.units import ZERO_CELSIUS


@dataclass(frozen=True, slots=True, kw_only=True)
class Material:
    """What a hand meets."""

    name: str
    contact_times: tuple[float, ...]  # s
    thresholds: tuple[float, ...]  # K


@dataclass(frozen=True, slots=True, kw_only=True)
class WallAnswer:
    """A wall against one limit: of its rise above the room, or of its heat whatever the room's."""

    limit_name: str
    limit: float  # K, of a rise a difference
    of_rise: bool
    wall: float  # K
    share: float  # of the way from the room's heat to the limit
    source: str


@cache
def materials() -> tuple[Material, ...]:
    """All rows of `resources/touch.toml`."""
    return tuple(
        Material(
            name=row["name"],
            contact_times=tuple(float(time) for time in row["contact_times"]),
            thresholds=tuple(float(celsius) + ZERO_CELSIUS for celsius in row["thresholds"]),
        )
        for row in table("touch.toml")["material"]
    )


def material_of(name: str) -> Material:
    """The material of that name.

    Raises
    ------
    InputProblem
        If there is none.
    """
    found = next((material for material in materials() if material.name == name), None)
    if found is None:
        names = ", ".join(material.name for material in materials())
        raise InputProblem(f"“{name}” is not a known material to touch; choose one of {names}.")
    return found


def seconds_to_burn(surface: float, material: Material) -> float | None:
    """Time of contact [s] from which a surface [K] is thought to burn; 0 under a second, None below the tables.

    Between entries straight over the logarithm of time.
    """
    if surface >= material.thresholds[0]:
        return 0.0
    if surface < material.thresholds[-1]:
        return None
    falling = np.array(material.thresholds[::-1])
    logs = np.array([log(time) for time in material.contact_times[::-1]])
    return exp(float(np.interp(surface, falling, logs)))


def wall_answers(wall: float, room: float) -> tuple[WallAnswer, ...]:
    """A wall or floor [K] near the stove against the room [K], by each limit; the nearest to being reached last.

    Raises
    ------
    InputProblem
        If either is no wall's or room's temperature.
    """
    if not (230.0 <= room <= 330.0 and 230.0 <= wall <= 590.0):
        raise InputProblem("A wall or a room is never that warm or cold; correct the reading or its unit.")
    rows = [(row, True, float(row["limit"])) for row in table("touch.toml")["rise"]]
    rows += [(row, False, float(row["limit"]) + ZERO_CELSIUS) for row in table("touch.toml")["absolute"]]
    found = [
        WallAnswer(
            limit_name=row["name"],
            limit=limit,
            of_rise=of_rise,
            wall=wall,
            share=float(share_of_rise_limit(wall, room, limit if of_rise else limit - room)),
            source=row["source"],
        )
        for row, of_rise, limit in rows
    ]
    return tuple(sorted(found, key=lambda answer: answer.share))
