"""The heat of every spot as the Cook page draws it: typed a moment ago, or believed, with its doubt and its age."""

from dataclasses import replace
from datetime import timedelta

from cookstove_gui.cooking.instruments.meant_rows import meant_kelvin
from cookstove_gui.desk.cook.stove_set import stove_set
from cookstove_gui.desk.desk import Desk
from cookstove_gui.phrases.entries import meant_words
from cookstove_gui.phrases.spots import SpotHeat
from cookstove_gui.stove.entries import Kind, reading_kelvin

STANDS = timedelta(minutes=5)  # so long a number is shown as it was typed; common practice, no source


def spot_heats(desk: Desk) -> dict[str, SpotHeat]:
    """Every spot of the desk's stove, by name, now or at the end of a session that is over.

    Nothing is known of any spot before the first reading. A number just read stands as it was typed, also before the
    stove has been worked out; after that the belief stands, or as long as there is none, what was last read. A number
    in question does not stand: the belief does.
    """
    standing = desk.standing
    numbers = {asked.number for asked in desk.questions}
    readings = [row for row in desk.entries if row.kind is Kind.READING]
    # Before anything was read or carried over, a number would only be what any stove has.
    is_known = bool(readings) or any(row.kind is Kind.CARRIED for row in desk.entries)
    zones = standing.zones if standing and is_known else {}
    questioned = {row.spot: row for row in readings if row.number in numbers}
    latest = {row.spot: row for row in readings}
    now = desk.clock() if desk.is_live else desk.edge.now
    pans = stove_set(desk).pans
    found: dict[str, SpotHeat] = {}
    for spot in desk.stove.spots:
        zone, reading = zones.get(spot.name), latest.get(spot.name)
        if reading is None:
            known = SpotHeat(has_pan=spot.name in pans)
            found[spot.name] = replace(known, kelvin=zone.p50, doubt=zone.p90 - zone.p10) if zone else known
            continue
        typed, meant = reading_kelvin(reading), meant_kelvin(desk.stove, reading)
        slip = questioned.get(spot.name)
        stands = now - reading.at <= STANDS and reading is not slip
        believed = None if stands else zone
        found[spot.name] = SpotHeat(
            kelvin=believed.p50 if believed else typed if meant is None else meant,
            typed=typed if stands else None,
            doubt=believed.p90 - believed.p10 if believed else 0.0,
            age_min=max((now - reading.at).total_seconds() / 60, 0.0),
            remark=meant_words(reading, meant),
            questioned=reading_kelvin(slip) if slip else None,
            has_pan=spot.name in pans,
        )
    return found
