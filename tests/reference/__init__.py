"""Values from outside the project, as data: each row says what, how near, where from and how that was verified.

A row is one of three things:

- `function` with `inputs`: the function named (below `cookstove_gui`) must give `value` within `tolerance`;
- `table` with `path`: a shipped table in `resources/` must say `value`, which guards it and verifies nothing;
- `test`: the test named compares with more than one call can, or with open data.

Numbers may be written with a unit ("89.932 °C", "600, 700 hPa"); they are SI where they have none.
"""

import importlib
import re
import tomllib
from dataclasses import dataclass, field
from functools import cache
from pathlib import Path
from typing import Any

import numpy as np

HERE = Path(__file__).resolve().parent
ROOT = HERE.parent.parent

# One of these words is in every row's `verified`, the first three count as verified, the others do not.
VERIFIED = ("computed with", "closed form", "looked up", "published")
UNVERIFIED = ("from memory", "common practice", "no source")

UNITS: dict[str, tuple[float, float]] = {  # SI = number * factor + offset
    "-": (1, 0), "%": (1, 0), "K": (1, 0), "°C": (1, 273.15), "°F": (1 / 1.8, 273.15 - 32 / 1.8), "1/K": (1, 0),
    "Pa": (1, 0), "hPa": (100, 0), "kPa": (1e3, 0), "MPa": (1e6, 0), "inHg": (3386.389, 0), "inH2O": (249.08891, 0),
    "m": (1, 0), "cm": (0.01, 0), "mm": (1e-3, 0), "ft": (0.3048, 0), "µm K": (1e-6, 0), "µm": (1e-6, 0), "m2": (1, 0),
    "kg": (1, 0), "lb": (0.45359237, 0), "s": (1, 0), "min": (60, 0), "h": (3600, 0), "kg/h": (1 / 3600, 0),
    "J": (1, 0), "kJ": (1e3, 0), "W": (1, 0), "kW": (1e3, 0), "W/m2": (1, 0), "W/(m2 K)": (1, 0), "W/(m K)": (1, 0),
    "J/kg": (1, 0), "kJ/kg": (1e3, 0), "MJ/kg": (1e6, 0), "kWh/kg": (3.6e6, 0), "J/(kg K)": (1, 0), "J/K": (1, 0),
    "kJ/(kg K)": (1e3, 0), "kg/m3": (1, 0), "m3/kg": (1, 0), "m2/s": (1, 0), "µm2/s": (1e-12, 0), "mm2/s": (1e-6, 0),
    "W/(m2 sr)": (1, 0), "W/(m2 sr m)": (1, 0), "W s^0.5/(m2 K)": (1, 0),
}  # fmt: skip
_NUMBER = r"[-+]?(?:\d+\.?\d*|\.\d+)(?:[eE][-+]?\d+)?"
_WITH_UNIT = re.compile(rf"({_NUMBER}(?:, {_NUMBER})*) (\S.*)")


@dataclass(frozen=True, kw_only=True)
class Check:
    """One row; `value` is kept as written, `expected()` is it in SI."""

    id: str
    what: str
    file: str
    source: str
    verified: str
    value: Any = None
    tolerance: Any = 0.0
    function: str = ""
    part: str = ""
    inputs: dict[str, Any] = field(default_factory=dict)
    table: str = ""
    path: str = ""
    test: str = ""

    @property
    def is_verified(self) -> bool:
        """Whether the value was seen, computed or derived outside this project, not only remembered."""
        return any(word in self.verified for word in VERIFIED)

    def expected(self) -> Any:
        """The value in SI: a float or an array."""
        return si(self.value)

    def allowed(self) -> Any:
        """How far the answer may be off, in SI; a tolerance in % is a share of the value."""
        if isinstance(self.tolerance, str) and self.tolerance.endswith(" %"):
            return float(self.tolerance[:-2]) / 100 * np.abs(self.expected())
        return si(self.tolerance, difference=True)

    def answer(self) -> Any:
        """What the project says."""
        if self.table:
            return si(_in_table(self.table, self.path))
        module, name = self.function.rsplit(".", 1)
        function = getattr(importlib.import_module(f"cookstove_gui.{module}"), name)
        result = function(**{key: _argument(key, text) for key, text in self.inputs.items()})
        return getattr(result, self.part) if self.part else result


@cache
def checks() -> tuple[Check, ...]:
    """All rows of all files, in order."""
    rows: list[Check] = []
    for path in sorted(HERE.glob("*.toml")):
        content = tomllib.loads(path.read_text(encoding="utf-8"))
        defaults = content.get("defaults", {})
        rows += [Check(**{"file": path.stem, **defaults, **row}) for row in content["check"]]
    return tuple(rows)


def check(id: str) -> Check:
    """The row of that id."""
    return next(row for row in checks() if row.id == id)


def subject(file: str) -> str:
    """What a file is about, in words."""
    return str(tomllib.loads((HERE / f"{file}.toml").read_text(encoding="utf-8"))["subject"])


def si(value: Any, difference: bool = False) -> Any:
    """A number or list, perhaps written with a unit, in SI; other words are left as they are."""
    if isinstance(value, list):
        return np.asarray(value, dtype=float) if all(not isinstance(part, str) for part in value) else value
    match = _WITH_UNIT.fullmatch(value) if isinstance(value, str) else None
    if match is None:
        return value
    factor, offset = UNITS[match[2]]
    numbers = np.array([float(number) for number in match[1].split(", ")]) * factor + (0 if difference else offset)
    return numbers if numbers.size > 1 else float(numbers[0])


def _argument(name: str, value: Any) -> Any:
    if not isinstance(value, dict):
        return np.inf if value == "infinite" else si(value)
    from cookstove_gui.physics import foods, pan

    kinds: dict[str, Any] = {"composition": foods.Composition, "pan": pan.Pan, "kitchen": pan.Kitchen}
    return kinds[name](**{key: si(part) for key, part in value.items()})


def _in_table(name: str, path: str) -> Any:
    """A place in a table of `resources/`: `limits.flue`, `surface[name=enamel].band`."""
    place: Any = tomllib.loads((ROOT / "resources" / name).read_text(encoding="utf-8"))
    for step in re.findall(r"[^.\[\]]+(?:\[[^\]]*\])?", path):
        match = re.fullmatch(r"([^\[]+)\[(.*)\]", step)
        if match is None:
            place = place[step]
            continue
        wanted = dict(part.split("=") for part in re.split(r",(?=\w+=)", match[2]))
        rows = [row for row in place[match[1]] if all(str(row[key]) == text for key, text in wanted.items())]
        (place,) = rows
    return place
