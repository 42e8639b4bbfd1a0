"""Which side of the cooktop runs hotter, and by how much each spot."""

from collections.abc import Callable, Sequence

from cookstove_gui.forecast.answers import SpotPattern
from cookstove_gui.phrases.edge import capital, readings_count, sessions_count
from cookstove_gui.phrases.figures import temperature_text
from cookstove_gui.stove.stove import Spot, SpotKind, Stove
from cookstove_gui.units import degrees_difference


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
    across = _against("left", sides["left"] or 0.0, "right", sides["right"] or 0.0, unit)
    deep = _against("front", sides["front"] or 0.0, "back", sides["back"] or 0.0, unit)
    return capital(f"{across}, and {deep}.")


def _against(one: str, its_mean: float, other: str, others_mean: float, unit: str) -> str:
    apart = round(degrees_difference(its_mean - others_mean, unit))
    if apart == 0:
        return f"{one} and {other} run alike"
    hotter, cooler = (one, other) if apart > 0 else (other, one)
    return f"the {hotter} runs about {abs(apart)} °{unit} hotter than the {cooler}"


def _mean_offset(stove: Stove, pattern: tuple[SpotPattern, ...], pick: Callable[[Spot], bool]) -> float | None:
    offsets = [
        row.mean
        for row in pattern
        if (spot := stove.spot(row.spot)) is not None and spot.kind is SpotKind.TOP and row.readings and pick(spot)
    ]
    return sum(offsets) / len(offsets) if offsets else None


def behind_words(sessions: int, pattern: Sequence[SpotPattern], unit: str) -> str:
    """What the sentence stands on: `Over 10 sessions and 412 readings, at a cooktop mean of 470 °F.`"""
    usual = [row.usual for row in pattern if row.usual is not None]
    if not usual:
        return ""
    readings = readings_count(sum(row.readings for row in pattern))
    mean = temperature_text(sum(usual) / len(usual), unit)
    return f"Over {sessions_count(sessions)} and {readings}, at a cooktop mean of {mean} °{unit}."


def spot_offset(row: SpotPattern, unit: str, against: str = "the mean") -> str:
    """How a spot runs against the cooktop's mean, or the oven's centre, with its interval."""
    if row.readings == 0:
        return "not read yet"
    mean, low, high = (round(degrees_difference(value, unit)) for value in (row.mean, row.p10, row.p90))
    if low <= 0 <= high:
        return f"about {against}, from {_signed(low)} to {_signed(high)} °{unit}"
    word = "hotter" if mean > 0 else "cooler"
    near, far = sorted((abs(low), abs(high)))
    return f"{abs(mean)} °{unit} {word}, likely {near} to {far}"


def half_interval(row: SpotPattern, unit: str) -> str:
    """How sure a difference is, eight times in ten: `±11`."""
    return f"±{round(degrees_difference((row.p90 - row.p10) / 2, unit))}"


def signed_difference(kelvin_difference: float, unit: str) -> str:
    """A difference in whole degrees with its sign, for a drawing: `+35`."""
    return _signed(round(degrees_difference(kelvin_difference, unit)))


def _signed(number: int) -> str:
    return "0" if number == 0 else f"{'+' if number > 0 else '−'}{abs(number)}"
