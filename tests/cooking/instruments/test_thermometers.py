"""Checks at ice and boil: true points after the standards, the line of the errors between and beyond them, drift."""

from datetime import date, timedelta

import pytest
from hypothesis import given
from hypothesis import strategies as st

from cookstove_gui.cooking.instruments.surface_readings import surface_of
from cookstove_gui.cooking.instruments.thermometers import (
    drift_of,
    error_of,
    give_or_take,
    instrument_after,
    is_far_off,
    points_for,
    reading_doubt,
    true_temperature,
)
from cookstove_gui.physics.air import standard_pressure
from cookstove_gui.stove.checks import Check, CheckPoint
from cookstove_gui.stove.stove import unchecked

PROBE = unchecked("probe", "probe")
DAY = date(2026, 1, 5)
SEA = 101_325.0
ICE, BOIL = (0.4**2 + 0.3**2) ** 0.5, (0.7**2 + 0.3**2) ** 0.5  # K, of one check of a probe


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


# Checked together on one day: a prior is data besides (Gelman et al., Bayesian Data Analysis, 14.8): an error of 0 seen
# with 1.5 K at ice, a gain of 0 seen with 0.008; a check sees it with 0.4 K of the ice bath or 0.7 K of the
# boiling one, and 0.3 K of reading a probe (judgement).
SETS = {
    "ice": [(CheckPoint.ICE, 2.0)],
    "boil": [(CheckPoint.BOIL, 103.0)],
    "both": [(CheckPoint.ICE, 1.9), (CheckPoint.BOIL, 103.8)],
    "low": [(CheckPoint.ICE, -1.2), (CheckPoint.BOIL, 97.1)],
    "six": [(CheckPoint.ICE, 0.5), (CheckPoint.BOIL, 101.2), (CheckPoint.ICE, 0.9), (CheckPoint.BOIL, 100.7)],
}


@pytest.mark.parametrize("done", SETS.values(), ids=SETS)
def test_offset_gain_and_doubt_are_those_of_weighted_least_squares(done: list[tuple[CheckPoint, float]]) -> None:
    """Row "12.check-line" of tests/reference."""
    import numpy as np
    from statsmodels.regression.linear_model import WLS

    checks = [check(shown, point=point) for point, shown in done]
    heats = [true_temperature(one.point, SEA) - 273.15 for one in checks]
    design = np.array([[1.0, 0.0], [0.0, 1.0], *([1.0, heat] for heat in heats)])
    errors = np.array([0.0, 0.0, *(one.shown - 273.15 - heat for one, heat in zip(checks, heats, strict=True))])
    doubts = [1.5, 0.008, *(ICE if one.point is CheckPoint.ICE else BOIL for one in checks)]
    theirs = WLS(errors, design, weights=1.0 / np.square(doubts)).fit(cov_type="fixed scale")

    found = instrument_after(PROBE, checks)
    assert (found.offset, found.gain) == pytest.approx(theirs.params, abs=1e-9)
    assert (found.offset_doubt, found.gain_doubt) == pytest.approx(theirs.bse, abs=1e-9)
    for celsius in (-20.0, 0.0, 50.0, 100.0, 204.4, 315.6):
        seen = theirs.get_prediction([[1.0, celsius]])
        assert found.error(celsius + 273.15) == pytest.approx(seen.predicted_mean[0], abs=1e-9)
        assert found.doubt(celsius + 273.15) == pytest.approx(seen.se_mean[0], abs=1e-9)


def test_many_checks_leave_the_straight_line_of_a_plain_fit() -> None:
    import numpy as np

    checks = [check(2.0 + 0.1 * (n % 3), point=CheckPoint.ICE) for n in range(60)]
    checks += [check(103.0 + 0.1 * (n % 3)) for n in range(60)]
    heats = [true_temperature(one.point, SEA) for one in checks]
    weights = [1 / ICE if one.point is CheckPoint.ICE else 1 / BOIL for one in checks]
    line, covariance = np.polyfit(heats, [error_of(one) for one in checks], 1, w=weights, cov="unscaled")

    found = instrument_after(PROBE, checks)
    assert found.gain == pytest.approx(line[0], abs=3e-4)
    for heat in (273.15, 373.15, 477.6):
        row = np.array([heat, 1.0])
        assert found.error(heat) == pytest.approx(np.polyval(line, heat), abs=0.05)
        assert found.doubt(heat) == pytest.approx(float(row @ covariance @ row) ** 0.5, rel=0.03)


def test_ice_alone_is_not_carried_to_baking_heat() -> None:
    found = instrument_after(PROBE, [check(2.0, point=CheckPoint.ICE)])
    assert found.doubt(273.15) < 0.5
    assert found.doubt(477.6) > 3.0 * found.doubt(273.15)
    assert found.doubt(477.6) < PROBE.doubt(477.6)


def test_the_doubt_grows_away_from_what_was_checked() -> None:
    found = instrument_after(PROBE, [check(1.0, point=CheckPoint.ICE), check(101.5)])
    beyond = [found.doubt(heat) for heat in (373.0, 423.0, 477.0, 560.0, 640.0)]
    below = [found.doubt(heat) for heat in (290.0, 273.0, 253.0, 233.0)]
    assert beyond == sorted(beyond)
    assert below[1:] == sorted(below[1:])
    assert found.doubt(477.0) > 1.7 * found.doubt(373.0)


def test_what_it_shows_and_what_is_true_go_into_each_other() -> None:
    found = instrument_after(PROBE, [check(2.0, point=CheckPoint.ICE), check(103.0)])
    for true in (280.0, 400.0, 520.0):
        assert found.true_heat(true + found.error(true)) == pytest.approx(true, abs=1e-9)


def test_an_instrument_that_reads_low_has_an_error_below_zero() -> None:
    assert instrument_after(PROBE, [check(97.974)]).error(373.12) == pytest.approx(-2.0, abs=0.35)


def test_agrees_with_a_reference_filter() -> None:
    """Row "12.check-filter" of tests/reference."""
    import numpy as np
    from statsmodels.tsa.statespace.mlemodel import MLEModel

    points = [CheckPoint.BOIL, CheckPoint.ICE, CheckPoint.ICE, CheckPoint.BOIL]
    done = [(101.0, 0), (1.0, 365), (0.6, 730), (101.9, 1095)]
    checks = [check(shown, point=point, days=days) for point, (shown, days) in zip(points, done, strict=True)]

    class Line(MLEModel):
        def __init__(self, errors: np.ndarray) -> None:
            super().__init__(errors, k_states=2)
            heats = [true_temperature(one.point, SEA) - 273.15 for one in checks]
            self["design"] = np.array([[[1.0] * 4, heats]])
            self["transition"] = np.eye(2)
            self["selection"] = np.eye(2)
            self["state_cov"] = np.diag([1.0, 0.003**2]) * 365 / 365.25  # what wanders in a year
            self["obs_cov"] = np.array([[[BOIL**2, ICE**2, ICE**2, BOIL**2]]])
            self.initialize_known([0.0, 0.0], np.diag([1.5**2, 0.008**2]))

    found = instrument_after(PROBE, checks)
    theirs = Line(np.array([error_of(one) for one in checks])).ssm.filter()
    assert (found.offset, found.gain) == pytest.approx(theirs.filtered_state[:, -1], abs=1e-9)
    covariance = theirs.filtered_state_cov[:, :, -1]
    assert found.offset_doubt**2 == pytest.approx(covariance[0, 0], abs=1e-9)
    assert found.gain_doubt**2 == pytest.approx(covariance[1, 1], abs=1e-12)
    assert found.correlation * found.offset_doubt * found.gain_doubt == pytest.approx(covariance[0, 1], abs=1e-9)


def test_after_a_change_the_latest_check_counts() -> None:
    checks = [check(100.0 + 0.1 * n, days=20 * n) for n in range(4)]
    found = instrument_after(PROBE, [check(104.0, days=80), *checks])
    assert found.error(373.12) == pytest.approx(4.0, abs=0.7)


def test_a_check_that_is_kept_though_far_off_is_followed() -> None:
    dial = unchecked("probe", "oven thermometer")
    assert instrument_after(dial, [check(120.0)]).error(373.1) == pytest.approx(20.0, abs=1.0)
    both = instrument_after(dial, [check(0.0, point=CheckPoint.ICE), check(120.0)])
    assert both.error(373.1) == pytest.approx(20.0, abs=1.5)
    assert both.error(273.15) == pytest.approx(0.0, abs=1.0)


def test_an_infrared_one_is_never_held_in_boiling_water() -> None:
    assert points_for("infrared") == (CheckPoint.ICE,)
    assert points_for("flue thermometer") == ()
    assert set(points_for("probe")) == set(points_for("oven thermometer")) == set(CheckPoint)


def test_ice_water_tells_less_to_an_infrared_one() -> None:
    gun = unchecked("probe", "infrared")
    done = [check(2.0, point=CheckPoint.ICE)]
    assert instrument_after(gun, done).offset_doubt > 1.7 * instrument_after(PROBE, done).offset_doubt


def test_other_instruments_checks_do_not_count() -> None:
    assert instrument_after(unchecked("other", "probe"), [check(102.0)]).checked_on == ""


@given(st.lists(st.floats(97, 103), min_size=1, max_size=8))
def test_more_checks_never_leave_more_doubt_than_none(shown: list[float]) -> None:
    found = instrument_after(PROBE, [check(celsius, days=30 * n) for n, celsius in enumerate(shown)])
    for heat in (273.0, 373.0, 477.0):
        assert found.doubt(heat) < PROBE.doubt(heat)
    assert min(0.0, min(shown) - 99.98) <= found.error(373.1) <= max(0.0, max(shown) - 99.96)


def test_drift_is_noticed_over_checks() -> None:
    steady = [check(100.0 + 0.1 * n, days=60 * n) for n in range(4)]
    assert drift_of(PROBE, steady) is None
    drifted = drift_of(PROBE, [*steady, check(104.0, days=300)])
    assert drifted is not None
    assert drifted.change == pytest.approx(3.8, abs=0.3)
    assert drifted.since == DAY + timedelta(days=180)


# Unchecked, 1.5 K and 0.008 of 99.97 K make 1.7 K at the boil; one check there of 0.76 K leaves 0.695 K, the next adds
# 0.76 K: together 1.031 K, and twice that is drift.
@pytest.mark.parametrize(("change", "drifted"), [(2.0, False), (2.15, True), (-2.0, False), (-2.15, True)])
def test_a_change_of_two_standard_deviations_is_drift(change: float, drifted: bool) -> None:
    found = drift_of(PROBE, [check(99.974), check(99.974 + change, days=365)])
    assert (found is not None) is drifted
    if found is not None:
        assert found.instrument == "probe"
        assert found.change == pytest.approx(change, abs=0.01)
        assert found.since == DAY


def test_drift_is_told_against_checks_at_the_same_point() -> None:
    # 3 K too high at the boil then and now; ice in between says nothing of a drift at the boil
    checks = [check(102.974), check(0.0, point=CheckPoint.ICE, days=30), check(102.974, days=60)]
    assert drift_of(PROBE, checks) is None
    assert drift_of(PROBE, [check(0.0, point=CheckPoint.ICE), check(103.974, days=60)]) is None  # that is its gain


def test_two_checks_of_one_day_show_no_drift() -> None:
    assert drift_of(PROBE, [check(97.0), check(102.0)]) is None


def test_another_instruments_checks_show_no_drift_of_this_one() -> None:
    assert drift_of(unchecked("gun", "infrared"), [check(97.0), check(103.0, days=60)]) is None


def test_one_check_alone_shows_no_drift() -> None:
    assert drift_of(PROBE, [check(105.0)]) is None
    assert drift_of(PROBE, []) is None


@pytest.mark.parametrize(("error", "asked"), [(14.9, False), (15.1, True), (-14.9, False), (-15.1, True)])
def test_a_check_more_than_15_kelvin_off_is_asked_about(error: float, asked: bool) -> None:
    assert error_of(check(99.974 + error)) == pytest.approx(error, abs=0.01)
    assert is_far_off(check(99.974 + error)) is asked


def test_one_reading_is_as_doubtful_as_instrument_noise_and_surface_together() -> None:
    # eight in ten: 1.2816 times the root of the instrument's own doubt and 2.5 K of an oven reading (MODEL.md)
    found = instrument_after(PROBE, [check(1.0, point=CheckPoint.ICE), check(101.0)])
    expected = 1.2815516 * (found.doubt(477.6) ** 2 + 2.5**2) ** 0.5
    assert reading_doubt(found, None, 477.6) == pytest.approx(expected, rel=1e-6)
    gun = unchecked("gun", "infrared")
    paint, iron = surface_of("stove paint"), surface_of("oxidised cast iron")
    assert reading_doubt(gun, None, 477.6) < reading_doubt(gun, paint, 477.6) < reading_doubt(gun, iron, 477.6)
    assert reading_doubt(PROBE, iron, 477.6) == reading_doubt(PROBE, None, 477.6)


def test_eight_in_ten_is_what_is_said() -> None:
    assert give_or_take(PROBE, 477.6) == pytest.approx(1.2815516 * PROBE.doubt(477.6), rel=1e-6)
