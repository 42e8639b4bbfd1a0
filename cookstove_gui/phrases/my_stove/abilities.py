"""What a stove can do, in words: each figure's name, its value and range, and what stands behind it."""

from datetime import date

from cookstove_gui.cooking.fires.abilities import WITHOUT_WOOD_FALL, Ability, Figure, Shown
from cookstove_gui.phrases.edge import capital, heat_name, local_day, mass_text, measured_time, short_date, whole
from cookstove_gui.units import degrees, degrees_difference

_MINUTES = (Ability.RISE, Ability.HOLD_ONE, Ability.HOLD_TWO, Ability.FALL, Ability.BOIL, Ability.BURN)
_HEATS = (Ability.HOTTEST_TOP, Ability.HOTTEST_OVEN)
_NO_LIFT = 1.0  # K; a split that gave less did not lift the oven; judgement
_HOW = {
    Ability.RISE: "From lighting a cold oven until its readings cross the low end of the heat.",
    Ability.HOLD_ONE: "From the split until the oven falls out below the heat, nothing more put on.",
    Ability.HOLD_TWO: "From the two splits until the oven falls out below the heat, nothing more put on.",
    Ability.LIFT: "An oven that neither rose nor fell, one split, and the hottest within the hour after it.",
    Ability.FALL: "From the oven’s hottest after the last load.",
    Ability.BURN: "From a load whose air was shut down until the oven had fallen so far from its hottest.",
    Ability.BOIL: "Cold water in an open saucepan, by the heats this spot had while the fire was up.",
    Ability.HOTTEST_TOP: "The hottest reading of the cooktop in each firing; slips are left out.",
    Ability.HOTTEST_OVEN: "The hottest reading of the oven in each firing; slips are left out.",
    Ability.WOOD_BAKE: "Firings that came from cold to this heat and whose every load says how much.",
    Ability.WOOD_MONTH: "All wood that the log tells of in a month with a fire.",
}
_NONE_YET = {
    Ability.RISE: "no cold oven has come to it yet",
    Ability.HOLD_ONE: "not seen yet: add one split, read on",
    Ability.HOLD_TWO: "not seen yet: add two splits, read on",
    Ability.LIFT: "not seen yet: add one split, read on",
    Ability.FALL: "not seen yet: read on after the last load",
    Ability.BURN: "not seen yet: load, shut down, read on",
    Ability.BOIL: "read too seldom while the fire was up",
    Ability.HOTTEST_TOP: "not read yet",
    Ability.HOTTEST_OVEN: "not read yet",
    Ability.WOOD_BAKE: "no firing says how much wood it took",
    Ability.WOOD_MONTH: "no log says how much wood went on",
}


def ability_name(found: Figure, unit: str, fall: float, spot: str = "") -> str:
    """What a figure is of: `cold to bread heat`; `spot` is what its spot is called."""
    heat = heat_name(found.band) if found.band else ""
    match found.ability:
        case Ability.RISE:
            return f"cold to {heat}"
        case Ability.HOLD_ONE:
            return f"holds {heat} on one split"
        case Ability.HOLD_TWO:
            return f"holds {heat} on two splits"
        case Ability.LIFT:
            return "one split lifts the oven"
        case Ability.FALL:
            return f"falls {_difference(WITHOUT_WOOD_FALL, unit)} without wood"
        case Ability.BURN:
            return f"shut down, until {_difference(fall, unit)} down"
        case Ability.BOIL:
            return f"boils 2 quarts, {spot}" if unit == "F" else f"boils 1.9 litres, {spot}"
        case Ability.HOTTEST_TOP:
            return "hottest seen, top"
        case Ability.HOTTEST_OVEN:
            return "hottest seen, oven"
        case Ability.WOOD_BAKE:
            return f"wood to bake at {heat}"
        case Ability.WOOD_MONTH:
            return "wood a month"


def value_text(ability: Ability, value: float, unit: str, *, ended: bool = True) -> str:
    """One value: `1 h 35`, `24 °F`, `742 °F`, `15 lb`."""
    if ability in _MINUTES:
        text = measured_time(value)
    elif ability in _HEATS:
        text = f"{whole(degrees(value, unit))} °{unit}"
    elif ability is Ability.LIFT:
        text = _difference(value, unit)
    else:
        text = mass_text(value, unit)
    return text if ended else f"{text} or more"


def figure_value(found: Figure, unit: str) -> str:
    """The figure itself; a dash before it was seen, the least it can be where its end was not."""
    if found.ability is Ability.LIFT and found.middle is not None and found.middle < _NO_LIFT:
        return "none seen"
    if found.middle is not None:
        return value_text(found.ability, found.middle, unit)
    longest = max((one.value for one in found.shown), default=None)
    if found.ability is Ability.BOIL and found.readings:
        return "not there"
    return "–" if longest is None else f"{value_text(found.ability, longest, unit)} or more"


def figure_range(found: Figure, unit: str, spot: str = "") -> str:
    """Its range and how many firings it stands on: `1 h 22 to 1 h 55, 7 firings`."""
    if not found.shown and not found.readings:
        return _NONE_YET[found.ability]
    parts = []
    if found.ability is Ability.HOTTEST_TOP and spot:
        parts.append(spot)
    if found.ability is Ability.LIFT and found.after_min is not None and (found.middle or 0.0) > 0.0:
        parts.append(f"after {measured_time(found.after_min)}")
    elif found.low is not None and found.high is not None and round(found.low) != round(found.high):
        joint = "and" if len(found.shown) == 2 and found.ability is not Ability.BOIL else "to"
        low = value_text(found.ability, found.low, unit)
        parts.append(f"{low} {joint} {value_text(found.ability, found.high, unit)}")
    elif found.low is not None and found.high is None:
        least = "at the soonest" if found.ability is Ability.BOIL else "at the least"
        parts.append(f"{value_text(found.ability, found.low, unit)} {least}")
    return ", ".join((*parts, behind_count(found)))


def behind_count(found: Figure) -> str:
    """How many firings, loads, months or pans it stands on."""
    number = len(found.shown)
    if found.ability is Ability.BOIL:
        return {0: "no pan timed", 1: "1 pan timed"}.get(number, f"{number} pans timed")
    if found.ability is Ability.WOOD_MONTH:
        return "1 month" if number == 1 else f"{number} months"
    loads = found.ability in (Ability.HOLD_ONE, Ability.HOLD_TWO, Ability.LIFT, Ability.BURN)
    one = "load" if loads else "firing"
    return f"1 {one}" if number == 1 else f"{number} {one}s"


def figure_sentence(found: Figure, unit: str, fall: float, spot: str = "") -> str:
    """The figure in one sentence: `Cold to bread heat: 1 h 35, 1 h 22 to 1 h 55, 7 firings.`"""
    named = capital(ability_name(found, unit, fall, spot))
    return f"{named}: {figure_value(found, unit)}." if found.shown or found.readings else f"{named}: not seen yet."


def how_words(found: Figure) -> str:
    """How it is read off the log."""
    return _HOW[found.ability]


def shown_cells(found: Figure, one: Shown, outdoors: float | None, unit: str, today: date) -> tuple[str, ...]:
    """One firing in the list: its day, its value, the wood, how cold it was outdoors."""
    return (
        month_words(one, today) if found.ability is Ability.WOOD_MONTH else day_words(one, today),
        value_text(found.ability, one.value, unit, ended=one.ended),
        ""
        if one.wood is None or found.ability in (Ability.WOOD_BAKE, Ability.WOOD_MONTH)
        else mass_text(one.wood, unit),
        "" if outdoors is None else f"{whole(degrees(outdoors, unit))} °{unit}",
    )


def day_words(one: Shown, today: date) -> str:
    """The day of a firing, with its year where that is not this one."""
    day = local_day(one.at, one.offset_minutes)
    return short_date(day) if day.year == today.year else f"{short_date(day)} {day.year}"


def month_words(one: Shown, today: date) -> str:
    """The month of a firing: `Nov 2025`."""
    return day_words(one, today).split(maxsplit=1)[1]


def rises_words(firings: int, *, today: bool) -> str:
    """The picture of the rises, for whoever cannot see it."""
    count = "1 rise" if firings == 1 else f"{firings} rises"
    return f"Every rise so far, from the match: {count}{', today’s heavy' if today else ''}"


def _difference(kelvin_difference: float, unit: str) -> str:
    return f"{whole(degrees_difference(kelvin_difference, unit))} °{unit}"


def fall_words(fall: float, unit: str) -> str:
    """A fall that may be asked about: `50 °F down`."""
    return f"{_difference(fall, unit)} down"
