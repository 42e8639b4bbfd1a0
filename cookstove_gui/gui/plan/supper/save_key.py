"""The key that takes a planned supper out of the program: a calendar file, or a page to print."""

from collections.abc import Callable
from pathlib import Path

from PySide6.QtCore import QPoint, Signal
from PySide6.QtWidgets import QFileDialog, QMenu

from cookstove_gui.desk import Desk
from cookstove_gui.desk.plan.supper_files import write_calendar, write_sheet
from cookstove_gui.errors import Problem
from cookstove_gui.gui.widgets.key import Key

_WAYS: tuple[tuple[str, str, str, Callable[[Desk, Path], None]], ...] = (
    ("As a calendar file …", "supper.ics", "Calendar (*.ics)", write_calendar),
    ("As a page to print …", "supper.pdf", "Pages (*.pdf *.html)", write_sheet),
)


class SaveKey(Key):
    """Opens a list of two ways; `told` is empty, or what went wrong."""

    told = Signal(str)

    def __init__(self, desk: Desk) -> None:
        super().__init__("Save …")
        self._desk = desk
        self.setObjectName("supper_save")
        self.setAccessibleName("Save the plan as a calendar file or as a page to print")
        self.setToolTip(self.accessibleName())
        self.clicked.connect(self._open)

    def choices(self) -> QMenu:
        """The ways there are, as a list to open."""
        menu = QMenu(self)
        menu.setObjectName("supper_save_list")
        for words, usual, kind, write in _WAYS:
            action = menu.addAction(words)
            action.triggered.connect(
                lambda _checked=False, usual=usual, kind=kind, write=write: self._save(usual, kind, write)
            )
        return menu

    def _open(self) -> None:
        menu = self.choices()
        menu.popup(self.mapToGlobal(QPoint(self.width() - menu.sizeHint().width(), self.height())))

    def _save(self, usual: str, kind: str, write: Callable[[Desk, Path], None]) -> None:
        name, _ = QFileDialog.getSaveFileName(self, "Save the plan", usual, kind)
        if not name:
            return
        try:
            write(self._desk, Path(name))
        except Problem as problem:
            self.told.emit(problem.sentence)
        else:
            self.told.emit("")
