"""What a probe in the core tells: it narrows the members to those that could show it, and how much one would narrow."""

from dataclasses import dataclass
from datetime import datetime

import numpy as np

from cookstove_gui.cooking.baking.bodies import warmed
from cookstove_gui.cooking.baking.catalogue import Bake
from cookstove_gui.cooking.baking.doubts import Doubt, Ensemble
from cookstove_gui.cooking.baking.oven_course import OvenCourse
from cookstove_gui.cooking.belief import normal_rows
from cookstove_gui.forecast.answers import NORMAL_P90, FloatArray
from cookstove_gui.resource_files import table

_ROUNDS = 3  # in which the readings are taken in, each with as much more doubt: the warming is not linear
_IMPLAUSIBLE = 3.0  # standard deviations of what a core can be by then
_LATER = (0.0, 10.0, 20.0)  # min from now at which a reading is tried out
_TRIED = 12  # members taken for the truth in turn


@dataclass(frozen=True, slots=True, kw_only=True)
class Probe:
    """What a probe showed in the core."""

    at: datetime
    core: float  # K


@dataclass(frozen=True, slots=True, kw_only=True)
class ProbeGain:
    """What a reading would do to the window."""

    in_min: float  # from now
    window_min: float  # how long the window would then be, to be expected [min]


def narrowed(
    bake: Bake, usual: Ensemble, course: OvenCourse, probes: tuple[tuple[float, float], ...], pressure: float
) -> tuple[Ensemble, int]:
    """The members that the probes leave likely, and whether the latest is off: 1 too warm, -1 too cold, 0 neither.

    `probes` are minutes from going in and cores [K], in order. One that no core can show by then is not in the core,
    and tells nothing of it.
    """
    inside = [(minute, core) for minute, core in probes if 0.0 < minute * 60.0 <= course.seconds[-1]]
    if not inside:
        return usual, 0
    rows = usual.rows.copy()
    noise_sd = float(table("bakes.toml")["doubt"]["probe"])
    steps = int(np.ceil(inside[-1][0] * 60.0 / course.step)) + 1
    noises = normal_rows(len(rows), len(Doubt) + len(inside) * _ROUNDS)[:, len(Doubt) :]
    credible, is_off = np.ones(len(inside), dtype=bool), 0
    for round_number in range(_ROUNDS):
        ensemble = Ensemble(rows=rows)
        oven = course.of(ensemble.of(Doubt.OVEN))[: max(steps, 2)]
        cores = warmed(bake, ensemble, oven, course.step, pressure).core
        at = np.array([minute * 60.0 for minute, _ in inside])
        shown = np.array([np.interp(at, course.seconds[: len(cores)], core) for core in cores.T])  # (members, probes)
        measured = np.array([core for _, core in inside])
        if round_number == 0:
            off = (measured - shown.mean(axis=0)) / np.hypot(shown.std(axis=0), noise_sd)
            credible = np.abs(off) <= _IMPLAUSIBLE
            is_off = 0 if credible[-1] else int(np.sign(off[-1]))
            if not credible.any():
                return usual, is_off
        shown, measured = shown[:, credible], measured[credible]
        noise = noise_sd * np.sqrt(_ROUNDS)
        chosen = noises[:, round_number::_ROUNDS][:, : len(inside)][:, credible]
        rows = rows + (measured + noise * chosen - shown) @ _gain(rows, shown, noise).T
    return Ensemble(rows=np.clip(rows, -4.0, 4.0)), is_off


def _gain(rows: FloatArray, shown: FloatArray, noise: float) -> FloatArray:
    """How far each doubt moves for each kelvin that a probe is off, (doubts, probes)."""
    apart, seen = rows - rows.mean(axis=0), shown - shown.mean(axis=0)
    count = len(rows) - 1
    spread = seen.T @ seen / count + noise**2 * np.eye(shown.shape[1])
    found: FloatArray = np.linalg.solve(spread, seen.T @ apart / count).T
    return found


def probe_gains(minutes: FloatArray, cores: FloatArray, taken: FloatArray, ago: float) -> tuple[ProbeGain, ...]:
    """What a reading would do now and a little later, as long as it is not likely done.

    `minutes` are from going in, `cores` (members, steps) [K], `taken` when each member is done [min from going in].
    """
    finite = np.isfinite(taken)
    if finite.mean() < 0.9:
        return ()
    middle = float(np.median(taken[finite]))
    noise = float(table("bakes.toml")["doubt"]["probe"])
    found = []
    for later in _LATER:
        at = max(ago, 0.0) + later
        if at < 5.0 or at >= middle:
            continue
        shown = np.array([np.interp(at, minutes, core) for core in cores[finite]])
        done = taken[finite]
        lengths = []
        for truth in np.linspace(0, len(done) - 1, _TRIED).astype(int):
            # what is left of the spread of times once the part that goes with the core is known
            weight = np.exp(-0.5 * ((shown - shown[truth]) / noise) ** 2)
            weight /= weight.sum()
            centre = float(weight @ done)
            lengths.append(float(np.sqrt(weight @ (done - centre) ** 2)))
        found.append(ProbeGain(in_min=at - ago, window_min=2 * NORMAL_P90 * float(np.mean(lengths))))
    return tuple(found)
