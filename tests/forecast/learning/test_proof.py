"""Learning must prove itself: what was learned is kept unless it foretold sessions clearly worse than generic did."""

from dataclasses import replace
from datetime import timedelta
from functools import cache

import numpy as np
import pytest

from cookstove_gui.forecast.learning import learn
from cookstove_gui.forecast.learning.hindsight import Hindcast, corrections_from
from cookstove_gui.forecast.learning.learn import KEPT, LEARNED_SESSIONS, Lessons, Looked, lessons, proven
from cookstove_gui.forecast.model.character import Character
from cookstove_gui.stove.entries import Session
from tests.forecast.logs import MODERATE, STOVE, Log, sessions

GENERIC = Character.generic(STOVE)
LEARNED = replace(
    GENERIC,
    firings=3,
    mean=GENERIC.mean + 0.1,
    covariance=0.5 * GENERIC.covariance,
    spot_share=GENERIC.spot_share + 0.1,
)


def _looked(loss: float, generic_loss: float = 1.0) -> Looked:
    """A session in which the learned projections missed by 14 K and lost so much, the generic ones hit."""
    window = (390.0, 400.0, 410.0)
    return Looked(
        casts=(Hindcast(30.0, window, 414.0, loss),),
        generic=(Hindcast(30.0, window, 400.0, generic_loss),),
        asked=(),
    )


def _is_kept(*looked: Looked) -> bool:
    found = proven(LEARNED, GENERIC, looked)
    assert np.array_equal(found.mean, LEARNED.mean) == np.array_equal(found.covariance, LEARNED.covariance)
    return np.array_equal(found.mean, LEARNED.mean)


@pytest.mark.parametrize(("loss", "kept"), [(0.5, True), (1.0, True), (1.14, True), (1.16, False), (5.0, False)])
def test_what_was_learned_is_kept_unless_it_is_clearly_worse(loss, kept):
    assert _is_kept(*[_looked(loss)] * 20) is kept


def test_losses_are_added_up_over_the_sessions():
    assert _is_kept(_looked(3.0), *[_looked(1.0)] * 19)
    assert not _is_kept(_looked(5.0), *[_looked(1.0)] * 19)
    # Twice the loss where there was little to lose is no proof against it.
    assert _is_kept(_looked(0.2, 0.1), _looked(10.0, 10.0))


def test_the_latest_thirty_sessions_are_judged():
    assert _is_kept(_looked(1e3), *[_looked(1.0)] * 30)
    assert not _is_kept(_looked(1e3), *[_looked(1.0)] * 29)


def test_what_is_given_up_is_the_parameters_and_nothing_else():
    given_up = proven(LEARNED, GENERIC, [_looked(5.0)])
    assert np.array_equal(given_up.mean, GENERIC.mean)
    assert np.array_equal(given_up.covariance, GENERIC.covariance)
    assert (given_up.firings, given_up.habits) == (LEARNED.firings, LEARNED.habits)
    assert np.array_equal(given_up.spot_share, LEARNED.spot_share)


def test_widths_are_those_of_the_character_that_is_used():
    kept, given_up = (proven(LEARNED, GENERIC, [_looked(loss)] * 20).corrections for loss in (1.0, 5.0))
    assert kept == corrections_from(_looked(1.0).casts * 20)
    assert given_up == corrections_from(_looked(5.0).generic * 20)
    assert kept != given_up


def test_nothing_looked_back_on_keeps_what_was_learned():
    assert _is_kept()


@cache
def _lessons(count: int) -> Lessons:
    return lessons(STOVE, sessions(count))


def test_each_session_is_judged_by_what_the_ones_before_it_taught():
    # The same morning every day: the first is projected as by any stove, the later ones better and better.
    looked = _lessons(3).looked
    assert [len(one.casts) == len(one.generic) > 0 for one in looked] == [True] * 3
    assert looked[0].casts == looked[0].generic
    assert looked[1].generic == looked[2].generic == looked[0].generic
    assert looked[1].casts != looked[1].generic
    losses = [sum(cast.loss for cast in one.casts) for one in looked]
    assert losses[2] < losses[1] < losses[0]
    # What is judged never knows the session itself: a first session says the same, whatever followed it.
    assert _lessons(1).looked[0].casts == looked[0].casts


def _only_read(days: int) -> list[Session]:
    """A session a day, of one reading that is hotter by the day."""
    return [
        Session(number=day, stove=STOVE.name, title=str(day), entries=(replace(row, at=row.at + timedelta(days=day)),))
        for day in range(days)
        for row in Log().reads(0, "oven_centre", 70 + 2 * day).entries
    ]


@pytest.mark.parametrize(("bands", "looked_at"), [((MODERATE,), 50), ((), 38)])
def test_the_earliest_of_very_many_sessions_are_learned_from_without_being_looked_at(bands, looked_at):
    found = lessons(STOVE, _only_read(52), bands)
    assert (found.sessions, len(found.looked), found.learned.firings) == (52, looked_at, 52)


def test_a_fresh_pass_begins_at_the_latest_hundred_sessions(monkeypatch):
    assert KEPT**LEARNED_SESSIONS < 0.05
    monkeypatch.setattr(learn, "LEARNED_SESSIONS", 3)
    found, latest = (lessons(STOVE, _only_read(5)[first:]) for first in (0, 2))
    assert (found.sessions, found.learned.firings) == (5, 5)
    assert found.looked == latest.looked
    assert np.array_equal(found.learned.mean, latest.learned.mean)
    # One that goes on from what is known has its earlier sessions behind it.
    known = lessons(STOVE, _only_read(5)[:2])
    assert not np.array_equal(lessons(STOVE, _only_read(5), known=known).learned.mean, latest.learned.mean)
