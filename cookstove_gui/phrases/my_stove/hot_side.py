"""Which side of the cooktop runs hotter, by how much each spot, and what is not known of it yet."""

from collections.abc import Sequence

from cookstove_gui.cooking.fires.sides import LEAST_SESSIONS, Paired, Sides
from cookstove_gui.forecast.answers import SpotPattern
from cookstove_gui.forecast.learning.next_round import NextRound
from cookstove_gui.phrases.edge import capital, listed, readings_count, sessions_count, spot_label
from cookstove_gui.phrases.figures import temperature_text
from cookstove_gui.stove.stove import Stove
from cookstove_gui.units import degrees_difference

_ALIKE = 15.0 / 1.8  # K, up to which sides that are not told apart are said to run alike; judgement
_WORTH = 0.9  # of the doubt that must be left at most for a round of readings to be worth asking for; judgement
_KNOWN = 10.0 / 1.8  # K, mean doubt up to which no more readings are asked for; judgement
_NOTHING = "Read the cooktop on both sides, front and back, in one round, and its hot side shows here."


def hot_side_words(found: Sides, unit: str) -> str:
    """Left against right and front against back, in one sentence."""
    pairs = (("left", "right", found.across), ("front", "back", found.deep))
    said = [_against(one, other, paired, unit) for one, other, paired in pairs if paired is not None]
    if not said:
        return _NOTHING
    verb = " runs about "
    if all(verb in one for one in said):  # said once
        said[1:] = [one.replace(verb, " about ") for one in said[1:]]
    return capital(f"{', '.join(said)}.")


def _against(one: str, other: str, found: Paired, unit: str) -> str:
    apart = round(degrees_difference(found.mean, unit))
    hotter, cooler = (one, other) if apart > 0 else (other, one)
    if found.low is None or found.high is None:
        if apart == 0:
            return f"{one} and {other} were alike in the one round so far"
        return f"the {hotter} was {abs(apart)} °{unit} hotter than the {cooler} in the one round so far"
    half = _half(found.low, found.high, unit)
    if found.is_told_apart:
        return f"the {hotter} runs about {abs(apart)} °{unit} hotter than the {cooler} (±{half})"
    most = round(degrees_difference(max(abs(found.low), abs(found.high)), unit))
    if max(abs(found.low), abs(found.high)) <= _ALIKE:
        return f"{one} and {other} run alike, within {most} °{unit}"
    return f"{one} and {other} are not told apart yet: {signed_difference(found.mean, unit)} ±{half} °{unit}"


def behind_words(sessions: int, pattern: Sequence[SpotPattern], unit: str, when: str = "") -> str:
    """What the sentence stands on: `Over 10 sessions and 412 readings, at a cooktop mean of 470 °F.`"""
    usual = [row.usual for row in pattern if row.usual is not None]
    if not usual:
        return f"Nothing was read {when}." if when else ""
    readings = readings_count(sum(row.readings for row in pattern))
    mean = temperature_text(sum(usual) / len(usual), unit)
    said = f"Over {sessions_count(sessions)} and {readings}{f' {when}' if when else ''}"
    return f"{said}, at a cooktop mean of {mean} °{unit}."


def when_words(stage: str, bypass: str) -> str:
    """Of which readings: `on a steady fire, bypass shut`."""
    fire = {"kindling": "on a kindling fire", "steady": "on a steady fire", "full": "on a full fire"}.get(stage, "")
    if stage and not fire:
        fire = "as the fire died down"
    return ", ".join(part for part in (fire, f"bypass {bypass}" if bypass else "") if part)


def unknown_words(
    stove: Stove, pattern: Sequence[SpotPattern], found: NextRound | None, unit: str, sessions: int
) -> str:
    """What is not known, and which readings in one round would settle most of it; few sessions know few fires."""
    if found is None:
        return ""
    never = [_short(stove, row.spot) for row in pattern if row.readings == 0]
    before, after = (round(degrees_difference(one, unit)) for one in (found.before, found.after))
    read = listed([_short(stove, spot) for spot in found.spots])
    if never and len(never) < len(pattern):
        said = f"Not read yet: {listed(never)}."
    elif found.before <= _KNOWN:
        known = f"Each spot of the top is known to about ±{before} °{unit}"
        if sessions < LEAST_SESSIONS:
            return f"{known} on so few fires; another firing tells more than another round."
        return f"{known}; more readings change little."
    else:
        said = "" if never else f"Each spot of the top is known to about ±{before} °{unit}."
    if found.after > _WORTH * found.before and not never:
        return f"{said} It takes many more rounds to know them better.".strip()
    ask = f"{capital(read)}, read in one round, would settle most: ±{before} becomes ±{after} °{unit}."
    return f"{said} {ask}".strip()


def spot_offset(row: SpotPattern, unit: str, against: str = "the mean") -> str:
    """How a spot runs against the cooktop's mean, or the oven's centre, with its interval."""
    if row.readings == 0:
        return "not read yet"
    mean, low, high = (round(degrees_difference(value, unit)) for value in (row.mean, row.p10, row.p90))
    if low <= 0 <= high:
        return f"about {against}, from {_signed(low)} to {_signed(high)} °{unit}"
    word = "hotter" if mean > 0 else "cooler"
    near, far = sorted((abs(low), abs(high)))
    return f"{abs(mean)} °{unit} {word}, likely {near} to {far}"


def half_interval(row: SpotPattern, unit: str) -> str:
    """How sure a difference is, eight times in ten: `±11`."""
    return f"±{_half(row.p10, row.p90, unit)}"


def _half(low: float, high: float, unit: str) -> int:
    """Half an interval in whole degrees, and never none: many readings make no difference certain."""
    return max(round(degrees_difference((high - low) / 2, unit)), 1)


def signed_difference(kelvin_difference: float, unit: str) -> str:
    """A difference in whole degrees with its sign, for a drawing: `+35`."""
    return _signed(round(degrees_difference(kelvin_difference, unit)))


def usual_words(row: SpotPattern, unit: str, against: str) -> str:
    """How a spot usually runs: `usually 6 °F under the top’s mean, ±8`."""
    apart = round(degrees_difference(row.mean, unit))
    way = "at" if apart == 0 else f"{abs(apart)} °{unit} {'over' if apart > 0 else 'under'}"
    return f"usually {way} {against}, {half_interval(row, unit)}"


def _short(stove: Stove, spot: str) -> str:
    return spot_label(stove, spot).removeprefix("top ")


def _signed(number: int) -> str:
    return "0" if number == 0 else f"{'+' if number > 0 else '−'}{abs(number)}"
