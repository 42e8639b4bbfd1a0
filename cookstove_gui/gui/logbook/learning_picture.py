"""Whether the projections get better: length of a window and typical miss by session, and how many of ten held."""

from collections.abc import Sequence

from PySide6.QtCore import QPointF, QRectF
from PySide6.QtGui import QColor, QPainter, QPen, QPolygonF

from cookstove_gui.forecast.learning.record_by_session import MEANT, Judged, RecordBySession
from cookstove_gui.gui.widgets.look import Look
from cookstove_gui.gui.widgets.pen import LEFT, RIGHT, draw_line, draw_words
from cookstove_gui.gui.widgets.picture import Picture
from cookstove_gui.gui.widgets.steps import px
from cookstove_gui.gui.widgets.type import PLACE, SMALL
from cookstove_gui.phrases.edge import local_day, short_date
from cookstove_gui.phrases.logbook.record import moved_words

_PLOT = 120  # px of the design: one small plot with its heading
_HEADING, _NUMBER = 26, 20  # heights
_RINGS = 26  # one line of rings


class LearningPicture(Picture):
    """Two small plots, and three lines of ten rings."""

    def __init__(self, look: Look) -> None:
        super().__init__("learning_picture", look, (330, 2 * _PLOT + 42 + 3 * _RINGS))
        self._found: RecordBySession | None = None
        self.values = self._table

    def show_record(self, found: RecordBySession | None, said: str) -> None:
        """Draw a record."""
        self._found = found
        self.setAccessibleName(said)
        self.update()

    def draw(self, painter: QPainter, whole: QRectF) -> None:
        """The plots, then the rings."""
        found = self._found
        if found is None or not found.sessions:
            return
        lengths = tuple(one.length_min for one in found.sessions)
        misses = tuple(one.miss_min for one in found.sessions if one.miss_min is not None)
        self._plot(painter, QRectF(whole.left(), whole.top(), whole.width(), px(_PLOT)), "Length of a window", lengths)
        for one, side in ((found.sessions[0], LEFT), (found.sessions[-1], RIGHT)):
            below = QRectF(whole.left(), whole.top() + px(_PLOT - 19), whole.width(), px(18))
            day = short_date(local_day(one.at, one.offset_minutes))
            draw_words(painter, below, day, self.look.theme.soft, side=side, size=SMALL)
        second = QRectF(whole.left(), whole.top() + px(_PLOT), whole.width(), px(_PLOT))
        self._plot(painter, second, "Typical miss", misses)
        top = whole.top() + px(2 * _PLOT + 8)
        theme = self.look.theme
        draw_words(
            painter,
            QRectF(whole.left(), top, whole.width(), px(26)),
            "Held, of each ten",
            theme.ink,
            side=LEFT,
            size=PLACE,
            weight=600,
        )
        for place, (name, judged) in enumerate(self._lines(found)):
            self._rings(
                painter, QRectF(whole.left(), top + px(30 + _RINGS * place), whole.width(), px(_RINGS)), name, judged
            )

    @staticmethod
    def _lines(found: RecordBySession) -> list[tuple[str, Judged | None]]:
        if found.later_from is None or not found.earlier.windows:
            return [("all", found.all), ("meant", None)]
        since = short_date(local_day(found.later_from, found.sessions[-1].offset_minutes))
        return [(f"before {since}", found.earlier), ("since", found.later), ("meant", None)]

    def _plot(self, painter: QPainter, box: QRectF, name: str, values: Sequence[float]) -> None:
        theme = self.look.theme
        heading = QRectF(box.left(), box.top(), box.width(), px(_HEADING))
        draw_words(painter, heading, name, theme.ink, side=LEFT, size=PLACE, weight=600)
        draw_words(painter, heading, moved_words(tuple(values)), theme.ink, side=RIGHT, size=PLACE, weight=600)
        foot, top = box.bottom() - px(20), heading.bottom() + px(_NUMBER)  # the highest has its number above it
        draw_line(painter, theme.line, 1.2, QPointF(box.left(), foot), QPointF(box.right(), foot))
        if not values:
            return
        most = max(max(values), 1.0)
        across = box.width() - px(12)
        points = [
            QPointF(box.left() + px(6) + across * place / max(len(values) - 1, 1), foot - (foot - top) * value / most)
            for place, value in enumerate(values)
        ]
        for point in points:
            draw_line(painter, theme.faint, px(6), QPointF(point.x(), foot - 1), point)
        painter.setPen(QPen(QColor(theme.ink), 1.8))
        painter.drawPolyline(QPolygonF(points))
        painter.setBrush(QColor(theme.ground))
        for point in points:
            painter.drawEllipse(point, px(4), px(4))
        peak = points[max(range(len(values)), key=lambda place: values[place])]
        label = QRectF(min(peak.x() + px(8), box.right() - px(40)), peak.y() - px(_NUMBER), px(40), px(_NUMBER))
        draw_words(painter, label, f"{most:.0f}", theme.soft, side=LEFT, size=SMALL)

    def _rings(self, painter: QPainter, box: QRectF, name: str, judged: Judged | None) -> None:
        theme = self.look.theme
        share = MEANT if judged is None else judged.held / max(judged.windows, 1)
        ten = round(10 * share)
        ink = theme.soft if judged is None else theme.ink
        draw_words(painter, QRectF(box.left(), box.top(), px(130), box.height()), name, ink, side=LEFT, size=PLACE)
        draw_words(painter, box, str(ten), ink, side=RIGHT, size=PLACE, weight=600)
        left, room = box.left() + px(134), box.width() - px(134 + 30)
        for place in range(10):
            painter.setPen(QPen(QColor(theme.verdigris), 1.6))
            full = theme.good if judged is None else theme.verdigris
            painter.setBrush(QColor(full if place < ten else theme.ground))
            radius = min(px(7.5), room / 23)
            painter.drawEllipse(QPointF(left + room * (place + 0.5) / 10, box.center().y()), radius, radius)

    def _table(self) -> str:
        lines = ["session\tlength of a window min\ttypical miss min"]
        for one in self._found.sessions if self._found else ():
            miss = "" if one.miss_min is None else f"{one.miss_min:.1f}"
            lines.append(f"{one.title}, {local_day(one.at, one.offset_minutes)}\t{one.length_min:.1f}\t{miss}")
        return "\n".join(lines) + "\n"
