"""The drawing that is edited: spots are selected, dragged, moved and sized; it says so and changes nothing itself."""

from collections.abc import Iterator
from functools import partial

from PySide6.QtCore import QEvent, QObject, QPointF, Qt, Signal
from PySide6.QtGui import QKeyEvent, QMouseEvent, QResizeEvent
from PySide6.QtWidgets import QWidget

from cookstove_gui.gui.drawn_stove.face import Face
from cookstove_gui.gui.drawn_stove.iron import Settings
from cookstove_gui.gui.drawn_stove.spot_patch import SpotPatch
from cookstove_gui.gui.my_stove.draw.overlay import Overlay
from cookstove_gui.gui.my_stove.draw.plus_place import PlusPlace
from cookstove_gui.gui.my_stove.drawing import DrawingBesideWords
from cookstove_gui.gui.widgets.look import Look
from cookstove_gui.phrases.spots import spot_name_drawn
from cookstove_gui.stove.added import Addition
from cookstove_gui.stove.drawn.layout import stove_layout
from cookstove_gui.stove.drawn.shapes import Point, bounds
from cookstove_gui.stove.drawn.spare import spare_places
from cookstove_gui.stove.stove import Spot, SpotKind, Stove

SELECTED_IRON = "#4A4B4D"
_DRAG_FROM = 6.0  # px that the mouse must go before a press becomes a drag
_HANDLE_REACH = 12.0  # px round a handle that take it
_ARROWS = {Qt.Key.Key_Left: (-1, 0), Qt.Key.Key_Right: (1, 0), Qt.Key.Key_Up: (0, 1), Qt.Key.Key_Down: (0, -1)}
_PLACED = (SpotKind.TOP, SpotKind.OVEN)  # the other kinds have a fixed place in the drawing


class StoveEditor(DrawingBesideWords):
    """A stove in plain iron with the walk's numbers; says what its owner does to it."""

    selected = Signal(str)  # a spot, or "" for the stove itself
    nudged = Signal(str, int, int)  # a spot, steps to the right and to the back
    stretched = Signal(str, int, int)  # a spot, steps wider and deeper
    dropped_on = Signal(str, str)  # a spot, the one it was dropped on
    dropped_at = Signal(str, float, float)  # a spot, its place from the left and from the front, 0 to 1
    sized_to = Signal(str, float, float)  # a spot, how many times as wide and as deep
    asked = Signal(str)  # "add", "remove", "mirror" or "take_back"
    added = Signal(Addition)  # a plus was pressed

    def __init__(self, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(look, "stove_editor", parent)
        self._lies = partial(stove_layout, has_spare=True)
        self._edited = Stove(name="")
        self._chosen = ""
        self._is_showing = False
        self._pressed_at: QPointF | None = None
        self._handle: tuple[int, int] | None = None  # which one is dragged: -1, 0 or 1 across and down
        self.show_settings(Settings(firebox_words=""))  # a spot or a plus stands there
        self._overlay = Overlay(self)
        self._pluses: list[PlusPlace] = []
        self._offers = True
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setAccessibleName("Drawing of the stove, to be edited")
        self.setAccessibleDescription(
            "Enter or an arrow selects the first spot, Escape the stove, Tab goes on to what can be added"
        )

    @property
    def chosen(self) -> str:
        """The selected spot; empty for the stove itself."""
        return self._chosen

    def show_edited(self, stove: Stove, chosen: str) -> None:
        """Show a stove with one spot selected, or none."""
        self._edited, self._chosen = stove, chosen if stove.spot(chosen) else ""
        self._is_showing = True  # a spot that goes hands the keyboard on, which selects nothing
        self.show_stove(stove)
        self._is_showing = False
        if self._chosen and self.focusWidget() is not None and isinstance(self.focusWidget(), SpotPatch):
            self.patch(self._chosen).setFocus()
        self.show_faces(
            {
                spot.name: Face(
                    number=str(place or "–"),
                    # Beside the stove no place says what the number is.
                    name=spot_name_drawn(spot) if spot.kind is SpotKind.ROOM else "",
                    is_strong=True,
                    captions=(_short(spot.label),)
                    if self._chosen == spot.name and spot.kind is not SpotKind.ROOM
                    else (),
                    fill=SELECTED_IRON if spot.name == self._chosen else "",
                    is_lit=spot.name == self._chosen,
                )
                for place, spot in _numbered(stove)
            }
        )
        count = max((place for place, _ in _numbered(stove)), default=0)
        for place, spot in _numbered(stove):
            patch = self.patch(spot.name)
            patch.removeEventFilter(self)
            patch.installEventFilter(self)
            # While the stove itself is selected Tab goes past its spots, to what is said of the stove.
            patch.setFocusPolicy(Qt.FocusPolicy.StrongFocus if self._chosen else Qt.FocusPolicy.ClickFocus)
            where = f"number {place} of {count} on the walk" if place else "left out of the walk"
            patch.say(f"{spot.label}, {where}", "")
        self._show_pluses()
        self._show_overlay()

    def offer(self, offers: bool) -> None:
        """Whether there is a plus where something may be added."""
        self._offers = offers
        self._show_pluses()

    def resizeEvent(self, event: QResizeEvent) -> None:
        """The overlay covers all of it."""
        super().resizeEvent(event)
        self._show_pluses()
        self._show_overlay()

    def mousePressEvent(self, _event: QMouseEvent) -> None:
        """A press beside every spot selects the stove."""
        self.setFocus()
        self.selected.emit("")

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Keys that do not need a spot; Enter or an arrow selects the first."""
        if event.key() in (Qt.Key.Key_Return, Qt.Key.Key_Enter, Qt.Key.Key_Space, *_ARROWS) and self._edited.spots:
            first = self._edited.spots[0].name
            self.selected.emit(first)
            self.patch(first).setFocus()
        elif not self._take_key("", event):
            super().keyPressEvent(event)

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        """Selecting, dragging and keys on a spot."""
        if isinstance(watched, PlusPlace) and isinstance(event, QKeyEvent) and event.type() is QEvent.Type.KeyPress:
            is_step = Qt.Key(event.key()) in _ARROWS
            return False if is_step else self._take_key("", event)
        if not isinstance(watched, SpotPatch):
            return super().eventFilter(watched, event)
        name = watched.name
        if isinstance(event, QKeyEvent) and event.type() is QEvent.Type.KeyPress:
            return self._take_key(name, event)
        if event.type() is QEvent.Type.FocusIn and name != self._chosen and not self._is_showing:
            self.selected.emit(name)
        if isinstance(event, QMouseEvent) and event.button() in (Qt.MouseButton.LeftButton, Qt.MouseButton.NoButton):
            return self._take_mouse(watched, event)
        return super().eventFilter(watched, event)

    def _take_key(self, name: str, event: QKeyEvent) -> bool:
        key, shift = Qt.Key(event.key()), bool(event.modifiers() & Qt.KeyboardModifier.ShiftModifier)
        control = bool(event.modifiers() & Qt.KeyboardModifier.ControlModifier)
        way = _ARROWS.get(key)
        asked = {Qt.Key.Key_Insert: "add", Qt.Key.Key_M: "mirror"}.get(key, "")
        if control and key is Qt.Key.Key_Z:
            self.asked.emit("take_back")
        elif control:
            return False
        elif way is not None and name:
            (self.stretched if shift else self.nudged).emit(name, *way)
        elif key is Qt.Key.Key_Delete and name:
            self.asked.emit("remove")
        elif key is Qt.Key.Key_Escape and (name or not self.hasFocus()):
            self.setFocus()
            self.selected.emit("")
        elif asked:
            self.asked.emit(asked)
        else:
            return False
        return True

    def _show_pluses(self) -> None:
        """A place for all that may be added; Tab reaches one of them, the arrows the others."""
        spares = spare_places(self._edited, self.drawn) if self._offers and self._edited.spots else ()
        while len(self._pluses) < len(spares):
            self._pluses.append(self._made_plus())
        for plus in self._pluses[len(spares) :]:
            plus.hide()
        before: QWidget = self.patch(self._edited.spots[-1].name) if self._edited.spots else self
        for place, (plus, spare) in enumerate(zip(self._pluses, spares, strict=False)):
            plus.show_spare(spare, self.drawn.size)
            plus.setFocusPolicy(Qt.FocusPolicy.ClickFocus if place else Qt.FocusPolicy.StrongFocus)
            QWidget.setTabOrder(before, plus)
            before = plus
            plus.show()

    def _made_plus(self) -> PlusPlace:
        plus = PlusPlace(self.look, self)
        plus.clicked.connect(lambda: self.added.emit(plus.spare.adds) if plus.spare is not None else None)
        plus.stepped.connect(lambda step: self._step_plus(plus, step))
        plus.installEventFilter(self)
        return plus

    def _step_plus(self, plus: PlusPlace, step: int) -> None:
        shown = [one for one in self._pluses if not one.isHidden()]
        shown[(shown.index(plus) + step) % len(shown)].setFocus()

    def _take_mouse(self, patch: SpotPatch, event: QMouseEvent) -> bool:
        at = QPointF(patch.mapTo(self, event.position().toPoint()))
        if event.type() is QEvent.Type.MouseButtonPress:
            self._handle = self._handle_at(at) if patch.name == self._chosen else None
            self._pressed_at = at
            patch.setFocus()
            if patch.name != self._chosen:
                self.selected.emit(patch.name)
        elif event.type() is QEvent.Type.MouseMove and self._pressed_at is not None:
            if self._is_drag(at):
                self._overlay.show_dragged(None if self._handle else at)
        elif event.type() is QEvent.Type.MouseButtonRelease and self._pressed_at is not None:
            began, self._pressed_at = self._pressed_at, None
            self._overlay.show_dragged(None)
            if (at - began).manhattanLength() >= _DRAG_FROM:
                self._drop(patch.name, began, at)
        else:
            return False
        return True

    def _is_drag(self, at: QPointF) -> bool:
        return self._pressed_at is not None and (at - self._pressed_at).manhattanLength() >= _DRAG_FROM

    def _handle_at(self, at: QPointF) -> tuple[int, int] | None:
        for (across, down), (x, y) in self._overlay.handles.items():
            if abs(at.x() - x) <= _HANDLE_REACH and abs(at.y() - y) <= _HANDLE_REACH:
                return across, down
        return None

    def _drop(self, name: str, began: QPointF, at: QPointF) -> None:
        spot = self._edited.spot(name)
        if spot is None:
            return
        if self._handle is not None:
            box = bounds(self.drawn.places[name].shape)
            wider = 1.0 + 2 * self._handle[0] * (at.x() - began.x()) / box.width
            deeper = 1.0 + 2 * self._handle[1] * (at.y() - began.y()) / box.height
            self.sized_to.emit(name, max(wider, 0.1), max(deeper, 0.1))
            return
        under = self.childAt(at.toPoint())
        other = self._edited.spot(under.name) if isinstance(under, SpotPatch) else None
        if other is not None and other.name != name and other.kind is spot.kind:
            self.dropped_on.emit(name, other.name)
        elif spot.kind in _PLACED:
            x, y = self._share_at(spot.kind, (at.x(), at.y()))
            if -0.1 <= x <= 1.1 and -0.1 <= y <= 1.1:
                self.dropped_at.emit(name, min(max(x, 0.0), 1.0), min(max(y, 0.0), 1.0))

    def _share_at(self, kind: SpotKind, point: Point) -> tuple[float, float]:
        """A place from the left and from the front, as shares of the cooktop or the oven."""
        if kind is SpotKind.TOP:
            across, down = self.drawn.cooktop.inside.shares_at(point)
            return across, 1.0 - down
        front = self.drawn.front
        if front is None or not front.opening.width:
            return -1.0, -1.0
        box = front.opening
        return (point[0] - box.x) / box.width, 1.0 - (point[1] - box.y) / box.height

    def _show_overlay(self) -> None:
        self._overlay.setGeometry(self.rect())
        self._overlay.raise_()
        places = self.drawn.places
        tops = [
            spot.name
            for spot in self._edited.spots_of(SpotKind.TOP)
            if spot.name in places and spot.name not in self._edited.left_out
        ]
        chosen = self._edited.spot(self._chosen)
        self._overlay.show_marks(
            walk=[places[name].words.centre for name in tops],
            outline=places[self._chosen].shape if chosen and self._chosen in places else None,
            has_handles=chosen is not None and chosen.kind is SpotKind.TOP,
            size=self.drawn.size,
        )


def _short(label: str) -> str:
    return label.removeprefix("top ").removeprefix("oven ")


def _numbered(stove: Stove) -> Iterator[tuple[int, Spot]]:
    """Each spot with its place on the walk from 1; 0 for one that is left out."""
    place = 0
    for spot in stove.spots:
        place += spot.name not in stove.left_out
        yield (0 if spot.name in stove.left_out else place), spot
