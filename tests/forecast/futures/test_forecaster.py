"""A forecaster says the same however the rows came to it, and a slip proves nothing."""

from dataclasses import replace

import numpy as np

from cookstove_gui.forecast.answers import Action, ActionKind
from cookstove_gui.forecast.futures.forecaster import LOOKED_BACK, Forecaster
from cookstove_gui.forecast.futures.projection import project
from cookstove_gui.forecast.model.character import Character
from cookstove_gui.forecast.model.merit import LEADS, Merit
from cookstove_gui.forecast.model.plain import MINUTES, Plain, Rise
from cookstove_gui.forecast.tracking import tracker
from cookstove_gui.forecast.tracking.proof import REMEMBERED, WIDTH_LEADS, Lean, Proof
from cookstove_gui.forecast.tracking.tracker import Tracker
from cookstove_gui.stove.entries import Kind
from tests.forecast.logs import STOVE, Log, at, usual_morning

MORNING = usual_morning(70)


def test_row_by_row_and_at_once_are_the_same():
    along = Forecaster(STOVE)
    for row in MORNING:
        belief = along.follow([one for one in MORNING if one.at <= row.at], row.at)
    fresh = Forecaster(STOVE).follow(MORNING, MORNING[-1].at)
    assert belief.proof == fresh.proof
    assert fresh.proof.width != 1.0
    assert fresh.proof.lean is not None
    np.testing.assert_array_equal(belief.ensemble.x, fresh.ensemble.x)


def test_a_row_taken_back_is_forgotten():
    reading = next(row for row in MORNING if row.spot == "oven_centre" and row.at > at(50))
    wrong = [replace(row, value="150") if row is reading else row for row in MORNING]
    along = Forecaster(STOVE)
    along.follow(wrong, at(70))
    assert along.follow(MORNING, at(70)).proof == Forecaster(STOVE).follow(MORNING, at(70)).proof


def test_between_readings_nothing_new_is_proved():
    along = Forecaster(STOVE)
    assert along.follow(MORNING, at(70)).proof == along.follow(MORNING, at(85)).proof


def test_a_slip_proves_nothing():
    log = Log()
    for row in MORNING:
        log.entries.append(replace(row, number=len(log.entries) + 1))
    before = Forecaster(STOVE).follow(log.entries, at(70)).proof
    log.reads(78, "oven_centre", 33.0)
    after = Forecaster(STOVE).follow(log.entries, at(78))
    assert after.doubted
    assert after.proof == before


def test_what_is_proved_widens_the_futures_of_the_oven_and_of_nothing_else():
    belief = Forecaster(STOVE).follow(MORNING, at(70))
    plain = Tracker(STOVE).follow(MORNING, at(70))
    assert belief.proof.width != 1.0
    told, bare = project(belief), project(plain)
    ratio = np.ptp(told.of("oven_centre"), axis=0) / np.ptp(bare.of("oven_centre"), axis=0)
    assert np.allclose(ratio, belief.proof.width)
    np.testing.assert_array_equal(told.of("top_front_left"), bare.of("top_front_left"))


def test_the_futures_of_the_oven_lean_by_what_is_proved_and_no_others():
    belief = Forecaster(STOVE).follow(MORNING, at(70))
    leaned = replace(belief, proof=Proof(1.0, Lean(at(70), tuple(MINUTES))))
    told, bare = project(leaned), project(replace(belief, proof=Proof()))
    moved = told.of("oven_centre") - bare.of("oven_centre")
    assert np.allclose(moved[:, :7], told.minutes[:7])  # 30 minutes ahead by 30 K, every future alike
    np.testing.assert_array_equal(told.of("top_front_left"), bare.of("top_front_left"))


def test_what_wood_would_do_is_told_whole_however_the_futures_lean():
    """A plain forecaster knows nothing of what might be done now, so it must not take a share of what that does."""
    belief = Forecaster(STOVE).follow(MORNING, at(70))
    wood = Action(kind=ActionKind.WOOD, value=2.0)
    plain, leaned = (replace(belief, proof=Proof(1.0, lean)) for lean in (None, Lean(at(70), tuple(MINUTES))))
    gains = [project(one, wood).of("oven_centre") - project(one).of("oven_centre") for one in (plain, leaned)]
    assert np.median(gains[0][:, 8]) > 2.0
    assert np.allclose(*gains)


def test_what_the_stove_did_before_and_how_that_held_are_known_to_its_next_session():
    rows = [row for row in MORNING if row.at <= at(40)]
    hot = Rise(np.arange(0.0, 200.0, 10.0), np.full(20, 300.0) + 4.0 * np.arange(0.0, 200.0, 10.0))
    generic = Character.generic(STOVE)
    plain, with_rises, distrusted = (
        Forecaster(STOVE, one).follow(rows, at(40)).proof.lean
        for one in (
            generic,
            replace(generic, rises=(hot,) * 5),
            replace(generic, rises=(hot,) * 5, merit=Merit(1e6 * np.tile(np.eye(len(Plain)), (3, 1, 1)))),
        )
    )
    assert plain is not None
    assert with_rises is not None
    assert distrusted is not None
    assert plain.kelvin != with_rises.kelvin
    assert np.allclose(distrusted.kelvin, 0.0, atol=0.1)


def test_what_a_session_proves_is_the_same_whenever_it_is_asked():
    along = Forecaster(STOVE)
    along.follow([row for row in MORNING if row.at <= at(40)], at(40))
    merit, fresh = along.merit(MORNING, at(70)), Forecaster(STOVE).merit(MORNING, at(70))
    np.testing.assert_array_equal(merit.towards, fresh.towards)
    assert np.any(merit.towards != 0.0)


def test_readings_are_kept_as_long_as_anything_said_now_hangs_on_them():
    """What is remembered now was told by what was remembered then, and both go back by a lead."""
    assert 2.0 * REMEMBERED + WIDTH_LEADS[1] + LEADS[-1][1] <= LOOKED_BACK


def test_without_an_oven_reading_nothing_is_proved():
    rows = [row for row in MORNING if row.kind is not Kind.READING or row.spot != "oven_centre"]
    proof = Forecaster(STOVE).follow(rows, at(70)).proof
    assert (proof.width, proof.lean) == (1.0, None)


def test_a_long_log_is_followed_once_though_its_front_is_left_out(monkeypatch):
    """Its earlier moments are of the same rows, or each would be followed from the start again."""
    monkeypatch.setattr(tracker, "MOST_FOLLOWED", 40)
    monkeypatch.setattr(tracker, "BLOCK", 10)
    log = Log().add(0, Kind.LIT).add(0, Kind.AIR, value="0.6")
    for place in range(58):  # so that just as many rows are left as are followed at most, and the settings besides
        log.reads(5.0 + 5.0 * place, "oven_centre", 200.0 + place)
    followed = []
    run = Tracker._run
    monkeypatch.setattr(Tracker, "_run", lambda self, *given: (followed.append(1), run(self, *given))[1])
    Forecaster(STOVE).follow(log.entries, at(310))
    assert len(followed) <= 2 * 42  # each row, and each reading's own moment
