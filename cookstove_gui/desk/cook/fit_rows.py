"""What is good now, what later and when, what not with this fire: lines by task or by spot, and more about one."""

from collections.abc import Iterable
from dataclasses import dataclass

from cookstove_gui.cooking.fit.fit import GOOD_CHANCE, FitState, SpotFit, TaskFit
from cookstove_gui.cooking.fit.tasks import Place
from cookstove_gui.desk.desk import Desk
from cookstove_gui.phrases.edge import spot_label
from cookstove_gui.phrases.figures import moment_text
from cookstove_gui.units import degrees


@dataclass(frozen=True, slots=True)
class FitRow:
    """One line of a list: what, where or when, and the key it stands for."""

    what: str
    where: str
    key: str
    brief: str = ""  # instead of `where` when there is no room for it


def fit_heading(desk: Desk, fits: Iterable[TaskFit], state: FitState) -> str:
    """What stands over the tasks of one state."""
    if state is FitState.NOT and any(fit.state is FitState.REFUSED for fit in fits):
        return "After the first fires"
    live = {FitState.NOW: "Good now", FitState.LATER: "Good later", FitState.NOT: "Not with this fire"}
    return live[state] if desk.is_live else live[state].replace(" now", " at its end")


def rows_by_task(desk: Desk, fits: Iterable[TaskFit], state: FitState) -> list[FitRow]:
    """The tasks of one state, each with its best spot and its time, the soonest first; none later once it is over."""
    if state is FitState.LATER and not desk.is_live:
        return []
    wanted = [fit for fit in fits if fit.state is state or (state is FitState.NOT and fit.state is FitState.REFUSED)]
    if state is FitState.LATER:
        wanted.sort(key=lambda fit: fit.spots[0].in_min or 0.0)
    return [FitRow(fit.task.name, _place_and_time(desk, fit), fit.task.key, _time(desk, fit)) for fit in wanted]


def rows_by_spot(desk: Desk, fits: Iterable[TaskFit], state: FitState) -> list[FitRow]:
    """The spots that are good for something, each with what it is good for."""
    found: dict[str, list[str]] = {}
    for fit in fits:
        if fit.state is FitState.REFUSED:
            continue
        for spot in fit.spots:
            if state is _spot_state(spot):
                found.setdefault(spot.spot, []).append(fit.task.name)
    if state is FitState.NOT:
        return []
    if state is FitState.LATER and not desk.is_live:
        return []
    return [FitRow(_place_name(desk, name), ", ".join(tasks), name) for name, tasks in found.items()]


def _spot_state(spot: SpotFit) -> FitState:
    if spot.chance_now >= GOOD_CHANCE:
        return FitState.NOW
    if spot.in_min and spot.chance_then >= GOOD_CHANCE:
        return FitState.LATER
    return FitState.NOT


def _place_and_time(desk: Desk, fit: TaskFit) -> str:
    if fit.state not in (FitState.NOW, FitState.LATER):
        return ""
    where = "oven" if fit.task.place is Place.OVEN else _place_name(desk, fit.spots[0].spot)
    return f"{where} {_time(desk, fit)}".strip()


def _time(desk: Desk, fit: TaskFit) -> str:
    """The clock time at which it will be good, empty if it is now or never."""
    standing, in_min = desk.standing, fit.spots[0].in_min
    if fit.state is not FitState.LATER or standing is None or in_min is None:
        return ""
    return moment_text(standing.now, in_min, desk.offset_minutes)


def _place_name(desk: Desk, name: str) -> str:
    return spot_label(desk.stove, name).removeprefix("top ")


def chances_now(desk: Desk, key: str) -> str:
    """Where a task's chances are best now, in a sentence; empty for one that is refused or not known."""
    fit = _fit_of(desk, key)
    if fit is None or fit.state is FitState.REFUSED:
        return ""
    best = ", ".join(f"{_place_name(desk, spot.spot)} {10 * round(10 * spot.chance_now)} %" for spot in fit.spots[:3])
    return f"{fit.task.name}, chance {'now' if desk.is_live else 'at its end'}: {best}."


def want_heat_of(desk: Desk, key: str) -> None:
    """Take the heat that an oven task needs as the heat wanted; a task of the cooktop changes nothing."""
    fit = _fit_of(desk, key)
    if fit is not None and fit.task.place is Place.OVEN:
        low, high = (degrees(end, desk.unit) for end in (fit.task.low, fit.task.high))
        desk.choose_band(f"{low:.0f}-{high:.0f}")


def _fit_of(desk: Desk, key: str) -> TaskFit | None:
    fits = desk.standing.fits if desk.standing else ()
    return next((fit for fit in fits if fit.task.key == key), None)
