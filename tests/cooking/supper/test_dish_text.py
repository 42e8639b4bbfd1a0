"""Dishes as text: the usual twenty, what is read back, and what is said of a slip."""

import pytest

from cookstove_gui.cooking.checked import key_for
from cookstove_gui.cooking.fit.tasks import task_of
from cookstove_gui.cooking.supper.dish_text import dishes_text, meal_from_text, usual_dishes
from cookstove_gui.cooking.supper.dishes import HandsOn, Heat, Wait
from cookstove_gui.errors import InputProblem
from cookstove_gui.units import kelvin

ONE = """
table = "18:30"
[[dish]]
key = "loaf"
name = "Loaf"
parts = [
  { hands = "mix", minutes = 15, keeps = 0 },
  { wait = "rise", minutes = 90, shortest = 60, longest = 120, kitchen = 75 },
  { oven = "bake", minutes = 40, band = [375, 425], turn = true, places = 2, evenness = 90 },
]
"""


def test_there_are_twenty_usual_dishes_and_each_names_a_heat_that_exists() -> None:
    assert len(usual_dishes()) == 20
    assert len({dish.key for dish in usual_dishes()}) == 20
    for dish in usual_dishes():
        heats = [part for part in dish.parts if isinstance(part, Heat)]
        assert heats, dish.key
        for heat in heats:
            known = task_of(heat.task)
            assert heat.low is not None or (known is not None and known.place is heat.place), dish.key


def test_a_dish_is_read_with_its_units() -> None:
    meal = meal_from_text(ONE, "supper.toml")
    assert meal.table == "18:30"
    (loaf,) = meal.dishes
    mix, rise, bake = loaf.parts
    assert mix == HandsOn(what="mix", minutes=15.0, keeps_min=0.0)
    assert isinstance(rise, Wait)
    assert rise.kitchen == pytest.approx(297.039, abs=0.001)  # 75 °F
    assert isinstance(bake, Heat)
    assert (bake.low, bake.high) == pytest.approx((kelvin(375.0, "F"), kelvin(425.0, "F")))
    assert bake.evenness == pytest.approx(50.0)  # 90 °F apart is 50 K apart
    assert loaf.minutes == 145.0


def test_what_is_written_is_read_back_the_same() -> None:
    assert meal_from_text(dishes_text(usual_dishes()), "written").dishes == usual_dishes()


def test_a_dish_with_only_a_key_is_the_usual_one() -> None:
    assert meal_from_text('[[dish]]\nkey = "greens"', "x").dishes[0].name == "Greens"


@pytest.mark.parametrize(
    ("text", "says"),
    [
        ("[[dish", "not TOML"),
        ("table = 1", "no dish is in it"),
        ('[[dish]]\nkey = "nothing_known"', "no usual dish “nothing_known”"),
        (ONE.replace("shortest = 60", "shortest = 100"), "part 2: 90 min isn't between"),
        (ONE.replace("[375, 425]", "[425, 375]"), "part 3: the band 425 to 375"),
        (ONE.replace("hands =", "feet ="), "part 1: it needs exactly one of hands"),
        (ONE.replace("places = 2", "plates = 2"), "“plates” is not known here"),
        (ONE.replace("band = [375, 425]", 'task = "simmer"'), "“simmer” is not a task of the oven"),
        (ONE.replace("band = [375, 425], ", ""), "say what heat it wants"),
        (ONE.replace("minutes = 40", "minutes = -4"), "part 3: minutes is -4"),
        (ONE.replace("minutes = 40", 'minutes = "long"'), "minutes is a number"),
        (ONE + ONE[ONE.index("[[") :], "two dishes have the key “loaf”"),
    ],
)
def test_a_slip_is_told_with_its_place(text: str, says: str) -> None:
    with pytest.raises(InputProblem, match=r".") as told:
        meal_from_text(text, "supper.toml")
    assert says in told.value.sentence
    assert told.value.sentence.startswith("supper.toml")


def test_a_key_is_made_of_a_name_and_is_nobody_elses() -> None:
    assert key_for("Aunt Vera's rolls", set()) == "aunt_vera_s_rolls"
    assert key_for("Rolls!", {"rolls", "rolls_2"}) == "rolls_3"
