"""Of a session's projections one is shown against what came."""

from datetime import UTC, datetime

from cookstove_gui.forecast.answers import Quantiles, RecordRow
from cookstove_gui.reports.foretold import shown_projection
from cookstove_gui.stove.entries import HeatBand

NOON = datetime(2026, 1, 5, 12, 0, tzinfo=UTC)


def band(low: float) -> HeatBand:
    return HeatBand(name="x", low=low, high=low + 20)


def row(low: float, likely: float | None, came: float | None) -> RecordRow:
    return RecordRow(
        session="Rye", made_at=NOON, offset_minutes=0, band=band(low),
        enters_min=Quantiles(p10=30.0, p50=likely, p90=90.0), likely_min=likely, came_true_min=came,
    )  # fmt: skip


ROWS = (row(400, 62, 60), row(450, 95, 80), row(450, 50, 45), row(450, 31, 30), row(500, 60, None), row(450, None, 70))


def test_the_one_of_the_heat_wanted_an_hour_ahead() -> None:
    shown = shown_projection(ROWS, band(400))
    assert shown is not None
    assert (shown.band.low, shown.likely_min) == (400, 62)


def test_of_the_hottest_that_came_where_the_heat_wanted_never_did() -> None:
    shown = shown_projection(ROWS, band(500))
    assert shown is not None
    assert (shown.band.low, shown.likely_min) == (450, 50)


def test_none_where_nothing_came_or_no_likely_time_was_said() -> None:
    assert shown_projection(ROWS[4:], band(450)) is None
