"""Keys: flat plates with a lower edge, a word on them and the name of their key; words that stand for a page."""

from PySide6.QtCore import QRectF, QSize, Qt
from PySide6.QtGui import QColor, QFont, QFontMetricsF, QPainter, QPaintEvent, QPalette, QPen
from PySide6.QtWidgets import QPushButton, QSizePolicy, QWidget

from cookstove_gui.gui.widgets.steps import px
from cookstove_gui.gui.widgets.theme import SOFT
from cookstove_gui.gui.widgets.type import BODY, ROLES, font, set_role

HIGH = 44  # of a plate [px of the design]
RING = 4  # round the plate, where the ring of the focus is drawn [px]; layouts of keys need no spacing of their own
_EDGE = 2  # [px]
_RING_WIDTH = 3
_LEFT, _RIGHT, _BETWEEN = 12, 10, 8  # of the word, of the key's name, between them [px of the design]
_LEAST_SIDE = 6  # of a word that stands alone on its plate, where there is little room [px of the design]
_NO_PLATE = ("quiet", "unit", "caution")  # roles whose words stand alone
_NAME = 14  # of the key's name [px of the design]


class Key(QPushButton):
    """A button. Chosen ones and the one with the role `main` are ink; `quiet` ones are words without a plate."""

    def __init__(
        self,
        text: str = "",
        keys: str = "",
        parent: QWidget | None = None,
        *,
        high: float = HIGH,
        beside: float = _LEFT,
    ) -> None:
        """`high` and the room `beside` its word are px of the design."""
        super().__init__(text, parent)
        self._keys = keys
        self._high = high
        self._beside = beside
        self.setAutoDefault(False)
        self.setSizePolicy(QSizePolicy.Policy.Minimum, QSizePolicy.Policy.Fixed)

    @property
    def keys(self) -> str:
        """Name of the key that presses it; also part of the tooltip, for it is left out where there is no room."""
        return self._keys

    def show_keys(self, keys: str) -> None:
        """Change the name of the key."""
        self._keys = keys
        self.updateGeometry()
        self.update()

    def sizeHint(self) -> QSize:
        """Room for the word and the name of the key."""
        return self._size(with_keys=True, side=self._beside)

    def minimumSizeHint(self) -> QSize:
        """Room for the word alone."""
        return self._size(with_keys=False, side=_LEAST_SIDE if not self._keys else self._beside)

    def _size(self, *, with_keys: bool, side: float) -> QSize:
        wide = QFontMetricsF(self._face(heavy=True)).horizontalAdvance(self.text()) + px(2 * side)
        if with_keys and self._keys:
            wide += QFontMetricsF(font(_NAME)).horizontalAdvance(self._keys) + px(_BETWEEN + _RIGHT - _LEFT)
        return QSize(max(round(wide + 0.5), px(HIGH)) + 2 * RING, px(self._high) + 2 * RING)

    def _face(self, *, heavy: bool) -> QFont:
        size, weight = ROLES.get(self.property("role") or "", (BODY, 400))
        return font(size, 600 if heavy else weight)

    @property
    def _is_main(self) -> bool:
        return bool(self.property("role") in ("main", "strong_main") or self.isChecked())

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Plate, word, name of the key, and the ring of the focus around them."""
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        plate = QRectF(self.rect()).adjusted(RING, RING, -RING, -RING)
        group = QPalette.ColorGroup.Disabled if not self.isEnabled() else QPalette.ColorGroup.Active
        tokens = self.palette()

        def token(role: QPalette.ColorRole) -> QColor:
            return tokens.color(group, role)

        main = self._is_main and self.isEnabled()
        if self.hasFocus():
            paint_ring(painter, plate, tokens.color(QPalette.ColorRole.Highlight))
        ink = token(QPalette.ColorRole.Window if main else QPalette.ColorRole.ButtonText)
        pressed = self.isDown() and self.isEnabled()
        if self.property("role") not in _NO_PLATE or main:
            under = token(QPalette.ColorRole.ButtonText if main else QPalette.ColorRole.Button)
            edge = None if main or pressed or not self.isEnabled() else token(QPalette.ColorRole.Mid)
            paint_plate(painter, plate, under, edge)
        self._paint_words(painter, plate.translated(0, 1 if pressed else 0), ink, main=main)

    def _paint_words(self, painter: QPainter, plate: QRectF, ink: QColor, *, main: bool) -> None:
        soft = ink if main else self.palette().color(SOFT)
        face = self._face(heavy=main)
        inner = plate.adjusted(px(_LEFT), 0, -px(_RIGHT), -_EDGE)
        painter.setFont(face)
        painter.setPen(ink)
        middle = Qt.AlignmentFlag.AlignVCenter
        if not self._keys:
            painter.drawText(plate.adjusted(0, 0, 0, -_EDGE), int(middle | Qt.AlignmentFlag.AlignHCenter), self.text())
            return
        painter.drawText(inner, int(middle | Qt.AlignmentFlag.AlignLeft), self.text())
        name = font(_NAME)
        words = QFontMetricsF(face).horizontalAdvance(self.text())
        if words + px(_BETWEEN) + QFontMetricsF(name).horizontalAdvance(self._keys) <= inner.width():
            painter.setFont(name)
            painter.setPen(soft)
            painter.drawText(inner, int(middle | Qt.AlignmentFlag.AlignRight), self._keys)


class Word(QPushButton):
    """A word that stands for a page or a part of one: a bar under the one that is shown."""

    _BAR = 4  # [px of the design]

    def __init__(
        self,
        text: str = "",
        keys: str = "",
        parent: QWidget | None = None,
        *,
        soft: bool = True,
        upright: bool = False,
    ) -> None:
        super().__init__(text, parent)
        self._upright = upright  # the bar stands at the left
        self._keys = keys
        self._soft = soft
        self._tight = False
        self.setAutoDefault(False)
        self.setSizePolicy(QSizePolicy.Policy.Fixed, QSizePolicy.Policy.Fixed)

    def set_tight(self, wanted: bool) -> None:
        """Leave the name of the key out."""
        if wanted is not self._tight:
            self._tight = wanted
            self.updateGeometry()
            self.update()

    def sizeHint(self) -> QSize:
        """As wide as the word is when it is chosen, so that nothing moves."""
        beside = px(16) + RING if self._upright else 2 * RING
        wide = QFontMetricsF(font(BODY, 600)).horizontalAdvance(self.text()) + self._name_width() + beside
        return QSize(max(round(wide + 0.5), px(HIGH)), px(HIGH))

    def minimumSizeHint(self) -> QSize:
        """Never less than the word needs."""
        return self.sizeHint()

    def _name_width(self) -> float:
        if self._tight or not self._keys:
            return 0.0
        return QFontMetricsF(font(_NAME)).horizontalAdvance(self._keys) + px(5)

    def paintEvent(self, _event: QPaintEvent) -> None:
        """The word, its key, the bar, the ring of the focus."""
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        tokens = self.palette()
        ink, soft = tokens.color(QPalette.ColorRole.ButtonText), tokens.color(SOFT)
        chosen = self.isChecked() or self.isDown()
        face = font(BODY, 600 if self.isChecked() else 400)
        line = QFontMetricsF(face)
        base = self.height() / 2 + line.capHeight() / 2 - px(2)
        painter.setFont(face)
        painter.setPen(soft if self._soft and not chosen else ink)
        start = px(16) if self._upright else RING
        painter.drawText(QRectF(start, base - line.ascent(), self.width(), line.height()), 0, self.text())
        words = line.horizontalAdvance(self.text())
        end = RING + words
        if self._name_width():
            small = QFontMetricsF(font(_NAME))
            painter.setFont(font(_NAME))
            painter.setPen(soft)
            left = RING + words + px(5)
            painter.drawText(QRectF(left, base - small.ascent(), self.width(), small.height()), 0, self._keys)
            end = left + small.horizontalAdvance(self._keys)
        if self.isChecked() and self._upright:
            high = px(36)
            painter.fillRect(QRectF(0, (self.height() - high) / 2, px(self._BAR), high), ink)
        elif self.isChecked():
            painter.fillRect(QRectF(RING, self.height() - px(self._BAR) - 1, end - RING, px(self._BAR)), ink)
        if self.hasFocus():
            inside = QRectF(self.rect()).adjusted(_RING_WIDTH, _RING_WIDTH, -_RING_WIDTH, -_RING_WIDTH)
            paint_ring(painter, inside, tokens.color(QPalette.ColorRole.Highlight))


def paint_plate(painter: QPainter, plate: QRectF, under: QColor, edge: QColor | None) -> None:
    """A plate of a colour, with its lower edge in another if it has one."""
    radius = px(4)
    painter.setPen(Qt.PenStyle.NoPen)
    if edge is not None:
        painter.setBrush(edge)
        painter.drawRoundedRect(plate, radius, radius)
        plate = plate.adjusted(0, 0, 0, -_EDGE)
    painter.setBrush(under)
    painter.drawRoundedRect(plate, radius, radius)


def paint_ring(painter: QPainter, plate: QRectF, cobalt: QColor) -> None:
    """The ring of the focus, outside a plate."""
    out = RING - _RING_WIDTH / 2
    painter.setPen(QPen(cobalt, _RING_WIDTH))
    painter.setBrush(Qt.BrushStyle.NoBrush)
    painter.drawRoundedRect(plate.adjusted(-out, -out, out, out), px(4) + out, px(4) + out)


def named_key(
    text: str,
    name: str,
    tip: str,
    *,
    said: str = "",
    keys: str = "",
    role: str = "",
    by_enter: bool = True,
    beside: float = _LEFT,
) -> Key:
    """A key with its object name, its tooltip and what is read out (its word unless `said`); `keys` presses it."""
    made = Key(text, keys, beside=beside)
    made.setObjectName(name)
    made.setAccessibleName(said or text.replace("&", ""))
    made.setToolTip(tip)
    made.setAutoDefault(by_enter)  # Enter presses it when it has the focus
    if role:
        set_role(made, role)
    return made
