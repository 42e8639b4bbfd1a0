"""The bells of a planned supper, and its next steps as the foot of the tab shows them."""

from dataclasses import dataclass

from cookstove_gui.cooking.supper.alarms import AlarmKind, Answer, is_silent
from cookstove_gui.cooking.supper.moments import Moment, MomentKind, moments
from cookstove_gui.cooking.supper.plan import Plan, PlannedStep
from cookstove_gui.desk.alarms.kept import alarm_settings, kept_answers
from cookstove_gui.desk.alarms.moments import kind_of, planned_key
from cookstove_gui.desk.desk import Desk
from cookstove_gui.phrases.edge import Edge
from cookstove_gui.phrases.plan.supper import moment_words

_NEXT = 5  # steps in the foot, beside what is to do now


@dataclass(frozen=True, slots=True, kw_only=True)
class Bell:
    """An alarm that is to ring, and whether its sound was put off."""

    key: str
    is_silent: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class NextStep:
    """One step to come."""

    clock: str  # "now" where it is due
    words: str
    bell: Bell | None


@dataclass(frozen=True, slots=True, kw_only=True)
class Bells:
    """What was answered of alarms, and the kinds that call for nobody."""

    answers: tuple[Answer, ...]
    left_out: frozenset[AlarmKind]

    @classmethod
    def of(cls, desk: Desk) -> "Bells":
        """As the logbook has them."""
        return cls(answers=kept_answers(desk), left_out=alarm_settings(desk).left_out)

    def at(self, step: PlannedStep, kind: MomentKind) -> Bell | None:
        """The bell at a moment of a step; none where alarms of its kind were left out."""
        if kind_of(step, kind) in self.left_out:
            return None
        key = planned_key(step.key, kind)
        return Bell(key=key, is_silent=is_silent(self.answers, key))


def next_steps(desk: Desk, plan: Plan, edge: Edge, bells: Bells) -> tuple[NextStep, ...]:
    """What is due first, then the next steps in their order."""
    due = desk.supper.due
    coming = [one for one in moments(plan) if one != due]

    def shown(one: Moment) -> NextStep:
        # What is under way has no clock behind now.
        clock = "now" if one == due or one.at <= edge.now else edge.at(one.at)
        words = moment_words(one, plan, desk.stove, edge)
        return NextStep(clock=clock, words=words, bell=bells.at(one.step, one.kind))

    return tuple(shown(one) for one in ([due, *coming] if due is not None else coming)[: _NEXT + 1])
