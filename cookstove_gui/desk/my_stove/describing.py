"""How a stove's description changes by what its owner types; what cannot be kept raises InputProblem.

Lengths are typed in inches and feet while the screen shows °F, in centimetres and metres while it shows °C.
"""

import re
from collections.abc import Callable
from dataclasses import replace

from cookstove_gui.cooking.instruments import surface_readings
from cookstove_gui.desk.desk import Desk
from cookstove_gui.desk.my_stove.first_fires import SIGNED
from cookstove_gui.desk.my_stove.photo import PHOTO
from cookstove_gui.errors import InputProblem
from cookstove_gui.stove.redrawn import moved, plate_size, sized
from cookstove_gui.stove.stove import (
    COOKTOP_LENGTHS,
    PLATE_LENGTHS,
    Spot,
    SpotKind,
    Stove,
    spot_kind_from_name,
    stove_with_default_spots,
)
from cookstove_gui.units import METRES_PER_FOOT, parse_number, tidy

METRES_PER_INCH = METRES_PER_FOOT / 12
_SPLITS = (0.01, 0.25)  # m, of the smaller side
_KINDS_TO_ADD = {
    "top": "on the cooktop",
    "oven": "in the oven",
    "side": "on a side of the stove",
    "wall": "on a wall or floor",
}
_ONE_OF_EACH = {"glass": "on the firebox door", "flue": "on the pipe", "room": "in the room"}
_LOG_PREFIX = {SpotKind.GLASS: "door"}  # where it is not the kind's own word


def kinds_to_add(stove: Stove) -> dict[str, str]:
    """Kinds of spot that an owner may add, with the words for them; of some there is one at most."""
    return _KINDS_TO_ADD | {kind: said for kind, said in _ONE_OF_EACH.items() if not stove.spots_of(SpotKind(kind))}


def surface_warning(stove: Stove) -> str:
    """What is wrong with reading a cooktop like this one by infrared; empty for a dull one."""
    return surface_readings.SHINY_ADVICE if surface_readings.cooktop_is_shiny(stove) else ""


def surfaces(stove: Stove) -> tuple[str, ...]:
    """What a cooktop may be made of; the stove's own word is always among them."""
    known = tuple(surface.name for surface in surface_readings.surfaces())
    return known if stove.cooktop_surface in known else (stove.cooktop_surface, *known)


def short_unit(desk: Desk) -> str:
    """The unit of a stove's own lengths."""
    return "in" if desk.unit == "F" else "cm"


def height_unit(desk: Desk) -> str:
    """The unit of heights above the sea."""
    return "ft" if desk.unit == "F" else "m"


def length_text(metres: float, unit: str) -> str:
    """A length [m] as a number in `in`, `cm`, `ft` or `m`."""
    return tidy(metres / _metres_per(unit), 0 if unit in ("ft", "m") else 1)


def length_from_text(text: str, what: str, unit: str, limits: tuple[float, float]) -> float:
    """A length [m] from a number in `in`, `cm`, `ft` or `m`; raises InputProblem outside its limits [m]."""
    metres = parse_number(text, what) * _metres_per(unit)
    low, high = limits
    if not low <= metres <= high:
        raise InputProblem(
            f"{text.strip()} {unit} isn't a plausible {what}; type a number from {length_text(low, unit)} to "
            f"{length_text(high, unit)}."
        )
    return metres


def split_thickness(text: str, unit: str) -> float:
    """The smaller side of a split [m] from a number in `in` or `cm`."""
    return length_from_text(text, "split thickness", unit, _SPLITS)


def set_size(desk: Desk, width_text: str | None = None, depth_text: str | None = None) -> None:
    """Keep the cooktop's width or depth."""
    stove = desk.stove
    if width_text is not None:
        stove = replace(stove, cooktop_width=length_from_text(width_text, "width", short_unit(desk), COOKTOP_LENGTHS))
    if depth_text is not None:
        stove = replace(stove, cooktop_depth=length_from_text(depth_text, "depth", short_unit(desk), COOKTOP_LENGTHS))
    desk.save_stove(stove)


def add_stove(desk: Desk, name: str) -> None:
    """Describe one more stove and use it."""
    tidied = _stove_name(name)
    if tidied in {stove.name for stove in desk.stoves}:
        raise InputProblem(f"There is a stove “{tidied}” already; give this one another name.")
    desk.save_stove(stove_with_default_spots(tidied))


def rename_stove(desk: Desk, name: str) -> None:
    """Give the stove another name; its sessions go with it."""
    tidied, old = _stove_name(name), desk.stove.name
    if tidied == old:
        return
    if tidied in {stove.name for stove in desk.stoves}:
        raise InputProblem(f"There is a stove “{tidied}” already; give this one another name.")
    number = desk.session.number if desk.session else None
    desk.logbook.rename_stove(old, tidied)
    for kept in (PHOTO, SIGNED):
        desk.set_setting(kept + tidied, desk.setting(kept + old))
        desk.set_setting(kept + old, "")
    desk.choose_stove(tidied)
    if number is not None and (desk.session is None or desk.session.number != number):
        desk.open_session(number)


def add_spot(desk: Desk, label: str, kind: SpotKind) -> Spot:
    """Add a spot of the owner's own; it is read last on the walk."""
    stove = desk.stove
    tidied = _spot_label(stove, label)
    word = re.sub(r"[^a-z0-9]+", "_", tidied.casefold()).strip("_") or "spot"
    # The name in the log file tells the kind, so that a log speaks for itself without its stove's file.
    name = word if spot_kind_from_name(word) is kind else f"{_LOG_PREFIX.get(kind, kind)}_{word}"
    taken = {spot.name for spot in stove.spots}
    number = 2
    free = name
    while free in taken:
        free, number = f"{name}_{number}", number + 1
    spot = Spot(name=free, label=tidied, kind=kind)
    desk.save_stove(replace(stove, spots=(*stove.spots, spot)))
    return spot


def lay_spot(desk: Desk, name: str, kind: SpotKind) -> Spot:
    """Say that a spot nobody has read yet lies in another part of the stove; its name in the log changes with it."""
    stove = desk.stove
    spot = _spot(stove, name)
    if spot.kind is kind:
        return spot
    if desk.logbook.facts.readings_by_spot(stove.name).get(name):
        raise InputProblem(f"“{spot.label}” has been read where it lies; add another spot instead.")
    remove_spot(desk, name)
    return add_spot(desk, spot.label, kind)


def rename_spot(desk: Desk, name: str, label: str) -> None:
    """Show a spot under another label; its name in the log stays."""
    stove = desk.stove
    if label.strip() == _spot(stove, name).label:
        return
    tidied = _spot_label(stove, label)
    change_spot(desk, name, lambda spot: replace(spot, label=tidied))


def place_spot(desk: Desk, name: str, *, across_text: str | None = None, deep_text: str | None = None) -> None:
    """Place a spot by its distance from the left and the front: on the cooktop by measure, in the oven in per cent."""
    stove = desk.stove
    spot = _spot(stove, name)
    across_span, deep_span, unit = span_of(desk, spot)
    x = spot.x if across_text is None else _share(across_text, across_span, unit, "left")
    y = spot.y if deep_text is None else _share(deep_text, deep_span, unit, "front")
    change_spot(desk, name, lambda old: replace(old, x=x, y=y))


def size_spot(desk: Desk, name: str, *, width_text: str | None = None, depth_text: str | None = None) -> None:
    """Keep the width or depth of a spot's plate."""
    stove, unit = desk.stove, short_unit(desk)
    width, depth = plate_size(stove, _spot(stove, name))
    if width_text is not None:
        width = length_from_text(width_text, "width of a plate", unit, PLATE_LENGTHS)
    if depth_text is not None:
        depth = length_from_text(depth_text, "depth of a plate", unit, PLATE_LENGTHS)
    desk.save_stove(sized(stove, name, width, depth))


def size_of(desk: Desk, spot: Spot) -> tuple[str, str]:
    """Width and depth of a spot's plate, to be typed again."""
    width, depth = plate_size(desk.stove, spot)
    return length_text(width, short_unit(desk)), length_text(depth, short_unit(desk))


def nudged(desk: Desk, name: str, right: int, back: int) -> Stove:
    """A spot an inch or a centimetre further to the right and to the back; in the oven so many per cent."""
    stove = desk.stove
    spot = _spot(stove, name)
    across, deep, _ = span_of(desk, spot)
    return moved(stove, name, spot.x + right / across, spot.y + back / deep)


def stretched(desk: Desk, name: str, wider: int, deeper: int) -> Stove:
    """A plate an inch or a centimetre wider and deeper."""
    stove, step = desk.stove, _metres_per(short_unit(desk))
    width, depth = plate_size(stove, _spot(stove, name))
    return sized(stove, name, width + wider * step, depth + deeper * step)


def scaled(desk: Desk, name: str, wide: float, deep: float) -> Stove:
    """A plate so many times as wide and as deep."""
    width, depth = plate_size(desk.stove, _spot(desk.stove, name))
    return sized(desk.stove, name, width * wide, depth * deep)


def free_label(stove: Stove) -> str:
    """A name for a new spot until its owner types one."""
    taken = {spot.label.casefold() for spot in stove.spots}
    number = 1
    while f"spot {number}" in taken:
        number += 1
    return f"spot {number}"


def span_of(desk: Desk, spot: Spot) -> tuple[float, float, str]:
    """Width and depth that a spot is placed in, and their unit."""
    if spot.kind is not SpotKind.TOP:
        return 100.0, 100.0, "%"
    unit = short_unit(desk)
    per = _metres_per(unit)
    return desk.stove.cooktop_width / per, desk.stove.cooktop_depth / per, unit


def remove_spot(desk: Desk, name: str) -> Stove:
    """Take a spot off the stove's plan; what was read there stays in the log. Returns the stove as it was."""
    stove = desk.stove
    spot = _spot(stove, name)
    if spot.kind is SpotKind.OVEN and len(stove.spots_of(SpotKind.OVEN)) == 1:
        raise InputProblem(f"“{spot.label}” is the oven's only spot, and everything is worked out from it; keep it.")
    desk.save_stove(replace(stove, spots=tuple(other for other in stove.spots if other.name != name)))
    return stove


def _spot(stove: Stove, name: str) -> Spot:
    found = stove.spot(name)
    if found is None:
        raise InputProblem(f"This stove has no spot “{name}” any more; choose another one.")
    return found


def change_spot(desk: Desk, name: str, change: Callable[[Spot], Spot]) -> None:
    """Keep a spot described otherwise."""
    stove = desk.stove
    desk.save_stove(replace(stove, spots=tuple(change(spot) if spot.name == name else spot for spot in stove.spots)))


def _stove_name(text: str) -> str:
    if not text.strip():
        raise InputProblem("The stove has no name; type one, such as Kitchen stove.")
    return text.strip()


def _spot_label(stove: Stove, text: str) -> str:
    tidied = " ".join(text.split())
    if not tidied:
        raise InputProblem("The spot has no name; type one, such as warming shelf.")
    if len(tidied) > 30:
        raise InputProblem("That name is too long to be read on the plan; use up to 30 letters.")
    if tidied.casefold() in {spot.label.casefold() for spot in stove.spots}:
        raise InputProblem(f"There is a spot “{tidied}” already; give this one another name.")
    return tidied


def _share(text: str, span: float, unit: str, edge: str) -> float:
    number = parse_number(text.removesuffix("%"), "distance")
    if not -0.001 <= number <= span * 1.001:
        whole = "oven" if unit == "%" else "cooktop"
        raise InputProblem(
            f"{text.strip()} {unit} from the {edge} is off the {whole}; type a number from 0 to {tidy(span)}."
        )
    return min(max(number / span, 0.0), 1.0)


def _metres_per(unit: str) -> float:
    return {"in": METRES_PER_INCH, "cm": 0.01, "ft": METRES_PER_FOOT, "m": 1.0}[unit]
