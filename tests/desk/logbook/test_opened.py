"""An opened session is followed to its end and shown beside what was foretold of it."""

from dataclasses import replace
from datetime import datetime, timedelta

import numpy as np
import pytest

from cookstove_gui.cooking.supper.dish_text import usual_dishes
from cookstove_gui.desk import Desk
from cookstove_gui.desk.logbook.opened import Opened, asked_about, opened, values_text
from cookstove_gui.desk.studying import study_reader
from cookstove_gui.forecast.answers import Quantiles, RecordRow
from cookstove_gui.stove.entries import Entry, HeatBand, Kind
from cookstove_gui.stove.stove import stove_with_default_spots
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


def said(made_at: datetime) -> RecordRow:
    return RecordRow(
        session="Rye", made_at=made_at, offset_minutes=0, band=HeatBand(name="x", low=400, high=420),
        enters_min=Quantiles(p10=30.0, p50=62.0, p90=90.0), likely_min=62.0, came_true_min=60.0,
    )  # fmt: skip


def entry(at: datetime, kind: Kind, **others: str) -> Entry:
    return Entry(number=0, at=at, offset_minutes=-300, kind=kind, **others)  # type: ignore[arg-type]


def keep_rows(desk: Desk, *rows: Entry) -> int:
    numbered = [replace(row, number=place) for place, row in enumerate(rows, start=1)]
    return desk.logbook.add_session(desk.stove.name, "Rows", numbered).number


def opened_of(desk: Desk, number: int) -> Opened:
    asked = asked_about(desk, number)
    assert asked is not None
    return opened(asked)


def test_minutes_and_clocks_are_those_of_the_first_entry(held_desk: Desk, held_clock: HeldClock) -> None:
    began = held_clock() - timedelta(days=9)
    number = keep(held_desk, "Rye", began, HEATS, step=12)
    found = opened_of(held_desk, number)
    assert (found.number, found.began, found.offset_minutes, found.band) == (number, began, -300, held_desk.band)
    assert found.place(began + timedelta(minutes=90)) == pytest.approx(90.0)
    assert [one.minute for one in found.readings] == [pytest.approx(3.0 + 12.0 * place) for place in range(len(HEATS))]
    assert [(found.place(row.at), row.kind) for row in found.lane] == [(0.0, Kind.LIT), (2.0, Kind.WOOD)]
    assert found.at[0] < 5.0
    assert found.at[-1] <= found.minutes
    assert found.stages
    assert found.facts.hottest is not None
    assert found.facts.hottest[1] == pytest.approx(kelvin(405.0, "F"))


def test_a_reading_that_cannot_be_is_doubted_and_the_others_are_not(held_desk: Desk, held_clock: HeldClock) -> None:
    number = keep(held_desk, "Rye", held_clock() - timedelta(days=9), (80, 130, 190, 250, 790, 345, 380, 400), step=12)
    found = opened_of(held_desk, number)
    assert [one.is_doubted for one in found.readings] == [
        heat == 790 for heat in (80, 130, 190, 250, 790, 345, 380, 400)
    ]


def test_only_the_ovens_own_spot_is_read_as_the_oven(held_desk: Desk, held_clock: HeldClock) -> None:
    began = held_clock() - timedelta(days=9)
    number = keep_rows(
        held_desk,
        entry(began, Kind.LIT),
        entry(began + timedelta(minutes=5), Kind.READING, spot="top_front_left", value="300", unit="F"),
        entry(began + timedelta(minutes=15), Kind.READING, spot="top_front_left", value="400", unit="F"),
    )
    found = opened_of(held_desk, number)
    assert found.readings == ()
    assert found.stages == ()  # an oven that nobody read has none
    assert found.minutes == pytest.approx(15.0)


def test_notes_are_what_was_written_and_done_with_food_not_the_fire(held_desk: Desk, held_clock: HeldClock) -> None:
    began = held_clock() - timedelta(days=9)

    def later(minutes: float, kind: Kind, **others: str) -> Entry:
        return entry(began + timedelta(minutes=minutes), kind, **others)

    number = keep_rows(
        held_desk,
        later(0, Kind.LIT),
        later(1, Kind.WOOD, note="two splits"),
        later(3, Kind.READING, spot="oven_centre", value="350", unit="F"),
        later(4, Kind.OVEN_IN, note="rye"),
        later(20, Kind.TURNED, note="rye"),
        later(44, Kind.OVEN_OUT, note="rye"),
        later(45, Kind.NOTE, note="dark crust"),
        later(46, Kind.AIR, value="0.5"),
    )
    notes = opened_of(held_desk, number).notes
    assert [clock for clock, _ in notes] == ["10:04", "10:20", "10:44", "10:45"]
    assert notes[-1][1] == "dark crust"


def test_the_table_of_values_has_a_clock_and_three_heats_in_each_line(held_desk: Desk, held_clock: HeldClock) -> None:
    found = opened_of(held_desk, keep(held_desk, "Rye", held_clock() - timedelta(days=9), HEATS, step=12))
    two = replace(
        found,
        at=np.array([0.0, 30.0]), low=kelvin(np.array([80.0, 180.0]), "F"),
        middle=kelvin(np.array([90.0, 200.0]), "F"), high=kelvin(np.array([95.0, 212.0]), "F"),
    )  # fmt: skip
    assert [line.split("\t")[1:] for line in values_text(two, "F").splitlines()[1:]] == [
        ["80.0", "90.0", "95.0"], ["180.0", "200.0", "212.0"],
    ]  # fmt: skip
    celsius = values_text(two, "C")
    assert celsius.splitlines()[0] == "clock\tp10 °C\tp50 °C\tp90 °C"
    assert celsius.splitlines()[2].split("\t")[3] == "100.0"
    assert [line[:16] for line in celsius.splitlines()[1:]] == ["2026-03-05T10:00", "2026-03-05T10:30"]
    assert celsius.endswith("\n")


def test_projections_of_the_same_title_at_another_time_or_of_another_stove_are_not_its_own(
    held_desk: Desk, held_clock: HeldClock
) -> None:
    began = held_clock() - timedelta(days=9)
    number = keep(held_desk, "Rye", began, HEATS, step=12)
    learned = study(study_reader(held_desk)())
    assert learned is not None
    last = began + timedelta(minutes=111)
    moments = [began - timedelta(minutes=1), began, last, last + timedelta(minutes=1)]
    rows = [said(moment) for moment in moments]
    rows.append(replace(rows[1], session="Stew"))
    held_desk.show_study(replace(learned, record=replace(learned.record, rows=tuple(rows))))
    asked = asked_about(held_desk, number)
    assert asked is not None
    assert asked.record == (rows[1], rows[2])
    other = stove_with_default_spots("Cabin")
    held_desk.save_stove(other)
    elsewhere = held_desk.logbook.add_session("Cabin", "Rye", held_desk.logbook.session(number).entries).number
    held_desk.choose_stove(learned.stove_name)
    asked = asked_about(held_desk, elsewhere)
    assert asked is not None
    assert asked.record == ()
    assert asked.inputs.stove.name == "Cabin"


def test_a_session_is_asked_about_at_its_last_entry(held_desk: Desk, held_clock: HeldClock) -> None:
    began = held_clock() - timedelta(days=9)
    asked = asked_about(held_desk, keep(held_desk, "Rye", began, HEATS, step=12))
    assert asked is not None
    assert asked.inputs.now == began + timedelta(minutes=111)


def test_a_planned_meal_stands_first_with_the_clock_of_its_table(held_desk: Desk, held_clock: HeldClock) -> None:
    number = keep(held_desk, "Rye", held_clock() - timedelta(minutes=100), (80, 200, 330), "windy")
    held_desk.supper.set_table(held_clock() + timedelta(minutes=30))
    held_desk.supper.add(next(dish for dish in usual_dishes() if dish.key == "greens"))
    found = opened_of(held_desk, number)
    assert found.notes[0] == ("10:30", "Supper planned: Greens.")
    assert found.notes[1][1] == "windy"
