"""Sentences of recipes with what is to be found in each, and the comparison with what is found.

`python -m tests.cooking.supper.sentences held_out` prints the score of a half and every sentence that goes wrong.
"""

import tomllib
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from cookstove_gui.cooking.supper.recipe.finds import HeatFound, HeatOf, SentenceFound
from cookstove_gui.cooking.supper.recipe.sentences import read_sentences
from cookstove_gui.units import degrees

HERE = Path(__file__).parent
FIELDS = ("oven", "core", "other", "minutes", "each", "vessels", "acts")


@dataclass(frozen=True)
class Compared:
    """One sentence: what was wanted and what was found, by field."""

    text: str
    wanted: dict[str, list[Any]]
    found: dict[str, list[Any]]

    @property
    def wrong(self) -> list[str]:
        return [field for field in FIELDS if self.wanted[field] != self.found[field]]


def compared(half: str) -> list[Compared]:
    """Every sentence of a half, compared."""
    rows = tomllib.loads((HERE / f"{half}.toml").read_text("utf-8"))["sentence"]
    return [
        Compared(row["text"], {field: row.get(field, []) for field in FIELDS}, _found(read_sentences(row["text"])))
        for row in rows
    ]


def _found(sentences: tuple[SentenceFound, ...]) -> dict[str, list[Any]]:
    heats = [heat for one in sentences for heat in one.heats]
    times = [time for one in sentences for time in one.minutes]
    return {
        "oven": [_heat(heat) for heat in heats if heat.of is HeatOf.OVEN],
        "core": [_heat(heat) for heat in heats if heat.of is HeatOf.CORE],
        "other": [_heat(heat) for heat in heats if heat.of is HeatOf.OTHER],
        "minutes": [[round(time.shortest), round(time.longest)] for time in times if not time.each],
        "each": [[round(time.shortest), round(time.longest)] for time in times if time.each],
        "vessels": [vessel.name for one in sentences for vessel in one.vessels],
        "acts": [act.act for one in sentences for act in one.acts],
    }


def _heat(heat: HeatFound) -> Any:
    if heat.name:
        return heat.name
    assert heat.low is not None
    assert heat.high is not None
    return [round(degrees(heat.low, "F")), round(degrees(heat.high, "F"))]
