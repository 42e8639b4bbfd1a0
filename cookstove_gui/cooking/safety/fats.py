"""Cooking fats and the heat from which they may smoke, from `resources/fats.toml`."""

from dataclasses import dataclass
from functools import cache

from cookstove_gui.resource_files import table
from cookstove_gui.units import ZERO_CELSIUS


@dataclass(frozen=True, slots=True, kw_only=True)
class Fat:
    """One fat or oil."""

    name: str
    words: tuple[frozenset[str], ...]  # a note that holds all words of one of these speaks of it
    smokes_from: float  # K, the lowest that sources give
    smokes_to: float  # K, the highest


@cache
def fats() -> tuple[Fat, ...]:
    """All rows of the file, those that smoke first in front."""
    rows = (
        Fat(
            name=row["name"],
            words=tuple(frozenset(words.split()) for words in row["noted_as"]),
            smokes_from=row["smokes"][0] + ZERO_CELSIUS,
            smokes_to=row["smokes"][1] + ZERO_CELSIUS,
        )
        for row in table("fats.toml")["fat"]
    )
    return tuple(sorted(rows, key=lambda fat: fat.smokes_from))


def fats_named(words: frozenset[str]) -> tuple[Fat, ...]:
    """The fats that the words of a note speak of: of “clarified butter” only that, though butter is in it."""
    matched = [(fat, noted) for fat in fats() for noted in fat.words if noted <= words]
    return tuple(fat for fat, noted in matched if not any(noted < other for _, other in matched))


def in_words(smoking: tuple[Fat, ...]) -> str:
    """Their names in half a sentence: “unrefined oil, butter and lard”; “most cooking fats” past three."""
    names = [fat.name for fat in smoking]
    if len(names) > 3:
        return "most cooking fats"
    return names[0] if len(names) == 1 else f"{', '.join(names[:-1])} and {names[-1]}"
