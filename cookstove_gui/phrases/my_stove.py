"""The sentences of the page My stove: its hot side, how it fires, what its thermometers' checks have shown."""

from collections.abc import Callable
from datetime import date

from cookstove_gui.cooking.fires.burn_times import BurnSummary, MeasuredBurn
from cookstove_gui.cooking.instruments.surface_readings import CorrectedReading, Surface
from cookstove_gui.cooking.instruments.thermometers import Check, CheckPoint, Drift, true_temperature
from cookstove_gui.forecast.answers import Quantiles, SpotPattern
from cookstove_gui.phrases.edge import Edge, air_words, duration, heat_name, mass_text
from cookstove_gui.stove.entries import HeatBand
from cookstove_gui.stove.stove import Instrument, Spot, SpotKind, Stove
from cookstove_gui.units import degrees, degrees_difference, tidy


def hot_side_words(stove: Stove, pattern: tuple[SpotPattern, ...], unit: str) -> str:
    """Left against right and front against back, in one sentence."""
    sides = {
        name: _mean_offset(stove, pattern, pick)
        for name, pick in (
            ("left", lambda spot: spot.x < 0.4),
            ("right", lambda spot: spot.x > 0.6),
            ("front", lambda spot: spot.y < 0.4),
            ("back", lambda spot: spot.y > 0.6),
        )
    }
    if any(value is None for value in sides.values()):
        return "Read the cooktop on both sides, front and back, and its hot side will show here."
    across = degrees_difference((sides["left"] or 0.0) - (sides["right"] or 0.0), unit)
    deep = degrees_difference((sides["front"] or 0.0) - (sides["back"] or 0.0), unit)
    return (
        f"The {'left' if across > 0 else 'right'} runs about {abs(across):.0f} °{unit} hotter than the "
        f"{'right' if across > 0 else 'left'}, and the {'front' if deep > 0 else 'back'} about "
        f"{abs(deep):.0f} °{unit} hotter than the {'back' if deep > 0 else 'front'}."
    )


def _mean_offset(stove: Stove, pattern: tuple[SpotPattern, ...], pick: Callable[[Spot], bool]) -> float | None:
    offsets = [
        row.mean
        for row in pattern
        if (spot := stove.spot(row.spot)) is not None and spot.kind is SpotKind.TOP and row.readings and pick(spot)
    ]
    return sum(offsets) / len(offsets) if offsets else None


def spot_offset(row: SpotPattern, unit: str) -> str:
    """How a spot runs against the cooktop's mean, with its interval."""
    if row.readings == 0:
        return "not read yet"
    mean, low, high = (round(degrees_difference(value, unit)) for value in (row.mean, row.p10, row.p90))
    if low <= 0 <= high:
        return f"about the mean, from {_signed(low)} to {_signed(high)} °{unit}"
    word = "hotter" if mean > 0 else "cooler"
    near, far = sorted((abs(low), abs(high)))
    return f"{abs(mean)} °{unit} {word}, likely {near} to {far}"


def signed_difference(kelvin_difference: float, unit: str) -> str:
    """A difference in whole degrees with its sign, for a drawing: `+35`."""
    return _signed(round(degrees_difference(kelvin_difference, unit)))


def _signed(number: int) -> str:
    return "0" if number == 0 else f"{'+' if number > 0 else '−'}{abs(number)}"


def burns_words(found: BurnSummary, unit: str, fall: float) -> str:
    """How long loads lasted with the air shut down, as measured."""
    drop = f"{degrees_difference(fall, unit):.0f} °{unit}"
    if found.typical_min is None:
        seen = "" if found.longest_min is None else f" The longest seen so far lasted {duration(found.longest_min)}."
        return (
            f"Load it full, shut the air down and read the oven until it has fallen {drop}: "
            f"how long that takes stands here then.{seen}"
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
        return f"No firing on the log shows how long it takes from lighting to {heat_name(band)}."
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
    return (
        f"Once there it stayed above the low end of {heat_name(band)} about {duration(typical_min)}, "
        f"at most {duration(longest_min)} ({stays})."
    )


def instrument_words(instrument: Instrument, unit: str) -> str:
    """What a thermometer's checks have shown."""
    doubt = max(round(degrees_difference(instrument.offset_doubt, unit)), 1)
    if not instrument.checked_on:
        return f"Never checked: it may be off by {doubt} °{unit} or more either way."
    offset = degrees_difference(instrument.offset, unit)
    on = f"{date.fromisoformat(instrument.checked_on):%d %B %Y}".lstrip("0")
    if abs(offset) < 0.5 * doubt:
        return f"It reads right, within about {doubt} °{unit}; checked on {on}."
    word = "high" if offset > 0 else "low"
    return f"It reads about {abs(offset):.0f} °{unit} too {word}, give or take {doubt}; checked on {on}."


def drifted(found: Drift, unit: str) -> str:
    """That a thermometer has changed."""
    change = degrees_difference(found.change, unit)
    word = "higher" if change > 0 else "lower"
    on = f"{found.since:%d %B %Y}".lstrip("0")
    return (
        f"It now reads about {abs(change):.0f} °{unit} {word} than it did on {on}. Check it again; "
        "if it keeps changing, use another one."
    )


def measured_emissivity_words(surface: Surface) -> str:
    """What a contact thermometer beside an infrared one has shown."""
    if surface.shiny:
        return (
            f"There the emissivity is only about {surface.usual:.2f}, a mirror: do not trust infrared on it; "
            "blacken or tape a spot and read that."
        )
    return (
        f"There the emissivity is about {surface.usual:.2f}, from {surface.low:.2f} to {surface.high:.2f}. "
        "Set the instrument to it, and type it above."
    )


def check_line(check: Check, unit: str) -> str:
    """One check in the list."""
    where = "in ice water" if check.point is CheckPoint.ICE else "in boiling water"
    right = true_temperature(check.point, check.pressure)
    shown = tidy(degrees(check.shown, unit), 1)
    on = f"{check.on:%d %B %Y}".lstrip("0")
    return f"{on}: {shown} °{unit} {where}, where {degrees(right, unit):.1f} is right"


def emissivity_words(surface: Surface | None, surface_name: str, found: CorrectedReading | None, edge: Edge) -> str:
    """What an infrared thermometer's setting means on this cooktop."""
    if surface is None or found is None:
        return (
            f"How dark “{surface_name}” looks to an infrared thermometer is not known; read a blackened or taped spot."
        )
    least, most = f"{surface.low:.2f}", f"{surface.high:.2f}"
    looks = f"The emissivity of the cooktop ({surface.name}) is about {surface.usual:.2f}, from {least} to {most}."
    if surface.shiny:
        return f"{looks} {found.advice}"
    return (
        f"{looks} Where this one shows {edge.heat(found.typed)} it is really about {edge.heat(found.corrected)}, "
        f"from {edge.range(found.low, found.high)}."
    )


def burn_line(burn: MeasuredBurn, title: str, unit: str) -> str:
    """One measured load in the list."""
    mass = "" if burn.mass is None else f"{mass_text(burn.mass, unit)}, "
    least = "" if burn.fell else "at least "
    return (
        f"{title}: {mass}air {air_words(burn.air_open)}, oven up to {degrees(burn.hottest, unit):.0f} °{unit}, "
        f"{least}{duration(burn.minutes)}"
    )
