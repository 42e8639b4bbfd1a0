"""A recipe's text becomes parts of a dish in its order, nothing of it is used before it is confirmed."""

import pytest

from cookstove_gui.cooking.supper.dishes import HandsOn, Heat, Wait
from cookstove_gui.cooking.supper.recipe.acts import ActKind
from cookstove_gui.cooking.supper.recipe.confirmed import Confirmed, dish_of, offered_band, offered_minutes
from cookstove_gui.cooking.supper.recipe.draft import DraftPart, draft_of, title_of
from cookstove_gui.cooking.supper.recipe.sentences import read_sentences
from cookstove_gui.errors import InputProblem
from cookstove_gui.units import degrees

LOAF = """Mix the flour, water, salt and yeast, then knead ten minutes.
Let rise until doubled, 1 to 1 1/2 hours.
Shape into a loaf, lay it in a greased loaf pan and let rise 45 minutes.
Heat the oven to 425°F.
Bake 10 minutes, then lower to 375°F and bake 30 to 35 minutes more, until the inside is 200°F.
Cool for an hour before slicing."""


def drafted(text: str) -> tuple[DraftPart, ...]:
    return draft_of(read_sentences(text))


def fahrenheit(part: DraftPart) -> tuple[int, int] | None:
    if part.heat is None or part.heat.low is None or part.heat.high is None:
        return None
    return round(degrees(part.heat.low, "F")), round(degrees(part.heat.high, "F"))


def test_a_loaf_has_its_parts_in_order() -> None:
    found = [(one.act, one.shortest, one.longest, fahrenheit(one)) for one in drafted(LOAF)]
    assert found == [
        ("mix", None, None, None),
        ("knead", 10, 10, None),
        ("rise", 60, 90, None),
        ("shape", None, None, None),
        ("rise", 45, 45, None),
        ("bake", 10, 10, (425, 425)),
        ("bake", 30, 35, (375, 375)),
        ("cool", 60, 60, None),
    ]


def test_a_heat_said_before_the_bake_is_marked_as_said_earlier() -> None:
    bakes = [one for one in drafted(LOAF) if one.kind is ActKind.OVEN]
    assert [one.heat_is_earlier for one in bakes] == [True, False]


def test_the_heat_of_the_inside_is_kept_apart_from_the_heat_of_the_oven() -> None:
    last = [one for one in drafted(LOAF) if one.kind is ActKind.OVEN][-1]
    assert last.core is not None
    assert round(degrees(last.core.low or 0.0, "F")) == 200
    assert fahrenheit(last) == (375, 375)


def test_then_lower_without_another_bake_is_a_part_of_its_own() -> None:
    found = [
        (one.act, one.shortest, fahrenheit(one))
        for one in drafted("Roast at 450°F for 15 min; reduce to 325°F for 2 hours.")
    ]
    assert found == [("roast", 15, (450, 450)), ("bake", 120, (325, 325))]


@pytest.mark.parametrize(
    ("text", "found"),
    [
        (
            "Bake at 350 F for 45 to 50 minutes, then lower to 300. Let rest 10 minutes.",
            [("bake", 45, (350, 350)), ("bake", None, (300, 300)), ("rest", 10, None)],
        ),
        (
            "Bake at 425°F for 15 minutes, then lower to 375°F. Bake until brown, 30 minutes.",
            [("bake", 15, (425, 425)), ("bake", 30, (375, 375))],
        ),
        ("Mix the flour. Heat the oven to 425°F.", [("mix", None, None)]),
        (
            "Roast at 450°F for 15 min. Reduce the heat to 325°F.\nBake the potatoes beside it 1 hour.",
            [("roast", 15, (450, 450)), ("bake", 60, (325, 325))],
        ),
    ],
)
def test_a_lower_heat_without_minutes_is_never_lost(
    text: str, found: list[tuple[str, float | None, tuple[int, int] | None]]
) -> None:
    assert [(one.act, one.shortest, fahrenheit(one)) for one in drafted(text)] == found


@pytest.mark.parametrize(
    ("text", "title"),
    [
        ("Sunday chops\nSear the chops 5 minutes.", "Sunday chops"),
        ("# Plum crumble #\n\nBake 40 minutes at 350°F.", "Plum crumble"),
        ("Bake at 350°F for an hour\nLet cool.", ""),
        ("2 cups flour\nMix and bake.", ""),
        ("Sunday chops.\nSear the chops.", ""),
        ("Sunday chops", ""),
        (f"{'Chops ' * 11}\nSear the chops.", ""),
    ],
)
def test_a_first_line_that_tells_nothing_to_do_is_the_name(text: str, title: str) -> None:
    assert title_of(text, read_sentences(text)) == title


def test_an_oven_heat_without_a_verb_is_a_bake() -> None:
    (part,) = drafted("In a moderate oven, forty minutes.")
    assert (part.act, part.shortest) == ("bake", 40)


def test_minutes_per_pound_are_never_taken_for_the_length() -> None:
    (part,) = drafted("Roast at 350°F, 20 minutes per pound.")
    assert part.shortest is None
    assert part.each is not None
    assert offered_minutes(part) is None


def test_minutes_over_beside_minutes_per_pound_are_no_length_either() -> None:
    (part,) = drafted("Roast 20 minutes to the pound and 20 minutes over at 350°F.")
    assert offered_minutes(part) is None


def test_the_words_of_a_part_are_where_it_says() -> None:
    rise = next(one for one in drafted(LOAF) if one.act == "rise")
    assert LOAF[rise.place.start : rise.place.end] == "Let rise until doubled, 1 to 1 1/2 hours."


def test_a_single_number_is_offered_with_25_degrees_either_side_and_a_range_as_it_is() -> None:
    single, ranged = (drafted(text)[0] for text in ("Bake 1 hour at 350°F.", "Bake 1 hour at 350–375°F."))
    bands = [offered_band(one) for one in (single, ranged)]
    assert [(round(degrees(one.low, "F")), round(degrees(one.high, "F"))) for one in bands if one] == [
        (325, 375),
        (350, 375),
    ]


def confirmed(text: str) -> list[Confirmed]:
    return [Confirmed(draft=one, minutes=offered_minutes(one), band=offered_band(one)) for one in drafted(text)]


def test_what_is_confirmed_becomes_a_dish() -> None:
    dish = dish_of("  Plain  loaf ", confirmed(LOAF), known_keys=("plain_loaf",))
    assert (dish.key, dish.name) == ("plain_loaf_2", "Plain loaf")
    assert [type(part) for part in dish.parts] == [HandsOn, HandsOn, Wait, HandsOn, Wait, Heat, Heat, Wait]
    rise = dish.parts[2]
    assert isinstance(rise, Wait)
    assert (rise.shortest, rise.minutes, rise.longest) == (60, 75, 90)


@pytest.mark.parametrize(
    ("name", "text", "says"),
    [
        ("", LOAF, "name"),
        ("Roast", "Roast at 350°F, 20 minutes per pound.", "minutes"),
        ("Cake", "Bake for 40 minutes.", "heat"),
        ("Salad", "Peel and slice the apples.", "stove"),
    ],
)
def test_what_is_missing_is_asked_for(name: str, text: str, says: str) -> None:
    with pytest.raises(InputProblem) as caught:
        dish_of(name, confirmed(text))
    assert says in caught.value.sentence


def test_nothing_confirmed_is_no_dish() -> None:
    with pytest.raises(InputProblem):
        dish_of("Loaf", [])
