"""The words on the time axis: the oven now, what is pointed at, the curve in one sentence, chances in tenths."""

from datetime import datetime

from cookstove_gui.phrases.edge import Edge, heat_name, whole
from cookstove_gui.phrases.figures import doubt_text
from cookstove_gui.stove.entries import HeatBand
from cookstove_gui.units import degrees


def half_width(low: float, high: float, unit: str) -> str:
    """Doubt of a heat that lies between two [K], in the same steps as on every page: `±7`, `±15`."""
    return doubt_text((high - low) / 2.0, unit)


def in_ten(chance: float) -> str:
    """A chance in tenths: `7 in 10`; never quite none and never quite sure."""
    if chance < 0.05:
        return "under 1 in 10"
    return "over 9 in 10" if chance > 0.95 else f"{round(10 * chance)} in 10"


def pointed_at(
    clock: str, p10: float, p50: float, p90: float, in_band: float | None, band: HeatBand, edge: Edge
) -> str:
    """The oven at a moment: `5:05 oven about 398, 372 to 421 °F; bread heat 7 in 10`."""
    middle = whole(degrees(p50, edge.unit))
    found = f"{clock}  oven about {middle}, {edge.range(p10, p90)}"
    return found if in_band is None else f"{found}; {heat_name(band)} {in_ten(in_band)}"


def curve_words(began: tuple[datetime, float], now: tuple[datetime, float], edge: Edge) -> str:
    """The oven's line so far in one sentence."""
    return f"The oven was about {edge.heat(began[1])} at {edge.at(began[0])} and is about {edge.heat(now[1])} now."


def ahead_words(turns: tuple[datetime, float] | None, ends: tuple[datetime, float], edge: Edge) -> str:
    """The oven's line to come in one sentence."""
    top = "" if turns is None else f"is highest about {edge.at(turns[0])} at {edge.heat(turns[1])}, then "
    return f"With this fire it {top}comes to about {edge.heat(ends[1])} at {edge.at(ends[0])}."


def spots_then(clock: str, heats: tuple[tuple[str, float], ...], unit: str) -> str:
    """Spots at a moment to come: `5:05 front right about 330, back right about 372 °F`."""
    words = ", ".join(f"{name} about {whole(degrees(heat, unit))}" for name, heat in heats)
    return f"{clock}  {words} °{unit}"


def spot_ahead(name: str, number: str, then: tuple[datetime, float], edge: Edge) -> str:
    """A spot now and later: `Front right: ≈330 °F now, about 340 °F at 6:10 with this fire.`"""
    return (
        f"{name[:1].upper()}{name[1:]}: {number} °{edge.unit} now, "
        f"about {edge.heat(then[1])} at {edge.at(then[0])} with this fire."
    )
