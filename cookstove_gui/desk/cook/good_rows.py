"""What the fire is good for, a row a task or a spot: where, how hot it is there, and the chance over time."""

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import datetime

from cookstove_gui.cooking.fit.fit import GOOD_CHANCE, FitState, SpotFit, TaskFit
from cookstove_gui.cooking.fit.tasks import Place
from cookstove_gui.desk.cook.oven_at import oven_number
from cookstove_gui.desk.cook.spot_heats import spot_heats
from cookstove_gui.desk.desk import Desk
from cookstove_gui.phrases.edge import spot_label
from cookstove_gui.phrases.figures import spot_number
from cookstove_gui.phrases.good_for import good_chance, good_when, row_said
from cookstove_gui.phrases.spots import SpotHeat
from cookstove_gui.situation import fire_is_out, was_read
from cookstove_gui.stove.entries import HeatBand
from cookstove_gui.units import degrees

_SAME = 1.0  # K by which a band may differ from a task's and still be its band


@dataclass(frozen=True, slots=True, kw_only=True)
class GoodRow:
    """One row: a task at its best spot, or a spot with its best task."""

    key: str  # of the task, or the spot's name
    task: str  # key of the task
    name: str
    place: str
    heat: str  # there now, as it is written
    kelvin: float | None
    spots: tuple[str, ...]  # where it may be done, the best first
    when: str
    chance: str
    hill: tuple[tuple[datetime, float], ...]  # the chance of a start at each moment
    is_wanted: bool  # the heat wanted is this task's
    is_oven: bool
    said: str


@dataclass(frozen=True, slots=True, kw_only=True)
class GoodFor:
    """The rows, and what this fire will not do."""

    rows: tuple[GoodRow, ...]
    not_now: tuple[str, ...]  # names of tasks
    is_out: bool  # the fire


def good_for(desk: Desk, *, by_spot: bool) -> GoodFor | None:
    """What the wanted heat is for, then good now in the catalogue's order, then by time, then what may be.

    None where nothing is said.

    Nothing is said of a session that is over, before anything was read, or before a new stove's first fires are done.
    """
    standing = desk.standing
    if standing is None or not desk.is_live or not was_read(desk.entries) or standing.first_fires.next is not None:
        return None
    fits = standing.fits
    rows = _by_spot(desk, fits) if by_spot else _by_task(desk, fits)
    shown = set() if by_spot else {row.key for row in rows}
    is_out = fire_is_out(standing.turns)
    heats = spot_heats(desk) if is_out else {}
    comes = {fit.task.key for fit in fits if _is_still_too_hot(heats, fit)}
    never = (fit.task for fit in fits if fit.state is FitState.NOT and fit.task.key not in shown | comes)
    return GoodFor(rows=rows, not_now=tuple(task.name for task in never), is_out=is_out)


def _is_still_too_hot(heats: Mapping[str, SpotHeat], fit: TaskFit) -> bool:
    """Of a stove that cools it is not gone: its heat comes after the time that is looked at."""
    known = [heat for one in fit.spots if (heat := heats.get(one.spot, SpotHeat()).kelvin) is not None]
    return bool(known) and min(known) > fit.task.high


def _by_task(desk: Desk, fits: tuple[TaskFit, ...]) -> tuple[GoodRow, ...]:
    row = _Rows(desk)
    coming = [fit for fit in fits if fit.state is FitState.LATER]
    coming.sort(key=lambda fit: (fit.spots[0].chance_then < GOOD_CHANCE, fit.spots[0].in_min or 0.0))
    now, perhaps = ([fit for fit in fits if fit.state is state] for state in (FitState.NOW, FitState.PERHAPS))
    perhaps.sort(key=lambda fit: -fit.spots[0].chance_ever)
    found = (*now, *coming, *perhaps)
    rows = [row.of(fit, fit.spots[0], key=fit.task.key, name=fit.task.name) for fit in found]
    if not any(one.is_wanted for one in rows):  # what the heat is wanted for has its row, whatever this fire will do
        never = [row.of(fit, fit.spots[0], key=fit.task.key, name=fit.task.name) for fit in fits if _is_never(fit)]
        rows = [*(one for one in never if one.is_wanted)][:1] + rows
    return tuple(sorted(rows, key=lambda one: not one.is_wanted))


def _by_spot(desk: Desk, fits: tuple[TaskFit, ...]) -> tuple[GoodRow, ...]:
    """Every spot that is or will be good for something, in the stove's order; its best task is the one it shows."""
    row, rows = _Rows(desk), []
    for spot in desk.stove.spots:
        found = [(fit, one) for fit in fits for one in fit.spots if one.spot == spot.name and one.in_min is not None]
        if not found:
            continue
        fit, best = min(found, key=lambda pair: (pair[1].in_min, -pair[1].chance_then))
        rows.append(row.of(fit, best, key=spot.name, name=_place(desk, spot.name), task=fit.task.name))
    return tuple(rows)


class _Rows:
    """What all rows share: looked up once."""

    def __init__(self, desk: Desk) -> None:
        self._desk, self._edge, self._band = desk, desk.edge, desk.band
        self._heats, self._oven = spot_heats(desk), oven_number(desk)
        self._oven_kelvin = desk.standing.outlook.oven.p50 if desk.standing else None

    def of(self, fit: TaskFit, best: SpotFit, *, key: str, name: str, task: str = "") -> GoodRow:
        """`task` names the task of a spot's row; a task's row names its place instead."""
        is_oven, unit = fit.task.place is Place.OVEN, self._edge.unit
        is_centre = is_oven and best.spot == self._desk.stove.oven_spot
        heat = self._heats.get(best.spot, SpotHeat())
        written = (self._oven if is_centre else None) or spot_number(heat.kelvin, heat.typed, unit)
        place = task or ("oven" if is_oven else _place(self._desk, best.spot))
        when, chance = good_when(best, self._edge, is_bake=fit.task.goes_in), good_chance(best)
        good = [one.spot for one in fit.spots if one.in_min is not None]
        return GoodRow(
            key=key,
            task=fit.task.key,
            name=name,
            place=place,
            heat=written,
            kelvin=self._oven_kelvin if is_centre else heat.kelvin,
            spots=(best.spot,) if task else tuple(good or [best.spot]),
            when=when,
            chance=chance,
            hill=tuple(zip(fit.starts, best.chances, strict=True)),
            is_wanted=not task and is_oven and _is_of(fit, self._band),
            is_oven=is_oven,
            said=row_said(name, place, written, when, chance, unit),
        )


def _is_never(fit: TaskFit) -> bool:
    return fit.state is FitState.NOT and bool(fit.spots)


def _is_of(fit: TaskFit, band: HeatBand) -> bool:
    return abs(fit.task.low - band.low) < _SAME and abs(fit.task.high - band.high) < _SAME


def _place(desk: Desk, name: str) -> str:
    return spot_label(desk.stove, name).removeprefix("top ")


def want_heat_of(desk: Desk, key: str) -> bool:
    """Take the heat of an oven task as the heat wanted; whether it did, for a task of the cooktop changes nothing."""
    fits = desk.standing.fits if desk.standing else ()
    fit = next((fit for fit in fits if fit.task.key == key), None)
    if fit is None or fit.task.place is not Place.OVEN:
        return False
    named = next((band for band in desk.bands if _is_of(fit, band)), None)
    low, high = (degrees(end, desk.unit) for end in (fit.task.low, fit.task.high))
    desk.choose_band(named.name if named else f"{low:.0f}-{high:.0f}")
    return True
