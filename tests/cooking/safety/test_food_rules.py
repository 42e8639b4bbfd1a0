"""Cautions about food: hot fat by fat and by time on the spot, food kept too cool, beans, canning, leftovers."""

from dataclasses import replace
from typing import Any

import numpy as np
import pytest

from cookstove_gui.cooking.safety.fats import fats
from cookstove_gui.cooking.safety.food_rules import pan_heat
from cookstove_gui.forecast.answers import TurnKind
from tests.cooking.made import fahrenheit, log, zone
from tests.cooking.safety.asking import LIT, WARM_FLUE, cautions, noted, turn

SPOT = "top_back_left"


def pan(note: str = "", minute: float = 60, value: str = "on") -> Any:
    rows = log(LIT, (minute, "pan", SPOT, value, ""))
    return (rows[0], replace(rows[1], note=note))


def told(rows: Any, heat: float, after: float, **more: Any) -> set[str]:
    return set(cautions(rows, [WARM_FLUE, zone(SPOT, heat)], after=after, **more))


@pytest.mark.parametrize(
    ("note", "heat", "smokes"),
    [
        ("bacon", 320, True),  # lard from 280 °F
        ("clarified butter", 400, False),  # from 446 °F
        ("Butter", 300, True),  # from 250 °F
        ("skillet, butter", 240, False),
        ("sunflower oil", 420, False),
        ("sunflower oil", 490, True),
        ("", 420, True),
        ("", 320, False),  # what is in it was not said, and only the fats that smoke first would
        ("kettle, 2 litres", 600, False),
        ("soup", 600, False),
    ],
)
def test_a_pan_put_on_a_spot_where_fat_smokes(note: str, heat: float, smokes: bool) -> None:
    """Row "9.21" of tests/reference."""
    assert ("hot_fat" in told(pan(note), heat, after=100)) is smokes


def test_a_pan_is_told_of_when_it_has_warmed_and_for_as_long_as_it_stands() -> None:
    found = [minute for minute in range(61, 200) if "hot_fat" in told(pan("bacon"), 400, after=minute)]
    assert 62 < found[0] < 75
    assert found == list(range(found[0], 200))


def test_a_pan_taken_off_is_told_of_no_more() -> None:
    off = log((110, "pan", SPOT, "off", ""))
    assert "hot_fat" not in told((*pan("bacon"), *off), 480, after=111)


def test_the_fats_and_the_time_are_named() -> None:
    found = cautions(pan("bacon and butter"), [WARM_FLUE, zone(SPOT, 400)], after=90)["hot_fat"]
    assert "30 minutes on Top back left" in found.text
    assert "butter and lard to smoke" in found.text
    assert "slide a lid, never water" in found.text


def test_a_note_beside_the_row_tells_what_is_in_the_pan() -> None:
    assert "hot_fat" not in told((*pan(), noted(62, "kettle on")), 600, after=100)
    assert "hot_fat" in told((*pan(), noted(50, "kettle filled")), 600, after=100)
    assert "hot_fat" not in told((*pan(), replace(noted(90, "soup"), spot=SPOT)), 600, after=100)


@pytest.mark.parametrize("heat", [300.0, 400.0, 600.0])
def test_a_pan_warms_towards_its_spot_and_not_past_it(heat: float) -> None:
    spot, room = fahrenheit(heat), fahrenheit(68)
    course = np.array([pan_heat(spot, minute, room) for minute in range(60)])
    assert course[0] == pytest.approx(room)
    assert (np.diff(course) > 0).all()
    assert room + 0.8 * (spot - room) < course[-1] < spot
    assert pan_heat(spot, -5.0, room) == pytest.approx(room)


def test_steam_when_a_hot_oven_is_opened() -> None:
    rows = log(LIT, (60, "oven_door", "", "open", ""))
    assert "oven_steam" in cautions(rows, [zone("oven_centre", 380)])
    assert "oven_steam" not in cautions(rows, [zone("oven_centre", 150)])
    assert "oven_steam" not in cautions(rows, [zone("oven_centre", 380)], after=80)
    closed = log(LIT, (60, "oven_door", "", "open", ""), (61, "oven_door", "", "closed", ""))
    assert "oven_steam" not in cautions(closed, [zone("oven_centre", 380)])
    assert "oven_steam" in cautions(log(LIT), [zone("oven_centre", 380)], [turn(TurnKind.DOOR_OPEN)])


@pytest.mark.parametrize(
    ("note", "heat", "after", "kept"),
    [
        ("beef stew", 165, 100, True),
        ("beef stew", 190, 100, False),
        ("beef stew", 165, 85, False),  # just put there
        ("beef stew", 100, 310, False),  # left there to cool
        ("kettle", 165, 100, False),
    ],
)
def test_food_kept_on_a_spot_too_cool_for_it(note: str, heat: float, after: float, kept: bool) -> None:
    assert ("holding" in told(pan(note), heat, after)) is kept


def test_food_kept_warm_wants_lid_and_probe_at_140() -> None:
    found = cautions(pan("stew"), [WARM_FLUE, zone(SPOT, 150)], after=100)["holding"]
    assert all(words in found.text for words in ("140 °F", "lid", "probe", "Top back left"))
    assert "135" not in found.text


@pytest.mark.parametrize(("note", "expected"), [("Kidney beans", True), ("chili", True), ("bread", False)])
def test_beans_are_told_of_when_they_are_noted(note: str, expected: bool) -> None:
    """Row "9.40-holding" of tests/reference."""
    found = cautions((*log(LIT), noted(10, note)), [WARM_FLUE])
    assert ("beans" in found) is expected
    assert ("beans" in told(pan(note), 300, after=62)) is expected
    if expected:
        assert all(words in found["beans"].text for words in ("soak them 5 hours", "30 minutes", "Simmering alone"))
        assert "beans" not in cautions((*log(LIT), noted(10, note)), [WARM_FLUE], after=80)


def test_canning_quotes_every_published_pressure_and_chooses_none() -> None:
    """Row "9.23" of tests/reference."""
    found = cautions((*log(LIT), noted(10, "canning green corn, 7 jars")), [WARM_FLUE])["canning"]
    for row in (
        "up to 2,000 ft 11 lb", "2,001 to 4,000 ft 12 lb", "4,001 to 6,000 ft 13 lb", "6,001 to 8,000 ft 14 lb",
        "up to 1,000 ft 10 lb", "above 1,000 ft 15 lb",
    ):  # fmt: skip
        assert row in found.text
    assert "only in a pressure canner" in found.text
    assert found.urgent
    assert "canning" not in cautions((*log(LIT), noted(10, "can of beans")), [WARM_FLUE])


def test_the_height_of_the_stove_changes_no_word_of_it() -> None:
    from tests.cooking.made import STOVE

    rows = (*log(LIT), noted(10, "canning"))
    low, high = (cautions(rows, stove=replace(STOVE, altitude=metres))["canning"].text for metres in (0.0, 2400.0))
    assert low == high


def test_leftovers_are_told_of_when_the_fire_goes_out_under_food() -> None:
    """Row "9.24" of tests/reference."""
    out = [turn(TurnKind.FIRE_OUT)]
    found = cautions(pan("stew"), [WARM_FLUE], out)
    assert all(words in found["leftovers"].text for words in ("135 to 70 °F", "within two hours", "41 °F", "six hours"))
    assert "leftovers" not in cautions(pan("stew"), [WARM_FLUE])
    assert "leftovers" not in cautions(pan("kettle"), [WARM_FLUE], out)
    assert "leftovers" not in cautions(log(LIT), [WARM_FLUE], out)
    assert "leftovers" in cautions((*log(LIT), noted(5, "Leftovers in the larder")), [WARM_FLUE])


def test_half_of_the_fats_decide_for_a_pan_of_which_nothing_was_said() -> None:
    heats = sorted(fat.smokes_from for fat in fats())
    middle = heats[len(heats) // 2 - 1]
    for heat, expected in ((middle + 1.0, True), (middle - 1.0, False)):
        zones = [WARM_FLUE, replace(zone(SPOT, 300), p50=heat, last_reading=None, last_reading_age_min=None)]
        assert ("hot_fat" in cautions(pan(), zones, after=560)) is expected
