"""What a planned meal wants done to the fire, in words: as an order, and under a mark in the fire's lane."""

from cookstove_gui.cooking.supper.plan import FireStep
from cookstove_gui.phrases.edge import Edge
from cookstove_gui.phrases.entries import opening_words
from cookstove_gui.units import KILOGRAMS_PER_POUND, tidy

_ORDERS = {
    FireStep.LIGHT: "light the fire",
    FireStep.BYPASS_SHUT: "close the bypass",
    FireStep.LET_GO: "let the fire go; put nothing more on",
}
_MARKS = {FireStep.LIGHT: "light", FireStep.BYPASS_SHUT: "bypass shut", FireStep.LET_GO: "let go"}
_WIDE = 0.95  # opening from which the air is called wide open


def fire_order(what: FireStep, splits: int = 0, opening: float | None = None) -> str:
    """What to do: `add 2 splits`, `set the air to 30 % open`."""
    if what is FireStep.WOOD:
        return f"add {splits_words(splits)}" if splits else "add wood"
    if what is FireStep.AIR and opening is not None:
        return "open the air wide" if opening >= _WIDE else f"set the air to {round(100 * opening)} % open"
    return _ORDERS.get(what, str(what))


def fire_mark(what: FireStep, splits: int = 0, opening: float | None = None) -> str:
    """The word under its mark: `2 splits`, `air 30 %`."""
    if what is FireStep.WOOD:
        return splits_words(splits) if splits else "wood"
    if what is FireStep.AIR and opening is not None:
        return f"air {opening_words(opening)}"
    return _MARKS.get(what, str(what))


def splits_words(splits: int) -> str:
    """A count of splits."""
    return "1 split" if splits == 1 else f"{splits} splits"


def load_mass(kilograms: float, edge: Edge) -> str:
    """What a load weighs: `2.6 lb`, `1.2 kg`."""
    if edge.unit == "F":
        return f"{tidy(round(kilograms / KILOGRAMS_PER_POUND, 1))} lb"
    return f"{tidy(round(kilograms, 1))} kg"
