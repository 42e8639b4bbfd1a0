"""What stands on a spot of the drawn stove, from sure to unknown, and what is read out of it."""

import pytest

from cookstove_gui.phrases.spots import (
    SpotHeat,
    captions_drawn,
    heat_said,
    number_drawn,
    signs_said,
    spot_name_drawn,
    struck_drawn,
)
from cookstove_gui.stove.stove import Spot, SpotKind, default_spots
from cookstove_gui.units import kelvin

SPOTS = {spot.name: spot for spot in default_spots()}
BACK = SPOTS["top_back_middle"]
JUST_READ = SpotHeat(kelvin=kelvin(598, "F"), typed=kelvin(598, "F"), age_min=3.0)
OLDER = SpotHeat(kelvin=kelvin(509, "F"), doubt=70 / 1.8, age_min=19.0)
NEVER_READ = SpotHeat(kelvin=kelvin(690, "F"), doubt=190 / 1.8)
QUESTIONED = SpotHeat(kelvin=kelvin(335, "F"), doubt=28 / 1.8, age_min=1.0, questioned=kelvin(38, "F"))
MEANT = SpotHeat(kelvin=kelvin(400, "F"), typed=kelvin(353, "F"), age_min=0.0, remark="typed 353, meant 400")


@pytest.mark.parametrize(
    ("heat", "number", "captions", "struck"),
    [
        (JUST_READ, "598", ("3 min",), ""),
        (OLDER, "≈510", ("19 min ±35", "19 min"), ""),
        (NEVER_READ, "≈690", ("unread ±95", "unread"), ""),
        (SpotHeat(), "–", (), ""),
        (QUESTIONED, "≈335", ("typed",), "38"),
        (MEANT, "353*", ("= 400",), ""),
    ],
    ids=["just read", "older", "never read", "nothing known", "in question", "means something else"],
)
def test_a_spot_from_sure_to_unknown(heat: SpotHeat, number: str, captions: tuple[str, ...], struck: str) -> None:
    assert number_drawn(heat, "F") == number
    assert captions_drawn(BACK, heat, "F") == captions
    assert struck_drawn(heat, "F") == struck


def test_the_rear_wall_says_its_name_with_its_age() -> None:
    assert captions_drawn(SPOTS["oven_rear"], OLDER, "F") == ("rear 19 min ±35", "rear 19 min", "19 min")


@pytest.mark.parametrize(
    ("spot", "name"),
    [
        (BACK, ""),
        (SPOTS["side_left"], "side"),
        (SPOTS["door_glass"], "door glass"),
        (SPOTS["flue"], ""),
        (Spot(name="wall_back", label="back wall", kind=SpotKind.WALL), "wall"),
        (Spot(name="kettle", label="top kettle plate", kind=SpotKind.TOP), "kettle plate"),
        (Spot(name="oven_rack", label="oven rack", kind=SpotKind.OVEN), "rack"),
    ],
)
def test_a_spot_is_named_only_where_its_place_does_not_say_it(spot: Spot, name: str) -> None:
    assert spot_name_drawn(spot) == name


def test_a_heat_is_said_with_its_doubt_and_age() -> None:
    assert heat_said(BACK, OLDER, "F") == "top back middle, about 510 °F give or take 35, read 19 min ago"
    assert heat_said(BACK, JUST_READ, "F") == "top back middle, 598 °F, read 3 min ago"


def test_signs_are_said() -> None:
    nothing = signs_said(OLDER, "F", is_lit=False, is_worth_reading=False)
    assert nothing == ""
    said = signs_said(QUESTIONED, "F", is_lit=True, is_worth_reading=True)
    assert said == ("the next number goes here, worth reading next, 38 typed here is in question, keep or correct it")
    assert signs_said(SpotHeat(has_pan=True), "F", is_lit=False, is_worth_reading=False) == "a pan stands here"
