"""Past sessions sharpen the belief, and the character survives being written down."""

import json
import random
from dataclasses import replace
from datetime import timedelta

import numpy as np
import pytest

from cookstove_gui.errors import InputProblem
from cookstove_gui.forecast.futures.forecaster import Forecaster
from cookstove_gui.forecast.futures.outlook import outlook
from cookstove_gui.forecast.futures.zones import zones
from cookstove_gui.forecast.learning import kept
from cookstove_gui.forecast.learning.learn import Lessons, learn, lessons
from cookstove_gui.forecast.model.character import Character
from cookstove_gui.stove.entries import Session
from cookstove_gui.stove.stove import with_spots_named
from tests.benchmarks.long_logbook import fire
from tests.following import track
from tests.forecast.logs import MODERATE, STOVE, at, sessions, usual_morning

PAST, BANDS = sessions(3), (MODERATE,)


@pytest.fixture(scope="module")
def early() -> Lessons:
    return lessons(STOVE, PAST[:2], BANDS)


@pytest.fixture(scope="module")
def late() -> Lessons:
    return lessons(STOVE, PAST, BANDS)


@pytest.fixture(scope="module")
def learned(late: Lessons) -> Character:
    return late.character


def test_character_round_trips_through_json(learned):
    again = Character.from_json(json.loads(json.dumps(learned.to_json())))
    first, second = (track(STOVE, usual_morning(40), at(40), character) for character in (learned, again))
    assert np.array_equal(first.ensemble.x, second.ensemble.x)


def test_another_versions_character_is_refused_in_a_sentence():
    with pytest.raises(InputProblem, match="another version"):
        Character.from_json({**Character.generic(STOVE).to_json(), "version": 0})


def test_sessions_may_come_in_any_order():
    short = replace(PAST[0], entries=PAST[0].entries[:20])  # another firing than the next: the order tells
    assert learn(STOVE, [PAST[1], short]).to_json() == learn(STOVE, [short, PAST[1]]).to_json()


def test_known_stove_is_projected_more_sharply(learned):
    entries = usual_morning(30)
    known, unknown = (outlook(track(STOVE, entries, at(30), who), MODERATE) for who in (learned, None))
    assert known.ahead[2].p90 - known.ahead[2].p10 < unknown.ahead[2].p90 - unknown.ahead[2].p10


def test_no_sessions_teach_nothing():
    assert learn(STOVE, []).to_json() == Character.generic(STOVE).to_json()


def test_progress_is_told_and_cancelling_stops():
    told: list[tuple[int, int]] = []
    learn(STOVE, PAST, progress=lambda done, total: told.append((done, total)), cancelled=lambda: len(told) == 1)
    assert told == [(1, 3)]


def test_a_session_without_usable_rows_is_passed_over():
    empty = Session(number=9, stove=STOVE.name, title="empty", entries=())
    assert learn(STOVE, [empty]).firings == 0


def test_spots_that_nobody_ever_reads_stay_near_their_neighbours():
    # a cook who reads the four corners of the cooktop only, all about equally hot, firing after firing
    chance, now = random.Random(7), at(0)
    past = [
        Session(number=day, stove=STOVE.name, title="", entries=fire(now + timedelta(days=day), 30, 2.0, chance))
        for day in range(4)
    ]
    today = fire(now + timedelta(days=4), 70, 1.6, chance)
    heats = {zone.spot: zone.p50 for zone in zones(track(STOVE, today, today[-1].at, learn(STOVE, past)))}
    coolest = min(heats[f"top_{place}"] for place in ("front_left", "front_right", "back_left", "back_right"))
    for middle in ("top_front_middle", "top_back_middle"):
        assert coolest - 26.0 < heats[middle] < coolest + 40.0  # K


def test_a_pass_that_goes_on_from_kept_lessons_finds_what_a_fresh_one_finds(early, late):
    known = kept.from_json(json.loads(json.dumps(kept.to_json(early))))
    assert kept.to_json(lessons(STOVE, PAST, BANDS, known)) == kept.to_json(late)


def test_lessons_of_other_spots_are_not_gone_on_from(early):
    other = lessons(with_spots_named(STOVE, ("top_warming_shelf",)), PAST[:1])
    assert kept.to_json(lessons(STOVE, PAST[:2], BANDS, other)) == kept.to_json(early)


def test_the_record_shows_what_the_character_of_that_day_foretold(early, late):
    told = [row for row in late.record if row.session == PAST[2].title]
    assert told
    for row in told:
        belief = Forecaster(STOVE, early.character).follow(PAST[2].entries, row.made_at)
        assert outlook(belief, MODERATE).band.enters_min == row.enters_min
