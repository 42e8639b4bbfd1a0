"""A standing says what the log implies: the oven on its way, the zones, the fit, and the words for them."""

from dataclasses import replace
from datetime import UTC, datetime, timedelta

import numpy as np
import pytest

from cookstove_gui.desk import Inputs, Memory, work_out
from cookstove_gui.forecast.answers import LEAVE, Action, ActionKind, BandOutlook, Outlook, Quantiles
from cookstove_gui.phrases.edge import Edge
from cookstove_gui.phrases.heading import detail, headline, question
from cookstove_gui.situation import _delays, steps
from cookstove_gui.stove.entries import Entry, HeatBand, Kind
from cookstove_gui.stove.stove import stove_with_default_spots
from cookstove_gui.units import kelvin

START = datetime(2026, 1, 10, 12, 0, tzinfo=UTC)
EDGE = Edge(unit="F", now=START, offset_minutes=-300)
BREAD = HeatBand(name="bread", low=kelvin(375.0, "F"), high=kelvin(425.0, "F"))


def rows_of(*told: tuple[float, Kind, str, str, str]) -> tuple[Entry, ...]:
    return tuple(
        Entry(
            number=number,
            at=START + timedelta(minutes=minute),
            offset_minutes=-300,
            kind=kind,
            spot=spot,
            value=value,
            unit=unit,
        )
        for number, (minute, kind, spot, value, unit) in enumerate(told, start=1)
    )


def inputs(rows: tuple[Entry, ...], minutes: float, action: Action = LEAVE) -> Inputs:
    return Inputs(
        serial=1,
        stove=stove_with_default_spots("Invented stove"),
        rows=rows,
        now=START + timedelta(minutes=minutes),
        band=BREAD,
        action=action,
    )


RISING = rows_of(
    (0, Kind.LIT, "", "", ""),
    (0, Kind.AIR, "", "1", ""),
    (2, Kind.WOOD, "", "3", "lb"),
    (20, Kind.WOOD, "", "6", "lb"),
    (22, Kind.READING, "oven_centre", "170", "F"),
    (23, Kind.READING, "top_back_right", "330", "F"),
    (35, Kind.READING, "oven_centre", "240", "F"),
    (36, Kind.WOOD, "", "5", "lb"),
    (45, Kind.READING, "oven_centre", "290", "F"),
    (46, Kind.READING, "top_back_right", "450", "F"),
)


def test_without_readings_the_line_says_what_to_do_first() -> None:
    standing = work_out(inputs((), 0), Memory())
    assert "Light the fire" in headline(standing, EDGE)


def test_every_spot_has_a_zone_and_every_task_a_fit() -> None:
    standing = work_out(inputs(RISING, 47), Memory())
    assert set(standing.zones) == {spot.name for spot in stove_with_default_spots("x").spots}
    assert len(standing.fits) > 20


def test_oven_now_agrees_with_the_thermometer() -> None:
    standing = work_out(inputs(RISING, 46), Memory())
    oven = standing.outlook.oven.p50
    assert oven == pytest.approx(kelvin(290.0, "F"), abs=20.0)


def test_the_fan_and_the_arrival_are_of_the_same_futures() -> None:
    standing = work_out(inputs(RISING, 46), Memory())
    hour = standing.projection.of("oven_centre")[:, 12]
    assert standing.projection.minutes[12] == 60.0
    assert standing.outlook.ahead[-1].p50 == pytest.approx(float(np.median(hour)), abs=1e-6)


def test_what_if_is_answered_beside_the_present_course() -> None:
    wood = Action(kind=ActionKind.WOOD, value=2.2)
    standing = work_out(inputs(RISING, 46, wood), Memory())
    assert standing.alternative is not None
    assert standing.alternative.action == wood
    more = standing.alternative.outlook.ahead[-1].p50
    assert more > standing.outlook.ahead[-1].p50


def test_same_inputs_give_same_standing_with_or_without_memory() -> None:
    memory = Memory()
    work_out(inputs(RISING[:5], 24), memory)
    grown = work_out(inputs(RISING, 46), memory)
    afresh = work_out(inputs(RISING, 46), Memory())
    assert grown.outlook == afresh.outlook


def test_slip_in_the_latest_reading_is_questioned() -> None:
    slipped = (*RISING, *rows_of(*[(48, Kind.READING, "oven_centre", "930", "F")]))
    renumbered = (*slipped[:-1], Entry(
        number=len(slipped), at=slipped[-1].at, offset_minutes=-300, kind=Kind.READING, spot="oven_centre",
        value="930", unit="F",
    ))  # fmt: skip
    standing = work_out(inputs(renumbered, 48), Memory())
    assert "930 typed where about" in question(standing, EDGE)


@pytest.mark.parametrize(
    ("air", "expected"),
    [("1", [ActionKind.WOOD, ActionKind.AIR]), ("0.1", [ActionKind.WOOD, ActionKind.AIR])],
    ids=["air wide open", "air nearly shut"],
)
def test_steps_offer_the_air_the_other_way(air: str, expected: list[ActionKind]) -> None:
    rows = rows_of((0, Kind.AIR, "", air, ""))
    assert [step.kind for step in steps(rows)] == expected


def test_steps_offer_to_close_an_open_bypass() -> None:
    rows = rows_of((0, Kind.BYPASS, "", "1", ""))
    assert Action(kind=ActionKind.BYPASS, value=0.0) in steps(rows)


def test_no_wood_is_advised_onto_a_fire_that_is_out() -> None:
    cold = [(300, "oven_centre", "150"), (301, "top_back_right", "110"), (302, "top_front_left", "115")]
    last = RISING[-1].number
    later = rows_of(*((minute, Kind.READING, spot, value, "F") for minute, spot, value in cold))
    rows = (*RISING, *(replace(row, number=last + row.number) for row in later))
    standing = work_out(inputs(rows, 303), Memory())
    assert headline(standing, EDGE).startswith("The fire looks out")
    assert "wood" not in detail(standing, EDGE)
    assert "splits" not in detail(standing, EDGE)


@pytest.mark.parametrize(
    ("present", "step", "delays"),
    [(30.0, 150.0, True), (30.0, None, True), (30.0, 40.0, False), (30.0, 10.0, False), (None, 150.0, False)],
)
def test_a_step_that_makes_the_heat_come_much_later_is_not_advised(present, step, delays):
    assert _delays(_arriving(step), _arriving(present)) == delays


def _arriving(minutes: float | None) -> Outlook:
    at = Quantiles(p10=minutes, p50=minutes, p90=minutes)
    long = Quantiles(p10=90.0, p50=90.0, p90=90.0)
    band = BandOutlook(
        low=BREAD.low,
        high=BREAD.high,
        chance_reached_3h=0.9,
        enters_min=at,
        stays_min=long,
        line_enters_min=minutes,
        line_leaves_min=None,
    )
    return Outlook(now=START, oven=Quantiles(p10=400.0, p50=400.0, p90=400.0), ahead=(), band=band)
