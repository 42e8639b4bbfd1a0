"""What is typed on the Plan page is understood in the unit on the screen, or refused with a sentence."""

from datetime import UTC, datetime, timedelta

import pytest

from cookstove_gui.desk.plan import texts as plan_texts
from cookstove_gui.errors import InputProblem
from cookstove_gui.units import kelvin, volume_unit

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


def told(refused: pytest.ExceptionInfo[InputProblem]) -> str:
    return refused.value.sentence


@pytest.mark.parametrize(
    ("read", "typed", "unit", "kelvins"),
    [
        # Water freezes at 32 °F and boils at 212 °F at sea level; a freezer is kept at 0 °F.
        (plan_texts.water_start, "32", "F", 273.15),
        (plan_texts.water_start, "0", "C", 273.15),
        (plan_texts.water_start, "211", "F", 372.594),
        (plan_texts.food_start, "0", "F", 255.372),
        (plan_texts.food_start, "212", "F", 373.15),
        (plan_texts.food_start, "100", "C", 373.15),
    ],
)
def test_food_and_water_are_taken_up_to_their_ends(read, typed, unit, kelvins):
    assert read(typed, unit) == pytest.approx(kelvins, abs=1e-3)


@pytest.mark.parametrize(
    ("read", "typed", "unit", "what"),
    [
        (plan_texts.water_start, "31.8", "F", "water that is not boiling yet; check the number and its unit, °F"),
        (plan_texts.water_start, "212", "F", "water that is not boiling yet; check the number and its unit, °F"),
        (plan_texts.water_start, "100", "C", "water that is not boiling yet; check the number and its unit, °C"),
        (plan_texts.food_start, " -0.5 ", "F", "food; check the number and its unit, °F"),
        (plan_texts.food_start, "212.5", "F", "food; check the number and its unit, °F"),
        (plan_texts.food_start, "350", "F", "food; check the number and its unit, °F"),
    ],
)
def test_food_and_water_beyond_their_ends_are_refused_in_one_sentence(read, typed, unit, what):
    with pytest.raises(InputProblem) as refused:
        read(typed, unit)
    assert told(refused) == f"{typed.strip()} is not a plausible temperature for {what}."


def test_minutes_at_heat_reach_to_the_longest():
    assert [plan_texts.minutes_at_heat(typed, 720) for typed in ("0", "720")] == [0, 720]
    for typed in ("-1", "721"):
        with pytest.raises(InputProblem) as refused:
            plan_texts.minutes_at_heat(typed, 720)
        assert told(refused) == f"{typed} minutes is longer than a day of baking; type a number such as 60."


def test_the_page_measures_in_the_units_that_go_with_the_screen():
    assert [volume_unit("F"), volume_unit("C")] == ["quarts", "litres"]
    assert [plan_texts.litres_text(1.8927, "F"), plan_texts.litres_text(1.8927, "C")] == ["2", "1.89"]
    # The international pound is 0.45359237 kg exactly (agreement of 1959).
    assert [plan_texts.kilograms_text(0.45359237, "F"), plan_texts.kilograms_text(0.45359237, "C")] == ["1", "0.454"]
    assert plan_texts.kilograms_of("1", "F") == pytest.approx(0.45359237)
    assert plan_texts.kilograms_of("1", "C") == 1.0


@pytest.mark.parametrize("unit", ["F", "C"])
def test_water_from_a_well_is_read_back_as_the_same_heat(unit):
    assert plan_texts.water_start(plan_texts.well_water_text(unit), unit) == pytest.approx(288.15)


@pytest.mark.parametrize("typed", ["0", "-2"])
def test_a_weight_is_above_nothing(typed):
    with pytest.raises(InputProblem) as refused:
        plan_texts.kilograms_of(typed, "F")
    assert told(refused) == f"“{typed}” is not a weight; type a number above 0, such as 1.5."


def test_what_no_pan_holds_is_refused_in_its_unit():
    for unit, name in (("F", "quarts"), ("C", "litres")):
        with pytest.raises(InputProblem) as refused:
            plan_texts.litres(" 400 ", unit)
        assert told(refused) == f"400 {name} is not a plausible amount; type a number such as 2."


def test_the_next_such_clock_is_within_a_day():
    assert plan_texts.coming("7:30", MORNING, OFFSET) == MORNING + timedelta(hours=23, minutes=30)
    assert plan_texts.coming("8:00", MORNING, OFFSET) == MORNING + timedelta(days=1)
    assert plan_texts.coming("8:01", MORNING, OFFSET) == MORNING + timedelta(minutes=1)
    assert plan_texts.coming("+90", MORNING, OFFSET) == MORNING + timedelta(minutes=90)


@pytest.mark.parametrize(("typed", "minutes"), [("+5", 5), ("in 100 minutes", 100), ("IN 7m", 7), ("NOW", 0)])
def test_minutes_ahead_may_be_said_in_several_ways(typed, minutes):
    assert plan_texts.moment(typed, MORNING, OFFSET) == MORNING + timedelta(minutes=minutes)
