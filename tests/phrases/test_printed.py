"""What the commands print for people: the right unit and clock, and a chance beside each claim."""

from dataclasses import replace

import pytest
from hypothesis import given

from cookstove_gui.cooking.fit.fit import FitState, SpotFit, TaskFit
from cookstove_gui.cooking.fit.tasks import task_of
from cookstove_gui.forecast.answers import Ahead, BandOutlook, Outlook, Quantiles, RecordRow, TrackRecord, Zone
from cookstove_gui.phrases.edge import Edge
from cookstove_gui.phrases.printed import fit_row, outlook_lines, record_heading, record_line, zone_row
from cookstove_gui.stove.entries import HeatBand
from cookstove_gui.stove.stove import stove_with_default_spots
from cookstove_gui.units import kelvin
from tests.phrases.facts import EDGE, HORIZON, NOW, ahead, edges, is_plain, of, quantiles

BREAD = HeatBand(name="bread", low=kelvin(375.0, "F"), high=kelvin(425.0, "F"))
STOVE = stove_with_default_spots("Kitchen")


def found(oven: float, enters: Quantiles, stays: Quantiles) -> Outlook:
    heat = kelvin(oven, "F")
    step = Ahead(minutes=30, p10=heat, p50=heat + 10, p90=heat + 20, chance_in_band=0.625)
    return Outlook(
        now=NOW,
        oven=of(heat - 5, heat, heat + 5),
        ahead=(step,),
        band=BandOutlook(
            low=BREAD.low,
            high=BREAD.high,
            chance_reached_3h=0.9,
            enters_min=enters,
            stays_min=stays,
            line_enters_min=enters.p50,
            line_leaves_min=None if enters.p50 is None or stays.p50 is None else enters.p50 + stays.p50,
        ),
    )


def test_an_oven_on_its_way() -> None:
    assert outlook_lines(found(300.0, of(20, 30, 50), of(30, 60, None)), BREAD, EDGE) == (
        "The oven is at about 300 °F (291 to 309 °F).",
        "The oven reaches bread heat between 8:23 and 8:53, likely 8:33.",
        "Holds it about 1 h once there.",
        " 8:33   318 °F  (300 to 336 °F), in the band 62%",
    )


def test_an_oven_in_its_band() -> None:
    assert outlook_lines(found(400.0, of(0, 0, 0), of(30, 60, None)), BREAD, EDGE)[1] == (
        "The oven is at bread heat. It likely stays until 9:03."
    )


@given(quantiles(), quantiles(), edges())
def test_no_clock_printed_has_passed(enters: Quantiles, stays: Quantiles, edge: Edge) -> None:
    for line in outlook_lines(found(300.0, enters, stays), BREAD, edge)[:-1]:
        assert is_plain(line)
        assert all(minute <= HORIZON + 1 for minute in ahead(line, edge))


def test_a_spot_and_when_it_was_read() -> None:
    zone = Zone(spot="top_back_left", p10=500.0, p50=505.0, p90=510.0, last_reading=505.4, last_reading_age_min=4.0)
    celsius = replace(EDGE, unit="C")
    assert zone_row(zone, STOVE, celsius) == ("top back left", "232 °C", "227 to 237 °C", "read 232 °C 4 min ago")
    assert zone_row(replace(zone, last_reading=None), STOVE, celsius)[-1] == "not read yet"


@pytest.mark.parametrize(
    ("in_min", "said"),
    [(0.0, ("oven centre", "put in now, 7 in 10")), (30.0, ("oven centre", "from 8:33, 8 in 10")), (None, ("", ""))],
)
def test_a_task_and_its_best_spot(in_min: float | None, said: tuple[str, str]) -> None:
    task = task_of("bread")
    assert task is not None
    spot = SpotFit(spot="oven_centre", chance_now=0.7, in_min=in_min, chance_then=0.8)
    state = FitState.NOT if in_min is None else FitState.NOW
    assert fit_row(TaskFit(task=task, state=state, spots=(spot,)), STOVE, EDGE) == (task.name, *said)


def test_a_record_and_its_rows() -> None:
    record = TrackRecord(stove="Kitchen", sessions=1, projections=0, inside_window=0, typical_miss_min=None, rows=())
    assert record_heading(record) == "Kitchen, 1 session"
    row = RecordRow(
        session="Sunday",
        made_at=NOW,
        offset_minutes=-240,
        band=BREAD,
        enters_min=of(20, 30, None),
        likely_min=31.0,
        came_true_min=40.0,
    )
    assert record_line(row) == "Sunday, 8:03: bread heat 8:23 to later than 3 h, likely 8:34; 8:43, inside"
    never = replace(row, enters_min=of(None, None, None), likely_min=None, came_true_min=None)
    assert record_line(never) == ("Sunday, 8:03: bread heat not within three hours; not reached, as said")
