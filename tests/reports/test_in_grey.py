"""Printed in grey every word of a report is still read, and a hotter spot is still the lighter one.

Source: grey by luma, ITU-R BT.601 section 2.5.1 (0.299 R, 0.587 G, 0.114 B), as printers and viewers take it; contrast
by WCAG 2.2, 1.4.3.
"""

import re
import xml.etree.ElementTree as ET
from itertools import pairwise

from cookstove_gui.reports import svg
from cookstove_gui.reports.session_report import SessionReport
from cookstove_gui.resource_files import resource
from cookstove_gui.stove.drawn.contrast import contrast
from cookstove_gui.stove.drawn.heat_colours import heat_colour, heat_ink

_TEXT = "{http://www.w3.org/2000/svg}text"
_SHAPES = tuple(f"{{http://www.w3.org/2000/svg}}{name}" for name in ("polygon", "rect"))


def grey(colour: str) -> str:
    red, green, blue = bytes.fromhex(colour[1:])
    level = round(0.299 * red + 0.587 * green + 0.114 * blue)
    return f"#{level:02X}{level:02X}{level:02X}"


def level(colour: str) -> int:
    return int(grey(colour)[1:3], 16)


def test_words_on_paper_and_on_the_band_are_read() -> None:
    for ink in (svg.INK, svg.SOFT, svg.VERDIGRIS):
        for ground in (svg.GROUND, svg.BAND):
            assert contrast(grey(ink), grey(ground)) >= 4.5


def test_lines_that_carry_something_are_told_from_the_paper() -> None:
    # WCAG 2.2, 1.4.11: three to one for what must be seen
    for ink in (svg.INK, svg.LINE, svg.VERDIGRIS):
        assert contrast(grey(ink), grey(svg.GROUND)) >= 3.0


def test_a_hotter_spot_is_lighter_in_grey_and_its_number_is_read() -> None:
    heats = [294.0 + 8.0 * step for step in range(51)]
    levels = [level(heat_colour(heat)) for heat in heats]
    assert all(later >= one for one, later in pairwise(levels))
    assert levels[-1] - levels[0] > 150
    assert all(contrast(grey(heat_ink(heat)), grey(heat_colour(heat))) >= 4.4 for heat in heats)


def test_every_number_of_a_drawn_stove_is_read_on_its_patch_in_grey(report: SessionReport) -> None:
    for stove in report.stoves:
        ground = ""
        for part in ET.fromstring(stove.picture).iter():
            if part.tag in _SHAPES:
                ground = part.get("fill", "")
            elif part.tag == _TEXT:
                assert contrast(grey(part.get("fill", "")), grey(ground)) >= 4.4, part.text


def test_a_page_has_no_other_colours(report: SessionReport) -> None:
    known = {value for name, value in vars(svg).items() if name.isupper() and str(value).startswith("#")}
    assert set(re.findall(r"#[0-9A-F]{6}", report.chart)) <= known
    for name in ("page.typ", "page.html.jinja"):
        told = set(re.findall(r"#[0-9A-F]{6}", resource("reports", name).read_text("utf-8")))
        assert told <= {*known, "#F2F3EF"}
