"""The Logbook in words: local days and clocks, counts, and what came of each projection."""

from dataclasses import replace
from datetime import UTC, datetime, timedelta

import pytest
from hypothesis import given
from hypothesis import strategies as st

from cookstove_gui.forecast.answers import Quantiles, RecordRow, TrackRecord
from cookstove_gui.forecast.learning.record_by_session import RecordBySession, Trend, record_by_session
from cookstove_gui.forecast.learning.track_record import track_record
from cookstove_gui.phrases.edge import Edge
from cookstove_gui.phrases.logbook.imports import import_question
from cookstove_gui.phrases.logbook.record import (
    arrival_window,
    came_true,
    held_headline,
    misses_words,
    recalibrated,
    record_behind,
    track_record_words,
    trend_words,
)
from cookstove_gui.phrases.logbook.sessions import session_span
from cookstove_gui.stove.entries import HeatBand
from tests.forecast.learning.made_records import record_rows
from tests.phrases.facts import HORIZON, NOW, ahead, edges, is_plain, of, quantiles

RECORD = TrackRecord(stove="range", sessions=8, projections=23, inside_window=19, typical_miss_min=6.2, rows=())


def row(came_true_min: float | None, enters: Quantiles, offset: int = -240, watched: float = 120.0) -> RecordRow:
    return RecordRow(
        session="Sunday",
        made_at=NOW,
        offset_minutes=offset,
        band=HeatBand(name="hot", low=480.0, high=505.0),
        enters_min=enters,
        likely_min=enters.p50,
        came_true_min=came_true_min,
        watched_min=watched,
    )


def test_a_session_that_crosses_midnight_is_named_by_its_local_day() -> None:
    began = datetime(2026, 3, 14, 2, 30, tzinfo=UTC)
    assert session_span(began, began + timedelta(hours=2), -240) == "Friday 13 March 2026, 22:30 to 0:30"
    assert session_span(began, began, -240) == "Friday 13 March 2026, 22:30"
    assert session_span(None, None, -240) == "nothing entered yet"


@pytest.mark.parametrize(
    ("minutes", "said"),
    [
        (30.0, "8:33, inside"),
        (10.0, "8:13, earlier"),
        (70.0, "9:13, later"),
        (50.1, "8:53, just later"),  # the window ends at 8:53 too
        (19.9, "8:23, just earlier"),
        (None, "not reached"),
    ],
)
def test_what_came_true(minutes: float | None, said: str) -> None:
    assert came_true(row(minutes, of(20, 30, 50))) == said


def test_what_never_came_is_held_against_a_window_only_where_it_closed() -> None:
    assert came_true(row(None, of(20, 30, 50), watched=40.0)) == "readings ended before"
    assert came_true(row(None, of(20, 30, None))) == "not reached, as it might"
    assert came_true(row(None, of(None, None, None))) == "not reached, as said"


@given(quantiles(), st.none() | st.floats(0, HORIZON), st.floats(0, HORIZON))
def test_a_row_reads_inside_exactly_where_the_record_counts_it(
    enters: Quantiles, minutes: float | None, watched: float
) -> None:
    made = row(minutes, enters, watched=watched)
    counted = track_record("range", 2, [made])
    if minutes is not None:
        assert came_true(made).endswith(", inside") == (counted.inside_window == 1)
        assert counted.projections == 1


def test_a_projection_is_told_by_the_clock_of_its_own_session() -> None:
    assert came_true(row(30.0, of(20, 30, 50), offset=120)) == "14:33, inside"
    assert arrival_window(row(None, of(20, 30, 50), offset=120)) == "14:23 to 14:53"


def test_an_arrival_after_an_open_end_counts_as_inside() -> None:
    assert came_true(row(170.0, of(20, 30, None))) == "10:53, inside"
    assert arrival_window(row(None, of(20, 30, None))) == "8:23 to later than 3 h"
    assert arrival_window(row(None, of(None, None, None))) == "not within three hours"


@given(quantiles(), st.none() | st.floats(0, HORIZON), edges())
def test_clocks_of_the_record_lie_after_the_moment_it_was_made(
    enters: Quantiles, minutes: float | None, edge: Edge
) -> None:
    made = row(minutes, enters, edge.offset_minutes)
    told = f"{arrival_window(made)} {came_true(made)}"
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


def test_with_one_session_the_record_claims_nothing() -> None:
    one = replace(RECORD, sessions=1)
    assert track_record_words(one).startswith("One session is too little to judge")
    assert (record_behind(one), recalibrated(1.4, one)) == ("", "")
    two = replace(RECORD, sessions=2)
    assert track_record_words(two).startswith("Of 23 projections")
    assert record_behind(two).startswith("From 2 sessions")
    assert recalibrated(1.4, two)


def test_a_single_projection_is_told_as_one() -> None:
    one = replace(RECORD, projections=1, inside_window=1, typical_miss_min=None)
    assert track_record_words(one) == (
        "The only projection given at least 30 minutes ahead came true inside its window."
    )
    assert "did not come true" in track_record_words(replace(one, inside_window=0))


@pytest.mark.parametrize(
    ("factor", "often"), [(1.4, "less often than eight times in ten"), (0.5, "more often than eight times in ten")]
)
def test_recalibration_is_said(factor: float, often: str) -> None:
    assert often in recalibrated(factor, RECORD)
    assert recalibrated(factor, RECORD).endswith(f"that range is now {factor} times as wide.")
    assert recalibrated(1.02, RECORD) == ""


def by_session(held: tuple[bool, ...]) -> RecordBySession:
    return record_by_session(record_rows(len(held), held))


def test_of_the_windows_an_hour_ahead_how_many_held() -> None:
    assert (
        held_headline(by_session((True,) * 4 + (False,)), RECORD)
        == "Of 10 windows said about an hour ahead 8 held: the share that was meant, 8 in 10."
    )
    assert held_headline(by_session((True,) * 3 + (False,) * 3), RECORD).endswith("6 held: 5 in 10, where 8 are meant.")


def test_too_few_windows_are_called_too_few() -> None:
    assert held_headline(by_session((True,)), RECORD) == (
        "Too few to judge by: of 2 windows said about an hour ahead 2 held."
    )
    one_session = replace(RECORD, sessions=1)
    assert held_headline(by_session((True,) * 5), one_session) == track_record_words(one_session)
    assert held_headline(by_session(()), RECORD) == track_record_words(RECORD)


def test_which_way_the_windows_missed() -> None:
    assert misses_words(by_session((True, False))) == "Of those that did not hold 2 came later than said."
    assert misses_words(by_session((True,))) == ""


def test_every_trend_has_its_own_words() -> None:
    assert len({trend_words(trend) for trend in Trend}) == len(Trend)
    assert trend_words(Trend.BETTER).startswith("Yes.")
    for held_too_often in (Trend.BETTER, Trend.SAME):  # windows may be too wide
        assert "at least as often as they should" in trend_words(held_too_often)
