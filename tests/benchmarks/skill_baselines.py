"""What a cook could do without this program: last value, ruler lines, and three general-purpose library forecasts.

Each gives a path of the oven for the next three hours; its intervals are the quantiles of its own errors on training
sessions, told apart by lead time and by whether the band has been reached yet.
"""

import warnings
from collections.abc import Callable, Sequence
from dataclasses import dataclass

import numpy as np

from tests.benchmarks.skill_questions import LEADS, Answer, FloatArray, Question, answer_from_paths

COLDEST, HOTTEST = 278.0, 590.0  # K; no baseline says anything outside
ERROR_LEVELS = (np.arange(40) + 0.5) / 40
Path_ = tuple[FloatArray, FloatArray]  # mean (leads,) K and scale (leads,)


def last_value(readings: FloatArray) -> Path_:
    """The oven stays as it was last read."""
    return np.full(len(LEADS), readings[-1, 1]), np.ones(len(LEADS))


def _line(count: int) -> Callable[[FloatArray], Path_]:
    def line(readings: FloatArray) -> Path_:
        used = readings[-count:]
        slope, level = np.polyfit(used[:, 0] - used[-1, 0], used[:, 1], 1)
        return np.clip(level + slope * LEADS, COLDEST, HOTTEST), np.ones(len(LEADS))

    return line


def exponential_approach(readings: FloatArray) -> Path_:
    """First-order approach to a steady heat, fitted to the last 75 minutes by scipy's curve_fit."""
    from scipy.optimize import OptimizeWarning, curve_fit

    used = readings[readings[:, 0] >= readings[-1, 0] - 75.0]
    if len(used) < 4:
        used = readings[-4:]
    t, y = used[:, 0] - used[0, 0], used[:, 1]

    def approach(t: FloatArray, start: float, end: float, tau: float) -> FloatArray:
        return np.asarray(end + (start - end) * np.exp(-t / tau))

    guess = (float(np.clip(y[0], 201.0, 649.0)), float(np.clip(y[-1] + (y[-1] - y[0]), COLDEST + 1, HOTTEST - 1)), 45.0)
    bounds = ([200.0, COLDEST, 8.0], [650.0, HOTTEST, 240.0])
    try:
        with warnings.catch_warnings():
            warnings.simplefilter("ignore", OptimizeWarning)
            fitted, _ = curve_fit(approach, t, y, p0=guess, bounds=bounds, loss="soft_l1", f_scale=4.0)
    except RuntimeError:  # curve_fit found no optimum; the last value is then the honest answer
        return last_value(readings)
    start = approach(np.array([t[-1]]), *fitted)[0]
    shift = (y[-1] - start) * np.exp(-LEADS / 20.0)
    return np.clip(approach(t[-1] + LEADS, *fitted) + shift, COLDEST, HOTTEST), np.ones(len(LEADS))


def gaussian_process(readings: FloatArray) -> Path_:
    """scikit-learn's Gaussian process on the last two and a half hours, with the spread that it gives itself."""
    from sklearn.exceptions import ConvergenceWarning
    from sklearn.gaussian_process import GaussianProcessRegressor
    from sklearn.gaussian_process.kernels import ConstantKernel, Matern, WhiteKernel

    used = readings[readings[:, 0] >= readings[-1, 0] - 150.0]
    kernel = ConstantKernel(1.0, (0.1, 30.0)) * Matern(60.0, (20.0, 240.0), nu=2.5) + WhiteKernel(0.01, (1e-3, 0.3))
    process = GaussianProcessRegressor(kernel, normalize_y=False, n_restarts_optimizer=0)
    centre, spread = used[:, 1].mean(), max(used[:, 1].std(), 8.0)
    with warnings.catch_warnings():
        warnings.simplefilter("ignore", ConvergenceWarning)
        process.fit((used[:, 0] - used[-1, 0])[:, None], (used[:, 1] - centre) / spread)
    mean, deviation = process.predict(LEADS[:, None].astype(float), return_std=True)
    return np.clip(centre + spread * mean, COLDEST, HOTTEST), np.maximum(spread * deviation, 1.5)


def damped_trend(readings: FloatArray) -> Path_:
    """statsmodels' exponential smoothing with a damped trend, on readings laid on a five-minute grid."""
    from statsmodels.tsa.holtwinters import ExponentialSmoothing

    span = readings[-1, 0] - readings[0, 0]
    count = max(5, int(span // 5) + 1)
    grid = readings[-1, 0] - 5.0 * np.arange(count)[::-1]
    series = np.interp(grid, readings[:, 0], readings[:, 1])[-40:]
    with warnings.catch_warnings():
        warnings.simplefilter("ignore")  # statsmodels tells of convergence and of boundary values
        model = ExponentialSmoothing(series, trend="add", damped_trend=True, initialization_method="estimated")
        forecast = model.fit(optimized=True).forecast(len(LEADS) - 1)
    path = np.concatenate([[readings[-1, 1]], forecast])
    return np.clip(np.nan_to_num(path, nan=float(readings[-1, 1])), COLDEST, HOTTEST), np.ones(len(LEADS))


BASELINES: dict[str, Callable[[FloatArray], Path_]] = {
    "last value": last_value,
    "line through two": _line(2),
    "line through three": _line(3),
    "exponential approach": exponential_approach,
    "Gaussian process": gaussian_process,
    "damped trend": damped_trend,
}


@dataclass(frozen=True, slots=True, kw_only=True)
class Baseline:
    """A path and the errors that it made on training sessions."""

    name: str
    errors: FloatArray  # (2, levels, leads): before and after the band was reached, in units of the scale

    def answer(self, question: Question) -> Answer:
        """Answer one question."""
        mean, scale = BASELINES[self.name](question.readings)
        paths = mean + scale * self.errors[int(_reached_by_readings(question))]
        fine = np.arange(0, LEADS[-1] + 1.0)
        return answer_from_paths(np.array([np.interp(fine, LEADS, path) for path in paths]), question.band, fine)


def fit(name: str, training: Sequence[Question]) -> Baseline:
    """The baseline with the quantiles of its errors over training questions."""
    rows: tuple[list[FloatArray], list[FloatArray]] = ([], [])
    for question in training:
        mean, scale = BASELINES[name](question.readings)
        rows[int(_reached_by_readings(question))].append((question.path[LEADS] - mean) / scale)
    return Baseline(name=name, errors=np.array([np.quantile(np.array(part), ERROR_LEVELS, axis=0) for part in rows]))


def _reached_by_readings(question: Question) -> bool:
    values = question.readings[:, 1]
    return bool(((values >= question.band.low) & (values <= question.band.high)).any())
