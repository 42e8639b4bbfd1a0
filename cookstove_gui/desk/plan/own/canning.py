"""Published times for a water bath, to read: quoted row by row, so there is nothing in them to add or change."""

from typing import Any

from cookstove_gui.cooking.safety.food_safety import water_bath_heights, water_bath_words, water_baths
from cookstove_gui.desk.plan.own.sorts import Blank, Filled, Line, Sort
from cookstove_gui.errors import InputProblem


class Canning(Sort):
    """Times in a boiling-water canner."""

    key, name, one = "canning", "Canning", "published time"
    headers = ("in boiling water [min]", "pack", "jar", *water_bath_heights())
    file, kind = "food_safety.toml", ""
    adds = changes = False
    told = water_bath_words()

    def lines(self) -> tuple[Line, ...]:
        """Every published row."""
        return tuple(
            Line(
                key=str(number), cells=(row.food, row.pack, row.jar, *(str(each) for each in row.minutes)), is_own=False
            )
            for number, row in enumerate(water_baths())
        )

    def blanks(self) -> tuple[Blank, ...]:
        """None: nothing is asked."""
        return ()

    def words(self, key: str) -> dict[str, str]:
        """The row alone: there is no form for it."""
        return {"row": key}

    def row(self, filled: Filled) -> dict[str, Any]:
        """Refused."""
        raise InputProblem(f"Row {filled.key}: published times are quoted as they are, and cannot be changed.")

    def own_keys(self) -> frozenset[str]:
        """None."""
        return frozenset()
