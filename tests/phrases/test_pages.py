"""The sentences of the Logbook and of My stove say their numbers as a cook would."""

from datetime import UTC, datetime, timedelta

import pytest

from cookstove_gui.forecast.answers import Quantiles, RecordRow, SpotPattern
from cookstove_gui.phrases.edge import Edge, ago
from cookstove_gui.phrases.logbook import arrival_window, came_true, dated, import_question, recalibrated, session_span
from cookstove_gui.phrases.my_stove.hot_side import spot_offset
from cookstove_gui.stove.entries import HeatBand

NOW = datetime(2026, 3, 14, 15, 0, tzinfo=UTC)
EDGE = Edge(unit="F", now=NOW, offset_minutes=-240)


def row(came_true_min: float | None, p10: float | None = 20, p90: float | None = 50) -> RecordRow:
    return RecordRow(
        session="Sunday",
        made_at=NOW,
        band=HeatBand(name="hot", low=480.0, high=505.0),
        enters_min=Quantiles(p10=p10, p50=30, p90=p90),
        came_true_min=came_true_min,
    )


@pytest.mark.parametrize(
    ("mean", "p10", "p90", "said"),
    [
        (20.0, 10.0, 30.0, "36 °F hotter, likely 18 to 54"),
        (-20.0, -30.0, -10.0, "36 °F cooler, likely 18 to 54"),
        (2.0, -5.0, 10.0, "about the mean, from −9 to +18 °F"),
    ],
)
def test_a_spot_against_the_mean(mean, p10, p90, said):
    found = SpotPattern(spot="top_back_left", mean=mean, p10=p10, p90=p90, readings=9)
    assert spot_offset(found, "F") == said


def test_a_spot_without_readings_claims_nothing():
    found = SpotPattern(spot="top_back_left", mean=20.0, p10=10.0, p90=30.0, readings=0)
    assert spot_offset(found, "F") == "not read yet"


@pytest.mark.parametrize(
    ("after", "said"),
    [
        (timedelta(seconds=50), "just now"),
        (timedelta(minutes=25), "25 minutes ago"),
        (timedelta(hours=3), "3 hours ago"),
        (timedelta(days=9), "9 days ago"),
    ],
)
def test_ages(after, said):
    assert ago(NOW - after, NOW) == said


def test_a_session_that_crosses_midnight_is_named_by_its_local_day():
    began = datetime(2026, 3, 14, 2, 30, tzinfo=UTC)
    assert session_span(began, began + timedelta(hours=2), -240) == "Friday 13 March 2026, 22:30 to 0:30"


@pytest.mark.parametrize(
    ("minutes", "said"),
    [(30.0, "11:30, inside"), (10.0, "11:10, earlier"), (70.0, "12:10, later"), (None, "not seen to come")],
)
def test_what_came_true(minutes, said):
    assert came_true(row(minutes), EDGE) == said


def test_an_arrival_after_an_open_end_counts_as_inside():
    assert came_true(row(170.0, p90=None), EDGE) == "13:50, inside"
    assert arrival_window(row(170.0, p90=None).enters_min, EDGE) == "11:20 to later than 3 h"


def test_import_question_counts():
    assert import_question(1, 0, 0) == "One thing is wrong, and there is nothing that could be kept."
    assert import_question(3, 40, 2).endswith("40 entries in 2 sessions can be kept.")


@pytest.mark.parametrize(
    ("factor", "said"),
    [
        (1.02, ""),
        (
            1.4,
            "An hour ahead the oven was inside its range less often than eight times in ten, "
            "so that range is now made 1.4 times as wide.",
        ),
        (
            0.5,
            "An hour ahead the oven was inside its range more often than eight times in ten, "
            "so that range is now made 0.5 times as wide.",
        ),
    ],
)
def test_recalibration_is_said(factor, said):
    assert recalibrated(factor) == said


def test_a_session_in_a_list_begins_with_its_local_day():
    late = datetime(2026, 1, 5, 23, 30, tzinfo=UTC)
    assert dated("Bread", late, 60) == "6 Jan, Bread"
    assert dated("Bread", late, -60) == "5 Jan, Bread"
