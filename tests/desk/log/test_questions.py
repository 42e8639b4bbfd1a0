"""What is in question stays so, whatever is entered next and after a restart, until it is kept or corrected."""

import pytest

from cookstove_gui.desk import Desk
from cookstove_gui.desk.log.questions import Question
from tests.desk.conftest import stand
from tests.held_clock import HeldClock


def asked(desk: Desk) -> list[Question]:
    return list(desk.questions)


@pytest.fixture
def doubting_desk(burning_desk: Desk, held_clock: HeldClock) -> Desk:
    """A slip that only the belief can see, and a sound reading after it."""
    held_clock.pass_minutes(2)
    burning_desk.read("38", spot="oven_centre")
    burning_desk.read("480", spot="top_front_left")
    return stand(burning_desk)


def test_what_the_belief_doubts_is_in_question_after_the_next_entry(doubting_desk: Desk) -> None:
    slip = next(row for row in doubting_desk.entries if row.value == "38")
    (question,) = asked(doubting_desk)
    assert question.number == slip.number
    assert question.sentence.startswith("oven centre: 38 typed where about 3")


def test_what_is_unlikely_by_rule_is_in_question_before_anything_is_worked_out(burning_desk: Desk) -> None:
    receipt = burning_desk.read("2200", spot="door_glass")
    burning_desk.read("480", spot="top_front_left")
    assert [question.number for question in asked(burning_desk)] == [receipt.entry.number]


def test_a_question_is_open_after_a_restart(doubting_desk: Desk, held_clock: HeldClock) -> None:
    again = stand(Desk(doubting_desk.logbook, held_clock))
    assert asked(again) == asked(doubting_desk)


def test_what_was_kept_is_no_more_in_question_not_even_after_a_restart(
    doubting_desk: Desk, held_clock: HeldClock
) -> None:
    (question,) = asked(doubting_desk)
    doubting_desk.keep(question.number)
    assert asked(doubting_desk) == []
    assert len([row for row in doubting_desk.entries if row.value == "38"]) == 1
    assert asked(stand(Desk(doubting_desk.logbook, held_clock))) == []
    doubting_desk.undo()
    assert [one.number for one in asked(stand(doubting_desk))] == [question.number]


def test_what_was_corrected_is_no_more_in_question(doubting_desk: Desk) -> None:
    doubting_desk.correct(asked(doubting_desk)[0].number, "318")
    assert asked(stand(doubting_desk)) == []


def test_the_unit_in_which_a_number_would_be_likely_is_offered(burning_desk: Desk, held_clock: HeldClock) -> None:
    held_clock.pass_minutes(2)
    burning_desk.read("155", spot="oven_centre")
    assert [question.other_unit for question in asked(stand(burning_desk))] == ["C"]
    burning_desk.take_back(burning_desk.entries[-1].number)
    burning_desk.read("38", spot="oven_centre")
    assert [question.other_unit for question in asked(stand(burning_desk))] == [""]


def test_a_number_typed_in_celsius_may_have_been_meant_in_fahrenheit(burning_desk: Desk, held_clock: HeldClock) -> None:
    held_clock.pass_minutes(2)
    burning_desk.read("310c", spot="oven_centre")
    assert [question.other_unit for question in asked(stand(burning_desk))] == ["F"]


def test_new_rows_are_judged_like_the_whole_log_at_once(burning_desk: Desk, held_clock: HeldClock) -> None:
    for value, spot in (("2200", "door_glass"), ("400", "flue"), ("900", "oven_centre"), ("200", "flue")):
        held_clock.pass_minutes(1)
        burning_desk.read(value, spot=spot)
        assert asked(burning_desk) == asked(Desk(burning_desk.logbook, held_clock))
    burning_desk.take_back(asked(burning_desk)[0].number)
    assert asked(burning_desk) == asked(Desk(burning_desk.logbook, held_clock))
    assert len(asked(burning_desk)) == 2
