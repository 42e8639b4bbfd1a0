"""Cautions about tending the fire: what is burned, when the door is opened, who stays with it, where the ash goes."""

from collections.abc import Callable, Iterator

from cookstove_gui.cooking.safety.about import About
from cookstove_gui.cooking.safety.flue_rules import NEARLY_SHUT
from cookstove_gui.cooking.safety.moment import Moment, limit, minutes
from cookstove_gui.forecast.answers import TurnKind
from cookstove_gui.stove.entries import Kind
from cookstove_gui.stove.stove import SpotKind


def _kindling(moment: Moment) -> Iterator[About]:
    """Before a fire is lit, and before one that went out is lit again on coals that may still glow."""
    if not moment.was_lit() or moment.fire_is_out():
        yield About()


def _not_firewood(moment: Moment) -> Iterator[About]:
    if moment.said("not_firewood", "recent_reading", Kind.NOTE, Kind.WOOD, Kind.LIT):
        yield About()


def _water_back(moment: Moment) -> Iterator[About]:
    just_lit = moment.within(moment.latest(Kind.LIT), "just_now")
    if not (just_lit or not moment.was_lit()):
        return
    room = next(moment.of_kind(SpotKind.ROOM), None)
    was_read = room is not None and room.last_reading is not None
    if moment.stove.has_water_back or (was_read and room is not None and room.p50 <= limit("may_freeze")):
        yield About()


def _loading(moment: Moment) -> Iterator[About]:
    """Before the first reload of a fire; from then on it stands where the wood is entered."""
    reload = moment.turns.get(TurnKind.RELOAD_DUE)
    soon = reload is not None and reload.in_min <= minutes("reload_soon")
    just_fed = moment.within(moment.latest(Kind.WOOD), "just_now")
    if soon and not just_fed and not moment.fire_is_out() and not moment.was_reloaded():
        yield About()


def _back_puff(moment: Moment) -> Iterator[About]:
    if moment.open_at_most(Kind.AIR, NEARLY_SHUT) and moment.within(moment.latest(Kind.WOOD), "just_now"):
        yield About()


def _air_open(moment: Moment) -> Iterator[About]:
    """Not while it was opened just now: the fire is to catch."""
    if TurnKind.AIR_OPEN in moment.turns and not moment.within(moment.latest(Kind.AIR), "just_now"):
        yield About()


def _unattended(moment: Moment) -> Iterator[About]:
    """Nothing was entered for long while it burns, or a note says that the cook leaves."""
    quiet = bool(moment.rows) and moment.minutes_since(moment.rows[-1]) >= minutes("quiet")
    if moment.has_fire() and (quiet or moment.said("leaving", "just_now", Kind.NOTE)):
        yield About()


def _first_fire_fumes(moment: Moment) -> Iterator[About]:
    if moment.fumes:
        yield About()


def _ash(moment: Moment) -> Iterator[About]:
    fed = moment.latest(Kind.LIT, Kind.WOOD)
    if moment.fire_is_out() or (fed is not None and not moment.within(fed, "coals_last")):
        yield About()


FIRE_RULES: dict[str, Callable[[Moment], Iterator[About]]] = {
    "kindling": _kindling,
    "not_firewood": _not_firewood,
    "water_back": _water_back,
    "loading": _loading,
    "back_puff": _back_puff,
    "air_open": _air_open,
    "unattended": _unattended,
    "first_fire_fumes": _first_fire_fumes,
    "ash": _ash,
}
