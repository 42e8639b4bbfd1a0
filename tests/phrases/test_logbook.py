"""The Logbook in words: local days and clocks, counts, and what came of each projection."""

from dataclasses import replace
from datetime import UTC, datetime, timedelta

import pytest
from hypothesis import given
from hypothesis import strategies as st

from cookstove_gui.forecast.answers import Quantiles, RecordRow, TrackRecord
from cookstove_gui.phrases.edge import Edge
from cookstove_gui.phrases.logbook import (
    arrival_window,
    came_true,
    dated,
    import_question,
    recalibrated,
    record_behind,
    session_span,
    track_record_words,
)
from cookstove_gui.stove.entries import HeatBand
from tests.phrases.facts import HORIZON, NOW, ahead, edges, is_plain, of, quantiles

EDGE = Edge(unit="F", now=datetime(2026, 3, 14, 15, 0, tzinfo=UTC), offset_minutes=-240)
RECORD = TrackRecord(stove="range", sessions=8, projections=23, inside_window=19, typical_miss_min=6.2, rows=())


def row(came_true_min: float | None, enters: Quantiles) -> RecordRow:
    return RecordRow(
        session="Sunday",
        made_at=NOW,
        band=HeatBand(name="hot", low=480.0, high=505.0),
        enters_min=enters,
        came_true_min=came_true_min,
    )


def test_a_session_that_crosses_midnight_is_named_by_its_local_day() -> None:
    began = datetime(2026, 3, 14, 2, 30, tzinfo=UTC)
    assert session_span(began, began + timedelta(hours=2), -240) == "Friday 13 March 2026, 22:30 to 0:30"
    assert session_span(began, began, -240) == "Friday 13 March 2026, 22:30"
    assert session_span(None, None, -240) == "nothing entered yet"


def test_a_session_in_a_list_begins_with_its_local_day() -> None:
    late = datetime(2026, 1, 5, 23, 30, tzinfo=UTC)
    assert dated("Bread", late, 60) == "6 Jan, Bread"
    assert dated("Bread", late, -60) == "5 Jan, Bread"


@pytest.mark.parametrize(
    ("minutes", "said"),
    [(30.0, "11:30, inside"), (10.0, "11:10, earlier"), (70.0, "12:10, later"), (None, "not reached")],
)
def test_what_came_true(minutes: float | None, said: str) -> None:
    assert came_true(row(minutes, of(20, 30, 50)), EDGE) == said


def test_an_arrival_after_an_open_end_counts_as_inside() -> None:
    assert came_true(row(170.0, of(20, 30, None)), EDGE) == "13:50, inside"
    assert arrival_window(of(20, 30, None), EDGE) == "11:20 to later than 3 h"
    assert arrival_window(of(None, None, None), EDGE) == "not within three hours"


@given(quantiles(), st.none() | st.floats(0, HORIZON), edges())
def test_clocks_of_the_record_lie_after_the_moment_it_was_made(
    enters: Quantiles, minutes: float | None, edge: Edge
) -> None:
    told = f"{arrival_window(enters, edge)} {came_true(row(minutes, enters), edge)}"
    assert is_plain(told)
    assert all(found <= HORIZON + 1 for found in ahead(told, edge))


@pytest.mark.parametrize(
    ("problems", "rows", "files", "said"),
    [
        (1, 0, 0, "One thing is wrong, and there is nothing that could be kept."),
        (3, 40, 2, "3 things are wrong or doubtful. 40 entries in 2 sessions can be kept."),
        (1, 1, 1, "One thing is wrong or doubtful. 1 entry in 1 session can be kept."),
    ],
)
def test_what_an_import_would_bring(problems: int, rows: int, files: int, said: str) -> None:
    assert import_question(problems, rows, files) == said


def test_track_record_in_one_sentence() -> None:
    assert track_record_words(RECORD) == (
        "Of 23 projections given at least 30 minutes ahead, 19 came true inside their window; typical miss 6 min."
    )
    assert track_record_words(replace(RECORD, typical_miss_min=None)).endswith("inside their window.")
    assert track_record_words(replace(RECORD, projections=0, inside_window=0)).startswith("No projection")


def test_what_the_record_was_made_from() -> None:
    assert record_behind(RECORD).startswith("From 8 sessions, ")
    assert record_behind(replace(RECORD, sessions=1)).startswith("From 1 session, ")


@pytest.mark.parametrize(
    ("factor", "often"), [(1.4, "less often than eight times in ten"), (0.5, "more often than eight times in ten")]
)
def test_recalibration_is_said(factor: float, often: str) -> None:
    assert often in recalibrated(factor)
    assert recalibrated(factor).endswith(f"that range is now {factor} times as wide.")
    assert recalibrated(1.02) == ""
