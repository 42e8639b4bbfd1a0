"""Cautions about food and what it is cooked in: hot fat, steam, food kept warm or cooling, beans, canning."""

from collections.abc import Callable, Iterator
from math import exp

from cookstove_gui.cooking.fit.tasks import task_of
from cookstove_gui.cooking.pans.boiling_time import pan_lag
from cookstove_gui.cooking.pans.catalogue import pans
from cookstove_gui.cooking.safety.about import About
from cookstove_gui.cooking.safety.fats import Fat, fats, fats_named, in_words
from cookstove_gui.cooking.safety.food_safety import canning_words
from cookstove_gui.cooking.safety.moment import Moment, StandingPan, limit, listed, minutes
from cookstove_gui.forecast.answers import TurnKind
from cookstove_gui.stove.entries import Kind, door_is_open
from cookstove_gui.stove.stove import USUAL_ROOM, SpotKind

_FRYING_PAN = "iron skillet"  # row of pans.toml by which an unnamed pan warms
_KEEP_WARM = "keep_warm"


def _oven_steam(moment: Moment) -> Iterator[About]:
    door = moment.latest(Kind.OVEN_DOOR)
    opened = door is not None and door_is_open(door) and moment.within(door, "just_now")
    hot = any(zone.p50 >= limit("oven_steam") for zone in moment.of_kind(SpotKind.OVEN))
    if hot and (opened or TurnKind.DOOR_OPEN in moment.turns):
        yield About()


def _hot_fat(moment: Moment) -> Iterator[About]:
    for pan in moment.pans():
        zone = moment.zones.get(pan.spot)
        if zone is None or is_wet(pan):
            continue
        smoking = _smoking(pan, pan_heat(moment.heat_to_heed(zone), pan.minutes))
        if smoking:
            yield About(spot=pan.spot, words={"fats": in_words(smoking), "minutes": f"{pan.minutes:.0f}"})


def _smoking(pan: StandingPan, heat: float) -> tuple[Fat, ...]:
    """The fats that may smoke in a pan this hot [K]: those noted; where none was, all, once half of the table would."""
    named = fats_named(pan.words)
    smoking = tuple(fat for fat in named or fats() if heat >= fat.smokes_from)
    return smoking if named or 2 * len(smoking) >= len(fats()) else ()


def pan_heat(spot_heat: float, after_min: float, room: float = USUAL_ROOM) -> float:
    """The most heat [K] that a frying pan has after some minutes on a steady spot, from the room's heat on.

    As `pan_lag` has it, but up to the heat of the spot itself: what a pan loses upward is not counted on.
    """
    pan = next(pan for pan in pans() if pan.key == _FRYING_PAN)
    return spot_heat + (room - spot_heat) * exp(-max(after_min, 0.0) / pan_lag(pan))


def is_water(pan: StandingPan) -> bool:
    """Whether a note says that a pan holds water only: a kettle, tea."""
    return bool(pan.words & listed("water"))


def is_wet(pan: StandingPan) -> bool:
    """Whether a note says that a pan cannot get much hotter than boiling: water, soup, so many quarts."""
    return is_water(pan) or bool(pan.words & listed("wet"))


def _holding(moment: Moment) -> Iterator[About]:
    """Food has stood for a while on a spot too cool to keep it hot, and not so long that it was left there to cool."""
    task = task_of(_KEEP_WARM)
    for pan in moment.pans():
        zone = moment.zones.get(pan.spot)
        long = minutes("kept_from") <= pan.minutes <= minutes("kept_to")
        if zone is not None and task is not None and long and not is_water(pan) and zone.p50 < task.low:
            yield About(spot=pan.spot)


def _beans(moment: Moment) -> Iterator[About]:
    if moment.said("beans", "recent_reading", Kind.NOTE, Kind.PAN):
        yield About()


def _canning(moment: Moment) -> Iterator[About]:
    if moment.said("canning", "recent_reading", Kind.NOTE, Kind.PAN):
        yield About(words={"pressures": canning_words()})


def _leftovers(moment: Moment) -> Iterator[About]:
    """Food was on the stove and the fire goes out, or a note speaks of leftovers."""
    cooked = any(not is_water(pan) for pan in moment.pans())
    if (cooked and moment.fire_is_out()) or moment.said("leftovers", "recent_reading", Kind.NOTE, Kind.PAN):
        yield About()


FOOD_RULES: dict[str, Callable[[Moment], Iterator[About]]] = {
    "oven_steam": _oven_steam,
    "hot_fat": _hot_fat,
    "holding": _holding,
    "beans": _beans,
    "canning": _canning,
    "leftovers": _leftovers,
}
