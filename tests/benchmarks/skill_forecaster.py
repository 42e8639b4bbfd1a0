"""The one place where the skill study touches the forecast under test."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from datetime import datetime

import numpy as np

from cookstove_gui.forecast.answers import Quantiles, Zone
from cookstove_gui.forecast.futures.forecaster import Forecaster
from cookstove_gui.forecast.futures.outlook import arrivals, outlook_of, oven_ahead
from cookstove_gui.forecast.futures.zones import zones
from cookstove_gui.forecast.learning.learn import learn
from cookstove_gui.forecast.model.character import Character
from cookstove_gui.stove.entries import Entry, Session
from cookstove_gui.stove.stove import Stove
from tests.benchmarks.skill_questions import AHEAD, HORIZON, Answer, Firing, FloatArray, Question
from tests.following import track

LATER = 0.65  # found on 18 stoves of each world, also with any one of the three worlds left out


def character_of(stove: Stove, past: Sequence[Firing]) -> Character | None:
    """What the forecast learns of a stove from past sessions; none without any."""
    if not past:
        return None
    sessions = [
        Session(number=number, stove=stove.name, title=f"past {number}", entries=session.entries)
        for number, session in enumerate(past, start=1)
    ]
    return learn(stove, sessions)


class Follower:
    """The forecast alongside one session; what it says at a moment is what a fresh start at that moment says."""

    def __init__(self, stove: Stove, character: Character | None) -> None:
        self._forecaster = Forecaster(stove, character)

    def answer(self, question: Question) -> Answer:
        """What the forecast says at one question, from the rows up to then."""
        belief = self._forecaster.follow(question.entries, question.now)
        ahead = oven_ahead(belief, band=question.band)
        said = outlook_of(ahead, belief.stove, question.band, AHEAD)
        enters, _ = arrivals(ahead.minutes, ahead.kelvin[:, :, 0], question.band)
        line = said.band.line_enters_min
        return Answer(
            quantiles=np.array([[ahead.p10, ahead.p50, ahead.p90] for ahead in said.ahead]),
            chance_30=said.ahead[1].chance_in_band,
            enters=_minutes(said.band.enters_min),
            now=np.array([said.oven.p10, said.oven.p50, said.oven.p90], dtype=np.float64),
            instants={"as told": np.inf if line is None else line, "two in three": later_of_those_that_come(enters)},
        )


def later_of_those_that_come(enters: FloatArray) -> float:
    """When LATER of the futures' arrivals (futures,) that ever are have been; infinite where fewer than half are."""
    comes = enters[np.isfinite(enters)]
    return float(np.quantile(comes, LATER)) if len(comes) >= 0.5 * len(enters) else np.inf


@dataclass(frozen=True, slots=True)
class Estimator:
    """What the forecast says of every spot at a moment, with what `past` sessions taught."""

    characters: Mapping[tuple[int, int], Character | None]  # by the stove's seed and the count of past sessions
    past: int

    def __call__(self, session: Firing, entries: tuple[Entry, ...], now: datetime) -> tuple[Zone, ...]:
        return zones(track(session.stove, entries, now, self.characters[session.stove_seed, self.past]))


def _minutes(quantiles: Quantiles) -> FloatArray:
    return np.array(
        [HORIZON if minutes is None else minutes for minutes in (quantiles.p10, quantiles.p50, quantiles.p90)],
        dtype=np.float64,
    )
