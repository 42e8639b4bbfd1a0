"""What the parts of the Plan page share: a form, and beside it the answer, worked out in the background."""

from abc import abstractmethod
from collections.abc import Callable
from typing import Generic, TypeVar

from PySide6.QtCore import Qt
from PySide6.QtGui import QShowEvent
from PySide6.QtWidgets import QFrame, QHBoxLayout, QVBoxLayout, QWidget

from cookstove_gui.desk.heading import first_fires_words
from cookstove_gui.errors import InputProblem
from cookstove_gui.gui.background.job import Job
from cookstove_gui.gui.desk_link import DeskLink
from cookstove_gui.gui.widgets.caution_line import CautionLine
from cookstove_gui.gui.widgets.form import Answer, Field, say, words
from cookstove_gui.gui.widgets.look import Look
from cookstove_gui.gui.widgets.theme import STEP
from cookstove_gui.gui.widgets.type import fix_width, set_role
from cookstove_gui.phrases.edge import Edge

Understood = TypeVar("Understood")
Asked = TypeVar("Asked")
Found = TypeVar("Found")
CAPTION_WIDTH = 92  # px of the design, as all here
FIELD_WIDTH = 112
CHOICE_WIDTH = 220
FORM_WIDTH = 320

_LIGHT = "Light the fire and read the stove on Cook; this page then says {}."
_WORKING = "Working it out …"
_OVER = f"This session is over. {_LIGHT}"


def hairline() -> QFrame:
    """A line that parts what stands above from what stands below."""
    made = QFrame()
    made.setFixedHeight(1)
    set_role(made, "hairline")
    return made


class PlanPart(QWidget, Generic[Asked, Found]):
    """One question of the Plan page; a newer question makes an older answer stale."""

    needs_fire = True  # there is no answer without an open session
    promise = "what to do"  # what it tells once a fire is read
    fills = False  # form and answer take all the height there is

    def __init__(self, link: DeskLink, look: Look, name: str, title: str, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.desk = link.desk
        self.setObjectName(name)
        self.setAccessibleName(title)
        self.form = QVBoxLayout()
        self.form.setContentsMargins(0, 0, 0, 0)
        self.form.setSpacing(STEP)
        self._answer = QWidget()
        self.headline = Answer(name=f"{name}_headline")
        self.headline.setAlignment(Qt.AlignmentFlag.AlignTop | Qt.AlignmentFlag.AlignLeft)
        self.answer_lines = QVBoxLayout(self._answer)
        self.answer_lines.setContentsMargins(0, 0, 0, 0)
        self.answer_lines.setSpacing(STEP)
        self.answer_lines.addWidget(self.headline)
        self.problem = words(role="problem", name=f"{name}_problem")
        self.first_fires = CautionLine(look, f"{name.removeprefix('plan_')}_first_fires")
        self.column = QVBoxLayout(self)
        self.column.setSpacing(2 * STEP)
        self.column.addWidget(self.first_fires)
        self.column.addWidget(self.problem)
        self.column.addLayout(self._side_by_side())
        say(self.problem, "")
        self._asked: Asked | None = None
        self._answered: Asked | None = None  # the question of the answer shown; on a busy machine an older one
        self._job = Job(self, lambda: self._asked, self._answer_to, self._take, self._refuse)

    def _side_by_side(self) -> QHBoxLayout:
        """The form on the left, the answer on the right, both seen at once on a small screen."""
        asked = QWidget()
        fix_width(asked, FORM_WIDTH)
        asked.setLayout(self.form)
        left, right = QVBoxLayout(), QVBoxLayout()
        left.addWidget(asked, int(self.fills))
        right.setSpacing(STEP)
        right.addWidget(self._answer, int(self.fills))
        if not self.fills:
            left.addStretch(1)
        right.addStretch(0 if self.fills else 1)
        whole = QHBoxLayout()
        whole.setSpacing(5 * STEP)
        whole.addLayout(left)
        whole.addLayout(right, 1)
        return whole

    @property
    def is_busy(self) -> bool:
        """Whether an answer is being worked out."""
        return self._job.is_busy

    def showEvent(self, event: QShowEvent) -> None:
        """Answer for the stove as it is now."""
        super().showEvent(event)
        self.show_standing()

    def show_standing(self) -> None:
        """Work the answer out again: the stove or the question has changed."""
        if not self.isVisible():
            return
        not_yet = first_fires_words(self.desk)
        self.first_fires.say(not_yet)
        if not_yet:
            self.show_nothing("")
            return
        if self.needs_fire:
            if self.desk.standing is None or not self.desk.entries:
                self.show_nothing(_LIGHT.format(self.promise))
                return
            if not self.desk.is_live:
                self.show_nothing(_OVER.format(self.promise))
                return
        inputs = self.inputs()
        if inputs is not None:
            if self._answered is None:
                self.show_nothing(_WORKING)
            self._asked = inputs
            self._job.ask()

    @property
    def edge(self) -> Edge:
        """How numbers leave for the screen."""
        now = self.desk.standing.now if self.desk.standing else self.desk.clock()
        return Edge(unit=self.desk.unit, now=now, offset_minutes=self.desk.offset_minutes)

    def field(self, caption: str, name: str, tip: str, unit: str = "", width: int = FIELD_WIDTH) -> Field:
        """A field of this part's form; typing in it asks the question again."""
        made = Field(caption, name, tip, unit=unit, width=width, caption_width=CAPTION_WIDTH)
        made.entered.connect(lambda _text: self.show_standing())
        self.form.addWidget(made)
        return made

    @staticmethod
    def understood(field: Field, read: Callable[[str], Understood], if_empty: Understood) -> Understood | None:
        """What a field means; None, with the sentence beside it, when it cannot be understood."""
        try:
            found = read(field.text) if field.text.strip() else if_empty
        except InputProblem as problem:
            field.show_problem(problem.sentence)
            return None
        field.show_problem("")
        return found

    def show_nothing(self, why: str) -> None:
        """Show no answer, and why; what is still being worked out answers a question that isn't asked any more."""
        self._asked = self._answered = None
        self.headline.setText(why)
        self._answer.setVisible(bool(why))

    @abstractmethod
    def inputs(self) -> Asked | None:
        """What is asked, whole and frozen; none while something typed is not understood."""

    @abstractmethod
    def work_out(self, inputs: Asked) -> Found:
        """The answer; runs in the job's thread."""

    @abstractmethod
    def show_answer(self, answer: Found) -> None:
        """Show the answer."""

    def _answer_to(self, inputs: Asked) -> tuple[Asked, Found]:
        return inputs, self.work_out(inputs)

    def _take(self, found: tuple[Asked, Found]) -> None:
        if self._asked is None:
            return
        self._answered, answer = found
        say(self.problem, "")
        self._answer.show()
        self.show_answer(answer)

    def _refuse(self, sentence: str) -> None:
        if self._asked is None:
            return
        say(self.problem, sentence)
        self.show_nothing("")
