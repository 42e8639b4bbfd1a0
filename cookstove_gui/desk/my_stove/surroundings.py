"""The hot surfaces of the stove in use and the walls near it, as last worked out; what its sides are made of."""

from dataclasses import dataclass, replace

from cookstove_gui.cooking.safety.touch_watch import material_of, materials
from cookstove_gui.cooking.safety.wall_rises import WallRise, latest_of_each, wall_rises
from cookstove_gui.desk.desk import Desk
from cookstove_gui.forecast.answers import Zone
from cookstove_gui.phrases.my_stove.surroundings import surface_line
from cookstove_gui.stove.stove import USUAL_SIDES, SpotKind, Stove

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
    kept = desk.stove.sides
    return kept if kept in side_materials() else USUAL_SIDES


def choose_side_material(desk: Desk, name: str) -> None:
    """Keep what the sides are made of."""
    material_of(name)
    desk.save_stove(replace(desk.stove, sides=name))


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
            spot = desk.stove.spot(zone.spot)
            label = spot.label if spot else zone.spot
            found.append(SurfaceLine(part=part, text=surface_line(label, zone, material_of(material), desk.unit)))
    return tuple(found)


def walls_here(desk: Desk) -> tuple[WallRise, ...]:
    """Every wall or floor as last read, the one with the greatest rise first."""
    return latest_of_each(wall_rises(desk.stove, desk.entries))


def _hottest(stove: Stove, zones: dict[str, Zone], kind: SpotKind) -> Zone | None:
    names = [spot.name for spot in stove.spots_of(kind) if spot.name in zones]
    return max((zones[name] for name in names), key=lambda zone: zone.p90, default=None)
