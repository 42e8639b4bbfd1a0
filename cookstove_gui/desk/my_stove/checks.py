"""The thermometers of a stove and their checks: every check is kept, its error is worked out from all of them."""

from dataclasses import dataclass, replace
from datetime import date, timedelta

from cookstove_gui.cooking.instruments.surface_readings import (
    CorrectedReading,
    Surface,
    corrected_reading,
    measured_surface,
    surfaces,
)
from cookstove_gui.cooking.instruments.thermometers import (
    Drift,
    drift_of,
    error_of,
    instrument_after,
    is_far_off,
    points_for,
    reading_doubt,
    true_temperature,
)
from cookstove_gui.desk.desk import Desk
from cookstove_gui.desk.my_stove.site import site_here
from cookstove_gui.errors import InputProblem
from cookstove_gui.phrases.my_stove.checks import far_off_words
from cookstove_gui.stove.checks import Check, CheckPoint
from cookstove_gui.stove.stove import THERMOMETERS, Instrument, Stove, unchecked
from cookstove_gui.units import kelvin, parse_number, parse_temperature

_SAME_POINT = 20.0  # K; the boil moves less with height and weather than it lies from the ice point


@dataclass(frozen=True, slots=True, kw_only=True)
class Ring:
    """One check as it is drawn."""

    heat: float  # K, what was right
    error: float  # K, what it showed too high
    on: date
    latest: bool  # of its point


@dataclass(frozen=True, slots=True, kw_only=True)
class CheckPicture:
    """A thermometer's line, its checks, and where both count."""

    instrument: Instrument
    cooked: float  # K, the heat that is cooked with
    marks: dict[CheckPoint, float]  # K, where it can be checked in the air here
    rings: tuple[Ring, ...]


def right_reading(desk: Desk, point: CheckPoint) -> float:
    """What a right thermometer shows [K] in one of the checks, in the air here."""
    return true_temperature(point, site_here(desk).pressure)


def heat_cooked_with(desk: Desk) -> float:
    """Where a thermometer's error matters most [K]: the middle of the band that is wanted."""
    return 0.5 * (desk.band.low + desk.band.high)


def check_picture(desk: Desk, name: str) -> CheckPicture:
    """What is drawn of one thermometer's checks."""
    instrument = _instrument(desk.stove, name)
    own = [check for check in checks_of(desk) if check.instrument == name]
    latest = {check.point: check for check in sorted(own, key=lambda check: check.on)}
    return CheckPicture(
        instrument=instrument,
        cooked=heat_cooked_with(desk),
        marks={point: right_reading(desk, point) for point in points(desk, name)},
        rings=tuple(
            Ring(
                heat=true_temperature(check.point, check.pressure),
                error=error_of(check),
                on=check.on,
                latest=latest[check.point] is check,
            )
            for check in own
        ),
    )


def drift_rings(desk: Desk, name: str) -> tuple[Ring, ...]:
    """The checks of a thermometer at the hottest point it can be checked at, in order of date."""
    wanted = points(desk, name)[-1:]
    rings = check_picture(desk, name).rings
    marks = [right_reading(desk, point) for point in wanted]
    near = (ring for ring in rings if any(abs(ring.heat - mark) < _SAME_POINT for mark in marks))
    return tuple(sorted(near, key=lambda ring: ring.on))


def doubt_of_a_reading(desk: Desk, instrument: Instrument) -> float:
    """How far one reading at the heat that is cooked with may be off [K], eight times in ten."""
    return reading_doubt(instrument, cooktop_surface(desk.stove), heat_cooked_with(desk))


def checks_of(desk: Desk) -> tuple[Check, ...]:
    """All checks of this stove's thermometers that were not taken back, in the order they were entered."""
    return tuple(desk.logbook.facts.checks(desk.stove.name).values())


def drift(desk: Desk, instrument: str) -> Drift | None:
    """Whether an instrument has drifted since the checks before the latest."""
    return drift_of(_instrument(desk.stove, instrument), checks_of(desk))


def add_instrument(desk: Desk, name: str, kind: str) -> Instrument:
    """Describe one more thermometer."""
    tidied = " ".join(name.split())
    if not tidied:
        raise InputProblem("The thermometer has no name; type one, such as oven dial.")
    if tidied.casefold() in {one.name.casefold() for one in desk.stove.instruments}:
        raise InputProblem(f"There is a thermometer “{tidied}” already; give this one another name.")
    if kind not in THERMOMETERS:
        raise InputProblem(f"“{kind}” is not a kind of thermometer; choose one of {', '.join(THERMOMETERS)}.")
    made = unchecked(tidied, kind)
    desk.save_stove(replace(desk.stove, instruments=(*desk.stove.instruments, made)))
    return made


def set_emissivity(desk: Desk, name: str, text: str) -> None:
    """Keep the emissivity that an infrared thermometer is set to."""
    number = parse_number(text, "emissivity")
    if not 0.1 <= number <= 1.0:
        raise InputProblem(f"{text.strip()} isn't an emissivity setting; type the instrument’s, such as 0.95.")
    desk.save_stove(_with_instrument(desk.stove, replace(_instrument(desk.stove, name), emissivity=number)))


def points(desk: Desk, name: str) -> tuple[CheckPoint, ...]:
    """What this thermometer can be checked in."""
    return points_for(_instrument(desk.stove, name).kind)


def record_check(desk: Desk, name: str, point: CheckPoint, text: str, *, sure: bool = False) -> str:
    """Keep a check of a thermometer, dated today, and use the error it shows from now on.

    Where it is so far off that the cook is asked first, and is not yet `sure`, nothing is kept and the question comes
    back; else an empty text.
    """
    value, unit = parse_temperature(text, desk.unit)
    instrument = _instrument(desk.stove, name)
    made = Check(
        instrument=name,
        point=point,
        shown=float(kelvin(value, unit)),
        on=_today(desk),
        pressure=site_here(desk).pressure,
    )
    if point not in points_for(instrument.kind):
        raise InputProblem(f"An {instrument.kind} thermometer is never checked like that; choose another way.")
    if is_far_off(made) and not sure:
        return far_off_words(made, desk.unit)
    checked = instrument_after(instrument, (*checks_of(desk), made))
    desk.logbook.facts.add_check(_with_instrument(desk.stove, checked), made)
    desk.read_stove_again()
    return ""


def take_back_latest(desk: Desk, name: str) -> None:
    """Take back the latest check of a thermometer."""
    left = desk.logbook.facts.checks(desk.stove.name)
    number = max((number for number, check in left.items() if check.instrument == name), default=None)
    if number is None:
        raise InputProblem(f"“{name}” was never checked; there is nothing to take back.")
    del left[number]
    old = _instrument(desk.stove, name)
    fresh = replace(unchecked(old.name, old.kind), emissivity=old.emissivity)
    stove = _with_instrument(desk.stove, instrument_after(fresh, left.values()))
    desk.logbook.facts.take_back_check(stove, number, _today(desk))
    desk.read_stove_again()


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


def _instrument(stove: Stove, name: str) -> Instrument:
    found = next((one for one in stove.instruments if one.name == name), None)
    if found is None:
        raise InputProblem(f"There is no thermometer “{name}” any more; choose another one.")
    return found


def _with_instrument(stove: Stove, changed: Instrument) -> Stove:
    return replace(stove, instruments=tuple(changed if one.name == changed.name else one for one in stove.instruments))


def _today(desk: Desk) -> date:
    return (desk.clock() + timedelta(minutes=desk.offset_minutes)).date()
