"""Checks at ice and boil: true points after the standards, offsets by a filter, drift."""

from datetime import date, timedelta

import pytest
from hypothesis import given
from hypothesis import strategies as st

from cookstove_gui.cooking.instruments.thermometers import (
    CHECK_DOUBT,
    USUAL_DOUBT,
    WANDER_PER_YEAR,
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


def test_one_check_gives_the_conjugate_offset_and_doubt() -> None:
    found = instrument_after(PROBE, [check(101.974)])
    gain = USUAL_DOUBT**2 / (USUAL_DOUBT**2 + CHECK_DOUBT["boil"] ** 2)
    assert found.offset == pytest.approx(2.0 * gain, abs=0.01)
    assert found.offset_doubt == pytest.approx((USUAL_DOUBT**2 * (1 - gain)) ** 0.5)
    assert found.checked_on == "2026-01-05"


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
            self["state_cov"] = [[WANDER_PER_YEAR**2 * 365 / 365.25]]
            self["obs_cov"] = [[CHECK_DOUBT["boil"] ** 2]]
            self.initialize_known([0.0], [[USUAL_DOUBT**2]])

    found = instrument_after(PROBE, checks)
    theirs = Level(np.array([error_of(one) for one in checks])).ssm.filter()
    assert found.offset == pytest.approx(theirs.filtered_state[0, -1], abs=1e-9)
    assert found.offset_doubt**2 == pytest.approx(theirs.filtered_state_cov[0, 0, -1], abs=1e-9)


def test_ice_and_boil_that_disagree_leave_doubt() -> None:
    agreeing = instrument_after(PROBE, [check(1.0, point=CheckPoint.ICE), check(100.974)])
    apart = instrument_after(PROBE, [check(-2.0, point=CheckPoint.ICE), check(102.974)])
    assert apart.offset_doubt > agreeing.offset_doubt + 1.5


def test_other_instruments_checks_do_not_count() -> None:
    assert instrument_after(Instrument(name="other", kind="probe"), [check(102.0)]).checked_on == ""


@given(st.lists(st.floats(95, 105), min_size=1, max_size=8))
def test_more_checks_never_leave_more_doubt_than_none(shown: list[float]) -> None:
    found = instrument_after(PROBE, [check(celsius, days=30 * n) for n, celsius in enumerate(shown)])
    assert found.offset_doubt < USUAL_DOUBT
    assert min(0.0, min(shown) - 99.98) <= found.offset <= max(0.0, max(shown) - 99.96)


def test_drift_is_noticed_over_checks() -> None:
    steady = [check(100.0 + 0.1 * n, days=60 * n) for n in range(4)]
    assert drift_of("probe", steady) is None
    drifted = drift_of("probe", [*steady, check(104.0, days=300)])
    assert drifted is not None
    assert drifted.change == pytest.approx(3.8, abs=0.3)
    assert drifted.since == DAY + timedelta(days=180)


def test_one_check_alone_shows_no_drift() -> None:
    assert drift_of("probe", [check(105.0)]) is None
    assert drift_of("probe", []) is None


def test_a_check_too_far_off_is_questioned_in_words() -> None:
    with pytest.raises(InputProblem, match="check again"):
        error_of(check(50.0))
