"""Which step helps most: each is tried on the same futures and weighed by its minutes in the band."""

from collections.abc import Sequence

from cookstove_gui.cooking.fires.steps import Alternative, steps
from cookstove_gui.cooking.fit.bands import minutes_of_bake
from cookstove_gui.cooking.safety.caution import Caution, speak_against
from cookstove_gui.forecast.answers import AHEAD, EVEN_CHANCE, Action, ActionKind, Outlook
from cookstove_gui.forecast.futures.cook import Doing
from cookstove_gui.forecast.futures.outlook import outlook_of, oven_of
from cookstove_gui.forecast.futures.projection import project_each
from cookstove_gui.forecast.tracking.belief import Belief
from cookstove_gui.stove.entries import Entry, HeatBand

_SHORT_STAY_MIN = 30.0  # a stay shorter than this asks for a step to take
_LONGEST_DELAY_MIN = 15.0  # a step that makes the heat come so much later is no help, however long it then holds
_LEAST_GAIN_MIN = 5.0  # in the band; a step that brings less is not worth advising
_BEYOND_HORIZON_MIN = 180.0  # what a stay that outlasts the futures counts for


def best_step(
    belief: Belief, band: HeatBand, rows: Sequence[Entry], present: Outlook, cautions: Sequence[Caution] = ()
) -> Alternative | None:
    """The step that holds the band longest, of those that no caution speaks against."""
    stays = present.band.stays_min.p50
    enough = max(_SHORT_STAY_MIN, minutes_of_bake(band))
    comes = present.band.line_enters_min is not None and present.band.chance_reached_3h >= EVEN_CHANCE
    if comes and (stays is None or stays >= enough):
        return None
    wise = [action for action in steps(rows) if not speak_against(cautions, _kind_of_step(action))]
    tried = what_if_each(belief, band, wise) if wise else []
    better = [
        step
        for step in tried
        if _worth(step.outlook) > _worth(present) + _LEAST_GAIN_MIN and not _delays(step.outlook, present)
    ]
    return max(better, key=lambda step: _worth(step.outlook), default=None)


def _kind_of_step(action: Action) -> str:
    """What a caution calls a step that it speaks against."""
    if action.kind is ActionKind.WOOD:
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


def what_if(belief: Belief, band: HeatBand, action: Action, ahead: Sequence[int] = AHEAD) -> Alternative:
    """What one step done now would bring."""
    return what_if_each(belief, band, [action], ahead)[0]


def what_if_each(
    belief: Belief, band: HeatBand, actions: Sequence[Action], ahead: Sequence[int] = AHEAD
) -> list[Alternative]:
    """As `what_if`, of several steps."""
    stove = belief.stove
    ovens = project_each(belief, [(Doing(action=action), oven_of(stove)) for action in actions], band)
    return [
        Alternative(action=action, outlook=outlook_of(oven, stove, band, ahead), projection=oven)
        for action, oven in zip(actions, ovens, strict=True)
    ]
