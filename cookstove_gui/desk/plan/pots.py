"""Several pots at once: which spot each one gets, so that all together are served best."""

from dataclasses import dataclass

from cookstove_gui.cooking.fit.fit import GOOD_CHANCE, WORTH_CHANCE, FitState, TaskFit
from cookstove_gui.cooking.fit.placement import place_pots
from cookstove_gui.cooking.fit.tasks import Place, Task, catalogue
from cookstove_gui.phrases.edge import Edge
from cookstove_gui.situation import Standing
from cookstove_gui.stove.stove import Stove


@dataclass(frozen=True, slots=True, kw_only=True)
class PotRow:
    """One pot and its place."""

    task: Task
    spot: str  # empty without a place now
    label: str  # of the spot
    chance: float  # that it is right there now
    later_spot: str = ""  # label of where it will be right later, if it has no place now
    later_min: float | None = None
    why_not: str = ""  # it has no place now


@dataclass(frozen=True, slots=True, kw_only=True)
class PotsInputs:
    """Everything one computation needs."""

    standing: Standing
    stove: Stove
    keys: tuple[str, ...]


def pot_options() -> tuple[tuple[str, str], ...]:
    """Key and name of every task; those of the cooktop first."""
    tasks = sorted(catalogue(), key=lambda task: task.place is not Place.TOP)
    return tuple((task.key, task.name if task.place is Place.TOP else f"{task.name} (oven)") for task in tasks)


def plan_pots(inputs: PotsInputs) -> tuple[PotRow, ...]:
    """A place for each, in the order they were chosen."""
    by_key = {fit.task.key: fit for fit in inputs.standing.fits}
    placed = place_pots(inputs.standing.fits, [key for key in inputs.keys if key in by_key])
    return tuple(_row(by_key[key], spot, inputs.stove) for key, spot in placed.items())


def _row(fit: TaskFit, spot: str | None, stove: Stove) -> PotRow:
    chance = next((one.chance_now for one in fit.spots if one.spot == spot), 0.0)
    if spot is not None and chance >= WORTH_CHANCE:
        return PotRow(task=fit.task, spot=spot, label=_label(stove, spot, fit), chance=chance)
    best = fit.spots[0]
    if best.in_min is not None and best.in_min > 0 and best.chance_then >= GOOD_CHANCE:
        later = _label(stove, best.spot, fit)
        return PotRow(task=fit.task, spot="", label="", chance=0.0, later_spot=later, later_min=best.in_min)
    why_not = "not with this fire" if fit.state is FitState.NOT else "no place now"
    if best.chance_now >= WORTH_CHANCE:
        why_not = "no spot is left"
    return PotRow(task=fit.task, spot="", label="", chance=0.0, why_not=why_not)


def _label(stove: Stove, name: str, fit: TaskFit) -> str:
    spot = stove.spot(name)
    return (
        "oven"
        if fit.task.place is Place.OVEN
        else (spot.label if spot else name.replace("_", " ")).removeprefix("top ")
    )


def headline(rows: tuple[PotRow, ...]) -> str:
    """Whether all of them have a place."""
    if not rows:
        return "Choose what is to be on the stove at once: Space ticks the marked one."
    without = [row.task.name for row in rows if not row.spot]
    if without:
        have = len(rows) - len(without)
        return f"{have} of {len(rows)} have a place now; not {_listed(without)}."
    if len(rows) == 1:
        return f"{rows[0].task.name[:1].upper()}{rows[0].task.name[1:]} has a place now."
    return "Both have a place now." if len(rows) == 2 else f"All {len(rows)} have a place now."


def place_words(row: PotRow) -> str:
    """Where a pot goes, or will go."""
    if row.spot:
        return row.label
    return f"later {row.later_spot}" if row.later_min is not None else row.why_not


def chance_words(row: PotRow, edge: Edge) -> str:
    """How likely it is right there, or when it will be."""
    if row.spot:
        return f"{round(row.chance * 10)} in 10"
    return f"at {edge.clock(row.later_min)}" if row.later_min is not None else ""


def _listed(names: list[str]) -> str:
    return names[0] if len(names) == 1 else f"{', '.join(names[:-1])} and {names[-1]}"
