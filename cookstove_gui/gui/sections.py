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

from cookstove_gui.gui.theme import STEP

_RAIL_WIDTH = 190


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
        rail.setFixedWidth(_RAIL_WIDTH)
        self._rail.setContentsMargins(0, 0, 0, 0)
        whole = QHBoxLayout(self)
        whole.setContentsMargins(2 * STEP, STEP, 2 * STEP, STEP)
        whole.setSpacing(3 * STEP)
        whole.addWidget(rail)
        whole.addWidget(self._stack, 1)

    def add(self, key: str, title: str, part: QWidget) -> None:
        """Add a part at the end of the rail."""
        made = QPushButton(title)
        made.setObjectName(f"part_{key}")
        made.setAccessibleName(title)
        made.setToolTip(f"{title}: arrow keys choose a part, Tab goes into it")
        made.setCheckable(True)
        made.setAutoDefault(True)
        made.clicked.connect(lambda _checked=False: self.choose(key))
        self._group.addButton(made)
        self._rail.insertWidget(len(self._buttons), made)
        self._buttons[key] = made
        area = QScrollArea()
        area.setObjectName(f"scroll_{key}")
        area.setWidgetResizable(True)
        area.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        area.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        part.setContentsMargins(0, 0, STEP, 0)
        area.setWidget(part)
        self._stack.addWidget(area)
        if len(self._buttons) == 1:
            self.choose(key)

    def choose(self, key: str) -> None:
        """Bring a part to the front."""
        place = list(self._buttons).index(key)
        self._buttons[key].setChecked(True)
        self._stack.setCurrentIndex(place)
        self.shown.emit(key)

    @property
    def key(self) -> str:
        """Key of the part at the front."""
        return list(self._buttons)[self._stack.currentIndex()]
