"""What stands above the cooktop at its back: pipe with its bypass lever, warming closet, and words on the page."""

from dataclasses import dataclass

from cookstove_gui.stove.drawn.shapes import Box
from cookstove_gui.stove.stove import Firebox, FluePlace, SpotKind, Stove

HEIGHT = 58.0  # px, as designed
_FLUE, _FLUE_EACH = 84.0, 56.0  # width of the pipe; at least so much for each spot on it
_ROOM, _ROOMS = 96.0, 180.0  # width for the words of one room, of several
_EDGE = 55.0  # from the pipe to the stove's side


@dataclass(frozen=True, slots=True, kw_only=True)
class Above:
    """Its parts; the closet is none where the stove has none."""

    pipe: Box
    other_pipes: dict[FluePlace, Box]  # where it might leave the stove instead
    collar: Box
    lever: Box  # a line, from its grip to the pipe
    bypass_words: Box
    flue_words: Box
    lever_is_left: bool  # of the pipe
    room: Box
    closet: Box | None


def above(stove: Stove, stand: Box, page: Box, scale: tuple[float, float]) -> Above:
    """Above a stove that stands in a part of the page; `scale` is across and down, 1 as designed."""
    across, down = scale
    flues, rooms = (len(stove.spots_of(kind)) for kind in (SpotKind.FLUE, SpotKind.ROOM))
    wide = max(_FLUE, _FLUE_EACH * flues) * across
    place = flue_place(stove)
    pipes = {
        at: Box(x, 0.0, wide, (HEIGHT - 8) * down)
        for at, x in (
            (FluePlace.LEFT, stand.x + _EDGE * across),
            (FluePlace.MIDDLE, stand.centre[0] - wide / 2),
            (FluePlace.RIGHT, stand.right - _EDGE * across - wide),
        )
    }
    pipe = pipes.pop(place)
    lever = Box(pipe.x - 46 * across, 36 * down, 42 * across, 0.0)
    bypass = Box(pipe.x - 118 * across, 8 * down, 102 * across, 20 * down)
    flue = Box(pipe.right + 10 * across, 8 * down, 40 * across, 20 * down)
    is_mirrored = place is FluePlace.LEFT
    room = Box(page.x, 2 * down, (_ROOM if rooms < 2 else _ROOMS) * across, 46 * down)
    if is_mirrored:
        lever, bypass, flue = (part.mirrored(pipe.centre[0]) for part in (lever, bypass, flue))
        room = room.mirrored(page.centre[0])
    return Above(
        pipe=pipe,
        other_pipes=pipes,
        collar=Box(pipe.x - 4 * across, pipe.bottom, pipe.width + 8 * across, 8 * down),
        lever=lever,
        bypass_words=bypass,
        flue_words=flue,
        lever_is_left=not is_mirrored,
        room=room,
        closet=_closet(place, pipe, lever, room, stand, scale) if stove.has_warming_closet else None,
    )


def flue_place(stove: Stove) -> FluePlace:
    """Where the pipe is drawn: as said, else away from the firebox."""
    if stove.flue_place is not FluePlace.UNSAID:
        return stove.flue_place
    return FluePlace.LEFT if stove.firebox is Firebox.RIGHT else FluePlace.RIGHT


def _closet(place: FluePlace, pipe: Box, lever: Box, room: Box, stand: Box, scale: tuple[float, float]) -> Box:
    """A low box at the back, where neither pipe nor lever nor words stand."""
    across, down = scale
    gap = 6 * across
    left, right = {
        FluePlace.RIGHT: (room.right, lever.x),
        FluePlace.LEFT: (lever.right, room.x),
        FluePlace.MIDDLE: (pipe.right, stand.right - 36 * across),
    }[place]
    return Box(left + gap, 30 * down, right - left - 2 * gap, (HEIGHT - 33) * down)
