"""What foods consist of, as a cook adds and changes it."""

from typing import Any

from cookstove_gui.cooking.baking.catalogue import food_of_row, foods
from cookstove_gui.cooking.by_name import by_name
from cookstove_gui.desk.plan.own.sorts import Blank, Filled, Line, Sort, heats_text, typed_heats, typed_number
from cookstove_gui.errors import InputProblem
from cookstove_gui.physics.foods import COMPONENTS
from cookstove_gui.units import tidy

_FEW = ("water", "protein", "fat", "carbohydrate")  # in the list


class Foods(Sort):
    """Doughs, batters, meats: their make-up decides how they warm through."""

    key, name, one = "foods", "What foods are made of", "food"
    headers = ("food", *_FEW)
    file, kind, row_key = "foods.toml", "food", "name"

    def lines(self) -> tuple[Line, ...]:
        """All of them in the order of the file."""
        own = self.own_keys()
        return tuple(
            Line(
                key=food.name,
                cells=(food.name, *(f"{tidy(100.0 * float(getattr(food.composition, part)))} %" for part in _FEW)),
                is_own=food.name in own,
            )
            for food in foods()
        )

    def blanks(self) -> tuple[Blank, ...]:
        """Shares of its weight, raw as it goes in."""
        parts = tuple(
            Blank(key=part, caption=part.capitalize(), unit="%", tip=f"{part.capitalize()}, share of its weight raw")
            for part in COMPONENTS
        )
        return (
            Blank(key="name", caption="Name", tip="What the food is called", is_long=True),
            *parts,
            Blank(
                key="core",
                caption="Done at",
                unit=f"°{self.unit}",
                tip="Core from done to past its best, such as 200-210",
            ),
            Blank(key="source", caption="Known from", tip="Where these numbers come from", is_long=True),
        )

    def words(self, key: str) -> dict[str, str]:
        """One food in the words of the form."""
        if not key:
            return {blank.key: "" for blank in self.blanks()}
        food = by_name(foods(), key, "food", lambda one: one.name)
        return {
            "name": food.name,
            **{part: tidy(100.0 * float(getattr(food.composition, part)), 2) for part in COMPONENTS},
            "core": heats_text(food.done, food.past_best, self.unit),
            "source": str(food.row.get("source", "")),
        }

    def row(self, filled: Filled) -> dict[str, Any]:
        """The food that the form says; a food is known by its name, so one that is changed keeps it."""
        said, key, unit = filled.said, filled.key, self.unit
        name = said["name"].strip()
        if not name:
            raise InputProblem("Give the food a name.")
        if key and name != key:
            raise InputProblem(f"“{key}” keeps its name, for what is baked of it is known by it; copy it instead.")
        if not key and any(food.name == name for food in foods()):
            raise InputProblem(f"There is a food “{name}” already; give this one another name.")
        shares: dict[str, float] = {
            part: round(typed_number(said, part, f"how many per cent {part}") / 100.0, 5) if said[part].strip() else 0.0
            for part in COMPONENTS
        }
        row: dict[str, Any] = {
            "name": name,
            **shares,
            "core": typed_heats(said["core"], unit, "its core from done to past its best"),
            "source": said["source"].strip() or "the cook's own",
        }
        before = next((food.row for food in foods() if food.name == (key or filled.like)), None)
        row = row if before is None else self.as_before(row, filled, before)
        food_of_row(row)
        return row
