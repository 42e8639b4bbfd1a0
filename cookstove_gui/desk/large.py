"""What is read from across the kitchen: the oven, when its heat comes, what to do, and its heat through three hours."""

from dataclasses import dataclass
from datetime import datetime, timedelta

import numpy as np

from cookstove_gui.advice import Advice, Subject, advise
from cookstove_gui.desk.cook.oven_at import oven_number
from cookstove_gui.desk.cook.oven_lines import oven_fan
from cookstove_gui.desk.desk import Desk
from cookstove_gui.desk.heading import shown_cautions, shown_clock, shown_rungs
from cookstove_gui.phrases.advice import likely_words
from cookstove_gui.phrases.edge import Edge, heat_name
from cookstove_gui.phrases.figures import doubt_text, temperature_text
from cookstove_gui.phrases.heading import arrival_figure
from cookstove_gui.phrases.ladder import prepare_words, step_rungs, then_read
from cookstove_gui.phrases.plan.supper import due_rungs
from cookstove_gui.situation import Standing

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
    then: tuple[str, ...] = ()  # from long to short
    cautions: str = ""
    ribbon: tuple[tuple[float, float], ...] = ()  # (minutes from now or from the end, K), in order of time
    ended: datetime | None = None  # when a session that is over was last heard of
    arrival_min: tuple[float, float, float] | None = None  # earliest, likely, latest
    leaves_min: float | None = None  # with an arrival: when the oven leaves the heat again


def large(desk: Desk) -> Large:
    """What the desk shows, in few words."""
    clock, unit = shown_clock(desk), desk.unit
    standing = desk.standing
    if standing is None or not desk.entries or standing.outlook.oven.p50 is None:
        return Large(clock=clock, oven="–", to_do=shown_rungs(desk))
    oven = standing.outlook.oven
    assert oven.p10 is not None
    assert oven.p50 is not None
    assert oven.p90 is not None
    written = oven_number(desk) or temperature_text(oven.p50, unit)
    number = written.removeprefix("≈")  # there is no room for the sign; the ± beside it says as much
    doubt = doubt_text((oven.p90 - oven.p10) / 2, unit)
    if not desk.is_live:
        past = tuple(point for point in _ribbon(standing) if point[0] <= 0)
        return Large(
            clock=clock, oven=number, doubt=doubt, to_do=shown_rungs(desk), ribbon=past, ended=standing.now
        )  # fmt: skip
    plan, edge = desk.supper.plan, desk.edge
    advice = advise(standing, plan)
    coming = advice.subject in (Subject.COMING, Subject.COOLING_IN)
    read = then_read(advice, standing, edge)
    # While the heat comes, its window stands above; what is left to do is the dough, or else a reading.
    instead = (prepare_words(advice, standing) or read) if coming else ""
    to_do = (instead,) if instead else shown_rungs(desk)
    then = () if instead else step_rungs(advice, standing, edge)
    if read:
        then = (read,)
    if advice.planned is not None and plan is not None:
        to_do = due_rungs(advice.planned, plan, standing.stove, edge)
    danger = advice.caution if advice.subject is Subject.DANGER else None
    if danger is not None:  # what it is and what to do at once, each a line of its own
        to_do, then = (f"{danger.name}.",), (danger.order,)
    arrival = None
    if coming and advice.arrival is not None:
        found = advice.arrival
        latest = found.latest or max(found.likely, standing.now + timedelta(minutes=AHEAD_MIN))
        arrival = (_minutes(standing, found.earliest), _minutes(standing, found.likely), _minutes(standing, latest))
    return Large(
        clock=clock,
        oven=number,
        doubt=doubt,
        to_do=to_do,
        then=then if to_do != then else (),
        cautions=_titles(desk),
        ribbon=_ribbon(standing),
        ended=None,
        arrival_min=arrival,
        leaves_min=standing.outlook.band.line_leaves_min if arrival else None,
        **_wanted(advice, standing, edge),
    )


def _wanted(advice: Advice, standing: Standing, edge: Edge) -> dict[str, str]:
    """The heat wanted, and when it is there."""
    window = arrival_figure(standing, edge)
    if not window:
        return {}
    likely = likely_words(advice.arrival, edge) if advice.arrival else ""
    leaves = standing.outlook.band.line_leaves_min
    if window == "now" and leaves is not None:
        likely = f"until about {edge.clock(leaves)}"
    return {"heat": heat_name(standing.band), "window": window, "likely": likely}


def _minutes(standing: Standing, at: datetime) -> float:
    return (at - standing.now).total_seconds() / 60.0


def _titles(desk: Desk) -> str:
    titles = [caution.name for caution in shown_cautions(desk)]
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
