"""What is in the oven: when to look at it, when to turn it, when it is done."""

from __future__ import annotations

from datetime import datetime
from typing import TYPE_CHECKING

from cookstove_gui.advice import Advice, Deadline, Subject
from cookstove_gui.phrases.edge import Edge, in_sentence, spot_label
from cookstove_gui.units import degrees_difference

if TYPE_CHECKING:
    from cookstove_gui.cooking.baking.in_oven import InOven
    from cookstove_gui.cooking.baking.under_way import UnderWay
    from cookstove_gui.stove.stove import Stove


def oven_headline(advice: Advice, inside: UnderWay, stove: Stove, edge: Edge) -> str:
    """What the thing in the oven wants now, or when it will be done."""
    name = in_sentence(inside.inside.name)
    match advice.subject:
        case Subject.LOOK_AT if advice.by is not None:
            if advice.by.passed:
                return f"Look at the {name} now; you meant to at {edge.at(advice.by.at)}."
            return f"Look at the {name} {_at(advice.by, edge)}."
        case Subject.TURN if advice.by is not None:
            why = f": {apart_words(inside, stove, edge)}" if inside.turn else ""
            if advice.by.passed:
                return f"Turn the {name} now; that was due at {edge.at(advice.by.at)}{why}."
            return f"Turn the {name} {_at(advice.by, edge)}{why}."
        case Subject.TAKE_OUT if advice.by is not None:
            return f"{done_words(inside, edge)} {decides_words(inside, edge)}".strip()
    return _course_words(inside, edge)


def in_oven_line(inside: UnderWay, stove: Stove, edge: Edge) -> str:
    """One thing in the oven on a line of its own: since when, when to turn it and why, when it is done."""
    why = f" ({apart_words(inside, stove, edge)})" if inside.turn else ""
    return f"In the oven since {edge.at(inside.inside.went_in)}: {_course_words(inside, edge)}{why}"


def _course_words(inside: UnderWay, edge: Edge) -> str:
    """When it is done and when to turn it."""
    turn = inside.turn_at
    done_already = inside.likely is not None and inside.likely < edge.now
    if turn is None or done_already:
        return done_words(inside, edge)
    if turn < edge.now:
        return f"{done_words(inside, edge)} It was to be turned at {edge.at(turn)}."
    return f"{done_words(inside, edge)} Turn it at {edge.at(turn)}."


def _at(by: Deadline, edge: Edge) -> str:
    return "now" if edge.is_now(by.at) else f"at {edge.at(by.at)}"


def done_words(inside: UnderWay, edge: Edge) -> str:
    """When it is done, with its window; what has gone of the window is not named."""
    name, likely = in_sentence(inside.inside.name), inside.likely
    if inside.answer is None:
        return f"The {name} went into the oven at {edge.at(inside.inside.went_in)}."
    if likely is None:
        return f"With this fire the {name} will hardly be done within three hours. It needs more heat or more time."
    if likely < edge.now:
        return overdue_rungs(inside, likely, edge)[0]
    return f"The {name} is done about {edge.at(likely)}{window_words(inside, edge)}."


def overdue_rungs(inside: UnderWay, likely: datetime, edge: Edge) -> tuple[str, str, str]:
    """That it is likely done by now, from long to short.

    What its core was measured at since then goes before what was foretold.
    """
    name, probe = in_sentence(inside.inside.name), next(reversed(inside.inside.probes), None)
    if probe is None or inside.answer is None or probe.at < likely:
        was = f"was likely done at {edge.at(likely)}."
        return (
            f"The {name} {was} Look, and measure its core.",
            f"The {name} {was} Measure its core.",
            "Likely done. Measure its core.",
        )
    measured = f"its core was {edge.heat(probe.core)} at {edge.at(probe.at)}."
    if probe.core < inside.answer.done_at:
        nearly = f"The {name} is nearly done: {measured}"
        return f"{nearly} Measure it again soon.", nearly, "Nearly done. Measure it again."
    done = f"The {name} is done: {measured}"
    return done, done, f"Done: {measured}"


def window_words(inside: UnderWay, edge: Edge) -> str:
    """`, between 5:16 and 5:47`: what is left of the window."""
    first, last = inside.earliest, inside.latest
    if last is None:
        return ", perhaps much later"
    if first is None or edge.at(first) == edge.at(last):
        return ""
    if first <= edge.now:
        return f", by {edge.at(last)} at the latest"
    return f", between {edge.at(first)} and {edge.at(last)}"


def decides_words(inside: UnderWay, edge: Edge) -> str:
    """That the core decides, not the clock."""
    if inside.answer is None:
        return ""
    heat = edge.heat(inside.answer.done_at)
    if inside.answer.safe is not None:
        return f"It comes out at a core of {heat} or more: the thermometer decides."
    return f"Done at a core of about {heat}."


def apart_words(inside: UnderWay, stove: Stove, edge: Edge) -> str:
    """Which wall runs hotter, and by how much; no finer than a wall read some while ago can say."""
    reminder = inside.turn
    if reminder is None:
        return ""
    hotter, cooler = (spot_label(stove, name) for name in (reminder.hotter, reminder.cooler))
    step = 10 if edge.unit == "F" else 5
    least, most = (
        step * round(degrees_difference(kelvin, edge.unit) / step) for kelvin in (reminder.least, reminder.most)
    )
    if least == most:
        return f"{hotter} runs about {most} °{edge.unit} hotter than {cooler}"
    if least > 0:
        return f"{hotter} runs {least} to {most} °{edge.unit} hotter than {cooler}"
    return f"{hotter} probably runs hotter than {cooler}, by up to {most} °{edge.unit}"


def probe_rows(inside: InOven, edge: Edge) -> tuple[tuple[str, str], ...]:
    """When a probe was read in it, and what it showed."""
    return tuple((edge.at(one.at), edge.heat(one.core)) for one in inside.probes)


def inside_rows(inside: InOven, edge: Edge) -> str:
    """What else the log says of it: whether it was turned, when it is to be looked at."""
    told = []
    if inside.turned_at is not None:
        told.append(f"Turned at {edge.at(inside.turned_at)}.")
    if inside.due_at is not None:
        told.append(f"To be looked at: {edge.at(inside.due_at)}.")
    return " ".join(told)
