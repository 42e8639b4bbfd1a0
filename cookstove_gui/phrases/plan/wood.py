"""How much wood a bake takes, the heat it gives, and how long a load lasts."""

import re

from cookstove_gui.forecast.answers import Quantiles
from cookstove_gui.phrases.edge import air_words, duration, heat_name, mass_text
from cookstove_gui.stove.entries import HeatBand


def wood_headline(mass: Quantiles, splits: Quantiles, unit: str) -> str:
    """How much wood."""
    if mass.p10 is None or mass.p50 is None or mass.p90 is None or splits.p50 is None:
        return ""
    count = max(round(splits.p50), 1)
    pieces = "1 split" if count == 1 else f"{count} splits"
    return (
        f"About {mass_text(mass.p50, unit)} of wood, {pieces}; "
        f"between {mass_text(mass.p10, unit).split()[0]} and {mass_text(mass.p90, unit)}."
    )


def wood_rungs(mass: Quantiles, splits: Quantiles, unit: str) -> tuple[str, ...]:
    """The same from long to short, never without its range."""
    whole = wood_headline(mass, splits, unit)
    if not whole or mass.p10 is None or mass.p90 is None:
        return (whole,)
    about = whole.split(";")[0].replace(" of wood", "")
    return (whole, f"{about}; {mass_text(mass.p10, unit).split()[0]} to {mass_text(mass.p90, unit)}.")


def wood_stages(band: str) -> tuple[str, str]:
    """What stands on the two parts of the time that wood is burnt for."""
    return "warming up", f"at {band}"


def wood_spans(warm_up_min: float, warm_up_from: str, at_heat_min: float, band: HeatBand) -> str:
    """What the wood is for, and what says how long the warm-up takes."""
    stay = f"{duration(at_heat_min)} at {heat_name(band)}"
    if warm_up_min < 1:
        return f"For {stay}; the oven is hot enough already."
    source = {
        "outlook": "as the oven is projected now",
        "past": "as long as this stove took before",
        "common practice": "common practice, for this stove has not shown it yet",
    }[warm_up_from]
    return f"For {duration(warm_up_min)} of warming up ({source}) and {stay}."


def spans_rungs(warm_up_min: float, warm_up_from: str, at_heat_min: float, band: HeatBand) -> tuple[str, ...]:
    """The same, then without what says how long the warm-up takes."""
    whole = wood_spans(warm_up_min, warm_up_from, at_heat_min, band)
    return tuple(dict.fromkeys((whole, re.sub(r" \(.*?\)", "", whole))))


def heat_words(kilowatts: Quantiles, btu_per_hour: Quantiles) -> str:
    """The heat the fire gives."""
    if kilowatts.p50 is None or btu_per_hour.p50 is None or kilowatts.p10 is None or kilowatts.p90 is None:
        return ""
    thousands = f"{1000 * round(btu_per_hour.p50 / 1000):,}"
    return (
        f"It gives about {kilowatts.p50:.1f} kW ({thousands} BTU/h) into stove, pots and room, "
        f"{kilowatts.p10:.1f} to {kilowatts.p90:.1f} kW."
    )


def load_words(minutes: Quantiles, air: float) -> str:
    """How long two splits burn at the present air."""
    if minutes.p10 is None or minutes.p50 is None or minutes.p90 is None:
        return ""
    opening = air_words(air)
    return (
        f"Two splits with the air {opening} burn to coals in about {duration(minutes.p50)}, "
        f"likely {duration(minutes.p10)} to {duration(minutes.p90)}."
    )


def rate_words(fires: int) -> str:
    """What the amount was learned from."""
    if fires == 0:
        return (
            "From what cookstoves usually take; weigh or count the wood you enter, and this becomes your stove’s own."
        )
    return f"Learned from the wood of {fires} {'fire' if fires == 1 else 'fires'} of this stove."
