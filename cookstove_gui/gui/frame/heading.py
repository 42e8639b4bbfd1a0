"""The heading over every page: the clock, the one thing to do now in one line, and one line behind it."""

from PySide6.QtCore import QRectF, QSize
from PySide6.QtGui import QColor, QFontMetricsF, QPainter, QPaintEvent, QResizeEvent
from PySide6.QtWidgets import QHBoxLayout, QLabel, QSizePolicy, QVBoxLayout, QWidget

from cookstove_gui.desk import Changed
from cookstove_gui.desk.heading import shown_clock, shown_detail_rungs, shown_rungs
from cookstove_gui.gui.desk_link import DeskLink
from cookstove_gui.gui.frame.caution_strip import CautionStrip
from cookstove_gui.gui.frame.page_words import PageWords, WindowWords, on_key
from cookstove_gui.gui.widgets.key import Key
from cookstove_gui.gui.widgets.look import Look
from cookstove_gui.gui.widgets.one_line import OneLine
from cookstove_gui.gui.widgets.signs import SIDE, Sign, paint_diamond
from cookstove_gui.gui.widgets.steps import px
from cookstove_gui.gui.widgets.theme import SOFT
from cookstove_gui.gui.widgets.type import ROLES, font, set_role

_ROW = 44  # px of the design, each of two rows
_SIDE, _ABOVE, _BELOW = 16, 4, 4  # margins
_AFTER_CLOCK = 18
_ROOMY = 1200  # from which width on the words name their keys


class Heading(QWidget):
    """Two rows; an unread caution takes the place of the second."""

    def __init__(self, link: DeskLink, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._desk = link.desk
        self.setObjectName("next_line")
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        self.pages = PageWords(look)
        self.window_words = WindowWords(look)
        self.cautions = CautionStrip(link, look)
        self._build(look)
        self.cautions.turned.connect(self._show_cautions)
        look.changed.connect(self._space)
        link.changed.connect(self._show)
        link.time_passed.connect(self._show_clock)
        on_key("Ctrl+W", self, self.cautions.turn)
        self._show_clock()
        self._show_words()
        self._show_cautions()
        self._space()

    def _build(self, look: Look) -> None:
        self._clock = QLabel()
        self._clock.setObjectName("clock")
        self._clock.setAccessibleDescription("The time of day")
        set_role(self._clock, "clock")
        self._headline = OneLine((27, 24), 600)
        self._headline.setObjectName("headline")
        self._detail = _Detail(look)
        self._detail.setObjectName("detail")
        self._caution_sign = Sign("caution", look)
        self._folded = Key("", "Ctrl W")
        self._folded.setObjectName("caution_folded")
        set_role(self._folded, "caution")
        self._folded.clicked.connect(self.cautions.turn)
        self._first = QHBoxLayout()
        self._first.addWidget(self._clock)
        self._first.addWidget(self._headline, 1)
        self._first.addWidget(self.pages)
        self._second = QWidget()
        self._second_row = QHBoxLayout(self._second)
        self._second_row.addWidget(self._detail, 1)
        for part in (self._caution_sign, self._folded, self.window_words):
            self._second_row.addWidget(part)
        column = QVBoxLayout(self)
        column.setSpacing(0)
        column.addLayout(self._first)
        column.addWidget(self._second)
        column.addWidget(self.cautions)
        column.addStretch(1)

    def sizeHint(self) -> QSize:
        """92 high, 26 more with an unread caution."""
        second = 70 if self.cautions.unread else _ROW
        return QSize(1000, px(_ABOVE + _ROW + second + _BELOW))

    def minimumSizeHint(self) -> QSize:
        """As high as it is, as narrow as it must be."""
        return QSize(0, self.sizeHint().height())

    def resizeEvent(self, event: QResizeEvent) -> None:
        """The names of keys go first where it is narrow."""
        super().resizeEvent(event)
        self._set_tight()

    def _set_tight(self) -> None:
        for words in (self.pages, self.window_words):
            words.set_tight(self.width() < px(_ROOMY))

    def _space(self) -> None:
        column = self.layout()
        assert column is not None
        column.setContentsMargins(px(_SIDE), px(_ABOVE), px(_SIDE), 0)
        self._first.setSpacing(px(_AFTER_CLOCK))
        self._clock.setFixedHeight(px(_ROW))
        self._second.setFixedHeight(px(_ROW))
        self.cautions.setFixedHeight(self.cautions.sizeHint().height())
        self._second_row.setSpacing(px(6))
        self._indent()
        self._set_tight()
        self.setFixedHeight(self.sizeHint().height())

    def _indent(self) -> None:
        wide = QFontMetricsF(font(*ROLES["clock"])).horizontalAdvance(self._clock.text())
        self._clock.setFixedWidth(round(wide) + 2)
        self._second_row.setContentsMargins(self._clock.width() + px(_AFTER_CLOCK), 0, 0, 0)

    def _show(self, changed: Changed) -> None:
        if changed.standing or changed.session or changed.stove or changed.settings or changed.supper:
            self._show_words()
        self._show_clock()

    def _show_clock(self) -> None:
        self._clock.setText(shown_clock(self._desk))
        self._indent()

    def _show_words(self) -> None:
        self._headline.show_rungs(shown_rungs(self._desk))
        rungs = shown_detail_rungs(self._desk)
        self._detail.show_rungs(rungs)

    def _show_cautions(self) -> None:
        folded, unread = self.cautions.folded, bool(self.cautions.unread)
        self._second.setVisible(not unread)
        self._caution_sign.setVisible(bool(folded))
        self._folded.setVisible(bool(folded))
        self._folded.setText(folded)
        self._folded.setAccessibleName(f"Cautions that still hold: {folded}. Show them in full again")
        self._folded.setToolTip("Show the cautions in full again (Ctrl+W)")
        self.setFixedHeight(self.sizeHint().height())


class _Detail(OneLine):
    """The line behind the heading; a diamond stands before what is worth reading."""

    def __init__(self, look: Look) -> None:
        super().__init__(colour=SOFT)
        self._look = look

    def lead(self, words: str) -> float:
        return px(SIDE + 6) if words.startswith("Worth") else 0.0

    def paintEvent(self, event: QPaintEvent) -> None:
        super().paintEvent(event)
        if self.lead(self.text()):
            painter = QPainter(self)
            painter.setRenderHint(QPainter.RenderHint.Antialiasing)
            theme, side = self._look.theme, px(SIDE)
            box = QRectF(0, (self.height() - side) / 2, side, side)
            paint_diamond(painter, box, QColor(theme.ink), QColor(theme.ground))
