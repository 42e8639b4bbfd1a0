"""Which step helps most: each is tried on the same futures and weighed by its minutes in the band."""

from collections.abc import Mapping, Sequence

from cookstove_gui.cooking.fires.steps import Alternative, steps
from cookstove_gui.cooking.fit.bands import minutes_of_bake
from cookstove_gui.cooking.safety.caution import Caution, speak_against
from cookstove_gui.forecast.answers import AHEAD, EVEN_CHANCE, Action, ActionKind, Outlook, Projection
from cookstove_gui.forecast.futures.cook import Doing
from cookstove_gui.forecast.futures.outlook import outlook_of, oven_of
from cookstove_gui.forecast.futures.projection import project_each
from cookstove_gui.forecast.tracking.belief import Belief
from cookstove_gui.stove.entries import Entry, HeatBand
from cookstove_gui.stove.stove import Spot, Stove

_SHORT_STAY_MIN = 30.0  # a stay shorter than this asks for a step to take
_LONGEST_DELAY_MIN = 15.0  # a step that makes the heat come so much later is no help, however long it then holds
_LEAST_GAIN_MIN = 5.0  # in the band; a step that brings less is not worth advising
_BEYOND_HORIZON_MIN = 180.0  # what a stay that outlasts the futures counts for


def wants_step(present: Outlook, band: HeatBand) -> bool:
    """Whether the band doesn't come, or stays too short for its bake, unless something is done."""
    stays = present.band.stays_min.p50
    comes = present.band.line_enters_min is not None and present.band.chance_reached_3h >= EVEN_CHANCE
    return not (comes and (stays is None or stays >= max(_SHORT_STAY_MIN, minutes_of_bake(band))))


def best_step(
    belief: Belief,
    band: HeatBand,
    rows: Sequence[Entry],
    present: Outlook,
    cautions: Sequence[Caution] = (),
    known: Mapping[Action, Projection] | None = None,
) -> Alternative | None:
    """The step that holds the band longest, of those that no caution speaks against; none if none is wanted.

    `known` as in `what_if`.
    """
    if not wants_step(present, band):
        return None
    wise = [action for action in steps(rows) if not speak_against(cautions, _kind_of_step(action))]
    tried = what_if(belief, band, wise, known=known)
    better = [
        step
        for step in tried
        if _worth(step.outlook) > _worth(present) + _LEAST_GAIN_MIN and not _delays(step.outlook, present)
    ]
    return max(better, key=lambda step: _worth(step.outlook), default=None)


def _kind_of_step(action: Action) -> str:
    """What a caution calls a step that it speaks against."""
    if action.is_fuel:
        return "wood"
    opens = action.value > 0.5
    if action.kind is ActionKind.AIR:
        return "open air" if opens else "shut air"
    return "open bypass" if opens else "close bypass"


def _delays(step: Outlook, present: Outlook) -> bool:
    """Whether a step makes the cook wait much longer for the heat than the present course does."""
    before, after = present.band.enters_min.p50, step.band.enters_min.p50
    return before is not None and (after is None or after > before + _LONGEST_DELAY_MIN)


def _worth(found: Outlook) -> float:
    """Minutes in the band to be expected, roughly: the chance of reaching it times the stay."""
    stays = found.band.stays_min.p50
    return found.band.chance_reached_3h * (_BEYOND_HORIZON_MIN if stays is None else stays)


def what_if(
    belief: Belief,
    band: HeatBand,
    actions: Sequence[Action],
    ahead: Sequence[int] = AHEAD,
    known: Mapping[Action, Projection] | None = None,
) -> list[Alternative]:
    """What each of some steps done now would bring; `known` are the oven's futures after steps tried already."""
    stove, ovens = belief.stove, dict(known or {})
    missing = [action for action in actions if action not in ovens]
    if missing:
        found = project_each(belief, after_each(missing, stove), band)
        ovens |= dict(zip(missing, found, strict=True))
    return [
        Alternative(action=action, outlook=outlook_of(ovens[action], stove, band, ahead), projection=ovens[action])
        for action in actions
    ]


def after_each(actions: Sequence[Action], stove: Stove) -> list[tuple[Doing, tuple[Spot, ...]]]:
    """What to project to know the oven after each of some steps."""
    return [(Doing(action=action), oven_of(stove)) for action in actions]
