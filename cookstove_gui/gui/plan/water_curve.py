"""The water's own way to the boil on the spot asked about, with the window of its boil."""

from PySide6.QtCore import QPointF, QRectF, QSize
from PySide6.QtGui import QColor, QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QSizePolicy, QWidget

from cookstove_gui.desk.plan.water import WaterPlan
from cookstove_gui.gui.drawn_stove.lettering import advance, write
from cookstove_gui.gui.plan.lane import CLOCK, Lane, dashed
from cookstove_gui.gui.widgets.look import Look
from cookstove_gui.gui.widgets.steps import px
from cookstove_gui.phrases.edge import Edge, duration, whole
from cookstove_gui.phrases.plan.water import goal_word, water_rungs
from cookstove_gui.units import degrees

_LEFT, _TOP = 40, 26  # px of the design beside and above the plot
_SMALL, _STRONG = 16, 22
_LEAST_MIN, _MOST_MIN, _AFTER = 15.0, 180.0, 1.35  # of the axis; how far beyond the window it goes
_MARGIN = 6.0  # K below the start and above the goal


class WaterCurve(QWidget):
    """Drawn only; the sentence above says the same."""

    def __init__(self, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._look = look
        self._plan: WaterPlan | None = None
        self._edge: Edge | None = None
        self.setObjectName("water_curve")
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Expanding)
        look.changed.connect(self.update)

    def minimumSizeHint(self) -> QSize:
        """Room for the curve and the likely time beside its stem."""
        return QSize(px(240), px(150))

    def sizeHint(self) -> QSize:
        """No more than that; it takes the room there is."""
        return self.minimumSizeHint()

    def show_water(self, plan: WaterPlan, edge: Edge) -> None:
        """Show the water on the spot asked about."""
        self._plan, self._edge = plan, edge
        if plan.asked is not None:
            said = water_rungs(plan.asked.label, plan.asked.answer, edge, is_soonest=False)[0]
            self.setAccessibleName(f"The water’s heat over time. {said}")
        self.update()

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Goal, curve, window, clock."""
        plan, edge = self._plan, self._edge
        if plan is None or edge is None or plan.asked is None or plan.course is None:
            return
        theme, answer, course = self._look.theme, plan.asked.answer, plan.course
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        foot = float(self.height() - px(CLOCK))
        minutes = answer.minutes
        last = minutes.p90 or minutes.p50 or _MOST_MIN
        end = min(max(_AFTER * last, _LEAST_MIN), _MOST_MIN)
        box = QRectF(px(_LEFT), px(_TOP), self.width() - px(_LEFT) - 1, foot - px(_TOP))
        low, high = float(course.p50[0]) - _MARGIN, max(plan.boiling, answer.temperature) + _MARGIN
        lane = Lane(painter, 0.0, end, box, low, high)
        goal = lane.y(answer.temperature)
        painter.setPen(QPen(QColor(theme.verdigris), 2.0))
        painter.drawLine(QPointF(box.left(), goal), QPointF(box.right(), goal))
        lane.fan(course.minutes, (course.p10, course.p90), (course.p25, course.p75), theme=theme)
        lane.line(course.minutes, course.p50, dashed(theme.ink))
        lane.scale(edge.unit, theme.soft, 50 if edge.unit == "F" else 25, but=answer.temperature)
        lane.clock(foot, edge, theme, from_now="on now")
        painter.setPen(QColor(theme.verdigris))
        told, word = whole(degrees(answer.temperature, edge.unit)), goal_word(answer.goal)
        write(painter, box.left() - px(6) - advance(told, px(_SMALL), 600), goal, told, px(_SMALL), 600)
        write(painter, box.right() - advance(word, px(_SMALL), 600), goal - px(15), word, px(_SMALL), 600)
        if minutes.p50 is not None:
            lane.stem(minutes.p50, goal, foot, theme.verdigris)
        lane.window((minutes.p10, minutes.p50, minutes.p90), goal, theme)
        if minutes.p50 is not None:
            self._likely(painter, lane, minutes.p50, goal, edge)
        painter.end()

    def _likely(self, painter: QPainter, lane: Lane, likely: float, goal: float, edge: Edge) -> None:
        told, after = f"likely {edge.clock(likely)}", f"in {duration(likely)}"
        wide = advance(told, px(_STRONG), 600)
        x = lane.x(likely) + px(10)
        middle = goal + 0.42 * (lane.box.bottom() - goal)
        if x + wide > lane.box.right():  # where the curve has not come yet, however narrow it is
            x, middle = lane.box.right() - wide, goal + 0.72 * (lane.box.bottom() - goal)
        painter.setPen(QColor(self._look.theme.verdigris))
        write(painter, x, middle, told, px(_STRONG), 600)
        write(painter, x, middle + px(24), after, px(18))
