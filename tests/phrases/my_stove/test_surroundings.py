"""Hot surfaces and walls in words: degrees in the right unit, shares of each limit, and never a permission."""

import re
from datetime import UTC, datetime

import pytest
from hypothesis import given
from hypothesis import strategies as st

from cookstove_gui.cooking.safety.touch_watch import Material, material_of, materials, wall_answers
from cookstove_gui.cooking.safety.wall_rises import WallRise
from cookstove_gui.forecast.answers import Zone
from cookstove_gui.phrases.my_stove.surroundings import (
    ALWAYS,
    GUARD_DECIDES,
    NO_HEAT,
    NO_WALL,
    above_the_room,
    burn_words,
    clearance_decides,
    limit_line,
    surface_line,
    wall_lines,
)
from cookstove_gui.stove.entries import Entry, Kind
from cookstove_gui.units import kelvin

PERMITS = re.compile(r"\bsafe|you may|can be touched|harmless|enough distance", re.IGNORECASE)


def rise(wall: float, room: float = 70.0, *, read: bool = True) -> WallRise:
    row = Entry(
        number=1, at=datetime(2026, 1, 10, 12, 5, tzinfo=UTC), offset_minutes=-300, kind=Kind.READING,
        spot="wall_left", value=f"{wall:.0f}", unit="F", note="",
    )  # fmt: skip
    return WallRise(row=row, label="wall left", wall=kelvin(wall, "F"), room=kelvin(room, "F"), room_was_read=read)


def zone(middle: float, high: float) -> Zone:
    return Zone(
        spot="top_back_left", p10=middle - 20, p50=middle, p90=high, last_reading=None, last_reading_age_min=None
    )


def test_a_surface_is_judged_by_what_it_may_well_be() -> None:
    line = surface_line("top back left", zone(kelvin(90.0, "F"), kelvin(500.0, "F")), material_of("bare metal"), "F")
    assert line == "Top back left about 90 °F, perhaps 500; bare metal. Skin that rests on it burns within a second."


@given(st.floats(280, 900), st.floats(0, 100), st.sampled_from(materials()), st.sampled_from("FC"))
def test_no_surface_is_called_safe(heat: float, more: float, material: Material, unit: str) -> None:
    line = surface_line("side left", zone(heat, heat + more), material, unit)
    assert f"°{unit}" in line
    assert PERMITS.search(line) is None
    if heat + more > 316.15 and material.name == "bare metal":  # 43 °C burns after eight hours (ISO 13732-1)
        assert "burns within" in line


@pytest.mark.parametrize(
    ("seconds", "said"),
    [(0.0, "within a second"), (10.0, "some seconds"), (60.0, "a minute"), (28_800.0, "some hours")],
)
def test_how_soon_it_burns(seconds: float, said: str) -> None:
    assert said in burn_words(seconds)


def test_below_the_tables_is_no_promise() -> None:
    assert "burn sooner" in burn_words(None)


def test_a_wall_against_its_room_in_both_units() -> None:
    assert above_the_room(rise(160.0), "7:05", "F") == (
        "Wall left, read at 7:05: 90 °F above the room (160 against 70 °F)."
    )
    assert above_the_room(rise(160.0, read=False), "7:05", "C") == (
        "Wall left, read at 7:05: 50 °C above the room (71 against the room taken as 21 °C)."
    )


def test_a_wall_is_told_on_its_own_clock_with_each_limit_and_who_decides() -> None:
    wall, decides = wall_lines([rise(160.0)], "F")
    head, exposed, absolute, covered = wall.split("\n")
    assert "read at 7:05" in head  # 12:05 UTC on a clock five hours behind
    # 117 °F exposed and 90 °F covered: UL 127 as quoted (touch.toml)
    assert exposed == (
        "Exposed wood or wall: 77 % of the 117 °F in tests of heaters. It nears what heaters are tested to: "
        "keep reading it."
    )
    # 185 °F whatever the room: Swedish rules as printed (touch.toml)
    assert absolute == (
        "Building part that can burn: 160 of 185 °F, however warm the room. It nears that heat: keep reading it."
    )
    assert covered.startswith("⚠ Covered or hidden wood: 100 % of the 90 °F in tests of heaters.")
    assert decides == clearance_decides()
    assert "never a clearance" in decides
    assert wall_lines([], "F") == ()


def test_a_wall_in_a_hot_room_has_reached_the_absolute_limit_before_that_of_its_rise() -> None:
    wall, _ = wall_lines([rise(186.0, room=105.0)], "F")
    assert wall.split("\n")[-1].startswith("⚠ Building part that can burn: 186 of 185 °F, however warm the room.")
    assert wall.count("⚠") == 1


def test_a_slip_on_a_wall_is_told_not_hidden() -> None:
    assert "correct the reading" in wall_lines([rise(900.0)], "F")[0]


@given(st.floats(40, 250), st.floats(30, 110), st.sampled_from("FC"))
def test_no_wall_is_permitted_and_every_limit_passed_is_marked(wall: float, room: float, unit: str) -> None:
    for answer in wall_answers(kelvin(wall, "F"), kelvin(room, "F")):
        line = limit_line(answer, unit)
        assert PERMITS.search(line) is None
        assert line.startswith("⚠") is (answer.share >= 1.0)
        assert ("permits nothing" in line) is (answer.share < 0.75)
        assert "-" not in line


def test_what_is_always_said_permits_nothing() -> None:
    assert all(PERMITS.search(text) is None for text in (ALWAYS, GUARD_DECIDES, NO_HEAT, NO_WALL))
