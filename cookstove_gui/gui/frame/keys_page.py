"""Every key and every mark on one page, in a cook's order."""

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QGridLayout, QHBoxLayout, QLabel, QVBoxLayout, QWidget

from cookstove_gui.gui.frame.left_page import LeftPage
from cookstove_gui.gui.widgets.key import named_key
from cookstove_gui.gui.widgets.sections import scrolling
from cookstove_gui.gui.widgets.theme import STEP
from cookstove_gui.gui.widgets.type import set_role

KEYS = (
    (
        "Reading",
        (
            ("number, Enter", "record it at the lit-up spot"),
            ("name, Enter", "light up that spot: “back right”, “br”"),
            ("name number, Enter", "both at once: “flue 410”"),
            ("↑ ↓", "previous spot, next spot"),
            ("Ctrl+J", "the walk: the lit spot earlier, later, left out"),
            ("196C  or  385F", "the other unit for one number"),
            ("Ctrl+U", "switch between °F and °C"),
        ),
    ),
    (
        "Fire",
        (
            ("F5", "lit; again: relit, or out"),
            ("F6  F7  F8", "wood, air, bypass: then a key"),
            ("F9  F10  F11", "oven door and food, pan (L: its lid), note"),
            ("Ctrl+1 … Ctrl+6", "what if: leave it, or one step"),
            ("Ctrl+B", "the heat wanted: bread, 425-475, 425"),
            ("Ctrl+G", "what it is good for; Enter asks for its heat"),
            ("Ctrl+I", "the plot: then, copy, save; ←\u00a0→ read it out"),
        ),
    ),
    (
        "Correcting",
        (
            ("Ctrl+Z", "undo the latest thing done"),
            ("Ctrl+Shift+Z", "do it again"),
            ("Ctrl+T", "when: 7:05, or -10; it stays, Escape is now"),
            ("Ctrl+R", "the entries: Enter corrects, Delete takes back"),
            ("Ctrl+K  Ctrl+M", "keep or correct what is in question"),
            ("Ctrl+O", "it was read in the other unit"),
            ("Escape", "leave everything as it is"),
        ),
    ),
    (
        "Window",
        (
            ("F1 … F4", "Cook, Plan, My stove, Logbook"),
            ("F12", "large view"),
            ("Ctrl+E", "back to the number field"),
            ("Ctrl+W", "caution read, or shown again"),
            ("Ctrl+Space  Ctrl+S  Ctrl+L", "alarm: done, in 5 minutes, silence"),
            ("Ctrl+D", "colours of night or day"),
            ("Ctrl++  Ctrl+-  Ctrl+0", "text larger, smaller, as designed"),
            ("Ctrl+H", "this list"),
        ),
    ),
    (
        "Supper",
        (
            ("Insert", "dishes: Enter adds the marked one"),
            ("F10", "what is due, or next, is done"),
            ("Ctrl+Shift+F10", "the latest thing done is not"),
            ("↑ ↓  ← →", "a step; earlier, later by 5 minutes"),
            ("Backspace  Delete", "the plan chooses again; dish away"),
            ("B", "the step's bell off, or on again"),
        ),
    ),
    (
        "Marks",
        (
            ("○  ◇", "the oven; any other place"),
            ("struck through", "looks like a slip"),
            ("dashed, dotted", "projection; what-if step"),
            ("≈ over a bar", "an estimate; the longer, the less sure"),
            ("◇ on a spot", "most worth reading"),
        ),
    ),
)
_COLUMNS = (("Reading", "Correcting", "Supper"), ("Fire", "Window", "Marks"))


class KeysPage(LeftPage):
    """Two columns: keys, and what they do."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setObjectName("keys_page")
        self.setAccessibleName("All keys")
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        inside = QWidget()
        whole = QVBoxLayout(self)
        whole.setContentsMargins(0, 0, 0, 0)
        whole.addWidget(scrolling(inside))
        back = named_key("Back", "keys_back", "Back to the Cook page (Escape)", keys="Esc")
        back.clicked.connect(self.left)
        heading = QLabel("All keys")
        set_role(heading, "heading")
        top = QHBoxLayout()
        top.addWidget(heading, 1)
        top.addWidget(back)
        columns = QHBoxLayout()
        columns.setSpacing(3 * STEP)
        rows = QVBoxLayout(inside)
        rows.setContentsMargins(2 * STEP, STEP, 2 * STEP, STEP)
        rows.addLayout(top)
        rows.addLayout(columns)
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
    set_role(heading, "heading")
    grid.addWidget(heading, 0, 0, 1, 2)
    for row, (key, what) in enumerate(keys, start=1):
        pressed, told = QLabel(key), QLabel(what)
        set_role(pressed, "belief")
        told.setWordWrap(True)
        grid.addWidget(pressed, row, 0, Qt.AlignmentFlag.AlignTop)
        grid.addWidget(told, row, 1)
    return grid
