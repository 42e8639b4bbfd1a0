"""What stands on a spot of the drawn stove, and what is read out of it."""

from dataclasses import dataclass

from cookstove_gui.phrases.figures import age_text, doubt_text, spot_number, spot_words, temperature_text
from cookstove_gui.stove.stove import BESIDE, Spot, SpotKind, default_spots

_DEFAULTS = frozenset(spot.name for spot in default_spots())
_WORDS = {
    "side_left": "side",
    "side_right": "side",
    "door_glass": "door glass",
    "flue": "",  # its word stands beside the pipe
    "oven_floor": "floor",
    "room": "room",
}


@dataclass(frozen=True, slots=True, kw_only=True)
class SpotHeat:
    """What is known of one spot."""

    kelvin: float | None = None  # None: nothing is known yet
    typed: float | None = None  # K, the number just typed, whatever it means; None: `kelvin` is an estimate
    doubt: float = 0.0  # K, between the tenth and ninetieth percentile
    age_min: float | None = None
    remark: str = ""  # what the latest reading was typed as, if it means something else
    questioned: float | None = None  # K, typed here and likely a slip; nobody has kept or corrected it
    has_pan: bool = False


def spot_name_drawn(spot: Spot) -> str:
    """The word on a spot's place; none where the place says it."""
    if spot.name in _WORDS:
        return _WORDS[spot.name]
    if spot.name in _DEFAULTS:
        return ""
    if spot.kind is SpotKind.WALL:
        return next((word for word in BESIDE if spot.name.startswith(word)), "wall")
    return spot.label.removeprefix("oven ").removeprefix("top ")


def number_drawn(heat: SpotHeat, unit: str) -> str:
    """`598` just read, `598*` typed and meaning something else, `≈510` believed, `–` unknown."""
    return spot_number(heat.kelvin, heat.typed, unit, means_other=bool(heat.remark))


def captions_drawn(spot: Spot, heat: SpotHeat, unit: str) -> tuple[str, ...]:
    """Below the number, the longest first: `19 min ±35`, `19 min`."""
    if heat.kelvin is None:
        return ()
    if heat.questioned is not None and heat.typed is None:
        return ("typed",)
    if heat.typed is not None and heat.remark:
        return (f"= {temperature_text(heat.kelvin, unit)}",)
    age = age_text(heat.age_min)
    first = "rear " if spot.name == "oven_rear" else ""
    off = "" if heat.typed is not None or heat.doubt <= 0 else f" {doubt_text(heat.doubt / 2, unit)}"
    return tuple(dict.fromkeys((f"{first}{age}{off}", f"{first}{age}", age)))


def struck_drawn(heat: SpotHeat, unit: str) -> str:
    """The number in question, to be struck through."""
    return temperature_text(heat.questioned, unit) if heat.questioned is not None and heat.typed is None else ""


def heat_said(spot: Spot, heat: SpotHeat, unit: str) -> str:
    """`top back middle, about 510 °F give or take 35, read 19 min ago`."""
    half = 0.0 if heat.typed is not None else heat.doubt / 2
    return f"{spot.label}, {spot_words(heat.kelvin, heat.typed, heat.age_min, heat.remark, unit, half)}"


def signs_said(heat: SpotHeat, unit: str, *, is_lit: bool, is_worth_reading: bool) -> str:
    """What the rings and signs on a spot mean."""
    signs = (
        "the next number goes here" if is_lit else "",
        "worth reading next" if is_worth_reading else "",
        "a pan stands here" if heat.has_pan else "",
        f"{temperature_text(heat.questioned, unit)} typed here is in question, keep or correct it"
        if heat.questioned is not None
        else "",
    )
    return ", ".join(sign for sign in signs if sign)
