"""Which cautions are due at this moment of a session. Their words are in `resources/cautions.toml`.

A caution is never a permission: none is ever taken to mean that something else is safe, and each ends with who decides.
"""

from collections.abc import Callable, Iterable, Iterator, Mapping
from datetime import datetime

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
    found = [
        Caution(
            key=row["key"],
            title=row["title"],
            text=f"{row['text'].format(spot=_capital(_label(stove, about.spot)), **about.words)} {row['decides']}",
            urgent=row["urgent"],
            spot=about.spot,
            order=row.get("order", ""),
            decides=row["decides"],
            against=tuple(row.get("against", ())),
            place=_label(stove, about.spot) if len(alike) > 1 else "",
        )
        for row in table("cautions.toml")["caution"]
        for alike in [tuple(RULES[row["key"]](moment))]
        for about in alike
    ]
    return tuple(sorted(found, key=lambda caution: not caution.urgent))


def _label(stove: Stove, name: str) -> str:
    spot = stove.spot(name)
    return spot.label if spot else name.replace("_", " ")


def _capital(text: str) -> str:
    return text[:1].upper() + text[1:]
