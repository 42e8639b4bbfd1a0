"""What the desk knows, as the plot says it: the mark on the band, the oven now, the limits of a first fire."""

from cookstove_gui.desk import Desk
from cookstove_gui.desk.cook.band_mark import band_mark
from cookstove_gui.desk.cook.first_fire_course import FirstFireCourse
from cookstove_gui.desk.cook.oven_at import oven_number
from cookstove_gui.desk.cook.pan_course import PanCourse
from cookstove_gui.desk.cook.spot_heats import spot_heats
from cookstove_gui.gui.time_axis.plot_lines import DASHES, SHORT_DASHES
from cookstove_gui.gui.time_axis.plot_records import Limit, Mark, SpotNow
from cookstove_gui.gui.time_axis.span import TimeSpan
from cookstove_gui.phrases.edge import spot_label
from cookstove_gui.phrases.figures import spot_number
from cookstove_gui.phrases.plot import half_width
from cookstove_gui.units import degrees


def shown_mark(desk: Desk, span: TimeSpan) -> Mark | None:
    """The mark on the band, if there is one."""
    mark = band_mark(desk)
    if mark is None:
        return None
    edge = float(degrees(mark.kelvin, desk.unit))
    if mark.window is None:
        return Mark(edge=edge, words=mark.words, more=mark.more)
    first, likely, last = (span.place(at) for at in mark.window)
    return Mark(edge=edge, words=mark.words, more=mark.more, window=(first, likely, last))


def oven_now(desk: Desk) -> tuple[str, str, str] | None:
    """“oven now”, the number, its doubt."""
    number = oven_number(desk)
    oven = desk.standing.outlook.oven if desk.standing else None
    if number is None or oven is None or oven.p10 is None or oven.p90 is None:
        return None
    return "oven now", number, half_width(oven.p10, oven.p90, desk.unit)


def spot_now(desk: Desk, first: FirstFireCourse) -> tuple[str, str, str]:
    """The hottest spot of the top, the number, its doubt."""
    heat = spot_heats(desk)[first.spot]
    label = spot_label(desk.stove, first.spot).removeprefix("top ")
    doubt = "" if heat.typed is not None else half_width(first.p10, first.p90, desk.unit)
    return f"{label} now", spot_number(first.kelvin, heat.typed, desk.unit), doubt


def spots_now(course: PanCourse) -> tuple[SpotNow, ...]:
    """The spots for a pan, the best with the oven's mark and line."""
    drawn = ((True, DASHES), (False, SHORT_DASHES))
    return tuple(
        SpotNow(name=one.name, number=one.number, is_round=is_round, dashes=dashes)
        for one, (is_round, dashes) in zip(course.spots, drawn, strict=False)
    )


def limits_of(desk: Desk, first: FirstFireCourse) -> tuple[Limit, ...]:
    """What the stage asks of the hottest spot, the limit first."""
    most, least = first.stage.top_at_most, float(degrees(first.stage.top_reaches, desk.unit))
    found = [Limit(value=least, words=f"at least {least:.0f} once", is_most=False)]
    if most is not None:
        value = float(degrees(most, desk.unit))
        found.insert(0, Limit(value=value, words=f"at most {value:.0f}", is_most=True))
    return tuple(found)
