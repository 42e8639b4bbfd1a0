"""Heat as colour: one even, colour-blind-safe scale, from a cool room to the hottest this stove has been."""

from dataclasses import dataclass
from functools import cache

from cookstove_gui.gui.widgets.theme import text_on

MAP = "CET-CBL2"  # linear in lightness, safe for the common forms of colour blindness; Kovesi 2015, arXiv 1509.03700
ROOM = 293.15  # K, the cool end
HOTTEST_AT_LEAST = 530.0  # K, so that a stove seen only cold does not look hot
_STEPS = 256
_TRIM = (0.12, 0.94)  # the ends of the map are black and white, which say nothing on a page


@cache
def _colours() -> tuple[str, ...]:
    # Imported here because the plotting library is brought in after the first paint.
    import pyqtgraph

    low, high = _TRIM
    table = pyqtgraph.colormap.get(MAP).getLookupTable(start=low, stop=high, nPts=_STEPS, mode="byte")
    return tuple(f"#{red:02X}{green:02X}{blue:02X}" for red, green, blue in table[:, :3])


@dataclass(frozen=True, slots=True)
class HeatScale:
    """Colours between two temperatures [K]; what lies outside takes the end's colour."""

    low: float = ROOM
    high: float = HOTTEST_AT_LEAST

    def colour(self, temperature: float) -> str:
        """#RRGGBB of a temperature [K]."""
        share = (temperature - self.low) / (self.high - self.low)
        return _colours()[round(min(max(share, 0.0), 1.0) * (_STEPS - 1))]

    def ink(self, temperature: float) -> str:
        """The colour to write with on a patch of that heat."""
        return text_on(self.colour(temperature))
