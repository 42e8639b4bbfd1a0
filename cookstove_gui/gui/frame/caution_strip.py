"""The cautions that are due: each in full until it has been read, in a strip of one height, then folded to a title."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from PySide6.QtCore import QPointF, QRectF, QSize, Qt, Signal
from PySide6.QtGui import QColor, QFont, QFontMetricsF, QPainter, QPaintEvent, QResizeEvent
from PySide6.QtWidgets import QHBoxLayout, QLabel, QSizePolicy, QWidget

from cookstove_gui.desk.heading import shown_cautions
from cookstove_gui.gui.widgets.key import Key
from cookstove_gui.gui.widgets.signs import paint_caution
from cookstove_gui.gui.widgets.steps import px
from cookstove_gui.gui.widgets.tips import plain_tip
from cookstove_gui.gui.widgets.type import BODY, font

if TYPE_CHECKING:
    from cookstove_gui.cooking.safety.caution import Caution
    from cookstove_gui.desk import Changed
    from cookstove_gui.gui.desk_link import DeskLink
    from cookstove_gui.gui.widgets.look import Look

HIGH = 62  # px of the design
_EDGE = 5
_WORDS_AT = 54  # from the left
_SIGN = 28
_GO_ON, _IS_READ = "Read on", "I read it"  # what is on the key
_TITLE, _WHAT, _DECIDES = "title", "what", "decides"  # kinds of words
_LINES = 2  # of a page
_STOPS, _MORE = (".", ",", ";", ":"), " …"


@dataclass(frozen=True, slots=True)
class _Line:
    words: str
    kind: str


class CautionStrip(QWidget):
    """The most urgent unread caution first, two lines at a time; Ctrl+W goes on, or shows them all again."""

    turned = Signal()  # what it shows, or whether it shows anything, has changed

    def __init__(self, link: DeskLink, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._desk = link.desk
        self._look = look
        self._read: set[tuple[str, str]] = set()  # identities of the cautions that were read
        self._held: tuple[Caution, ...] = ()
        self._page = 0  # of the lines of the caution shown
        self.setObjectName("caution_strip")
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        self._words = _TwoLines(look)
        self._press = Key(_IS_READ, "Ctrl W")
        self._press.setObjectName("caution_press")
        self._press.clicked.connect(self.turn)
        row = QHBoxLayout(self)
        row.addWidget(self._words, 1)
        row.addWidget(self._press)
        self._words.resized.connect(self._show_words)
        look.changed.connect(self._space)
        link.changed.connect(self._show)
        self._space()
        self._show_cautions()

    @property
    def unread(self) -> tuple[Caution, ...]:
        """The cautions that hold and were not read yet, the most urgent first."""
        return tuple(caution for caution in self._held if caution.identity not in self._read)

    @property
    def folded(self) -> str:
        """Titles of the cautions that hold and were read; empty while one is unread."""
        titles = [caution.name for caution in self._held]
        if self.unread or not titles:
            return ""
        return ", ".join(titles) if len(titles) < 3 else f"{titles[0]} and {len(titles) - 1} more"

    @property
    def lines(self) -> tuple[tuple[str, ...], ...]:
        """The words of the caution shown, two lines for each press."""
        return tuple(tuple(line.words for line in page) for page in self._words.pages)

    def sizeHint(self) -> QSize:
        """Always of one height."""
        return QSize(600, px(HIGH))

    def turn(self) -> None:
        """Go on to what was not read yet; when all was read, show it again."""
        if not self.unread:
            self._read.clear()
        elif self._page + 1 < len(self._words.pages):
            self._page += 1
        else:
            self._read.add(self.unread[0].identity)
            self._page = 0
        if not self.unread and self._press.hasFocus():
            self._hand_on_keyboard()
        self._show_cautions()

    def _hand_on_keyboard(self) -> None:
        """To the page below, not to the names of pages, where another Enter would leave it."""
        heading = self.parentWidget()
        at: QWidget | None = self._press.nextInFocusChain()
        while at is not None and at is not self._press:
            takes = at.isVisible() and at.isEnabled() and at.focusPolicy() & Qt.FocusPolicy.TabFocus
            if takes and not (heading is not None and heading.isAncestorOf(at)):
                at.setFocus(Qt.FocusReason.TabFocusReason)
                return
            at = at.nextInFocusChain()

    def _show(self, changed: Changed) -> None:
        if changed.standing or changed.session or changed.stove or changed.settings:
            self._show_cautions()

    def _show_cautions(self) -> None:
        self._held = shown_cautions(self._desk)
        self._read &= {caution.identity for caution in self._held}  # one that comes back is shown again
        unread = self.unread
        if unread and unread[0] != self._words.caution:
            self._page = 0
        self._words.show_caution(unread[0] if unread else None)
        self._show_words()
        self.setVisible(bool(unread))
        self.turned.emit()

    def _show_words(self) -> None:
        self._page = min(self._page, max(len(self._words.pages) - 1, 0))
        self._words.show_page(self._page)
        caution = self._words.caution
        if caution is not None:
            goes_on = self._page + 1 < len(self._words.pages)
            self._press.setText(_GO_ON if goes_on else _IS_READ)
            self._press.setAccessibleName(f"Read on: {caution.name}" if goes_on else f"I have read: {caution.name}")
            self._press.setToolTip(f"{self._press.accessibleName()} (Ctrl+W)")

    def _space(self) -> None:
        row = self.layout()
        assert row is not None
        row.setContentsMargins(px(_WORDS_AT), 0, px(8), 0)
        row.setSpacing(px(12))
        self._hold_width_of_press()
        self._words.lay_out()

    def _hold_width_of_press(self) -> None:
        """As wide as its longer word: lines broken otherwise after a press would lose words."""
        was, wide = self._press.text(), 0
        for word in (_GO_ON, _IS_READ):
            self._press.setText(word)
            wide = max(wide, self._press.sizeHint().width())
        self._press.setText(was)
        self._press.setFixedWidth(wide)

    def paintEvent(self, _event: QPaintEvent) -> None:
        """The ground, the edge and the sign."""
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        theme = self._look.theme
        painter.fillRect(self.rect(), QColor(theme.caution_ground))
        painter.fillRect(QRectF(0, 0, px(_EDGE), self.height()), QColor(theme.ember))
        side = px(_SIGN)
        left = px(_EDGE) + (px(_WORDS_AT - _EDGE) - side) / 2
        box = QRectF(left, (self.height() - side) / 2, side, side)
        paint_caution(painter, box, QColor(theme.ember), QColor(theme.caution_ground))


class _TwoLines(QLabel):
    """A caution broken into pages of two lines; who decides stands on lines of its own."""

    resized = Signal()

    def __init__(self, look: Look) -> None:
        super().__init__()
        self._look = look
        self.caution: Caution | None = None
        self.pages: tuple[tuple[_Line, ...], ...] = ()
        self._shown = 0
        self.setObjectName("caution")
        self.setTextFormat(Qt.TextFormat.PlainText)
        self.setSizePolicy(QSizePolicy.Policy.Ignored, QSizePolicy.Policy.Expanding)

    def show_caution(self, caution: Caution | None) -> None:
        self.caution = caution
        self.setText("" if caution is None else f"{caution.name}. {caution.text}")
        self.setAccessibleName("" if caution is None else f"Caution: {caution.name}. {caution.text}")
        self.setToolTip(plain_tip(self.text()))
        self.lay_out()

    def show_page(self, number: int) -> None:
        self._shown = number
        self.update()

    def lay_out(self) -> None:
        """Break the words for the width there is."""
        self.pages = ()
        if self.caution is not None and self.width() > px(_WORDS_AT):
            what = self.caution.text.removesuffix(self.caution.decides).strip()
            title = _advance(f"{self.caution.name}. ", _face(_TITLE))
            self.pages = _paged(((_WHAT, what), (_DECIDES, self.caution.decides)), title, self.width())
        self.update()

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        self.lay_out()
        self.resized.emit()

    def paintEvent(self, _event: QPaintEvent) -> None:
        if self.caution is None or self._shown >= len(self.pages):
            return
        painter = QPainter(self)
        theme = self._look.theme
        lines = self.pages[self._shown]
        apart = px(25)
        base = (self.height() + px(14) - apart * (len(lines) - 1)) / 2
        left = 0.0
        if self._shown == 0:
            title = f"{self.caution.name}. "
            _write(painter, _face(_TITLE), theme.ember, left, base, title)
            left = _advance(title, _face(_TITLE))
        for line in lines:
            _write(
                painter, _face(line.kind), theme.soft if line.kind == _DECIDES else theme.ink, left, base, line.words
            )
            left, base = 0.0, base + apart


def _face(kind: str) -> QFont:
    return {_TITLE: font(BODY, 600), _WHAT: font(BODY), _DECIDES: font(18)}[kind]


def _write(painter: QPainter, face: QFont, ink: str, left: float, base: float, words: str) -> None:
    painter.setFont(face)
    painter.setPen(QColor(ink))
    painter.drawText(QPointF(left, base), words)


def _advance(words: str, face: QFont) -> float:
    return QFontMetricsF(face).horizontalAdvance(words)


def _paged(told: tuple[tuple[str, str], ...], title: float, wide: float) -> tuple[tuple[_Line, ...], ...]:
    """Kinds and words in pages of two lines, the first line beside the title."""
    pages: list[tuple[_Line, ...]] = []
    held: list[_Line] = []
    for kind, words in told:
        left = words.split()
        while left:
            widths = (wide - (0.0 if pages or held else title), wide)[: _LINES - len(held)]
            lines, left = _filled(left, _face(kind), widths)
            held += [_Line(line, kind) for line in lines]
            if left or len(held) == _LINES:
                pages.append(tuple(held))
                held = []
    return (*pages, tuple(held)) if held else tuple(pages)


def _filled(words: list[str], face: QFont, widths: tuple[float, ...]) -> tuple[list[str], list[str]]:
    """The lines that are filled, and the words left over.

    Where words are left over the last line ends at a stop, for half of “keep children out, and cook nothing yet” says
    the opposite; an ellipsis follows where that is no full stop.
    """
    metrics = QFontMetricsF(face)
    left = list(words)
    lines: list[str] = []
    for wide in widths:
        count = 1
        while count < len(left) and metrics.horizontalAdvance(" ".join(left[: count + 1])) <= wide:
            count += 1
        if len(lines) + 1 == len(widths) and count < len(left):
            count = _to_a_stop(left, count, metrics, wide)
        line, left = " ".join(left[:count]), left[count:]
        lines.append(line)
        if not left:
            break
    if left and not lines[-1].endswith("."):
        lines[-1] += _MORE
    return lines, left


def _to_a_stop(words: list[str], most: int, metrics: QFontMetricsF, wide: float) -> int:
    """How many of the words, up to `most`, the line takes.

    To the end of a sentence in its second half, else to its last stop, else what leaves room for the ellipsis.
    """
    fitting = [
        count
        for count in range(most, 0, -1)
        if words[count - 1].endswith(".") or metrics.horizontalAdvance(" ".join(words[:count]) + _MORE) <= wide
    ]
    ends = [count for count in fitting if words[count - 1].endswith(".") and 2 * count >= most]
    stops = [count for count in fitting if words[count - 1].endswith(_STOPS)]
    return next(iter(ends or stops or fitting), 1)
