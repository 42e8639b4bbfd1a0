"""Several pots at once: which spot each one gets so that together they fare best."""

from dataclasses import dataclass

from cookstove_gui.cooking.fit.fit import GOOD_CHANCE, FitState, TaskFit
from cookstove_gui.cooking.fit.placement import LEAST_CHANCE, place_pots
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
    taken = {spot for spot in placed.values() if spot is not None}
    return tuple(_row(by_key[key], spot, inputs, taken) for key, spot in placed.items())


def _row(fit: TaskFit, spot: str | None, inputs: PotsInputs, taken: set[str]) -> PotRow:
    if spot is not None:
        chance = next(one.chance_now for one in fit.spots if one.spot == spot)
        return PotRow(task=fit.task, spot=spot, label=_label(inputs.stove, spot, fit), chance=chance)
    best = fit.spots[0]
    if best.in_min is not None and best.in_min > 0 and best.chance_then >= GOOD_CHANCE:
        later = _label(inputs.stove, best.spot, fit)
        return PotRow(task=fit.task, spot="", label="", chance=0.0, later_spot=later, later_min=best.in_min)
    return PotRow(task=fit.task, spot="", label="", chance=0.0, why_not=_why_not(fit, inputs.standing, taken))


def _why_not(fit: TaskFit, standing: Standing, taken: set[str]) -> str:
    """What keeps a pot without a place now from having one."""
    if fit.state is FitState.REFUSED:
        return str(fit.state)
    if any(one.chance_now >= LEAST_CHANCE and one.spot in taken for one in fit.spots):
        return "its spots are taken"
    best = max(fit.spots, key=lambda one: one.chance_now + one.uneven_now)
    if best.uneven_now >= LEAST_CHANCE:
        return "too uneven"
    heats = [standing.zones[one.spot].p50 for one in fit.spots if one.spot in standing.zones]
    if all(heat > fit.task.high for heat in heats):
        return "too hot"
    return "too cool" if all(heat < fit.task.low for heat in heats) else "not steady enough"


def _label(stove: Stove, name: str, fit: TaskFit) -> str:
    return "oven" if fit.task.place is Place.OVEN else spot_label(stove, name).removeprefix("top ")


def place_words(row: PotRow) -> str:
    """Where a pot goes, or will go."""
    if row.spot:
        return row.label
    return f"later {row.later_spot}" if row.later_min is not None else row.why_not
