"""A spot's heat as the drawing shows it: the desk's numbers, the phrases' words, the colour of that heat."""

from dataclasses import replace

from cookstove_gui.gui.drawn_stove.face import Face
from cookstove_gui.phrases.spots import SpotHeat, captions_drawn, number_drawn, spot_name_drawn, struck_drawn
from cookstove_gui.stove.drawn.heat_colours import heat_colour, heat_ink
from cookstove_gui.stove.stove import Spot

PIXELS_PER_KELVIN = 0.8 * 1.8  # of whisker to each side: 0.8 a degree Fahrenheit


def heat_face(spot: Spot, heat: SpotHeat, unit: str, hottest: float) -> Face:
    """The face of a spot, with colours on the scale up to the hottest [K] this stove has been."""
    known = heat.kelvin
    ink = heat_ink(known, hottest) if known is not None else ""
    name = "" if spot.name == "oven_rear" else spot_name_drawn(spot)
    return Face(
        name=name,
        number=number_drawn(heat, unit),
        is_sure=heat.typed is not None,
        doubt=whisker(heat.doubt / 2) if heat.typed is None else 0.0,
        captions=captions_drawn(spot, heat, unit),
        struck=struck_drawn(heat, unit),
        fill=heat_colour(known, hottest) if known is not None else "",
        ink=ink,
        rim=ink if heat.has_pan else "",
    )


def task_face(face: Face, words: str, *, will_do: bool) -> Face:
    """A heat's face while a place for a task is looked for: its chance, or in iron why it is no place."""
    shown = replace(face, is_sure=False, is_strong=face.is_sure, doubt=0.0, struck="", captions=(words,))
    if will_do:
        return replace(shown, rim=face.ink, is_answer=True)
    return replace(shown, fill="", ink="", rim=face.fill)


def whisker(half: float) -> float:
    """Pixels to each side for a doubt [K] to each side, on a stove drawn as designed."""
    return PIXELS_PER_KELVIN * half
