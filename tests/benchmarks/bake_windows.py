"""Whether eight windows in ten hold: invented ovens and foods that err in ways the program does not know of.

Run by hand: `python -m tests.benchmarks.bake_windows [TRIALS [BAKE ...]]`. A trial is a food with a shape, make-up,
crust, start and idea of done of its own, in an oven whose walls, air and course are its own; the truth is baked in
finer steps, by distributions that are not the program's. The program sees the recipe, futures round the oven's course,
and perhaps a probe half-way.
"""

import sys
from dataclasses import replace
from datetime import UTC, datetime, timedelta

import numpy as np

from cookstove_gui.cooking.baking.bodies import _bodies
from cookstove_gui.cooking.baking.catalogue import BOILING_AT_SEA_LEVEL, Bake, bake_of, done_temperature
from cookstove_gui.cooking.baking.doneness import SLOWLY_DONE, Doneness, doneness
from cookstove_gui.cooking.baking.doubts import single
from cookstove_gui.cooking.baking.probing import Probe
from cookstove_gui.cooking.fit.tasks import task_of
from cookstove_gui.cooking.safety.food_safety import safe_minimum
from cookstove_gui.forecast.answers import Projection, Trace
from cookstove_gui.physics.quantities import STANDARD_PRESSURE
from cookstove_gui.physics.warming import warm_through

KEYS = ("bread_loaf", "bread_round", "cake_layer", "muffins", "biscuits", "fruit_pie", "potatoes", "chicken",
        "beef_roast", "leg_of_lamb", "meat_loaf", "custard", "casserole", "fish")  # fmt: skip
NOW = datetime(2026, 3, 14, 21, 0, tzinfo=UTC)
MINUTES = np.arange(0.0, 181.0, 5.0)
FINE = 10.0  # s


def courses(rng: np.random.Generator, middle: float, count: int, bias: float) -> np.ndarray:
    """Oven courses [K], (count, times): a level, a sag or rise that levels off, and a slow wander."""
    level = middle + bias + rng.normal(0.0, 6.0, count)[:, None]
    drift = rng.normal(-10.0, 14.0, count)[:, None] * (1 - np.exp(-MINUTES / 70.0))
    wander = np.cumsum(rng.normal(0.0, 1.6, (count, len(MINUTES))), axis=1)
    return level + drift + wander


def invented(rng: np.random.Generator, bake: Bake) -> tuple[Bake, dict[str, float]]:
    """One that a kitchen might have in place of the recipe's, and how the oven treats it."""

    def about(share: float) -> float:
        """Round 1, flat and heavy-tailed in turn."""
        return float(np.exp(share * (rng.uniform(-1.7, 1.7) if rng.random() < 0.7 else 0.8 * rng.standard_t(4))))

    thick = about(0.045)
    small, middle, large = bake.sizes
    sizes = (small * thick, middle * thick, large / thick**2)
    if bake.form == "disc":
        flat = middle == large
        wide = thick**-0.5
        sizes = (small * thick, middle * wide, large * wide) if flat else (small * wide, middle * wide, large * thick)
    gas = (
        min(max(bake.porosity + 0.25 * (1 - bake.porosity) * rng.uniform(-0.3, 0.3), 0.0), 0.9)
        if bake.is_crumb
        else 0.0
    )
    # the cook knows its weight: what rose more is the larger for it
    grown = ((1.0 - bake.porosity) / (1.0 - gas)) ** (1 / 3) if bake.is_crumb else 1.0
    sizes = (grown * sizes[0], grown * sizes[1], grown * sizes[2])
    crust = replace(
        bake.crust,
        diffusivity=bake.crust.diffusivity * about(0.30),
        conductivity=bake.crust.conductivity * about(0.25),
        skin=bake.crust.skin * about(0.4),
    )
    own = replace(
        bake,
        sizes=tuple(sorted(sizes)),
        porosity=gas if bake.is_crumb else bake.porosity,
        crust=crust,
        openness=min(bake.openness * about(0.15), 1.0),
        conduction=bake.conduction * about(0.08),
        start=bake.start + rng.uniform(-3.0, 3.0),
    )
    return own, {
        "air": about(0.20),
        "seen": rng.uniform(0.8, 1.0),
        "walls": rng.normal(0.0, 8.0),
        "steam": rng.uniform(1e3, 9e3),
    }


def truth(rng: np.random.Generator, recipe: Bake, oven: np.ndarray) -> tuple[np.ndarray, float]:
    """Its core [K] every `FINE` seconds and when its cook calls it done [min]."""
    own, kitchen = invented(rng, recipe)
    body, exposure = _bodies(own, single(), STANDARD_PRESSURE)
    exposure = replace(
        exposure,
        convection_coefficient=9.0 * kitchen["air"],
        emissivity=kitchen["seen"],
        vapour_pressure=kitchen["steam"],
    )
    at = np.arange(0.0, MINUTES[-1] * 60.0, FINE)
    air = np.interp(at / 60.0, MINUTES, oven)
    walls = air + kitchen["walls"] + 5.0 * np.sin(at / 900.0 + rng.uniform(0.0, 6.0))
    core = warm_through(body, exposure, own.start, air, FINE, walls, nodes=40).core.ravel()
    goal = done_temperature(recipe, BOILING_AT_SEA_LEVEL)
    goal = BOILING_AT_SEA_LEVEL - (BOILING_AT_SEA_LEVEL - goal) * float(np.exp(rng.uniform(-0.3, 0.3)))
    goal = min(
        max(goal, done_temperature(recipe, BOILING_AT_SEA_LEVEL) - 2.5),
        done_temperature(recipe, BOILING_AT_SEA_LEVEL) + 2.5,
    )
    if recipe.safety:
        goal = max(goal, safe_minimum(recipe.safety).temperature)
    there = core >= goal
    if own.setting_min > 0.0:  # or softened by a long time a little below it, of which each cook has an idea too
        minutes = np.cumsum(10.0 ** ((core - goal) / rng.uniform(25.0, 50.0))) * FINE / 60.0
        there |= minutes >= SLOWLY_DONE * own.setting_min * np.exp(rng.uniform(-0.35, 0.35))
    reached = np.flatnonzero(there)
    return core, float(reached[0] * FINE / 60.0) if len(reached) else np.inf


def holds(found: Doneness, taken: float) -> bool:
    """Whether the window holds what came."""
    first, last = found.done_min.p10, found.done_min.p90
    return (
        (first is None or taken >= first) and (last is None or taken <= last) and (first is not None or taken > 180.0)
    )


def main() -> None:
    """Prints the share of windows that held, by food as it comes and of all, without a probe and with one."""
    trials = int(sys.argv[1]) if len(sys.argv) > 1 else 20
    plain: dict[str, list[tuple[bool, float]]] = {}
    probed: dict[str, list[tuple[bool, float]]] = {}
    for key in sys.argv[2:] or KEYS:
        rng = np.random.default_rng([16, *key.encode()])  # the same cases whichever foods are asked for
        bake = bake_of(key)
        task = task_of(bake.task)
        assert task is not None
        for _ in range(trials):
            middle = rng.uniform(task.low, task.high)
            futures = courses(rng, middle, 200, 0.0)
            core, taken = truth(rng, bake, courses(rng, middle, 1, rng.normal(0.0, 4.0))[0])
            ahead = Projection(now=NOW, minutes=MINUTES, spots=("oven_centre",), kelvin=futures[:, :, None])
            found = doneness(bake, ahead)
            likely = found.done_min.p50 or np.nan
            plain.setdefault(key, []).append((holds(found, taken), _length(found) / likely))
            if not np.isfinite(taken) or taken < 12.0:
                continue
            half = 0.6 * taken
            shown = float(core[int(half * 60.0 / FINE)]) + rng.normal(0.0, 2.0)
            past = _told(futures, half)
            later = replace(ahead, now=NOW + timedelta(minutes=half))
            rest = later.minutes <= 180.0 - half
            later = replace(later, minutes=later.minutes[rest], kelvin=_after(futures, half)[:, rest, None])
            probe = (Probe(at=later.now, core=shown),)
            told = doneness(bake, later, went_in=NOW, past=past, probes=probe)
            probed.setdefault(key, []).append((holds(told, taken - half), _length(told) / likely))
        print(f"{key:14s} {_said(plain[key])}; probed {_said(probed[key])}", flush=True)
    for name, rows in (("no probe", plain), ("probed at 60 %", probed)):
        every = [row for found in rows.values() for row in found]
        print(f"{name}: {_said(every)}")


def _said(rows: list[tuple[bool, float]]) -> str:
    share, length = np.mean([row[0] for row in rows]), np.nanmean([row[1] for row in rows])
    return f"{100 * share:3.0f} % of {len(rows)} windows hold, their length {100 * length:3.0f} % of the bake"


def _length(found: Doneness) -> float:
    first, last = found.done_min.p10, found.done_min.p90
    return np.nan if first is None or last is None else last - first


def _told(futures: np.ndarray, minutes: float) -> Trace:
    """What is believed of the oven so far: no more than was foretold."""
    at = np.append(MINUTES[minutes > MINUTES], minutes)
    p10, p50, p90 = np.quantile([np.interp(at, MINUTES, future) for future in futures], [0.1, 0.5, 0.9], axis=0)
    return Trace(at=tuple(NOW + timedelta(minutes=float(each)) for each in at), p10=p10, p50=p50, p90=p90)


def _after(futures: np.ndarray, minutes: float) -> np.ndarray:
    return np.stack([np.interp(MINUTES + minutes, MINUTES, future) for future in futures])


if __name__ == "__main__":
    main()
