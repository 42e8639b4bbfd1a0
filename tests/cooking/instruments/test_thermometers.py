"""Checks at ice and boil: true points after the standards, offsets by a filter, drift."""

from datetime import date, timedelta

import pytest
from hypothesis import given
from hypothesis import strategies as st

from cookstove_gui.cooking.instruments.thermometers import (
    drift_of,
    error_of,
    instrument_after,
    true_temperature,
)
from cookstove_gui.errors import InputProblem
from cookstove_gui.physics.air import standard_pressure
from cookstove_gui.stove.checks import Check, CheckPoint
from cookstove_gui.stove.stove import Instrument

PROBE = Instrument(name="probe", kind="probe")
DAY = date(2026, 1, 5)
SEA = 101_325.0


def check(shown_celsius: float, *, point: CheckPoint = CheckPoint.BOIL, days: int = 0, pressure: float = SEA) -> Check:
    return Check(
        instrument="probe", point=point, shown=shown_celsius + 273.15, on=DAY + timedelta(days=days), pressure=pressure
    )


# reference 1.5 and 1.9: boiling at 1013.25, 850, 700 hPa and at 2000 m of the standard atmosphere (IAPWS IF97, ICAO)
@pytest.mark.parametrize(
    ("pressure", "celsius"),
    [(101_325.0, 99.974), (85_000.0, 95.125), (70_000.0, 89.932), (float(standard_pressure(2000.0)), 93.315)],
)
def test_the_true_boil_is_that_of_the_place(pressure: float, celsius: float) -> None:
    assert true_temperature(CheckPoint.BOIL, pressure) - 273.15 == pytest.approx(celsius, abs=0.005)
    assert true_temperature(CheckPoint.ICE, pressure) == 273.15


def test_a_thermometer_right_at_altitude_has_no_offset() -> None:
    # the trap: 95.1 °C is right at 850 hPa, not 4.9 K too low
    assert error_of(check(95.125, pressure=85_000.0)) == pytest.approx(0.0, abs=0.005)


# An instrument never checked is right within 3 K, a check at the boil within 0.7 K, at ice within 0.4 K (judgement,
# no source). Of 2 K shown too high it keeps 9 / (9 + 0.49) and 9 / (9 + 0.16); the doubt left is the square root of 9
# times the rest.
@pytest.mark.parametrize(
    ("point", "shown", "offset", "doubt"),
    [(CheckPoint.BOIL, 101.974, 1.8967, 0.6817), (CheckPoint.ICE, 2.0, 1.9651, 0.3965)],
)
def test_one_check_gives_the_conjugate_offset_and_doubt(
    point: CheckPoint, shown: float, offset: float, doubt: float
) -> None:
    found = instrument_after(PROBE, [check(shown, point=point)])
    assert found.offset == pytest.approx(offset, abs=2e-3)
    assert found.offset_doubt == pytest.approx(doubt, abs=1e-3)
    assert found.checked_on == "2026-01-05"


def test_an_instrument_that_reads_low_has_an_offset_below_zero() -> None:
    assert instrument_after(PROBE, [check(97.974)]).offset == pytest.approx(-1.8967, abs=2e-3)


def test_agrees_with_a_reference_filter() -> None:
    import numpy as np
    from statsmodels.tsa.statespace.mlemodel import MLEModel

    checks = [check(celsius, days=365 * year) for year, celsius in enumerate([101.0, 101.5, 100.2, 102.3])]

    class Level(MLEModel):
        def __init__(self, errors: np.ndarray) -> None:
            super().__init__(errors, k_states=1)
            self["design"] = [[1.0]]
            self["transition"] = [[1.0]]
            self["selection"] = [[1.0]]
            self["state_cov"] = [[1.0**2 * 365 / 365.25]]  # an offset wanders 1 K in a year
            self["obs_cov"] = [[0.7**2]]
            self.initialize_known([0.0], [[3.0**2]])

    found = instrument_after(PROBE, checks)
    theirs = Level(np.array([error_of(one) for one in checks])).ssm.filter()
    assert found.offset == pytest.approx(theirs.filtered_state[0, -1], abs=1e-9)
    assert found.offset_doubt**2 == pytest.approx(theirs.filtered_state_cov[0, 0, -1], abs=1e-9)


def test_ice_and_boil_that_disagree_leave_doubt() -> None:
    agreeing = instrument_after(PROBE, [check(1.0, point=CheckPoint.ICE), check(100.974)])
    apart = instrument_after(PROBE, [check(-2.0, point=CheckPoint.ICE), check(102.974)])
    assert agreeing.offset_doubt == pytest.approx(0.345, abs=2e-3)  # 9, 0.16 and 0.49 K2 together: 0.119 K2
    assert apart.offset_doubt == pytest.approx((0.119 + 2.5**2) ** 0.5, abs=2e-3)  # 5 K apart: half of it is in doubt


def test_the_latest_of_each_point_are_held_against_each_other() -> None:
    early = [check(-2.0, point=CheckPoint.ICE), check(102.974)]
    cured = [check(1.0, point=CheckPoint.ICE, days=300), check(100.974, days=300)]
    assert instrument_after(PROBE, [*cured, *early]).offset_doubt < 0.5


def test_other_instruments_checks_do_not_count() -> None:
    assert instrument_after(Instrument(name="other", kind="probe"), [check(102.0)]).checked_on == ""


@given(st.lists(st.floats(95, 105), min_size=1, max_size=8))
def test_more_checks_never_leave_more_doubt_than_none(shown: list[float]) -> None:
    found = instrument_after(PROBE, [check(celsius, days=30 * n) for n, celsius in enumerate(shown)])
    assert found.offset_doubt < 3.0
    assert min(0.0, min(shown) - 99.98) <= found.offset <= max(0.0, max(shown) - 99.96)


def test_drift_is_noticed_over_checks() -> None:
    steady = [check(100.0 + 0.1 * n, days=60 * n) for n in range(4)]
    assert drift_of("probe", steady) is None
    drifted = drift_of("probe", [*steady, check(104.0, days=300)])
    assert drifted is not None
    assert drifted.change == pytest.approx(3.8, abs=0.3)
    assert drifted.since == DAY + timedelta(days=180)


# One check at the boil leaves 0.682 K of doubt, the next adds 0.7 K: together 0.977 K, and twice that is drift.
@pytest.mark.parametrize(("change", "drifted"), [(1.9, False), (2.05, True), (-1.9, False), (-2.05, True)])
def test_a_change_of_two_standard_deviations_is_drift(change: float, drifted: bool) -> None:
    found = drift_of("probe", [check(99.974), check(99.974 + change, days=365)])
    assert (found is not None) is drifted
    if found is not None:
        assert found.instrument == "probe"
        assert found.change == pytest.approx(change, abs=0.01)
        assert found.since == DAY


def test_drift_is_told_against_checks_at_the_same_point() -> None:
    # 3 K too high at the boil then and now; ice in between says nothing of a drift at the boil
    checks = [check(102.974), check(0.0, point=CheckPoint.ICE, days=30), check(102.974, days=60)]
    assert drift_of("probe", checks) is None
    assert drift_of("probe", [check(0.0, point=CheckPoint.ICE), check(102.974, days=60)]) is not None


def test_two_checks_of_one_day_show_no_drift() -> None:
    assert drift_of("probe", [check(97.0), check(102.0)]) is None


def test_another_instruments_checks_show_no_drift_of_this_one() -> None:
    assert drift_of("gun", [check(97.0), check(103.0, days=60)]) is None


def test_one_check_alone_shows_no_drift() -> None:
    assert drift_of("probe", [check(105.0)]) is None
    assert drift_of("probe", []) is None


@pytest.mark.parametrize(("error", "possible"), [(14.9, True), (15.1, False), (-14.9, True), (-15.1, False)])
def test_a_check_more_than_15_kelvin_off_is_questioned_in_words(error: float, possible: bool) -> None:
    made = check(99.974 + error)
    if possible:
        assert error_of(made) == pytest.approx(error, abs=0.01)
    else:
        with pytest.raises(InputProblem, match=r"far from the 212 °F of this boil check"):
            error_of(made)
