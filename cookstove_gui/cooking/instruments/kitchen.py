"""How warm the kitchen is, for all that loses heat to it or is kept in it."""

from collections.abc import Mapping

from cookstove_gui.forecast.answers import Zone
from cookstove_gui.stove.stove import USUAL_ROOM, SpotKind, Stove

COLDEST_ROOM, WARMEST_ROOM = 260.0, 320.0  # K; a reading beyond these is no kitchen's


def room_heat(stove: Stove, zones: Mapping[str, Zone]) -> float:
    """The room's temperature [K] if it was read in this session, kept to what a kitchen can be; a usual one if not."""
    zone = next((zones[spot.name] for spot in stove.spots_of(SpotKind.ROOM) if spot.name in zones), None)
    if zone is None or zone.last_reading is None:
        return USUAL_ROOM
    return min(max(zone.p50, COLDEST_ROOM), WARMEST_ROOM)
