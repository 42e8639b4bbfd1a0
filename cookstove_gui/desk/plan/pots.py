"""Several pots at once: which spot each one gets so that together they fare best."""

from dataclasses import dataclass, replace

from cookstove_gui.cooking.fit.fit import GOOD_CHANCE, KEPT_CHANCE, FitState, SpotFit, TaskFit
from cookstove_gui.cooking.fit.placement import LEAST_CHANCE, Pot, chance_at, place_pots, total_chance
from cookstove_gui.cooking.fit.tasks import Place, Task, catalogue
from cookstove_gui.desk.plan.kept_pots import KeptPots, rows_known
from cookstove_gui.desk.plan.pots_draw import fits_together, oven_cost
from cookstove_gui.phrases.edge import Edge, spot_label
from cookstove_gui.phrases.plan.pots import PotLine, pot_line, pots_rungs, why_not_words
from cookstove_gui.situation import Standing
from cookstove_gui.stove.stove import SpotKind, Stove


@dataclass(frozen=True, slots=True, kw_only=True)
class PotRow:
    """One pot and its place."""

    task: Task
    spot: str  # where it is right now, after its move if it has one; empty without a place
    label: str  # of that spot
    chance: float  # that it is right there now, or will be later
    stands: str = ""  # the spot it stands on, where that is another one or no place for it
    stands_label: str = ""
    is_own: bool = False  # the cook chose the spot
    later_spot: str = ""  # label of where it will be right later, if it has no place now
    later_at: str = ""  # that spot
    later_min: float | None = None
    until_min: float | None = None  # until when it is right there; none: as far as is known
    heat: float | None = None  # K of the spot where it is or will be
    why_not: str = ""  # it has no place now
    number: int = 0  # of the pot among those kept

    @property
    def moves(self) -> bool:
        """Whether it is to be moved now."""
        return bool(self.spot and self.stands)


@dataclass(frozen=True, slots=True, kw_only=True)
class PotsPlan:
    """Every pot's place, and what is kept of it."""

    rows: tuple[PotRow, ...]
    kept: KeptPots
    oven_cost: float | None = None  # K that those on the cooktop take from the oven at most; none: nothing there

    @property
    def gain(self) -> float:
        """What the moves bring in chance, all together."""
        return self.kept.gain


@dataclass(frozen=True, slots=True, kw_only=True)
class PotsInputs:
    """The pots, and the stove they go on."""

    standing: Standing
    stove: Stove
    kept: KeptPots


def pot_options() -> tuple[tuple[str, str], ...]:
    """Key and name of every task; those of the cooktop first."""
    tasks = sorted(catalogue(), key=lambda task: task.place is not Place.TOP)
    return tuple((task.key, task.name if task.place is Place.TOP else f"{task.name} (oven)") for task in tasks)


def plan_pots(inputs: PotsInputs) -> PotsPlan:
    """A place for each pot, in the order in which they came; where they stand, unless a move is worth it."""
    standing, before = inputs.standing, inputs.kept
    together = fits_together(standing, inputs.stove, before.pots)
    fit_of = {fit.task.key: fit for fit in together}
    staying = place_pots(together, before.pots, may_move=False)
    kept = replace(before, pots=staying)
    if before.is_due(standing):
        at_rest = place_pots(together, [replace(pot, to="") for pot in before.pots], may_move=False)
        pots = place_pots(together, before.pots)
        kept = replace(
            before,
            pots=pots,
            decided_at=standing.now,
            of_rows=rows_known(standing),
            gain=total_chance(together, pots) - total_chance(together, at_rest),
        )
    taken = {spot for pot in kept.pots for spot in pot.takes}
    rows = tuple(
        replace(_row(fit_of[pot.task], pot, inputs, taken), number=number)
        for number, pot in enumerate(kept.pots)
        if pot.task in fit_of
    )
    placed = [kept.pots[row.number] for row in rows if row.spot]
    return PotsPlan(rows=rows, kept=kept, oven_cost=oven_cost(standing, inputs.stove, placed))


def _row(fit: TaskFit, pot: Pot, inputs: PotsInputs, taken: set[str]) -> PotRow:
    spot = pot.to or pot.spot
    stands = pot.spot if pot.to else ""
    chance = chance_at(fit, spot)
    if spot and (chance >= LEAST_CHANCE or pot.is_own):
        return PotRow(
            task=fit.task, spot=spot, label=_label(inputs.stove, spot, fit), chance=chance, stands=stands,
            stands_label=_label(inputs.stove, stands, fit) if stands else "", is_own=pot.is_own,
            until_min=next((one.until_min for one in fit.spots if one.spot == spot), None), heat=_heat(inputs, spot),
        )  # fmt: skip
    without = PotRow(task=fit.task, spot="", label="", chance=0.0)
    if pot.spot:
        without = replace(without, stands=pot.spot, stands_label=_label(inputs.stove, pot.spot, fit))
    best = fit.spots[0]
    if best.in_min is not None and best.in_min > 0 and best.chance_then >= GOOD_CHANCE:
        later = _label(inputs.stove, best.spot, fit)
        return replace(
            without, later_spot=later, later_at=best.spot, later_min=best.in_min, chance=best.chance_then,
            until_min=_good_until(fit, best, inputs.standing), heat=_heat(inputs, best.spot),
        )  # fmt: skip
    return replace(without, why_not=_why_not(fit, pot, inputs.standing, taken))


def _why_not(fit: TaskFit, pot: Pot, standing: Standing, taken: set[str]) -> str:
    """What keeps a pot without a place now from having one."""
    if fit.state is FitState.REFUSED:
        return str(fit.state)
    if any(one.chance_now >= LEAST_CHANCE and one.spot in taken and one.spot not in pot.takes for one in fit.spots):
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


def _heat(inputs: PotsInputs, spot: str) -> float | None:
    zone = inputs.standing.zones.get(spot)
    return None if zone is None else zone.p50


def _good_until(fit: TaskFit, best: SpotFit, standing: Standing) -> float | None:
    """When a start at the later spot is no longer called good [min from now]; none: as far as is known."""
    for at, chance in zip(fit.starts, best.chances, strict=False):
        minutes = (at - standing.now).total_seconds() / 60.0
        if best.in_min is not None and minutes > best.in_min and chance < KEPT_CHANCE:
            return minutes
    return None


def next_spot(plan: PotsPlan, number: int, standing: Standing, steps: int) -> str:
    """The spot some steps further round those where a pot may stand; empty once round: the program chooses again."""
    pot = plan.kept.pots[number]
    fit = next((fit for fit in standing.fits if fit.task.key == pot.task), None)
    names: list[str] = ["", *(sorted(one.spot for one in fit.spots) if fit and fit.task.place is Place.TOP else ())]
    here = names.index(pot.spot) if pot.spot in names else 0
    return names[(here + steps) % len(names)]


def headline_of(plan: PotsPlan, edge: Edge) -> tuple[str, ...]:
    """What to move now, else whether every pot has a place; from long to short."""
    return pots_rungs(
        [row.task.name for row in plan.rows],
        later=[(row.task.name, row.later_min) for row in plan.rows if not row.spot and row.later_min is not None],
        without=[row.task.name for row in plan.rows if not row.spot and row.later_min is None],
        moves=[(row.task.name, row.label) for row in plan.rows if row.moves],
        gain=plan.gain,
        edge=edge,
    )


def line_of(row: PotRow, edge: Edge) -> PotLine:
    """One pot in words."""
    return pot_line(
        row.label or row.later_spot,
        row.chance,
        edge,
        stands=row.stands_label if row.moves else "",
        is_own=row.is_own,
        later_min=row.later_min,
        until_min=row.until_min,
        why_not=row.why_not,
        in_oven=row.task.place is Place.OVEN,
    )


def reasons_of(plan: PotsPlan, standing: Standing, edge: Edge) -> tuple[str, ...]:
    """Why pots have no place now, with the numbers."""
    tops = [spot.name for spot in standing.stove.spots_of(SpotKind.TOP)]
    heats = [standing.zones[name].p50 for name in tops if name in standing.zones]
    told = (float(min(heats)), float(max(heats))) if heats else None
    words = (
        why_not_words(row.task.name, row.why_not, (row.task.low, row.task.high), told, edge)
        for row in plan.rows
        if row.task.place is Place.TOP
    )
    return tuple(dict.fromkeys(text for text in words if text))
