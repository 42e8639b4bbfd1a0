"""A typed name means every spot that it fits, and no other."""

import pytest

from cookstove_gui.desk.log.named_spots import spots_named
from cookstove_gui.errors import InputProblem
from cookstove_gui.stove.stove import Spot, SpotKind, stove_with_default_spots

SPOTS = stove_with_default_spots("Invented stove").spots


def named(typed: str) -> set[str]:
    return {spot.name for spot in spots_named(SPOTS, typed)}


@pytest.mark.parametrize(
    ("typed", "spot"),
    [
        ("oven centre", "oven_centre"),
        ("Oven Cen", "oven_centre"),
        ("top_back_left", "top_back_left"),
        ("back right", "top_back_right"),
        ("ba  ri", "top_back_right"),
        ("tbr", "top_back_right"),
        ("bm", "top_back_middle"),
        ("oc", "oven_centre"),
        ("oven", "oven_centre"),
        ("flue", "flue"),
        ("glass", "door_glass"),
        ("right side", "side_right"),
        ("side right", "side_right"),
    ],
)
def test_a_name_that_fits_one_spot_means_it(typed: str, spot: str) -> None:
    assert named(typed) == {spot}


@pytest.mark.parametrize(
    ("typed", "spots"),
    [
        ("fl", {"flue", "oven_floor", "top_front_left"}),
        ("back", {"top_back_left", "top_back_middle", "top_back_right"}),
        ("right", {"top_front_right", "top_back_right", "oven_right", "side_right"}),
        ("ove", {"oven_centre", "oven_left", "oven_right", "oven_rear", "oven_floor"}),
        ("side", {"side_left", "side_right"}),
    ],
)
def test_a_name_that_fits_several_spots_means_all_of_them(typed: str, spots: set[str]) -> None:
    assert named(typed) == spots


def test_the_middle_of_a_word_names_nothing() -> None:
    with pytest.raises(InputProblem, match="type part of its name"):
        named("entre")


def test_unknown_name_is_refused_in_a_sentence() -> None:
    with pytest.raises(InputProblem, match="type part of its name"):
        named("warming shelf")


def test_more_spots_than_there_are_digits_are_not_offered() -> None:
    many = [Spot(name=f"shelf_{number}", label=f"shelf {number}", kind=SpotKind.TOP) for number in range(10)]
    assert len(spots_named(many[:9], "shelf")) == 9
    with pytest.raises(InputProblem, match="fits 10 spots; type more"):
        spots_named(many, "shelf")
