"""What is typed on the Plan page is understood in the unit on the screen, or refused with a sentence."""

from datetime import UTC, datetime, timedelta

import pytest

from cookstove_gui.desk.plan import texts as plan_texts
from cookstove_gui.errors import InputProblem
from cookstove_gui.units import kelvin

MORNING = datetime(2026, 3, 14, 12, 0, tzinfo=UTC)  # 8:00 on a clock four hours behind
OFFSET = -240


@pytest.mark.parametrize(
    ("typed", "minutes"),
    [
        ("", 0),
        ("now", 0),
        ("-25", -25),
        ("+20", 20),
        ("in 20 min", 20),
        ("7:30", -30),
        ("930", 90),
        ("12:30 pm", 270),
        ("19:45", 705),
        ("23:00", -540),
    ],
)
def test_a_moment_is_the_nearest_such_clock(typed, minutes):
    assert plan_texts.moment(typed, MORNING, OFFSET) == MORNING + timedelta(minutes=minutes)


def test_a_clock_just_past_midnight_is_the_coming_one():
    late = datetime(2026, 3, 14, 3, 30, tzinfo=UTC)  # 23:30
    assert plan_texts.moment("0:15", late, OFFSET) == late + timedelta(minutes=45)


@pytest.mark.parametrize("typed", ["soon", "25:00", "7:75", "+", "in a while"])
def test_what_is_no_moment_gets_a_sentence(typed):
    with pytest.raises(InputProblem, match="isn't a time"):
        plan_texts.moment(typed, MORNING, OFFSET)


def test_quarts_are_the_liquid_quart_of_a_quarter_gallon():
    # The US gallon is 231 cubic inches, 3.785411784 litres exactly.
    assert plan_texts.litres("4", "F") == pytest.approx(3.785411784, abs=1e-9)
    assert plan_texts.litres("4", "C") == 4.0


@pytest.mark.parametrize("typed", ["0", "-1", "400", "two", ""])
def test_what_is_no_pan_of_water_gets_a_sentence(typed):
    with pytest.raises(InputProblem):
        plan_texts.litres(typed, "F")


def test_amounts_shown_are_read_back_the_same():
    assert plan_texts.litres(plan_texts.litres_text(1.5, "F"), "F") == pytest.approx(1.5, rel=5e-3)
    assert plan_texts.kilograms_of(plan_texts.kilograms_text(1.5, "F"), "F") == pytest.approx(1.5, rel=5e-3)


def test_a_typed_unit_wins_over_the_screens():
    found = plan_texts.food_temperature("20C", "F", low=273.15, high=373.15, what="water")
    assert found == pytest.approx(293.15)


def test_water_hotter_than_boiling_is_refused():
    with pytest.raises(InputProblem, match="not a plausible temperature"):
        plan_texts.food_temperature("300", "F", low=273.15, high=kelvin(211.0, "F"), what="water")


@pytest.mark.parametrize(
    ("typed", "kept"), [("-30", "7:30"), ("+20", "8:20"), ("in 20 min", "8:20"), ("now", "now"), ("9:15", "9:15")]
)
def test_minutes_from_now_become_a_clock_that_stays(typed, kept):
    at = plan_texts.moment(typed, MORNING, OFFSET)
    assert plan_texts.settled(typed, at, OFFSET) == kept
