"""Safe minimum temperatures and holding limits, quoted from `resources/food_safety.toml`, never computed or lowered."""

from dataclasses import dataclass
from functools import cache

import numpy as np

from cookstove_gui.errors import InputProblem
from cookstove_gui.forecast.answers import FloatArray
from cookstove_gui.resource_files import table
from cookstove_gui.units import kelvin

HOT_DAY = kelvin(90.0, "F")  # K, air above which the time in the danger zone is halved; USDA FSIS


@dataclass(frozen=True, slots=True, kw_only=True)
class SafeMinimum:
    """The least core temperature for one kind of food."""

    key: str
    temperature: float  # K
    rest_minutes: float  # that it rests before it is cut
    source: str


@dataclass(frozen=True, slots=True, kw_only=True)
class HoldingLimits:
    """How warm or cold food is kept, and how long it may be between."""

    hot_at_least: float  # K
    cold_at_most: float  # K
    danger_low: float  # K
    danger_high: float  # K
    meat_oven: float  # K, an oven for meat and poultry is no cooler
    words: str  # the caution, ending with who decides


@dataclass(frozen=True, slots=True, kw_only=True)
class WaterBath:
    """One published row of times in a boiling-water canner."""

    food: str
    pack: str
    jar: str
    minutes: tuple[int, ...]  # one for each of the published heights


@cache
def safe_minimums() -> tuple[SafeMinimum, ...]:
    """All rows of the file."""
    return tuple(
        SafeMinimum(
            key=row["key"],
            temperature=kelvin(float(row["temperature"]), "F"),
            rest_minutes=float(row["rest_minutes"]),
            source=row["source"],
        )
        for row in table("food_safety.toml")["minimum"]
    )


def safe_minimum(key: str) -> SafeMinimum:
    """The row of that key.

    Raises
    ------
    InputProblem
        If there is none.
    """
    found = next((row for row in safe_minimums() if row.key == key), None)
    if found is None:
        keys = ", ".join(row.key for row in safe_minimums())
        raise InputProblem(f"There is no safe minimum for “{key}”; choose one of {keys}.")
    return found


def holding_limits() -> HoldingLimits:
    """The holding limits of the file."""
    row = table("food_safety.toml")["holding"]
    return HoldingLimits(
        hot_at_least=kelvin(float(row["hot_at_least"]), "F"),
        cold_at_most=kelvin(float(row["cold_at_most"]), "F"),
        danger_low=kelvin(float(row["danger_low"]), "F"),
        danger_high=kelvin(float(row["danger_high"]), "F"),
        meat_oven=kelvin(float(row["meat_oven"]), "F"),
        words=f"{row['words']} {row['decides']}",
    )


def canning_words() -> str:
    """The published pressures for low-acid food, all rows of them: none is chosen by the program."""
    rows = table("food_safety.toml")["canning"]
    dial, weighted = (
        ", ".join(f"{height} {pounds} lb" for height, pounds in rows[gauge])
        for gauge in ("dial_gauge", "weighted_gauge")
    )
    return f"dial gauge: {dial}; weighted gauge: {weighted}"


@cache
def water_baths() -> tuple[WaterBath, ...]:
    """The published times in a boiling-water canner, all rows of them: none is chosen by the program."""
    rows = table("food_safety.toml")["water_bath"]["row"]
    return tuple(WaterBath(**row | {"minutes": tuple(row["minutes"])}) for row in rows)


def water_bath_heights() -> tuple[str, ...]:
    """The heights that the times are published for, in their order."""
    return tuple(table("food_safety.toml")["water_bath"]["heights"])


def water_bath_words() -> str:
    """What they hold for, and who decides."""
    bath = table("food_safety.toml")["water_bath"]
    return f"{bath['words']} {bath['decides']}"


def danger_minutes_allowed(air: float) -> float:
    """Minutes that food may be in the danger zone in air of this temperature [K]; USDA FSIS."""
    row = table("food_safety.toml")["holding"]
    return 60.0 * float(row["danger_hours_hot_day" if air > HOT_DAY else "danger_hours"])


def danger_minutes(minutes: FloatArray, temperatures: FloatArray) -> FloatArray:
    """How long foods were in the danger zone [min]: temperatures [K], (..., times), at rising times [min], (times,)."""
    limits = holding_limits()
    before, after = temperatures[..., :-1], temperatures[..., 1:]
    low, high = np.minimum(before, after), np.maximum(before, after)
    # straight between two times: the share of the way that lies in the zone
    inside = np.minimum(high, limits.danger_high) - np.maximum(low, limits.danger_low)
    level = (low > limits.danger_low) & (high < limits.danger_high)
    share = np.where(high - low > 1e-9, np.maximum(inside, 0.0) / np.maximum(high - low, 1e-9), level)
    found: FloatArray = (share * np.diff(minutes)).sum(axis=-1)
    return found
