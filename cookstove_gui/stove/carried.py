"""Heat that a stove still holds when a session begins, as a row of the log: what was believed of it, part by part.

The value is the cooktop's heat. The note gives its doubt and the other parts, each with one standard deviation:
`±18; oven 236 ±22; walls 250 ±22; lining 301 ±40; room 71 ±3; flames 0.2 ±0.1; coals 0.4 ±0.3; air 0.5 ±0; lit 95 ±0;
fed 20 ±4`: heats in the row's unit, fuel in kilograms, openings from 0 to 1, minutes since the fire was lit and since
it was fed. Whatever is left out is assumed as usual.
"""

import re
from collections.abc import Mapping
from dataclasses import dataclass, field

from cookstove_gui.errors import InputProblem
from cookstove_gui.stove.entries import Entry, reading_kelvin
from cookstove_gui.units import TemperatureUnit, degrees, degrees_difference, kelvin, tidy

HEATS = ("oven", "walls", "lining", "room")  # K
FUELS = ("flames", "coals")  # kg
OPENINGS = ("air", "bypass")  # 0 to 1
SINCE = ("lit", "fed")  # min
USUAL_DOUBT = 20.0  # K, of a cooktop's heat whose doubt is not given; common practice, no source
_PART = re.compile(r"(?:([a-z]+)\s+)?(?:(-?\d+(?:\.\d+)?)\s*)?(?:±\s*(\d+(?:\.\d+)?))?")


@dataclass(frozen=True, slots=True)
class About:
    """A quantity and its standard deviation."""

    mean: float
    deviation: float


@dataclass(frozen=True, slots=True, kw_only=True)
class CarriedHeat:
    """What a stove still holds: heats [K], fuel [kg], openings (0 to 1), times [min]."""

    cooktop: About
    parts: Mapping[str, About] = field(default_factory=dict)


def carried_of(entry: Entry) -> CarriedHeat:
    """What a carried row says; raises InputProblem where its note cannot be read."""
    doubt = USUAL_DOUBT
    parts: dict[str, About] = {}
    degree = 1.0 / float(degrees_difference(1.0, entry.unit))  # K
    for text in filter(None, (part.strip() for part in entry.note.split(";"))):
        found = _PART.fullmatch(text)
        name, number, deviation = found.groups() if found else ("", None, None)
        spread = float(deviation or 0.0)
        if found and name is None and number is None:
            doubt = spread * degree
        elif number is not None and name in HEATS:
            parts[name] = About(kelvin(float(number), entry.unit), spread * degree)
        elif number is not None and name in (*FUELS, *OPENINGS, *SINCE):
            parts[name] = About(float(number), spread)
        else:
            known = ", ".join((*HEATS, *FUELS, *OPENINGS, *SINCE))
            raise InputProblem(f"“{text}” is not a part with its heat, such as oven 236 ±22; name one of {known}.")
    return CarriedHeat(cooktop=About(reading_kelvin(entry), doubt), parts=parts)


def carried_text(heat: CarriedHeat, unit: TemperatureUnit) -> tuple[str, str]:
    """Value and note of the row that says this."""
    parts = [f"±{tidy(degrees_difference(heat.cooktop.deviation, unit), 1)}"]
    for name, about in heat.parts.items():
        number, deviation = about.mean, about.deviation
        places = 2
        if name in HEATS:
            number, deviation, places = degrees(number, unit), degrees_difference(deviation, unit), 1
        parts.append(f"{name} {tidy(number, places)} ±{tidy(deviation, places)}")
    return tidy(degrees(heat.cooktop.mean, unit), 1), "; ".join(parts)
