"""Checks of a stove's thermometers against ice water and boiling water, as they were done."""

from dataclasses import dataclass
from datetime import date
from enum import StrEnum


class CheckPoint(StrEnum):
    """What an instrument is held against."""

    ICE = "ice"  # crushed ice in water, stirred
    BOIL = "boil"  # water at a rolling boil


@dataclass(frozen=True, slots=True, kw_only=True)
class Check:
    """One check of one instrument."""

    instrument: str
    point: CheckPoint
    shown: float  # K
    on: date
    pressure: float  # Pa, where the stove stands
