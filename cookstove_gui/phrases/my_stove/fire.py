"""How a stove fires: how long it takes to a heat, how long it holds it, how long loads last."""

from cookstove_gui.cooking.fires.burn_times import BurnSummary
from cookstove_gui.forecast.answers import Quantiles
from cookstove_gui.phrases.edge import duration, heat_name
from cookstove_gui.stove.entries import HeatBand
from cookstove_gui.units import degrees_difference


def burns_words(found: BurnSummary, unit: str, fall: float) -> str:
    """How long loads lasted with the air shut down, as measured."""
    drop = f"{degrees_difference(fall, unit):.0f} °{unit}"
    if found.typical_min is None:
        seen = "" if found.longest_min is None else f" The longest seen so far lasted {duration(found.longest_min)}."
        return (
            f"No load with the air shut down was read until the oven had fallen {drop}; "
            f"once one is, its time stands here.{seen}"
        )
    count = "1 load" if found.burns == 1 else f"{found.burns} loads"
    more = found.burns > 1 and found.longest_min is not None
    longest = f", the longest {duration(found.longest_min or 0.0)}" if more else ""
    return (
        f"A load with the air shut down lasted about {duration(found.typical_min)} until the oven had fallen {drop}"
        f"{longest} ({count})."
    )


def rise_words(band: HeatBand, rises: Quantiles, count: int) -> str:
    """How long lighting to a heat took."""
    if rises.p50 is None:
        return f"No firing in the log shows how long it takes from lighting to {heat_name(band)}."
    firings = "1 firing" if count == 1 else f"{count} firings"
    usual = f"about {duration(rises.p50)}"
    if rises.p10 is not None and rises.p90 is not None:
        usual += f", usually {duration(rises.p10)} to {duration(rises.p90)}"
    return f"From lighting to {heat_name(band)}: {usual} ({firings})."


def hold_words(band: HeatBand, typical_min: float | None, longest_min: float | None, count: int) -> str:
    """How long a heat was held."""
    if count == 0 or longest_min is None:
        return ""
    stays = "1 stay" if count == 1 else f"{count} stays"
    if typical_min is None:
        return f"It held {heat_name(band)} at least {duration(longest_min)}, to the end of the log ({stays})."
    longest = "" if count == 1 else f", at most {duration(longest_min)}"
    return (
        f"Once there it stayed above the low end of {heat_name(band)} about {duration(typical_min)}{longest} ({stays})."
    )
