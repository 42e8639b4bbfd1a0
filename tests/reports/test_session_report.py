"""A report says what the log says: what each spot reached when, what was done, what was doubted, who decides."""

import xml.etree.ElementTree as ET
from dataclasses import replace

import pytest

from cookstove_gui.errors import InputProblem
from cookstove_gui.phrases.habits import Clocks, Dates, Habits
from cookstove_gui.reports.session_report import SessionReport, session_report
from cookstove_gui.stove.entries import Session
from cookstove_gui.stove.stove import Stove

from .conftest import Log, asked, made_log


def test_report_is_dated_on_the_cooks_own_clock(report: SessionReport) -> None:
    assert (report.stove, report.title, report.date) == ("Kitchen", "Bread & beans", "Monday 5 January 2026")
    assert report.span == "7:00 to 0:10 on 6 January (UTC-05:00)"


def test_every_spot_read_has_its_row_by_stage(report: SessionReport) -> None:
    assert report.stage_names == ("kindling", "medium fire", "full load, air open", "air shut down", "coals")
    rows = {row.label: row for row in report.spots}
    assert set(rows) == {"oven centre", "top back left"}
    assert rows["oven centre"].by_stage == ("110", "230–290", "345–420", "360–425", "95–300")
    assert rows["top back left"].by_stage == ("180", "390–425", "540–560", "330", "")
    assert (rows["oven centre"].highest, rows["oven centre"].highest_at) == ("425", "9:05")
    assert (rows["top back left"].highest, rows["top back left"].highest_at) == ("560", "8:31")


def test_slip_is_named_and_left_out_of_the_tables(report: SessionReport) -> None:
    (slip,) = report.slips
    assert slip.startswith("8:40, oven centre: 3900 °F was typed where about ")


@pytest.mark.usefixtures("quick")
def test_celsius_is_the_same_session(stove: Stove, session: Session) -> None:
    rows = {row.label: row for row in session_report(asked(stove, session), "x", Habits(unit="C")).spots}
    assert rows["oven centre"].highest == "218"  # (425 - 32) / 1.8 = 218.3


@pytest.mark.usefixtures("quick")
def test_row_taken_back_is_not_reported(stove: Stove, session: Session) -> None:
    log = made_log()
    hottest = next(row for row in log.rows if row.value == "425" and row.spot == "oven_centre")
    log.add(1031, "void", value=str(hottest.number))
    rows = {
        row.label: row for row in session_report(asked(stove, replace(session, entries=tuple(log.rows))), "x").spots
    }
    assert rows["oven centre"].highest == "420"


def test_events_are_told_in_words(report: SessionReport) -> None:
    told = [(line.clock, line.text, line.note) for line in report.events]
    assert told[:4] == [
        ("7:00", "fire lit", ""),
        ("7:00", "air wide open", ""),
        ("7:00", "bypass open", ""),
        ("7:25", "wood 2 kg", ""),
    ]
    assert ("8:00", "wood", "full load, mostly “oak”") in told
    assert ("9:01", "pan on, top back left", "beans") in told
    assert ("10:22", "oven door open", "") in told


def test_facts_count_wood_and_readings(report: SessionReport) -> None:
    facts = dict(report.facts)
    assert facts["Wood put on"] == "2 times, 1 of them weighed, 4.4 lb (2 kg)"  # 2 kg / 0.45359237
    assert facts["Readings"] == "17"  # 18 rows but for the slip
    assert facts["Hottest reading"] == "560 °F, top back left"
    assert facts["Height above the sea"] == "984 ft (300 m)"  # 300 / 0.3048
    assert facts["Firebox"] == "on the left"


def test_thermometers_say_what_their_check_showed(report: SessionReport) -> None:
    assert report.thermometers == (
        "infrared gun (infrared, emissivity set to 0.95): at 400 °F it reads 3.6 °F too high, give or take "
        "5.7 °F, as checked on 2 January 2026.",
        "oven dial (oven thermometer): not checked.",
    )


def test_cautions_are_told_once_and_say_who_decides(report: SessionReport) -> None:
    titles = [caution.title for caution in report.cautions]
    assert "Carbon monoxide" in titles
    assert len(titles) == len(set(titles))
    assert all(
        "manual" in text or "code" in text or "licensed" in text
        for text in [caution.text for caution in report.cautions]
    )


def test_chart_is_an_svg_in_our_colours_and_has_words(report: SessionReport) -> None:
    root = ET.fromstring(report.chart)
    assert root.tag.endswith("svg")
    assert all(colour in report.chart for colour in ("#1C2022", "#4E5558", "#17655A"))
    assert report.chart_words == (
        "The oven of Kitchen: 110 °F at 7:10, its highest 425 °F at 9:05, 95 °F at 0:10 on 6 January."
    )


def test_same_session_gives_the_same_chart(stove: Stove, session: Session, report: SessionReport) -> None:
    assert session_report(asked(stove, session), session.title) == report


@pytest.mark.usefixtures("quick")
def test_session_whose_oven_was_never_read_has_no_chart(stove: Stove, log: Log) -> None:
    log.add(0, "lit").read(10, "top_back_left", 200)
    report = session_report(asked(stove, Session(number=1, stove="Kitchen", title="x", entries=tuple(log.rows))), "x")
    assert (report.chart, report.chart_words) == ("", "")


@pytest.mark.usefixtures("quick")
def test_session_of_one_row_is_reported(stove: Stove, log: Log) -> None:
    log.read(0, "oven_centre", 70)
    report = session_report(asked(stove, Session(number=1, stove="Kitchen", title="x", entries=tuple(log.rows))), "x")
    assert report.spots[0].by_stage == ("70",)
    assert dict(report.facts)["Wood put on"] == "not logged"


@pytest.mark.usefixtures("quick")
def test_spot_that_only_the_log_names_is_reported(stove: Stove, log: Log) -> None:
    log.add(0, "lit").read(10, "warming_shelf", 120)
    report = session_report(asked(stove, Session(number=1, stove="Kitchen", title="x", entries=tuple(log.rows))), "x")
    assert [row.label for row in report.spots] == ["warming shelf"]


@pytest.mark.usefixtures("quick")
def test_session_in_which_nothing_stands_is_told(stove: Stove, log: Log) -> None:
    log.add(0, "lit").add(1, "void", value="1")
    with pytest.raises(InputProblem, match="no row"):
        session_report(asked(stove, Session(number=1, stove="Kitchen", title="x", entries=tuple(log.rows))), "x")


def test_the_first_page_says_what_came_of_it(report: SessionReport) -> None:
    # 365 °F lies between 345 at 75 min and 390 at 90 min: at 75 + 15 * 20 / 45 = 81.7 min. It is lost between 400 at
    # 150 and 360 at 200 min: at 150 + 50 * 35 / 40 = 193.75 min, 112 min later.
    assert report.result == "Bread heat after 1 h 22, held for 1 h 52 by the readings."


@pytest.mark.usefixtures("quick")
def test_a_session_that_did_not_get_there_says_how_far_it_got(stove: Stove, log: Log) -> None:
    log.add(0, "lit").read(10, "oven_centre", 100).read(40, "oven_centre", 240).read(80, "oven_centre", 210)
    of_it = Session(number=1, stove="Kitchen", title="x", entries=tuple(log.rows))
    assert session_report(asked(stove, of_it), "x").result == "The oven’s highest was 240 °F at 7:40."


def test_the_facts_at_a_glance(report: SessionReport) -> None:
    glance = dict(report.glance)
    assert glance["wood"] == "2 loads"  # one of them was not weighed
    assert glance["readings"] == "17 of 28 entries"
    assert glance["hottest on the top"] == "back left 560 °F, 8:31"
    assert glance["lit to the last entry"] == "17 h 10"


def test_the_stove_is_drawn_at_its_four_longest_stages_in_order(report: SessionReport) -> None:
    assert [stove.name for stove in report.stoves] == [
        "medium fire", "full load, air open", "air shut down", "coals",
    ]  # fmt: skip
    for stove in report.stoves:
        assert ET.fromstring(stove.picture).tag.endswith("svg")
    assert ">420<" in report.stoves[1].picture  # the highest of the stage, the slip left out
    assert "3900" not in "".join(stove.picture for stove in report.stoves)


def test_spots_come_the_hottest_first_each_in_its_colour(report: SessionReport) -> None:
    heats = [float(row.highest) for row in report.spots]
    assert heats == sorted(heats, reverse=True)
    assert len({row.colour for row in report.spots}) == len(report.spots)


def test_a_visitor_gets_the_same_first_page(stove: Stove, session: Session, report: SessionReport) -> None:
    one = session_report(asked(stove, session), session.title, one_page=True)
    assert (one.is_whole, report.is_whole) == (False, True)
    assert replace(one, is_whole=True) == report


@pytest.mark.usefixtures("quick")
def test_what_was_in_the_oven_says_how_long_and_its_core(stove: Stove, log: Log) -> None:
    log.add(0, "lit").read(10, "oven_centre", 100)
    log.add(20, "oven_in", value="2", unit="lb", note="loaf").add(25, "oven_in", note="pie")
    log.add(60, "probe", value="203", unit="F", note="loaf").add(68, "oven_out", note="loaf").add(70, "oven_out")
    of_it = Session(number=1, stove="Kitchen", title="x", entries=tuple(log.rows))
    result = session_report(asked(stove, of_it), "x").result
    assert result.endswith(" Loaf 48 min in the oven, core 203 °F. Pie 45 min in the oven.")


@pytest.mark.usefixtures("quick")
def test_dates_and_clocks_are_written_as_the_reader_is_used_to(stove: Stove, session: Session) -> None:
    habits = Habits(unit="C", dates=Dates.MONTH, clocks=Clocks.H12)
    found = session_report(asked(stove, session), "x", habits)
    assert found.date == "Monday, January 5, 2026"
    assert found.span == "7:00 am to 12:10 am on January 6 (UTC-05:00)"
    assert "January 2, 2026" in found.thermometers[0]
    assert session_report(asked(stove, session), "x", Habits(dates=Dates.YEAR)).date == "Monday 2026-01-05"


@pytest.mark.usefixtures("quick")
def test_a_heat_that_was_only_touched_says_nothing_of_holding(stove: Stove, log: Log) -> None:
    log.add(0, "lit").read(10, "oven_centre", 100).read(60, "oven_centre", 365.2).read(61, "oven_centre", 330)
    of_it = Session(number=1, stove="Kitchen", title="x", entries=tuple(log.rows))
    assert session_report(asked(stove, of_it), "x").result == "Bread heat after 1 h."
