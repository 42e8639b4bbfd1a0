"""A report is one HTML page or one PDF that needs nothing beside it; the table goes out as CSV or a spreadsheet."""

import re
from dataclasses import replace
from io import BytesIO
from pathlib import Path

import html5lib
import pytest
from pypdf import PdfReader

from cookstove_gui.errors import InputProblem, SurroundingsProblem
from cookstove_gui.reports.session_report import Line, SessionReport
from cookstove_gui.reports.writing import html_text, pdf_bytes, write_report
from cookstove_gui.resource_files import resource
from cookstove_gui.stove.drawn.contrast import contrast


def _words(page: str) -> str:
    """All its words; raises where the page isn't valid HTML by the strict parser of html5lib (the HTML standard's)."""
    tree = html5lib.HTMLParser(strict=True, namespaceHTMLElements=False).parse(page)
    return " ".join(" ".join(tree.itertext()).split())


def test_page_says_everything_the_report_says(report: SessionReport) -> None:
    words = _words(html_text("session", report))
    assert "Bread & beans" in words
    assert "5 January 2026" in words
    told = [
        *(text for fact in report.facts for text in fact),
        *(text for row in report.spots for text in (row.label, *row.by_stage, row.highest, row.highest_at)),
        *(text for line in report.stages + report.events for text in (line.clock, line.text, line.note)),
        *report.thermometers,
        *report.slips,
        *(text for caution in report.cautions for text in (caution.title, caution.text, caution.decides)),
        report.result,
        *(text for fact in report.glance for text in fact),
        *(text for stove in report.stoves for text in (stove.name, stove.clock)),
        report.chart_words,
        "never a clearance or a permission",
    ]
    assert [text for text in told if " ".join(text.split()) not in words] == []


def test_page_needs_nothing_beside_it(report: SessionReport) -> None:
    page = html_text("session", report)
    assert "<svg" in page
    outside = re.findall(r"""(?:src|href)\s*=\s*["'](?!#)([^"']*)|@import|url\((?!#)""", page)
    assert outside == []
    assert "<script" not in page


def test_what_a_cook_typed_is_shown_as_typed_and_never_as_markup(report: SessionReport) -> None:
    nasty = "<script>alert('x')</script> & \"oven\"\nsecond line"
    marked = replace(report, title=nasty, events=(Line(clock="7:00", text="note", note=nasty),))
    page = html_text("session", marked)
    assert "<script" not in page
    assert "<script>alert('x')</script> & \"oven\" second line" in _words(page)


def test_pdf_is_a_titled_tagged_pdf(report: SessionReport) -> None:
    content = pdf_bytes("session", report)
    assert content.startswith(b"%PDF-")
    assert content.rstrip().endswith(b"%%EOF")
    assert b"/StructTreeRoot" in content
    assert b"Bread &amp; beans, Kitchen, Monday 5 January 2026" in content  # in its XMP metadata


@pytest.mark.parametrize(
    "text", ['#import "@preview/x:1.0.0"', "*_`$ // /* #] [ \\", "\x00\x1b bell\x07", "火 🔥 \u200f"]
)
def test_pdf_bears_any_text(report: SessionReport, text: str) -> None:
    marked = replace(report, title=text, events=(Line(clock="7:00", text=text, note=text),), facts=(("x", text),))
    assert pdf_bytes("session", marked).startswith(b"%PDF-")


def test_report_without_readings_is_laid_out_too(report: SessionReport) -> None:
    bare = replace(
        report, chart="", chart_words="", spots=(), events=(), thermometers=(), slips=(), cautions=(), facts=(),
        glance=(), stoves=(), notes=(),
    )  # fmt: skip
    assert "No thermometer is described" in _words(html_text("session", bare))
    assert pdf_bytes("session", bare).startswith(b"%PDF-")


@pytest.mark.parametrize("name", ["bread.html", "bread.PDF"])
def test_ending_tells_the_kind_and_no_part_is_left_behind(report: SessionReport, tmp_path: Path, name: str) -> None:
    write_report(tmp_path / name, report)
    assert [path.name for path in tmp_path.iterdir()] == [name]
    assert (tmp_path / name).read_bytes()[:5] in (b"%PDF-", b"<!DOC")


def test_other_endings_and_places_are_told(report: SessionReport, tmp_path: Path) -> None:
    with pytest.raises(InputProblem, match=r"\.html or \.pdf"):
        write_report(tmp_path / "bread.doc", report)
    with pytest.raises(SurroundingsProblem, match="cannot be written"):
        write_report(tmp_path / "none" / "bread.html", report)


def test_the_pdf_says_what_the_page_says(report: SessionReport) -> None:
    pages = PdfReader(BytesIO(pdf_bytes("session", report))).pages
    text = " ".join(" ".join(page.extract_text() for page in pages).split())
    told = [
        report.result,
        *(fact for pair in report.glance for fact in pair),
        *(words for row in report.spots for words in (row.label.removeprefix("top "), row.highest)),
        *(stove.name for stove in report.stoves),
        *(caution.title for caution in report.cautions),
        *(caution.decides for caution in report.cautions),
        "never a clearance or a permission",
    ]
    assert [words for words in told if " ".join(words.split()) not in text] == []


def test_a_visitors_report_is_one_page_and_the_record_follows_it(report: SessionReport) -> None:
    def pages(found: SessionReport) -> int:
        return len(PdfReader(BytesIO(pdf_bytes("session", found))).pages)

    # This session has twice the cautions of a usual one: with all of them it goes on to a second page.
    usual = replace(report, cautions=report.cautions[:3])
    assert pages(replace(usual, is_whole=False)) == 1
    assert pages(usual) > 1
    assert "What was done" not in _words(html_text("session", replace(report, is_whole=False)))
    assert "What was done" in _words(html_text("session", report))


def test_a_visitors_report_stays_one_page_however_much_there_was(report: SessionReport) -> None:
    many = replace(
        report, is_whole=False, spots=report.spots * 12, slips=report.slips * 9, notes=report.notes * 30,
        cautions=report.cautions * 3,
    )  # fmt: skip
    (page,) = PdfReader(BytesIO(pdf_bytes("session", many))).pages
    text = " ".join(page.extract_text().split())
    assert "and 8 more" in text  # numbers left out
    assert f"and {len(many.spots) - 16} more" in text


def test_no_word_of_the_page_is_paler_than_paper_and_grey_print_allow() -> None:
    # WCAG 2.2, 1.4.3; contrast goes by luminance, which a grey print keeps.
    for name in ("page.typ", "page.html.jinja"):
        text = resource("reports", name).read_text("utf-8")
        colours = dict(re.findall(r"(?<!line-)(ink|soft|verdigris)(?::| = rgb\()\s*\"?(#[0-9A-F]{6})", text))
        assert {"ink", "soft"} <= set(colours)
        for ground in ("#FFFFFF", "#F2F3EF"):
            assert min(contrast(colour, ground) for colour in colours.values()) >= 4.5
