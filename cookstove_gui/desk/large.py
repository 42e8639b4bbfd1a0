"""What is read from across the kitchen: the oven, when its heat comes, what to do, and its heat through three hours."""

from dataclasses import dataclass

import numpy as np

from cookstove_gui.advice import Advice, Subject, advise
from cookstove_gui.desk.cook.oven_lines import oven_fan
from cookstove_gui.desk.desk import Desk
from cookstove_gui.desk.heading import shown_cautions, shown_rungs
from cookstove_gui.phrases.edge import Edge, heat_name
from cookstove_gui.phrases.figures import doubt_text, temperature_text, window_text
from cookstove_gui.phrases.ladder import prepare_words, then_read
from cookstove_gui.situation import Standing
from cookstove_gui.units import clock_text

BACK_MIN, AHEAD_MIN = 60, 120  # of the ribbon


@dataclass(frozen=True, slots=True, kw_only=True)
class Large:
    """Words and the ribbon; what is not known is empty."""

    clock: str
    oven: str
    doubt: str = ""
    heat: str = ""  # what is wanted
    window: str = ""
    likely: str = ""
    to_do: tuple[str, ...] = ()  # from long to short
    then: str = ""
    cautions: str = ""
    ribbon: tuple[tuple[float, float], ...] = ()  # (minutes from now, K), in order of time
    arrival_min: tuple[float, float, float] | None = None  # earliest, likely, latest
    leaves_min: float | None = None  # with an arrival: when the oven leaves the heat again


def large(desk: Desk) -> Large:
    """What the desk shows, in few words."""
    clock, unit = clock_text(desk.clock(), desk.offset_minutes), desk.unit
    standing = desk.standing
    if standing is None or not desk.entries or standing.outlook.oven.p50 is None:
        return Large(clock=clock, oven="–", to_do=shown_rungs(desk))
    oven = standing.outlook.oven
    assert oven.p50 is not None
    half = 0.0 if oven.p10 is None or oven.p90 is None else (oven.p90 - oven.p10) / 2
    number, doubt = temperature_text(oven.p50, unit), doubt_text(half, unit)
    if not desk.is_live:
        return Large(clock=clock, oven=number, doubt=doubt, to_do=shown_rungs(desk), ribbon=_ribbon(standing))
    advice, edge = advise(standing), desk.edge
    coming = advice.subject in (Subject.COMING, Subject.COOLING_IN)
    then = then_read(advice, standing, edge)
    first = prepare_words(advice, standing) if coming else ""
    to_do = ((first,) if first else (then,) if then else shown_rungs(desk)) if coming else shown_rungs(desk)
    found = standing.outlook.band
    enters = found.enters_min
    arrival = None
    if coming and found.line_enters_min is not None and enters.p10 is not None:
        latest = float(AHEAD_MIN) if enters.p90 is None else enters.p90
        arrival = (enters.p10, found.line_enters_min, max(latest, found.line_enters_min))
    return Large(
        clock=clock,
        oven=number,
        doubt=doubt,
        to_do=to_do,
        then=then if to_do != (then,) else "",
        cautions=_titles(desk),
        ribbon=_ribbon(standing),
        arrival_min=arrival,
        leaves_min=found.line_leaves_min if arrival else None,
        **_wanted(advice, standing, edge),
    )


def _wanted(advice: Advice, standing: Standing, edge: Edge) -> dict[str, str]:
    """The heat wanted, and when it is there."""
    name = heat_name(standing.band)
    oven = standing.outlook.oven.p50
    if oven is not None and standing.band.holds(oven):
        until = standing.outlook.band.line_leaves_min
        return {"heat": name, "window": "now", "likely": "" if until is None else f"until about {edge.clock(until)}"}
    if advice.arrival is None:
        return {"heat": name, "window": "", "likely": ""}
    window = window_text(standing.now, standing.outlook.band.enters_min, edge.offset_minutes)
    return {"heat": name, "window": window, "likely": f"likely {edge.at(advice.arrival.likely)}"}


def _titles(desk: Desk) -> str:
    titles = [caution.title for caution in shown_cautions(desk)]
    return ", ".join(titles) if len(titles) < 3 else f"{titles[0]} and {len(titles) - 1} more"


def _ribbon(standing: Standing) -> tuple[tuple[float, float], ...]:
    """The oven's middle line from an hour ago to two hours ahead, every five minutes."""
    past = [
        ((at - standing.now).total_seconds() / 60.0, float(heat))
        for at, heat in zip(standing.trace.at, standing.trace.p50, strict=True)
    ]
    ahead = oven_fan(standing.projection, standing.stove.oven_spot)
    minutes = [minute for minute, _ in past if minute < 0] + [float(minute) for minute in ahead.minutes]
    heats = [heat for minute, heat in past if minute < 0] + [float(heat) for heat in ahead.p50]
    if not minutes:
        return ()
    wanted = [float(minute) for minute in range(-BACK_MIN, AHEAD_MIN + 1, 5) if minute >= minutes[0]]
    found = np.interp(wanted, minutes, heats)
    return tuple((minute, float(heat)) for minute, heat in zip(wanted, found, strict=True))
