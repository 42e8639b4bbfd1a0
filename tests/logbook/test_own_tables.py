"""Two cooks' tables made one: what is here already stays to the letter, what lacks comes in."""

import tomllib

import pytest

from cookstove_gui.errors import InputProblem
from cookstove_gui.logbook.own_tables import merged

MINE = """# my own
[[task]]
key = "bread"  # hotter
name = "bread"
band = [390, 420]

[[task]]
key = "lard"
name = "render lard"
"""
THEIRS = """[[task]]
key = "bread"
name = "bread"
band = [300, 320]

[[task]]
key = "lard"
name = "render lard"

[[task]]
key = "candles"
name = "pour candles"
band = [140, 160]
"""


def test_a_row_that_lacks_comes_in_and_one_that_differs_stays_as_it_is_here() -> None:
    found = merged(MINE, THEIRS)
    assert (found.added, found.staying) == (1, ("bread",))
    assert found.text.startswith('# my own\n[[task]]\nkey = "bread"  # hotter')
    rows = {row["key"]: row for row in tomllib.loads(found.text)["task"]}
    assert list(rows) == ["bread", "lard", "candles"]
    assert rows["bread"]["band"] == [390, 420]
    assert rows["candles"]["band"] == [140, 160]


def test_nothing_here_takes_the_other_to_the_letter_and_what_lacks_nothing_stays_so() -> None:
    assert merged("", THEIRS) == (THEIRS, 3, ())
    assert merged(MINE, MINE) == (MINE, 0, ())
    again = merged(MINE, THEIRS).text
    assert merged(again, THEIRS)[:2] == (again, 0)


def test_words_come_in_one_by_one() -> None:
    mine = 'session_over = "All done."\n[bands.bread]\nready = "Loaves in!"\n'
    theirs = (
        'session_over = "Over."\n[bands.bread]\nready = "In."\nprepare = "Soon."\n[bands.pie]\nready = "Pies in."\n'
    )
    found = merged(mine, theirs)
    assert (found.added, found.staying) == (2, ("session_over", "bands.bread.ready"))
    assert tomllib.loads(found.text) == {
        "session_over": "All done.",
        "bands": {"bread": {"ready": "Loaves in!", "prepare": "Soon."}, "pie": {"ready": "Pies in."}},
    }


@pytest.mark.parametrize(("mine", "theirs"), [("[[task", THEIRS), (MINE, "key = ")])
def test_what_is_no_toml_is_told(mine: str, theirs: str) -> None:
    with pytest.raises(InputProblem, match="TOML"):
        merged(mine, theirs)


def test_what_is_of_another_form_here_is_left_alone() -> None:
    for mine in ("task = 3\n", "task = [1, 2]\n", 'bands = "none"\n'):
        found = merged(mine, '[[task]]\nkey = "a"\n[bands.bread]\nready = "In."\n')
        assert mine.strip() in found.text
        tomllib.loads(found.text)
