"""The supper planned again in the background: by every reading and row, by what was done of it, and as time passes."""

from __future__ import annotations

from datetime import datetime, timedelta
from typing import TYPE_CHECKING

from PySide6.QtCore import QObject, Signal

from cookstove_gui.desk.studying import PastSessions
from cookstove_gui.gui.background.job import Job

if TYPE_CHECKING:
    from cookstove_gui.cooking.supper.marks import Supper
    from cookstove_gui.cooking.supper.plan import Plan
    from cookstove_gui.desk import Changed
    from cookstove_gui.gui.desk_link import DeskLink
    from cookstove_gui.supper import SupperInputs

EVERY = timedelta(minutes=1)  # while nothing burns, whose standing would tell that time has passed


class SupperPlanning(QObject):
    """One plan at a time, of the desk's meal; every page of a window shares it."""

    changed = Signal()  # it begins, or something can't be planned

    @classmethod
    def of(cls, link: DeskLink) -> SupperPlanning:
        """The one that belongs to a link, made when it is first asked for."""
        return link.findChild(cls) or cls(link)

    def __init__(self, link: DeskLink) -> None:
        super().__init__(link)
        self._desk = link.desk
        self._past = PastSessions(link.desk)
        self._planned: Supper | None = None  # the meal that the latest plan is of
        self._asked_at: datetime | None = None
        self.problem = ""  # why there is no plan
        self._job = Job(self, self._inputs, self._work_out, self._take, self._refuse)
        link.changed.connect(self._see)
        link.time_passed.connect(self._pass_time)
        self._see_meal()

    @property
    def is_busy(self) -> bool:
        """Whether a plan is being made."""
        return self._job.is_busy

    def _see(self, changed: Changed) -> None:
        if changed.log and self._desk.supper.plan is not None:
            from cookstove_gui.desk.plan.supper_done import follow_log

            follow_log(self._desk)
        if changed.standing or changed.stove or changed.session or changed.study:
            self._ask()
        elif changed.supper:
            self._see_meal()

    def _see_meal(self) -> None:
        """Plan once more where the meal is another one than was planned."""
        if self._desk.supper.supper != self._planned:
            self._ask()

    def _pass_time(self) -> None:
        is_told = self._desk.is_live and bool(self._desk.entries) and self._desk.standing is not None
        if not is_told and (self._asked_at is None or self._desk.clock() - self._asked_at >= EVERY):
            self._ask()

    def _ask(self) -> None:
        supper = self._desk.supper.supper
        if supper is None or not supper.dishes:
            self._planned, self.problem = supper, ""
            self._job.cancel()
            return
        self._job.ask()

    def _inputs(self) -> SupperInputs | None:
        from cookstove_gui.supper import SupperInputs

        desk, supper = self._desk, self._desk.supper.supper
        if supper is None or not supper.dishes:
            return None
        if desk.is_live and desk.entries and desk.standing is None:
            return None  # how the fire stands is being worked out, and asks again
        self._asked_at = desk.clock()
        burning = desk.standing if desk.is_live and desk.entries else None
        session = desk.session if desk.is_live else None
        asked = desk.inputs_about(desk.stove, session, self._asked_at)
        stove = desk.stove.name
        return SupperInputs(
            supper=supper,
            asked=asked,
            standing=burning,
            sessions=lambda: self._past(stove),
            before=desk.supper.plan,
        )

    def _work_out(self, inputs: SupperInputs) -> tuple[Supper, Plan]:
        from cookstove_gui.supper import plan_supper  # brings the solver: not before there is a meal

        return inputs.supper, plan_supper(inputs)

    def _take(self, found: tuple[Supper, Plan]) -> None:
        supper, plan = found
        self._planned, self.problem = supper, ""
        if not self._desk.supper.take(supper, plan):
            self._see_meal()
        self.changed.emit()

    def _refuse(self, sentence: str) -> None:
        self._planned, self.problem = self._desk.supper.supper, sentence
        self.changed.emit()
