"""Sessions in words: what came of them, what was found, and what was foretold against what came."""

from datetime import UTC, date, datetime

import pytest

from cookstove_gui.cooking.fires.firing_facts import FiringFacts
from cookstove_gui.cooking.fires.oven_stages import OvenStage, Stage
from cookstove_gui.forecast.answers import Quantiles, RecordRow, TrackRecord, Verdict
from cookstove_gui.phrases.edge import measured_time
from cookstove_gui.phrases.logbook.sessions import (
    came_of_it,
    came_words,
    empty_question,
    foretold_words,
    found_words,
    list_day,
    session_record_words,
    stage_rungs,
)
from cookstove_gui.stove.entries import HeatBand
from cookstove_gui.units import kelvin

AT = datetime(2026, 11, 8, 14, 0, tzinfo=UTC)
BREAD = HeatBand(name="bread", low=458.0, high=491.0)


def facts(hottest: float | None, rise: float | None = None, *, lit: bool = True) -> FiringFacts:
    reading = None if hottest is None else (110.0, float(kelvin(hottest, "F")))
    return FiringFacts(
        session=1, began=AT, ended=AT, offset_minutes=0, lit=((AT, AT),) if lit else (), loads=0, weighed=0, wood=0.0,
        curve=(reading,) if reading else (), hottest=reading, rise_min=rise, hold=None,
    )  # fmt: skip


@pytest.mark.parametrize(
    ("found", "said"),
    [
        (None, "nothing entered yet"),
        (facts(None), "oven not read"),
        (facts(400, 101.0), "bread heat after 1 h 41"),
        (facts(467), "467 °F after 1 h 50"),
        (facts(467, lit=False), "467 °F"),
    ],
)
def test_what_came_of_a_session(found: FiringFacts | None, said: str) -> None:
    assert came_of_it(found, BREAD, "F") == said


def test_a_day_in_the_list_says_its_year_once_it_is_long_ago() -> None:
    assert list_day(AT, 0, date(2026, 11, 14)) == "Sun 8 Nov"
    assert list_day(AT, 0, date(2027, 10, 1)) == "8 Nov 2026"
    assert list_day(AT, 660, date(2026, 11, 14)) == "Mon 9 Nov"
    assert list_day(None, 0, date(2026, 11, 14)) == ""


def test_what_was_searched_for_is_said_back() -> None:
    assert found_words(11, 11, (), None, "F", "Brown stove") == "11 sessions of Brown stove"
    assert found_words(3, 11, ("birch",), 450.0, "F", "x") == "3 of 11 sessions: “birch” and oven at 450 °F or more"


@pytest.mark.parametrize(("minutes", "said"), [(58.4, "58 min"), (101.0, "1 h 41"), (120.0, "2 h"), (65.0, "1 h 05")])
def test_a_measured_time_is_told_to_the_minute(minutes: float, said: str) -> None:
    assert measured_time(minutes) == said


def test_stages_are_named_by_the_heat_wanted() -> None:
    def said(stage: Stage) -> tuple[str, ...]:
        return stage_rungs(OvenStage(stage=stage, start=0.0, end=105.0), BREAD)

    assert said(Stage.AT_HEAT) == ("bread heat, 1 h 45 by the curve", "bread heat, 1 h 45", "1 h 45")
    assert said(Stage.ABOVE) == ("above bread heat",)
    assert said(Stage.CATCHING) == ("catching",)


def row(enters: Quantiles, likely: float | None, came: float | None) -> RecordRow:
    return RecordRow(
        session="Bread", made_at=AT, offset_minutes=0, band=BREAD, enters_min=enters, likely_min=likely,
        came_true_min=came,
    )  # fmt: skip


def test_what_was_foretold_stands_beside_what_came() -> None:
    closed = row(Quantiles(p10=40.0, p50=53.0, p90=72.0), 53.0, 51.0)
    assert foretold_words(closed) == ("bread heat foretold at 14:00: 14:53,", "between 14:40 and 15:12")
    assert came_words(closed) == "came 14:51"
    opened = row(Quantiles(p10=40.0, p50=60.0, p90=None), 60.0, None)
    assert foretold_words(opened)[1] == "14:40 at the soonest"
    assert came_words(opened) == ""


def test_how_the_projections_of_a_session_turned_out() -> None:
    def said(number: int, held: int, miss: float | None = 4.0) -> str:
        record = TrackRecord(
            stove="x", sessions=1, projections=number, inside_window=held, typical_miss_min=miss, rows=()
        )
        return session_record_words(record, [Verdict.INSIDE])

    assert said(5, 4) == "Five projections in this session: four came true inside their window, typical miss 4 min."
    assert said(1, 0, None) == "One projection in this session: it did not come true inside its window."
    assert said(12, 12) == "12 projections in this session: all came true inside their window, typical miss 4 min."
    assert said(10, 8).startswith("10 projections in this session: 8 came true")
    assert said(2, 0).startswith("Two projections in this session: none came true")
    assert said(0, 0) == "No projection of this session was put to the test."
    assert (
        session_record_words(
            TrackRecord(stove="x", sessions=1, projections=0, inside_window=0, typical_miss_min=None, rows=()), []
        )
        == ""
    )


def test_emptying_the_bin_asks_first() -> None:
    assert empty_question(1) == "1 session will be deleted for good, with all entries and photos. Delete?"
