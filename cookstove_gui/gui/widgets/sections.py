"""A page in parts: their names as words, and the one that was chosen, which scrolls if it must."""

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import (
    QBoxLayout,
    QButtonGroup,
    QScrollArea,
    QStackedWidget,
    QWidget,
)

from cookstove_gui.gui.widgets.key import RING, Word
from cookstove_gui.gui.widgets.look import Look
from cookstove_gui.gui.widgets.steps import px

_RAIL_WIDTH = 166  # px of the design
_SIDE, _APART, _LOW = 16, 20, 46


class Sections(QWidget):
    """The parts of one page, named in a row above or a rail at the left; arrows choose, Tab goes into the part."""

    shown = Signal(str)  # key of the part that came to the front

    def __init__(self, look: Look, *, rail: bool = False, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._is_rail = rail
        self._words: dict[str, Word] = {}
        self._parts: dict[str, QWidget] = {}
        self._key = ""
        self._group = QButtonGroup(self)
        self._group.setExclusive(True)
        self._stack = QStackedWidget()
        ways = QBoxLayout.Direction
        names = QWidget()
        self._names = QBoxLayout(ways.TopToBottom if rail else ways.LeftToRight, names)
        self._names.addStretch(1)
        # Where there is little height the rail scrolls, so that it never makes the window taller.
        self._names_area = scrolling(names)
        self._names_area.setVerticalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self._tools: dict[str, QWidget] = {}
        self._head = QBoxLayout(ways.LeftToRight)
        place = QBoxLayout(ways.TopToBottom)  # in line with the plates of keys beside, and there without any too
        place.setContentsMargins(0, 0 if rail else RING, 0, 0)
        place.addWidget(self._names_area, 1 if rail else 0)
        if not rail:
            place.addStretch(1)
        self._head.addLayout(place, 1)
        self._whole = QBoxLayout(ways.LeftToRight if rail else ways.TopToBottom, self)
        self._whole.addLayout(self._head)
        self._whole.addWidget(self._stack, 1)
        look.changed.connect(self._space)
        self._space()

    def add(self, key: str, title: str, part: QWidget) -> None:
        """Add a name at the end, of a part of its own or of one that an earlier name shows too."""
        made = Word(title, upright=self._is_rail)
        made.setObjectName(f"part_{key}")
        made.setAccessibleName(title)
        made.setToolTip(f"{title}: arrow keys choose a part, Tab goes into it")
        made.setCheckable(True)
        made.setAutoDefault(True)
        made.clicked.connect(lambda _checked=False: self.choose(key))
        self._group.addButton(made)
        self._names.insertWidget(len(self._words), made)
        self._words[key] = made
        if part not in self._parts.values():
            inside = part.layout()
            if inside is not None:
                inside.setContentsMargins(0, px(8), 0, 0)
            area = scrolling(part)
            area.setObjectName(f"scroll_{key}")
            self._stack.addWidget(area)
        self._parts[key] = part
        if len(self._words) == 1:
            self.choose(key)
        self._space()

    def add_foot(self, foot: QWidget) -> None:
        """Put words below the names, once all of them are there."""
        self._names.insertWidget(len(self._words), foot)

    def add_tools(self, key: str, tools: QWidget) -> None:
        """Put keys at the right of the names, that are there while a part is at the front."""
        self._tools[key] = tools
        self._head.addWidget(tools, 0, Qt.AlignmentFlag.AlignRight)
        tools.setVisible(key == self._key)

    def choose(self, key: str) -> None:
        """Bring a part to the front."""
        self._key = key
        self._words[key].setChecked(True)
        self._names_area.ensureWidgetVisible(self._words[key], 0, 8)
        for name, tools in self._tools.items():
            tools.setVisible(name == key)
        self._fit_tools()
        self._stack.setCurrentIndex(list(dict.fromkeys(self._parts.values())).index(self._parts[key]))
        self.shown.emit(key)

    @property
    def key(self) -> str:
        """Key of the part at the front."""
        return self._key

    @property
    def keys(self) -> tuple[str, ...]:
        """Keys of all parts, in their order."""
        return tuple(self._words)

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Give the tools a line of their own where they would cover the names."""
        super().resizeEvent(event)
        self._fit_tools()

    def _fit_tools(self) -> None:
        tools = self._tools.get(self._key)
        ways = QBoxLayout.Direction
        room = self.width() - self._head.spacing() - self._whole.contentsMargins().left() - px(_SIDE)
        fits = tools is None or self._names.sizeHint().width() + tools.sizeHint().width() <= room
        self._head.setDirection(ways.LeftToRight if fits else ways.TopToBottom)

    def _space(self) -> None:
        self._whole.setContentsMargins(px(_SIDE) - (0 if self._is_rail else RING), 0, px(_SIDE), px(8))
        self._names.setContentsMargins(0, 0, 0, 0)
        if self._is_rail:
            self._whole.setSpacing(px(14))
            self._names.setSpacing(px(_LOW - 44))
            self._names_area.setFixedWidth(px(_RAIL_WIDTH))
            for word in self._words.values():
                word.setFixedWidth(px(_RAIL_WIDTH))
        else:
            self._whole.setSpacing(px(12))
            self._names.setSpacing(px(_APART))
            self._names_area.setFixedHeight(px(44))
        for word in self._words.values():
            word.updateGeometry()
        for place in range(self._stack.count()):
            area = self._stack.widget(place)
            part = area.widget() if isinstance(area, QScrollArea) else None
            if part is not None:
                part.setContentsMargins(0 if self._is_rail else RING, 0, 0, 0)


class ScrollingUp(QScrollArea):
    """Scrolls up and down what stands in it."""

    def __init__(self, inside: QWidget) -> None:
        super().__init__()
        self.setWidgetResizable(True)
        self.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        self.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.setWidget(inside)


def scrolling(inside: QWidget) -> QScrollArea:
    """An area that scrolls up and down what stands in it."""
    return ScrollingUp(inside)
