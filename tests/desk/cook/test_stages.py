"""While first fires run, what the next one must show is counted from the log of the fire that burns."""

from dataclasses import replace

import pytest

from cookstove_gui.desk import Desk
from cookstove_gui.desk.cook.first_fire_course import limit_said
from cookstove_gui.desk.cook.stages import Measure, StageRow, stage_rows
from cookstove_gui.stove.entries import Kind
from cookstove_gui.stove.stove import SpotKind
from tests.cooking.fires.cases import KINDLING, MEDIUM
from tests.desk.conftest import stand
from tests.held_clock import HeldClock
from tests.rows import rows_of


@pytest.fixture
def new_desk(held_desk: Desk) -> Desk:
    held_desk.save_stove(replace(held_desk.stove, is_new=True))
    return held_desk


def next_one(desk: Desk) -> StageRow:
    (row,) = (row for row in stage_rows(stand(desk)) if row.is_next)
    return row


def measures(desk: Desk) -> dict[str, Measure]:
    return {measure.wanted: measure for measure in next_one(desk).measures}


def test_before_anything_is_worked_out_there_are_none(new_desk: Desk) -> None:
    assert stage_rows(new_desk) == ()


def test_before_it_is_lit_nothing_is_shown_yet(new_desk: Desk) -> None:
    assert measures(new_desk) == {
        "25 minutes lit": Measure(wanted="25 minutes lit", shown="0 so far", share=0.0),
        "180 °F on the top": Measure(wanted="180 °F on the top", shown="not read yet", share=0.0),
        "at most 400 °F": Measure(wanted="at most 400 °F", shown="not read yet", share=0.0, is_limit=True),
    }


def test_each_thing_is_shown_as_a_share_of_what_is_wanted(new_desk: Desk, held_clock: HeldClock) -> None:
    new_desk.do(Kind.LIT)
    held_clock.pass_minutes(10)
    new_desk.read("124", spot="top_front_left")
    found = measures(new_desk)
    assert (found["25 minutes lit"].shown, found["25 minutes lit"].share) == ("10 so far", pytest.approx(0.4))
    # The kitchen is taken for 68 °F: 56 of the 112 °F to 180, and of the 332 °F to 400.
    assert (found["180 °F on the top"].shown, found["180 °F on the top"].share) == ("124 so far", pytest.approx(0.5))
    assert found["at most 400 °F"].share == pytest.approx(56 / 332)
    new_desk.read("300", spot="oven_centre")  # of the oven nothing is asked
    assert measures(new_desk)["180 °F on the top"].shown == "124 so far"


def test_what_is_reached_is_whole_and_no_more(new_desk: Desk, held_clock: HeldClock) -> None:
    new_desk.do(Kind.LIT)
    held_clock.pass_minutes(60)
    new_desk.read("450", spot="top_front_left")
    assert {measure.share for measure in next_one(new_desk).measures} == {1.0}


def test_a_cooktop_below_the_kitchens_heat_is_no_share_at_all(new_desk: Desk) -> None:
    new_desk.do(Kind.LIT)
    new_desk.read("50", spot="top_front_left")
    assert measures(new_desk)["180 °F on the top"].share == 0.0


def test_only_the_latest_fire_counts(new_desk: Desk, held_clock: HeldClock) -> None:
    new_desk.do(Kind.LIT)
    held_clock.pass_minutes(20)
    new_desk.do(Kind.OUT)
    held_clock.pass_minutes(40)
    new_desk.do(Kind.LIT)
    held_clock.pass_minutes(5)
    new_desk.read("124", spot="top_front_left")
    assert measures(new_desk)["25 minutes lit"].shown == "5 so far"


def test_loads_and_air_are_counted_where_the_stage_asks_for_them(new_desk: Desk, held_clock: HeldClock) -> None:
    for days, fire in ((3, KINDLING), (2, MEDIUM)):
        at = held_clock.now.replace(day=held_clock.now.day - days)
        new_desk.logbook.add_session(new_desk.stove.name, f"{days} days ago", rows_of(*fire, start=at))
    new_desk.start_session()
    new_desk.do(Kind.LIT)
    new_desk.do(Kind.AIR, value="1")
    found = measures(new_desk)
    assert next_one(new_desk).title == "Full fire"
    assert [row.is_done for row in stage_rows(new_desk)] == [True, True, False]
    assert not any(measure.is_limit for measure in found.values())
    assert (found["1 load of wood"].shown, found["1 load of wood"].share) == ("0 so far", 0.0)
    air = found["air open, then mostly shut"]
    assert (air.shown, air.share) == ("not yet", 0.0)
    held_clock.pass_minutes(5)
    new_desk.do(Kind.WOOD, note="two splits")
    new_desk.do(Kind.AIR, value="0.25")
    found = measures(new_desk)
    assert (found["1 load of wood"].shown, found["1 load of wood"].share) == ("1 so far", 1.0)
    air = found["air open, then mostly shut"]
    assert (air.shown, air.share) == ("noted", 1.0)


def test_half_of_the_loads_is_half(new_desk: Desk, held_clock: HeldClock) -> None:
    at = held_clock.now.replace(day=held_clock.now.day - 3)
    new_desk.logbook.add_session(new_desk.stove.name, "kindling", rows_of(*KINDLING, start=at))
    new_desk.start_session()
    new_desk.do(Kind.LIT)
    held_clock.pass_minutes(5)
    new_desk.do(Kind.WOOD, note="a log")
    found = measures(new_desk)["2 loads of wood"]
    assert (found.shown, found.share) == ("1 so far", 0.5)


def test_a_fire_that_has_done_its_stage_shows_nothing_of_the_next(new_desk: Desk, held_clock: HeldClock) -> None:
    assert next_one(new_desk).state == "next; what the log must show"
    new_desk.do(Kind.LIT)
    assert next_one(new_desk).state == "under way; what the log must show"
    held_clock.pass_minutes(30)
    new_desk.read("240", spot="top_front_left")
    assert (next_one(new_desk).title, next_one(new_desk).state) == (
        "Medium fire", "when the stove is cold; what the log must show",
    )  # fmt: skip
    assert {measure.share for measure in next_one(new_desk).measures} == {0.0}
    assert limit_said(new_desk)[0] == "Limit of this fire: 400 °F, hottest spot of the top"
    held_clock.pass_minutes(600)
    for spot in new_desk.stove.spots_of(SpotKind.TOP):
        new_desk.read("72", spot=spot.name)
    assert next_one(new_desk).state == "next; what the log must show"
    assert limit_said(new_desk)[0] == "Limit of this fire: 640 °F, hottest spot of the top"
    new_desk.do(Kind.LIT)
    new_desk.read("90", spot="top_front_left")
    assert next_one(new_desk).state == "under way; what the log must show"
    assert measures(new_desk)["325 °F on the top"].shown == "90 so far"
    assert limit_said(new_desk)[0] == "Limit of this fire: 640 °F, hottest spot of the top"


def test_those_to_come_say_what_they_are(new_desk: Desk) -> None:
    rows = stage_rows(stand(new_desk))
    assert rows[1].line == "a medium fire of two to three hours, one log and then two"
    assert rows[1].measures == ()
