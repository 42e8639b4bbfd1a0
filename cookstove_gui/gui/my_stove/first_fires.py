"""The first fires of a new stove: what to do, what the log shows done, what to watch; the manual comes first."""

from dataclasses import replace

from PySide6.QtWidgets import QFrame, QVBoxLayout, QWidget

from cookstove_gui.cooking.fires.first_fires import FirstFires, StageProgress
from cookstove_gui.gui.desk_link import DeskLink
from cookstove_gui.gui.widgets.form import button, row, say, words
from cookstove_gui.gui.widgets.theme import STEP
from cookstove_gui.gui.widgets.type import set_role
from cookstove_gui.phrases.my_stove.first_fires import always_words, next_fire_words, shortfall_words

_WAIVE = (
    "Waive them only if the stove’s manual asks for none, or if they were done before this log began. "
    "Until they are done or waived, no food is suggested. "
    "The manual comes first; where it says otherwise, do as it says."
)


class FirstFiresGuide(QWidget):
    """The stages, in order."""

    def __init__(self, link: DeskLink, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._desk = link.desk
        self.setObjectName("first_fires")
        self._standing = words(name="first_fires_standing")
        self._always = words(role="caution", name="first_fires_always")
        self._stages = QVBoxLayout()
        self._stages.setSpacing(2 * STEP)
        self._waive = button("Waive the rest …", "first_fires_waive", "Skip the rest of the first fires")
        self._sure = button("Waive them", "first_fires_sure", "Stop asking for first fires")
        self._keep = button("Keep the guide", "first_fires_keep", "Carry on with the first fires")
        self._resume = button("Resume the guide", "first_fires_resume", "Ask for the first fires again")
        self._waive_words = words(_WAIVE, name="first_fires_waive_words")
        column = QVBoxLayout(self)
        column.setSpacing(2 * STEP)
        column.addWidget(words("First fires of a new stove", role="heading"))
        column.addWidget(self._standing)
        column.addWidget(self._always)
        column.addLayout(self._stages)
        column.addWidget(self._waive_words)
        column.addLayout(row(self._waive, self._sure, self._keep, self._resume))
        column.addStretch(1)
        self._waive.clicked.connect(lambda: self._ask(True))
        self._keep.clicked.connect(lambda: self._ask(False))
        self._sure.clicked.connect(lambda: self._set_waived(True))
        self._resume.clicked.connect(lambda: self._set_waived(False))
        self.show_progress()

    def show_progress(self) -> None:
        """Show how far the first fires have come."""
        fires = self._desk.first_fires
        self._standing.setText(_standing_words(fires))
        under_way = fires.needed and not fires.waived and not fires.done
        say(self._always, always_words() if under_way else "")
        while self._stages.count():
            item = self._stages.takeAt(0)
            gone = item.widget() if item else None
            if gone is not None:
                gone.hide()
                gone.deleteLater()
        if fires.needed and not fires.waived:
            for number, stage in enumerate(fires.stages, start=1):
                self._stages.addWidget(self._stage(number, stage, is_next=stage is fires.next))
        self._resume.setVisible(fires.needed and fires.waived)
        self._waive.setVisible(under_way)
        self._ask(False)

    def _stage(self, number: int, found: StageProgress, *, is_next: bool) -> QFrame:
        made = QFrame()
        made.setObjectName(f"stage_{found.stage.key}")
        column = QVBoxLayout(made)
        column.setSpacing(STEP // 2)
        state = self._state(found, is_next)
        heading = words(f"{number}. {found.stage.title}: {state}", role="good" if found.done else "heading")
        made.setAccessibleName(heading.text())
        column.addWidget(heading)
        if found.done:
            return made
        if is_next:
            set_role(made, "strip")
        column.addWidget(words(found.stage.doing))
        column.addWidget(words(found.stage.watch, role="soft"))
        for missing in found.missing:
            column.addWidget(words(shortfall_words(missing), role="problem"))
        return made

    def _state(self, found: StageProgress, is_next: bool) -> str:
        if found.done:
            titles = {summary.number: summary.title for summary in self._desk.sessions}
            return f"done, in “{titles.get(found.session or 0, 'an earlier session')}”"
        if found.missing:
            return "tried, not yet counted"
        return "next" if is_next else "later"

    def _ask(self, asking: bool) -> None:
        under_way = self._desk.first_fires.next is not None
        self._waive_words.setVisible(asking)
        self._sure.setVisible(asking)
        self._keep.setVisible(asking)
        self._waive.setVisible(under_way and not asking)
        if asking:
            self._keep.setFocus()

    def _set_waived(self, waived: bool) -> None:
        self._desk.save_stove(replace(self._desk.stove, first_fires_waived=waived))
        self.show_progress()


def _standing_words(fires: FirstFires) -> str:
    if not fires.needed:
        return "This stove is not marked as new, so it needs none. If it never had a fire, say so under Set-up."
    if fires.waived:
        return "The first fires are waived. The stove’s manual comes first; where it says otherwise, do as it says."
    if fires.done:
        return "All first fires are done, by what the log shows."
    return next_fire_words(fires)
