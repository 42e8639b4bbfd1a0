"""Sentences that a cook may say in other words."""

from typing import Any

from cookstove_gui.cooking.fit.bands import band_tables, oven_bands
from cookstove_gui.desk.plan.own.sorts import Blank, Filled, Line, Sort
from cookstove_gui.errors import InputProblem
from cookstove_gui.resource_files import own_table, own_words

LONGEST = 90  # letters: what stands in the heading in one or two lines
_ALONE = {
    "no_readings": "nothing is read yet",
    "working_out": "how the stove stands is being worked out",
    "session_over": "the session is over",
}
_OF_A_BAND = {"prepare": "the oven is on its way to {} heat", "ready": "the oven is at {} heat"}


class Words(Sort):
    """What the heading says at its moments."""

    key, name, one = "words", "Words", "sentence"
    headers = ("said when", "words")
    file, kind = "phrases.toml", ""
    adds = False

    def lines(self) -> tuple[Line, ...]:
        """Every moment, with what is said then."""
        return tuple(
            Line(key=key, cells=(when, own_words(*key.split(".")) or "–"), is_own=key in self.own_keys())
            for key, when in moments()
        )

    def blanks(self) -> tuple[Blank, ...]:
        """The words."""
        return (Blank(key="words", caption="Words", tip="What is said; empty: as the program has it", is_long=True),)

    def words(self, key: str) -> dict[str, str]:
        """What is said at a moment."""
        return {"words": own_words(*key.split(".")) if key else ""}

    def row(self, filled: Filled) -> dict[str, Any]:
        """The words by their key."""
        said, key = filled.said, filled.key
        words = " ".join(said["words"].split())
        if len(words) > LONGEST:
            raise InputProblem(f"These are {len(words)} letters; say it in {LONGEST} at the most.")
        if not words:
            raise InputProblem("Type what is to be said; Forget brings the program's own words back.")
        return {key: words}

    def own_keys(self) -> frozenset[str]:
        """Keys of the moments for which the cook has words."""
        table = own_table(self.file)
        bands = table.get("bands")
        named = bands.items() if isinstance(bands, dict) else ()
        return frozenset(
            [key for key in _ALONE if key in table]
            + [f"bands.{name}.{key}" for name, said in named if isinstance(said, dict) for key in said]
        )


def moments() -> tuple[tuple[str, str], ...]:
    """Key of every moment that has words, and when it is."""
    tables = [band.name for table in band_tables() for band in table.bands]
    bands = [band.name for band in oven_bands() if band.name not in tables]
    of_bands = [(f"bands.{band}.{key}", when.format(band)) for band in bands for key, when in _OF_A_BAND.items()]
    return (*_ALONE.items(), *of_bands)
