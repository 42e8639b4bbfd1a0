"""The flue of the stove in use: its heat as last projected, and the draught that its chimney makes of it."""

from datetime import timedelta

import numpy as np

from cookstove_gui.cooking.instruments.kitchen import room_heat
from cookstove_gui.cooking.safety.chimney_watch import Draught, draught, flue_answer
from cookstove_gui.desk.desk import Desk
from cookstove_gui.desk.my_stove.chimney import chimney_here
from cookstove_gui.desk.my_stove.site import site_here
from cookstove_gui.forecast.answers import FloatArray
from cookstove_gui.phrases.my_stove import flue as sentences
from cookstove_gui.phrases.my_stove.flue import Assumed
from cookstove_gui.stove.stove import SpotKind

OUTDOORS_HOLDS = timedelta(hours=6)  # after that it has warmed or cooled outdoors
_COOLEST_PIPE, _HOTTEST_PIPE = 240.0, 860.0  # K, what the draught's physics takes


def pipe_now(desk: Desk) -> FloatArray | None:
    """Equally likely heats [K] of the pipe now; none before anything was read or lit."""
    standing, spot = desk.standing, _flue_spot(desk)
    if standing is None or not desk.entries or spot not in standing.projection.spots:
        return None
    return np.clip(standing.projection.of(spot)[:, 0], _COOLEST_PIPE, _HOTTEST_PIPE)


def draught_here(desk: Desk) -> Draught:
    """The draught now; of a flue as warm as the room while no fire is known."""
    here = chimney_here(desk)
    room = room_heat(desk.stove, desk.standing.zones if desk.standing else {})
    pipe = pipe_now(desk)
    return draught(
        here.chimney,
        room if pipe is None else pipe,
        here.outdoors,
        reading=desk.stove.flue_reading,
        room=room,
        pressure=site_here(desk).pressure,
    )


def draught_line(desk: Desk) -> str:
    """The draught now, in words."""
    return sentences.draught_line(draught_here(desk), pipe_is_known=pipe_now(desk) is not None, assumed=_assumed(desk))


def heat_line(desk: Desk) -> str:
    """How warm the flue is, or how to find out."""
    standing, spot = desk.standing, _flue_spot(desk)
    if not spot:
        return sentences.NO_FLUE_SPOT
    found = (
        flue_answer(standing.projection, spot, desk.stove.flue_reading)
        if standing is not None and desk.entries
        else None
    )
    zone = standing.zones.get(spot) if standing is not None else None
    return (
        sentences.READ_THE_FLUE if found is None or zone is None else sentences.flue_heat_line(found, zone, desk.unit)
    )


def _flue_spot(desk: Desk) -> str:
    return next((spot.name for spot in desk.stove.spots_of(SpotKind.FLUE)), "")


def _assumed(desk: Desk) -> Assumed:
    here = chimney_here(desk)
    if not here.is_described:
        return Assumed.CHIMNEY
    if here.outdoors_at is None:
        return Assumed.OUTDOORS
    return Assumed.NOTHING if desk.clock() - here.outdoors_at <= OUTDOORS_HOLDS else Assumed.OLD_OUTDOORS
