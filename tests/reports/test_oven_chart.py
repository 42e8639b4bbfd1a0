"""The oven's chart on paper: every reading at its place, what was said against what came, words that keep apart."""

import re
import xml.etree.ElementTree as ET
from dataclasses import replace
from datetime import UTC, datetime, timedelta
from itertools import pairwise

import numpy as np
import pytest

from cookstove_gui.cooking.fit.bands import band_from_text
from cookstove_gui.forecast.answers import Quantiles, RecordRow, Trace
from cookstove_gui.phrases.lane import lane_rows_of
from cookstove_gui.phrases.report import ReportClock
from cookstove_gui.reports.oven_chart import Charted, oven_chart
from cookstove_gui.reports.stages import stages
from cookstove_gui.reports.svg import VERDIGRIS, width_of
from cookstove_gui.stove.entries import Entry, Kind
from cookstove_gui.stove.stove import stove_with_default_spots

NOON = datetime(1970, 1, 5, 12, 0, tzinfo=UTC)
BAND = band_from_text("bread", "F")


def entry(number: int, minute: float, kind: Kind = Kind.READING, **fields: str) -> Entry:
    told = {"spot": "oven_centre", "unit": "F", "value": "300"} if kind is Kind.READING else {}
    at = NOON + timedelta(minutes=minute)
    return Entry(number=number, at=at, offset_minutes=0, kind=kind, **{**told, **fields})


def charted(*rows: Entry) -> Charted:
    at = (rows[0].at, rows[-1].at)
    heats = np.array([420.0, 420.0])
    stove = stove_with_default_spots("Kitchen")
    return Charted(
        stove=stove, rows=rows, slips=frozenset(), stages=stages(rows), lane=lane_rows_of(rows, stove),
        belief=Trace(at=at, p10=heats - 5.0, p50=heats, p90=heats + 5.0), unit="F", band=BAND,
        clock=ReportClock(NOON, 0),
    )  # fmt: skip


def words_of(chart: str) -> list[tuple[float, float, str]]:
    """Left, right and text of all words, by their foot."""
    return [
        (float(one.get("x", "0")), float(one.get("y", "0")), one.text or "")
        for one in ET.fromstring(chart).iter("{http://www.w3.org/2000/svg}text")
    ]


@pytest.mark.parametrize("days", [0.01, 0.3, 3, 400, 56 * 365])
def test_a_session_of_any_length_has_a_handful_of_clocks(days: float) -> None:
    chart = oven_chart(charted(entry(1, 0), entry(2, days * 1440)), "said")
    clocks = [text for _, _, text in words_of(chart) if re.fullmatch(r"\d+:\d\d", text)]
    assert 1 <= len(clocks) <= 12


def test_the_oven_never_read_has_no_chart() -> None:
    assert oven_chart(charted(entry(1, 0, Kind.LIT), entry(2, 5, spot="top_back_left")), "said") == ""


def test_a_hotter_reading_stands_higher_and_a_later_one_further_right() -> None:
    rows = (entry(1, 0, value="200"), entry(2, 60, value="320"), entry(3, 90, value="390"))
    rings = [
        (float(ring.get("cx", "0")), float(ring.get("cy", "0")))
        for ring in ET.fromstring(oven_chart(charted(*rows), "said")).iter("{http://www.w3.org/2000/svg}circle")
    ]
    assert rings == sorted(rings)
    assert [y for _, y in rings] == sorted((y for _, y in rings), reverse=True)
    share = (rings[1][0] - rings[0][0]) / (rings[2][0] - rings[0][0])
    assert share == pytest.approx(60 / 90, abs=0.01)


def test_what_was_said_stands_beside_what_came_and_on_the_heat_wanted() -> None:
    said = RecordRow(
        session="x", made_at=NOON + timedelta(minutes=20), offset_minutes=0, band=BAND,
        enters_min=Quantiles(p10=30.0, p50=45.0, p90=70.0), likely_min=45.0, came_true_min=40.0,
    )  # fmt: skip
    found = replace(charted(entry(1, 0), entry(2, 120)), foretold=said)
    chart = oven_chart(found, "said")
    texts = [text for _, _, text in words_of(chart)]
    assert "came 13:00" in texts
    assert "bread heat said at 12:20: about 13:05," in texts
    assert "between 12:50 and 13:30" in texts
    assert chart.count(VERDIGRIS) > oven_chart(charted(entry(1, 0), entry(2, 120)), "said").count(VERDIGRIS)


def test_no_two_words_of_the_fire_lane_touch() -> None:
    fed = (entry(number, 7 * number, Kind.WOOD, value=str(number), unit="kg") for number in range(2, 30))
    rows = (entry(1, 0), entry(2, 1, Kind.LIT), *fed, entry(31, 230))
    lane = sorted(words_of(oven_chart(charted(*rows), "said")), key=lambda one: one[1])
    foot = lane[-1][1]
    spans = sorted(
        (x - width_of(text) / 2, x + width_of(text) / 2) for x, y, text in lane if y == foot and text != "fire"
    )
    assert len(spans) > 3
    assert all(one[1] <= other[0] for one, other in pairwise(spans))
