"""What holds of every sentence, and what its numbers and clocks are checked with."""

import re
from datetime import UTC, datetime

from hypothesis import strategies as st

from cookstove_gui.forecast.answers import Quantiles
from cookstove_gui.phrases.edge import Edge

NOW = datetime(2026, 3, 14, 12, 3, 40, tzinfo=UTC)  # 8:03 on a clock four hours behind
EDGE = Edge(unit="F", now=NOW, offset_minutes=-240)
HORIZON = 180.0  # min, of a projection
_CLOCK = re.compile(r"(?<![\d:])(\d{1,2}):(\d{2})(?![\d:])")
_NUMBER = re.compile(r"\d+(?:\.\d+)?")

units = st.sampled_from(("F", "C"))
offsets = st.sampled_from((-600, -240, 0, 60, 345, 780))
minutes_ahead = st.floats(0, HORIZON)


@st.composite
def edges(draw: st.DrawFn) -> Edge:
    """Any unit and local clock."""
    return Edge(unit=draw(units), now=NOW, offset_minutes=draw(offsets))


@st.composite
def quantiles(draw: st.DrawFn, low: float = 0.0, high: float = HORIZON, *, whole: bool = False) -> Quantiles:
    """Three levels in order; unless `whole`, the upper ones may lie beyond the horizon (None)."""
    levels = sorted(draw(st.lists(st.floats(low, high), min_size=3, max_size=3)))
    seen = 3 if whole else draw(st.integers(0, 3))
    p10, p50, p90 = (level if place < seen else None for place, level in enumerate(levels))
    return Quantiles(p10=p10, p50=p50, p90=p90)


def of(p10: float | None, p50: float | None, p90: float | None) -> Quantiles:
    """Three levels."""
    return Quantiles(p10=p10, p50=p50, p90=p90)


def is_plain(text: str) -> bool:
    """Whether a text holds nothing that only a program would say."""
    return re.search(r"None|\bnan\b|\binf\b|  |\{|\}|-\d|\.\.|\b1 (?:minutes|hours|days|splits|fires)\b", text) is None


def ahead(text: str, edge: Edge) -> list[int]:
    """How many minutes after now each clock in a text next comes; one just passed is nearly a day ahead."""
    here = edge.clock(0.0).split(":")
    now = 60 * int(here[0]) + int(here[1])
    return [(60 * int(hour) + int(minute) - now) % 1440 for hour, minute in _CLOCK.findall(text)]


def numbers(text: str) -> list[float]:
    """All numbers in a text that are not part of a clock."""
    return [float(found) for found in _NUMBER.findall(_CLOCK.sub("", text).replace(",", ""))]
