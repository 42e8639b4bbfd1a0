"""What a planned supper says at one moment, and the plan that it is said of."""

from dataclasses import dataclass
from datetime import timedelta

from cookstove_gui.cooking.supper.dish_text import usual_dishes
from cookstove_gui.cooking.supper.marks import Supper
from cookstove_gui.cooking.supper.moments import moments
from cookstove_gui.cooking.supper.plan import Plan
from cookstove_gui.phrases.edge import Edge
from cookstove_gui.phrases.heading import detail_rungs, rungs
from cookstove_gui.phrases.plan.supper import chance_line, fits_words, moment_words, step_words
from cookstove_gui.situation import Inputs, Standing
from cookstove_gui.stove.entries import Session
from cookstove_gui.supper import SupperInputs, plan_supper
from tests.voice.said import Said

DISHES = ("apple_pie", "greens")
TABLE_IN = timedelta(hours=2)
EVERY_MIN = 3  # a meal is planned at every third minute of the clock: it costs as much as all else at a moment


@dataclass(frozen=True, slots=True, kw_only=True)
class SupperAnswers:
    """The sentences, and the plan."""

    plan: Plan
    said: tuple[Said, ...]


def supper_answers(asked: Inputs, standing: Standing, edge: Edge, past: tuple[Session, ...]) -> SupperAnswers | None:
    """A pie and greens for in two hours; none before anything was done, while first fires run, or at other minutes."""
    if not standing.rows or standing.first_fires.next is not None or standing.now.minute % EVERY_MIN:
        return None
    known = {dish.key: dish for dish in usual_dishes()}
    supper = Supper(table_at=standing.now + TABLE_IN, dishes=tuple(known[key] for key in DISHES))
    plan = plan_supper(SupperInputs(supper=supper, asked=asked, standing=standing, sessions=lambda: past))
    texts = [" ".join(fits_words(plan))]
    texts += [moment_words(one, plan, standing.stove, edge) for one in moments(plan)]
    texts += [f"{step_words(step, plan)}: {chance_line(step)}" for step in plan.steps if chance_line(step)]
    heading = rungs(standing, edge, plan)[0]
    detail = next(iter(detail_rungs(standing, edge, plan)), "")
    return SupperAnswers(
        plan=plan,
        said=(
            *(Said(place="supper", text=text) for text in texts),
            Said(place="supper heading", text=f"{heading} {detail}".strip()),
        ),
    )
