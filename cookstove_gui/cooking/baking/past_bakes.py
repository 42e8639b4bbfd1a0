"""What earlier bakes of the same thing in the same oven say: how far each took longer or less than it was expected to.

One counts if it went in and came out of the same session's oven, and the oven was read about then.
"""

from collections.abc import Iterable
from dataclasses import dataclass

import numpy as np

from cookstove_gui.cooking.baking.bodies import step_of, warmed
from cookstove_gui.cooking.baking.catalogue import Bake
from cookstove_gui.cooking.baking.doneness import minutes_to_done
from cookstove_gui.cooking.baking.doubts import LASTING, Doubt, Learned, usual_ensemble
from cookstove_gui.cooking.baking.in_oven import put_in
from cookstove_gui.cooking.baking.oven_course import OvenCourse
from cookstove_gui.cooking.fires.logged_fires import minutes_between, readings_of, standing_rows
from cookstove_gui.forecast.answers import FloatArray
from cookstove_gui.physics.quantities import STANDARD_PRESSURE
from cookstove_gui.physics.water import boiling_temperature
from cookstove_gui.stove.entries import Session
from cookstove_gui.stove.stove import Stove

AT_MOST = 8  # the latest ones; older ones were of another season's wood and hands
OUT_LOG_SD = 0.08  # of when a cook takes it out over when it is done; judgement
_OVEN_SD = 6.0  # K, of an oven told by its readings alone; judgement
_NEAR_MIN = 20.0  # a reading counts from this long before it went in
_AHEAD = 2.0  # times the minutes that it took, that it is followed


@dataclass(frozen=True, slots=True, kw_only=True)
class PastBake:
    """One that came out."""

    bake: Bake  # as heavy and as warm as it went in
    minutes: float  # that it took
    oven_minutes: FloatArray  # (readings,) from going in
    oven_heats: FloatArray  # (readings,) K


def past_bakes(stove: Stove, sessions: Iterable[Session], name: str) -> tuple[PastBake, ...]:
    """The latest ones of that name in a stove's sessions, in their order."""
    found = []
    for session in sessions:
        if session.stove != stove.name:
            continue
        rows = standing_rows(session.entries)
        for one in put_in(rows):
            if one.name.casefold() != name.casefold() or one.bake is None or one.came_out is None:
                continue
            minutes = minutes_between(one.went_in, one.came_out)
            read = [
                (at, heat)
                for at, heat in readings_of(rows, stove.oven_spot, one.went_in)
                if -_NEAR_MIN <= at <= minutes
            ]
            if minutes > 1.0 and read:
                times, heats = zip(*read, strict=True)
                found.append(
                    PastBake(bake=one.bake, minutes=minutes, oven_minutes=np.array(times), oven_heats=np.array(heats))
                )
    return tuple(found[-AT_MOST:])


def learned_from(past: Iterable[PastBake], pressure: float = STANDARD_PRESSURE) -> Learned | None:
    """What they say of the doubts that last from bake to bake; none if nothing is to be learned.

    The logarithm of the time is taken as linear in the doubts, so that each bake is one step of a Kalman filter.
    """
    mean, covariance, count = np.zeros(len(Doubt)), np.eye(len(Doubt)), 0
    passing = [doubt for doubt in Doubt if doubt not in LASTING]
    for one in past:
        expected = _expected(one, pressure)
        if expected is None:
            continue
        middle, slopes = expected
        lasting = slopes.copy()
        lasting[passing] = 0.0
        noise = OUT_LOG_SD**2 + float((slopes[passing] ** 2).sum())
        gain = covariance @ lasting / (lasting @ covariance @ lasting + noise)
        mean = mean + gain * (np.log(one.minutes) - middle - lasting @ mean)
        covariance = covariance - np.outer(gain, lasting @ covariance)
        count += 1
    return Learned(mean=mean, covariance=covariance, bakes=count) if count else None


def _expected(one: PastBake, pressure: float) -> tuple[float, FloatArray] | None:
    """The logarithm of the minutes to be expected, and how it moves with each doubt, (doubts,)."""
    ensemble, step = usual_ensemble(), step_of(one.bake)
    seconds = np.arange(0.0, max(_AHEAD * one.minutes, 30.0) * 60.0, step)
    heats = np.interp(seconds / 60.0, one.oven_minutes, one.oven_heats)
    course = OvenCourse(
        seconds=seconds, step=step, futures=heats[None, :], past_middle=heats, past_sd=np.full(len(heats), _OVEN_SD)
    )
    warming = warmed(one.bake, ensemble, course.of(ensemble.of(Doubt.OVEN)), step, pressure)
    taken = minutes_to_done(one.bake, ensemble, warming, float(boiling_temperature(pressure)))
    ever = np.isfinite(taken)
    if ever.mean() < 0.8:
        return None
    rows, times = ensemble.rows[ever], np.log(taken[ever])
    fitted, *_ = np.linalg.lstsq(np.column_stack([np.ones(len(rows)), rows]), times, rcond=None)
    return float(fitted[0]), np.asarray(fitted[1:], dtype=np.float64)
