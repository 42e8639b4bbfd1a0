"""A report tells of walls and floors near the stove by their rise above the room, and never permits."""

from dataclasses import replace

import pytest

from cookstove_gui.reports.session_report import SessionReport, session_report
from cookstove_gui.reports.writing import html_text, pdf_bytes
from cookstove_gui.stove.entries import Session
from cookstove_gui.stove.stove import Stove

from .conftest import asked, made_log


@pytest.fixture
def walled(stove: Stove, session: Session, quick: None) -> SessionReport:
    log = made_log()
    log.read(60, "room", 70).read(95, "wall_left", 152).read(100, "wall_left", 139).read(130, "floor_front", 96)
    rows = sorted(log.rows, key=lambda row: row.at)
    return session_report(asked(stove, replace(session, entries=tuple(rows))), "x")


def test_each_wall_is_told_at_its_greatest_rise_the_hottest_first(walled: SessionReport) -> None:
    assert walled.surroundings[:-1] == (
        "Wall left, read at 8:35: 82 °F above the room (152 against 70 °F).",
        "Floor front, read at 9:10: 26 °F above the room (96 against 70 °F).",
    )
    assert "never a clearance" in walled.surroundings[-1]


def test_walls_stand_in_the_table_of_spots_too(walled: SessionReport) -> None:
    assert {row.label: row.highest for row in walled.spots}["wall left"] == "152"


@pytest.mark.usefixtures("quick")
def test_a_room_never_read_is_said_to_be_taken(stove: Stove, session: Session) -> None:
    log = made_log().read(1031, "wall_left", 150)
    (told, _decides) = session_report(asked(stove, replace(session, entries=tuple(log.rows))), "x").surroundings
    assert "the room taken as 68 °F" in told


def test_a_session_without_walls_says_nothing_of_them(report: SessionReport) -> None:
    assert report.surroundings == ()
    assert "near the stove" not in html_text("session", report)


def test_page_and_paper_hold_it(walled: SessionReport) -> None:
    page = html_text("session", walled)
    assert "Walls and floors near the stove" in page
    assert all(line in page for line in walled.surroundings)
    assert pdf_bytes("session", walled).startswith(b"%PDF")
