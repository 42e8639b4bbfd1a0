"""Cautions about the flue: too hot, too cool, not drawing yet, or drawing the wrong way."""

from collections.abc import Callable, Iterator

from cookstove_gui.cooking.fires.logged_fires import kelvin_or_none
from cookstove_gui.cooking.safety.about import About
from cookstove_gui.cooking.safety.chimney_watch import flue_limits
from cookstove_gui.cooking.safety.moment import Moment, minutes
from cookstove_gui.resource_files import table
from cookstove_gui.stove.entries import Kind
from cookstove_gui.stove.stove import FlueReading, SpotKind

NEARLY_SHUT = 0.1  # fraction of the air or bypass; common practice, no source
COALS_AIR = 0.25  # fraction of the air at which a bed of coals is kept alive; common practice, no source


def _over_fired_flue(moment: Moment) -> Iterator[About]:
    _, hot = flue_limits(moment.stove.flue_reading)
    for zone in moment.of_kind(SpotKind.FLUE):
        if moment.heat_to_heed(zone) >= hot:
            yield About(spot=zone.spot, words={"read_as": _read_as(moment)})


def _creosote(moment: Moment) -> Iterator[About]:
    """A flue that stays cool under burning wood: read so twice, and not over coals, which smoke little."""
    cool, _ = flue_limits(moment.stove.flue_reading)
    warming = moment.within(moment.latest(Kind.LIT), "draws_by")
    flames = moment.within(moment.latest(Kind.LIT, Kind.WOOD), "coals_from") and not moment.fire_is_out()
    if flames and not warming and moment.flue_is_cooler(cool) and _read_twice(moment, cool):
        yield About(words={"read_as": _read_as(moment)})


def _read_twice(moment: Moment, cool: float) -> bool:
    """Whether the latest two readings of the flue since it should be warm were cooler than this [K]."""
    lit = moment.latest(Kind.LIT)
    since = None if lit is None else moment.minutes_since(lit) - minutes("draws_by")
    heats = [
        heat
        for row in moment.rows
        if moment.stove.kind_of(row.spot) is SpotKind.FLUE
        and (heat := kelvin_or_none(row)) is not None
        and (since is None or moment.minutes_since(row) <= since)
    ]
    return len(heats) >= 2 and max(heats[-2:]) < cool


def _read_as(moment: Moment) -> str:
    """What the reading was taken for, where the owner has not said."""
    if moment.stove.flue_reading is not FlueReading.UNSAID:
        return ""
    return f" {table('flue.toml')['ask']}"


def _cold_flue(moment: Moment) -> Iterator[About]:
    just_lit = moment.within(moment.latest(Kind.LIT), "just_now")
    if (just_lit or not moment.was_lit()) and not moment.flue_draws():
        yield About()


def _bypass_early(moment: Moment) -> Iterator[About]:
    if moment.has_fire() and moment.open_at_most(Kind.BYPASS, NEARLY_SHUT) and moment.flue_draws() is False:
        yield About()


def _carbon_monoxide(moment: Moment) -> Iterator[About]:
    why = _why_monoxide(moment)
    if why:
        yield About(words={"why": table("cautions.toml")["monoxide"][why]})


def _why_monoxide(moment: Moment) -> str:
    """Key of the likeliest way for carbon monoxide into the room now; empty where there is none."""
    if moment.said("smoke", "just_now", Kind.NOTE):
        return "smoke"
    if not moment.has_fire():
        return ""
    if moment.flue_is_cooler(_room(moment)):
        return "backward"
    if moment.open_at_most(Kind.AIR, NEARLY_SHUT):
        return "shut"
    fed = moment.latest(Kind.LIT, Kind.WOOD)
    coals = fed is not None and not moment.within(fed, "coals_from")
    return "coals" if coals and moment.open_at_most(Kind.AIR, COALS_AIR) else ""


def _room(moment: Moment) -> float | None:
    zone = next(moment.of_kind(SpotKind.ROOM), None)
    return None if zone is None else zone.p50


FLUE_RULES: dict[str, Callable[[Moment], Iterator[About]]] = {
    "over_fired_flue": _over_fired_flue,
    "creosote": _creosote,
    "cold_flue": _cold_flue,
    "bypass_early": _bypass_early,
    "carbon_monoxide": _carbon_monoxide,
}
