"""Smoke points are ranges of their source, the lowest counts, and a note names its fats."""

import pytest

from cookstove_gui.cooking.safety.fats import fats, fats_named, in_words
from cookstove_gui.cooking.safety.moment import words_in


# reference 9.20: smoke points in °C as looked up; butter elsewhere 121-177, lard 138-201, unrefined oils 107-177
@pytest.mark.parametrize(
    ("name", "published"),
    [
        ("butter", 150),
        ("lard", 190),
        ("virgin olive oil", 160),
        ("virgin olive oil", 190),
        ("virgin olive oil", 210),
        ("refined olive oil", 199),
        ("refined olive oil", 243),
        ("refined sunflower oil", 240),
        ("refined soy or peanut oil", 232),
        ("clarified butter", 250),
    ],
)
def test_the_published_point_lies_in_the_range(name: str, published: float) -> None:
    """Row "9.20" of tests/reference."""
    fat = next(fat for fat in fats() if fat.name == name)
    assert fat.smokes_from - 273.15 <= published + 1e-9
    assert published <= fat.smokes_to - 273.15 + 1e-9


def test_those_that_smoke_first_come_first() -> None:
    heats = [fat.smokes_from for fat in fats()]
    assert heats == sorted(heats)


@pytest.mark.parametrize(
    ("note", "names"),
    [
        ("bacon", ["lard"]),
        ("Butter for the eggs", ["butter"]),
        ("clarified butter", ["clarified butter"]),
        ("a spoon of olive oil", ["virgin olive oil"]),
        ("refined olive oil", ["refined olive oil"]),
        ("some oil", ["unrefined oil"]),
        ("oil and drippings", ["unrefined oil", "lard"]),
        ("boil potatoes", []),
    ],
)
def test_a_note_names_its_fats(note: str, names: list[str]) -> None:
    assert [fat.name for fat in fats_named(words_in(note))] == names


def test_words_for_one_some_and_many() -> None:
    assert in_words(fats()[:1]) == "unrefined oil"
    assert in_words(fats()[:3]) == "unrefined oil, butter and lard"
    assert in_words(fats()[:4]) == "most cooking fats"
