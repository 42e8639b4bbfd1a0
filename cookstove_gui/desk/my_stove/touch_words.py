"""How soon the stove's hot surfaces burn, and how far walls near it are from what heater standards bear, in words.

Cautions only: no line calls a surface or a distance safe.
"""

from collections.abc import Iterator
from dataclasses import dataclass

from cookstove_gui.cooking.safety.touch_watch import (
    GUARD_DECIDES,
    Material,
    RiseAnswer,
    clearance_decides,
    material_of,
    materials,
    rise_answers,
    touch_answer,
)
from cookstove_gui.cooking.safety.wall_rises import WallRise, latest_of_each, wall_rises
from cookstove_gui.desk.desk import Desk
from cookstove_gui.desk.my_stove.kept_rows import SIDES, keep_row, kept_row
from cookstove_gui.errors import InputProblem
from cookstove_gui.forecast.answers import Zone
from cookstove_gui.stove.stove import SpotKind, Stove
from cookstove_gui.units import clock_text, degrees, degrees_difference

NO_WALL = (
    "No wall or floor near the stove was read in this session. Add one under Spots, read it while the stove is hot, "
    "and its rise above the room stands here."
)
NO_HEAT = "Nothing was read in this session yet: read the stove on the Cook page, and its surfaces stand here."
ALWAYS = "Any part of a stove that was lit may be hot long after the fire is out. Keep children and cloth away from it."
_USUAL_SIDE = "enamelled or painted metal"
_GLASS = "glass, tile or stone"
_TOPS = {"soapstone": "soapstone", "enamel": "enamelled or painted metal", "stove paint": "enamelled or painted metal"}


@dataclass(frozen=True, slots=True, kw_only=True)
class SurfaceLine:
    """One hot part of the stove."""

    part: str
    text: str


def side_materials() -> tuple[str, ...]:
    """What a stove's sides may be made of, as far as the burn tables know it."""
    return tuple(material.name for material in materials() if material.name not in ("wood", "plastic"))


def side_material(desk: Desk) -> str:
    """What the sides of the stove in use are made of."""
    kept = str((kept_row(desk, SIDES) or {}).get("material", _USUAL_SIDE))
    return kept if kept in side_materials() else _USUAL_SIDE


def choose_side_material(desk: Desk, name: str) -> None:
    """Keep what the sides are made of."""
    material_of(name)
    keep_row(desk, SIDES, {"material": name})


def surface_lines(desk: Desk) -> tuple[SurfaceLine, ...]:
    """The hottest of each part that a hand may meet, by what it may well be now, and how soon it burns."""
    if desk.standing is None or not desk.entries:
        return ()
    parts = (
        (SpotKind.TOP, "Cooktop", _TOPS.get(desk.stove.cooktop_surface, "bare metal")),
        (SpotKind.SIDE, "Sides", side_material(desk)),
        (SpotKind.GLASS, "Glass of the door", _GLASS),
    )
    found = []
    for kind, part, material in parts:
        zone = _hottest(desk.stove, desk.standing.zones, kind)
        if zone is not None:
            found.append(SurfaceLine(part=part, text=_surface_text(desk, zone, material_of(material))))
    return tuple(found)


def _hottest(stove: Stove, zones: dict[str, Zone], kind: SpotKind) -> Zone | None:
    names = [spot.name for spot in stove.spots_of(kind) if spot.name in zones]
    return max((zones[name] for name in names), key=lambda zone: zone.p90, default=None)


def _surface_text(desk: Desk, zone: Zone, material: Material) -> str:
    spot = desk.stove.spot(zone.spot)
    label = spot.label if spot else zone.spot
    label = f"{label[:1].upper()}{label[1:]}"
    heat = f"{degrees(zone.p50, desk.unit):.0f} °{desk.unit}"
    hot = degrees(zone.p90, desk.unit)
    said = touch_answer(zone.p90, material).words.removesuffix(GUARD_DECIDES).strip()
    return f"{label} about {heat}, perhaps {hot:.0f}; {material.name}. {said}"


def wall_lines(desk: Desk) -> tuple[str, ...]:
    """Every wall or floor as last read: its rise, and beside it each limit; the last line says who decides."""
    rises = latest_of_each(wall_rises(desk.stove, desk.entries))
    return (*(_wall_text(desk, rise) for rise in rises), clearance_decides()) if rises else ()


def _wall_text(desk: Desk, rise: WallRise) -> str:
    unit = desk.unit
    clock = clock_text(rise.row.at, rise.row.offset_minutes)
    label = f"{rise.label[:1].upper()}{rise.label[1:]}"
    room = f"{'' if rise.room_was_read else 'the room taken as '}{degrees(rise.room, unit):.0f} °{unit}"
    head = (
        f"{label}, read at {clock}: {degrees_difference(rise.rise, unit):.0f} °{unit} above the room "
        f"({degrees(rise.wall, unit):.0f} against {room})."
    )
    return "\n".join((head, *_limit_lines(rise, unit)))


def _limit_lines(rise: WallRise, unit: str) -> Iterator[str]:
    try:
        answers = rise_answers(rise.wall, rise.room)
    except InputProblem as problem:
        yield problem.sentence
        return
    for answer in answers:
        yield _limit_text(answer, unit)


def _limit_text(answer: RiseAnswer, unit: str) -> str:
    limit = f"{degrees_difference(answer.limit, unit):.0f} °{unit}"
    words = answer.words.removesuffix(clearance_decides()).strip()
    share = f"{max(answer.share, 0.0):.0%}".replace("%", " %")
    sign = "⚠ " if answer.share >= 1.0 else ""
    return f"{sign}Against {answer.limit_name}, {limit} in tests of heaters: {share} of it. {words}"
