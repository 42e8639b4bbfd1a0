"""The heat of every spot as the Cook page draws it: typed a moment ago, or believed, with its doubt and its age."""

from dataclasses import dataclass

from cookstove_gui.advice import JUST_READ
from cookstove_gui.cooking.instruments.meant_rows import meant_kelvin
from cookstove_gui.desk.desk import Desk
from cookstove_gui.phrases.entries import meant_words
from cookstove_gui.stove.entries import Kind, reading_kelvin


@dataclass(frozen=True, slots=True, kw_only=True)
class SpotHeat:
    """What is known of one spot."""

    kelvin: float | None = None  # None: nothing is known yet
    typed: float | None = None  # K, the number just typed, whatever it means; None: `kelvin` is an estimate
    doubt: float = 0.0  # K, between the tenth and ninetieth percentile
    age_min: float | None = None
    remark: str = ""  # what the latest reading was typed as, if it means something else
    is_doubted: bool = False  # a reading here is in question, and nobody has kept or corrected it


def spot_heats(desk: Desk) -> dict[str, SpotHeat]:
    """Every spot of the desk's stove, by name, now or at the end of a session that is over.

    A number just read stands as it was typed, also before the stove has been worked out; after that the belief stands,
    or as long as there is none, what was last read.
    """
    standing = desk.standing
    zones = standing.zones if standing else {}
    numbers = {asked.number for asked in desk.questions}
    readings = [row for row in desk.entries if row.kind is Kind.READING]
    doubted = {row.spot for row in readings if row.number in numbers}
    latest = {row.spot: row for row in readings}
    now = desk.clock() if desk.is_live else desk.edge.now
    found: dict[str, SpotHeat] = {}
    for spot in desk.stove.spots:
        zone, reading = zones.get(spot.name), latest.get(spot.name)
        if reading is None:
            found[spot.name] = SpotHeat(kelvin=zone.p50, doubt=zone.p90 - zone.p10) if zone else SpotHeat()
            continue
        typed, meant = reading_kelvin(reading), meant_kelvin(desk.stove, reading)
        stands = now - reading.at <= JUST_READ
        believed = None if stands else zone
        found[spot.name] = SpotHeat(
            kelvin=believed.p50 if believed else typed if meant is None else meant,
            typed=typed if stands else None,
            doubt=believed.p90 - believed.p10 if believed else 0.0,
            age_min=max((now - reading.at).total_seconds() / 60, 0.0),
            remark=meant_words(reading, meant),
            is_doubted=spot.name in doubted,
        )
    return found
