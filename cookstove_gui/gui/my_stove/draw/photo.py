"""The photo of a stove beside its drawing."""

from collections.abc import Callable
from pathlib import Path

from PySide6.QtCore import QRectF, QSize, Qt
from PySide6.QtGui import QPainter, QPaintEvent, QPixmap
from PySide6.QtWidgets import QFileDialog, QSizePolicy, QVBoxLayout, QWidget

from cookstove_gui.desk.desk import Desk
from cookstove_gui.desk.logbook.photos import ENDINGS
from cookstove_gui.desk.my_stove.photo import drop_stove_photo, keep_stove_photo, stove_photo
from cookstove_gui.errors import Problem
from cookstove_gui.gui.widgets.form import button, say, words
from cookstove_gui.gui.widgets.steps import px
from cookstove_gui.gui.widgets.theme import STEP

_HIGH = 230  # px of the design


class PhotoOfStove(QWidget):
    """The photo, and the keys that choose one and take it away, for whoever shows them."""

    def __init__(self, desk: Desk, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._desk = desk
        self.setObjectName("stove_photo")
        self._picture = _Picture()
        self.choose = button("Photo …", "stove_photo_choose", "A photo of the stove, copied beside the logbook")
        self.drop = button("No photo", "stove_photo_drop", "Delete the copy beside the logbook")
        self._problem = words(role="problem", name="stove_photo_problem")
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(STEP)
        column.addWidget(self._picture)
        column.addWidget(self._problem)
        self.choose.clicked.connect(self._ask)
        self.drop.clicked.connect(lambda: self._try(lambda: drop_stove_photo(self._desk)))
        say(self._problem, "")
        self.show_photo()

    def show_photo(self) -> None:
        """Show the photo of the stove in use."""
        path = stove_photo(self._desk)
        self._picture.show_file(path)
        self._picture.setAccessibleName(f"Photo of {self._desk.stove.name}")
        for part in (self._picture, self.drop):
            part.setVisible(path is not None)
        self.setVisible(path is not None or bool(self._problem.text()))

    def _ask(self) -> None:
        kinds = " ".join(f"*{ending}" for ending in ENDINGS)
        path, _ = QFileDialog.getOpenFileName(self, "A photo of the stove", "", f"Pictures ({kinds})")
        if path:
            self._try(lambda: keep_stove_photo(self._desk, Path(path)))

    def _try(self, act: Callable[[], object]) -> None:
        try:
            act()
        except Problem as problem:
            say(self._problem, problem.sentence)
        else:
            say(self._problem, "")
        self.show_photo()


class _Picture(QWidget):
    """A file's picture as large as fits, its sides as they are."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._shown = QPixmap()
        self._path: Path | None = None
        self.setObjectName("stove_photo_picture")
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)

    def show_file(self, path: Path | None) -> None:
        if path != self._path:
            self._path = path
            self._shown = QPixmap() if path is None else QPixmap(str(path))
            self.update()

    def sizeHint(self) -> QSize:
        return QSize(px(300), px(_HIGH))

    def paintEvent(self, _event: QPaintEvent) -> None:
        if self._shown.isNull():
            return
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.SmoothPixmapTransform)
        size = self._shown.size().scaled(self.size(), Qt.AspectRatioMode.KeepAspectRatio)
        painter.drawPixmap(QRectF(0, 0, size.width(), size.height()), self._shown, QRectF(self._shown.rect()))
        painter.end()
