"""What the Plan page answers at one moment, and the numbers that its sentences may name."""

from dataclasses import dataclass
from datetime import datetime

from cookstove_gui.cooking.fit.placement import Pot
from cookstove_gui.cooking.fit.tasks import task_of
from cookstove_gui.desk.plan.bake import BakeChoice, BakeInputs, plan_bake
from cookstove_gui.desk.plan.kept_pots import KeptPots, moved
from cookstove_gui.desk.plan.pots import PotRow, PotsInputs, headline_of, line_of, plan_pots
from cookstove_gui.desk.plan.wood import WoodChoice, WoodInputs, plan_wood, wood_options
from cookstove_gui.forecast.answers import Quantiles
from cookstove_gui.phrases.edge import Edge
from cookstove_gui.phrases.plan.bake import bake_against_steady, bake_headline
from cookstove_gui.phrases.plan.wood import load_words, wood_headline, wood_spans
from cookstove_gui.physics.air import standard_pressure
from cookstove_gui.situation import Inputs, Standing
from cookstove_gui.stove.entries import USUAL_SPLIT, Session
from tests.voice.said import Said

POTS = ("simmer", "fry_eggs", "fry_bacon", "keep_warm")
BAKED = "bread_loaf"
NO_POTS = KeptPots()
_AT_HEAT_MIN = 60.0
_THICKNESS = 0.08  # m, of the splits asked about


@dataclass(frozen=True, slots=True, kw_only=True)
class PlanAnswers:
    """The sentences, and what they are said of."""

    said: tuple[Said, ...] = ()
    pots: tuple[PotRow, ...] = ()  # where each pot goes; empty while the page offers none
    kept: KeptPots = NO_POTS  # what the next answer about them goes on from
    gain: float = 0.0  # of the moves, in chance
    instants: tuple[datetime, ...] = ()
    spans: tuple[Quantiles, ...] = ()  # min
    lengths: tuple[float, ...] = ()  # min


def plan_answers(
    asked: Inputs, standing: Standing, edge: Edge, past: tuple[Session, ...], kept: KeptPots = NO_POTS
) -> PlanAnswers:
    """Pots, a loaf and the wood for an hour of baking; nothing before the first row."""
    if not standing.rows:
        return PlanAnswers()
    if standing.first_fires.next is not None:  # every part of the page then shows the first fires in its place
        return PlanAnswers()
    return _joined(_pots(standing, edge, kept), _bake(standing, edge), _wood(asked, standing, past))


def _joined(*parts: PlanAnswers) -> PlanAnswers:
    return PlanAnswers(
        said=tuple(one for part in parts for one in part.said),
        pots=tuple(one for part in parts for one in part.pots),
        kept=next((part.kept for part in parts if part.kept.pots), NO_POTS),
        gain=sum(part.gain for part in parts),
        instants=tuple(one for part in parts for one in part.instants),
        spans=tuple(one for part in parts for one in part.spans),
        lengths=tuple(one for part in parts for one in part.lengths),
    )


def _pots(standing: Standing, edge: Edge, kept: KeptPots) -> PlanAnswers:
    asked = kept if kept.pots else KeptPots(pots=tuple(Pot(task=key) for key in POTS))
    plan = plan_pots(PotsInputs(standing=standing, stove=standing.stove, kept=asked))
    texts = [headline_of(plan, edge)[0]]
    for row in plan.rows:
        line = line_of(row, edge)
        texts.append(f"{row.task.name}: {line.where} {line.chance}".strip())
    return PlanAnswers(
        said=tuple(Said(place="pots", text=text) for text in texts),
        pots=plan.rows,
        kept=moved(plan.kept),
        gain=plan.gain,
    )


def _bake(standing: Standing, edge: Edge) -> PlanAnswers:
    """A loaf that would go in now."""
    pressure = float(standard_pressure(standing.stove.altitude))
    plan = plan_bake(
        BakeInputs(standing=standing, stove=standing.stove, pressure=pressure, choice=BakeChoice(key=BAKED))
    )
    answer = plan.answer
    if answer is None:
        return PlanAnswers()
    texts = (bake_headline(plan, edge), bake_against_steady(answer, task_of(answer.bake.task), edge))
    return PlanAnswers(
        said=tuple(Said(place="bake", text=text) for text in texts if text),
        spans=(answer.done_min,),
        lengths=tuple(abs(one) for one in (answer.recipe_min, answer.late_min) if one is not None),
    )


def _wood(asked: Inputs, standing: Standing, past: tuple[Session, ...]) -> PlanAnswers:
    choice = WoodChoice(
        wood=wood_options()[0][0],
        moisture="seasoned",
        split=USUAL_SPLIT,
        thickness=_THICKNESS,
        at_heat_min=_AT_HEAT_MIN,
    )
    plan = plan_wood(
        WoodInputs(
            stove=standing.stove,
            band=standing.band,
            standing=standing,
            entries=asked.rows,
            choice=choice,
            past=lambda _name: past,
        )
    )
    texts = (
        wood_headline(plan.mass, plan.splits, "F"),
        wood_spans(plan.warm_up_min, plan.warm_up_from, choice.at_heat_min, standing.band),
        load_words(plan.load.to_coals_min, plan.air),
    )
    return PlanAnswers(
        said=tuple(Said(place="wood", text=text) for text in texts),
        spans=(plan.load.to_coals_min,),
        lengths=(plan.warm_up_min, _AT_HEAT_MIN),
    )
