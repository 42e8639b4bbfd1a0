"""The first fires of a new stove in words: which comes next, why one does not count, what applies to all of them."""

from cookstove_gui.cooking.fires.first_fires import FirstFires, Lack, Shortfall
from cookstove_gui.resource_files import table
from cookstove_gui.units import degrees


def next_fire_words(fires: FirstFires) -> str:
    """The one thing to do now, in a sentence; empty when done or waived."""
    following = fires.next
    if following is None:
        return ""
    place = fires.stages.index(following) + 1
    return f"First fire {place} of {len(fires.stages)}: {following.stage.line}. No food yet. The manual goes first."


def shortfall_words(found: Shortfall) -> str:
    """Why a fire does not count as its stage."""
    match found.lack:
        case Lack.TOO_SHORT:
            return f"The log shows {found.shown:.0f} minutes of fire; it takes about {found.wanted:.0f}."
        case Lack.NOT_READ:
            return "The cooktop was not read; read it at least once while it is hottest."
        case Lack.TOO_COOL:
            return f"The cooktop was read at {_heat(found.shown)} at most; it takes {_heat(found.wanted)}."
        case Lack.TOO_HOT:
            return (
                f"The cooktop went to {_heat(found.shown)}, hotter than this stage should be ({_heat(found.wanted)}); "
                "look in the manual whether to go on."
            )
        case Lack.TOO_LITTLE_WOOD:
            loads = {0.0: "no load", 1.0: "1 load"}.get(found.shown, f"{found.shown:.0f} loads")
            return f"The log shows {loads} of wood; it takes {found.wanted:.0f}."
        case Lack.AIR_NOT_SHUT:
            return "The air was not noted wide open and then mostly shut."


def always_words() -> str:
    """What applies to all of them, and who decides."""
    words = table("first_fires.toml")
    return f"{words['always']} {words['decides']}"


def _heat(temperature: float) -> str:
    return f"{degrees(temperature, 'F'):.0f} °F ({degrees(temperature, 'C'):.0f} °C)"
