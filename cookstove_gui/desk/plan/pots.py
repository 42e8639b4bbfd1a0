"""Several pots at once: which spot each one gets so that together they fare best."""

from dataclasses import dataclass

from cookstove_gui.cooking.fit.fit import GOOD_CHANCE, WORTH_CHANCE, FitState, TaskFit
from cookstove_gui.cooking.fit.placement import place_pots
from cookstove_gui.cooking.fit.tasks import Place, Task, catalogue
from cookstove_gui.phrases.edge import spot_label
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
    """The tasks chosen, and the stove they go on."""

    standing: Standing
    stove: Stove
    keys: tuple[str, ...]


def pot_options() -> tuple[tuple[str, str], ...]:
    """Key and name of every task; those of the cooktop first."""
    tasks = sorted(catalogue(), key=lambda task: task.place is not Place.TOP)
    return tuple((task.key, task.name if task.place is Place.TOP else f"{task.name} (oven)") for task in tasks)


def plan_pots(inputs: PotsInputs) -> tuple[PotRow, ...]:
    """A place for each pot, in the order they were chosen."""
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
    return "oven" if fit.task.place is Place.OVEN else spot_label(stove, name).removeprefix("top ")


def place_words(row: PotRow) -> str:
    """Where a pot goes, or will go."""
    if row.spot:
        return row.label
    return f"later {row.later_spot}" if row.later_min is not None else row.why_not
