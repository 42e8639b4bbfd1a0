"""The first fires as hills on one scale of heat: readings as rings, limits over them, and under them the path."""

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QFontMetricsF, QLinearGradient, QPainter, QPen, QPolygonF
from PySide6.QtWidgets import QWidget

from cookstove_gui.cooking.fires.first_fires import Stage, cold_below
from cookstove_gui.desk.my_stove.first_fires import FirstFiresPicture, Hill
from cookstove_gui.desk.my_stove.picture_values import hills_values
from cookstove_gui.gui.widgets.look import Look
from cookstove_gui.gui.widgets.pen import LEFT, MIDDLE, RIGHT, draw_line, draw_words
from cookstove_gui.gui.widgets.picture import Picture
from cookstove_gui.gui.widgets.signs import paint_caution
from cookstove_gui.gui.widgets.steps import px
from cookstove_gui.gui.widgets.theme import colour
from cookstove_gui.gui.widgets.type import SMALL, font
from cookstove_gui.phrases.edge import day_and_month, short_date, weekday
from cookstove_gui.stove.drawn.heat_colours import ROOM, heat_colour
from cookstove_gui.units import degrees, kelvin

_LEFT = 44  # px of the design, for the numbers of the scale
_PATH = 86  # days and path, under the ground of the hills
_GAP = 16  # between the columns of stages, as the words under them stand
_TAIL_MIN = 45.0  # min after the last row, in which an old hill is drawn down to cold
_AHEAD_MIN = 150.0  # min of what is to come, at most
_TOP_HEAT = kelvin(720.0, "F")  # K, the top of the scale
_TICK_APART = 20  # between two numbers of the scale
_RING = 13  # radius of a stop of the path
_SHAPE = ((0.0, 0.0), (0.12, 0.25), (0.28, 0.8), (0.36, 1.0), (0.45, 0.9), (0.65, 0.45), (0.85, 0.18), (1.0, 0.08))


class FireHills(Picture):
    """A column for each stage; what did not count keeps its small hill beside the one that did."""

    def __init__(self, look: Look, parent: QWidget | None = None) -> None:
        super().__init__("fire_hills", look, (480, 190), parent)
        self._found: FirstFiresPicture | None = None
        self._unit, self._clock = "F", ""
        self.values = lambda: hills_values(self._found, self._unit) if self._found else ""

    def show_fires(self, found: FirstFiresPicture, unit: str, clock: str, words: str) -> None:
        """Draw the fires; `clock` is now, `words` say the picture."""
        self._found, self._unit, self._clock = found, unit, clock
        self.setAccessibleName(words)
        self.update()

    def columns(self) -> list[tuple[float, float]]:
        """Left edge and width of each stage's column, so that words can stand under it."""
        number = len(self._found.stages) if self._found else 1
        wide = (self.width() - px(_LEFT) - px(_GAP) * (number - 1)) / number
        return [(px(_LEFT) + place * (wide + px(_GAP)), wide) for place in range(number)]

    def draw(self, painter: QPainter, whole: QRectF) -> None:
        """Scale, hills, limits, path."""
        if self._found is not None:
            _Drawing(painter, self.look, self._unit, whole).draw(self._found, self.columns(), self._clock)


class _Drawing:
    def __init__(self, painter: QPainter, look: Look, unit: str, whole: QRectF) -> None:
        self._painter, self._theme, self._unit = painter, look.theme, unit
        self._whole = whole
        self._ground = whole.bottom() - px(_PATH)
        self._top = whole.top() + px(24)
        self._areas: list[QPolygonF] = []  # that hills and what is to come take up

    def _level(self, heat: float) -> float:
        share = (heat - ROOM) / (_TOP_HEAT - ROOM)
        return self._ground - (self._ground - self._top) * min(max(share, 0.0), 1.02)

    def draw(self, found: FirstFiresPicture, columns: list[tuple[float, float]], clock: str) -> None:
        self._stages = found.stages
        self._draw_scale()
        for place, (left, wide) in enumerate(columns):
            own = [hill for hill in found.hills if hill.place == place]
            if own:
                self._draw_hills(own, left, wide, clock)
            else:
                self._draw_to_come(found.stages[place], left, wide)
            self._draw_limits(found.stages[place], left, wide, done=place < found.done)
        self._draw_path(found, columns)

    def _draw_scale(self) -> None:
        ticks = (200.0, 400.0, 600.0) if self._unit == "F" else (100.0, 200.0, 300.0)
        for tick in ticks:
            level = self._level(kelvin(tick, self._unit))
            if self._level(cold_below()) - level < px(_TICK_APART):
                continue  # where there is little height
            box = QRectF(0, level - px(12), px(_LEFT - 8), px(24))
            self._text(box, f"{tick:.0f}", self._theme.soft, right=True)
            self._line(self._theme.line, 1.0, QPointF(px(_LEFT - 5), level), QPointF(px(_LEFT), level))
        box = QRectF(0, self._level(cold_below()) - px(12), px(_LEFT - 8), px(24))
        self._text(box, "cold", self._theme.soft, right=True)
        self._line(self._theme.line, 1.4, QPointF(px(_LEFT), self._ground), QPointF(self._whole.right(), self._ground))

    def _draw_hills(self, hills: list[Hill], left: float, wide: float, clock: str) -> None:
        lasts = [hill.minutes + self._after(hill) for hill in hills]
        scale = (wide - px(12) * (len(hills) - 1)) / max(sum(lasts), 1.0)
        day = None
        for hill, last in zip(hills, lasts, strict=True):
            self._draw_hill(hill, left, scale)
            said = "later that day" if hill.day == day else f"{weekday(hill.day)[:3]} {day_and_month(hill.day)}"
            box = QRectF(left, self._ground + px(4), max(last * scale, px(60)), px(24))
            if hill.coming is not None:
                plate = self._draw_now(left + hill.minutes * scale, clock)
                rungs = (said, day_and_month(hill.day), short_date(hill.day))
                said, at = self._beside_plate(rungs, left, plate)
                box.moveLeft(at)
            self._text(box, said, self._theme.soft, left=hill.coming is not None)
            day = hill.day
            left += last * scale + px(12)

    def _beside_plate(self, rungs: tuple[str, ...], left: float, plate: QRectF) -> tuple[str, float]:
        """The longest way to say the day that stands before the clock of now or behind it, and where."""
        for said in rungs:
            wide = QFontMetricsF(font(SMALL)).horizontalAdvance(said)
            if left + wide <= plate.left() - px(6):
                return said, left
            if plate.right() + px(6) + wide <= self._whole.right():
                return said, plate.right() + px(6)
        return "", left

    def _after(self, hill: Hill) -> float:
        if hill.coming is None:
            return _TAIL_MIN
        cold = hill.coming.cold_min.p50
        return min(_AHEAD_MIN if cold is None else max(1.2 * cold, _TAIL_MIN), _AHEAD_MIN)

    def _draw_hill(self, hill: Hill, left: float, scale: float) -> None:
        points = [(0.0, ROOM), *hill.rings]
        if hill.coming is None:
            points.append((hill.minutes + _TAIL_MIN, min(cold_below(), points[-1][1])))
        else:
            points.append((hill.minutes, hill.coming.middle[0]))
        edge = [QPointF(left + minute * scale, self._level(heat)) for minute, heat in points]
        across = edge[-1].x() - edge[0].x()
        gradient = QLinearGradient(edge[0], QPointF(edge[-1].x(), edge[0].y()))
        for (_, heat), place in zip(points, edge, strict=True):
            gradient.setColorAt(min((place.x() - left) / max(across, 1.0), 1.0), QColor(heat_colour(heat)))
        self._painter.setPen(Qt.PenStyle.NoPen)
        self._painter.setBrush(gradient)
        foot = [QPointF(edge[-1].x(), self._ground), QPointF(left, self._ground)]
        self._areas.append(QPolygonF([*edge, *foot]))
        self._painter.drawPolygon(self._areas[-1])
        self._painter.setPen(QPen(QColor(self._theme.ink), 2.2))
        self._painter.setBrush(Qt.BrushStyle.NoBrush)
        self._painter.drawPolyline(QPolygonF(edge))
        if hill.coming is not None:
            self._draw_coming(hill, edge[-1].x(), scale)
        self._painter.setPen(QPen(QColor(self._theme.ink), 2.0))
        self._painter.setBrush(QColor(self._theme.ground))
        for minute, heat in hill.rings:
            self._painter.drawEllipse(QPointF(left + minute * scale, self._level(heat)), px(5), px(5))
        if hill.rings and hill.hottest is not None:
            minute, heat = max(hill.rings, key=lambda ring: ring[1])
            self._name_peak(hill, QPointF(left + minute * scale, self._level(heat)), edge)

    def _name_peak(self, hill: Hill, peak: QPointF, edge: list[QPointF]) -> None:
        """The hottest reading: above its ring, or before it where a limit lies just above."""
        name = hill.hottest_spot.removeprefix("top_").replace("_", " ")
        number = f"{degrees(hill.hottest or 0.0, self._unit):.0f}"
        most = self._stages[hill.place].top_at_most
        roof = self._whole.top() if most is None else self._level(most)
        across, left = edge[-1].x() - edge[0].x(), edge[0].x()
        has_room = across > px(150) and not hill.missing
        words = f"{number}, {name}" if has_room and name else number
        wide = QFontMetricsF(font(SMALL)).horizontalAdvance(words)
        if peak.y() - roof > px(26) or not has_room:
            start = min(max(peak.x() - wide / 2, left), max(edge[-1].x() - wide, left))
            self._text(QRectF(start, peak.y() - px(30), wide + px(2), px(24)), words, self._theme.ink, left=True)
            return
        level = max(peak.y() + px(4), roof + px(15))  # clear of the limit
        beside = [place.x() for place in edge if place.y() < level + px(14) and place.x() <= peak.x()]
        right = min(beside, default=peak.x())
        if right - left < QFontMetricsF(font(SMALL)).horizontalAdvance(number) + px(8):
            return  # it would lie on the scale; the words below the hill say it
        before = QRectF(right - px(120), level - px(12), px(112), px(24))
        self._text(before, words if right - left > wide + px(8) else number, self._theme.ink, right=True)

    def _draw_coming(self, hill: Hill, start: float, scale: float) -> None:
        coming, last = hill.coming, self._after(hill)
        assert coming is not None
        kept = [place for place, minute in enumerate(coming.minutes) if minute <= last]

        def line(heats: tuple[float, ...]) -> list[QPointF]:
            return [QPointF(start + coming.minutes[place] * scale, self._level(heats[place])) for place in kept]

        self._painter.setPen(Qt.PenStyle.NoPen)
        self._painter.setBrush(colour(self._theme.ink, 28))
        self._areas.append(QPolygonF([*line(coming.high), *reversed(line(coming.low))]))
        self._painter.drawPolygon(self._areas[-1])
        pen = QPen(QColor(self._theme.ink), 2.2)
        pen.setDashPattern([3.0, 2.2])
        self._painter.setPen(pen)
        self._painter.setBrush(Qt.BrushStyle.NoBrush)
        self._painter.drawPolyline(QPolygonF(line(coming.middle)))

    def _draw_now(self, across: float, clock: str) -> QRectF:
        """The line of now; returns the plate of its clock."""
        self._line(self._theme.ink, 1.6, QPointF(across, self._whole.top()), QPointF(across, self._ground + px(4)))
        self._areas.append(QPolygonF(QRectF(across - 3, self._whole.top(), 6, self._ground - self._whole.top())))
        face = font(18, 600)
        wide = QFontMetricsF(face).horizontalAdvance(clock) + px(16)
        plate = QRectF(across - wide / 2, self._ground + px(4), wide, px(24))
        self._painter.setPen(Qt.PenStyle.NoPen)
        self._painter.setBrush(QColor(self._theme.ink))
        self._painter.drawRoundedRect(plate, px(3), px(3))
        self._text(plate, clock, self._theme.ground, size=18, weight=600)
        return plate

    def _draw_to_come(self, stage: Stage, left: float, wide: float) -> None:
        peak = stage.top_reaches + 0.35 * (stage.top_reaches - ROOM)
        pen = QPen(QColor(self._theme.line), 1.8)
        pen.setDashPattern([4.0, 3.0])
        self._painter.setPen(pen)
        self._painter.setBrush(Qt.BrushStyle.NoBrush)
        shape = [QPointF(left + x * wide, self._level(ROOM + share * (peak - ROOM))) for x, share in _SHAPE]
        self._painter.drawPolyline(QPolygonF(shape))

    def _draw_limits(self, stage: Stage, left: float, wide: float, *, done: bool) -> None:
        if stage.top_at_most is not None:
            level = self._level(stage.top_at_most)
            self._line(self._theme.ember, 2.0, QPointF(left, level), QPointF(left + wide, level))
            for end in (left, left + wide):
                self._line(self._theme.ember, 2.0, QPointF(end, level - px(5)), QPointF(end, level + px(5)))
            sign = QRectF(left + px(2), level - px(24), px(18), px(18))
            paint_caution(self._painter, sign, QColor(self._theme.ember), QColor(self._theme.ground))
            words = f"at most {degrees(stage.top_at_most, self._unit):.0f}"
            box = QRectF(sign.right() + px(6), level - px(28), wide, px(26))
            self._text(box, words, self._theme.ember, left=True, size=18, weight=600)
        if not done:
            level = self._level(stage.top_reaches)
            pen = QPen(QColor(self._theme.verdigris), 2.0)
            pen.setDashPattern([1.0, 2.5])
            self._painter.setPen(pen)
            self._painter.drawLine(QPointF(left, level), QPointF(left + wide, level))
            words = f"at least {degrees(stage.top_reaches, self._unit):.0f}"
            room = QFontMetricsF(font(SMALL, 600)).horizontalAdvance(words) + px(4)
            box = QRectF(left + wide - room, level - px(26), room, px(24))
            # where neither the hill is nor what its fire is likely to do, as far right as may be
            ways = (box.translated(-back, down) for down in (0, px(28)) for back in range(0, int(wide - room), px(8)))
            self._text(next(filter(self._is_free, ways), box), words, self._theme.verdigris, right=True, weight=600)

    def _is_free(self, box: QRectF) -> bool:
        return all(area.intersected(QPolygonF(box)).isEmpty() for area in self._areas)

    def _draw_path(self, found: FirstFiresPicture, columns: list[tuple[float, float]]) -> None:
        level = self._whole.bottom() - px(33)
        stops = [left + px(_RING) for left, _ in columns]
        end = columns[-1][0] + columns[-1][1] - px(110)
        goes_cold = any(hill.coming is not None and not hill.missing for hill in found.hills)
        cooling = goes_cold and 0 < found.done < len(stops)
        for place, (start, then) in enumerate(zip(stops, [*stops[1:], end], strict=True)):
            pen = QPen(QColor(self._theme.ink if place < found.done else self._theme.line), 2.6)
            if place >= found.done - cooling:
                pen.setDashPattern([1.0, 2.2])
            self._painter.setPen(pen)
            self._painter.drawLine(QPointF(start, level), QPointF(then, level))
        for place, across in enumerate(stops):
            self._stop(QPointF(across, level), f"{place + 1}", done=place < found.done)
        if cooling:
            middle = QPointF(0.5 * (stops[found.done - 1] + stops[found.done]), level)
            self._pause(middle)
            box = QRectF(middle.x() - px(50), level + px(_RING), px(100), px(18))
            self._text(box, "going cold", self._theme.ink, weight=600)
        self._stop(QPointF(end, level), "", done=found.done == len(stops), certificate=True)
        box = QRectF(end + px(20), level - px(12), px(90), px(24))
        self._text(box, "certificate", self._theme.soft, left=True)

    def _stop(self, middle: QPointF, words: str, *, done: bool, certificate: bool = False) -> None:
        ink = self._theme.ink if done else self._theme.line
        self._painter.setPen(QPen(QColor(ink), 2.2))
        self._painter.setBrush(QColor(self._theme.ink if done else self._theme.ground))
        self._painter.drawEllipse(middle, px(_RING), px(_RING))
        if done or certificate:
            self._painter.setPen(QPen(QColor(self._theme.ground if done else self._theme.line), 2.4))
            self._painter.setBrush(Qt.BrushStyle.NoBrush)
            tick = ((-6, 0), (-1.5, 4.5), (6, -5))
            self._painter.drawPolyline(QPolygonF([middle + QPointF(px(x), px(y)) for x, y in tick]))
        else:
            box = QRectF(middle.x() - px(_RING), middle.y() - px(_RING), px(2 * _RING), px(2 * _RING))
            self._text(box, words, self._theme.ink, size=18, weight=600)

    def _pause(self, middle: QPointF) -> None:
        self._painter.setPen(QPen(QColor(self._theme.ink), 2.4))
        self._painter.setBrush(QColor(self._theme.ground))
        self._painter.drawEllipse(middle, px(_RING), px(_RING))
        for side in (-3.5, 3.5):
            top, low = (
                QPointF(middle.x() + px(side), middle.y() - px(5)),
                QPointF(middle.x() + px(side), middle.y() + px(5)),
            )
            self._line(self._theme.ink, 3.0, top, low)

    def _line(self, ink: str, width: float, start: QPointF, end: QPointF) -> None:
        draw_line(self._painter, ink, width, start, end)

    def _text(
        self,
        box: QRectF,
        words: str,
        ink: str,
        *,
        left: bool = False,
        right: bool = False,
        size: int = SMALL,
        weight: int = 400,
    ) -> None:
        side = RIGHT if right else LEFT if left else MIDDLE
        draw_words(self._painter, box, words, ink, side=side, size=size, weight=weight)
