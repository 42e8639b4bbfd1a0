"""How soon hot surfaces burn, and how near walls come to the rises that heaters are tested to.

Cautions only: no line calls a surface or a distance safe.
"""

from collections.abc import Iterator, Sequence

from cookstove_gui.cooking.safety.touch_watch import Material, WallAnswer, seconds_to_burn, wall_answers
from cookstove_gui.cooking.safety.wall_rises import WallRise
from cookstove_gui.errors import InputProblem
from cookstove_gui.forecast.answers import Zone
from cookstove_gui.phrases.edge import capital
from cookstove_gui.resource_files import table
from cookstove_gui.units import clock_text, degrees, degrees_difference

NO_WALL = (
    "No wall or floor near the stove was read in this session. Add one under Spots, read it while the stove is hot, "
    "and its rise above the room shows here."
)
NO_HEAT = "Nothing has been read in this session yet. Read the stove on the Cook page and its surfaces show here."
ALWAYS = "Any part of the stove may stay hot long after the fire is out. Keep children and cloth away from it."
GUARD_DECIDES = "The stove’s manual and local code say what guard it needs."
NEAR_LIMIT = 0.75  # share of a limit from which a wall is watched; common practice, no source
_TIMES = ((1.5, "a second"), (15.0, "some seconds"), (90.0, "a minute"), (1200.0, "some minutes"), (1e9, "some hours"))


def clearance_decides() -> str:
    """Who decides on walls and floors: the sentence that ends every word about them."""
    return str(table("touch.toml")["words"]["decides"])


def burn_words(seconds: float | None) -> str:
    """How soon a surface burns, after `seconds_to_burn`; None is below the burn tables, which is no promise."""
    if seconds is None:
        return "Below what the burn tables cover; children, the old and anyone who cannot pull away burn sooner."
    return f"Skin that rests on it burns within {next(text for limit, text in _TIMES if seconds <= limit)}."


def surface_line(label: str, zone: Zone, material: Material, unit: str) -> str:
    """One hot part of the stove, judged by what it may well be now."""
    heat = f"{degrees(zone.p50, unit):.0f} °{unit}, perhaps {degrees(zone.p90, unit):.0f}"
    return f"{capital(label)} about {heat}; {material.name}. {burn_words(seconds_to_burn(zone.p90, material))}"


def above_the_room(rise: WallRise, when: str, unit: str) -> str:
    """A wall's reading against the room's: `Wall left, read at 7:10: 90 °F above the room (160 against 70 °F).`"""
    room = f"{'' if rise.room_was_read else 'the room taken as '}{degrees(rise.room, unit):.0f} °{unit}"
    return (
        f"{capital(rise.label)}, read at {when}: {degrees_difference(rise.rise, unit):.0f} °{unit} above the room "
        f"({degrees(rise.wall, unit):.0f} against {room})."
    )


def wall_lines(rises: Sequence[WallRise], unit: str) -> tuple[str, ...]:
    """Each wall or floor with every limit beside it; the last line says who decides. Empty without walls."""
    return (*(_wall_text(rise, unit) for rise in rises), clearance_decides()) if rises else ()


def _wall_text(rise: WallRise, unit: str) -> str:
    head = above_the_room(rise, clock_text(rise.row.at, rise.row.offset_minutes), unit)
    return "\n".join((head, *_limit_lines(rise, unit)))


def _limit_lines(rise: WallRise, unit: str) -> Iterator[str]:
    try:
        answers = wall_answers(rise.wall, rise.room)
    except InputProblem as problem:
        yield problem.sentence
        return
    for answer in answers:
        yield limit_line(answer, unit)


def limit_line(answer: WallAnswer, unit: str) -> str:
    """A wall against one limit."""
    if answer.of_rise:
        limit = f"{degrees_difference(answer.limit, unit):.0f} °{unit}"
        stands = f"{100 * max(answer.share, 0.0):.0f} % of the {limit} in tests of heaters"
        most = "what heaters are tested to"
    else:
        stands = f"{degrees(answer.wall, unit):.0f} of {degrees(answer.limit, unit):.0f} °{unit}, however warm the room"
        most = "that heat"
    if answer.share >= 1.0:
        words = f"It has reached {most}: let the fire go down and keep watching."
    elif answer.share >= NEAR_LIMIT:
        words = f"It nears {most}: keep reading it."
    else:
        words = f"It is below {most}, which permits nothing."
    sign = "⚠ " if answer.share >= 1.0 else ""
    return f"{sign}{capital(answer.limit_name)}: {stands}. {words}"
