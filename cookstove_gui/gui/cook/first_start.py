"""The very first start: three ways to begin, and below them a small worked picture of what the program does."""

from dataclasses import dataclass

from PySide6.QtCore import QEvent, QObject, QPointF, QRectF, QSize, Qt, Signal
from PySide6.QtGui import QColor, QFontMetricsF, QKeyEvent, QPainter, QPainterPath, QPaintEvent, QPen
from PySide6.QtWidgets import QSizePolicy, QVBoxLayout, QWidget

from cookstove_gui.gui.widgets.form import words
from cookstove_gui.gui.widgets.key import Key
from cookstove_gui.gui.widgets.look import Look
from cookstove_gui.gui.widgets.numbered import NumberedRow, Rule
from cookstove_gui.gui.widgets.steps import px
from cookstove_gui.gui.widgets.theme import colour
from cookstove_gui.gui.widgets.type import font, set_role


@dataclass(frozen=True, slots=True)
class Way:
    """One way to begin."""

    key: str
    title: str
    told: str
    quiet: str
    press: str


WAYS = (
    Way(
        "draw",
        "Draw my stove",
        "Six questions, about two minutes: where the firebox sits, how big the top is, which spots you read.",
        "The picture on the left becomes yours.",
        "Draw it",
    ),
    Way(
        "practice",
        "Watch a practice session",
        "An invented afternoon from match to loaf, 60 times as fast. Type along, or watch.",
        "Nothing of it is kept.",
        "Watch",
    ),
    Way(
        "light",
        "Light the fire now",
        "Press Lit and start reading. A plain stove with the firebox on the left stands in for yours.",
        "It learns from the first reading on.",
        "Begin",
    ),
)


class FirstStart(QWidget):
    """The keys 1, 2 and 3 choose as well."""

    chosen = Signal(str)  # key of a way

    def __init__(self, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setObjectName("first_start")
        self.setAccessibleName("Three ways to begin")
        self._keys: dict[str, Key] = {}
        self._column = QVBoxLayout(self)
        self._column.setContentsMargins(0, 0, 0, 0)
        for number, way in enumerate(WAYS, start=1):
            self._column.addWidget(self._row(look, number, way))
            self._column.addWidget(Rule(look, strong=number == len(WAYS)))
        self._column.addWidget(_Worked(look), 1)
        look.changed.connect(self._space)
        self._space()

    def take_focus(self) -> None:
        """Give the keyboard to the first way."""
        self._keys[WAYS[0].key].setFocus(Qt.FocusReason.OtherFocusReason)

    def _row(self, look: Look, number: int, way: Way) -> NumberedRow:
        press = Key(way.press)
        press.setObjectName(f"way_{way.key}")
        press.setAccessibleName(f"{way.title}. {way.told} {way.quiet}")
        press.setToolTip(f"{way.title} (key {number})")
        if number == 1:
            set_role(press, "strong_main")
        press.clicked.connect(lambda _checked=False, wanted=way.key: self.chosen.emit(wanted))
        press.installEventFilter(self)
        self._keys[way.key] = press
        return NumberedRow(look, number, way.title, words(way.told), words(way.quiet, role="soft"), press=press)

    def _space(self) -> None:
        self._column.setSpacing(px(8))
        for key in self._keys.values():
            key.setFixedWidth(px(140))

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        """The digits choose; elsewhere on the page they go to the number field."""
        digits = {str(number): way.key for number, way in enumerate(WAYS, start=1)}
        if isinstance(event, QKeyEvent) and event.text() in digits:
            if event.type() == QEvent.Type.ShortcutOverride:
                event.accept()
                return True
            if event.type() == QEvent.Type.KeyPress:
                self._keys[digits[event.text()]].click()
                return True
        return super().eventFilter(watched, event)


# The worked picture, in shares of its width and height: an invented rise, what may come, the heat wanted.
_READ = ((0.03, 0.96), (0.09, 0.90), (0.15, 0.82), (0.21, 0.73), (0.27, 0.62), (0.33, 0.50), (0.38, 0.41), (0.44, 0.34))
_AHEAD = ((0.44, 0.34), (0.52, 0.24), (0.62, 0.18), (0.75, 0.16), (0.88, 0.19), (0.995, 0.25))
_HIGHEST = ((0.44, 0.33), (0.52, 0.15), (0.62, 0.05), (0.75, 0.01), (0.88, 0.02), (0.995, 0.04))
_LOWEST = ((0.44, 0.35), (0.52, 0.32), (0.62, 0.29), (0.75, 0.30), (0.88, 0.37), (0.995, 0.47))
_BAND = (0.11, 0.26)
_ARRIVAL = (0.485, 0.51, 0.575)


class _Worked(QWidget):
    """What the program makes of readings; left out where there is little height."""

    _LEAST = 150  # px of the design

    def __init__(self, look: Look) -> None:
        super().__init__()
        self._look = look
        self.setAccessibleName(
            "What it does with your readings: a picture of readings, the heat you want, and when it comes"
        )
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Expanding)

    def minimumSizeHint(self) -> QSize:
        return QSize(0, 0)

    def paintEvent(self, _event: QPaintEvent) -> None:
        if self.height() < px(self._LEAST):
            return
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        theme = self._look.theme
        head = px(34)
        room = QRectF(0, head, self.width(), self.height() - head - px(4))

        def at(point: tuple[float, float]) -> QPointF:
            return QPointF(room.left() + point[0] * room.width(), room.top() + point[1] * room.height())

        def path(points: tuple[tuple[float, float], ...]) -> QPainterPath:
            made = QPainterPath(at(points[0]))
            for point in points[1:]:
                made.lineTo(at(point))
            return made

        def say(text: str, point: tuple[float, float], ink: str, weight: int = 400) -> None:
            painter.setFont(font(18, weight))
            painter.setPen(QColor(ink))
            painter.drawText(at(point), text)

        painter.setFont(font(20, 600))
        painter.setPen(QColor(theme.ink))
        painter.drawText(QPointF(0, px(22)), "What it does with your readings")
        band = QRectF(at((0, _BAND[0])), at((1, _BAND[1])))
        painter.fillRect(QRectF(band.left(), band.top(), at((_READ[-1][0], 0)).x(), band.height()), QColor(theme.band))
        fan = path(_HIGHEST)
        for point in reversed(_LOWEST):
            fan.lineTo(at(point))
        painter.fillPath(fan, colour(theme.ink, 33))
        painter.setPen(QPen(QColor(theme.verdigris), 1))
        for edge in (band.top(), band.bottom()):
            painter.drawLine(QPointF(band.left(), edge), QPointF(band.right(), edge))
        painter.setPen(QPen(QColor(theme.ink), 2.4))
        painter.setBrush(Qt.BrushStyle.NoBrush)
        painter.drawPath(path(_READ))
        dashed = QPen(QColor(theme.ink), 2.4)
        dashed.setDashPattern([3, 2])
        painter.setPen(dashed)
        painter.drawPath(path(_AHEAD))
        painter.setPen(QPen(QColor(theme.ink), 2))
        painter.setBrush(QColor(theme.ground))
        for point in _READ:
            painter.drawEllipse(at(point), px(5), px(5))
        now = at((_READ[-1][0] + 0.01, 0)).x()
        painter.setPen(QPen(QColor(theme.ink), 1.6))
        painter.drawLine(QPointF(now, room.top()), QPointF(now, room.bottom()))
        painter.setPen(QPen(QColor(theme.verdigris), px(10), Qt.PenStyle.SolidLine, Qt.PenCapStyle.RoundCap))
        earliest, likely, latest = (at((share, _BAND[1])) for share in _ARRIVAL)
        painter.drawLine(earliest, latest)
        painter.setPen(QPen(QColor(theme.verdigris), 4))
        painter.drawEllipse(likely, px(8), px(8))
        low = QFontMetricsF(font(18)).height() / room.height()
        say("the heat you want", (0.006, (_BAND[0] + _BAND[1]) / 2 + low / 4), theme.verdigris, 600)
        say("when it comes, and how sure", (_ARRIVAL[0] + 0.03, _BAND[1] + low * 1.2), theme.verdigris, 600)
        say("you read and type", (0.18, 0.94), theme.soft)
        say("now", (_READ[-1][0] + 0.02, 0.99), theme.soft)
        say("what may happen next", (0.61, 0.94), theme.soft)
