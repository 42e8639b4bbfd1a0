"""The oven round a bake, from when it went in to the end of the projection: one course for each member."""

from dataclasses import dataclass
from statistics import NormalDist

import numpy as np

from cookstove_gui.cooking.baking.bodies import COLDEST_OVEN, HOTTEST_OVEN
from cookstove_gui.forecast.answers import NORMAL_P90, FloatArray, Projection, Trace

_SOON = 60.0  # min, whose mean ranks the futures


@dataclass(frozen=True, slots=True, kw_only=True)
class OvenCourse:
    """The oven as it is believed up to now, and its futures, the coolest first."""

    seconds: FloatArray  # (steps,) from going in
    step: float  # s
    futures: FloatArray  # (futures, steps) K
    past_middle: FloatArray  # (steps before now,) K
    past_sd: FloatArray  # (steps before now,) K

    def of(self, place: FloatArray) -> FloatArray:
        """Its course [K], (steps, members), for members so many standard deviations hotter than the middle.

        One that is hot was hot before: its past is as many standard deviations from what is believed of it.
        """
        normal = NormalDist()
        rank = np.array([normal.cdf(float(one)) for one in place]) * len(self.futures)
        found = self.futures[np.clip(rank.astype(int), 0, len(self.futures) - 1)].T
        known = len(self.past_middle)
        # A belief that is still vague spreads beyond what an oven can be; it is cut off there.
        past = self.past_middle[:, None] + self.past_sd[:, None] * np.clip(place, -2.5, 2.5)
        return np.concatenate([np.clip(past, COLDEST_OVEN, HOTTEST_OVEN), found[known:]])


def oven_course(projection: Projection, oven: str, past: Trace | None, ago: float, step: float) -> OvenCourse:
    """The oven round a bake that went in `ago` [min]; below 0 it goes in later. A moment every `step` seconds."""
    futures = projection.of(oven)
    ranked = futures[np.argsort(futures[:, projection.minutes <= _SOON].mean(axis=1), kind="stable")]
    seconds = np.arange(0.0, (ago + projection.minutes[-1]) * 60.0 + 1e-6, step)
    after_now = seconds / 60.0 - ago
    middle = sd = np.zeros(0)
    if ago > 0 and past is not None:
        at = np.array([(moment - projection.now).total_seconds() for moment in past.at])
        before = after_now[after_now < 0.0] * 60.0
        middle, sd = np.interp(before, at, past.p50), np.interp(before, at, (past.p90 - past.p10) / (2 * NORMAL_P90))
    return OvenCourse(
        seconds=seconds,
        step=step,
        futures=np.stack([np.interp(after_now, projection.minutes, future) for future in ranked]),
        past_middle=middle,
        past_sd=sd,
    )
