"""Every alarm is one short sentence; one that is late says since when, and food says who decides."""

from datetime import UTC, datetime, timedelta

import pytest

from cookstove_gui.cooking.supper.alarms import Alarm, AlarmKind
from cookstove_gui.cooking.supper.plan import FireStep
from cookstove_gui.phrases.alarms import alarm_rungs, alarm_words, heard_words, more_alarms_words, spoken_words
from cookstove_gui.phrases.edge import Edge
from cookstove_gui.stove.stove import Stove
from cookstove_gui.units import kelvin

AT = datetime(2026, 1, 5, 17, 5, tzinfo=UTC)
STOVE = Stove(name="Stove")


def alarm(kind: AlarmKind, about: str = "", what: str = "", **more: object) -> Alarm:
    return Alarm(key="a", kind=kind, at=AT, about=about, what=what, **more)  # type: ignore[arg-type]


def rungs(one: Alarm, late: float = 0.0) -> tuple[str, ...]:
    return alarm_rungs(one, STOVE, Edge(unit="F", now=AT + timedelta(minutes=late), offset_minutes=0))


@pytest.mark.parametrize(
    ("one", "words"),
    [
        (alarm(AlarmKind.TAKE_OUT, "Apple pie"), "Take the apple pie out if done."),
        (alarm(AlarmKind.TAKE_OUT, "Stew", spot="top_back_right"), "Take the stew off if done."),
        (alarm(AlarmKind.TURN, "loaf of bread"), "Turn the loaf of bread."),
        (alarm(AlarmKind.PUT_IN, "Apple pie"), "Put the apple pie in."),
        (alarm(AlarmKind.PUT_IN, "Stew", spot="top_back_right"), "Put the stew on, top back right."),
        (alarm(AlarmKind.LOOK_AT, "casserole"), "Look at the casserole."),
        (alarm(AlarmKind.LEAVING_BAND, "bread"), "The oven is about to leave bread heat."),
        (alarm(AlarmKind.LEAVING_BAND, "425–475 °F"), "The oven is about to leave 425–475 °F."),
        (alarm(AlarmKind.BAND_REACHED, "pie"), "The oven is likely at pie heat."),
        (alarm(AlarmKind.RELOAD), "Add wood."),
        (alarm(AlarmKind.RELOAD, splits=2), "Add 2 splits."),
        (alarm(AlarmKind.STEP, "", FireStep.AIR, opening=0.3), "Set the air to 30 % open."),
        (alarm(AlarmKind.STEP, "", FireStep.AIR, opening=1.0), "Open the air wide."),
        (alarm(AlarmKind.NEXT_READING, "oven_centre"), "Read the oven centre."),
        (alarm(AlarmKind.STEP, "Bread", "shape"), "Bread: shape."),
        (alarm(AlarmKind.STEP, "", FireStep.LIGHT), "Light the fire."),
        (alarm(AlarmKind.STEP, "", FireStep.LET_GO), "Let the fire go; put nothing more on."),
        (alarm(AlarmKind.STEP, "", FireStep.BYPASS_SHUT), "Close the bypass."),
    ],
)
def test_what_to_do_in_one_sentence(one: Alarm, words: str) -> None:
    assert alarm_words(one, STOVE, "F") == words


def test_food_that_goes_into_the_oven_waits_for_its_heat() -> None:
    pie = alarm(AlarmKind.PUT_IN, "Apple pie", heat=kelvin(360.0, "F"))
    assert alarm_words(pie, STOVE, "F") == "Put the apple pie in, if the oven is at 360 °F."
    assert spoken_words(pie, STOVE, "C") == "Put the apple pie in, if the oven is at 182 degrees."


def test_food_is_done_by_look_and_thermometer_not_by_the_clock() -> None:
    assert "thermometer" in rungs(alarm(AlarmKind.TAKE_OUT, "Chicken"))[0]


def test_one_that_is_late_says_since_when_and_one_in_time_does_not() -> None:
    assert "It was due at 17:05." in rungs(alarm(AlarmKind.TURN, "bread"), late=40)[0]
    assert rungs(alarm(AlarmKind.TURN, "bread"), late=1) == ("Turn the bread.",)


def test_rungs_get_shorter() -> None:
    for kind in AlarmKind:
        found = rungs(alarm(kind, "bread", "shape"), late=40)
        assert sorted(found, key=len, reverse=True) == list(found)
        assert len(set(found)) == len(found)


def test_others_that_ring_are_counted() -> None:
    told = [more_alarms_words(more) for more in range(3)]
    assert told == ["", " 1 more alarm.", " 2 more alarms."]


def test_what_this_machine_lets_hear_is_said() -> None:
    assert len({heard_words(rang, spoke) for rang in (True, False) for spoke in (True, False)}) == 4
    assert "beep" in heard_words(False, False)
