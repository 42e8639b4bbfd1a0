"""A dish in the words of its form and back: what the form does not show stays, and a slip gets one sentence."""

from dataclasses import replace

import pytest

from cookstove_gui.cooking.baking.doneness import steady_minutes
from cookstove_gui.cooking.fit.tasks import task_of
from cookstove_gui.cooking.supper.dish_text import usual_dishes
from cookstove_gui.cooking.supper.dishes import Dish, HandsOn, Heat, Place, Wait
from cookstove_gui.desk.plan.bake import BakeChoice, sized
from cookstove_gui.desk.plan.dishes import (
    DishWords,
    PartWords,
    bake_in,
    dish_from_words,
    dish_line,
    dish_words,
    heats_of,
    weighed,
)
from cookstove_gui.errors import InputProblem
from cookstove_gui.units import kelvin

USUAL = {dish.key: dish for dish in usual_dishes()}
ROAST = Dish(
    key="roast",
    name="Roast",
    makes="for six",
    hot=False,
    may_wait=15.0,
    after_table=5.0,
    parts=(
        HandsOn(what="salt", minutes=10, keeps_min=90.0),
        Wait(what="rest", minutes=30, shortest=10, longest=60),
        Heat(
            what="roast", place=Place.OVEN, minutes=75, low=float(kelvin(325.0, "F")), high=float(kelvin(375.0, "F")),
            turn=True, places=2, vessel="pan",
        ),
        Heat(what="gravy", place=Place.TOP, minutes=12, task="simmer"),
    ),
)  # fmt: skip
PRESSURE = 101_325.0  # Pa


def made(*parts: PartWords, **others: str) -> Dish:
    return dish_from_words(DishWords(name="Roast", parts=parts, **others), None, set())


def test_a_dish_stands_in_the_form_as_a_cook_would_write_it() -> None:
    said = dish_words(ROAST)
    assert (said.name, said.makes, said.may_wait, said.after_table) == ("Roast", "for six", "15", "5")
    assert said.parts == (
        PartWords(kind="hands", what="salt", minutes="10"),
        PartWords(kind="wait", what="rest", minutes="30", between="10-60"),
        PartWords(kind="oven", what="roast", minutes="75", between="325-375", turn=True),
        PartWords(kind="top", what="gravy", minutes="12", between="simmer"),
    )


@pytest.mark.parametrize("dish", [ROAST, *usual_dishes()], ids=lambda dish: dish.key)
def test_a_form_that_nobody_changed_gives_the_dish_it_was_filled_from(dish: Dish) -> None:
    found = dish_from_words(dish_words(dish), dish, set())
    for one, other in zip(found.parts, dish.parts, strict=True):
        if isinstance(one, Heat) and isinstance(other, Heat) and one.low is not None and other.low is not None:
            assert one.low == pytest.approx(other.low, abs=0.3)
            one = replace(one, low=other.low, high=other.high)
        assert one == other
    assert (found.key, found.name, found.makes, found.hot) == (dish.key, dish.name, dish.makes, dish.hot)
    assert (found.may_wait, found.after_table) == (dish.may_wait, dish.after_table)


def test_in_the_list_a_dish_says_what_it_takes_and_its_parts() -> None:
    line = dish_line(ROAST, is_own=True)
    assert (line.key, line.name, line.is_own) == ("roast", "Roast", True)
    assert line.parts == "salt, rest, roast, gravy"
    assert line.takes == "2 h 5 min"  # 127 min, in fives
    assert not dish_line(ROAST, is_own=False).is_own


def test_each_place_offers_the_heats_of_its_own_tasks() -> None:
    for kind, place in (("oven", Place.OVEN), ("top", Place.TOP)):
        offered = heats_of(kind)
        assert offered
        for key, name in offered:
            task = task_of(key)
            assert task is not None
            assert (task.place, task.name) == (place, name)
    assert heats_of("hands") == ()


def test_a_new_dish_has_a_free_key_is_served_hot_and_may_wait_ten_minutes() -> None:
    found = dish_from_words(
        DishWords(name=" Roast ", parts=(PartWords(kind="hands", what="cut", minutes="5"),)), None, {"roast"}
    )
    assert (found.name, found.hot, found.may_wait, found.after_table) == ("Roast", True, 10.0, 0.0)
    assert found.key != "roast"
    assert found.parts == (HandsOn(what="cut", minutes=5.0),)


def test_a_heat_is_a_task_by_key_or_name_or_degrees() -> None:
    key, name = heats_of("top")[0]
    for typed in (key, name, f" {name} "):
        (part,) = made(PartWords(kind="top", what="cook", minutes="20", between=typed)).parts
        assert isinstance(part, Heat)
        assert (part.task, part.low) == (key, None)
    for typed in ("375-425", "375–425", "375 to 425"):
        (part,) = made(PartWords(kind="oven", what="bake", minutes="20", between=typed, turn=True)).parts
        assert isinstance(part, Heat)
        assert (part.low, part.high) == (pytest.approx(kelvin(375.0, "F")), pytest.approx(kelvin(425.0, "F")))
        assert (part.task, part.turn, part.place) == ("", True, Place.OVEN)


@pytest.mark.parametrize(
    ("between", "ends"),
    [("20-40", (20, 40)), ("20–40", (20, 40)), ("20 to 40", (20, 40)), ("30", (30, 30)), ("", (30, 30))],
)
def test_a_wait_runs_from_its_shortest_to_its_longest(between: str, ends: tuple[float, float]) -> None:
    (part,) = made(PartWords(kind="wait", what="rise", minutes="30", between=between)).parts
    assert isinstance(part, Wait)
    assert (part.shortest, part.longest) == ends


def test_another_heat_typed_takes_the_place_of_the_old_one_and_the_rest_stays() -> None:
    said = dish_words(ROAST)
    roast, gravy = said.parts[2:]
    tasks = heats_of("oven")
    changed = replace(
        said, parts=(*said.parts[:2], replace(roast, between=tasks[0][0]), replace(gravy, between="200-220"))
    )
    found = dish_from_words(changed, ROAST, set())
    oven, top = found.parts[2:]
    assert isinstance(oven, Heat)
    assert isinstance(top, Heat)
    assert (oven.task, oven.low, oven.places, oven.vessel) == (tasks[0][0], None, 2, "pan")
    assert (top.task, top.low) == ("", pytest.approx(kelvin(200.0, "F")))


def test_a_part_of_another_kind_takes_nothing_over_from_the_one_that_stood_there() -> None:
    said = replace(dish_words(ROAST), parts=(PartWords(kind="wait", what="thaw", minutes="40"),))
    assert dish_from_words(said, ROAST, set()).parts == (Wait(what="thaw", minutes=40.0, shortest=40.0, longest=40.0),)


@pytest.mark.parametrize(
    ("said", "sentence"),
    [
        (DishWords(name=" "), "Give the dish a name."),
        (DishWords(name="Roast", may_wait="long"), "“long” isn't a number of minutes; say how long it may wait."),
        (DishWords(name="Roast", after_table="x"), "say how long after the table's time it is eaten"),
        (DishWords(name="Roast", parts=(PartWords(kind="hands", what="cut"),)), "say how many minutes “cut” takes"),
        (DishWords(name="R", parts=(PartWords(kind="wait", minutes="3", between="a-9"),)), "say the shortest wait"),
        (DishWords(name="R", parts=(PartWords(kind="wait", minutes="3", between="9-b"),)), "say the longest wait"),
        (DishWords(name="R", parts=(PartWords(kind="oven", minutes="3", between="warm"),)), "oven heat"),
    ],
)
def test_a_slip_is_named(said: DishWords, sentence: str) -> None:
    with pytest.raises(InputProblem) as caught:
        dish_from_words(said, None, set())
    assert sentence in caught.value.sentence


def test_a_heavier_bake_takes_the_minutes_that_its_core_needs() -> None:
    dish = next(dish for dish in usual_dishes() if bake_in(dish))
    key = bake_in(dish)
    heat = next(part for part in dish.parts if isinstance(part, Heat) and part.bake)
    task = task_of(heat.task)
    assert task is not None
    found: list[float] = []
    for mass in (0.6, 0.9):
        changed = weighed(dish, mass, PRESSURE)
        part = next(part for part in changed.parts if isinstance(part, Heat) and part.bake)
        steady = steady_minutes(sized(BakeChoice(key=key, mass=mass)), task.middle, PRESSURE)
        assert part.minutes == pytest.approx(steady, abs=0.5)
        found.append(part.minutes)
        assert [one for one in changed.parts if one != part] == [one for one in dish.parts if one != heat]
    assert found[0] < found[1]


def test_a_dish_without_a_bake_weighs_nothing() -> None:
    assert bake_in(ROAST) == ""
    assert weighed(ROAST, 2.0, PRESSURE) == ROAST
