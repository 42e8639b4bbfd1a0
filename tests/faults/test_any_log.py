"""Whatever a legal log says, with any pause between its rows, there is an answer in words and no impossible heat."""

from contextlib import suppress
from dataclasses import replace
from datetime import UTC, datetime, timedelta

import numpy as np
import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from cookstove_gui.errors import InputProblem
from cookstove_gui.forecast.model import heat
from cookstove_gui.one_road import Memory, work_out
from cookstove_gui.phrases.edge import Edge
from cookstove_gui.phrases.heading import headline
from cookstove_gui.reports.session_report import session_report
from cookstove_gui.situation import Inputs
from cookstove_gui.stove.entries import Entry, HeatBand
from cookstove_gui.stove.stove import stove_with_default_spots
from cookstove_gui.units import kelvin
from tests.logbook.strategies import logs

STOVE = stove_with_default_spots("Kitchen")
BREAD = HeatBand(name="bread", low=kelvin(365.0, "F"), high=kelvin(425.0, "F"))
NOON = datetime(2026, 1, 5, 12, 0, tzinfo=UTC)
pauses = st.lists(st.sampled_from([0.0, 0.5, 7.0, 45.0, 600.0, 4_000.0, 500_000.0]), min_size=12, max_size=12)


def _spaced(rows: tuple[Entry, ...], minutes: list[float]) -> tuple[Entry, ...]:
    """The rows one after another, so far apart."""
    at, made = NOON, []
    for row, pause in zip(rows, minutes, strict=False):
        at += timedelta(minutes=pause)
        made.append(replace(row, at=at, offset_minutes=-300))
    return tuple(made)


def _answers(rows: tuple[Entry, ...], now: datetime) -> None:
    asked = Inputs(stove=STOVE, rows=rows, now=now, band=BREAD)
    standing = work_out(asked, Memory())
    temperatures = standing.belief.ensemble.x[heat.TEMPERATURES]
    assert np.isfinite(standing.belief.ensemble.x).all()
    assert 100.0 < temperatures.min() <= temperatures.max() < 3300.0
    words = headline(standing, Edge(unit="F", now=now, offset_minutes=-300))
    assert words
    assert "nan" not in words
    with suppress(InputProblem):  # a log of which nothing is in force has nothing to report
        assert session_report(asked, "Any log").title


@settings(max_examples=3, suppress_health_check=[HealthCheck.too_slow])
@given(logs(), pauses, st.sampled_from([0.0, 3.0, 200.0, 300_000.0]))
def test_any_log_is_answered(rows: tuple[Entry, ...], minutes: list[float], later: float) -> None:
    spaced = _spaced(rows, minutes)
    _answers(spaced, (spaced[-1].at if spaced else NOON) + timedelta(minutes=later))


@pytest.mark.slow
@settings(max_examples=500, suppress_health_check=[HealthCheck.too_slow])
@given(logs(), pauses, st.sampled_from([0.0, 3.0, 200.0, 300_000.0]))
def test_hundreds_of_logs_are_answered(rows: tuple[Entry, ...], minutes: list[float], later: float) -> None:
    spaced = _spaced(rows, minutes)
    _answers(spaced, (spaced[-1].at if spaced else NOON) + timedelta(minutes=later))
