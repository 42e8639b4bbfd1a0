"""A fire and suppers for the tests of plans."""

from collections.abc import Callable
from datetime import timedelta
from functools import cache

from cookstove_gui.cooking.fires.rise_and_hold import RiseAndHold
from cookstove_gui.cooking.fit.tasks import Place
from cookstove_gui.cooking.supper.dish_text import usual_dishes
from cookstove_gui.cooking.supper.dishes import Dish, HandsOn, Heat, Part, Wait
from cookstove_gui.cooking.supper.fire import Fire
from cookstove_gui.cooking.supper.marks import Supper
from cookstove_gui.forecast.tracking.belief import Belief
from cookstove_gui.stove.entries import HeatBand, Kind
from cookstove_gui.units import kelvin
from tests.following import track
from tests.forecast.logs import MODERATE, STOVE, Log, at, usual_morning

NOW = at(75)
KITCHEN = kelvin(75.0, "F")  # for which the usual rises hold
USUAL = {dish.key: dish for dish in usual_dishes()}


@cache
def _burning() -> Belief:
    return track(STOVE, usual_morning(), NOW)


@cache
def _just_lit() -> Belief:
    return track(STOVE, Log().add(0, Kind.LIT).entries, at(0))


def rises_of(*minutes: float) -> Callable[[HeatBand], RiseAndHold]:
    """A past whose fires took so long to any heat."""
    return lambda band: RiseAndHold(band=band, rises=minutes, holds=())


def burning() -> Fire:
    """An oven at some 340 °F, its fire fed a quarter of an hour ago."""
    return Fire(belief=_burning(), lit=True, band=MODERATE, kitchen=KITCHEN, rises=rises_of())


def cold(*rises: float) -> Fire:
    """Nothing burns; the stove's own rises."""
    return Fire(belief=_just_lit(), lit=False, band=MODERATE, kitchen=KITCHEN, rises=rises_of(*rises))


def supper(*keys: str, hours: float = 4.0, **more: object) -> Supper:
    """Usual dishes on the table so many hours from now."""
    dishes = tuple(USUAL[key] for key in keys)
    return Supper(table_at=NOW + timedelta(hours=hours), dishes=dishes, **more)  # type: ignore[arg-type]


def dish(key: str, *parts: Part, **more: object) -> Dish:
    """A dish of these parts."""
    return Dish(key=key, name=key, parts=parts, **more)  # type: ignore[arg-type]


def hands(minutes: float, keeps: float = 60.0) -> HandsOn:
    """Work."""
    return HandsOn(what="work", minutes=minutes, keeps_min=keeps)


def wait(minutes: float, shortest: float, longest: float) -> Wait:
    """A wait."""
    return Wait(what="rest", minutes=minutes, shortest=shortest, longest=longest)


def oven(minutes: float, low: float, high: float, **more: object) -> Heat:
    """In the oven between two heats in °F."""
    return Heat(
        what="bake", place=Place.OVEN, minutes=minutes, low=kelvin(low, "F"), high=kelvin(high, "F"),
        **more,  # type: ignore[arg-type]
    )  # fmt: skip
