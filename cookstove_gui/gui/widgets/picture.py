"""Pictures of what is known of the past: painted, focusable, and every one can be copied and saved."""

from collections.abc import Callable, Mapping

from PySide6.QtCore import QRectF, QSize, Qt
from PySide6.QtGui import (
    QColor,
    QContextMenuEvent,
    QFocusEvent,
    QGuiApplication,
    QKeyEvent,
    QKeySequence,
    QPainter,
    QPaintEvent,
)
from PySide6.QtWidgets import QMenu, QPushButton, QSizePolicy, QWidget

from cookstove_gui.gui.widgets.form import button
from cookstove_gui.gui.widgets.key import paint_ring
from cookstove_gui.gui.widgets.look import Look
from cookstove_gui.gui.widgets.saving import save_picture
from cookstove_gui.gui.widgets.steps import px


class WaysOut:
    """What can be done with a widget that is a picture; `values` gives its numbers as a table, separated by tabs."""

    values: Callable[[], str] = staticmethod(str)

    def copy_picture(self) -> None:
        """Put it on the clipboard as a picture."""
        QGuiApplication.clipboard().setPixmap(self._widget().grab())

    def copy_values(self) -> None:
        """Put its numbers on the clipboard, as a table."""
        QGuiApplication.clipboard().setText(self.values())

    def save(self) -> None:
        """Ask where, and save it."""
        save_picture(self._widget(), self._widget().objectName().replace("_", " "))

    def add_ways_out(self, menu: QMenu, of: str = "") -> None:
        """Ways to copy and save it, in a menu; `of` names it where there are several."""
        what = f" of “{of}”" if of else ""
        menu.addAction(f"Copy the picture{what}").triggered.connect(lambda _on=False: self.copy_picture())
        menu.addAction(f"Copy the values{what}").triggered.connect(lambda _on=False: self.copy_values())
        menu.addAction(f"Save the picture{what} …").triggered.connect(lambda _on=False: self.save())

    def offer_ways_out(self, event: QContextMenuEvent) -> None:
        """The menu, by the right button or the menu key."""
        menu = QMenu(self._widget())
        menu.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        self.add_ways_out(menu)
        menu.popup(event.globalPos())

    def takes(self, event: QKeyEvent) -> bool:
        """Copy and save by the usual keys."""
        if event.matches(QKeySequence.StandardKey.Copy):
            self.copy_values()
        elif event.matches(QKeySequence.StandardKey.Save):
            self.save()
        else:
            return False
        return True

    def _widget(self) -> QWidget:
        assert isinstance(self, QWidget)
        return self


def ways_out_key(name: str, pictures: Callable[[], Mapping[str, WaysOut]]) -> QPushButton:
    """A key that offers every one of these pictures, by what they are called, to be copied and saved."""
    made = button("Copy or save …", name, "Each picture as a picture or as values")

    def offer() -> None:
        menu = QMenu(made)
        menu.setObjectName(f"{name}_menu")
        menu.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        for title, picture in pictures().items():
            picture.add_ways_out(menu, title)
            menu.addSeparator()
        menu.popup(made.mapToGlobal(made.rect().bottomLeft()))

    made.clicked.connect(offer)
    return made


class Picture(QWidget, WaysOut):
    """One picture, painted at once."""

    def __init__(self, name: str, look: Look, least: tuple[float, float], parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.look = look
        self._least = least
        self.setObjectName(name)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Expanding)
        look.changed.connect(self.updateGeometry)
        look.changed.connect(self.update)

    def minimumSizeHint(self) -> QSize:
        """The least in which its words keep apart."""
        return QSize(px(self._least[0]), px(self._least[1]))

    def sizeHint(self) -> QSize:
        """It takes the room there is."""
        return self.minimumSizeHint()

    def draw(self, painter: QPainter, whole: QRectF) -> None:
        """Paint it; each picture does so in its own way."""

    def paintEvent(self, _event: QPaintEvent) -> None:
        """The picture, and the ring of the focus round it."""
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        self.draw(painter, QRectF(self.rect()))
        if self.hasFocus():
            paint_ring(painter, QRectF(self.rect()).adjusted(4, 4, -4, -4), QColor(self.look.theme.cobalt))
        painter.end()

    def contextMenuEvent(self, event: QContextMenuEvent) -> None:
        """By the right button or the menu key."""
        self.offer_ways_out(event)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Copy and save by the usual keys."""
        if not self.takes(event):
            super().keyPressEvent(event)

    def focusInEvent(self, event: QFocusEvent) -> None:
        """Show the ring."""
        super().focusInEvent(event)
        self.update()

    def focusOutEvent(self, event: QFocusEvent) -> None:
        """Take the ring away."""
        super().focusOutEvent(event)
        self.update()
