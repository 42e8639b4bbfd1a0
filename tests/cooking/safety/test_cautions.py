"""Each caution comes at its moment, and only then; each ends with who decides."""

import re
from dataclasses import replace
from datetime import timedelta
from typing import Any

import pytest

from cookstove_gui.cooking.safety.cautions import _RULES, due
from cookstove_gui.forecast.answers import Turn, TurnKind
from cookstove_gui.resource_files import table
from cookstove_gui.stove.stove import Instrument, with_spots_named
from tests.cooking.made import START, STOVE, log, zone

LIT = (0, "lit", "", "", "")
WARM_FLUE = zone("flue", 350)


def keys(
    entries: Any = (), zones: Any = (), turns: Any = (), stove: Any = STOVE, after: float = 0, **more: Any
) -> set[str]:
    now = START + timedelta(minutes=after) if after else None
    return {caution.key for caution in due(stove, entries, zones, turns, now=now, **more)}


def turn(kind: TurnKind, chance: float = 0.9) -> Turn:
    return Turn(kind=kind, chance=chance, in_min=0)


MIRROR = replace(STOVE, cooktop_surface="polished cast iron")
TOP_READ = log((0, "reading", "top_back_left", "300", "F"), (40, "reading", "top_back_left", "420", "F"))


@pytest.mark.parametrize(
    ("stove", "after", "told"),
    [
        (MIRROR, 5, True),
        (MIRROR, 41, False),  # once, at the first reading
        (STOVE, 5, False),
        (replace(MIRROR, instruments=(Instrument(name="gun", kind="infrared"),)), 5, True),
        (replace(MIRROR, instruments=(Instrument(name="dial", kind="oven thermometer"),)), 5, False),
    ],
    ids=["shiny", "later", "dull", "infrared", "no infrared"],
)
def test_a_shiny_cooktop_is_told_once_to_whoever_reads_it_by_infrared(stove: Any, after: float, told: bool) -> None:
    rows = [row for row in TOP_READ if row.at <= START + timedelta(minutes=after)]
    assert ("shiny_cooktop" in keys(rows, stove=stove, after=after)) is told


# --- words -----------------------------------------------------------------------------------------------------------


@pytest.mark.parametrize("row", table("cautions.toml")["caution"], ids=lambda row: row["key"])
def test_every_caution_ends_with_who_decides(row: dict[str, Any]) -> None:
    assert re.search(r"manual|local code|licensed", row["decides"])
    assert row["decides"].endswith(".")


@pytest.mark.parametrize("row", table("cautions.toml")["caution"], ids=lambda row: row["key"])
def test_no_caution_is_a_permission(row: dict[str, Any]) -> None:
    words = f"{row['title']} {row['text']} {row['decides']}".lower()
    assert not re.search(r"\bsafe(ly)?\b|you may|you can |is allowed|no danger|harmless", words)


def test_every_row_has_a_rule_and_every_rule_a_row() -> None:
    assert {row["key"] for row in table("cautions.toml")["caution"]} == set(_RULES)


def test_the_text_shown_ends_with_who_decides() -> None:
    (found,) = due(STOVE, log(LIT), [zone("flue", 600)], ())
    assert found.text.endswith("lit again.")
    assert "call the fire service" in found.text


def test_urgent_ones_come_first() -> None:
    found = due(STOVE, log(LIT), [zone("flue", 70), zone("top_back_left", 750)], ())
    assert [caution.urgent for caution in found] == sorted((caution.urgent for caution in found), reverse=True)
    assert found[0].key == "over_fired_top"
    assert "Top back left" in found[0].text


# --- moments ---------------------------------------------------------------------------------------------------------


def test_before_the_fire_and_at_lighting_a_flue_not_known_to_be_warm_is_cold() -> None:
    assert keys() == {"cold_flue"}
    assert "cold_flue" in keys(log(LIT), [zone("flue", 70)])
    assert "cold_flue" in keys(log(LIT), [zone("flue", 350, age=None)])
    assert "cold_flue" not in keys(log(LIT), [WARM_FLUE])
    assert "cold_flue" not in keys(log(LIT), [zone("flue", 70)], after=20)


def test_a_bypass_shut_on_a_cool_flue() -> None:
    rows = log(LIT, (20, "bypass", "", "0", ""))
    assert "bypass_early" in keys(rows, [zone("flue", 90)])
    assert "bypass_early" not in keys(rows, [WARM_FLUE])
    assert "bypass_early" not in keys(log(LIT, (20, "bypass", "", "1", "")), [zone("flue", 90)])


# reference 13.9 to 13.11: pipe surface below about 250 °F creosote, 250-475 working, above about 475 too hot (common
# practice)
@pytest.mark.parametrize(
    ("flue", "expected"),
    [(200, {"creosote"}), (249, {"creosote"}), (251, set()), (470, set()), (480, {"over_fired_flue"})],
)
def test_flue_bands(flue: float, expected: set[str]) -> None:
    """Rows "13.caution-cool" and "13.caution-hot" of tests/reference."""
    assert keys(log(LIT, (60, "wood", "", "", "")), [zone("flue", flue)]) == expected


def test_a_flue_still_warming_or_not_lately_read_is_not_called_too_cool() -> None:
    assert "creosote" not in keys(log(LIT, (30, "wood", "", "", "")), [zone("flue", 200)])
    assert "creosote" not in keys(log(LIT, (90, "wood", "", "", "")), [zone("flue", 200, age=80)])


def test_air_nearly_shut_on_coals() -> None:
    rows = log(LIT, (60, "wood", "", "", ""), (120, "air", "", "0", ""))
    assert "carbon_monoxide" in keys(rows)
    assert "carbon_monoxide" in keys(rows, after=400)
    assert "carbon_monoxide" not in keys(rows, after=600)  # coals are gone
    assert "carbon_monoxide" not in keys(rows, turns=[turn(TurnKind.FIRE_OUT)])
    assert "carbon_monoxide" not in keys(log(LIT, (10, "air", "", "0.5", "")))


def test_fresh_wood_with_the_air_nearly_shut() -> None:
    rows = log(LIT, (60, "air", "", "0.05", ""), (70, "wood", "", "", ""))
    assert "back_puff" in keys(rows)
    assert "back_puff" not in keys(rows, after=100)
    assert "back_puff" not in keys(log(LIT, (60, "air", "", "0.5", ""), (70, "wood", "", "", "")))


def test_steam_when_a_hot_oven_is_opened() -> None:
    rows = log(LIT, (60, "oven_door", "", "open", ""))
    assert "oven_steam" in keys(rows, [zone("oven_centre", 380)])
    assert "oven_steam" not in keys(rows, [zone("oven_centre", 150)])
    closed = log(LIT, (60, "oven_door", "", "open", ""), (61, "oven_door", "", "closed", ""))
    assert "oven_steam" not in keys(closed, [zone("oven_centre", 380)])
    assert "oven_steam" in keys(log(LIT), [zone("oven_centre", 380)], [turn(TurnKind.DOOR_OPEN)])


def test_fumes_until_the_first_fires_are_done_or_waived() -> None:
    new = replace(STOVE, is_new=True)
    assert "first_fire_fumes" in keys(stove=new)
    assert "first_fire_fumes" not in keys(stove=new, first_fires_done=True)
    assert "first_fire_fumes" not in keys(stove=replace(new, first_fires_waived=True))
    assert "first_fire_fumes" not in keys()


def test_a_pan_put_on_a_spot_where_fat_smokes() -> None:
    """Row "9.21" of tests/reference."""
    rows = log(LIT, (60, "pan", "top_back_left", "on", ""))
    assert "hot_fat" in keys(rows, [zone("top_back_left", 480)])
    assert "hot_fat" not in keys(rows, [zone("top_back_left", 210)])
    (found,) = (c for c in due(STOVE, rows, [WARM_FLUE, zone("top_back_left", 300)], ()) if c.key == "hot_fat")
    assert "unrefined oil, butter and lard to smoke" in found.text
    taken_off = log(LIT, (60, "pan", "top_back_left", "on", ""), (62, "pan", "top_back_left", "off", ""))
    assert "hot_fat" not in keys(taken_off, [zone("top_back_left", 480)])


def test_a_side_or_glass_just_read_hot() -> None:
    assert "hot_surface" in keys(log(LIT, (30, "reading", "side_left", "210", "F")))
    assert "hot_surface" not in keys(log(LIT, (30, "reading", "side_left", "90", "F")))
    assert "hot_surface" not in keys(log(LIT, (30, "reading", "top_back_left", "400", "F")))


# reference 8.11, UL 127 as quoted: exposed combustible 117 °F over the room, concealed or covered 90 °F
@pytest.mark.parametrize(
    ("wall", "expected"), [("150", None), ("161", "wall"), ("184", "wall"), ("188", "wall_urgent")]
)
def test_walls_are_compared_with_the_room(wall: str, expected: str | None) -> None:
    """Rows "8.caution-covered" and "8.caution-exposed" of tests/reference."""
    stove = with_spots_named(STOVE, ("wall_left",))
    rows = log(LIT, (30, "reading", "room", "70", "F"), (31, "reading", "wall_left", wall, "F"))
    found = keys(rows, [zone("flue", 300)], stove=stove)
    assert found & {"wall", "wall_urgent"} == ({expected} if expected else set())


def test_a_wall_caution_names_the_wall_and_the_rise() -> None:
    rows = log(LIT, (30, "reading", "room", "70", "F"), (31, "reading", "wall_left", "190", "F"))
    (found,) = (caution for caution in due(STOVE, rows, [WARM_FLUE], ()) if caution.key == "wall_urgent")
    assert "Wall left is 120 °F (67 °C) above the room" in found.text
    assert "never a clearance" in found.text


def test_ash_when_the_fire_is_out() -> None:
    assert "ash" in keys(log(LIT), turns=[turn(TurnKind.FIRE_OUT)])
    assert "ash" not in keys(log(LIT), turns=[turn(TurnKind.FIRE_OUT, chance=0.3)])
    assert "ash" in keys(log(LIT), after=600)


def test_air_forgotten_open() -> None:
    assert "air_open" in keys(log(LIT), turns=[turn(TurnKind.AIR_OPEN)])


def test_unreadable_rows_are_passed_over() -> None:
    rows = log(LIT, (10, "air", "", "lots", ""), (20, "reading", "side_left", "hot", "F"), (21, "bypass", "", "7", ""))
    assert keys(rows, [WARM_FLUE]) == set()


def test_zones_may_come_by_name() -> None:
    hot = zone("flue", 600)
    assert due(STOVE, log(LIT), {"flue": hot}, ()) == due(STOVE, log(LIT), [hot], ())


@pytest.mark.parametrize(("age", "heeded"), [(2.0, True), (40.0, False)])
def test_a_number_just_read_is_heeded_even_where_the_belief_doubts_it(age: float, heeded: bool) -> None:
    doubted = replace(zone("flue", 380, age=age), last_reading=zone("flue", 900).p50)
    assert ("over_fired_flue" in keys(log(LIT), [doubted])) is heeded
