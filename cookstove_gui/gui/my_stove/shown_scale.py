"""Where the firings of one figure lie in their picture, and the words at its scales."""

from collections.abc import Callable, Sequence
from datetime import date
from enum import StrEnum
from math import ceil

from cookstove_gui.cooking.fires.abilities import Ability, Figure, Shown
from cookstove_gui.desk.my_stove.abilities import Abilities
from cookstove_gui.gui.my_stove.shown_picture import ShownMark, ShownScale
from cookstove_gui.phrases.edge import mass_text
from cookstove_gui.phrases.figures import temperature_text
from cookstove_gui.phrases.my_stove.abilities import day_words, value_text
from cookstove_gui.units import KILOGRAMS_PER_POUND, degrees, degrees_difference, kelvin

_MOST = 5  # ticks
_MINUTES = (1, 2, 5, 10, 15, 30, 60, 120, 240, 480)
_OTHERS = (1, 2, 5, 10, 20, 25, 50, 100, 200, 500, 1000)


class Against(StrEnum):
    """What the firings are drawn against."""

    DAY = "day"
    OUTDOORS = "outdoors"
    WOOD = "wood"


def across_of(against: Against, one: Shown, found: Abilities) -> float | None:
    """Where a firing lies across; none where its log does not say."""
    if against is Against.OUTDOORS:
        return found.outdoors.get(one.session)
    return one.wood if against is Against.WOOD else one.at.timestamp()


def offered(figure: Figure, found: Abilities) -> tuple[Against, ...]:
    """What at least two of a figure's firings can be drawn against."""
    told = {
        against: {across for one in figure.shown if (across := across_of(against, one, found)) is not None}
        for against in Against
    }
    with_wood = figure.ability not in (Ability.WOOD_BAKE, Ability.WOOD_MONTH)
    return tuple(
        one for one in Against if one is Against.DAY or (len(told[one]) > 1 and (with_wood or one is Against.OUTDOORS))
    )


def marks(figure: Figure, against: Against, found: Abilities, unit: str, today: date) -> tuple[ShownMark, ...]:
    """The firings of a figure that can be drawn so."""
    latest = max((one.at for one in figure.shown), default=None)
    return tuple(
        ShownMark(
            session=one.session, across=across, up=one.value, is_least=not one.ended, is_latest=one.at == latest,
            said=f"{day_words(one, today)}: {value_text(figure.ability, one.value, unit, ended=one.ended)}",
        )
        for one in figure.shown
        if (across := across_of(against, one, found)) is not None
    )  # fmt: skip


def scale(figure: Figure, drawn: Sequence[ShownMark], against: Against, unit: str, today: date) -> ShownScale:
    """The words at both scales, and the range where it is one of firings."""
    ups = [mark.up for mark in drawn] + [one for one in (figure.low, figure.high) if one is not None]
    is_range = figure.ability is not Ability.BOIL
    shown, back = _in_unit(figure.ability, unit)
    up = tuple((back(tick), value_text(figure.ability, back(tick), unit)) for tick in ticks(
        shown(min(ups)), shown(max(ups)), _MINUTES if shown is _same else _OTHERS
    ))  # fmt: skip
    ends = sorted({mark.across for mark in drawn})
    ends = [ends[0], ends[-1]] if len(ends) > 1 else ends
    if against is Against.DAY:
        by_clock = {one.at.timestamp(): one for one in figure.shown}
        across = tuple((end, day_words(by_clock[end], today)) for end in ends)
    elif against is Against.OUTDOORS:
        across = tuple((end, f"{temperature_text(end, unit)} °{unit} outdoors") for end in ends)
    else:
        across = tuple((end, f"{mass_text(end, unit)} of wood") for end in ends)
    return ShownScale(
        across=across,
        up=up,
        low=figure.low if is_range else None,
        middle=figure.middle if is_range else None,
        high=figure.high if is_range else None,
    )


def ticks(low: float, high: float, steps: Sequence[int]) -> tuple[float, ...]:
    """At most five round numbers from below the lowest to above the highest."""
    step = next((one for one in steps if (high - low) / one <= _MOST - 2), steps[-1])
    first = step * (ceil(low / step) - 1) if low % step else low
    found = [first]
    while found[-1] < high:
        found.append(found[-1] + step)
    return tuple(found if len(found) > 1 else (first, first + step))


def _same(value: float) -> float:
    return value


def _in_unit(ability: Ability, unit: str) -> tuple[Callable[[float], float], Callable[[float], float]]:
    """From SI to the number that is shown, and back."""
    if ability in (Ability.HOTTEST_TOP, Ability.HOTTEST_OVEN):
        return (lambda value: float(degrees(value, unit))), (lambda value: float(kelvin(value, unit)))
    if ability is Ability.LIFT:
        one = float(degrees_difference(1.0, unit))
        return (lambda value: value * one), (lambda value: value / one)
    if ability in (Ability.WOOD_BAKE, Ability.WOOD_MONTH):
        pound = KILOGRAMS_PER_POUND if unit == "F" else 1.0
        return (lambda value: value / pound), (lambda value: value * pound)
    return _same, _same
