"""The chart of a session however long: no more ticks than a page can carry."""

from datetime import UTC, datetime, timedelta

import numpy as np
import pytest

from cookstove_gui.cooking.fit.bands import band_from_text
from cookstove_gui.forecast.answers import Trace
from cookstove_gui.reports.oven_chart import oven_chart
from cookstove_gui.stove.entries import Entry, Kind
from cookstove_gui.stove.stove import stove_with_default_spots

NOON = datetime(1970, 1, 5, 12, 0, tzinfo=UTC)


@pytest.mark.parametrize("days", [0.01, 0.3, 3, 400, 56 * 365])
def test_a_session_of_any_length_has_a_handful_of_ticks(days: float) -> None:
    at = (NOON, NOON + timedelta(days=days))
    rows = tuple(
        Entry(number=number, at=moment, offset_minutes=0, kind=Kind.READING, spot="oven_centre", value="300", unit="F")
        for number, moment in enumerate(at, start=1)
    )
    heats = np.array([420.0, 420.0])
    belief = Trace(at=at, p10=heats - 5.0, p50=heats, p90=heats + 5.0)
    chart = oven_chart(stove_with_default_spots("Kitchen"), rows, set(), (), belief, "F", band_from_text("bread", "F"))
    assert 1 <= chart.count('id="xtick_') <= 24  # on both axes
