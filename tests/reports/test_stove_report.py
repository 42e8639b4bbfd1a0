"""A stove's page tells what every spot did over all sessions, and what is known of the stove."""

from functools import cache
from io import BytesIO
from statistics import median

import html5lib
import pytest
from pypdf import PdfReader

from cookstove_gui.cooking.fit.bands import band_from_text
from cookstove_gui.errors import InputProblem
from cookstove_gui.phrases.habits import USUAL, Dates, Habits
from cookstove_gui.reports.stove_report import StoveReport, stove_report
from cookstove_gui.reports.writing import html_text, pdf_bytes
from cookstove_gui.stove.entries import Session

from .conftest import Log, made_stove

BAND = band_from_text("bread", "F")
TOPS = ((480, 300), (520, 340), (700, 350))  # front left and right of each firing


def firing(number: int, left: float, right: float) -> Session:
    log = Log()
    log.add(0, "lit").add(5, "wood", value="2", unit="kg").read(10, "oven_centre", 80).read(60, "oven_centre", 300)
    log.read(70, "top_front_left", left).read(70.5, "top_front_right", right).read(71, "top_back_left", left - 20)
    log.read(71.5, "top_back_right", right - 20).read(80, "oven_centre", 390).read(81, "room", 68)
    log.read(82, "wall_left", 90 + number)
    return Session(number=number, stove="Kitchen", title=f"Bake {number}", entries=tuple(log.rows))


SESSIONS = tuple(firing(number, *heats) for number, heats in enumerate(TOPS, start=1))


@cache
def report(habits: Habits = USUAL, *, one_page: bool = False) -> StoveReport:
    return stove_report(made_stove(), SESSIONS, BAND, habits, one_page=one_page)


def test_each_spot_has_the_hottest_it_has_been() -> None:
    highest = {row.label: row.highest for row in report().spots}
    assert highest["top front left"] == "700"
    assert highest["top front right"] == "350"
    assert [int(row.highest) for row in report().spots] == sorted(
        (int(row.highest) for row in report().spots), reverse=True
    )


def test_at_a_stage_a_spot_shows_the_median_of_the_sessions() -> None:
    (stage,) = report().stoves
    assert (stage.name, stage.clock) == ("medium fire", "3 sessions")
    assert f"top front left {median(left for left, _ in TOPS):.0f}" in stage.picture
    assert ">520<" in stage.picture


def test_the_left_side_runs_hotter_in_words() -> None:
    assert "left" in report().result
    assert "hotter" in report().result


def test_what_it_can_do_has_its_figures_with_the_firings_behind_them() -> None:
    figures = {name: (value, behind) for name, value, behind in report().abilities}
    # 300 at 60 and 390 at 80 min: 365 °F at 60 + 20 * 65 / 90 = 74.4 min, alike in all three
    assert figures["cold to bread heat"] == ("1 h 14", "3 firings")
    assert not any("hottest" in name for name in figures)  # told at the head of the page, once


def test_walls_are_told_at_their_greatest_rise_with_who_decides() -> None:
    wall, decides = report().surroundings
    assert "25 °F above the room" in wall  # 93 less 68
    assert "licensed" in decides


def test_dates_and_unit_are_as_chosen() -> None:
    assert report(Habits(unit="C", dates=Dates.YEAR)).date == "2026-01-05"
    assert {row.label: row.highest for row in report(Habits(unit="C")).spots}["top front left"] == "371"


def test_the_page_is_valid_and_its_pdf_says_the_same() -> None:
    page = html_text("stove", report())
    tree = html5lib.HTMLParser(strict=True, namespaceHTMLElements=False).parse(page)
    words = " ".join(" ".join(tree.itertext()).split())
    pages = PdfReader(BytesIO(pdf_bytes("stove", report()))).pages
    text = " ".join(" ".join(one.extract_text() for one in pages).split())
    for told in (
        report().result,
        *(part for row in report().abilities for part in row),
        *report().surroundings,
        *report().thermometers,
        "Bake 2",
    ):
        assert told in words
        assert told in text


def test_for_a_visitor_it_is_one_page() -> None:
    assert len(PdfReader(BytesIO(pdf_bytes("stove", report(one_page=True)))).pages) == 1


def test_a_stove_without_entries_is_told() -> None:
    with pytest.raises(InputProblem, match="Kitchen has no entries yet"):
        stove_report(made_stove(), (), BAND)
