"""A row of a catalogue by its name."""

import pytest

from cookstove_gui.cooking.by_name import by_name
from cookstove_gui.errors import InputProblem


def test_the_row_of_that_name_is_found() -> None:
    assert by_name([("oak", 1), ("fir", 2)], "fir", "wood", lambda row: row[0]) == ("fir", 2)


def test_an_unknown_name_gets_a_sentence_that_lists_the_known_ones() -> None:
    with pytest.raises(InputProblem) as problem:
        by_name([("oak", 1), ("fir", 2)], "tin", "wood", lambda row: row[0])
    assert problem.value.sentence == "“tin” is not a known wood; choose one of oak, fir."
