"""Whether eight windows in ten hold for a pan of water: invented pans and cooktops that err in ways of their own.

Run by hand: `python -m tests.benchmarks.water_windows [TRIALS]`. A trial is a stove with a cooktop, an oven and a base
of a pan of its own, on which four pans of water are heated one after the other: other amounts, heats and courses. The
truth has a patch of iron under the pan that cools first, a contact that betters as it warms, water that is not quite
what was noted and not quite as cold, steam and a lid of their own, in steps of two seconds. The program sees the notes,
the spot as read and its futures, and the earlier pans.
"""

import sys
from dataclasses import dataclass
from datetime import UTC, datetime, timedelta

import numpy as np

from cookstove_gui.cooking.pans.boiling_time import Goal, water_time
from cookstove_gui.cooking.pans.catalogue import COLD_WATER, Pan, PanOfWater, pans, usual_contact
from cookstove_gui.cooking.pans.learned_contact import PanRun, learned_contact
from cookstove_gui.forecast.answers import Projection
from cookstove_gui.physics.pan import loss_areas, loss_fluxes

NOW = datetime(2026, 3, 14, 21, 0, tzinfo=UTC)
MINUTES = np.arange(0.0, 181.0, 5.0)
FUTURES = 200
PANS_EACH = 4
STEP = 2.0  # s
SPOT = "top_front_left"


@dataclass(frozen=True)
class Kitchen:
    """What is true of one stove and one pan, and stays."""

    contact: float  # factor on the usual contact
    gives: float  # W/K
    iron: float  # J/K
    patch: float  # W/K from the patch under the pan to the rest of the cooktop
    oven: tuple[float, float, float]  # W/K to the oven, W/K and J/K of its own
    steam: float  # factor on what dries
    lid: float  # share that a lid lets through


def about(rng: np.random.Generator, share: float) -> float:
    """Round 1, flat and heavy-tailed in turn."""
    return float(np.exp(share * (rng.uniform(-1.7, 1.7) if rng.random() < 0.7 else 0.8 * rng.standard_t(4))))


def invented(rng: np.random.Generator, pan: Pan) -> Kitchen:
    """A stove and a pan that a kitchen might have."""
    return Kitchen(
        contact=about(rng, usual_contact(pan).log_sd),
        gives=38.0 * about(rng, 0.3),
        iron=26e3 * about(rng, 0.3),
        patch=rng.uniform(60.0, 160.0),
        oven=(4.0 * about(rng, 0.4), 14.0 * about(rng, 0.3), 22e3 * about(rng, 0.3)),
        steam=about(rng, 0.3),
        lid=rng.uniform(0.04, 0.22),
    )


def courses(rng: np.random.Generator, level: float, count: int) -> np.ndarray:
    """Spot courses [K], (count, times): a level, a rise or sag that levels off, and a slow wander."""
    start = level + rng.normal(0.0, 12.0, count)[:, None]
    drift = rng.normal(-5.0, 25.0, count)[:, None] * (1 - np.exp(-MINUTES / 50.0))
    return start + drift + np.cumsum(rng.normal(0.0, 3.0, (count, len(MINUTES))), axis=1)


def truth(rng: np.random.Generator, kitchen: Kitchen, water: PanOfWater, spot: np.ndarray) -> float:
    """When it boils [min]; infinite where it does not within three hours."""
    real = water.physical(1.0)
    kilograms = float(np.asarray(real.water)) * about(rng, 0.05)
    openness = kitchen.lid if water.pan.lid else 1.0
    grid = np.linspace(274.0, water.boiling, 60)
    *dry, drying = loss_fluxes(grid, water.kitchen)
    base = sum(float(np.asarray(area)) * flux for area, flux in zip(loss_areas(real)[:3], dry, strict=True))
    base = base + drying * water.pan.base_area * openness * kitchen.steam
    area, heat = water.pan.base_area, kilograms * 4190.0 + water.pan.heat_capacity
    run = kitchen.contact * usual_contact(water.pan).median * about(rng, 0.18)
    to_oven, gives_oven, walls = kitchen.oven
    warm, down, local, oven = COLD_WATER + rng.normal(0.0, 2.0), 0.0, 0.0, 0.0
    patch_iron = 4e3
    plates = np.interp(np.arange(0.0, MINUTES[-1] * 60, STEP) / 60.0, MINUTES, spot).tolist()
    losses, to_place = base.tolist(), (len(grid) - 1) / (grid[-1] - grid[0])
    for step, untouched in enumerate(plates):
        # warm metal lies flatter, and air conducts better: a tenth more contact on the way to the boil
        passed = run * area * (0.95 + 0.1 * (warm - 288.0) / 85.0) * (untouched - down - local - warm)
        local += STEP * (passed - kitchen.patch * local) / patch_iron
        down += STEP * (kitchen.patch * local - kitchen.gives * down - to_oven * (down - oven)) / kitchen.iron
        oven += STEP * (to_oven * (down - oven) - gives_oven * oven) / walls
        warm += STEP * (passed - losses[min(max(int((warm - grid[0]) * to_place), 0), len(losses) - 1)]) / heat
        if warm >= water.boiling:
            return step * STEP / 60.0
    return np.inf


def run_of(water: PanOfWater, spot: np.ndarray, minutes: float, rng: np.random.Generator, number: int) -> PanRun:
    """A pan that boiled, as the log has it: the spot read beside it some time before, and at some time meanwhile."""
    before = rng.uniform(0.0, 15.0)
    at = np.array([-before, rng.uniform(0.0, minutes)])
    ends = np.interp(at, MINUTES, spot) + np.array([rng.normal(0.0, 1.2) * before, 0.0]) + rng.normal(0.0, 5.0, 2)
    return PanRun(
        spot=SPOT, on_at=NOW + timedelta(days=number), offset_minutes=0, water=water, goal=Goal.BOIL, start=COLD_WATER,
        minutes=minutes, spot_minutes=at, spot_heats=ends,
    )  # fmt: skip


def main() -> None:
    """Prints the share of windows that held, by how many pans were noted before."""
    trials = int(sys.argv[1]) if len(sys.argv) > 1 else 60
    rng = np.random.default_rng(17)
    held: dict[int, list[tuple[bool, float]]] = {number: [] for number in range(PANS_EACH)}
    usual = [pan for pan in pans() if pan.key in ("saucepan", "kettle", "stock pot", "enamel pot")]
    for _ in range(trials):
        pan = usual[rng.integers(len(usual))]
        pan = Pan(**{name: getattr(pan, name) for name in Pan.__slots__ if name != "lid"}, lid=bool(rng.random() < 0.6))
        kitchen, runs = invented(rng, pan), []
        for number in range(PANS_EACH):
            water = PanOfWater(pan, float(rng.uniform(0.7, 3.0)))
            level = rng.uniform(480.0, 620.0)
            futures = courses(rng, level, FUTURES)
            spot = courses(rng, level, 1)[0]
            taken = truth(rng, kitchen, water, spot)
            ahead = Projection(now=NOW, minutes=MINUTES, spots=(SPOT,), kelvin=futures[:, :, None])
            said = water_time(ahead, SPOT, water, contact=learned_contact(runs, pan)).minutes
            held[number].append((_holds(said.p10, said.p90, taken), _length(said.p10, said.p50, said.p90)))
            if np.isfinite(taken):
                runs.append(run_of(water, spot, taken, rng, number))
    for number, rows in held.items():
        share, length = np.mean([row[0] for row in rows]), np.nanmedian([row[1] for row in rows])
        print(f"after {number} pans: {100 * share:3.0f} % of {len(rows)} windows hold, length {100 * length:3.0f} %")
    every = [row[0] for rows in held.values() for row in rows]
    print(f"all: {100 * np.mean(every):3.0f} % of {len(every)}")


def _holds(first: float | None, last: float | None, taken: float) -> bool:
    if first is None:
        return taken > MINUTES[-1]
    return taken >= first and (last is None or taken <= last)


def _length(first: float | None, middle: float | None, last: float | None) -> float:
    return np.nan if first is None or middle is None or last is None else (last - first) / middle


if __name__ == "__main__":
    main()
