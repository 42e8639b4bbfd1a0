"""The entry panel on the screen, its number field with the keys."""

import pytest
from pytestqt.qtbot import QtBot

from cookstove_gui.gui.cook.entry_panel import EntryPanel
from cookstove_gui.gui.desk_link import DeskLink
from cookstove_gui.gui.widgets.look import Look


@pytest.fixture
def panel(link: DeskLink, look: Look, qtbot: QtBot) -> EntryPanel:
    made = EntryPanel(link)
    qtbot.addWidget(made)
    made.show()
    made.take_focus()
    return made
