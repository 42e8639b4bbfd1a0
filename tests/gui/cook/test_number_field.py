"""Digits are a reading, letters a spot's name, both together a reading at that spot."""

import pytest

from cookstove_gui.gui.cook.number_field import name_and_number


@pytest.mark.parametrize(
    ("text", "name", "number"),
    [
        ("385", "", "385"),
        (" 385F ", "", "385F"),
        ("196.5 c", "", "196.5 c"),
        ("back right", "back right", ""),
        ("back right 415", "back right", "415"),
        ("tbr415", "tbr", "415"),
        ("-5", "", "-5"),
        ("38x5", "", "38x5"),
        ("", "", ""),
        ("%%", "", "%%"),
    ],
)
def test_text_is_told_apart(text: str, name: str, number: str) -> None:
    assert name_and_number(text) == (name, number)
