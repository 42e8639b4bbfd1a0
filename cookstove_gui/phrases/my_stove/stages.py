"""What the log of a first fire must show and what it shows so far, each in a few words."""

from cookstove_gui.cooking.fires.first_fires import FirstFires, Stage, StageProgress
from cookstove_gui.phrases.edge import whole
from cookstove_gui.units import degrees


def minutes_measure(wanted: float, shown: float) -> tuple[str, str]:
    """How long it burns on record."""
    return f"{whole(wanted)} minutes lit", f"{whole(shown)} so far"


def heat_measure(wanted: float, shown: float | None, unit: str) -> tuple[str, str]:
    """The heat that some spot of the top is to reach [K]."""
    return f"{whole(degrees(wanted, unit))} °{unit} on the top", _so_far(shown, unit)


def heat_limit(wanted: float, shown: float | None, unit: str) -> tuple[str, str]:
    """The heat that none may pass [K]."""
    return f"at most {whole(degrees(wanted, unit))} °{unit}", _so_far(shown, unit)


def loads_measure(wanted: int, shown: int) -> tuple[str, str]:
    """Loads of wood."""
    return "1 load of wood" if wanted == 1 else f"{wanted} loads of wood", f"{shown} so far"


def air_measure(*, seen: bool) -> tuple[str, str]:
    """The air wide open and then mostly shut."""
    return "air open, then mostly shut", "noted" if seen else "not yet"


def limit_rungs(stage: Stage, unit: str) -> tuple[str, ...]:
    """What the fire that is next is about, in the place of the heat wanted, from long to short."""
    if stage.top_at_most is None:
        return f"{stage.title}: cook nothing yet", "Cook nothing yet"
    limit = f"{whole(degrees(stage.top_at_most, unit))} °{unit}"
    return f"Limit of this fire: {limit}, hottest spot of the top", f"Limit of this fire: {limit}", f"Limit {limit}"


def stage_state(stage: StageProgress, fires: FirstFires, *, is_lit: bool, waits: bool) -> str:
    """Where a stage stands: done, under way, next, or what it is."""
    if stage.done:
        return "done"
    if stage is not fires.next:
        return stage.stage.line
    when = "when the stove is cold" if waits else "under way" if is_lit else "next"
    return f"{when}; what the log must show"


def stage_said(title: str, state: str, measures: tuple[tuple[str, str], ...]) -> str:
    """A stage for whoever cannot see it."""
    shown = "; ".join(f"{wanted}, {found}" for wanted, found in measures)
    return f"{title}, {state}: {shown}." if shown else f"{title}: {state}."


def _so_far(shown: float | None, unit: str) -> str:
    return "not read yet" if shown is None else f"{whole(degrees(shown, unit))} so far"
