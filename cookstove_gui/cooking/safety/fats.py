"""Cooking fats and the heat from which they may smoke, from `resources/fats.toml`."""

from dataclasses import dataclass
from functools import cache

from cookstove_gui.resource_files import table
from cookstove_gui.units import ZERO_CELSIUS


@dataclass(frozen=True, slots=True, kw_only=True)
class Fat:
    """One fat or oil."""

    name: str
    smokes_from: float  # K, the lowest that sources give
    smokes_to: float  # K, the highest


@cache
def fats() -> tuple[Fat, ...]:
    """All rows of the file, those that smoke first in front."""
    rows = (
        Fat(
            name=row["name"],
            smokes_from=row["smokes"][0] + ZERO_CELSIUS,
            smokes_to=row["smokes"][1] + ZERO_CELSIUS,
        )
        for row in table("fats.toml")["fat"]
    )
    return tuple(sorted(rows, key=lambda fat: fat.smokes_from))


def fats_that_smoke(pan_heat: float) -> tuple[Fat, ...]:
    """The fats that may smoke in a pan this hot [K]."""
    return tuple(fat for fat in fats() if pan_heat >= fat.smokes_from)


def in_words(smoking: tuple[Fat, ...]) -> str:
    """Their names in half a sentence: “unrefined oil, butter and lard”; “most cooking fats” past three."""
    names = [fat.name for fat in smoking]
    if len(names) > 3:
        return "most cooking fats"
    return names[0] if len(names) == 1 else f"{', '.join(names[:-1])} and {names[-1]}"
