"""The heat of every spot as the Cook page draws it: just read, or believed, with its doubt and the reading's age."""

from dataclasses import dataclass

from cookstove_gui.desk.desk import Desk
from cookstove_gui.desk.my_stove.meant import meant_heat
from cookstove_gui.phrases.entries import meant_words
from cookstove_gui.stove.entries import Entry, Kind, reading_kelvin

JUST_READ_MINUTES = 2.0  # until then a spot shows the number as it was read
FRESH_MINUTES = 5.0  # what was read longer ago is an estimate


@dataclass(frozen=True, slots=True, kw_only=True)
class SpotHeat:
    """What is known of one spot."""

    kelvin: float | None = None  # None: nothing is known yet
    doubt: float = 0.0  # K, between the tenth and ninetieth percentile
    age_min: float | None = None
    remark: str = ""  # what the latest reading was typed as, if it means something else

    @property
    def is_fresh(self) -> bool:
        """Whether the number was read a moment ago, and so is no estimate."""
        return self.age_min is not None and self.age_min <= FRESH_MINUTES


def spot_heats(desk: Desk) -> dict[str, SpotHeat]:
    """Every spot of the desk's stove, by name.

    A number just read is shown as it was read (and meant), before the stove has been worked out; unless it is doubted,
    when the belief is shown.
    """
    standing = desk.standing
    zones = standing.zones if standing else {}
    doubted = {row.number for row in standing.doubted} if standing else set()
    latest = {row.spot: row for row in desk.entries if row.kind is Kind.READING}
    found: dict[str, SpotHeat] = {}
    for spot in desk.stove.spots:
        zone, reading = zones.get(spot.name), latest.get(spot.name)
        age = None if reading is None else max((desk.clock() - reading.at).total_seconds() / 60, 0.0)
        remark = "" if reading is None else meant_words(reading, meant_heat(reading, desk.stove))
        just_read = age is not None and age <= JUST_READ_MINUTES
        if reading is not None and (zone is None or (just_read and reading.number not in doubted)):
            found[spot.name] = SpotHeat(kelvin=_as_meant(reading, desk), age_min=age, remark=remark)
        elif zone is not None:
            found[spot.name] = SpotHeat(kelvin=zone.p50, doubt=zone.p90 - zone.p10, age_min=age, remark=remark)
        else:
            found[spot.name] = SpotHeat()
    return found


def _as_meant(reading: Entry, desk: Desk) -> float:
    meant = meant_heat(reading, desk.stove)
    return reading_kelvin(reading) if meant is None else meant
