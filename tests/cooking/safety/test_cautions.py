"""Every caution has its rule, ends with who decides, permits nothing, and the urgent ones come first."""

import re
from typing import Any

import pytest

from cookstove_gui.cooking.safety.caution import loading_order
from cookstove_gui.cooking.safety.cautions import RULES, due
from cookstove_gui.resource_files import table
from tests.cooking.made import STOVE, log, zone
from tests.cooking.safety.asking import LIT

ROWS = table("cautions.toml")["caution"]


@pytest.mark.parametrize("row", ROWS, ids=lambda row: row["key"])
def test_every_caution_ends_with_who_decides(row: dict[str, Any]) -> None:
    assert re.search(r"manual|local code|licensed", row["decides"])
    assert row["decides"].endswith(".")


@pytest.mark.parametrize("row", ROWS, ids=lambda row: row["key"])
def test_no_caution_is_a_permission(row: dict[str, Any]) -> None:
    words = f"{row['title']} {row['text']} {row['decides']}".lower()
    assert not re.search(r"\bsafe(ly)?\b|you may|you can |is allowed|no danger|harmless", words)


def test_every_row_has_a_rule_and_every_rule_a_row() -> None:
    assert {row["key"] for row in ROWS} == set(RULES)
    assert len(ROWS) == len(RULES)


def test_the_text_shown_ends_with_who_decides() -> None:
    found = next(one for one in due(STOVE, log(LIT), [zone("flue", 600)], ()) if one.key == "over_fired_flue")
    assert found.text.endswith("lit again.")
    assert "call the fire service" in found.text


def test_urgent_ones_come_first() -> None:
    found = due(STOVE, log(LIT), [zone("flue", 70), zone("top_back_left", 750)], ())
    assert [caution.urgent for caution in found] == sorted((caution.urgent for caution in found), reverse=True)
    assert found[0].key == "over_fired_top"
    assert "Top back left" in found[0].text


def test_the_loading_order_opens_the_door_last() -> None:
    """Row "13.loading" of tests/reference."""
    words = loading_order().lower()
    places = [words.index(step) for step in ("open the bypass and the air", "wait", "open the fire door slowly")]
    assert places == sorted(places)
    assert words.endswith("manual says how to add wood.")


def test_unreadable_rows_are_passed_over() -> None:
    rows = log(LIT, (10, "air", "", "lots", ""), (20, "reading", "side_left", "hot", "F"), (21, "bypass", "", "7", ""))
    assert due(STOVE, rows, [zone("flue", 350)], ()) == ()


def test_zones_may_come_by_name() -> None:
    hot = zone("flue", 600)
    assert due(STOVE, log(LIT), {"flue": hot}, ()) == due(STOVE, log(LIT), [hot], ())


def test_only_a_present_danger_has_an_order_and_it_is_urgent_and_short() -> None:
    rows = [row for row in table("cautions.toml")["caution"] if "order" in row]
    assert {row["key"] for row in rows} == {
        "over_fired_flue", "over_fired_top", "wall_urgent", "carbon_monoxide", "back_puff",
    }  # fmt: skip
    assert all(row["urgent"] and len(row["order"]) <= 80 for row in rows)


def test_two_cautions_of_one_kind_stay_two_and_are_told_apart() -> None:
    rows = log(LIT, (1, "reading", "room", "70", "F"), (2, "reading", "wall_left", "208", "F"))
    (alone,) = (one for one in due(STOVE, rows, [], ()) if one.key == "wall_urgent")
    assert alone.name == alone.title
    more = log(
        LIT, (1, "reading", "room", "70", "F"), (2, "reading", "wall_left", "208", "F"),
        (3, "reading", "floor_front", "210", "F"),
    )  # fmt: skip
    both = [one for one in due(STOVE, more, [], ()) if one.key == "wall_urgent"]
    assert {one.identity for one in both} == {("wall_urgent", "wall_left"), ("wall_urgent", "floor_front")}
    assert len({one.name for one in both}) == 2
    assert all(one.name.startswith(f"{one.title}: ") for one in both)
