"""Wood and heat against the handbook's worked values, and what the log teaches of both."""

from dataclasses import replace
from math import exp, log

import pytest
from hypothesis import given
from hypothesis import strategies as st

from cookstove_gui.cooking.fires.burn_times import FALL, burn_times, summary
from cookstove_gui.cooking.fires.wood_needs import (
    RATE_FACTOR,
    RATE_LOG_SD,
    USUAL_RATE,
    BurningRate,
    Load,
    burning_rate,
    heat_at,
    kilograms_of,
    load_burn,
    usual_moisture,
    wood_for,
    wood_of,
    woods,
)
from cookstove_gui.errors import InputProblem
from cookstove_gui.stove.entries import USUAL_SPLIT, Entry
from tests.cooking.made import STOVE, fahrenheit, session
from tests.cooking.made import log as made_log

OAK = wood_of("oak")


def test_heat_of_a_rate_is_the_worked_value() -> None:
    # reference 6.10: 2 kg/h at 20 % moisture, 18.5 MJ/kg dry, efficiency 0.70 gives 5.566 kW; ours says 0.60
    rate = BurningRate(median=2.0, log_sd=1e-9, fires=0)
    found = heat_at(rate, replace(OAK, heating_value=18.5e6), 20.0)
    assert found.watts.p50 == pytest.approx(5566 * 0.60 / 0.70, rel=1e-3)
    assert found.kilowatts.p50 == pytest.approx(5.566 * 0.60 / 0.70, rel=1e-3)


def test_btu_per_hour_is_the_conversion() -> None:
    # 1 kW = 3412.14 BTU/h (NIST SP 811, international table BTU)
    found = heat_at(BurningRate(median=2.0, log_sd=0.1, fires=0), OAK, 18.0)
    assert found.btu_per_hour.p50 == pytest.approx((found.kilowatts.p50 or 0) * 3412.14, rel=1e-5)


def test_woods_are_found_by_class_and_by_kind() -> None:
    assert wood_of("Beech") is OAK
    assert wood_of("dense hardwood") is OAK
    assert len(woods()) == 3
    with pytest.raises(InputProblem, match="softwood"):
        wood_of("plastic")


def test_moisture_by_name() -> None:
    # reference 6.7: seasoned 16-20 % wet basis
    assert 16 <= usual_moisture("seasoned") <= 20
    assert usual_moisture("green") > 40
    with pytest.raises(InputProblem, match="seasoned"):
        usual_moisture("soaked")


def test_a_load_burns_longer_shut_than_open_and_gives_less_heat() -> None:
    load = Load(wood=OAK, mass=5.0)
    shut, wide = load_burn(load, 0.1), load_burn(load, 1.0)
    assert (shut.to_coals_min.p50 or 0) > 2 * (wide.to_coals_min.p50 or 0)
    assert (shut.heat.watts.p50 or 0) < 0.5 * (wide.heat.watts.p50 or 0)


def test_heat_and_time_of_a_load_are_its_energy() -> None:
    # what burns before coals: (1 - char share) of the mass at the net heating value and the usual efficiency
    load = Load(wood=OAK, mass=4.0, moisture=0.0)
    found = load_burn(load, 0.5)
    energy = (found.heat.watts.p50 or 0) * (found.to_coals_min.p50 or 0) * 60
    assert energy == pytest.approx(4.0 * (1 - OAK.char_share) * OAK.heating_value * 0.60, rel=1e-6)


@pytest.mark.parametrize(
    ("load", "air"),
    [
        (Load(wood=OAK, mass=5.0), 1.5),
        (Load(wood=OAK, mass=500.0), 0.5),
        (Load(wood=OAK, mass=5.0, thickness=1.0), 0.5),
        (Load(wood=OAK, mass=5.0, moisture=90.0), 0.5),
    ],
)
def test_no_such_load(load: Load, air: float) -> None:
    with pytest.raises(InputProblem):
        load_burn(load, air)


# --- from the log ----------------------------------------------------------------------------------------------------

FIRE = (
    (0, "lit", "", "", ""),
    (5, "wood", "", "2", "kg"),
    (60, "wood", "", "3", "kg"),
    (120, "wood", "", "9", "kg"),  # burns on after the log: not counted
)


def test_the_rate_is_learned_from_weighed_wood() -> None:
    found = burning_rate(STOVE, [session(1, made_log(*FIRE))])
    measured = 5.0 / 2.0  # kg in 2 h
    precision = 1 / log(RATE_FACTOR) ** 2 + 1 / RATE_LOG_SD**2
    expected = (log(USUAL_RATE) / log(RATE_FACTOR) ** 2 + log(measured) / RATE_LOG_SD**2) / precision
    assert found.fires == 1
    assert found.median == pytest.approx(exp(expected))
    assert found.log_sd == pytest.approx(precision**-0.5)


def test_without_logs_the_usual_rate_stands() -> None:
    found = burning_rate(STOVE, [])
    assert (found.median, found.fires) == (pytest.approx(USUAL_RATE), 0)


@pytest.mark.parametrize("value", ["", "plenty"])
def test_wood_of_unknown_mass_teaches_nothing(value: str) -> None:
    rows = tuple((*row[:3], value, "kg") if row[1] == "wood" else row for row in FIRE)
    assert burning_rate(STOVE, [session(1, made_log(*rows))]).fires == 0


def test_counted_splits_have_a_usual_mass() -> None:
    row: Entry = replace(made_log((0, "wood", "", "", ""))[0], note="two splits")
    assert kilograms_of(row) == pytest.approx(2 * USUAL_SPLIT)


def test_pounds_are_weighed_as_pounds() -> None:
    assert kilograms_of(made_log((0, "wood", "", "10", "lb"))[0]) == pytest.approx(4.5359237)


@given(st.floats(0, 600), st.floats(0.5, 5), st.floats(0.05, 0.8))
def test_wood_for_a_bake_grows_with_time_and_has_its_doubt(minutes: float, rate: float, spread: float) -> None:
    found = wood_for(minutes, BurningRate(median=rate, log_sd=spread, fires=0))
    assert found.p10 is not None
    assert found.p50 is not None
    assert found.p90 is not None
    assert found.p50 == pytest.approx(rate * minutes / 60)
    assert found.p10 <= found.p50 <= found.p90


# --- measured burn times ---------------------------------------------------------------------------------------------

BURN = (
    (0, "lit", "", "", ""),
    (30, "wood", "", "6", "kg"),
    (35, "wood", "", "2", "kg"),
    (50, "air", "", "0.1", ""),
    (60, "reading", "oven_centre", "400", "F"),
    (90, "reading", "oven_centre", "440", "F"),
    (200, "reading", "oven_centre", "420", "F"),
    (260, "reading", "oven_centre", "380", "F"),
)


def test_a_burn_ends_where_the_oven_has_fallen_between_readings() -> None:
    # hottest 440; 390 lies three quarters from 420 to 380, at 200 + 45 min; from the load at 35 that is 210
    (found,) = burn_times(STOVE, [session(1, made_log(*BURN))])
    assert found.fell
    assert found.minutes == pytest.approx(210)
    assert found.mass == pytest.approx(8.0)
    assert found.air_open == pytest.approx(0.1)
    assert found.hottest == pytest.approx(fahrenheit(440))


def test_the_fall_may_be_chosen() -> None:
    (found,) = burn_times(STOVE, [session(1, made_log(*BURN))], fall=30 / 1.8)
    assert found.minutes == pytest.approx(200 + 15 - 35)  # 410 lies a quarter of the way from 420 to 380


def test_a_burn_cut_short_lasted_at_least_so_long() -> None:
    (found,) = burn_times(STOVE, [session(1, made_log(*BURN[:-1]))])
    assert not found.fell
    assert found.minutes == pytest.approx(165)
    whole = summary(burn_times(STOVE, [session(1, made_log(*BURN[:-1]))]))
    assert (whole.burns, whole.typical_min, whole.longest_min) == (0, None, pytest.approx(165))


def test_the_next_load_ends_a_burn() -> None:
    rows = (*BURN[:-1], (210, "wood", "", "2", "kg"), BURN[-1])
    (found,) = burn_times(STOVE, [session(1, made_log(*rows))])
    assert not found.fell


def test_air_left_open_is_no_such_burn() -> None:
    rows = tuple(row if row[1] != "air" else (*row[:3], "0.8", "") for row in BURN)
    assert burn_times(STOVE, [session(1, made_log(*rows))]) == ()


def test_opening_the_air_again_ends_it() -> None:
    rows = (*BURN[:-1], (205, "air", "", "1", ""), BURN[-1])
    (found,) = burn_times(STOVE, [session(1, made_log(*rows))])
    assert not found.fell
    assert found.minutes == pytest.approx(165)


def test_summary_of_several() -> None:
    found = burn_times(STOVE, [session(1, made_log(*BURN)), session(2, made_log(*BURN))])
    assert summary(found).burns == 2
    assert summary(found).typical_min == pytest.approx(210)
    assert summary([]).longest_min is None
    assert pytest.approx(50 / 1.8) == FALL


def test_a_burn_with_one_reading_of_the_oven_tells_nothing() -> None:
    assert burn_times(STOVE, [session(1, made_log(*BURN[:5]))]) == ()


def test_a_short_fire_says_little_of_a_rate() -> None:
    short = tuple((minute / 3, *rest) for minute, *rest in FIRE)
    assert burning_rate(STOVE, [session(1, made_log(*short))]).fires == 0  # type: ignore[arg-type]
