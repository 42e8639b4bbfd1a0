"""How the flue stands and how the chimney draws, in words.

Bands of heat are common practice and every line defers to the manuals and to a licensed sweep.
"""

from datetime import timedelta

import numpy as np

from cookstove_gui.cooking.safety.chimney_watch import Draught, FlueBand, draught, flue_answer, flue_bands
from cookstove_gui.cooking.safety.wall_rises import USUAL_ROOM
from cookstove_gui.desk.desk import Desk
from cookstove_gui.desk.my_stove.chimney import chimney_here
from cookstove_gui.desk.my_stove.site import site_here
from cookstove_gui.forecast.answers import FloatArray
from cookstove_gui.resource_files import table
from cookstove_gui.stove.stove import SpotKind
from cookstove_gui.units import (
    PASCALS_PER_INCH_OF_WATER,
    degrees,
)

OUTDOORS_HOLDS = timedelta(hours=6)  # after that the air outdoors is another one
_NO_OUTDOORS = " Type how cold it is outdoors now: what stands below is taken for it."
_COOLEST_PIPE, _HOTTEST_PIPE = 240.0, 860.0  # K, what the draught's physics takes
_LIKELY = 0.3  # chance from which what may come within the hour is spoken of


def flue_spot(desk: Desk) -> str:
    """Name of the spot that is read on the flue; empty without one."""
    return next((spot.name for spot in desk.stove.spots_of(SpotKind.FLUE)), "")


def pipe_now(desk: Desk) -> FloatArray | None:
    """Equally likely heats [K] of the pipe now; none before anything was read or lit."""
    standing, spot = desk.standing, flue_spot(desk)
    if standing is None or not desk.entries or spot not in standing.projection.spots:
        return None
    return np.clip(standing.projection.of(spot)[:, 0], _COOLEST_PIPE, _HOTTEST_PIPE)


def draught_here(desk: Desk) -> Draught:
    """The draught now; of a flue as warm as the room while no fire is known."""
    here = chimney_here(desk)
    room = _room(desk)
    pipe = pipe_now(desk)
    return draught(
        here.chimney, room if pipe is None else pipe, here.outdoors, room=room, pressure=site_here(desk).pressure
    )


def draught_line(desk: Desk) -> str:
    """The draught in words."""
    found = draught_here(desk)
    low, middle, high = (value or 0.0 for value in (found.pascals.p10, found.pascals.p50, found.pascals.p90))
    inches = middle / PASCALS_PER_INCH_OF_WATER
    usual = table("flue.toml")["draught"]["usual_pa"]
    state = "With the flue at room heat it draws" if pipe_now(desk) is None else "The flue draws"
    if found.backwards:
        return f"{state} the wrong way, by about {-middle:.0f} Pa ({-inches:.3f} in. of water).{_taken(desk)}"
    between = "" if high - low < 1.0 else f", between {low:.0f} and {high:.0f}"
    return (
        f"{state} about {middle:.0f} Pa ({inches:.3f} in. of water){between}, before wind, bends and soot. Most stoves "
        f"want {usual[0]} to {usual[1]} Pa at working heat (common practice; the stove’s manual says).{_taken(desk)}"
    )


def _taken(desk: Desk) -> str:
    here = chimney_here(desk)
    if here.is_described:
        age = None if here.outdoors_at is None else desk.clock() - here.outdoors_at
        if age is not None and age <= OUTDOORS_HOLDS:
            return ""
        return _NO_OUTDOORS if age is None else " Type how cold it is outdoors now: that was typed long ago."
    return " The chimney was not described yet: what stands below is taken for it."


def draught_caution(desk: Desk) -> str:
    """What a weak draught or one the wrong way asks for; empty where it draws."""
    found = draught_here(desk)
    if found.backwards:
        words = "The flue is colder than the air outdoors, so smoke comes into the room. Warm it before you light."
    elif found.weak:
        words = "Such a draught is weak, and smoke may come out when a door opens."
    else:
        return ""
    cold = next(row for row in table("cautions.toml")["caution"] if row["key"] == "cold_flue")
    return f"{words} {cold['text']} {found.decides}"


def heat_line(desk: Desk) -> str:
    """How warm the flue is, in which band, and what may come within the hour."""
    standing, spot = desk.standing, flue_spot(desk)
    if not spot:
        return "This stove has no spot on its flue; add one under Spots whose name begins with flue."
    found = flue_answer(standing.projection, spot) if standing is not None and desk.entries else None
    zone = standing.zones.get(spot) if standing is not None else None
    if found is None or zone is None:
        return "Read the flue pipe about 18 in. (45 cm) above the stove, and how it stands is told here."
    read = "" if zone.last_reading is not None else ", as reckoned: it was not read in this session"
    line = (
        f"The flue pipe is about {degrees(zone.p50, desk.unit):.0f} °{desk.unit}{read}: {found.band.name}. "
        f"{_capital(found.band.meaning)}."
    )
    if found.band.name != "too hot" and found.too_hot_within_hour >= _LIKELY:
        line += " Within the hour it may get too hot."
    if found.band.name == "working" and found.too_cool_within_hour >= _LIKELY:
        line += " Within the hour it may get too cool."
    return line


def band_lines(desk: Desk) -> str:
    """The bands that are common practice, on the pipe and in it."""
    pipe = ", ".join(_band_text(band, desk.unit) for band in flue_bands())
    gas = next(band for band in flue_bands("gas") if band.name == "working")
    low, high = (degrees(value, desk.unit) for value in (gas.low, gas.high))
    return (
        f"On the surface of single-wall pipe: {pipe}. A probe in the gas shows far more ({low:.0f} to {high:.0f} "
        f"°{desk.unit} at work), double-wall pipe far less. All of it is common practice, no standard."
    )


def who_decides() -> str:
    """The sentence that ends every word about the flue."""
    return str(table("flue.toml")["draught"]["decides"])


def _band_text(band: FlueBand, unit: str) -> str:
    low, high = (f"{degrees(value, unit):.0f}" for value in (band.low, band.high))
    if band.name == "too cool":
        return f"{band.name} below {high} °{unit}"
    return f"{band.name} above {low} °{unit}" if band.name == "too hot" else f"{band.name} from {low} to {high} °{unit}"


def _capital(text: str) -> str:
    return f"{text[:1].upper()}{text[1:]}"


def _room(desk: Desk) -> float:
    zone = next(
        (
            desk.standing.zones[spot.name]
            for spot in desk.stove.spots_of(SpotKind.ROOM)
            if desk.standing is not None and spot.name in desk.standing.zones
        ),
        None,
    )
    return USUAL_ROOM if zone is None or zone.last_reading is None else min(max(zone.p50, 260.0), 320.0)
