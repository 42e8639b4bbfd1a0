"""The sentences of an advice: the heading, what is behind it, and what to read next."""

from datetime import datetime

from cookstove_gui.advice import Advice, Deadline, Subject
from cookstove_gui.cooking.baking.whole_bake import Leaving
from cookstove_gui.cooking.fit.fit import FitState
from cookstove_gui.cooking.safety.caution import speak_against
from cookstove_gui.forecast.futures.arrival import Arrival
from cookstove_gui.phrases.cook import step_to_take
from cookstove_gui.phrases.edge import Edge, duration, heat_name, spot_label
from cookstove_gui.phrases.figures import estimate_text
from cookstove_gui.phrases.in_oven import oven_headline
from cookstove_gui.phrases.my_stove.first_fires import next_fire_words
from cookstove_gui.resource_files import own_words
from cookstove_gui.situation import Standing, was_read
from cookstove_gui.stove.entries import HeatBand, Kind

_STILL = {"boil": "boils", "simmer": "simmers"}  # tasks of the top, the hottest first
_FALLS = 3.0  # K by the first look ahead


def headline(advice: Advice, standing: Standing, edge: Edge) -> str:
    """The one thing to do now, and why."""
    band = standing.band
    match advice.subject:
        case Subject.DANGER if advice.caution is not None:
            return f"{advice.caution.title}. {advice.caution.order}"
        case Subject.LET_COOL:
            return "Let the stove go cold. Read the cooktop when it is; the next first fire waits for that."
        case Subject.FIRST_FIRE:
            return next_fire_words(standing.first_fires)
        case Subject.LOOK_AT | Subject.TURN | Subject.TAKE_OUT | Subject.BAKING if advice.inside is not None:
            return oven_headline(advice, advice.inside, standing.stove, edge)
        case Subject.FIRE_OUT:
            return "The fire looks out. Look in, and relight it on a little kindling if you still need heat."
        case Subject.DOOR_OPEN:
            return "The oven door is open and the oven loses heat. Close it."
        case Subject.AIR_OPEN:
            return "The air has been wide open for a while. Shut it down, unless the fire is still catching."
        case Subject.WOOD_DUE if advice.by is not None:
            falls = f"the oven falls out of {heat_name(band)}"
            return f"{wood_words(advice.by, edge)}. Unless you do, {falls}; the projection counts on it."
        case Subject.PUT_IN:
            ready = _band_words(band, "ready") if advice.bake_min else ""
            return f"{ready} The oven is at {heat_name(band)}. {stay_words(advice.leaves, edge)}".strip()
        case Subject.TOO_SHORT:
            return f"The oven is at {heat_name(band)}. {_what_lacks(advice, edge)}"
        case Subject.COMING | Subject.COOLING_IN if advice.arrival is not None:
            prepare = _band_words(band, "prepare") if advice.prepares else ""
            return f"{prepare} {arrival_words(band, advice.arrival, edge)}".strip()
        case Subject.TOUCHES if advice.touches is not None:
            return touch_words(band, advice.touches, edge)
        case Subject.TOO_HOT | Subject.NOT_COMING:
            return missed_words(band, is_above=advice.subject is Subject.TOO_HOT)
    lit = next((row for row in reversed(standing.rows) if row.kind is Kind.LIT), None)
    if lit is not None:
        return f"Fire lit at {edge.at(lit.at)}. Read the {spot_label(standing.stove, standing.stove.oven_spot)}."
    return own_words("no_readings")


def detail(advice: Advice, standing: Standing, edge: Edge) -> str:
    """The step that helps, wood to come, and the reading worth taking."""
    parts = []
    if advice.subject is Subject.FIRE_OUT:
        parts.append(what_still_does(standing, edge))
    elif advice.step is not None:
        parts.append(step_to_take(advice.step.action, advice.step.outlook, standing.band, edge))
    elif advice.leaving is not None:
        parts.append(_before_a_bake(advice.leaving, standing))
    elif advice.wood_by is not None:
        assumed = "" if advice.wood_by.passed else "; the projection counts on it"
        parts.append(f"{wood_words(advice.wood_by, edge)}{assumed}.")
    if advice.reading is not None:
        label = spot_label(standing.stove, advice.reading.spot)
        when = "now" if advice.reading.is_due else f"by {edge.at(advice.reading.by.at)}"
        parts.append(f"Worth reading {when}: {label}.")
    return " ".join(part for part in parts if part)


def what_still_does(standing: Standing, edge: Edge) -> str:
    """After the fire: the oven and which way it goes, and what the top still does and until when."""
    now, later = standing.outlook.oven.p50, min(standing.outlook.ahead, key=lambda one: one.minutes, default=None)
    if now is None or not was_read(standing.rows):
        return ""
    falls = " and falling" if later is not None and later.p50 < now - _FALLS else ""
    oven = f"Oven {estimate_text(now, edge.unit)} °{edge.unit}{falls}"
    for key, does in _STILL.items():
        fit = next((one for one in standing.fits if one.task.key == key and one.state is FitState.NOW), None)
        until = fit.spots[0].until_min if fit is not None else None
        if until is not None and until >= 1.0:
            return f"{oven}; the top still {does} until {edge.clock(until)}."
    return f"{oven}."


def arrival_words(band: HeatBand, arrival: Arrival, edge: Edge) -> str:
    """When the oven is at a heat: likely where the drawn line enters, with the window around it."""
    first, likely = edge.at(arrival.earliest), edge.at(arrival.likely)
    last = None if arrival.latest is None else edge.at(arrival.latest)
    if edge.is_now(arrival.likely):
        return f"The oven is just coming to {heat_name(band)}."
    if last is None:
        return f"The oven reaches {heat_name(band)} about {likely}, perhaps much later."
    if first == last:
        return f"The oven reaches {heat_name(band)} at {likely}."
    if edge.is_now(arrival.earliest):
        return f"The oven reaches {heat_name(band)} by {last}, {likely_words(arrival, edge)}."
    return f"The oven reaches {heat_name(band)} between {first} and {last}, {likely_words(arrival, edge)}."


def touch_words(band: HeatBand, at: datetime, edge: Edge) -> str:
    """That an oven comes to a heat but does not keep it: the drawn line never enters."""
    when = "now" if edge.is_now(at) else f"about {edge.at(at)}"
    return f"With this fire the oven may touch {heat_name(band)} {when}, but not for long."


def missed_words(band: HeatBand, *, is_above: bool) -> str:
    """That an oven does not come to a heat, from above it or from below."""
    if is_above:
        return f"The oven is above {heat_name(band)} and is not likely to fall to it within three hours."
    return f"With this fire the oven is not likely to reach {heat_name(band)} within three hours."


def likely_words(arrival: Arrival, edge: Edge) -> str:
    """Where the drawn line enters, as it stands beside the mark on the plot."""
    return f"likely {edge.at(arrival.likely)}"


def between_words(arrival: Arrival, edge: Edge) -> str:
    """The window around it, as it stands below that."""
    first, likely = edge.at(arrival.earliest), edge.at(arrival.likely)
    if arrival.latest is None:
        return "perhaps much later"
    last = edge.at(arrival.latest)
    if first == last:
        return f"at {likely}"
    return f"by {last}" if edge.is_now(arrival.earliest) else f"between {first} and {last}"


def until_words(leaves: datetime, edge: Edge) -> str:
    """When the oven leaves the heat it has, as it stands beside the mark on the plot."""
    return "about to leave" if (leaves - edge.now).total_seconds() < 300.0 else f"until about {edge.at(leaves)}"


def stay_words(leaves: datetime | None, edge: Edge) -> str:
    """How long the oven stays at the heat it has."""
    if leaves is None:
        return "It likely stays there for hours."
    if (leaves - edge.now).total_seconds() < 300.0:
        return "It is about to leave that heat."
    return f"It likely stays until {edge.at(leaves)}."


def wood_words(by: Deadline, edge: Edge) -> str:
    """When wood is to go in."""
    if edge.at(by.at) == edge.clock(0.0):
        return "Add wood now"
    return f"Wood was due at {edge.at(by.at)}: add some now" if by.passed else f"Add wood by {edge.at(by.at)}"


def _what_lacks(advice: Advice, edge: Edge) -> str:
    """Why a bake is not called for yet."""
    takes = f"a bake takes about {duration(advice.bake_min)}"
    if advice.leaves is not None and (advice.leaves - edge.now).total_seconds() < 60.0 * advice.bake_min:
        return f"It likely stays only until {edge.at(advice.leaves)}; {takes}."
    match advice.leaving:
        case Leaving.HOT:
            return f"It may well get too hot before a bake is done; {takes}."
        case Leaving.COOL:
            return f"It may well fall too low before a bake is done; {takes}."
    return f"It may not stay there until a bake is done; {takes}."


def _before_a_bake(leaving: Leaving, standing: Standing) -> str:
    if leaving is Leaving.EITHER:
        return "See how it holds before you bake."
    if leaving is Leaving.COOL:
        return "Build the fire up before you bake."
    if speak_against(standing.cautions, "shut air"):
        return "Add no wood before you bake."
    return "Shut the air down a little before you bake."


def _band_words(band: HeatBand, key: str) -> str:
    return own_words("bands", band.name, key)
