"""Wood and heat against the handbook's worked values, and what the log teaches of both."""

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from cookstove_gui.cooking.fires.wood_needs import (
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
from cookstove_gui.stove.entries import Entry
from tests.cooking.made import STOVE, session
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
    # what burns before coals: the heat of the wood less that of its coals (30 MJ/kg), at the usual efficiency
    load = Load(wood=OAK, mass=4.0, moisture=0.0)
    found = load_burn(load, 0.5)
    energy = (found.heat.watts.p50 or 0) * (found.to_coals_min.p50 or 0) * 60
    assert energy == pytest.approx(4.0 * (OAK.heating_value - OAK.char_share * 30e6) * 0.60, rel=1e-6)


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
    # Before: 2 kg/h, ln 0.6931, within a factor of 1.6, ln 0.4700, of which 0.35 from fire to fire: the stove's own
    # 0.09840, precision 10.162. Shown: 5 kg in 2 h, 2.5 kg/h, ln 0.9163, precision 1/0.35^2 = 8.163. After:
    # (0.6931 * 10.162 + 0.9163 * 8.163) / 18.325 = 0.7925; the next fire within sqrt(1/18.325 + 0.35^2) = 0.4208.
    assert found.fires == 1
    assert found.median == pytest.approx(2.209, abs=2e-3)
    assert found.log_sd == pytest.approx(0.4208, abs=2e-4)


def test_without_logs_the_usual_rate_stands() -> None:
    found = burning_rate(STOVE, [])
    assert (found.median, found.fires) == (pytest.approx(2.0), 0)  # kg/h; common practice, no source


@pytest.mark.parametrize(("last", "fires"), [(60, 1), (59, 0)])
def test_an_hour_up_to_the_last_load_shows_a_rate(last: float, fires: int) -> None:
    rows = ((0, "lit", "", "", ""), (5, "wood", "", "2", "kg"), (last, "wood", "", "2", "kg"))
    assert burning_rate(STOVE, [session(1, made_log(*rows))]).fires == fires


def test_a_hungry_stove_is_believed_hungry_and_a_sparing_one_sparing() -> None:
    def shown(kilograms: str) -> float:
        rows = tuple((*row[:3], kilograms, "kg") if row[1] == "wood" else row for row in FIRE)
        return burning_rate(STOVE, [session(1, made_log(*rows))]).median

    assert shown("1") < 2.0 < shown("4")


def test_one_load_or_one_of_unknown_mass_shows_no_rate() -> None:
    one = tuple(row for row in FIRE if row[0] not in (5, 60))
    unknown_last = (*FIRE[:3], (120, "wood", "", "", ""))
    for rows in (one, unknown_last):
        assert burning_rate(STOVE, [session(1, made_log(*rows))]).fires == 0


@pytest.mark.parametrize("value", ["", "plenty"])
def test_wood_of_unknown_mass_teaches_nothing(value: str) -> None:
    rows = tuple((*row[:3], value, "kg") if row[1] == "wood" else row for row in FIRE)
    assert burning_rate(STOVE, [session(1, made_log(*rows))]).fires == 0


def test_counted_splits_have_a_usual_mass() -> None:
    row: Entry = replace(made_log((0, "wood", "", "", ""))[0], note="two splits")
    assert kilograms_of(row) == pytest.approx(2.2)  # 1.1 kg each, common practice, no source


def test_pounds_are_weighed_as_pounds() -> None:
    assert kilograms_of(made_log((0, "wood", "", "10", "lb"))[0]) == pytest.approx(4.5359237)


def test_wood_and_heat_have_the_doubt_of_the_rate() -> None:
    # exp(1.2816 * 0.35) = 1.566 either way in one case of ten (1.2816: tables of the normal distribution); the heat's
    # ends also have the least and the greatest efficiency, 0.45 and 0.72 against 0.60
    rate = BurningRate(median=2.0, log_sd=0.35, fires=0)
    wood = wood_for(90.0, rate)
    assert (wood.p10, wood.p50, wood.p90) == pytest.approx((3.0 / 1.566, 3.0, 3.0 * 1.566), rel=1e-3)
    heat = heat_at(rate, OAK, 18.0).watts
    middle = heat.p50 or 0.0
    assert heat.p10 == pytest.approx(middle / 1.566 * 0.45 / 0.60, rel=1e-3)
    assert heat.p90 == pytest.approx(middle * 1.566 * 0.72 / 0.60, rel=1e-3)


def test_a_bake_of_no_time_takes_no_wood() -> None:
    assert wood_for(-5.0, BurningRate(median=2.0, log_sd=0.35, fires=0)).p50 == 0.0


def test_a_loads_burn_is_known_within_half_as_much_again() -> None:
    found = load_burn(Load(wood=OAK, mass=5.0), 0.5)
    time, watts = found.to_coals_min, found.heat.watts
    middle, power = time.p50 or 0.0, watts.p50 or 0.0
    assert (time.p10, time.p90) == pytest.approx((middle / 1.5, middle * 1.5))
    # slow and inefficient, quick and efficient: 0.45 and 0.72 against 0.60
    assert (watts.p10, watts.p90) == pytest.approx((power / 1.5 * 0.75, power * 1.5 * 1.2))


def test_wetter_thicker_and_denser_wood_burns_longer() -> None:
    def minutes(load: Load) -> float:
        return load_burn(load, 0.5).to_coals_min.p50 or 0.0

    usual = Load(wood=OAK, mass=5.0, thickness=0.08, moisture=15.0)
    assert minutes(replace(usual, moisture=30.0)) > 1.05 * minutes(usual)
    assert minutes(replace(usual, thickness=0.12)) > 1.2 * minutes(usual)
    assert minutes(replace(usual, wood=wood_of("softwood"))) < 0.9 * minutes(usual)


@pytest.mark.parametrize(
    ("change", "possible"),
    [
        ({"mass": 0.05}, True),
        ({"mass": 0.04}, False),
        ({"mass": 60.0}, True),
        ({"mass": 60.5}, False),
        ({"thickness": 0.01}, True),
        ({"thickness": 0.009}, False),
        ({"thickness": 0.25}, True),
        ({"moisture": 60.0}, True),
        ({"moisture": 61.0}, False),
        ({"moisture": 0.0}, True),
    ],
)
def test_the_loads_a_stove_takes(change: dict[str, float], possible: bool) -> None:
    load = replace(Load(wood=OAK, mass=5.0), **change)  # type: ignore[arg-type]
    if possible:
        assert load_burn(load, 1.0).to_coals_min.p50
    else:
        with pytest.raises(InputProblem, match="isn't a load"):
            load_burn(load, 0.0)


@given(st.floats(0, 600), st.floats(0.5, 5), st.floats(0.05, 0.8))
def test_wood_for_a_bake_grows_with_time_and_has_its_doubt(minutes: float, rate: float, spread: float) -> None:
    found = wood_for(minutes, BurningRate(median=rate, log_sd=spread, fires=0))
    assert found.p10 is not None
    assert found.p50 is not None
    assert found.p90 is not None
    assert found.p50 == pytest.approx(rate * minutes / 60)
    assert found.p10 <= found.p50 <= found.p90


# --- measured burn times ---------------------------------------------------------------------------------------------


def test_a_short_fire_says_little_of_a_rate() -> None:
    short = tuple((minute / 3, *rest) for minute, *rest in FIRE)
    assert burning_rate(STOVE, [session(1, made_log(*short))]).fires == 0  # type: ignore[arg-type]
