"""One line on the study of past sessions, with a button to stop it or start it again."""

from PySide6.QtWidgets import QHBoxLayout, QProgressBar, QWidget

from cookstove_gui.desk.studying import study_is_due
from cookstove_gui.gui.background.past_study import PastStudy
from cookstove_gui.gui.desk_link import DeskLink
from cookstove_gui.gui.widgets.form import button, words
from cookstove_gui.gui.widgets.theme import STEP


class StudyLine(QWidget):
    """Shown while a study runs, was stopped or failed; takes no room otherwise."""

    def __init__(self, link: DeskLink, name: str, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._desk = link.desk
        self._study = PastStudy.of(link)
        self.setObjectName(name)
        self._words = words(name=f"{name}_words", role="soft")
        self._bar = QProgressBar()
        self._bar.setObjectName(f"{name}_bar")
        self._bar.setAccessibleName("Progress of the study")
        self._bar.setFixedWidth(180)
        self._press = button("Stop", f"{name}_press", "Stop the study of past sessions")
        self._press.clicked.connect(self._pressed)
        line = QHBoxLayout(self)
        line.setContentsMargins(0, 0, 0, 0)
        line.setSpacing(STEP)
        line.addWidget(self._words, 1)
        line.addWidget(self._bar)
        line.addWidget(self._press)
        self._study.changed.connect(self.show_study)
        self.show_study()

    def show_study(self) -> None:
        """Show how far the study is."""
        running = self._study.is_running
        self._bar.setVisible(running)
        if running:
            learned = self._study.total > 0 and self._study.done >= self._study.total
            what = "Checking past projections …" if learned else "Studying this stove’s past sessions …"
            self._words.setText(what)
            self._bar.setRange(0, 0 if learned else self._study.total)  # 0 to 0 shows that it is busy
            self._bar.setValue(self._study.done)
            self._press.setText("Stop")
        else:
            waiting = "The study was stopped; the latest sessions may be missing here."
            self._words.setText(self._study.problem or waiting)
            self._press.setText("Study now")
        self._press.setAccessibleName(self._press.text())
        self.setVisible(running or bool(self._study.problem) or study_is_due(self._desk))

    def _pressed(self) -> None:
        if self._study.is_running:
            self._study.cancel()
        else:
            self._study.start()
