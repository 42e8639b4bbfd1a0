"""Smoke points are ranges of their source, and the lowest counts."""

import pytest

from cookstove_gui.cooking.safety.fats import fats, fats_that_smoke, in_words


# reference 9.20: smoke points in °C as looked up; butter elsewhere 121-177, lard 138-201, unrefined oils 107-177
@pytest.mark.parametrize(
    ("name", "published"),
    [
        ("butter", 150),
        ("lard", 190),
        ("virgin olive oil", 200),
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


def test_hotter_pans_smoke_more_fats() -> None:
    assert fats_that_smoke(300.0) == ()
    assert [fat.name for fat in fats_that_smoke(273.15 + 125)] == ["unrefined oil", "butter"]
    assert len(fats_that_smoke(600.0)) == len(fats())


def test_words_for_one_some_and_many() -> None:
    assert in_words(fats()[:1]) == "unrefined oil"
    assert in_words(fats()[:3]) == "unrefined oil, butter and lard"
    assert in_words(fats()) == "most cooking fats"
