"""Short figures for where there is little room: temperatures, ages, arrival times."""

from cookstove_gui.stove.entries import HeatBand
from cookstove_gui.units import degrees


def temperature_text(kelvin: float, unit: str) -> str:
    """Whole degrees, without the unit: `385`."""
    return f"{degrees(kelvin, unit):.0f}"


def estimate_text(kelvin: float, unit: str) -> str:
    """An estimate, to the nearest five degrees: `≈ 385`."""
    return f"≈{5 * round(degrees(kelvin, unit) / 5):.0f}"


def spot_number(kelvin: float | None, typed: float | None, unit: str, *, means_other: bool = False) -> str:
    """A spot's number: `385` as it was just typed, `385*` where it means something else, `≈385` believed."""
    if typed is not None:
        return f"{temperature_text(typed, unit)}{'*' if means_other else ''}"
    return "–" if kelvin is None else estimate_text(kelvin, unit)


def doubt_text(half: float, unit: str) -> str:
    """How far a belief may be off [K, to each side, eight times in ten]: `±35`, to five degrees from ten on."""
    off = half * 1.8 if unit == "F" else half
    return f"±{5 * round(off / 5) if off >= 10 else round(off)}"


def spot_words(
    kelvin: float | None, typed: float | None, age_min: float | None, remark: str, unit: str, half: float = 0.0
) -> str:
    """A spot's heat for somebody who cannot see the patch: `about 385 °F give or take 20, read 12 min ago`."""
    if kelvin is None:
        return "nothing known yet"
    number = spot_number(kelvin, typed, unit).replace("≈", "about ")
    give = f" give or take {doubt_text(half, unit)[1:]}" if half > 0 else ""
    read = "not read yet" if age_min is None else f"read {age_text(age_min)} ago".replace("now ago", "just now")
    return ", ".join(part for part in (f"{number} °{unit}{give}", read, remark) if part)


def age_text(minutes: float | None) -> str:
    """How long ago: `now`, `12 min`, `3 h`, `2 d`; `unread` if it never was."""
    if minutes is None:
        return "unread"
    if minutes < 0.75:
        return "now"
    if minutes < 100:
        return f"{minutes:.0f} min"
    return f"{minutes / 60:.0f} h" if minutes < 48 * 60 else f"{minutes / 1440:.0f} d"


def range_text(low: float, high: float, unit: str) -> str:
    """Two ends: `400–475`."""
    return f"{temperature_text(low, unit)}–{temperature_text(high, unit)}"


def band_text(band: HeatBand, unit: str) -> str:
    """A band's name and its ends; the ends alone where the name is made of numbers."""
    ends = range_text(band.low, band.high, unit)
    return ends if any(letter.isdigit() for letter in band.name) else f"{band.name} {ends}"
