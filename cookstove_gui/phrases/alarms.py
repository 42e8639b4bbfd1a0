"""What an alarm says: in the line on the screen, and spoken."""

from datetime import timedelta

from cookstove_gui.cooking.supper.alarms import Alarm, AlarmKind
from cookstove_gui.cooking.supper.plan import FireStep
from cookstove_gui.phrases.edge import Edge, in_sentence, spot_label, whole
from cookstove_gui.phrases.plan.fire_steps import fire_order, splits_words
from cookstove_gui.phrases.spoken import spoken
from cookstove_gui.stove.stove import Stove
from cookstove_gui.units import degrees

TRIED = "This is how an alarm sounds."
_LATE = timedelta(minutes=2)


def alarm_rungs(alarm: Alarm, stove: Stove, edge: Edge) -> tuple[str, ...]:
    """The line from long to short; one that is late says when it was due."""
    first = alarm_words(alarm, stove, edge.unit)
    whole = f"{first}{_more(alarm)}"
    if edge.now - alarm.at >= _LATE:
        return tuple(dict.fromkeys((f"{whole} It was due at {edge.at(alarm.at)}.", f"{whole}", first)))
    return tuple(dict.fromkeys((whole, first)))


def heard_words(rang: bool, spoke: bool) -> str:
    """What was to be heard just now on this machine."""
    if rang and spoke:
        return "You should hear a bell and a voice."
    if rang:
        return "You should hear a bell. There is no voice here."
    if spoke:
        return "You should hear a voice. There is no bell here but the system's own beep."
    return "No sound here but the system's own beep, if it has one; the line on the screen always shows."


def sound_words(bell: bool, voice: bool, quiet: bool) -> str:
    """How alarms are heard, as it stands beside the plan."""
    if quiet:
        return "quiet now"
    return " and ".join(word for word, wanted in (("bell", bell), ("voice", voice)) if wanted) or "no sound"


def bell_words(is_silent: bool) -> str:
    """What a bell beside a clock means."""
    return "No sound then; the line shows. Press for its bell." if is_silent else "An alarm rings then. Press for none."


def more_alarms_words(more: int) -> str:
    """That others ring too; empty where none does. Never a bare number: after `Add 2 splits.` it would count splits."""
    return f" {more} more alarm{'s' if more > 1 else ''}." if more > 0 else ""


def spoken_words(alarm: Alarm, stove: Stove, unit: str) -> str:
    """What the voice says."""
    return spoken(alarm_words(alarm, stove, unit))


def alarm_words(alarm: Alarm, stove: Stove, unit: str) -> str:
    """What to do, in one short sentence."""
    name, spot = _the(alarm.about), spot_label(stove, alarm.spot) if alarm.spot else ""
    match alarm.kind:
        case AlarmKind.TAKE_OUT:
            return f"Take {name} {'off' if spot else 'out'} if done."
        case AlarmKind.TURN:
            return f"Turn {name}."
        case AlarmKind.PUT_IN:
            if spot:
                return f"Put {name} on, {spot}."
            return f"Put {name} in{_if_hot_enough(alarm, unit)}."
        case AlarmKind.LOOK_AT:
            return f"Look at {name}."
        case AlarmKind.LEAVING_BAND:
            return f"The oven is about to leave {_heat(alarm.about)}."
        case AlarmKind.RELOAD:
            return f"Add {splits_words(alarm.splits)}." if alarm.splits else "Add wood."
        case AlarmKind.BAND_REACHED:
            return f"The oven is likely at {_heat(alarm.about)}."
        case AlarmKind.NEXT_READING:
            return f"Read the {spot_label(stove, alarm.about)}."
    if alarm.about:
        return f"{alarm.about}: {alarm.what}."
    order = fire_order(FireStep(alarm.what), alarm.splits, alarm.opening)
    return f"{order[:1].upper()}{order[1:]}."


def _more(alarm: Alarm) -> str:
    """Who decides, where food or fire is concerned."""
    if alarm.kind is AlarmKind.TAKE_OUT:
        return " The look and the thermometer decide, not the clock."
    if alarm.kind is AlarmKind.BAND_REACHED:
        return " Read it to be sure."
    return ""


def _if_hot_enough(alarm: Alarm, unit: str) -> str:
    return "" if alarm.heat is None else f", if the oven is at {whole(degrees(alarm.heat, unit))} °{unit}"


def _the(name: str) -> str:
    """A dish's name inside a sentence: “the apple pie”."""
    return f"the {in_sentence(name)}" if name else "it"


def _heat(name: str) -> str:
    return name if any(letter.isdigit() for letter in name) else f"{name} heat"
