"""In how many sessions of a season each caution was due, as bars."""

from PySide6.QtCore import QRectF, QSize
from PySide6.QtGui import QColor, QFontMetricsF, QPainter

from cookstove_gui.desk.logbook.season_cautions import Counted
from cookstove_gui.gui.widgets.look import Look
from cookstove_gui.gui.widgets.pen import LEFT, draw_words
from cookstove_gui.gui.widgets.picture import Picture
from cookstove_gui.gui.widgets.steps import px
from cookstove_gui.gui.widgets.type import PLACE, font
from cookstove_gui.phrases.logbook.seasons import caution_words

_ROW, _BAR, _GAP = 30, 12, 14  # px of the design


class CautionBars(Picture):
    """One row a caution, the commonest first."""

    def __init__(self, look: Look) -> None:
        super().__init__("caution_bars", look, (330, _ROW))
        self._counted: Counted | None = None
        self.values = self._table

    def show_counted(self, found: Counted | None) -> None:
        """Draw these."""
        self._counted = found
        rows = found.cautions if found else ()
        self.setAccessibleName(
            "; ".join(f"{title}: {caution_words(number, found.sessions)}" for title, number in rows) if found else ""
        )
        self.updateGeometry()
        self.update()

    def minimumSizeHint(self) -> QSize:
        """As high as its rows."""
        return QSize(px(330), px(_ROW) * max(len(self._counted.cautions) if self._counted else 0, 1))

    def draw(self, painter: QPainter, whole: QRectF) -> None:
        """Title, bar, number."""
        found, theme = self._counted, self.look.theme
        if found is None or not found.cautions:
            return
        face = QFontMetricsF(font(PLACE))
        left = max(face.horizontalAdvance(title) for title, _ in found.cautions) + px(_GAP)
        words = max(face.horizontalAdvance(caution_words(number, found.sessions)) for _, number in found.cautions)
        room = max(whole.width() - left - words - px(2 * _GAP), px(40))
        for place, (title, number) in enumerate(found.cautions):
            line = QRectF(0, px(_ROW) * place, whole.width(), px(_ROW))
            draw_words(painter, line, title, theme.ink, side=LEFT, size=PLACE)
            wide = room * number / max(found.sessions, 1)
            bar = QRectF(left, line.center().y() - px(_BAR) / 2, max(wide, 2.0), px(_BAR))
            painter.fillRect(bar, QColor(theme.line))
            beside = QRectF(bar.right() + px(_GAP), line.top(), words + px(4), line.height())
            draw_words(painter, beside, caution_words(number, found.sessions), theme.soft, side=LEFT, size=PLACE)

    def _table(self) -> str:
        rows = self._counted.cautions if self._counted else ()
        return "\n".join(["caution\tsessions", *(f"{title}\t{number}" for title, number in rows)]) + "\n"
