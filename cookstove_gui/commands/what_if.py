"""What a cook types behind `--if`: “two splits”, “2 kg”, “kindling”, “air 0.3”, “bypass closed”, “leave”."""

import re

from cookstove_gui.errors import InputProblem
from cookstove_gui.forecast.answers import LEAVE, Action, ActionKind
from cookstove_gui.stove.entries import USUAL_KINDLING, USUAL_SPLIT
from cookstove_gui.units import kilograms, parse_number

_FILLERS = {"add", "put", "on", "the", "to", "at", "now", "it", "of", "wood", "set", "turn", "leave"}
_COUNTS = {"a": 1.0, "an": 1.0, "one": 1.0, "two": 2.0, "three": 3.0, "four": 4.0, "half": 0.5}
_POSITIONS = {"open": 1.0, "wide": 1.0, "opened": 1.0, "shut": 0.0, "closed": 0.0, "close": 0.0, "half": 0.5}
_PIECES = re.compile(r"(?:split|log|piece)s?")
_HOW = "write “two splits”, “2 kg”, “air 0.3”, “bypass closed” or “leave”"


def action_from_text(text: str) -> Action:
    """The action meant; raises InputProblem for anything else."""
    words = re.findall(r"[a-z]+|\d*[.,]?\d+(?:\s*%)?|\S", text.casefold())
    kept = [word for word in words if word not in _FILLERS]
    if not kept and "leave" in words:
        return LEAVE
    if kept == ["kindling"]:
        return Action(kind=ActionKind.KINDLING, value=USUAL_KINDLING)
    for name, kind in (("air", ActionKind.AIR), ("bypass", ActionKind.BYPASS)):
        if name in kept:
            kept.remove(name)
            return Action(kind=kind, value=_fraction(kept, text))
    return Action(kind=ActionKind.WOOD, value=_mass(kept, text))


def _fraction(words: list[str], text: str) -> float:
    numbers = [word for word in words if word[-1].isdigit() or word.endswith("%")]
    positions = [_POSITIONS[word] for word in words if word in _POSITIONS]
    if len(numbers) + len(positions) != len(words) or not words or len(numbers) > 1:
        raise InputProblem(f"“{text}” is no step this program knows; {_HOW}.")
    if not numbers:
        return 0.5 if 0.5 in positions else positions[0]
    number = parse_number(numbers[0].removesuffix("%").strip())
    value = number / 100.0 if numbers[0].endswith("%") else number
    if not 0.0 <= value <= 1.0:
        raise InputProblem(f"“{text}” is not from 0 (shut) to 1 (wide open); write for example “air 0.3”.")
    return value


def _mass(words: list[str], text: str) -> float:
    match words:
        case [number, ("kg" | "lb" | "lbs") as unit] if number[-1].isdigit():
            mass = kilograms(parse_number(number), unit.removesuffix("s"))
        case [count, pieces] if _PIECES.fullmatch(pieces) and (count in _COUNTS or count[-1].isdigit()):
            pieces_count = _COUNTS[count] if count in _COUNTS else parse_number(count)
            mass = pieces_count * USUAL_SPLIT
        case _:
            raise InputProblem(f"“{text}” is no step this program knows; {_HOW}.")
    if not 0.0 < mass <= 30.0:
        raise InputProblem(f"“{text}” is more or less wood than one load; write for example “two splits” or “2 kg”.")
    return mass
