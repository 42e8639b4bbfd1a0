"""Hands and thermometers: how what truly happened becomes the rows that a person writes."""

from dataclasses import dataclass, replace
from datetime import datetime, timedelta

import numpy as np

from cookstove_gui.stove.entries import Entry, Kind
from cookstove_gui.stove.stove import SpotKind, Stove
from cookstove_gui.units import degrees, tidy
from tests.world.cooks import Event
from tests.world.parts import FloatArray


@dataclass(frozen=True, slots=True, kw_only=True)
class Hands:
    """How one person reads and writes."""

    interval: float  # minutes between walks, on average
    regularity: float  # shape of the gamma distribution of the intervals
    top_share: float  # chance that a cooktop spot is read on a walk
    wall_share: float
    side_share: float
    infrared_noise: float  # share of the reading
    infrared_bias: float  # share of the reading: a wrong emissivity setting
    oven_noise: float  # K
    oven_offset: float  # K
    oven_rounding: int  # degrees of the unit
    infrared_rounding: int
    logs_wood: float
    logs_air: float
    logs_door: float
    wood_words: float  # chance that wood is written as a count instead of weighed
    late: float  # minutes that an event is written late, on average
    blunders: float = 0.01  # share of readings typed wrong or at the wrong spot


def make_hands(rng: np.random.Generator) -> Hands:
    """Draw a person's hands."""
    return Hands(
        interval=rng.uniform(5.0, 13.0),
        regularity=rng.uniform(1.5, 7.0),
        top_share=rng.choice([0.12, 0.35, 0.8]),
        wall_share=rng.choice([0.0, 0.06, 0.3]),
        side_share=rng.choice([0.0, 0.06, 0.25]),
        infrared_noise=rng.uniform(0.006, 0.022),
        infrared_bias=rng.normal(0.0, 0.012),
        oven_noise=rng.uniform(0.5, 2.5),
        oven_offset=rng.normal(0.0, 4.0),
        oven_rounding=int(rng.choice([1, 5, 10], p=[0.4, 0.4, 0.2])),
        infrared_rounding=int(rng.choice([1, 5], p=[0.8, 0.2])),
        logs_wood=rng.uniform(0.75, 1.0),
        logs_air=rng.uniform(0.5, 1.0),
        logs_door=rng.uniform(0.3, 0.95),
        wood_words=rng.choice([0.0, 0.3, 1.0]),
        late=rng.choice([0.0, 0.5, 1.5]),
    )


def tidy_hands(hands: Hands) -> Hands:
    """The same person if nothing were forgotten, mistyped, late or read through an untrue thermometer."""
    return replace(
        hands, infrared_noise=0.002, infrared_bias=0.0, oven_noise=0.2, oven_offset=0.0, oven_rounding=1,
        infrared_rounding=1, logs_wood=1.0, logs_air=1.0, logs_door=1.0, wood_words=0.0, late=0.0, blunders=0.0,
    )  # fmt: skip


def walk_minutes(rng: np.random.Generator, hands: Hands, duration: float) -> list[float]:
    """Minutes at which the stove is walked round."""
    minutes: list[float] = []
    at = rng.uniform(2.0, 9.0)
    while at < duration:
        minutes.append(at)
        gap = rng.gamma(hands.regularity, hands.interval / hands.regularity)
        if rng.random() < 0.04:
            gap += rng.uniform(10, 30)  # called away
        at += max(1.5, gap)
    return minutes


def write_readings(
    rng: np.random.Generator, hands: Hands, stove: Stove, walks: list[float], times: FloatArray, spots: tuple[str, ...],
    truth: FloatArray, thermometer: FloatArray, unit: str,
) -> list[tuple[float, str, float]]:  # fmt: skip
    """(minute, spot, number written) for every reading; truth (times, spots) [K]."""
    share = {
        SpotKind.OVEN: hands.wall_share, SpotKind.TOP: hands.top_share, SpotKind.SIDE: hands.side_share,
        SpotKind.GLASS: hands.side_share * 0.6, SpotKind.FLUE: hands.side_share, SpotKind.ROOM: 0.03,
    }  # fmt: skip
    rows: list[tuple[float, str, float]] = []
    for walk in walks:
        minute = walk
        for spot in stove.spots:
            chance = 0.97 if spot.name == "oven_centre" else share[spot.kind]
            if rng.random() >= chance:
                continue
            column = truth[:, spots.index(spot.name)]
            if spot.name == "oven_centre":
                kelvin = (
                    float(np.interp(minute, times, thermometer)) + hands.oven_offset + rng.normal(0, hands.oven_noise)
                )
                number = _rounded(float(degrees(kelvin, unit)), hands.oven_rounding)
            else:
                shown = float(degrees(float(np.interp(minute, times, column)), unit))
                spread = 0.5 if spot.kind is SpotKind.ROOM else max(abs(shown), 40.0) * hands.infrared_noise
                number = _rounded(shown * (1.0 + hands.infrared_bias) + rng.normal(0, spread), hands.infrared_rounding)
            name = spot.name
            if rng.random() < hands.blunders:
                name, number = _blunder(rng, stove, name, number)
            rows.append((minute, name, number))
            minute += rng.uniform(0.08, 0.3)
    return rows


def _rounded(number: float, step: int) -> float:
    return float(round(number / step) * step)


def _blunder(rng: np.random.Generator, stove: Stove, spot: str, number: float) -> tuple[str, float]:
    digits = str(abs(round(number)))
    slip = rng.choice(["swapped", "lost", "spot"])
    if slip == "swapped" and len(digits) >= 2:
        at = int(rng.integers(0, len(digits) - 1))
        swapped = digits[:at] + digits[at + 1] + digits[at] + digits[at + 2 :]
        return spot, float(swapped)
    if slip == "lost" and len(digits) >= 2:
        at = int(rng.integers(0, len(digits)))
        return spot, float(digits[:at] + digits[at + 1 :])
    others = [other.name for other in stove.spots if other.name not in (spot, "room")]
    return str(rng.choice(others)), number


_COUNTS = ("", "one split", "two splits", "three splits", "four splits", "five splits", "six splits", "seven splits")


TOPS = (
    "top_front_left", "top_front_middle", "top_front_right", "top_back_left", "top_back_middle", "top_back_right",
)  # fmt: skip


def write_events(
    rng: np.random.Generator, hands: Hands, events: list[Event], mass_unit: str
) -> list[tuple[float, Kind, str, str, str, str]]:
    """(minute, kind, spot, value, unit, note) for what the cook does not forget to write down."""
    rows: list[tuple[float, Kind, str, str, str, str]] = []
    for event in events:
        late = rng.exponential(hands.late) if hands.late else 0.0
        minute = event.minute + min(late, 6.0)
        kept = rng.random()
        wobble = float(np.exp(0.1 * rng.standard_normal()))
        in_words = rng.random() < hands.wood_words
        if event.kind == "lit":
            rows.append((event.minute, Kind.LIT, "", "", "", "kindling"))
        elif event.kind == "wood" and kept < hands.logs_wood:
            pieces = int(event.detail)
            if in_words:
                rows.append((minute, Kind.WOOD, "", "", "", _COUNTS[min(pieces, 7)]))
            else:
                mass = event.value * wobble / (1.0 if mass_unit == "kg" else 0.45359237)
                rows.append((minute, Kind.WOOD, "", tidy(max(mass, 0.1)), mass_unit, ""))
        elif event.kind in ("air", "bypass") and kept < (hands.logs_air if event.minute > 1 else 0.9):
            kind = Kind.AIR if event.kind == "air" else Kind.BYPASS
            value = round(event.value * 20) / 20 if event.kind == "air" else event.value
            rows.append((minute, kind, "", tidy(value, 2), "", ""))
        elif event.kind == "oven_door" and kept < hands.logs_door:
            rows.append((event.minute, Kind.OVEN_DOOR, "", "open", "", ""))
            rows.append((event.minute + event.value / 60.0, Kind.OVEN_DOOR, "", "closed", "", ""))
        elif event.kind == "pan" and kept < 0.8:
            spot, *boiled = event.detail.split()
            note = f"kettle, {event.value:.1f} litres" if event.value else "".join(boiled)
            rows.append((event.minute, Kind.PAN, TOPS[int(spot)], "on" if event.value else "off", "", note))
    return rows


def as_entries(
    start: datetime, offset_minutes: int, readings: list[tuple[float, str, float]],
    events: list[tuple[float, Kind, str, str, str, str]], unit: str,
) -> tuple[Entry, ...]:  # fmt: skip
    """The session's log in the order of time, to the second."""
    rows = [(minute, Kind.READING, spot, tidy(number), unit, "") for minute, spot, number in readings] + events
    rows.sort(key=lambda row: row[0])
    return tuple(
        Entry(
            number=number, at=start + timedelta(seconds=round(minute * 60)), offset_minutes=offset_minutes, kind=kind,
            spot=spot, value=value, unit=unit_text, note=note,
        )
        for number, (minute, kind, spot, value, unit_text, note) in enumerate(rows, start=1)
    )  # fmt: skip
