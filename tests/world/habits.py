"""What people at the invented stoves are like, and what each firing is for."""

from dataclasses import dataclass

import numpy as np


@dataclass(frozen=True, slots=True, kw_only=True)
class Cook:
    """Habits of one person, the same in every firing."""

    reload_below: float  # kg of unburnt wood at which a reload is due
    notices: float  # chance a minute of noticing what is due
    charge: float  # kg of a usual reload
    overfires: float  # chance that a reload is far too much
    steady_air: float  # 0..1
    adjusts: float  # chance a minute of touching the air
    bypass_minute: float
    checks_door: float  # chance a minute during a bake
    leaves_door: float  # chance a minute of leaving the door open once done
    uses_pans: float  # chance a minute
    shuts_air: float  # chance a minute of shutting the air once done


def make_cook(rng: np.random.Generator) -> Cook:
    """Draw a cook."""
    return Cook(
        reload_below=rng.uniform(0.10, 0.45),
        notices=float(np.exp(rng.uniform(np.log(0.05), np.log(0.5)))),
        charge=rng.uniform(0.6, 1.5),
        overfires=rng.uniform(0.02, 0.14),
        steady_air=rng.uniform(0.22, 0.60),
        adjusts=rng.uniform(0.02, 0.14),
        bypass_minute=rng.uniform(12.0, 34.0),
        checks_door=rng.uniform(0.0, 0.04),
        leaves_door=rng.choice([0.0, 0.001, 0.005]),
        uses_pans=rng.uniform(0.0, 0.015),
        shuts_air=rng.uniform(0.01, 0.12),
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class Plan:
    """What one firing is for; temperatures in kelvin, minutes from lighting."""

    purpose: str  # bake | roast | top | kindling | medium | full
    low: float
    high: float
    kindling: float  # kg
    first_splits: float  # minute
    first_charge: float  # kg
    bypass_minute: float
    air_minute: float
    steady_air: float
    batches: int
    batch_minutes: float
    until: float  # minute after which no more wood is put on
    charge_factor: float  # of the cook's usual reload


_BANDS_F = ((275, 325), (300, 350), (325, 375), (350, 400), (375, 425), (400, 450))


def make_plan(rng: np.random.Generator, cook: Cook, purpose: str | None = None) -> Plan:
    """Draw what a firing is for."""
    drawn = str(rng.choice(["bake", "roast", "top", "medium", "full"], p=[0.5, 0.2, 0.12, 0.1, 0.08]))
    purpose = purpose or drawn
    low, high = _BANDS_F[rng.choice(len(_BANDS_F), p=[0.1, 0.15, 0.25, 0.25, 0.15, 0.1])]
    if purpose == "roast":
        low, high = _BANDS_F[rng.choice(3)]
    kindling_only = purpose == "kindling"
    bypass = max(8.0, cook.bypass_minute + rng.normal(0, 5))
    return Plan(
        purpose=purpose,
        low=(low - 32) / 1.8 + 273.15,
        high=(high - 32) / 1.8 + 273.15,
        kindling=rng.uniform(0.9, 1.5) if not kindling_only else rng.uniform(1.2, 1.5),
        first_splits=1e9 if kindling_only else rng.uniform(7, 20),
        first_charge=rng.uniform(0.9, 1.9),
        bypass_minute=1e9 if kindling_only else bypass + (rng.uniform(10, 45) if rng.random() < 0.1 else 0.0),
        air_minute={"full": rng.uniform(75, 130), "kindling": 1e9}.get(purpose, rng.uniform(20, 50)),
        steady_air=float(np.clip(cook.steady_air + rng.normal(0, 0.07), 0.12, 0.8)),
        batches=int(rng.integers(1, 4)) if purpose == "bake" else int(purpose == "roast"),
        batch_minutes=rng.uniform(28, 60) if purpose == "bake" else rng.uniform(90, 170),
        until={"kindling": 0.0, "top": rng.uniform(60, 130), "medium": rng.uniform(120, 180)}.get(
            purpose, rng.uniform(150, 330)
        ),
        charge_factor={"full": 1.45, "top": 0.9}.get(purpose, rng.uniform(0.85, 1.2)),
    )
