"""A season's page adds up its logs, shows them as pictures that read in grey, and lists its sessions."""

import xml.etree.ElementTree as ET
from datetime import UTC, datetime, timedelta
from functools import cache
from io import BytesIO

import html5lib
import pytest
from pypdf import PdfReader

from cookstove_gui.cooking.fires.firing_facts import FiringFacts, firing_facts
from cookstove_gui.cooking.fit.bands import band_from_text
from cookstove_gui.errors import InputProblem
from cookstove_gui.phrases.habits import Habits
from cookstove_gui.reports.season_figures import ALL_YEARS
from cookstove_gui.reports.season_report import SeasonAsked, SeasonReport, season_report
from cookstove_gui.reports.writing import html_text, pdf_bytes
from cookstove_gui.stove.checking import check_entry
from cookstove_gui.stove.entries import Entry, Session

from .conftest import made_stove

BAND = band_from_text("bread", "F")


def firing(number: int, began: datetime, kilograms: float, heats: tuple[float, ...]) -> Session:
    """Lit, one weighed load, the oven every half hour."""

    def row(place: int, minute: float, kind: str, **fields: str) -> Entry:
        at = began + timedelta(minutes=minute)
        return check_entry(number=place, at=at, offset_minutes=-300, kind=kind, **fields)

    rows = [row(1, 0, "lit"), row(2, 1, "wood", value=f"{kilograms:g}", unit="kg")]
    for place, heat in enumerate(heats):
        rows.append(row(3 + place, 30 * place + 2, "reading", spot="oven_centre", value=f"{heat:g}", unit="F"))
    return Session(number=number, stove="Kitchen", title=f"Bake & <{number}>", entries=tuple(rows))


SESSIONS = (
    firing(1, datetime(2024, 3, 3, 15, tzinfo=UTC), 3.0, (80, 250, 380, 400)),
    firing(2, datetime(2024, 11, 5, 15, tzinfo=UTC), 4.0, (80, 200, 341, 400)),
    firing(3, datetime(2024, 11, 25, 15, tzinfo=UTC), 5.0, (80, 180, 300, 350)),
    firing(4, datetime(2025, 1, 10, 15, tzinfo=UTC), 6.5, (80, 230, 370, 430)),
)


def facts() -> tuple[FiringFacts, ...]:
    return tuple(found for one in SESSIONS if (found := firing_facts(made_stove(), one, BAND)) is not None)


@cache
def report(year: int = 2024, unit: str = "F", *, one_page: bool = False) -> SeasonReport:
    asked = SeasonAsked(
        stove=made_stove(), band=BAND, facts=facts(), titles={one.number: one.title for one in SESSIONS},
        cautions=(("Flue too cool", 2),),
    )  # fmt: skip
    return season_report(asked, year, Habits(unit=unit), one_page=one_page)  # type: ignore[arg-type]


def test_a_season_runs_from_july_and_adds_up_its_logs() -> None:
    # 4 + 5 + 6.5 kg = 15.5 kg = 34.2 lb; three times an hour and a half and two minutes lit
    assert report().title == "Winter 2024–25"
    assert report().result == "3 fires, 5 hours lit, about 34 lb of wood."
    assert report(unit="C").result == "3 fires, 5 hours lit, about 16 kg of wood."
    assert (report().date, report().span) == ("5 November 2024", "to 10 January 2025")


def test_its_months_are_each_a_row() -> None:
    # cold to 365 °F: 200, 341, 400 at 30 min steps from minute 2: 62 + 30 * 24 / 59 = 74.2 min
    # 230 to 370 from 32 to 62: 32 + 30 * 135 / 140 = 60.9 min
    assert report().months == (
        ("November 2024", "2", "3", "20 lb", "1 h 14", "400 °F"),
        ("January 2025", "1", "2", "14 lb", "1 h 01", "430 °F"),
    )


def test_all_years_go_season_by_season() -> None:
    whole = report(ALL_YEARS)
    assert [row[0] for row in whole.months] == ["Winter 2023–24", "Winter 2024–25"]
    assert len(whole.sessions) == 4


def test_a_season_without_a_session_is_told() -> None:
    with pytest.raises(InputProblem, match="Winter 1999–00 holds no session of Kitchen"):
        report(1999)


def test_a_longer_fire_has_a_longer_column_and_a_hotter_oven_a_lighter_one() -> None:
    hours = next(chart.svg for chart in report().charts if chart.heading.startswith("Hours"))
    boxes = list(ET.fromstring(hours).iter("{http://www.w3.org/2000/svg}rect"))
    assert len(boxes) == 3
    light = [sum(bytes.fromhex(box.get("fill", "")[1:])) for box in boxes]  # oven to 400, 350, 430 °F
    assert light[1] < light[0] < light[2]


def test_the_page_is_valid_and_its_pdf_says_the_same() -> None:
    page = html_text("season", report())
    tree = html5lib.HTMLParser(strict=True, namespaceHTMLElements=False).parse(page)
    words = " ".join(" ".join(tree.itertext()).split())
    pages = PdfReader(BytesIO(pdf_bytes("season", report()))).pages
    text = " ".join(" ".join(one.extract_text() for one in pages).split())
    for told in (report().result, *report().months[0], *report().sessions[0], *report().thermometers, "2 of 3"):
        assert told in words
        assert told in text


def test_for_a_visitor_it_is_one_page() -> None:
    assert len(PdfReader(BytesIO(pdf_bytes("season", report(one_page=True)))).pages) == 1
    assert "The sessions" not in html_text("season", report(one_page=True))
