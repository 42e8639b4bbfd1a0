"""What goes in the oven, as a cook adds and changes it."""

from typing import Any

from cookstove_gui.cooking.baking.catalogue import bake_of, bake_of_row, bake_rows, bakes, foods, mass_of
from cookstove_gui.cooking.checked import key_for
from cookstove_gui.cooking.fit.tasks import Place, catalogue
from cookstove_gui.cooking.safety.food_safety import safe_minimums
from cookstove_gui.desk.plan.own.sorts import (
    CENTIMETRES,
    Blank,
    Filled,
    Line,
    Sort,
    heats_text,
    sizes_text,
    typed_heat,
    typed_heats,
    typed_number,
    typed_sizes,
)
from cookstove_gui.desk.plan.texts import kilograms_text
from cookstove_gui.errors import InputProblem
from cookstove_gui.units import degrees, mass_unit_beside, tidy

_SHAPES = (("brick", "a block or in a tin"), ("disc", "round and flat, or a roll"), ("ellipsoid", "like an egg"))
_CRUSTS = {
    "bread": "a bread's crust",
    "cake": "a cake's crust",
    "meat": "bare meat",
    "skin": "skin with fat under it",
    "potato": "a potato's skin",
    "dish": "what forms on a dish",
}
_CRUMB = (("yes", "risen, with bubbles"), ("no", "dense"))
_SHARES = ("porosity", "openness", "bone")
_FIRST = "bread_loaf"  # what an empty form is like in all that it does not ask


class Bakes(Sort):
    """Loaves, cakes, roasts and dishes."""

    key, name, one = "bakes", "In the oven", "thing to bake"
    headers = ("in the oven", "one weighs", "done at", "heat")
    file, kind = "bakes.toml", "bake"

    def lines(self) -> tuple[Line, ...]:
        """All of them in the order in which they are offered."""
        own, heats = self.own_keys(), {task.key: task.name for task in catalogue()}
        unit = self.unit
        return tuple(
            Line(
                key=bake.key,
                cells=(
                    bake.name,
                    f"{kilograms_text(mass_of(bake), unit)} {mass_unit_beside(unit)}",
                    f"{tidy(degrees(bake.done, unit), 0)} °{unit}",
                    heats[bake.task],
                ),
                is_own=bake.key in own,
            )
            for bake in bakes()
        )

    def blanks(self) -> tuple[Blank, ...]:
        """All that its time in the oven hangs on."""
        unit, degree = self.unit, f"°{self.unit}"
        made_of = tuple((food.name, food.name) for food in foods())
        heats = tuple((task.key, task.name) for task in catalogue() if task.place is Place.OVEN)
        return (
            Blank(key="name", caption="Name", tip="What it is called", is_long=True),
            Blank(key="task", caption="Heat", tip="The heat it wants", options=heats),
            Blank(key="food", caption="Made of", tip="What it consists of", options=made_of),
            Blank(key="shape", caption="Shape", tip="What one is like", options=_SHAPES),
            Blank(
                key="sizes", caption="Size of one", unit=CENTIMETRES[unit][0],
                tip="Height, width and length of one as it bakes, such as 4 x 4 x 8; of a round one its width twice",
            ),
            Blank(key="crumb", caption="Inside", tip="Whether steam moves heat through it", options=_CRUMB),
            Blank(key="porosity", caption="Gas in it", unit="%", tip="Share of its volume that is gas as it bakes"),
            Blank(key="crust", caption="Outside", tip="What vapour must pass", options=tuple(_CRUSTS.items())),
            Blank(
                key="openness", caption="Open", unit="%",
                tip="Share of its surface open to the air: 100 all round, 80 in a tin, 10 under a lid",
            ),
            Blank(key="bone", caption="Bone", unit="%", tip="Share of its weight that is bone"),
            Blank(key="done", caption="Done at", unit=degree, tip="Core from done to past its best, such as 200-210"),
            Blank(
                key="setting", caption="Cooks on", unit="min",
                tip="How long it cooks near its final heat: up high, where that is cooler, it takes longer",
            ),
            Blank(key="start", caption="Goes in at", unit=degree, tip="How warm it usually goes in"),
            Blank(
                key="safety", is_long=True, caption="Safe from", tip="A core that is below it is never called done",
                options=(("", "none is published for it"), *((row.key, row.key) for row in safe_minimums())),
            ),
        )  # fmt: skip

    def words(self, key: str) -> dict[str, str]:
        """One in the words of the form."""
        bake, row, unit = bake_of(key or _FIRST), bake_rows()[key or _FIRST], self.unit
        shown = {
            "name": bake.name,
            "task": bake.task,
            "food": str(row["food"]),
            "shape": bake.form,
            "sizes": sizes_text(bake.sizes, unit),
            "crumb": "yes" if bake.is_crumb else "no",
            "porosity": tidy(100.0 * bake.porosity),
            "crust": str(row["crust"]),
            "openness": tidy(100.0 * bake.openness),
            "bone": tidy(100.0 * bake.bone),
            "done": heats_text(bake.done, bake.past_best, unit),
            "setting": tidy(bake.setting_min),
            "start": tidy(degrees(bake.start, unit), 0),
            "safety": bake.safety,
        }
        return shown if key else shown | {"name": "", "sizes": "", "done": "", "safety": ""}

    def row(self, filled: Filled) -> dict[str, Any]:
        """What the form says; what it does not ask is that of the one that was changed or copied."""
        said, key, unit = filled.said, filled.key, self.unit
        name = said["name"].strip()
        if not name:
            raise InputProblem("Give it a name.")
        if any(bake.name == name and bake.key != key for bake in bakes()):
            raise InputProblem(f"There is “{name}” already; give this one another name.")
        base = dict(bake_rows().get(key or filled.like, bake_rows()[_FIRST]))
        if not key:
            base = {part: value for part, value in base.items() if part not in ("kind", "cut")}
        share = {part: typed_number(said, part, "how many per cent") / 100.0 for part in _SHARES}
        row = base | {
            "key": key or key_for(name, (bake.key for bake in bakes()), "bake"),
            "name": name,
            "task": said["task"],
            "food": said["food"],
            "shape": said["shape"],
            "sizes": typed_sizes(said["sizes"], unit),
            "crumb": said["crumb"] == "yes",
            "crust": said["crust"],
            "done": typed_heats(said["done"], unit, "its core from done to past its best"),
            "setting": typed_number(said, "setting", "for how many minutes it cooks on"),
            "start": typed_heat(said["start"], unit),
            "safety": said["safety"],
            **{part: round(value, 4) for part, value in share.items()},
        }
        row = self.as_before(row, filled, base)
        if (
            "done" not in base
            and row["food"] == base["food"]
            and said["done"] == self.words(key or filled.like)["done"]
        ):
            del row["done"]  # it goes with its food
        bake_of_row(row)
        return row
