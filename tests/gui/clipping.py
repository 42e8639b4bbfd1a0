"""What a look at the window would find wrong: cut words, parts over each other, controls out of reach or unnamed."""

from collections.abc import Iterator
from itertools import pairwise

from PySide6.QtCore import QPoint, QRect, Qt
from PySide6.QtGui import QAccessible, QFontMetricsF
from PySide6.QtWidgets import (
    QAbstractButton,
    QAbstractItemView,
    QAbstractScrollArea,
    QApplication,
    QComboBox,
    QLabel,
    QLineEdit,
    QScrollArea,
    QScrollBar,
    QStyle,
    QStyleOptionComboBox,
    QStyleOptionFrame,
    QWidget,
)

from cookstove_gui.gui.drawn_stove.spot_patch import SpotPatch
from cookstove_gui.gui.widgets.key import RING, Key, Word
from cookstove_gui.gui.widgets.one_line import OneLine
from cookstove_gui.gui.widgets.steps import px

LEAST_TARGET = 40  # px, on the Cook page
LEAST_SPOT = 29  # px, of a spot where the window is so low that the stove must be; its name typed lights it too
LEAST_FLOOR = 24  # px, where large text leaves less yet: WCAG 2.2, 2.5.8
_LOW_PAGE, _VERY_LOW_PAGE = 635, 520  # px of the design
CONTROLS = (QAbstractButton, QLineEdit, QComboBox, QAbstractItemView)
_SLACK = 1  # px


def faults(window: QWidget, *, targets: bool = False) -> list[str]:
    """Everything wrong in what is on the screen now, each in a sentence."""
    found = [*cut(window), *overlapping(window), *outside(window), *unnamed(window), *jumps(window)]
    return [*found, *small(window)] if targets else found


def seen(window: QWidget) -> Iterator[QWidget]:
    """Visible parts of our own making."""
    for part in window.findChildren(QWidget):
        if part.isVisible() and part.width() > 0 and not part.objectName().startswith("qt_"):
            yield part


def controls(window: QWidget) -> list[QWidget]:
    """What is pressed, typed into or chosen from."""
    return [
        part
        for part in seen(window)
        if isinstance(part, CONTROLS)
        and part.focusPolicy() is not Qt.FocusPolicy.NoFocus
        and not isinstance(part.parentWidget(), QComboBox)
    ]


def name_of(part: QWidget) -> str:
    return part.objectName() or type(part).__name__


# --- words ---------------------------------------------------------------------------------------------------------


def cut(window: QWidget) -> Iterator[str]:
    """Words wider or taller than their place."""
    for part in seen(window):
        said, needed = "", part.size()
        if isinstance(part, OneLine):
            said = part.text()
            needed.setWidth(round(part.shown_width - 0.5))
            if said and part.is_squeezed:
                yield f"{name_of(part)}: no way to say “{said[:50]}” fits at its own size"
        elif isinstance(part, QLabel) and part.text() and part.pixmap().isNull():
            said = part.text()
            if part.accessibleName().startswith("Caution:"):
                continue  # broken into lines by its own reckoning, which has a test of its own
            if part.wordWrap():
                line = QFontMetricsF(part.font())  # the face has room above its letters that none fills
                needed.setHeight(round(part.heightForWidth(part.width()) - (line.ascent() - line.capHeight())))
            else:
                needed = part.sizeHint()
                line = QFontMetricsF(part.font())
                needed.setHeight(round(line.capHeight() + line.descent()))
        elif isinstance(part, Key | Word):
            said = part.text()
            needed.setWidth(part.minimumSizeHint().width())
        elif isinstance(part, QLineEdit) and not isinstance(part.parentWidget(), QComboBox):
            said = part.text() or part.placeholderText()
            needed.setWidth(round(QFontMetricsF(part.font()).horizontalAdvance(said)) + part.width() - _inside(part))
        elif isinstance(part, QComboBox):
            said = part.currentText()
            needed.setWidth(round(QFontMetricsF(part.font()).horizontalAdvance(said)) + part.width() - _room_in(part))
        if needed.width() > part.width() + _SLACK or needed.height() > part.height() + _SLACK:
            yield f"{name_of(part)}: “{said[:50]}” needs {needed.toTuple()}, has {part.size().toTuple()}"


def _inside(field: QLineEdit) -> int:
    """Pixels for the words of a field, which keeps two at either side."""
    option = QStyleOptionFrame()
    field.initStyleOption(option)
    return field.style().subElementRect(QStyle.SubElement.SE_LineEditContents, option, field).width() - 4


def _room_in(box: QComboBox) -> int:
    """Pixels for the words of a list's choice, beside its arrow."""
    option = QStyleOptionComboBox()
    box.initStyleOption(option)
    style, field = QStyle.ComplexControl.CC_ComboBox, QStyle.SubControl.SC_ComboBoxEditField
    return box.style().subControlRect(style, option, field, box).width()


# --- places --------------------------------------------------------------------------------------------------------


def overlapping(window: QWidget) -> Iterator[str]:
    """Siblings over each other; spots have masks, and the drawing's own test."""
    by_parent: dict[QWidget, list[QWidget]] = {}
    for part in seen(window):
        parent = part.parentWidget()
        if parent is None or isinstance(part, SpotPatch | QScrollBar) or part.isWindow():
            continue
        if isinstance(parent, QAbstractScrollArea | QAbstractItemView | QComboBox | QLineEdit):
            continue
        by_parent.setdefault(parent, []).append(part)
    for siblings in by_parent.values():
        for place, one in enumerate(siblings):
            for other in siblings[place + 1 :]:
                if one.testAttribute(Qt.WidgetAttribute.WA_TransparentForMouseEvents):
                    continue
                if other.testAttribute(Qt.WidgetAttribute.WA_TransparentForMouseEvents):
                    continue
                if solid(one).intersects(solid(other)):
                    yield f"{name_of(one)} {rect(one)} lies over {name_of(other)} {rect(other)}"


def solid(part: QWidget) -> QRect:
    """Where a part is; the room that a key keeps for the ring of the focus may be shared."""
    ring = RING if isinstance(part, Key) else 0
    return part.geometry().adjusted(ring, ring, -ring, -ring)


def rect(part: QWidget) -> tuple[int, int, int, int]:
    return part.geometry().getRect()


def outside(window: QWidget) -> Iterator[str]:
    """Controls and what scrolls that are not wholly in the window, but for what can be scrolled to."""
    for part in [*controls(window), *(area for area in seen(window) if isinstance(area, QScrollArea))]:
        frame = _scrolled_in(part) or window
        at = part.mapTo(frame, QPoint(0, 0))
        place, room = QRect(at, part.size()), frame.rect()
        if frame is not window:
            room.setHeight(max(room.height(), place.bottom() + 1))  # up and down is scrolled, to the side never
            room.setWidth(min(room.width(), frame.parentWidget().width() + 1))  # pixels of the design are rounded
        if not room.contains(place):
            yield f"{name_of(part)} at {place.getRect()} is not in {name_of(frame)} {room.getRect()}"


def _scrolled_in(part: QWidget) -> QWidget | None:
    """The inside of the area that the part scrolls in."""
    at = part.parentWidget()
    while at is not None:
        area = at.parentWidget().parentWidget() if at.parentWidget() is not None else None
        if isinstance(area, QScrollArea) and area.widget() is at:
            return at
        at = at.parentWidget()
    return None


def small(window: QWidget) -> Iterator[str]:
    """Targets too small for a thumb."""
    page = window.findChild(QWidget, "cook_page") or window
    for part in controls(window):
        if isinstance(part, QAbstractItemView):
            continue
        least = LEAST_TARGET
        if isinstance(part, SpotPatch) and page.height() < px(_LOW_PAGE):
            least = LEAST_FLOOR if page.height() < px(_VERY_LOW_PAGE) else LEAST_SPOT
        if min(part.width(), part.height()) < least - _SLACK:
            yield f"{name_of(part)} is {part.size().toTuple()}"


# --- names and order -----------------------------------------------------------------------------------------------


def unnamed(window: QWidget) -> Iterator[str]:
    """Controls that a reader of the screen could not tell."""
    for part in controls(window):
        reader = QAccessible.queryAccessibleInterface(part)
        if not part.accessibleName():
            yield f"{name_of(part)} has no accessible name"
        if reader is None or reader.role() in (QAccessible.Role.NoRole, QAccessible.Role.Client):
            yield f"{name_of(part)} has no role"


def unlit(window: QWidget) -> Iterator[str]:
    """Controls that look the same with the keyboard as without."""
    before = window.focusWidget()
    for part in controls(window):
        if not part.isEnabled() or not part.focusPolicy() & Qt.FocusPolicy.TabFocus:
            continue
        part.clearFocus()
        settle(1)
        without = part.grab().toImage()
        part.setFocus(Qt.FocusReason.TabFocusReason)
        settle(1)
        if part.hasFocus() and part.grab().toImage() == without:
            yield f"{name_of(part)} looks the same with the keyboard as without"
    if before is not None:
        before.setFocus()


def jumps(window: QWidget) -> Iterator[str]:
    """Tab goes down a column and then to the next at its right, never back up to the left."""
    order = []
    first = part = window.nextInFocusChain()
    wanted = {id(control) for control in controls(window)}
    while part is not None:
        if id(part) in wanted and part.focusPolicy() & Qt.FocusPolicy.TabFocus and part.isEnabled():
            order.append(part)
        part = part.nextInFocusChain()
        if part is first:
            break
    for one, other in pairwise(order):
        if _area(one) is not _area(other):
            continue
        if isinstance(one, SpotPatch) and isinstance(other, SpotPatch):
            continue  # spots follow the walk round the stove, as their arrows do
        a, b = (QRect(part.mapTo(window, QPoint(0, 0)), part.size()) for part in (one, other))
        if b.bottom() <= a.top() and b.right() <= a.left():
            yield f"Tab jumps from {name_of(one)} {a.getRect()} back to {name_of(other)} {b.getRect()}"


def _area(part: QWidget) -> QWidget | None:
    """What scrolls together, or the window."""
    return _scrolled_in(part)


def settle(turns: int = 4) -> None:
    """Let layouts and what they call for come to rest."""
    for _ in range(turns):
        QApplication.processEvents()
