"""An opened session is followed to its end and shown beside what was foretold of it."""

from datetime import timedelta

import numpy as np
import pytest

from cookstove_gui.desk import Desk
from cookstove_gui.desk.logbook.opened import asked_about, opened, shown_projection, values_text
from cookstove_gui.desk.studying import study_reader
from cookstove_gui.forecast.answers import Quantiles, RecordRow
from cookstove_gui.stove.entries import HeatBand
from cookstove_gui.study import study
from cookstove_gui.units import kelvin
from tests.held_clock import HeldClock

from .made import keep

HEATS = (80, 130, 190, 250, 300, 345, 380, 400, 405, 400)


def test_the_curve_runs_through_the_readings_from_first_to_last(held_desk: Desk, held_clock: HeldClock) -> None:
    number = keep(held_desk, "Rye", held_clock() - timedelta(days=9), HEATS, "good crust", step=12)
    asked = asked_about(held_desk, number)
    assert asked is not None
    found = opened(asked)
    assert (found.title, found.minutes) == ("Rye", pytest.approx(112.0))
    assert [float(one.heat) for one in found.readings] == [pytest.approx(kelvin(heat, "F")) for heat in HEATS]
    at_readings = np.interp([one.minute for one in found.readings], found.at, found.middle)
    assert np.abs(at_readings - [one.heat for one in found.readings]).max() < 20.0
    assert np.all(found.low <= found.high)
    assert found.notes == (("11:52", "good crust"),)
    assert values_text(found, "F").splitlines()[0] == "clock\tp10 °F\tp50 °F\tp90 °F"
    assert len(values_text(found, "F").splitlines()) == len(found.at) + 1


def test_a_session_without_entries_is_not_followed(held_desk: Desk) -> None:
    number = held_desk.logbook.start_session(held_desk.stove.name, "Empty").number
    assert asked_about(held_desk, number) is None


def test_the_projections_of_a_session_are_its_own(held_desk: Desk, held_clock: HeldClock) -> None:
    for days in (9, 6, 3):
        keep(held_desk, "Rye", held_clock() - timedelta(days=days), HEATS, step=12)
    found = study(study_reader(held_desk)())
    assert found is not None
    held_desk.show_study(found)
    parts = [asked_about(held_desk, one.number) for one in held_desk.sessions]
    rows = [row for part in parts if part is not None for row in part.record]
    assert sorted(rows, key=lambda row: row.made_at) == sorted(found.record.rows, key=lambda row: row.made_at)


def row(low: float, likely: float | None, came: float | None, now: HeldClock) -> RecordRow:
    return RecordRow(
        session="Rye", made_at=now(), offset_minutes=0, band=HeatBand(name="x", low=low, high=low + 20),
        enters_min=Quantiles(p10=30.0, p50=likely, p90=90.0), likely_min=likely, came_true_min=came,
    )  # fmt: skip


def test_of_the_hottest_heat_that_came_the_projection_an_hour_ahead_is_shown(held_clock: HeldClock) -> None:
    rows = (
        row(400, 62, 60, held_clock), row(450, 95, 80, held_clock), row(450, 50, 45, held_clock),
        row(450, 31, 30, held_clock), row(500, 60, None, held_clock), row(450, None, 70, held_clock),
    )  # fmt: skip
    shown = shown_projection(rows)
    assert shown is not None
    assert (shown.band.low, shown.likely_min) == (450, 50)
    assert shown_projection(rows[4:]) is None
