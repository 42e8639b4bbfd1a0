"""How warm the flue is and how the chimney draws. Bands are common practice; manuals and a licensed sweep decide."""

from enum import StrEnum

from cookstove_gui.cooking.safety.chimney_watch import Draught, FlueAnswer, FlueBand, flue_bands
from cookstove_gui.forecast.answers import Zone
from cookstove_gui.phrases.edge import capital
from cookstove_gui.resource_files import table
from cookstove_gui.stove.stove import FlueReading
from cookstove_gui.units import PASCALS_PER_INCH_OF_WATER, degrees

NO_FLUE_SPOT = "This stove has no spot on its flue; add one under Spots whose name begins with flue."
READ_THE_FLUE = "Read the flue pipe about 18 in. (45 cm) above the stove, and its state shows here."
_LIKELY = 0.3  # chance from which what may come within the hour is spoken of


class Assumed(StrEnum):
    """What a draught was worked out with that nobody typed, and what to do about it."""

    NOTHING = ""
    CHIMNEY = "The chimney is not described yet; the values below are assumed."
    OUTDOORS = "Type how cold it is outdoors now; the value below is assumed."
    OLD_OUTDOORS = "Type how cold it is outdoors now; the value below was typed long ago."


def draught_line(found: Draught, *, pipe_is_known: bool, assumed: Assumed) -> str:
    """The draught in pascals and inches of water, and what stoves usually want."""
    low, middle, high = (value or 0.0 for value in (found.pascals.p10, found.pascals.p50, found.pascals.p90))
    inches = middle / PASCALS_PER_INCH_OF_WATER
    usual = table("flue.toml")["draught"]["usual_pa"]
    state = "The flue draws" if pipe_is_known else "With the flue at room temperature it draws"
    if found.backwards:
        line = f"{state} the wrong way, by about {abs(middle):.0f} Pa ({abs(inches):.3f} in. of water)."
    else:
        between = "" if high - low < 1.0 else f", between {low:.0f} and {high:.0f}"
        line = (
            f"{state} about {middle:.0f} Pa ({inches:.3f} in. of water){between}, before wind, bends and soot. Most "
            f"stoves want {usual[0]} to {usual[1]} Pa at working heat (common practice; the stove’s manual decides)."
        )
    return f"{line} {assumed}".strip()


def draught_caution(found: Draught) -> str:
    """What a weak or reversed draught asks for; empty where it draws."""
    if found.backwards:
        words = "The flue is colder than the air outdoors, so smoke comes into the room. Warm it before you light."
    elif found.weak:
        words = "This draught is weak, and smoke may come out when a door opens."
    else:
        return ""
    cold = next(row for row in table("cautions.toml")["caution"] if row["key"] == "cold_flue")
    return f"{words} {cold['text']} {found.decides}"


def flue_heat_line(found: FlueAnswer, zone: Zone, unit: str) -> str:
    """How warm the flue is, in which band, and what may come within the hour."""
    read = "" if zone.last_reading is not None else ", estimated (not read in this session)"
    line = (
        f"The flue pipe is about {degrees(zone.p50, unit):.0f} °{unit}{read}: {found.band.name}. "
        f"{capital(found.band.meaning)}."
    )
    if found.band.name != "too hot" and found.too_hot_within_hour >= _LIKELY:
        line += " It may get too hot within the hour."
    if found.band.name == "working" and found.too_cool_within_hour >= _LIKELY:
        line += " It may get too cool within the hour."
    return line


def flue_band_lines(unit: str) -> str:
    """The bands of common practice, on the pipe and in it."""
    pipe = ", ".join(_band_text(band, unit) for band in flue_bands())
    gas = next(band for band in flue_bands(FlueReading.GAS) if band.name == "working")
    low, high = (degrees(value, unit) for value in (gas.low, gas.high))
    return (
        f"On the surface of single-wall pipe: {pipe}. A probe in the gas reads far higher ({low:.0f} to {high:.0f} "
        f"°{unit} in use), double-wall pipe far lower. All of this is common practice, not a standard."
    )


def flue_decides() -> str:
    """The sentence that ends every word about the flue."""
    return str(table("flue.toml")["draught"]["decides"])


def _band_text(band: FlueBand, unit: str) -> str:
    low, high = (f"{degrees(value, unit):.0f}" for value in (band.low, band.high))
    if band.name == "too cool":
        return f"{band.name} below {high} °{unit}"
    return f"{band.name} above {low} °{unit}" if band.name == "too hot" else f"{band.name} from {low} to {high} °{unit}"
