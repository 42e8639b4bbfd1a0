"""Heat as colour: from iron over ember to straw, lightness a straight line, the same by day and by night."""

from functools import cache

from cookstove_gui.stove.drawn.contrast import text_on

IRON = "#2A2B2C"  # the stove's body
PLATE = "#353638"  # a part of it that shows no heat
ON_IRON = "#E9EAE5"  # words on either, by day, by night and on paper
ROOM = 294.26  # K, 70 °F, the dark end
HOTTEST_AT_LEAST = 699.82  # K, 800 °F, so that a stove seen only cold does not look hot

# Equal steps of heat; lightness L* runs in a straight line from 18 to 92, which reads with every kind of colour sight.
_STOPS = (
    "302B27", "41332B", "543A33", "6B4035", "834538", "984A39", "AE503B", "C1593B", "D3623A",
    "E0703A", "EB7F39", "F1913A", "F6A33E", "F7B550", "F8C763", "FAD87F", "FCE89B",
)  # fmt: skip
_SHADES = 256


def heat_colour(kelvin: float, hottest: float = HOTTEST_AT_LEAST) -> str:
    """#RRGGBB of a temperature; `hottest` [K] is the hottest this stove has been, at least HOTTEST_AT_LEAST counts."""
    share = (kelvin - ROOM) / (max(hottest, HOTTEST_AT_LEAST) - ROOM)
    return _shade(round(min(max(share, 0.0), 1.0) * (_SHADES - 1)))


def heat_ink(kelvin: float, hottest: float = HOTTEST_AT_LEAST) -> str:
    """Black or white, to write on that heat with."""
    return text_on(heat_colour(kelvin, hottest))


@cache
def _shade(number: int) -> str:
    place = number / (_SHADES - 1) * (len(_STOPS) - 1)
    left = min(int(place), len(_STOPS) - 2)
    part = place - left
    one, other = (bytes.fromhex(_STOPS[stop]) for stop in (left, left + 1))
    return "#" + "".join(f"{round(a + (b - a) * part):02X}" for a, b in zip(one, other, strict=True))
