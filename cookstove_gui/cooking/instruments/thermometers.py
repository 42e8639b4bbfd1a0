"""Checks of thermometers at the ice point and at the boil: each instrument's offset with its doubt, and its drift."""

from collections.abc import Iterable
from dataclasses import dataclass, replace
from datetime import date

from cookstove_gui.errors import InputProblem
from cookstove_gui.physics.water import boiling_temperature
from cookstove_gui.stove.checks import Check, CheckPoint
from cookstove_gui.stove.stove import Instrument
from cookstove_gui.units import ZERO_CELSIUS, degrees, tidy

USUAL_DOUBT = 3.0  # K, an instrument never checked
CHECK_DOUBT = {"ice": 0.4, "boil": 0.7}  # K, one careful check; common practice, no source
WANDER_PER_YEAR = 1.0  # K, how far an offset wanders in a year; common practice, no source
GREATEST_ERROR = 15.0  # K; a check further off is a slip or a broken thermometer
DRIFT_FROM = 2.0  # standard deviations from which a change counts as drift
_DAYS_PER_YEAR = 365.25


@dataclass(frozen=True, slots=True, kw_only=True)
class Drift:
    """An offset that is no longer what it was."""

    instrument: str
    change: float  # K, it now reads so much higher (+) or lower than before
    since: date  # of the check before


def true_temperature(point: CheckPoint, pressure: float) -> float:
    """What a right thermometer shows [K]: 0 °C, or the boiling point at this pressure [Pa]."""
    return ZERO_CELSIUS if point is CheckPoint.ICE else float(boiling_temperature(pressure))


def error_of(check: Check) -> float:
    """What the instrument reads too high in one check [K].

    Raises
    ------
    InputProblem
        If it is too far off to be a check.
    """
    error = check.shown - true_temperature(check.point, check.pressure)
    if abs(error) > GREATEST_ERROR:
        shown, true = (
            f"{tidy(degrees(value, 'F'))} °F" for value in (check.shown, true_temperature(check.point, check.pressure))
        )
        raise InputProblem(
            f"{shown} is far from the {true} of this {check.point} check; look at unit and bath, and check again."
        )
    return error


def instrument_after(instrument: Instrument, checks: Iterable[Check]) -> Instrument:
    """The instrument with the offset that its checks show, its doubt, and the day of the latest.

    An offset that wanders is followed through the checks in order of date (a one-dimensional Kalman filter, from a
    prior of none within `USUAL_DOUBT`). Where ice and boil disagree the doubt takes in half their difference, for the
    oven lies beyond both.
    """
    own = sorted((check for check in checks if check.instrument == instrument.name), key=lambda check: check.on)
    if not own:
        return instrument
    offset, variance = _followed(own)
    disagreement = _disagreement(own)
    return replace(
        instrument,
        offset=offset,
        offset_doubt=(variance + (0.5 * disagreement) ** 2) ** 0.5,
        checked_on=own[-1].on.isoformat(),
    )


def drift_of(instrument: str, checks: Iterable[Check]) -> Drift | None:
    """Whether the latest check says that an instrument has drifted since the ones before."""
    own = sorted((check for check in checks if check.instrument == instrument), key=lambda check: check.on)
    latest = own[-1:]
    before = [check for check in own if latest and check.on < latest[0].on]
    if not before:
        return None
    same = [check for check in before if check.point is latest[0].point] or before
    offset, variance = _followed(same)
    change = error_of(latest[0]) - offset
    doubt = (variance + CHECK_DOUBT[latest[0].point.value] ** 2) ** 0.5
    if abs(change) < DRIFT_FROM * doubt:
        return None
    return Drift(instrument=instrument, change=change, since=same[-1].on)


def _followed(checks: list[Check]) -> tuple[float, float]:
    """Offset [K] and its variance after checks in order of date."""
    offset, variance, day = 0.0, USUAL_DOUBT**2, checks[0].on
    for check in checks:
        variance += WANDER_PER_YEAR**2 * (check.on - day).days / _DAYS_PER_YEAR
        day = check.on
        gain = variance / (variance + CHECK_DOUBT[check.point.value] ** 2)
        offset += gain * (error_of(check) - offset)
        variance *= 1.0 - gain
    return offset, variance


def _disagreement(checks: list[Check]) -> float:
    """Latest boil against latest ice [K]; 0 where only one of them was done."""
    latest = {check.point: error_of(check) for check in checks}
    return latest[CheckPoint.BOIL] - latest[CheckPoint.ICE] if len(latest) == 2 else 0.0
