"""Checks of thermometers at the ice point and at the boil: the line of each one's error, its doubt, its drift."""

from collections.abc import Iterable
from dataclasses import dataclass, replace
from datetime import date
from math import hypot

import numpy as np

from cookstove_gui.cooking.instruments.surface_readings import Surface, corrected_reading
from cookstove_gui.forecast.answers import NORMAL_P90, FloatArray
from cookstove_gui.forecast.model.kalman import Gaussian, update
from cookstove_gui.forecast.model.observation import noise_deviation
from cookstove_gui.physics.water import boiling_temperature
from cookstove_gui.stove.checks import Check, CheckPoint
from cookstove_gui.stove.stove import INFRARED, Instrument, Spot, SpotKind, unchecked
from cookstove_gui.units import ZERO_CELSIUS

# All common practice, no source
BATH_DOUBT = {CheckPoint.ICE: 0.4, CheckPoint.BOIL: 0.7}  # K, of the bath
READ_DOUBT = {"oven thermometer": 1.5, INFRARED: 0.9, "probe": 0.3, "flue thermometer": 3.0}  # K, how finely it is read
WANDER_PER_YEAR = (1.0, 0.003)  # K at the ice point, and K per K of gain
ASKED_FROM = 15.0  # K; a check further off than this may be a slip
DRIFT_FROM = 2.0  # standard deviations from which a change counts as drift
_DAYS_PER_YEAR = 365.25
_READS = {"oven thermometer": SpotKind.OVEN, "probe": SpotKind.OVEN, "flue thermometer": SpotKind.FLUE}


@dataclass(frozen=True, slots=True, kw_only=True)
class Drift:
    """An error that is no longer what it was."""

    instrument: str
    change: float  # K, it now reads so much higher (+) or lower than before
    since: date  # of the check before


def points_for(kind: str) -> tuple[CheckPoint, ...]:
    """What a kind of thermometer can be checked in: steam blinds an infrared one, a flue's is not for water."""
    if kind == "flue thermometer":
        return ()
    return (CheckPoint.ICE,) if kind == INFRARED else (CheckPoint.ICE, CheckPoint.BOIL)


def true_temperature(point: CheckPoint, pressure: float) -> float:
    """What a right thermometer shows [K]: 0 °C, or the boiling point at this pressure [Pa]."""
    return ZERO_CELSIUS if point is CheckPoint.ICE else float(boiling_temperature(pressure))


def error_of(check: Check) -> float:
    """What the instrument reads too high in one check [K]."""
    return check.shown - true_temperature(check.point, check.pressure)


def is_far_off(check: Check) -> bool:
    """Whether a check is so far off that it may be a slip."""
    return abs(error_of(check)) > ASKED_FROM


def instrument_after(instrument: Instrument, checks: Iterable[Check]) -> Instrument:
    """The instrument with the line of its error as its checks show it, and the day of the latest.

    Parameters
    ----------
    instrument : Instrument
        What it showed before does not count: the prior is that of an instrument never checked.
    checks : checks
        Of any instrument, in any order; only its own count.

    Returns
    -------
    Instrument

    Notes
    -----
    Bayesian linear regression of the error on the heat above the ice point, one check at a time in order of date (a
    Kalman filter); offset and gain wander between checks by `WANDER_PER_YEAR`. One point alone leaves the gain to the
    prior, so that the doubt grows away from it. A check that shows drift puts all before it in as much doubt as
    if the instrument had never been checked; the first at a point, if the prior hardly allows it, widens the prior.

    Source
    ------
    Gelman et al., Bayesian Data Analysis, chapter 14 (prior information as additional data); checked against
    statsmodels' weighted least squares and state-space filter.
    """
    own = _of(instrument.name, checks)
    if not own:
        return instrument
    belief = _line(instrument, own)
    doubts = np.sqrt(np.diag(belief.covariance))
    return replace(
        instrument,
        offset=float(belief.mean[0]),
        offset_doubt=float(doubts[0]),
        gain=float(belief.mean[1]),
        gain_doubt=float(doubts[1]),
        correlation=float(belief.covariance[0, 1] / doubts.prod()),
        checked_on=own[-1].on.isoformat(),
    )


def give_or_take(instrument: Instrument, true: float) -> float:
    """How far the error at a true heat [K] may be from what the checks say [K], eight times in ten."""
    return NORMAL_P90 * instrument.doubt(true)


def reading_doubt(instrument: Instrument, surface: Surface | None, true: float) -> float:
    """How far one reading of a heat [K], less the known error, may be off [K], eight times in ten.

    `surface` is what an infrared one is pointed at, None where the table does not know it.
    """
    kind = _READS.get(instrument.kind, SpotKind.TOP)
    noise = noise_deviation(Spot(name="", label="", kind=kind), true)
    own = NORMAL_P90 * hypot(noise, instrument.doubt(true))
    if instrument.kind != INFRARED or surface is None:
        return own
    certain = replace(instrument, offset_doubt=0.0, gain_doubt=0.0)
    seen = corrected_reading(true + instrument.error(true), certain, surface)
    return hypot(own, 0.5 * (seen.high - seen.low))


def drift_of(instrument: Instrument, checks: Iterable[Check]) -> Drift | None:
    """Whether the latest check differs from what the ones before foretold; only against checks at the same point."""
    own = _of(instrument.name, checks)
    before = [check for check in own if check.on < own[-1].on]
    same = [check for check in before if check.point is own[-1].point]
    if not same:
        return None
    belief = _line(instrument, before)
    if _score(instrument, belief, own[-1]) < DRIFT_FROM:
        return None
    return Drift(instrument=instrument.name, change=_surprise(belief, own[-1]), since=same[-1].on)


def _of(instrument: str, checks: Iterable[Check]) -> list[Check]:
    return sorted((check for check in checks if check.instrument == instrument), key=lambda check: check.on)


def _line(instrument: Instrument, checks: list[Check]) -> Gaussian:
    """Offset [K] and gain [K per K] after checks in order of date."""
    never = unchecked(instrument.name, instrument.kind)
    prior = np.diag([never.offset_doubt**2, never.gain_doubt**2])
    belief = Gaussian(np.zeros(2), prior)
    wander = np.diag(np.square(WANDER_PER_YEAR))
    for place, check in enumerate(checks):
        before = checks[:place]
        years = (check.on - before[-1].on).days / _DAYS_PER_YEAR if before else 0.0
        belief = Gaussian(belief.mean, belief.covariance + years * wander)
        score = _score(instrument, belief, check)
        if score >= DRIFT_FROM and any(one.point is check.point for one in before):
            belief = Gaussian(belief.mean, prior)
        elif score >= DRIFT_FROM:
            wider = np.diag([1.0 if before else score, score])
            belief = Gaussian(belief.mean, wider @ belief.covariance @ wider)
        belief = update(belief, _row(check), error_of(check), _variance(instrument, check))
    return belief


def _surprise(before: Gaussian, check: Check) -> float:
    """By how much more a check is off than the ones before foretold [K]."""
    return error_of(check) - float(_row(check) @ before.mean)


def _score(instrument: Instrument, before: Gaussian, check: Check) -> float:
    """The same in standard deviations, whichever way."""
    row = _row(check)
    doubt = float(row @ before.covariance @ row + _variance(instrument, check)) ** 0.5
    return float(abs(_surprise(before, check)) / doubt)


def _row(check: Check) -> FloatArray:
    return np.array([1.0, true_temperature(check.point, check.pressure) - ZERO_CELSIUS])


def _variance(instrument: Instrument, check: Check) -> float:
    """Of one check [K2]."""
    return BATH_DOUBT[check.point] ** 2 + READ_DOUBT.get(instrument.kind, READ_DOUBT[INFRARED]) ** 2
