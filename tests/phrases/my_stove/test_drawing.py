"""Words beside the drawing of a stove while it is edited."""

from dataclasses import replace
from datetime import date

import pytest

from cookstove_gui.phrases.my_stove.drawing import foot_words, kind_words, place_words, plates_question, taken_words
from cookstove_gui.stove.stove import SpotKind, stove_with_default_spots


@pytest.mark.parametrize(
    ("place", "said"),
    [(0, "left out"), (1, "1st of 30"), (2, "2nd of 30"), (3, "3rd of 30"), (4, "4th of 30"), (11, "11th of 30"),
     (12, "12th of 30"),
     (13, "13th of 30"), (21, "21st of 30"), (23, "23rd of 30")],
)  # fmt: skip
def test_a_place_on_the_walk(place: int, said: str) -> None:
    assert place_words(place, 30) == said


def test_plates_that_hold_readings_are_named() -> None:
    assert plates_question(["top middle"], 1) == (
        "top middle has 1 reading. Take it off the drawing? The readings stay in the log."
    )
    assert plates_question(["front middle", "back middle"], 9).startswith(
        "front middle and back middle have 9 readings. Take them"
    )


def test_every_kind_of_spot_has_words() -> None:
    assert len({kind_words(kind) for kind in SpotKind}) == len(SpotKind)


def test_a_stove_taken_in_leaves_the_other_on_the_table() -> None:
    said = "“Cabin” is among your stoves now; “Kitchen” is still the one on the table."
    assert taken_words("Cabin", "Kitchen") == said
    assert taken_words("Kitchen", "Kitchen") == "“Kitchen” is just as it is here already."


def test_below_a_stoves_name_stands_since_when_it_is_fired_and_its_walk() -> None:
    stove = stove_with_default_spots("any")
    assert foot_words(stove, date(2026, 10, 21)) == "fired since 21 October 2026, 16 spots on the walk"
    alone = replace(stove, left_out=tuple(spot.name for spot in stove.spots[1:]))
    assert foot_words(alone, None) == "no fire logged yet, 1 spot on the walk"
