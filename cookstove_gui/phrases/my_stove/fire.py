"""How long loads last with the air shut down."""

from cookstove_gui.cooking.fires.burn_times import BurnSummary
from cookstove_gui.phrases.edge import duration
from cookstove_gui.units import degrees_difference


def burns_words(found: BurnSummary, unit: str, fall: float) -> str:
    """How long loads lasted with the air shut down, as measured."""
    drop = f"{degrees_difference(fall, unit):.0f} °{unit}"
    if found.typical_min is None and found.burns and found.longest_min is not None:
        return (
            f"After most loads with the air shut down the oven had not fallen {drop} when it was last read; "
            f"the longest lasted {duration(found.longest_min)} or more."
        )
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
