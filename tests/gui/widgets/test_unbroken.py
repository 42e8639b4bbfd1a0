"""A number keeps its unit beside it at the end of a line."""

import pytest
from PySide6.QtWidgets import QLabel
from pytestqt.qtbot import QtBot

from cookstove_gui.gui.widgets.form import words

GLUE = "\u00a0"  # class GL of Unicode's rules for line breaking, UAX 14: no break before or after it


@pytest.mark.parametrize(
    ("said", "drawn"),
    [
        ("settles most: ±49 becomes ±36 °F.", f"settles most: ±49 becomes ±36{GLUE}°F."),
        ("about 2 h 5 min, 9 in 10", f"about 2{GLUE}h 5{GLUE}min, 9 in 10"),
        ("10 lb of wood, 4 splits; 3 minutes", f"10{GLUE}lb of wood, 4 splits; 3 minutes"),
    ],
)
def test_words_are_drawn_unbroken_and_read_as_given(qtbot: QtBot, said: str, drawn: str) -> None:
    made = words(said)
    qtbot.addWidget(made)
    assert made.text() == said
    assert QLabel.text(made) == drawn
