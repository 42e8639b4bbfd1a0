"""The past as it is known now: corrected by what was read later, the same however the log was followed."""

from datetime import timedelta

import numpy as np
import pytest

from cookstove_gui.forecast.futures.outlook import outlook
from cookstove_gui.forecast.tracking.belief import trace, trace_as_believed
from cookstove_gui.forecast.tracking.tracker import Tracker
from tests.following import track
from tests.forecast.logs import MODERATE, STOVE, Log, at, usual_morning


def test_a_later_reading_corrects_the_past() -> None:
    """Forty minutes without a reading of the oven, then one far hotter than believed: it was hotter before, too."""
    before = usual_morning()
    last = max(row.at for row in before)
    now = last + timedelta(minutes=40)
    said = trace_as_believed(track(STOVE, before, now))
    surprise = said.p50[-1] + 40.0
    log = Log()
    log.entries = list(before)
    log.reads((now - at(0)).total_seconds() / 60, "oven_centre", (surprise - 273.15) * 1.8 + 32)
    belief = track(STOVE, log.entries, now + timedelta(seconds=30))
    half_way = last + timedelta(minutes=25)
    then = np.interp(half_way.timestamp(), [one.timestamp() for one in said.at], said.p50)
    known = trace(belief)
    corrected = np.interp(half_way.timestamp(), [one.timestamp() for one in known.at], known.p50)
    assert corrected > then + 5.0
    as_believed = trace_as_believed(belief)
    kept = np.interp(half_way.timestamp(), [one.timestamp() for one in as_believed.at], as_believed.p50)
    assert kept == pytest.approx(then, abs=3.0)  # but for the chances drawn while nothing was read


def test_what_is_known_now_does_not_jump_at_a_reading_as_the_belief_did() -> None:
    belief = track(STOVE, usual_morning(), at(80))
    known, believed = trace(belief), trace_as_believed(belief)
    assert np.abs(np.diff(known.p50, 2)).max() < 0.7 * np.abs(np.diff(believed.p50, 2)).max()


def test_a_reading_moves_the_past_no_further_than_it_was_said_to_be_unsure() -> None:
    """In half widths of what was drawn before it: honest where eight in ten are below 1, and the older the less."""
    entries, tracker = usual_morning(), Tracker(STOVE)
    moved: list[float] = []
    age: list[float] = []
    for row in [row for row in entries if row.spot == "oven_centre"][2:]:
        before = trace(tracker.follow(entries, row.at - timedelta(seconds=1)))
        after = trace(tracker.follow(entries, row.at))
        moments = np.array([one.timestamp() for one in before.at])
        middle = np.interp(moments, [one.timestamp() for one in after.at], after.p50)
        half = np.where(middle > before.p50, before.p90 - before.p50, before.p50 - before.p10)
        moved += list(np.abs(middle - before.p50) / half)
        age += list((moments[-1] - moments) / 60.0)
    far, ago = np.array(moved), np.array(age)
    assert np.quantile(far[ago < 5], 0.8) < 1.0
    assert far[ago > 20].max() < 0.2


def test_a_tracker_and_a_fresh_run_know_the_same_past() -> None:
    entries, tracker = usual_morning(), Tracker(STOVE)
    for place in range(1, len(entries) + 1):
        tracker.follow(entries[:place], entries[place - 1].at)
    for now in (at(80), at(300), at(90)):
        one, other = trace(tracker.follow(entries, now)), trace(track(STOVE, entries, now))
        assert one.at == other.at
        assert np.array_equal(one.p50, other.p50)
        assert np.array_equal(one.p90, other.p90)


def test_a_corrected_row_is_followed_again_for_the_past_too() -> None:
    entries, tracker = usual_morning(), Tracker(STOVE)
    tracker.follow(entries, at(80))
    fewer = entries[:-3]
    assert np.array_equal(trace(tracker.follow(fewer, at(80))).p50, trace(track(STOVE, fewer, at(80))).p50)


def test_the_past_is_in_order_and_goes_up_to_now() -> None:
    for minute in (20, 80, 200, 500):
        known = trace(track(STOVE, usual_morning(), at(minute)))
        assert known.at[-1] == at(minute)
        assert all(one < other for one, other in zip(known.at, known.at[1:], strict=False))
        assert (known.p10 <= known.p50).all()
        assert (known.p50 <= known.p90).all()


def test_past_and_fan_meet_at_now() -> None:
    belief = track(STOVE, usual_morning(), at(80))
    known, ahead = trace(belief), outlook(belief, MODERATE).oven
    assert known.p50[-1] == pytest.approx(ahead.p50, abs=0.3)
    assert (known.p10[-1], known.p90[-1]) == pytest.approx((ahead.p10, ahead.p90), abs=0.5)


def test_what_is_two_hours_old_is_settled() -> None:
    entries = usual_morning()
    log = Log()
    log.entries = list(entries)
    log.reads(260, "oven_centre", 300)
    before = trace(track(STOVE, log.entries, at(261)))
    log.reads(262, "oven_centre", 380)
    after = trace(track(STOVE, log.entries, at(263)))
    early = [place for place, moment in enumerate(before.at) if moment < at(260 - 121)]
    late = [place for place, moment in enumerate(before.at) if at(200) < moment < at(240)]
    assert early
    assert np.array_equal(before.p50[early], after.p50[early])
    assert (after.p50[late] > before.p50[late]).all()  # what is younger is still corrected


def test_a_stove_with_no_rows_has_no_past() -> None:
    assert len(trace(track(STOVE, [], at(0))).p50) == 0


def test_where_the_past_is_not_drawn_all_else_is_believed_alike() -> None:
    entries = usual_morning(30.0)
    drawn, bare = (Tracker(STOVE, keeps_past=keeps).follow(entries, at(31)) for keeps in (True, False))
    assert drawn.past_at
    assert not bare.past_at
    assert np.array_equal(drawn.ensemble.x, bare.ensemble.x)
    assert drawn.points == bare.points
