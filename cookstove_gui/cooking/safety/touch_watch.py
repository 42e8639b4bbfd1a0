"""How soon a hot surface burns, and how far a wall's rise is from what heater standards bear.

Cautions only: nothing here calls a surface safe or a distance enough.
"""

from dataclasses import dataclass
from functools import cache
from math import exp, log

import numpy as np

from cookstove_gui.errors import InputProblem
from cookstove_gui.physics.touch import contact_temperature, effusivity, share_of_rise_limit
from cookstove_gui.resource_files import table
from cookstove_gui.units import ZERO_CELSIUS

NEAR_LIMIT = 0.75  # share of a limit from which a wall is watched; common practice, no source
GUARD_DECIDES = "The stove's manual and local code say what guard it needs."
_TIMES = ((1.5, "a second"), (15.0, "some seconds"), (90.0, "a minute"), (1200.0, "some minutes"), (1e9, "some hours"))


@dataclass(frozen=True, slots=True, kw_only=True)
class Material:
    """What a hand meets."""

    name: str
    contact_times: tuple[float, ...]  # s
    thresholds: tuple[float, ...]  # K
    effusivity: float  # W s^0.5/(m2 K)


@dataclass(frozen=True, slots=True, kw_only=True)
class TouchAnswer:
    """How soon a surface burns skin that rests on it."""

    material: str
    seconds: float | None  # about; 0 where less than a second does; None below the burn tables, which is no promise
    skin: float  # K that skin takes on at the moment of touch
    words: str  # the caution, ending with who decides


@dataclass(frozen=True, slots=True, kw_only=True)
class RiseAnswer:
    """A wall's rise above the room against one limit of heater standards."""

    limit_name: str
    limit: float  # K
    rise: float  # K
    share: float  # of the limit
    words: str  # the caution, ending with who decides
    source: str


@cache
def materials() -> tuple[Material, ...]:
    """All rows of `resources/touch.toml`."""
    return tuple(
        Material(
            name=row["name"],
            contact_times=tuple(float(time) for time in row["contact_times"]),
            thresholds=tuple(float(celsius) + ZERO_CELSIUS for celsius in row["thresholds"]),
            effusivity=float(effusivity(row["conductivity"], row["density"], row["specific_heat"])),
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


def touch_answer(surface: float, material: Material) -> TouchAnswer:
    """How soon a surface [K] of a material burns skin that rests on it."""
    seconds = seconds_to_burn(surface, material)
    skin = float(contact_temperature(surface, material.effusivity))
    if seconds is None:
        words = "Below what the burn tables speak of; children, the old and anyone who cannot pull away burn sooner."
    else:
        words = f"Skin that rests on it burns within {next(text for limit, text in _TIMES if seconds <= limit)}."
    return TouchAnswer(
        material=material.name,
        seconds=seconds,
        skin=skin,
        words=f"{words} {GUARD_DECIDES}",
    )


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


def clearance_decides() -> str:
    """Who decides on walls and floors: the sentence that ends every word about them."""
    return str(table("touch.toml")["words"]["decides"])


def rise_answers(wall: float, room: float) -> tuple[RiseAnswer, ...]:
    """A wall or floor [K] near the stove against the room [K], by each limit; the strictest last.

    Raises
    ------
    InputProblem
        If either is no wall's or room's temperature.
    """
    if not (230.0 <= room <= 330.0 and 230.0 <= wall <= 590.0):
        raise InputProblem("That is no wall's or room's temperature; mend the reading or its unit.")
    decides = clearance_decides()
    found = []
    for row in table("touch.toml")["rise"]:
        share = float(share_of_rise_limit(wall, room, row["limit"]))
        if share >= 1.0:
            words = "It is as hot as heater standards bear in their tests: let the fire go down and keep watching."
        elif share >= NEAR_LIMIT:
            words = "It nears what heater standards bear in their tests: keep reading it."
        else:
            words = "It is below what heater standards bear in their tests, which permits nothing."
        found.append(
            RiseAnswer(
                limit_name=row["name"],
                limit=float(row["limit"]),
                rise=wall - room,
                share=share,
                words=f"{words} {decides}",
                source=row["source"],
            )
        )
    return tuple(sorted(found, key=lambda answer: -answer.limit))
