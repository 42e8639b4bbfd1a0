"""A page in parts: a rail of buttons, and beside it the one part that was chosen, which scrolls if it must."""

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import (
    QButtonGroup,
    QHBoxLayout,
    QPushButton,
    QScrollArea,
    QStackedWidget,
    QVBoxLayout,
    QWidget,
)

from cookstove_gui.gui.widgets.key import Key
from cookstove_gui.gui.widgets.theme import STEP

_RAIL_WIDTH = 204  # the widest title with its edge


class Sections(QWidget):
    """The parts of one page; arrow keys go up and down the rail, Tab goes into the part."""

    shown = Signal(str)  # key of the part that came to the front

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._buttons: dict[str, QPushButton] = {}
        self._group = QButtonGroup(self)
        self._group.setExclusive(True)
        self._rail = QVBoxLayout()
        self._rail.setSpacing(STEP)
        self._rail.addStretch(1)
        self._stack = QStackedWidget()
        rail = QWidget()
        rail.setLayout(self._rail)
        self._rail.setContentsMargins(0, 0, 0, 0)
        # Where cautions leave a page little height the rail scrolls, so that it never makes the window taller.
        self._rail_area = _scrolling(rail)
        self._rail_area.setFixedWidth(_RAIL_WIDTH)
        self._rail_area.setVerticalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        whole = QHBoxLayout(self)
        whole.setContentsMargins(2 * STEP, STEP, 2 * STEP, STEP)
        whole.setSpacing(3 * STEP)
        whole.addWidget(self._rail_area)
        whole.addWidget(self._stack, 1)

    def add(self, key: str, title: str, part: QWidget) -> None:
        """Add a part at the end of the rail."""
        made = Key(title)
        made.setObjectName(f"part_{key}")
        made.setAccessibleName(title)
        made.setToolTip(f"{title}: arrow keys choose a part, Tab goes into it")
        made.setCheckable(True)
        made.setAutoDefault(True)
        made.clicked.connect(lambda _checked=False: self.choose(key))
        self._group.addButton(made)
        self._rail.insertWidget(len(self._buttons), made)
        self._buttons[key] = made
        part.setContentsMargins(0, 0, STEP, 0)
        area = _scrolling(part)
        area.setObjectName(f"scroll_{key}")
        self._stack.addWidget(area)
        if len(self._buttons) == 1:
            self.choose(key)

    def choose(self, key: str) -> None:
        """Bring a part to the front."""
        place = list(self._buttons).index(key)
        self._buttons[key].setChecked(True)
        self._rail_area.ensureWidgetVisible(self._buttons[key], 0, STEP)
        self._stack.setCurrentIndex(place)
        self.shown.emit(key)

    @property
    def key(self) -> str:
        """Key of the part at the front."""
        return list(self._buttons)[self._stack.currentIndex()]


def _scrolling(inside: QWidget) -> QScrollArea:
    """An area that scrolls up and down what stands in it."""
    made = QScrollArea()
    made.setWidgetResizable(True)
    made.setFocusPolicy(Qt.FocusPolicy.NoFocus)
    made.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
    made.setWidget(inside)
    return made
