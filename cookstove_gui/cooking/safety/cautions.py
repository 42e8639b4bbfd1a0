"""Which cautions are due at this moment of a session. Their words are in `resources/cautions.toml`.

A caution is never a permission: none is ever taken to mean that something else is safe, and each ends with who decides.
"""

from collections.abc import Callable, Iterable, Iterator, Mapping
from dataclasses import replace
from datetime import datetime
from typing import Any

from cookstove_gui.cooking.safety.about import About
from cookstove_gui.cooking.safety.caution import Caution
from cookstove_gui.cooking.safety.fire_rules import FIRE_RULES
from cookstove_gui.cooking.safety.flue_rules import FLUE_RULES
from cookstove_gui.cooking.safety.food_rules import FOOD_RULES
from cookstove_gui.cooking.safety.moment import Moment, moment_of
from cookstove_gui.cooking.safety.surface_rules import SURFACE_RULES
from cookstove_gui.forecast.answers import Turn, Zone
from cookstove_gui.resource_files import table
from cookstove_gui.stove.entries import Entry
from cookstove_gui.stove.stove import Stove

RULES: dict[str, Callable[[Moment], Iterator[About]]] = FLUE_RULES | FIRE_RULES | SURFACE_RULES | FOOD_RULES


def due(
    stove: Stove,
    entries: Iterable[Entry],
    zones: Iterable[Zone] | Mapping[str, Zone],
    turns: Iterable[Turn],
    *,
    now: datetime | None = None,
    first_fires_done: bool = False,
) -> tuple[Caution, ...]:
    """The cautions that are due, the urgent ones first, within those in the order of the file.

    None contradicts one before it.

    Parameters
    ----------
    stove : Stove
    entries : entries
        The rows of the session in force, in order of time.
    zones : zones
        Every spot's heat now.
    turns : turns
        Turns of the fire.
    now : datetime, optional
        The moment asked about; the last row's if left out.
    first_fires_done : bool
        True ends the caution about fumes of a new stove.
    """
    moment = moment_of(stove, tuple(entries), zones, turns, now, first_fires_done)
    rows = sorted(table("cautions.toml")["caution"], key=lambda row: not row["urgent"])
    told: list[Caution] = []
    for row in rows:
        alike = tuple(RULES[row["key"]](moment))
        for about in alike:
            place = _label(stove, about.spot) if len(alike) > 1 else ""
            one = _caution(row, about, stove, place)
            if _contradicts(one, told):
                one = _beside(one, row, about, stove)
            if one.text:
                told.append(one)
    return tuple(told)


def _caution(row: Mapping[str, Any], about: About, stove: Stove, place: str) -> Caution:
    return Caution(
        key=row["key"],
        title=row["title"],
        text=_text(row["text"], row, about, stove),
        urgent=row["urgent"],
        spot=about.spot,
        order=row.get("order", ""),
        decides=row["decides"],
        asks=tuple(row.get("asks", ())),
        against=tuple(row.get("against", ())),
        place=place,
    )


def _text(text: str, row: Mapping[str, Any], about: About, stove: Stove) -> str:
    return f"{text.format(spot=_capital(_label(stove, about.spot)), **about.words)} {row['decides']}"


def _contradicts(one: Caution, told: Iterable[Caution]) -> bool:
    """Whether a caution asks for what one further up speaks against."""
    return any(step in other.against for step in one.asks for other in told)


def _beside(one: Caution, row: Mapping[str, Any], about: About, stove: Stove) -> Caution:
    """What it says beside one that it would contradict: no step of its own; without text where it is silent."""
    text = _text(row["beside"], row, about, stove) if "beside" in row else ""
    return replace(one, text=text, order=row.get("beside_order", ""), asks=(), against=())


def _label(stove: Stove, name: str) -> str:
    spot = stove.spot(name)
    return spot.label if spot else name.replace("_", " ")


def _capital(text: str) -> str:
    return text[:1].upper() + text[1:]
