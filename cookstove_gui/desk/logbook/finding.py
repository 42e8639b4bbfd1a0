"""Finding sessions by what is typed: words of title, tags, notes, wood, day or month, and a heat that was reached."""

from collections.abc import Sequence
from dataclasses import dataclass

from cookstove_gui.desk.logbook.cards import Card
from cookstove_gui.errors import InputProblem
from cookstove_gui.units import TemperatureUnit, kelvin, parse_temperature

_LEAST_HEAT = {"F": 100.0, "C": 50.0}  # a smaller number is a day or a weight, not an oven's heat
_MOST_HEAT = {"F": 999.0, "C": 600.0}  # a larger one is a year


@dataclass(frozen=True, slots=True, kw_only=True)
class Wanted:
    """What was typed: words that must all be there, and the heat that the oven must have reached."""

    words: tuple[str, ...] = ()
    least: float | None = None  # in the unit it was typed in
    unit: TemperatureUnit = "F"


def wanted(text: str, unit: TemperatureUnit) -> Wanted:
    """What a text asks for: `birch november`, `450`, `sourdough 220C`."""
    words: list[str] = []
    least, least_unit = None, unit
    for word in text.split():
        heat = _heat(word.lstrip(">≥"), unit)
        if heat is None:
            words.append(word.casefold())
        else:
            least, least_unit = heat
    return Wanted(words=tuple(words), least=least, unit=least_unit)


def found(cards: Sequence[Card], asked: Wanted) -> tuple[Card, ...]:
    """The cards that match, in their order."""
    least = None if asked.least is None else float(kelvin(asked.least, asked.unit))
    return tuple(card for card in cards if _matches(card, asked.words, least))


def _matches(card: Card, words: Sequence[str], least: float | None) -> bool:
    if any(word not in card.words for word in words):
        return False
    if least is None:
        return True
    hottest = card.facts.hottest if card.facts else None
    return hottest is not None and hottest[1] >= least


def _heat(word: str, unit: TemperatureUnit) -> tuple[float, TemperatureUnit] | None:
    try:
        value, said = parse_temperature(word, unit)
    except InputProblem:
        return None
    return (value, said) if _LEAST_HEAT[said] <= value <= _MOST_HEAT[said] else None
