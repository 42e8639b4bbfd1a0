"""Sessions beside each other in words: which rises faster, what differs most, and each figure of the table."""

from collections.abc import Sequence
from statistics import median

from cookstove_gui.cooking.fires.comparing import LEAST_COMMON, Comparison, Figure, differs_most
from cookstove_gui.phrases.edge import capital, heat_name, listed, measured_time, whole
from cookstove_gui.stove.entries import HeatBand
from cookstove_gui.units import KILOGRAMS_PER_POUND, degrees, degrees_difference

FEW = 8  # sessions that are told one by one, each with a line and a mark of its own; of more only those chosen
TODAY = "today"  # what the session being written is called
ALIKE_MIN = 5.0  # min; rises that differ by no more are called alike; judgement
_COUNTS = {2: "Both", 3: "All three", 4: "All four", 5: "All five", 6: "All six", 7: "All seven", 8: "All eight"}


def compare_headline(found: Comparison, names: Sequence[str], band: HeatBand, *, likely: bool = False) -> str:
    """How the first session rises against the others; `likely` where its own arrival is still to come."""
    rises = found.figures.get(Figure.RISE, tuple(None for _ in names))
    if len(names) > FEW:
        return _among_many(names[0], rises, heat_name(band), likely=likely)
    own, heat = rises[0], heat_name(band)
    others = [(name, rise) for name, rise in zip(names[1:], rises[1:], strict=True) if rise is not None]
    if own is None:
        came = [f"{name} after {measured_time(rise)}" for name, rise in others]
        first = f"{capital(names[0])} did not rise from cold to {heat}"
        if names[0] == TODAY:
            first = f"{capital(TODAY)} has not come to {heat} from cold yet"
        return f"{first}; {listed(came)}." if came else "None of them rose from cold to " + heat + "."
    alike = [name for name, rise in others if abs(rise - own) <= ALIKE_MIN]
    parts = [f"like {listed(alike)}"] if alike else []
    parts += [
        f"{measured_time(abs(rise - own))} {'faster' if rise > own else 'slower'} than {name}"
        for name, rise in others
        if name not in alike
    ]
    if not parts:
        how = f"{'is likely to come' if likely else 'came'} to {heat} after {measured_time(own)}"
        return f"{capital(names[0])} {how}; the others did not rise to it from cold."
    rises_or_rose = "rises" if names[0] == TODAY else "rose"
    short = [name for name, rise in zip(names[1:], rises[1:], strict=True) if rise is None]
    rest = f"; {listed(short)} did not come to {heat} from cold" if short else ""
    return f"{capital(names[0])} {rises_or_rose} {', and '.join(parts)}{rest}."


def compare_rungs(found: Comparison, names: Sequence[str], band: HeatBand, *, likely: bool = False) -> tuple[str, ...]:
    """The same from long to short: whole, then without those that did not come to the heat."""
    whole = compare_headline(found, names, band, likely=likely)
    rises = found.figures.get(Figure.RISE, tuple(None for _ in names))
    if len(names) > FEW or rises[0] is None or sum(rise is not None for rise in rises) < 2:
        return (whole,)
    return tuple(dict.fromkeys((whole, f"{whole.partition('; ')[0].rstrip('.')}.")))


def _among_many(first: str, rises: Sequence[float | None], heat: str, *, likely: bool) -> str:
    """Where the first stands among more sessions than can be told one by one."""
    own, others = rises[0], [rise for rise in rises[1:] if rise is not None]
    if not others:
        return f"None of the {len(rises) - 1} others rose from cold to {heat}."
    if own is None and first == TODAY:
        return f"{capital(TODAY)} has not come to {heat} from cold yet; {len(others)} others have."
    if own is None:
        return f"{capital(first)} did not rise from cold to {heat}; {len(others)} others did."
    slower = sum(rise > own + ALIKE_MIN for rise in others)
    how = "is likely to come" if likely else "came"
    among = f"sooner than {slower} of {len(others)} others"
    if slower == len(others):
        among = "sooner than all the others"
    elif all(rise < own - ALIKE_MIN for rise in others):
        among = "later than all the others"
    return f"{capital(first)} {how} to {heat} after {measured_time(own)}, {among}."


def compare_behind(found: Comparison, labels: dict[str, str], names: Sequence[str] = (), *, by_clock: bool) -> str:
    """From where they are counted, and what differs most from the one that rises most differently."""
    count = _COUNTS.get(len(found.facts), f"All {len(found.facts)}")
    said = f"{count} {'by the clock' if by_clock else 'from the match'}."
    rises = [rise for rise in found.figures.get(Figure.RISE, ()) if rise is not None]
    if len(names) > FEW and rises:
        said += f" The middle one of {len(rises)} rises took {measured_time(median(rises))}."
    other = unlike(found)
    most = None if other is None else differs_most(found, 0, other)
    if other is not None and most is not None:
        whom = f" from {names[other]}" if len(names) > FEW else ""
        said += f" What differs most{whom}: {_differs(most, found.figures[most], other)}."
    if len(found.common) < LEAST_COMMON:
        names = [labels.get(name, name) for name in found.common]
        only = f"only {listed(names)} {'was' if len(names) == 1 else 'were'}" if names else "no spot was"
        said += f" Left and right can't be compared: {only} read in {count.lower()}."
    return said


def unlike(found: Comparison) -> int | None:
    """Which of the others rises most differently from the first; none where that can't be told."""
    rises = found.figures.get(Figure.RISE, ())
    if not rises or rises[0] is None:
        return None
    own = rises[0]
    gaps = {place: abs(rise - own) for place, rise in enumerate(rises) if place and rise is not None}
    return max(gaps, key=lambda place: gaps[place], default=None)


def _differs(figure: Figure, values: Sequence[float | None], other: int) -> str:
    """The first session against another one: `the bypass was shut 28 min sooner`."""
    own, its = values[0] or 0.0, values[other] or 0.0
    gap = abs(own - its)
    match figure:
        case Figure.BYPASS | Figure.AIR:
            what = "the bypass was shut" if figure is Figure.BYPASS else "the air was brought to half"
            return f"{what} {measured_time(gap)} {'sooner' if own < its else 'later'}"
        case Figure.WOOD:
            return f"{gap / KILOGRAMS_PER_POUND:.1f} lb ({gap:.1f} kg) {'less' if own < its else 'more'} wood by then"
        case _:
            what = "the flue" if figure is Figure.FLUE else "the room"
            return f"{what} was {gap * 1.8:.0f} °F ({gap:.0f} °C) {'cooler' if own < its else 'warmer'}"


def figure_name(figure: Figure, band: HeatBand) -> str:
    """What a row of the table is about."""
    return f"to {heat_name(band)}" if figure is Figure.RISE else str(figure)


def figure_words(figure: Figure, value: float | None, unit: str, *, likely: bool = False) -> str:
    """A figure of the first session; one that is projected has a star."""
    if value is None:
        return "–"
    if likely:
        return f"{figure_words(figure, value, unit)}*"
    match figure:
        case Figure.RISE | Figure.BYPASS | Figure.AIR:
            return measured_time(value)
        case Figure.LOADS:
            return f"{value:.0f}"
        case Figure.WOOD:
            return f"{value / KILOGRAMS_PER_POUND:.1f} lb" if unit == "F" else f"{value:.1f} kg"
        case Figure.SIDES:
            return f"{whole(degrees_difference(value, unit))} °{unit}"
        case _:
            return f"{whole(degrees(value, unit))} °{unit}"


def arrival_words(likely: float) -> str:
    """When the session on the stove is likely to come to the heat, counted from the match."""
    return f"{TODAY} likely after {measured_time(likely)}"


def difference_words(figure: Figure, own: float | None, other: float | None, unit: str) -> str:
    """How another session’s figure differs from the first one’s: `+16 min`; its own where the first has none."""
    if other is None:
        return "–"
    if own is None:
        return figure_words(figure, other, unit)
    gap = other - own
    match figure:
        case Figure.RISE | Figure.BYPASS | Figure.AIR:
            sign = "+" if gap > 0 else "−"
            return f"{sign}{measured_time(abs(gap))}" if round(gap) else "same"
        case Figure.LOADS:
            text, behind = f"{gap:+.0f}", ""
        case Figure.WOOD:
            text = f"{gap / KILOGRAMS_PER_POUND:+.1f}" if unit == "F" else f"{gap:+.1f}"
            behind = " lb" if unit == "F" else " kg"
        case _:
            text, behind = f"{degrees_difference(gap, unit):+.0f}", f" °{unit}"
    return "same" if float(text) == 0 else text.replace("-", "−") + behind
