"""What is in the oven, as rows of the log: put in, probed, turned, to be looked at, taken out."""

from datetime import timedelta

from cookstove_gui.cooking.baking.in_oven import InOven, in_oven
from cookstove_gui.desk.desk import Desk
from cookstove_gui.desk.plan.bake import BakeChoice, sized, usual_mass, usual_start
from cookstove_gui.desk.plan.texts import coming, food_start
from cookstove_gui.errors import InputProblem
from cookstove_gui.stove.entries import Kind
from cookstove_gui.units import KILOGRAMS_PER_POUND, clock_text, degrees, parse_temperature, tidy

_SAME_START = 0.5  # K
_SAME_MASS = 0.01  # of the usual mass
_A_MINUTE = timedelta(minutes=1)


def inside_now(desk: Desk) -> tuple[InOven, ...]:
    """What is in the oven by the log of the session on the table."""
    return in_oven(desk.entries)


def put_in(desk: Desk, choice: BakeChoice) -> None:
    """Write down that it is in the oven, and what is not usual about it; raises InputProblem before it is."""
    bake, now = sized(choice), desk.clock()
    went_in = choice.went_in or now
    if went_in > now + _A_MINUTE:
        clock = clock_text(went_in, desk.offset_minutes)
        raise InputProblem(f"It goes in at {clock}, which is still to come; press this once it is in.")
    at = f"-{round((now - went_in) / _A_MINUTE)}" if now - went_in >= _A_MINUTE else ""
    mass = unit = ""
    usual = usual_mass(choice.key)
    if choice.mass is not None and abs(choice.mass - usual) > _SAME_MASS * usual:
        unit = desk.mass_unit
        mass = tidy(choice.mass / (KILOGRAMS_PER_POUND if unit == "lb" else 1.0), 3)
    desk.do(Kind.OVEN_IN, value=mass, unit=unit, note=bake.name, at_text=at)
    if abs(bake.start - usual_start(choice.key)) > _SAME_START:
        desk.do(Kind.PROBE, value=tidy(degrees(bake.start, desk.unit), 1), unit=desk.unit, note=bake.name, at_text=at)
    if choice.core is not None:
        desk.do(Kind.PROBE, value=tidy(degrees(choice.core, desk.unit), 1), unit=desk.unit, note=bake.name)


def probe(desk: Desk, inside: InOven, text: str) -> None:
    """Write down what a probe in it shows."""
    food_start(text, desk.unit)
    value, unit = parse_temperature(text, desk.unit)
    desk.do(Kind.PROBE, value=tidy(value, 1), unit=unit, note=inside.name)


def turned(desk: Desk, inside: InOven) -> None:
    """Write down that it was turned."""
    desk.do(Kind.TURNED, note=inside.name)


def taken_out(desk: Desk, inside: InOven) -> None:
    """Write down that it is out."""
    desk.do(Kind.OVEN_OUT, note=inside.name)


def look_at(desk: Desk, inside: InOven, text: str) -> None:
    """Write down when the cook wants to look at it: a clock, or `+20`."""
    now = desk.clock()
    minutes = (coming(text, now, desk.offset_minutes) - now) / _A_MINUTE
    desk.do(Kind.DUE, value=str(round(minutes)), unit="min", note=inside.name)
