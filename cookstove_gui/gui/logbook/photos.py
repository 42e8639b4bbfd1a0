"""Photos of a session: small pictures of the files that lie beside the logbook."""

from pathlib import Path

from PySide6.QtCore import QSize
from PySide6.QtGui import QIcon
from PySide6.QtWidgets import QFileDialog, QListWidget, QListWidgetItem, QVBoxLayout, QWidget

from cookstove_gui.desk.desk import Desk
from cookstove_gui.desk.logbook.photos import ENDINGS, add_photo, photos, remove_photo
from cookstove_gui.errors import Problem
from cookstove_gui.gui.widgets.form import button, row, say, words
from cookstove_gui.gui.widgets.steps import px
from cookstove_gui.gui.widgets.theme import STEP

_SIDE = 200  # px of the design
_NONE = (
    "No photo yet. A photo that is added is copied to a folder beside the logbook; the file itself stays where it is."
)


class PhotosView(QWidget):
    """Add, look, remove."""

    def __init__(self, desk: Desk, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._desk = desk
        self._number = 0
        self.setObjectName("session_photos")
        self._list = QListWidget()
        self._list.setObjectName("photo_list")
        self._list.setAccessibleName("Photos of the session")
        self._list.setViewMode(QListWidget.ViewMode.IconMode)
        self._list.setMovement(QListWidget.Movement.Static)
        self._list.setResizeMode(QListWidget.ResizeMode.Adjust)
        self._list.setWordWrap(True)
        self._none = words(_NONE, role="soft", name="photos_none")
        self._add = button("Add photos …", "photo_add", "Copy pictures to the session")
        self._remove = button("Remove", "photo_remove", "Delete the copy of the marked photo")
        self._problem = words(role="problem", name="photo_problem")
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(STEP)
        column.addWidget(self._none)
        column.addWidget(self._list, 1)
        column.addLayout(row(self._add, self._remove))
        column.addWidget(self._problem)
        say(self._problem, "")
        self._add.clicked.connect(self._ask)
        self._remove.clicked.connect(self._drop)

    def show_session(self, number: int) -> None:
        """Show the photos of a session."""
        found = photos(self._desk.logbook, number)
        if number != self._number:
            say(self._problem, "")
        shown = [self._list.item(place).toolTip() for place in range(self._list.count())]
        if number == self._number and shown == [str(path) for path in found]:
            return
        self._number = number
        self._list.clear()
        self._list.setIconSize(QSize(px(_SIDE), px(_SIDE)))
        for path in found:
            item = QListWidgetItem(QIcon(str(path)), path.name)
            item.setToolTip(str(path))
            self._list.addItem(item)
        self._list.setVisible(bool(found))
        self._none.setVisible(not found)
        self._remove.setEnabled(bool(found))

    def bring_in(self, paths: list[Path]) -> None:
        """Copy these pictures to the session."""
        try:
            for path in paths:
                add_photo(self._desk.logbook, self._number, path)
        except Problem as problem:
            say(self._problem, problem.sentence)
        else:
            say(self._problem, "")
        self.show_session(self._number)

    def _ask(self) -> None:
        kinds = " ".join(f"*{ending}" for ending in ENDINGS)
        paths, _ = QFileDialog.getOpenFileNames(self, "Photos of this session", "", f"Pictures ({kinds})")
        if paths:
            self.bring_in([Path(path) for path in paths])

    def _drop(self) -> None:
        if not self._list.selectedItems():
            return
        try:
            remove_photo(Path(self._list.selectedItems()[0].toolTip()))
        except Problem as problem:
            say(self._problem, problem.sentence)
        self.show_session(self._number)
