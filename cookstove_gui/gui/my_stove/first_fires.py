"""The first fires of a new stove: what to do, what the log shows done, what to watch; the manual comes first."""

from collections.abc import Callable
from dataclasses import replace
from pathlib import Path

from PySide6.QtCore import Qt
from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import QFileDialog, QFrame, QGridLayout, QHBoxLayout, QVBoxLayout, QWidget

from cookstove_gui.cooking.fires.first_fires import FirstFires, Shortfall, Stage, StageProgress
from cookstove_gui.desk.my_stove.first_fires import (
    FirstFiresPicture,
    Hill,
    certificate_pdf,
    first_fires_picture,
    sign,
    write_certificate,
)
from cookstove_gui.errors import Problem
from cookstove_gui.gui.desk_link import DeskLink
from cookstove_gui.gui.my_stove.certificate import CertificateSheet
from cookstove_gui.gui.my_stove.fire_hills import FireHills
from cookstove_gui.gui.widgets.form import say, words
from cookstove_gui.gui.widgets.key import named_key
from cookstove_gui.gui.widgets.look import Look
from cookstove_gui.gui.widgets.picture import ways_out_key
from cookstove_gui.gui.widgets.printing import ask_and_print
from cookstove_gui.gui.widgets.theme import STEP
from cookstove_gui.gui.widgets.type import set_role
from cookstove_gui.gui.widgets.waiver import Waiver, waive_key
from cookstove_gui.phrases.my_stove.first_fires import always_words, cold_words, hill_words
from cookstove_gui.units import clock_text

_EACH = "Each fire a little hotter, and cold iron in between."


class FirstFiresGuide(QWidget):
    """A hill for each fire, the stages under them, what to do now, and the certificate."""

    def __init__(self, link: DeskLink, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._desk = link.desk
        self.setObjectName("first_fires")
        self._build(look)
        self._waive.clicked.connect(self._ask)
        self._waiver.answered.connect(self._answer)
        self._resume.clicked.connect(lambda: self._set_waived(False))
        self._sheet.write.clicked.connect(self._save_certificate)
        self._sheet.name.entered.connect(self._sign)
        self._sheet.print.clicked.connect(self._print_certificate)
        self.show_progress()

    def _build(self, look: Look) -> None:
        self._standing = words(name="first_fires_standing", role="heading")
        self._always = words(role="note", name="first_fires_always")
        self._waive, self._waiver = waive_key(), Waiver()
        self._resume = named_key("Resume the guide", "first_fires_resume", "Ask for the first fires again")
        self._hills = FireHills(look)
        self._more = ways_out_key("first_fires_more", lambda: {"First fires": self._hills})
        self._stages = QWidget()
        self._stage_row = QHBoxLayout(self._stages)
        self._stage_row.setSpacing(2 * STEP)
        self._plate = QFrame()
        self._plate.setObjectName("first_fires_plate")
        set_role(self._plate, "strip")
        plate = QGridLayout(self._plate)
        plate.setContentsMargins(2 * STEP, STEP, 2 * STEP, STEP)
        plate.setHorizontalSpacing(3 * STEP)
        self._watch_title = words(role="strong", name="first_fires_watch_title")
        self._now = words(role="small", name="first_fires_now")
        self._watch = words(role="small", name="first_fires_watch")
        self._now_title = words(role="strong", name="first_fires_now_title")
        plate.addWidget(self._now_title, 0, 0)
        plate.addWidget(self._watch_title, 0, 1)
        for place, part in enumerate((self._now, self._watch)):
            part.setAlignment(Qt.AlignmentFlag.AlignTop)
            plate.addWidget(part, 1, place)
            plate.setColumnStretch(place, 2 + place)  # more is to be watched than done
        self._sheet = CertificateSheet(look)
        self._problem = words(role="problem", name="first_fires_problem")
        self._foot = QWidget()
        foot = QHBoxLayout(self._foot)
        foot.setContentsMargins(0, 0, 0, 0)
        foot.setSpacing(3 * STEP)
        foot.addWidget(self._plate, 2)
        foot.addWidget(self._sheet, 1)
        foot.addStretch(0)
        head = QHBoxLayout()
        head.addWidget(self._standing, 1)
        for key in (self._more, self._waive):
            head.addWidget(key, 0, Qt.AlignmentFlag.AlignTop)
        whole = QVBoxLayout(self)
        whole.setSpacing(STEP)
        whole.addLayout(head)
        whole.addWidget(self._always)
        whole.addWidget(self._waiver)
        whole.addWidget(self._resume, 0, Qt.AlignmentFlag.AlignLeft)
        whole.addWidget(self._hills, 1)
        whole.addWidget(self._stages)
        whole.addWidget(self._foot)
        whole.addWidget(self._problem)
        whole.addStretch(0)
        say(self._problem, "")

    def show_progress(self) -> None:
        """Show how far the first fires have come."""
        fires = self._desk.first_fires
        self._standing.setText(_standing_words(fires))
        under_way = fires.needed and not fires.waived and not fires.done
        shown = fires.needed and not fires.waived
        say(self._always, always_words() if under_way else "")
        for part in (self._hills, self._stages, self._foot, self._more):
            part.setVisible(shown)
        if shown:
            self._show_fires(fires, first_fires_picture(self._desk))
        self._resume.setVisible(fires.needed and fires.waived)
        self._waiver.hide()
        self._waive.setVisible(under_way)

    def _show_fires(self, fires: FirstFires, found: FirstFiresPicture) -> None:
        desk = self._desk
        clock = clock_text(desk.clock(), desk.offset_minutes)
        self._hills.show_fires(found, desk.unit, clock, f"First fires, {found.done} of {len(found.stages)} done")
        while self._stage_row.count():
            item = self._stage_row.takeAt(0)
            gone = item.widget() if item else None
            if gone is not None:
                gone.setParent(None)
                gone.deleteLater()
        for place, stage in enumerate(fires.stages):
            self._stage_row.addWidget(self._stage(place, stage, found, is_next=stage is fires.next), 1)
        self._indent()
        cooling = next((hill.coming for hill in found.hills if hill.coming), None)
        following = fires.next
        self._plate.setVisible(following is not None)
        if following is not None:
            counted = bool(found.hills) and not found.hills[-1].missing
            now = cold_words(cooling.cold_min, desk.edge) if cooling and counted else following.stage.doing
            self._now.setText(now)
            place = fires.stages.index(following) + 1
            burns = bool(found.hills) and found.hills[-1].burns
            fire = f"{'Now' if burns else 'Next'}: first fire {place} of {len(fires.stages)}"
            title = "Now" if cooling and counted else fire
            self._now_title.setText(title)
            self._watch_title.setText(f"Watch at the {following.stage.title.lower()}")
            self._watch.setText(following.stage.watch)
        self._sheet.show_certificate(found.certificate)

    def _stage(self, place: int, found: StageProgress, picture: FirstFiresPicture, *, is_next: bool) -> QWidget:
        made = QWidget()
        made.setObjectName(f"stage_{found.stage.key}")
        column = QVBoxLayout(made)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(2)
        burns = any(hill.burns and hill.place == place for hill in picture.hills)
        state = "under way" if burns else _state(found, is_next=is_next)
        heading = words(f"{found.stage.title}: {state}", role="strong")
        made.setAccessibleName(heading.text())
        column.addWidget(heading)
        for text in self._stage_words(place, found.stage, picture):
            column.addWidget(words(text, role="note"))
        column.addStretch(1)
        return made

    def _stage_words(self, place: int, stage: Stage, picture: FirstFiresPicture) -> list[str]:
        own = [hill for hill in picture.hills if hill.place == place]
        said = [
            hill_words(hill.minutes, hill.loads, hill.hottest, hill.counted, _told(hill), self._desk.unit)
            for hill in sorted(own, key=lambda hill: bool(hill.missing))
        ]
        return said or [f"{stage.line[:1].upper()}{stage.line[1:]}."]

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Words stand under their hills."""
        super().resizeEvent(event)
        self._indent()

    def _indent(self) -> None:
        left = round(self._hills.columns()[0][0])
        self._stage_row.setContentsMargins(left, 0, 0, 0)

    def _ask(self) -> None:
        self._waive.hide()
        self._waiver.ask()

    def _answer(self, waived: bool) -> None:
        if waived:
            self._set_waived(True)
        else:
            self._waive.show()
            self._waive.setFocus()

    def _set_waived(self, waived: bool) -> None:
        self._desk.save_stove(replace(self._desk.stove, first_fires_waived=waived))
        self.show_progress()

    def _sign(self, name: str) -> None:
        if self._sheet.name.takes(lambda: sign(self._desk, name)):
            self.show_progress()

    def _save_certificate(self) -> None:
        name, _ = QFileDialog.getSaveFileName(self, "Save the certificate", "first fires.pdf", "Pages (*.pdf *.html)")
        if not name:
            return
        self._try(lambda: write_certificate(self._desk, Path(name)))

    def _print_certificate(self) -> None:
        title = f"First fires of {self._desk.stove.name}"
        self._try(lambda: ask_and_print(certificate_pdf(self._desk), title, self))

    def _try(self, act: Callable[[], object]) -> None:
        """Do it; what stands in the way is told below the sheet."""
        try:
            act()
        except Problem as problem:
            say(self._problem, problem.sentence)
        else:
            say(self._problem, "")


def _told(hill: Hill) -> tuple[Shortfall, ...]:
    return () if hill.burns else hill.missing[:1]  # what a fire still burning lacks may yet come


def _state(found: StageProgress, *, is_next: bool) -> str:
    if found.done:
        return "done"
    if found.missing:
        return "tried, not yet counted"
    return "next" if is_next else "later"


def _standing_words(fires: FirstFires) -> str:
    if not fires.needed:
        return "This stove is not marked as new, so it needs no first fires. If it never had one, say so under Set-up."
    if fires.waived:
        return "The first fires are waived. The stove’s manual comes first; where it says otherwise, do as it says."
    if fires.done:
        return "All first fires are done, by what the log shows."
    return _EACH
