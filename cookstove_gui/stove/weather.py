"""The weather at a stove, as it was read: the barometer and the air outdoors."""

from dataclasses import dataclass
from datetime import datetime
from enum import StrEnum


class WeatherKind(StrEnum):
    """What was read."""

    PRESSURE = "pressure"  # Pa, of the air at the stove
    SEA_PRESSURE = "sea pressure"  # Pa, reduced to sea level, as weather reports give it
    OUTDOORS = "outdoors"  # K, of the air outdoors


BAROMETER = (WeatherKind.PRESSURE, WeatherKind.SEA_PRESSURE)


@dataclass(frozen=True, slots=True, kw_only=True)
class WeatherReading:
    """One reading; without a value it says that the one before no longer holds."""

    kind: WeatherKind
    value: float | None
    at: datetime  # aware UTC
    offset_minutes: int  # of the local clock it was read on
