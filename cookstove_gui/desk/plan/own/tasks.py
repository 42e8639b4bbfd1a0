"""Tasks as a cook adds and changes them."""

from typing import Any

from cookstove_gui.cooking.checked import key_for
from cookstove_gui.cooking.fit.tasks import Place, Task, catalogue, row_of_task, task_of, task_of_row
from cookstove_gui.desk.plan.own.sorts import (
    NO,
    YES,
    Blank,
    Filled,
    Line,
    Sort,
    heats_text,
    typed_heat,
    typed_heats,
    typed_number,
    yes_or_no,
)
from cookstove_gui.errors import InputProblem
from cookstove_gui.phrases.edge import duration
from cookstove_gui.phrases.figures import range_text
from cookstove_gui.units import TemperatureUnit, degrees, degrees_difference, tidy

_PLACES = ((str(Place.TOP), "on the cooktop"), (str(Place.OVEN), "in the oven"))
_PLACE_WORDS = dict(_PLACES)
_VESSELS = ((NO, "a pot, or nothing"), (YES, "a pan with a handle"))
_FOODS = ((YES, "food"), (NO, "no food"))


class Tasks(Sort):
    """What a spot or the oven is wanted for."""

    key, name, one = "tasks", "Tasks", "task"
    headers = ("task", "where", "heat", "takes")
    file, kind = "tasks.toml", "task"

    def lines(self) -> tuple[Line, ...]:
        """The tasks in the order in which they are offered."""
        own, unit = self.own_keys(), self.unit
        return tuple(
            Line(
                key=task.key,
                cells=(
                    task.name,
                    _PLACE_WORDS[str(task.place)],
                    f"{range_text(task.low, task.high, unit)} °{unit}",
                    duration(task.minutes),
                ),
                is_own=task.key in own,
            )
            for task in catalogue()
        )

    def blanks(self) -> tuple[Blank, ...]:
        """Its heat is of the bare cooktop beside the pan, or of the oven's air."""
        degree = f"°{self.unit}"
        return (
            Blank(key="name", caption="Name", tip="What the task is called", is_long=True),
            Blank(key="place", caption="Where", tip="On the cooktop or in the oven", options=_PLACES),
            Blank(
                key="band", caption="Heat", unit=degree,
                tip="Lowest and highest, such as 375-425: of the bare cooktop beside the pan, or of the oven's air",
            ),
            Blank(key="minutes", caption="For", unit="min", tip="How long that heat must last"),
            Blank(
                key="evenness", caption="Uneven by", unit=degree,
                tip="The greatest difference across the pan, or felt by food in the oven that is turned once",
            ),
            Blank(
                key="never_below", caption="Never below", unit=degree,
                tip="A heat that may not be passed even for a while; empty for none",
            ),
            Blank(
                key="never_above", caption="Never above", unit=degree,
                tip="A heat that may not be passed even for a while; empty for none",
            ),
            Blank(key="pan", caption="Done in", tip="Drawn as a pot or as a pan", options=_VESSELS),
            Blank(key="food", caption="It is", tip="No food is cooked before the first fires", options=_FOODS),
            Blank(key="source", caption="Known from", tip="Where its heat comes from", is_long=True),
        )  # fmt: skip

    def words(self, key: str) -> dict[str, str]:
        """One task in the words of the form."""
        task, unit = task_of(key), self.unit
        if task is None:
            usual = {"place": str(Place.TOP), "pan": NO, "food": YES, "evenness": tidy(100 if unit == "F" else 55)}
            return {blank.key: usual.get(blank.key, "") for blank in self.blanks()}
        return {
            "name": task.name,
            "place": str(task.place),
            "band": heats_text(task.low, task.high, unit),
            "minutes": tidy(task.minutes),
            "evenness": tidy(degrees_difference(task.evenness, unit), 0),
            "never_below": _limit_text(task.never_below, unit),
            "never_above": _limit_text(task.never_above, unit),
            "pan": yes_or_no(task.in_a_pan),
            "food": yes_or_no(task.is_food),
            "source": task.source,
        }

    def row(self, filled: Filled) -> dict[str, Any]:
        """The task that the form says."""
        said, key, unit = filled.said, filled.key, self.unit
        name = said["name"].strip()
        if not name:
            raise InputProblem("Give the task a name.")
        evenness = typed_number(said, "evenness", "how much hotter one side may be than the other")
        row: dict[str, Any] = {
            "key": key or key_for(name, (task.key for task in catalogue()), "task"),
            "name": name,
            "place": said["place"],
            "band": typed_heats(said["band"], unit, "the lowest and highest heat"),
            "minutes": typed_number(said, "minutes", "for how many minutes the heat must last"),
            "evenness": round(evenness * (1.0 if unit == "F" else 1.8), 2),
            "food": said["food"] == YES,
            "pan": said["pan"] == YES,
            "source": said["source"].strip() or "the cook's own",
        }
        row |= {limit: typed_heat(said[limit], unit) for limit in ("never_below", "never_above") if said[limit].strip()}
        self._check_name(name, str(row["key"]))
        before = task_of(key or filled.like)
        if before is not None:
            row = self.as_before(row, filled, row_of_task(before))
        return row_of_task(task_of_row(row))

    def _check_name(self, name: str, key: str) -> None:
        twin: Task | None = next((task for task in catalogue() if task.name == name and task.key != key), None)
        if twin is not None:
            raise InputProblem(f"There is a task “{name}” already; give this one another name.")


def _limit_text(heat: float | None, unit: TemperatureUnit) -> str:
    return "" if heat is None else tidy(degrees(heat, unit), 0)
