"""The heading from long to short: one sentence in ever fewer words, so that it stands in one line at any width.

The first rung is the whole sentence; the last is at most SHORTEST characters long, and no rung leaves a window out
while it still says why.
"""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from cookstove_gui.advice import Advice, Subject
from cookstove_gui.phrases.advice import detail, headline, wood_words
from cookstove_gui.phrases.edge import Edge, heat_name, in_sentence, sessions_count, spot_label
from cookstove_gui.phrases.in_oven import overdue_rungs
from cookstove_gui.resource_files import own_words
from cookstove_gui.situation import was_read
from cookstove_gui.stove.entries import Kind

if TYPE_CHECKING:
    from cookstove_gui.cooking.baking.under_way import UnderWay
    from cookstove_gui.forecast.futures.arrival import Arrival
    from cookstove_gui.situation import Standing

SHORTEST = 40  # characters that fit the narrowest heading
KNOWN_AFTER = 3  # past sessions, from which on nothing is said of learning


def ladder(advice: Advice, standing: Standing, edge: Edge) -> tuple[str, ...]:
    """The heading's sentence, then shorter ones, each no longer than the one before."""
    whole = headline(advice, standing, edge)
    rungs = [whole, *_shorter(advice, standing, edge)]
    kept = [rung for place, rung in enumerate(rungs) if all(len(rung) <= len(before) for before in rungs[:place])]
    return tuple(dict.fromkeys(kept))


def plain_ladder(sentence: str, short: str = "") -> tuple[str, ...]:
    """Of words that say nothing of a fire: whole, sentence by sentence shorter, at last `short`."""
    parts = sentence.split(". ")
    rungs = [sentence, *(". ".join(parts[:count]) + "." for count in range(len(parts) - 1, 0, -1))]
    return tuple(dict.fromkeys((*rungs, short) if short else rungs))


def _shorter(advice: Advice, standing: Standing, edge: Edge) -> tuple[str, ...]:
    heat = heat_name(standing.band)
    match advice.subject:
        case Subject.DANGER if advice.caution is not None:
            first, *_ = advice.caution.order.split(". ")
            return (f"{advice.caution.title}. {first.rstrip('.')}.", f"{advice.caution.title}.")
        case Subject.LET_COOL:
            return ("Let the stove go cold, and read the cooktop when it is.", "Let the stove go cold.")
        case Subject.FIRST_FIRE if standing.first_fires.next is not None:
            fires, following = standing.first_fires, standing.first_fires.next
            which = f"First fire {fires.stages.index(following) + 1} of {len(fires.stages)}"
            stage = f"{which}: {following.stage.title.lower()}."
            return (f"{stage} No food yet. The manual goes first.", f"{stage} No food yet.", stage)
        case Subject.LOOK_AT | Subject.TURN | Subject.TAKE_OUT | Subject.BAKING if advice.inside is not None:
            return _inside(advice, advice.inside, edge)
        case Subject.FIRE_OUT:
            return (
                "The fire looks out. Relight on a little kindling if you need heat.",
                "The fire looks out. Relight if needed.",
            )
        case Subject.DOOR_OPEN:
            return ("The oven door is open. Close it.",)
        case Subject.AIR_OPEN:
            return ("The air has been wide open for a while. Shut it down.", "The air is wide open. Shut it down.")
        case Subject.WOOD_DUE if advice.by is not None:
            wood = wood_words(advice.by, edge)
            return (f"{wood} to keep {heat}.", f"{wood}.")
        case Subject.PUT_IN:
            return _there(advice, standing, edge, heat)
        case Subject.TOO_SHORT:
            return (f"{_capital(heat)} now, but not for long enough to bake.", "Hot enough, but not for a whole bake.")
        case Subject.COMING | Subject.COOLING_IN if advice.arrival is not None:
            return _coming(advice, advice.arrival, standing, edge)
        case Subject.TOUCHES if advice.touches is not None:
            when = "now" if edge.is_now(advice.touches) else f"about {edge.at(advice.touches)}"
            return (
                f"May touch {heat} {when}, but not for long.",
                f"Perhaps {heat} {when}, briefly.",
                f"May touch it {when}, briefly.",  # where a heat of many words has no room
            )
        case Subject.TOO_HOT:
            return (f"Above {heat}, and not likely to fall to it within three hours.", "Too hot for hours to come.")
        case Subject.NOT_COMING:
            return (
                f"Not likely to reach {heat} by {edge.clock(180.0)} with this fire.",
                f"No {heat} by {edge.clock(180.0)} with this fire.",
                f"Not hot enough by {edge.clock(180.0)}.",
            )
    lit = any(row.kind is Kind.LIT for row in standing.rows)
    return ("Read the oven.",) if lit else ("Light the fire, then read as you go.",)


def _coming(advice: Advice, arrival: Arrival, standing: Standing, edge: Edge) -> tuple[str, ...]:
    """When the heat comes: the window and the likely time stay to the last, what to prepare goes before them."""
    heat = _capital(heat_name(standing.band))
    first, likely = edge.at(arrival.earliest), edge.at(arrival.likely)
    prepare = _words(standing, "prepare") if advice.prepares else ""
    if edge.is_now(arrival.likely):
        return _with(prepare, f"{heat} is just coming.", "The heat is just coming.")
    if arrival.latest is None:
        late = f"{heat} about {likely}, perhaps much later."
        return _with(prepare, late, f"About {likely}, perhaps much later.")
    last = edge.at(arrival.latest)
    if first == last:
        return _with(prepare, f"{heat} at {likely}.", f"There at {likely}.")
    if edge.is_now(arrival.earliest):
        return _with(prepare, f"{heat} by {last}, likely {likely}.", f"There by {last}, likely {likely}.")
    short = f"{heat} {first}–{last}, likely {likely}."
    between = f"{heat} between {first} and {last}, likely {likely}."
    return (f"{prepare} {between}".strip(), *_with(prepare, short, f"There {first}–{last}, likely {likely}."))


def _inside(advice: Advice, inside: UnderWay, edge: Edge) -> tuple[str, ...]:
    """What is in the oven: what it wants and when; the window of its end stays to the last."""
    name = in_sentence(inside.inside.name)
    if advice.by is not None and advice.subject in (Subject.LOOK_AT, Subject.TURN):
        at = "now" if edge.is_now(advice.by.at) else f"at {edge.at(advice.by.at)}"
        if advice.subject is Subject.TURN:
            return (f"Turn the {name} {at}.", f"Turn what is in the oven {at}.")
        return (f"Look at the {name} {at}.", f"Look into the oven {at}.")
    if inside.answer is None:
        return (f"In the oven since {edge.at(inside.inside.went_in)}.",)
    if inside.likely is None:
        return (f"The {name} will hardly be done within three hours.", "Hardly done within three hours.")
    likely, first, last = edge.at(inside.likely), inside.earliest, inside.latest
    if inside.likely < edge.now:
        return overdue_rungs(inside, inside.likely, edge)[1:]
    measure = " Measure it." if inside.answer.safe is not None else ""
    if last is None:
        return (f"The {name} is done about {likely}, perhaps much later.", f"Done about {likely}, perhaps much later.")
    if first is None or edge.is_now(first):
        window = f", by {edge.at(last)}"
    else:
        window = f", {edge.at(first)}–{edge.at(last)}"
    return (f"The {name} is done about {likely}{window}.{measure}", f"Done {likely}{window}.{measure}")


def _there(advice: Advice, standing: Standing, edge: Edge, heat: str) -> tuple[str, ...]:
    """The oven is at its heat: what to do, and until when it stays."""
    ready = _words(standing, "ready") if advice.bake_min else ""
    if advice.leaves is None:
        return _with(ready, f"{_capital(heat)} holds for hours.", "The heat holds for hours.")
    until = edge.at(advice.leaves)
    if (advice.leaves - edge.now).total_seconds() < 300.0:
        return _with(ready, f"{_capital(heat)} is about to go.", "The heat is about to go.")
    return _with(ready, f"{_capital(heat)} holds until about {until}.", f"The heat holds until about {until}.")


def _with(said_first: str, *rungs: str) -> tuple[str, ...]:
    """Every rung alone, the first of them also with something said before it."""
    return (f"{said_first} {rungs[0]}", *rungs) if said_first else rungs


def _capital(words: str) -> str:
    return words[:1].upper() + words[1:]


def _words(standing: Standing, key: str) -> str:
    return own_words("bands", standing.band.name, key)


def detail_rungs(advice: Advice, standing: Standing, edge: Edge) -> tuple[str, ...]:
    """What stands behind the heading, in one line: what to read first, then the step; the stove shows the first too."""
    worth = worth_reading(advice, standing, edge)
    step = detail(replace(advice, reading=None), standing, edge)
    learning = still_learning(standing)
    if worth and step:
        return (f"{worth}. {step} {learning}".strip(), f"{worth}. {step}", step, worth)
    if not learning:
        return (worth or step, *_without_how_long(step))
    said = f"{worth}." if worth else step
    return (f"{said} {learning}", worth or step, *_without_how_long(step)) if said else (learning,)


def step_rungs(advice: Advice, standing: Standing, edge: Edge) -> tuple[str, ...]:
    """The step that helps, from long to short; none where nothing would."""
    step = detail(replace(advice, reading=None), standing, edge)
    return (step, *_without_how_long(step)) if step else ()


def _without_how_long(step: str) -> tuple[str, ...]:
    """A step that says how long the heat is held, without that."""
    reached, _, held = step.partition(", holds it")
    return (f"{reached}.",) if held else ()


def still_learning(standing: Standing) -> str:
    """That windows are wide because the stove is new to the program; empty once it is known, or before it is read."""
    known = standing.belief.character.firings
    if known >= KNOWN_AFTER or standing.first_fires.next is not None or not was_read(standing.rows):
        return ""
    return f"Still learning this stove, {sessions_count(known)}." if known else "Still learning this stove."


def worth_reading(advice: Advice, standing: Standing, edge: Edge) -> str:
    """The reading worth taking, where and by when."""
    if advice.reading is None:
        return ""
    label = spot_label(standing.stove, advice.reading.spot)
    when = "now" if advice.reading.is_due else f"by {edge.at(advice.reading.by.at)}"
    return f"Worth reading: {label}, {when}"


def then_read(advice: Advice, standing: Standing, edge: Edge) -> str:
    """The reading worth taking as a thing to do."""
    if advice.reading is None:
        return ""
    when = "now" if advice.reading.is_due else f"by {edge.at(advice.reading.by.at)}"
    return f"Read the {spot_label(standing.stove, advice.reading.spot)} {when}."


def prepare_words(advice: Advice, standing: Standing) -> str:
    """What to make ready while the heat comes."""
    return _words(standing, "prepare") if advice.prepares else ""
