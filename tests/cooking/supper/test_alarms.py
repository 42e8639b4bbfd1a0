"""An alarm rings from its moment until it is answered, also after sleep, a restart and a clock that was changed."""

from datetime import UTC, datetime, time, timedelta

import pytest
from hypothesis import given
from hypothesis import strategies as st

from cookstove_gui.cooking.supper.alarms import (
    SNOOZE_MIN,
    STALE_MIN,
    Alarm,
    AlarmKind,
    Answer,
    QuietHours,
    done,
    heard_again,
    is_silent,
    next_at,
    pause_after,
    put_off,
    ringing,
    silenced,
    without_doubles,
)

NOON = datetime(2026, 1, 5, 12, 0, tzinfo=UTC)


def after(minutes: float) -> datetime:
    return NOON + timedelta(minutes=minutes)


def alarm(kind: AlarmKind = AlarmKind.TURN, at: float = 0.0, key: str = "a", **others: object) -> Alarm:
    return Alarm(key=key, kind=kind, at=after(at), **others)  # type: ignore[arg-type]


def rings(alarms: list[Alarm], answers: tuple[Answer, ...], minutes: float) -> list[str]:
    return [one.alarm.key for one in ringing(alarms, answers, after(minutes))]


@pytest.mark.parametrize(("minutes", "expected"), [(-0.1, []), (0, ["a"]), (14, ["a"]), (16, [])])
def test_it_rings_from_its_moment_until_it_says_nothing_any_more(minutes: float, expected: list[str]) -> None:
    assert rings([alarm()], (), minutes) == expected


def test_work_that_is_under_way_calls_for_nobody_ten_minutes_on_unless_it_was_put_off() -> None:
    shape = [alarm(AlarmKind.STEP)]
    assert [rings(shape, (), minute) for minute in (9, 11)] == [["a"], []]
    later = put_off((), "a", after(9))
    assert [rings(shape, later, minute) for minute in (13, 15, 23, 25)] == [[], ["a"], ["a"], []]


def test_after_a_long_sleep_food_still_calls_and_a_heat_reached_long_ago_does_not() -> None:
    asleep = [alarm(AlarmKind.TAKE_OUT, key="out"), alarm(AlarmKind.BAND_REACHED, key="heat")]
    assert rings(asleep, (), 150) == ["out"]


def test_the_most_urgent_comes_first_then_the_earliest() -> None:
    found = [
        alarm(AlarmKind.NEXT_READING, 0, "reading"),
        alarm(AlarmKind.TAKE_OUT, 9, "pie"),
        alarm(AlarmKind.STEP, 1, "step"),
        alarm(AlarmKind.TAKE_OUT, 5, "bread"),
    ]
    assert rings(found, (), 10) == ["bread", "pie", "step", "reading"]


def test_done_ends_it_and_only_it() -> None:
    answers = done((), "a", after(1))
    assert rings([alarm(), alarm(key="b")], answers, 2) == ["b"]


def test_a_step_that_is_done_does_not_ring_when_the_plan_moves_it() -> None:
    answers = done((), "a", after(1))
    assert rings([alarm(at=30)], answers, 31) == []


@pytest.mark.parametrize(("moved_to", "expected"), [(8, []), (20, ["a"])])
def test_a_bake_that_proves_to_take_longer_rings_again(moved_to: float, expected: list[str]) -> None:
    answers = done((), "a", after(1))
    assert rings([alarm(AlarmKind.TAKE_OUT, moved_to)], answers, 25) == expected


def test_the_reading_after_the_next_rings_too() -> None:
    answers = done((), "a", after(1))
    assert rings([alarm(AlarmKind.NEXT_READING, 5)], answers, 6) == []
    assert rings([alarm(AlarmKind.NEXT_READING, 12)], answers, 12) == ["a"]


def test_put_off_it_rings_again_after_five_minutes() -> None:
    answers = put_off((), "a", after(1))
    assert SNOOZE_MIN == 5
    assert [rings([alarm()], answers, minute) for minute in (1, 5.9, 6)] == [[], [], ["a"]]


def test_silenced_it_is_still_seen() -> None:
    answers = silenced((), ["a"], after(1))
    (one,) = ringing([alarm()], answers, after(2))
    assert one.is_silent


def test_silence_is_for_this_moment_not_for_a_later_one_of_the_same_key() -> None:
    answers = silenced((), ["a"], after(1))
    (one,) = ringing([alarm(AlarmKind.NEXT_READING, 20)], answers, after(21))
    assert not one.is_silent


@pytest.mark.parametrize(("planned", "at", "silent"), [(True, 60, True), (False, 60, False), (True, 13 * 60, False)])
def test_the_sound_of_a_planned_alarm_may_be_put_off_before(planned: bool, at: float, silent: bool) -> None:
    answers = silenced((), ["a"], after(1))
    (one,) = ringing([alarm(at=at, is_planned=planned)], answers, after(at + 1))
    assert one.is_silent is silent


def test_a_sound_that_was_put_off_may_be_had_again() -> None:
    answers = silenced((), ["a", "b"], after(1))
    assert [is_silent(answers, key) for key in ("a", "b", "c")] == [True, True, False]
    assert [one.key for one in heard_again(answers, "a")] == ["b"]


def test_a_clock_set_back_does_not_hold_an_alarm_back() -> None:
    snoozed = put_off((), "a", after(60))
    read = done((), "a", after(60))
    assert rings([alarm()], snoozed, 2) == ["a"]
    assert rings([alarm(AlarmKind.NEXT_READING)], read, 2) == ["a"]


def test_what_is_done_for_good_stays_done_when_the_clock_is_set_back() -> None:
    assert rings([alarm()], done((), "a", after(60)), 2) == []


def test_a_clock_set_forward_ends_a_snooze() -> None:
    assert rings([alarm(AlarmKind.PUT_IN)], put_off((), "a", after(1)), 58) == ["a"]


def test_old_answers_are_forgotten_and_new_ones_replace_those_of_the_same_key() -> None:
    answers = done(put_off((), "a", after(0)), "b", after(1))
    later = done(answers, "a", after(2))
    assert [(one.key, one.until) for one in later] == [("b", None), ("a", None)]
    assert [one.key for one in done(later, "c", after(3 * 24 * 60))] == ["c"]


@pytest.mark.parametrize(
    ("clock", "holds"),
    [((22, 0), True), ((23, 59), True), ((0, 0), True), ((6, 29), True), ((6, 30), False), ((12, 0), False)],
)
def test_quiet_hours_over_midnight(clock: tuple[int, int], holds: bool) -> None:
    assert QuietHours(begin=time(22), end=time(6, 30)).hold(time(*clock)) is holds


@pytest.mark.parametrize(("clock", "holds"), [((12, 59), False), ((13, 0), True), ((14, 59), True), ((15, 0), False)])
def test_quiet_hours_within_a_day(clock: tuple[int, int], holds: bool) -> None:
    assert QuietHours(begin=time(13), end=time(15)).hold(time(*clock)) is holds


def test_the_next_moment_is_the_first_to_come_an_end_of_a_snooze_among_them() -> None:
    answers = put_off((), "a", after(0))
    assert next_at([alarm(), alarm(at=20, key="b")], answers, after(1)) == after(5)
    assert next_at([alarm(), alarm(at=20, key="b")], (), after(1)) == after(20)
    assert next_at([alarm()], (), after(1)) is None


def test_it_sounds_at_once_then_each_minute_then_every_five() -> None:
    assert [pause_after(sounds) for sounds in (0, 1, 4, 5, 50)] == [0, 60, 60, 300, 300]


@pytest.mark.parametrize(
    ("apart", "times"), [(4, [0]), (-4, [-4]), (30, [0, 30])], ids=["soon after", "soon before", "another"]
)
def test_wood_that_the_plan_and_the_fire_call_for_is_one_alarm(apart: float, times: list[float]) -> None:
    both = [
        alarm(AlarmKind.RELOAD, 0, "plan/fire/wood/1", is_planned=True),
        alarm(AlarmKind.RELOAD, apart, "reload"),
    ]
    assert [one.at for one in without_doubles(both)] == [after(minute) for minute in times]
    assert without_doubles(both)[0].is_planned


def test_two_dishes_that_come_out_together_are_two_alarms() -> None:
    both = [
        alarm(AlarmKind.TAKE_OUT, 0, "p", about="Pie", is_planned=True),
        alarm(AlarmKind.TAKE_OUT, 1, "b", about="Bread"),
    ]
    assert len(without_doubles(both)) == 2


_MINUTES = st.integers(-200, 200)


@pytest.mark.law
@given(
    st.lists(st.tuples(st.sampled_from(list(AlarmKind)), _MINUTES, st.sampled_from("abc")), max_size=6),
    st.lists(st.tuples(st.sampled_from("abc"), _MINUTES, st.sampled_from(["done", "off", "silent"])), max_size=6),
    _MINUTES,
)
def test_nothing_rings_before_its_time_after_it_is_stale_or_while_put_off(
    rows: list[tuple[AlarmKind, int, str]], acts: list[tuple[str, int, str]], minute: int
) -> None:
    alarms = [alarm(kind, at, key) for kind, at, key in rows]
    answers: tuple[Answer, ...] = ()
    for key, at, act in acts:
        if act == "silent":
            answers = silenced(answers, [key], after(at))
        else:
            answers = (done if act == "done" else put_off)(answers, key, after(at))
    now = after(minute)
    for one in ringing(alarms, answers, now):
        put_off_until = [answer.until for answer in answers if answer.key == one.alarm.key and answer.until is not None]
        since = max([one.alarm.at, *put_off_until])
        assert one.alarm.at <= now <= since + timedelta(minutes=STALE_MIN[one.alarm.kind])
        assert not any(
            answer.key == one.alarm.key and answer.at <= now and answer.until is not None and now < answer.until
            for answer in answers
        )
