"""The thermometers of a stove and their checks: every check is kept, the offset is worked out from all of them."""

import json
from dataclasses import replace
from datetime import date

from cookstove_gui.cooking.instruments.surface_readings import (
    INFRARED,
    CorrectedReading,
    Surface,
    corrected_reading,
    measured_surface,
    surfaces,
)
from cookstove_gui.cooking.instruments.thermometers import (
    USUAL_DOUBT,
    Check,
    CheckPoint,
    Drift,
    drift_of,
    error_of,
    instrument_after,
    true_temperature,
)
from cookstove_gui.desk.desk import Desk
from cookstove_gui.desk.my_stove.site import site_here
from cookstove_gui.errors import InputProblem
from cookstove_gui.physics.air import standard_pressure
from cookstove_gui.stove.stove import Instrument, Stove
from cookstove_gui.units import kelvin, parse_number, parse_temperature

KINDS = ("oven thermometer", INFRARED, "probe", "flue thermometer")
_KEY = "thermometer checks"


def pressure_here(stove: Stove) -> float:
    """Usual air pressure [Pa] at the stove's height."""
    return float(standard_pressure(stove.altitude))


def right_reading(stove: Stove, point: CheckPoint) -> float:
    """What a right thermometer shows [K] in one of the checks, at this height."""
    return true_temperature(point, pressure_here(stove))


def checks_of(desk: Desk) -> tuple[Check, ...]:
    """All checks of this stove's thermometers, as they were entered."""
    return tuple(
        Check(
            instrument=str(row["instrument"]),
            point=CheckPoint(str(row["point"])),
            shown=float(row["shown"]),
            on=date.fromisoformat(str(row["on"])),
            pressure=float(row["pressure"]),
        )
        for row in _kept(desk).get(desk.stove.name, [])
    )


def drift(desk: Desk, instrument: str) -> Drift | None:
    """Whether an instrument has drifted since the checks before the latest."""
    return drift_of(instrument, checks_of(desk))


def add_instrument(desk: Desk, name: str, kind: str) -> Instrument:
    """Describe one more thermometer."""
    tidied = " ".join(name.split())
    if not tidied:
        raise InputProblem("The thermometer has no name; type one, such as oven dial.")
    if tidied.casefold() in {one.name.casefold() for one in desk.stove.instruments}:
        raise InputProblem(f"There is a thermometer “{tidied}” already; give this one another name.")
    if kind not in KINDS:
        raise InputProblem(f"“{kind}” is not a kind of thermometer; choose one of {', '.join(KINDS)}.")
    made = Instrument(name=tidied, kind=kind, offset_doubt=USUAL_DOUBT)
    desk.save_stove(replace(desk.stove, instruments=(*desk.stove.instruments, made)))
    return made


def set_emissivity(desk: Desk, name: str, text: str) -> None:
    """Keep the emissivity that an infrared thermometer is set to."""
    number = parse_number(text, "emissivity")
    if not 0.1 <= number <= 1.0:
        raise InputProblem(f"{text.strip()} is no emissivity setting; type the instrument’s, such as 0.95.")
    _keep(desk, replace(_instrument(desk.stove, name), emissivity=number))


def record_check(desk: Desk, name: str, point: CheckPoint, text: str) -> Check:
    """Keep a check of a thermometer, dated today, and use the offset it shows from now on."""
    value, unit = parse_temperature(text, desk.unit)
    instrument = _instrument(desk.stove, name)
    made = Check(
        instrument=name,
        point=point,
        shown=float(kelvin(value, unit)),
        on=desk.clock().astimezone().date(),
        pressure=site_here(desk).pressure,
    )
    error_of(made)  # refuses what is too far off to be a check
    everything = (*checks_of(desk), made)
    _write(desk, everything)
    _keep(desk, instrument_after(instrument, everything))
    return made


def take_back_latest(desk: Desk, name: str) -> None:
    """Take back the latest check of a thermometer."""
    everything = list(checks_of(desk))
    place = next((index for index in reversed(range(len(everything))) if everything[index].instrument == name), None)
    if place is None:
        raise InputProblem(f"“{name}” was never checked; there is nothing to take back.")
    del everything[place]
    _write(desk, tuple(everything))
    old = _instrument(desk.stove, name)
    fresh = Instrument(name=old.name, kind=old.kind, emissivity=old.emissivity, offset_doubt=USUAL_DOUBT)
    _keep(desk, instrument_after(fresh, everything))


def reading_at(stove: Stove, instrument: Instrument, typed: float) -> CorrectedReading | None:
    """What a reading [K] of the cooktop with this instrument means; none for a surface the table does not know."""
    surface = cooktop_surface(stove)
    return None if surface is None else corrected_reading(typed, instrument, surface)


def cooktop_surface(stove: Stove) -> Surface | None:
    """The cooktop's surface, if the table knows it."""
    return next((surface for surface in surfaces() if surface.name == stove.cooktop_surface), None)


def measured_emissivity(desk: Desk, name: str, contact_text: str, shown_text: str) -> Surface:
    """The cooktop's emissivity, from a contact thermometer and this infrared one held to the same place.

    Procedure: the contact method of ASTM E1933.
    """
    contact, shown = (float(kelvin(*parse_temperature(text, desk.unit))) for text in (contact_text, shown_text))
    surface = cooktop_surface(desk.stove) or surfaces()[0]
    return measured_surface(surface, contact, shown, _instrument(desk.stove, name).emissivity)


def move_checks(desk: Desk, old: str, new: str) -> None:
    """The checks of a stove that got another name go with it."""
    kept = _kept(desk)
    if old in kept:
        kept[new] = kept.pop(old)
        desk.set_setting(_KEY, json.dumps(kept))


def _instrument(stove: Stove, name: str) -> Instrument:
    found = next((one for one in stove.instruments if one.name == name), None)
    if found is None:
        raise InputProblem(f"There is no thermometer “{name}” any more; choose another one.")
    return found


def _keep(desk: Desk, changed: Instrument) -> None:
    instruments = tuple(changed if one.name == changed.name else one for one in desk.stove.instruments)
    desk.save_stove(replace(desk.stove, instruments=instruments))


def _write(desk: Desk, checks: tuple[Check, ...]) -> None:
    kept = _kept(desk)
    kept[desk.stove.name] = [
        {
            "instrument": check.instrument,
            "point": str(check.point),
            "shown": check.shown,
            "on": check.on.isoformat(),
            "pressure": check.pressure,
        }
        for check in checks
    ]
    desk.set_setting(_KEY, json.dumps(kept))


def _kept(desk: Desk) -> dict[str, list[dict[str, str | float]]]:
    text = desk.setting(_KEY)
    kept: dict[str, list[dict[str, str | float]]] = json.loads(text) if text else {}
    return kept
