"""The table of differences: the first session in numbers, the others as what they differ by."""

from PySide6.QtCore import QPointF, QRectF, QSize
from PySide6.QtGui import QColor, QFontMetricsF, QPainter

from cookstove_gui.cooking.fires.comparing import Figure, differs_most
from cookstove_gui.desk.logbook.comparing import Compared
from cookstove_gui.gui.logbook.marks import paint_mark
from cookstove_gui.gui.widgets.look import Look
from cookstove_gui.gui.widgets.pen import LEFT, RIGHT, draw_line, draw_words
from cookstove_gui.gui.widgets.picture import Picture
from cookstove_gui.gui.widgets.steps import px
from cookstove_gui.gui.widgets.type import PLACE, SMALL, font
from cookstove_gui.phrases.logbook.compare import difference_words, figure_name, figure_words, unlike

_ROW, _HEAD = 34, 48  # px of the design
_NAME, _COLUMN = 124, 78


class DifferenceTable(Picture):
    """Rows of figures, one column a session."""

    def __init__(self, look: Look) -> None:
        super().__init__("difference_table", look, (_NAME + 2 * _COLUMN, 200))
        self._found: Compared | None = None
        self._unit = "F"
        self.values = self._table

    def show_compared(self, found: Compared, unit: str) -> None:
        """Show the figures of these sessions."""
        self._found, self._unit = found, unit
        self.setAccessibleName("Differences: " + "; ".join(", ".join(row) for row in self.rows()))
        self.updateGeometry()
        self.update()

    def minimumSizeHint(self) -> QSize:
        """As many columns and rows as there are."""
        columns = len(self._found.sessions) if self._found else 2
        rows = len(self._found.found.figures) if self._found else 4
        return QSize(px(_NAME + _COLUMN * columns), px(_HEAD + _ROW * rows + 6))

    @property
    def _is_today_first(self) -> bool:
        return self._found is not None and self._found.sessions[0].coming is not None

    def rows(self) -> list[tuple[str, ...]]:
        """The words of the table."""
        found = self._found
        if found is None:
            return []
        return [
            (
                figure_name(figure, found.band),
                figure_words(figure, values[0], self._unit, likely=figure in found.likely and self._is_today_first),
                *(difference_words(figure, values[0], value, self._unit) for value in values[1:]),
            )
            for figure, values in found.found.figures.items()
        ]

    def draw(self, painter: QPainter, whole: QRectF) -> None:
        """Heads, hairlines, words; on plate what differs most."""
        found, theme = self._found, self.look.theme
        if found is None:
            return
        wide = (whole.width() - px(_NAME)) / max(len(found.sessions), 1)
        for place, one in enumerate(found.sessions):
            box = QRectF(px(_NAME) + wide * place, 0, wide, px(_HEAD))
            below = box.adjusted(0, px(18), 0, 0)
            draw_words(painter, below, one.name, theme.ink, side=RIGHT, size=PLACE, weight=600)
            paint_mark(painter, place, QPointF(box.right() - px(9), px(11)), theme, size=0.9)
        draw_line(painter, theme.ink, 1.4, QPointF(0, px(_HEAD)), QPointF(whole.right(), px(_HEAD)))
        most = self._marked(found)
        for number, (figure, row) in enumerate(zip(found.found.figures, self.rows(), strict=True)):
            line = QRectF(0, px(_HEAD + _ROW * number), whole.width(), px(_ROW))
            weight = 600 if figure is most else 400
            if figure is most:
                painter.fillRect(line.adjusted(0, 1, 0, 0), QColor(theme.plate))
            draw_words(painter, line.adjusted(px(4), 0, 0, 0), row[0], theme.ink, side=LEFT, size=PLACE, weight=weight)
            for place, words in enumerate(row[1:]):
                box = QRectF(px(_NAME) + wide * place, line.top(), wide - px(2), line.height())
                size = PLACE if QFontMetricsF(font(PLACE, weight)).horizontalAdvance(words) < wide - px(6) else SMALL
                ink = theme.soft if place == 0 else theme.ink
                draw_words(painter, box, words, ink, side=RIGHT, size=size, weight=weight if place else 400)
            foot = line.bottom()
            draw_line(painter, theme.faint, 1.0, QPointF(0, foot), QPointF(whole.right(), foot))

    @staticmethod
    def _marked(found: Compared) -> Figure | None:
        other = unlike(found.found)
        return None if other is None else differs_most(found.found, 0, other)

    def _table(self) -> str:
        names = [one.name for one in self._found.sessions] if self._found else []
        return "\n".join("\t".join(row) for row in [("", *names), *self.rows()]) + "\n"
