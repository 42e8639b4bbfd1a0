"""The stove on paper: every spot read has its number, readable in colour and in grey."""

import re
import xml.etree.ElementTree as ET
from dataclasses import replace

import pytest

from cookstove_gui.reports.stove_picture import heat_scale, stove_picture
from cookstove_gui.stove.drawn.contrast import contrast, relative_luminance
from cookstove_gui.stove.stove import Firebox, SpotKind, Stove, stove_with_default_spots
from cookstove_gui.units import kelvin


def drawn(stove: Stove, heats: dict[str, float], unit: str = "F", air: float | None = 0.5) -> ET.Element:
    told = {name: kelvin(heat, "F") for name, heat in heats.items()}
    return ET.fromstring(stove_picture(stove, told, unit, air=air, hottest=0.0, words="a stove"))  # type: ignore[arg-type]


def numbers(picture: ET.Element) -> list[str]:
    return [text.text or "" for text in picture.iter() if text.tag.endswith("text")]


STOVE = stove_with_default_spots("Kitchen")
HEATS = {spot.name: 100.0 + 40.0 * place for place, spot in enumerate(STOVE.spots) if spot.kind is not SpotKind.ROOM}


@pytest.mark.parametrize("firebox", list(Firebox))
def test_every_spot_read_has_its_number(firebox: Firebox) -> None:
    found = numbers(drawn(replace(STOVE, firebox=firebox), HEATS))
    assert sorted(found) == sorted(f"{heat:.0f}" for heat in HEATS.values())


def test_what_was_not_read_has_a_dash_on_plain_iron() -> None:
    found = numbers(drawn(STOVE, {"oven_centre": 350.0}))
    assert "350" in found
    assert set(found) == {"350", "–"}


def test_numbers_are_in_the_unit_asked_for() -> None:
    assert "177" in numbers(drawn(STOVE, {"oven_centre": 350.0}, unit="C"))  # (350 - 32) / 1.8 = 176.7


def test_every_number_reads_on_its_patch_in_grey_as_in_colour() -> None:
    # Contrast by WCAG 2.2 goes by luminance alone, which a grey print keeps.
    shapes = [part for part in drawn(STOVE, HEATS).iter() if part.get("fill")]
    patch = ""
    pairs = []
    for part in shapes:
        if part.tag.endswith("text"):
            pairs.append(contrast(part.get("fill") or "", patch))
        else:
            patch = part.get("fill") or ""
    assert len(pairs) == len(HEATS)
    assert min(pairs) >= 4.5


def test_lighter_is_hotter_all_along_the_scale() -> None:
    colours = re.findall(r'<rect[^>]*fill="(#[0-9A-F]{6})"', heat_scale("F", 0.0))
    bright = [relative_luminance(colour) for colour in colours]
    assert len(bright) == 40
    assert bright == sorted(bright)
    assert ">70<" in heat_scale("F", 0.0)
    assert ">800<" in heat_scale("F", 0.0)


@pytest.mark.parametrize(("air", "shapes"), [(None, 0), (0.0, 1), (0.5, 2), (1.0, 2)])
def test_the_slide_shows_the_air_where_the_log_says(air: float | None, shapes: int) -> None:
    rounded = [part for part in drawn(STOVE, {}, air=air).iter() if part.get("rx")]
    assert len(rounded) == shapes
