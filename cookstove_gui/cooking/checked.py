"""Checked values of a row that a cook wrote: what is wrong is said with where it stands."""

import re
from collections.abc import Iterable, Mapping
from typing import Any

from cookstove_gui.errors import InputProblem
from cookstove_gui.units import kelvin, tidy

LONGEST_MIN = 24.0 * 60.0  # min, of one part or task
_KEY = re.compile(r"[a-z0-9][a-z0-9_]*")


def key_for(name: str, taken: Iterable[str], otherwise: str = "dish") -> str:
    """A key for something of that name that no other one has."""
    plain = re.sub(r"[^a-z0-9]+", "_", name.casefold()).strip("_") or otherwise
    known = set(taken)
    return next(key for key in (plain, *(f"{plain}_{number}" for number in range(2, 10_000))) if key not in known)


def key_in(row: Mapping[str, Any], what: str, here: str) -> str:
    """The row's key; `what` is what it is the key of."""
    key = row.get("key", "")
    if not isinstance(key, str) or not _KEY.fullmatch(key):
        raise InputProblem(f"{here}: “{key}” is not a {what}'s key; write small letters, digits and _ only.")
    return key


def only(row: Mapping[str, Any], known: Iterable[str], here: str) -> None:
    """Refuse a field that means nothing."""
    strange = next((name for name in row if name not in set(known)), None)
    if strange is not None:
        raise InputProblem(f"{here}: “{strange}” is not known here; use {', '.join(sorted(known))}.")


def text(row: Mapping[str, Any], name: str, otherwise: str, here: str) -> str:
    """Words."""
    value = row.get(name, otherwise)
    if not isinstance(value, str):
        raise InputProblem(f"{here}: {name} is a text; put it in quotation marks.")
    return value.strip()


def flag(row: Mapping[str, Any], name: str, otherwise: bool, here: str) -> bool:
    """Yes or no."""
    value = row.get(name, otherwise)
    if not isinstance(value, bool):
        raise InputProblem(f"{here}: {name} is true or false.")
    return value


def number(row: Mapping[str, Any], name: str, here: str) -> float:
    """A number."""
    value = row[name]
    if isinstance(value, bool) or not isinstance(value, int | float):
        raise InputProblem(f"{here}: {name} is a number.")
    return float(value)


def between(row: Mapping[str, Any], name: str, otherwise: float | None, ends: tuple[float, float], here: str) -> float:
    """A number from one end to the other; without `otherwise` it must be there."""
    if name not in row:
        if otherwise is None:
            raise InputProblem(f"{here}: {name} is missing.")
        return otherwise
    value = number(row, name, here)
    if not ends[0] <= value <= ends[1]:
        raise InputProblem(f"{here}: {name} is {tidy(value, 3)}; write {tidy(ends[0], 3)} to {tidy(ends[1], 3)}.")
    return value


def minutes(row: Mapping[str, Any], name: str, otherwise: float | None, here: str) -> float:
    """Minutes, up to a day."""
    if name not in row:
        if otherwise is None:
            raise InputProblem(f"{here}: say how many {name} it takes.")
        return otherwise
    value = number(row, name, here)
    if not 0.0 <= value <= LONGEST_MIN:
        raise InputProblem(f"{here}: {name} is {tidy(value)}; write 0 to {tidy(LONGEST_MIN)} minutes.")
    return value


def heat_band(row: Mapping[str, Any], name: str, ends: tuple[float, float], here: str) -> tuple[float, float]:
    """Two temperatures [K], written in °F between `ends`, the lower first."""
    found = row.get(name)
    if not (isinstance(found, list) and len(found) == 2 and all(isinstance(end, int | float) for end in found)):
        raise InputProblem(f"{here}: write the {name} as two numbers in °F, such as [375, 425].")
    low, high = (float(end) for end in found)
    if not ends[0] <= low < high <= ends[1]:
        raise InputProblem(
            f"{here}: the {name} {tidy(low)} to {tidy(high)} °F isn't from a lower to a higher heat between "
            f"{tidy(ends[0])} and {tidy(ends[1])} °F."
        )
    return kelvin(low, "F"), kelvin(high, "F")
