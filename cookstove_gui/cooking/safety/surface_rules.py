"""Cautions about hot surfaces: the cooktop, walls near the stove, what a hand may meet, what mirrors the room."""

from collections.abc import Callable, Iterator
from functools import partial

from cookstove_gui.cooking.fires.logged_fires import kelvin_or_none
from cookstove_gui.cooking.instruments.surface_readings import cooktop_is_shiny
from cookstove_gui.cooking.safety.about import About
from cookstove_gui.cooking.safety.moment import Moment, limit
from cookstove_gui.cooking.safety.touch_watch import material_of, seconds_to_burn
from cookstove_gui.cooking.safety.wall_rises import WallState, latest_of_each, wall_rises, wall_state
from cookstove_gui.stove.entries import Entry
from cookstove_gui.stove.stove import INFRARED, SpotKind
from cookstove_gui.units import degrees

LASTING_TOUCH = 60.0  # s, as long as skin may rest on something before it is noticed; ASTM C1055 for consumer goods
_TOUCHED = {SpotKind.SIDE: "enamelled or painted metal", SpotKind.GLASS: "glass, tile or stone"}


def _over_fired_top(moment: Moment) -> Iterator[About]:
    hottest = max(moment.of_kind(SpotKind.TOP), key=moment.heat_to_heed, default=None)
    if hottest is not None and moment.heat_to_heed(hottest) >= limit("top_over_fired"):
        yield About(spot=hottest.spot)


def _wall(state: WallState, moment: Moment) -> Iterator[About]:
    for rise in latest_of_each(wall_rises(moment.stove, moment.rows)):
        if moment.within(rise.row, "recent_reading") and wall_state(rise) is state:
            words = {
                "heat": f"{degrees(rise.wall, 'F'):.0f} °F ({degrees(rise.wall, 'C'):.0f} °C)",
                "rise": f"{rise.rise * 1.8:.0f} °F ({rise.rise:.0f} °C)",
            }
            yield About(spot=rise.row.spot, words=words)


def _hot_surface(moment: Moment) -> Iterator[About]:
    """Once a session for the sides and once for the glass, when they are first read so hot."""
    for kind, material in _TOUCHED.items():
        first = next((row for row in moment.readings(kind) if _burns(row, material)), None)
        if first is not None and moment.within(first, "just_now"):
            yield About(spot=first.spot)


def _burns(row: Entry, material: str) -> bool:
    heat = kelvin_or_none(row)
    seconds = None if heat is None else seconds_to_burn(heat, material_of(material))
    return seconds is not None and seconds <= LASTING_TOUCH


def _shiny_cooktop(moment: Moment) -> Iterator[About]:
    """Once a session, when the cooktop is first read."""
    kinds = {instrument.kind for instrument in moment.stove.instruments}
    if kinds and INFRARED not in kinds:
        return
    first = next(moment.readings(SpotKind.TOP), None)
    if cooktop_is_shiny(moment.stove) and moment.within(first, "just_now"):
        yield About()


SURFACE_RULES: dict[str, Callable[[Moment], Iterator[About]]] = {
    "over_fired_top": _over_fired_top,
    "wall_urgent": partial(_wall, WallState.AT_LIMIT),
    "wall": partial(_wall, WallState.WARM),
    "hot_surface": _hot_surface,
    "shiny_cooktop": _shiny_cooktop,
}
