"""Every key and every mark in one view, in a cook's order."""

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QGridLayout, QHBoxLayout, QLabel, QVBoxLayout, QWidget

from cookstove_gui.gui.widgets.theme import STEP

KEYS = (
    (
        "Reading",
        (
            ("number, Enter", "record it at the lit-up spot"),
            ("name, Enter", "light up that spot, as “back right”"),
            ("name number, Enter", "both at once, as “flue 410”"),
            ("↑ ↓", "the spot before, the spot after"),
            ("196C  or  385F", "the other unit for one number"),
            ("Ctrl+U", "the other unit from now on"),
        ),
    ),
    (
        "Fire",
        (
            ("F5", "lit"),
            ("F6  F7  F8", "wood, air, bypass: then a digit"),
            ("F9  F10  F11", "oven door, pan, note"),
            ("Ctrl+0 … Ctrl+5", "what if: leave it, or one step"),
            ("Ctrl+B", "the heat wanted: bread, 425-475, 425"),
        ),
    ),
    (
        "Mending",
        (
            ("Ctrl+Z", "take the last entry back"),
            ("Ctrl+Shift+Z", "take that back"),
            ("Ctrl+T", "when: 7:05, or -10 for ten minutes ago"),
            ("Ctrl+R", "the list: Enter mends, Delete takes back"),
            ("Ctrl+K  Ctrl+M", "keep or mend a questioned number"),
            ("Escape", "leave it as it is"),
        ),
    ),
    (
        "Window",
        (
            ("F1 … F4", "Cook, Plan, My stove, Logbook"),
            ("F12", "large view"),
            ("Ctrl+E", "back to the number field"),
            ("Ctrl+W", "caution read, or shown again"),
            ("Ctrl+D", "colours: auto, day, night"),
            ("Ctrl+H", "this list"),
        ),
    ),
    (
        "Marks",
        (
            ("○  ◇  △  □", "oven, infrared, flue, room"),
            ("struck through", "it looks like a slip"),
            ("dashed, dotted", "projected; one step tried"),
            ("hatched, ≈", "less sure; an estimate"),
            ("corner", "would tell most if read"),
        ),
    ),
)
_COLUMNS = (("Reading", "Mending"), ("Fire", "Window", "Marks"))


class KeysPage(QWidget):
    """Two columns of keys and what they do."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setObjectName("keys_page")
        self.setAccessibleName("All keys")
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        columns = QHBoxLayout(self)
        columns.setContentsMargins(2 * STEP, STEP, 2 * STEP, STEP)
        columns.setSpacing(5 * STEP)
        groups = dict(KEYS)
        for titles in _COLUMNS:
            column = QVBoxLayout()
            column.setSpacing(2 * STEP)
            for title in titles:
                column.addLayout(_group(title, groups[title]))
            column.addStretch(1)
            columns.addLayout(column, 1)


def _group(title: str, keys: tuple[tuple[str, str], ...]) -> QGridLayout:
    grid = QGridLayout()
    grid.setHorizontalSpacing(2 * STEP)
    grid.setVerticalSpacing(STEP // 2)
    grid.setColumnStretch(1, 1)
    heading = QLabel(title)
    heading.setProperty("role", "heading")
    grid.addWidget(heading, 0, 0, 1, 2)
    for row, (key, what) in enumerate(keys, start=1):
        pressed, told = QLabel(key), QLabel(what)
        pressed.setProperty("role", "belief")
        told.setWordWrap(True)
        grid.addWidget(pressed, row, 0, Qt.AlignmentFlag.AlignTop)
        grid.addWidget(told, row, 1)
    return grid
