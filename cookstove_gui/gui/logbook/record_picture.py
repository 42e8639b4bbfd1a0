"""Each window said about an hour ahead as a bar about what was likely, with the moment at which the heat came."""

from PySide6.QtCore import QPointF, QRectF, QSize, Qt
from PySide6.QtGui import QColor, QFontMetricsF, QPainter, QPen

from cookstove_gui.forecast.answers import RecordRow, Verdict
from cookstove_gui.forecast.learning.record_by_session import RecordBySession, SessionRecord
from cookstove_gui.forecast.learning.track_record import verdict
from cookstove_gui.gui.widgets.look import Look
from cookstove_gui.gui.widgets.pen import LEFT, draw_line, draw_words
from cookstove_gui.gui.widgets.picture import Picture
from cookstove_gui.gui.widgets.signs import paint_diamond
from cookstove_gui.gui.widgets.steps import px
from cookstove_gui.gui.widgets.type import PLACE, SMALL, font
from cookstove_gui.phrases.edge import local_day, short_date, weekday
from cookstove_gui.phrases.logbook.record import arrival_window, came_true

_LABEL = 186  # px of the design, as all here: room for day and title
_SIGNS, _HEAD = 28, 58  # the line of signs, and it with the scale below it
_ROW, _BAR = 11, 7
_LEAST_GROUP, _ROOM = 50, 16
_SIDE = 60.0  # min either side of what was said
_UNITS = ("40 min sooner", "40 min later")
_TICKS = {-40: _UNITS[0], -20: "20", 20: "20", 40: _UNITS[1]}  # the bare ones are left out where it is narrow
_SAID = (("bar", "window, and when it came"), ("diamond", "came outside"), ("open", "still to come"))


class RecordPicture(Picture):
    """One row a window, gathered by session; 0 is what was said."""

    def __init__(self, look: Look) -> None:
        super().__init__("record_picture", look, (500, 120))
        self._found: RecordBySession | None = None
        self.values = self._table

    def show_record(self, found: RecordBySession | None, said: str) -> None:
        """Draw a record."""
        self._found = found
        self.setAccessibleName(said)
        self.updateGeometry()
        self.update()

    def minimumSizeHint(self) -> QSize:
        """As high as its rows."""
        groups = self._found.sessions if self._found else ()
        high = px(_HEAD) + px(4) + sum(_group_high(one) for one in groups)
        return QSize(px(500), high)

    def draw(self, painter: QPainter, whole: QRectF) -> None:
        """What the signs mean, the scale, the sessions."""
        if self._found is None:
            return
        _Drawing(painter, self.look, whole).draw(self._found.sessions)

    def _table(self) -> str:
        lines = ["session\tsaid at\theat\twindow\tcame"]
        for one in self._found.sessions if self._found else ():
            for row in one.rows:
                said_at = row.made_at.isoformat()
                lines.append(f"{row.session}\t{said_at}\t{row.band.name}\t{arrival_window(row)}\t{came_true(row)}")
        return "\n".join(lines) + "\n"


class _Drawing:
    def __init__(self, painter: QPainter, look: Look, whole: QRectF) -> None:
        self._painter, self._theme, self._whole = painter, look.theme, whole
        self._left, self._right = px(_LABEL), whole.right() - px(4)

    def _x(self, minutes: float) -> float:
        share = (min(max(minutes, -_SIDE), _SIDE) + _SIDE) / (2 * _SIDE)
        return self._left + share * (self._right - self._left)

    def draw(self, sessions: tuple[SessionRecord, ...]) -> None:
        theme = self._theme
        self._draw_signs(px(_SIGNS / 2))
        bottom = px(_HEAD) + sum(_group_high(one) for one in sessions)
        for minutes in (-60, *_TICKS, 60):
            x = self._x(minutes)
            draw_line(self._painter, theme.faint, 1.0, QPointF(x, px(_HEAD - 4)), QPointF(x, bottom))
        face = QFontMetricsF(font(SMALL))
        wide = 0.5 * (face.horizontalAdvance(_TICKS[-40]) + face.horizontalAdvance(_TICKS[-20])) + px(6)
        for minutes, words in _TICKS.items():
            if words in _UNITS or wide <= self._x(-20) - self._x(-40):
                self._tick(minutes, words, theme.soft, 400)
        self._tick(0.0, "as said", theme.verdigris, 600)
        pen = QPen(QColor(theme.verdigris), 1.4)
        pen.setDashPattern([2.0, 2.6])
        self._painter.setPen(pen)
        self._painter.drawLine(QPointF(self._x(0.0), px(_HEAD - 4)), QPointF(self._x(0.0), bottom))
        top = float(px(_HEAD))
        for one in reversed(sessions):  # the latest first, for the rest are seen by scrolling
            self._draw_session(one, top)
            top += _group_high(one)
            draw_line(self._painter, theme.faint, 1.0, QPointF(0, top), QPointF(self._right, top))

    def _tick(self, minutes: float, words: str, ink: str, weight: int) -> None:
        box = QRectF(self._x(minutes) - px(70), px(_SIGNS), px(140), px(_HEAD - _SIGNS - 6))
        draw_words(self._painter, box, words, ink, size=SMALL, weight=weight)

    def _draw_session(self, one: SessionRecord, top: float) -> None:
        theme, high = self._theme, _group_high(one)
        day = local_day(one.at, one.offset_minutes)
        middle = top + high / 2
        room = px(_LABEL - 12)
        day_box = QRectF(0, middle - px(23), room, px(22))
        draw_words(
            self._painter,
            day_box,
            f"{weekday(day)[:3]} {short_date(day)}",
            theme.ink,
            side=LEFT,
            size=PLACE,
            weight=600,
        )
        title = QFontMetricsF(font(SMALL)).elidedText(one.title, Qt.TextElideMode.ElideRight, room)
        draw_words(self._painter, QRectF(0, middle, room, px(22)), title, theme.soft, side=LEFT, size=SMALL)
        first = middle - 0.5 * px(_ROW) * len(one.rows)
        for place, row in enumerate(one.rows):
            self._draw_row(row, first + px(_ROW) * (place + 0.5))

    def _draw_row(self, row: RecordRow, level: float) -> None:
        theme, painter = self._theme, self._painter
        likely, found = row.likely_min or 0.0, verdict(row)
        start = self._x((row.enters_min.p10 or 0.0) - likely)
        open_end = row.enters_min.p90 is None
        end = self._right if open_end else self._x((row.enters_min.p90 or 0.0) - likely)
        half = px(_BAR) / 2
        bar = QRectF(start, level - half, max(end - start, px(_BAR)), 2 * half)
        is_open = found is Verdict.OPEN
        painter.setPen(QPen(QColor(theme.verdigris), 1.4) if is_open else Qt.PenStyle.NoPen)
        painter.setBrush(QColor(theme.ground if is_open else theme.good))
        painter.drawRoundedRect(bar, half, half)
        if found is Verdict.NOT_REACHED:
            self._outside(end, self._right - px(6), level)
        elif row.came_true_min is not None:
            came = self._x(row.came_true_min - likely)
            if found is Verdict.INSIDE:
                painter.setPen(Qt.PenStyle.NoPen)
                painter.setBrush(QColor(theme.ink))
                painter.drawEllipse(QPointF(came, level), px(3.5), px(3.5))
            else:
                self._outside(start if found is Verdict.EARLIER else end, came, level)

    def _outside(self, edge: float, came: float, level: float) -> None:
        draw_line(self._painter, self._theme.ink, 1.6, QPointF(edge, level), QPointF(came, level))
        side = px(16)
        box = QRectF(came - side / 2, level - side / 2, side, side)
        paint_diamond(self._painter, box, QColor(self._theme.ink), QColor(self._theme.ground))

    def _draw_signs(self, level: float) -> None:
        theme, painter = self._theme, self._painter
        letters = QFontMetricsF(font(SMALL))
        total = sum(_sign_room(kind) + letters.horizontalAdvance(words) + px(18) for kind, words in _SAID) - px(18)
        x = max(min(float(self._left), self._right - total), 0.0)
        for kind, words in _SAID:
            if kind == "diamond":
                box = QRectF(x, level - px(8), px(16), px(16))
                paint_diamond(painter, box, QColor(theme.ink), QColor(theme.ground))
            else:
                bar = QRectF(x, level - px(3.5), px(36), px(7))
                painter.setPen(QPen(QColor(theme.verdigris), 1.4) if kind == "open" else Qt.PenStyle.NoPen)
                painter.setBrush(QColor(theme.ground if kind == "open" else theme.good))
                painter.drawRoundedRect(bar, px(3.5), px(3.5))
                if kind == "bar":
                    painter.setBrush(QColor(theme.ink))
                    painter.drawEllipse(bar.center(), px(3.5), px(3.5))
            x += _sign_room(kind)
            wide = letters.horizontalAdvance(words)
            draw_words(painter, QRectF(x, level - px(12), wide, px(24)), words, theme.soft, side=LEFT, size=SMALL)
            x += wide + px(18)


def _sign_room(kind: str) -> int:
    return px(22) if kind == "diamond" else px(44)


def _group_high(one: SessionRecord) -> int:
    return max(px(_ROW) * len(one.rows) + px(_ROOM), px(_LEAST_GROUP))
