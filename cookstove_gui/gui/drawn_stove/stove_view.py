"""The drawn stove as a widget: iron below, a button for each spot, words beside it; it shows what it is handed."""

from collections.abc import Mapping
from itertools import pairwise

from PySide6.QtCore import QSize, Signal
from PySide6.QtGui import QKeyEvent, QPainter, QPaintEvent, QResizeEvent
from PySide6.QtWidgets import QApplication, QSizePolicy, QWidget

from cookstove_gui.gui.drawn_stove.face import Face
from cookstove_gui.gui.drawn_stove.iron import Settings, paint_iron
from cookstove_gui.gui.drawn_stove.legend import Legend, paint_legend
from cookstove_gui.gui.drawn_stove.spot_patch import SpotPatch
from cookstove_gui.gui.widgets.look import Look
from cookstove_gui.stove.drawn.layout import (
    DESIGNED_HEIGHT,
    DESIGNED_WIDTH,
    StoveLayout,
    cooktop_layout,
    stove_layout,
)
from cookstove_gui.stove.stove import Stove

_OVERLAP = 8.0  # px that neighbours' boxes may share where their outlines slant


class StoveView(QWidget):
    """A stove with what is shown on each of its spots."""

    pressed = Signal(str)  # a spot
    stepped_to = Signal(str)  # a spot, by an arrow key

    def __init__(self, look: Look, name: str, parent: QWidget | None = None, *, cooktop_alone: bool = False) -> None:
        super().__init__(parent)
        self.look = look
        self._lies = cooktop_layout if cooktop_alone else stove_layout
        self._stove = Stove(name="")
        self._patches: dict[str, SpotPatch] = {}
        self._settings = Settings()
        self._legend = Legend()
        self._layout: StoveLayout = self._lies(self._stove, DESIGNED_WIDTH, DESIGNED_HEIGHT)
        self.setObjectName(name)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Expanding)
        look.changed.connect(self.update)

    def sizeHint(self) -> QSize:
        """As small as it may be; it takes the room there is, and no page scrolls for it."""
        return self.minimumSizeHint()

    def minimumSizeHint(self) -> QSize:
        """As small as can still be read."""
        return QSize(330, 300)

    @property
    def drawn(self) -> StoveLayout:
        """Where everything lies now."""
        return self._layout

    def patch(self, name: str) -> SpotPatch:
        """The button of a spot."""
        return self._patches[name]

    def show_stove(self, stove: Stove) -> None:
        """Draw this stove; its spots follow each other in the order of the walk."""
        if stove == self._stove:
            return
        self._stove = stove
        names = [spot.name for spot in stove.spots]
        for name in [name for name in self._patches if name not in names]:
            gone = self._patches.pop(name)
            gone.hide()
            gone.deleteLater()
        for name in names:
            if name not in self._patches:
                self._patches[name] = self._made(name)
        walk: list[QWidget] = [self._patches[name] for name in names]
        for one, following in pairwise([self, *walk]):
            QWidget.setTabOrder(one, following)
        self._lay_out()

    def show_faces(self, faces: Mapping[str, Face], *, slowly: frozenset[str] = frozenset()) -> None:
        """Show a face on each spot; those named go over to their new colour before the eye."""
        for name, patch in self._patches.items():
            patch.show_face(faces.get(name, Face(number="")), slowly=name in slowly)

    def show_settings(self, settings: Settings) -> None:
        """Show how the stove is set."""
        if settings != self._settings:
            self._settings = settings
            self.update()

    def show_legend(self, legend: Legend) -> None:
        """Show what colours mean in a cook's words."""
        if legend != self._legend:
            self._legend = legend
            self.update()

    def resizeEvent(self, _event: QResizeEvent) -> None:
        """Draw as large as there is room."""
        self._lay_out()

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Draw the iron and the words beside it."""
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        paint_iron(painter, self._layout, self._settings, self.look.theme)
        front = self._layout.front
        if front is not None and not self._settings.door_is_open:  # the open door lies over it
            paint_legend(painter, front.legend, self._legend, self.look.theme, self._layout.size)
        painter.end()

    def neighbour(self, name: str, right: float, down: float) -> str:
        """The nearest spot in a direction; empty if none lies there."""
        here = self._layout.places[name].words
        best, best_cost = "", float("inf")
        for other, place in self._layout.places.items():
            there = place.words
            across = max(there.x - here.right, here.x - there.right)  # below 0 where one is above the other
            deep = max(there.y - here.bottom, here.y - there.bottom)
            middle = (there.centre[0] - here.centre[0], there.centre[1] - here.centre[1])
            along, beside = (across, deep) if right else (deep, across)
            is_that_way = middle[0] * right + middle[1] * down > 0 and along > -_OVERLAP
            cost = max(along, 0.0) + 2 * max(beside, 0.0) + 0.2 * (abs(middle[0]) + abs(middle[1]))
            if is_that_way and cost < best_cost:
                best, best_cost = other, cost
        return best

    def _made(self, name: str) -> SpotPatch:
        patch = SpotPatch(name, self.look, self)
        patch.clicked.connect(lambda: self.pressed.emit(name))
        patch.stepped.connect(lambda right, down: self._step(name, right, down))
        patch.typed.connect(lambda event: self._hand_on(name, event))
        patch.show()
        return patch

    def _step(self, name: str, right: float, down: float) -> None:
        wanted = self.neighbour(name, right, down)
        if wanted:
            self._patches[wanted].setFocus()
            self.stepped_to.emit(wanted)

    def _hand_on(self, name: str, event: QKeyEvent) -> None:
        """A digit typed on a spot is the first of its number: press the spot, then type into what has the keyboard."""
        self.pressed.emit(name)
        focused = QApplication.focusWidget()
        if focused is not None and focused is not self._patches.get(name):
            QApplication.sendEvent(focused, event.clone())

    def _lay_out(self) -> None:
        self._layout = self._lies(self._stove, self.width(), self.height())
        for name, patch in self._patches.items():
            patch.set_place(self._layout.places[name], self._layout.size)
        self.update()
