"""When a pan of water simmers or boils, and whether a simmer holds. Kelvin, and minutes from the edge’s now."""

from collections.abc import Sequence
from datetime import date

from cookstove_gui.cooking.pans.boiling_time import Goal, SimmerHold, WaterTime
from cookstove_gui.forecast.answers import Quantiles
from cookstove_gui.phrases.edge import Edge, capital, duration, place_words, short_date

_LIKELY = 0.5
_VERBS = {Goal.BOIL: "boils", Goal.SIMMER: "simmers", Goal.POACH: "is warm enough to poach"}
_TO = {Goal.BOIL: "boil", Goal.SIMMER: "simmer", Goal.POACH: "get warm enough to poach"}
_BEGINS = {Goal.BOIL: "Water boils at", Goal.SIMMER: "A simmer begins at", Goal.POACH: "Poaching begins at"}
_REACHED = {Goal.BOIL: "boils", Goal.SIMMER: "simmers", Goal.POACH: "poaches"}


def water_rungs(label: str, answer: WaterTime, edge: Edge, *, is_soonest: bool) -> tuple[str, ...]:
    """When the water is there on the spot asked about, from long to short; the window is never left out."""
    where, middle = place_words(label), answer.minutes.p50
    if middle is None:
        to = _TO[answer.goal]
        if is_soonest:
            even = f"even on {where} it isn’t likely to {to} within three hours"
            return (f"No spot is hot enough: {even}.", f"No spot is likely to {to} it within three hours.")
        return (
            f"On {where} it isn’t likely to {to} within three hours.",
            f"{capital(where)}: not likely within three hours.",
        )
    verb, about = _VERBS[answer.goal], f"about {edge.clock(middle)}"
    between = window_words(answer.minutes, edge)
    short = short_window(answer.minutes, edge)
    return tuple(
        dict.fromkeys(
            (
                f"On {where} it {verb} {about}{between and f', {between}'}.",
                f"{capital(_REACHED[answer.goal])} {about}{between and f', {between}'}.",
                f"{capital(_REACHED[answer.goal])} {about}{short and f', {short}'}.",
            )
        )
    )


def window_words(minutes: Quantiles, edge: Edge) -> str:
    """`between 4:25 and 4:30`; empty where both are the same minute."""
    if minutes.p10 is None:
        return "perhaps not at all"
    first = edge.clock(minutes.p10)
    if minutes.p90 is None:
        return f"not before {first} and perhaps not at all"
    last = edge.clock(minutes.p90)
    return "" if first == last else f"between {first} and {last}"


def short_window(minutes: Quantiles, edge: Edge) -> str:
    """`4:25 to 4:30`, for a place with little room."""
    if minutes.p10 is None:
        return ""
    first = edge.clock(minutes.p10)
    if minutes.p90 is None:
        return f"from {first}"
    last = edge.clock(minutes.p90)
    return "" if first == last else f"{first} to {last}"


def spot_minutes(answer: WaterTime) -> tuple[str, str]:
    """What stands on a spot of the cooktop, and its unit: `9`, `min`; words where it is not likely to get there."""
    if answer.minutes.p50 is not None:
        return minutes_words(answer.minutes.p50)
    return ("hardly" if answer.chance_reached >= 0.1 else f"no {answer.goal.value}"), ""


def spot_captions(answer: WaterTime, simmer: SimmerHold, edge: Edge) -> tuple[str, ...]:
    """Below it, from long to short: the window, or what the spot does instead; none where there is nothing to say."""
    if answer.minutes.p50 is None:
        return ("simmers only",) if answer.goal is Goal.BOIL and simmer.chance >= _LIKELY else ()
    window = short_window(answer.minutes, edge)
    return tuple(dict.fromkeys((window, window.replace(" to ", "–")))) if window else ()


def minutes_words(minutes: float) -> tuple[str, str]:
    """A short time in numbers and its unit: `9`, `min`; `1 h 20`, without."""
    rounded = max(1, round(minutes))
    if rounded < 60:
        return str(rounded), "min"
    hours, rest = divmod(5 * round(rounded / 5), 60)
    return (f"{hours} h {rest:02d}" if rest else f"{hours} h"), ""


def reason_rungs(
    answer: WaterTime, simmers: Sequence[tuple[str, SimmerHold]], preheat_min: float | None, edge: Edge
) -> tuple[str, ...]:
    """What is behind the answer, from long to short: where the goal lies here, and where a simmer then holds."""
    begins = f"{_BEGINS[answer.goal]} {edge.heat(answer.temperature)} here."
    label, best = max(simmers, key=lambda pair: pair[1].chance)
    then = (
        f"After that a simmer holds on {place_words(label)}, {round(10 * best.chance)} in 10."
        if best.chance >= _LIKELY
        else "No spot likely keeps it at a simmer for half an hour."
    )
    dry = answer.dry_min.p10 if answer.dry_min else None
    then += f" It may boil dry from {edge.clock(dry)}." if dry is not None and answer.goal is Goal.BOIL else ""
    empty = f" Empty, it needs {duration(preheat_min)} to heat up." if preheat_min and preheat_min >= 2 else ""
    return tuple(dict.fromkeys((f"{begins} {then}{empty}", f"{begins} {then}", begins)))


_HARDLY = 1.5  # K, about three degrees on a dial


def draw_words(others: int, cost: float, edge: Edge) -> str:
    """What else draws on the cooktop, and what one pan more takes from the oven at most [K]; empty for nothing."""
    many = f"{others} other pots take" if others > 1 else "other pot takes"
    beside = f"Your {many} heat too." if others else ""
    taken = "" if cost < _HARDLY else f"This pan takes up to {edge.spread(cost)} from the oven."
    return " ".join(words for words in (beside, taken) if words)


def runs_words(runs: int) -> str:
    """How much this stove has shown of the pan's contact."""
    if runs == 0:
        return (
            "How well this pan takes heat from your cooktop is the usual guess. Note a pan with its water on the Cook "
            "page (“2 quarts”), and later “boils”, and the window gets narrower."
        )
    noted = "1 pan of water" if runs == 1 else f"{runs} pans of water"
    return f"{noted} so far: what those before said of each, and what came"


def run_words(day: date, said: Quantiles, came: float) -> str:
    """One pan of the log, read out."""
    return f"{short_date(day)}: {minutes_range(said) or 'nothing'} min said, {came:.0f} came"


def minutes_said(minutes: Quantiles) -> str:
    """How long one pan takes, read out: `9 min, 7 to 12`."""
    if minutes.p50 is None:
        return "not likely within three hours"
    return f"{' '.join(minutes_words(minutes.p50)).strip()}, {minutes_range(minutes)}"


def minutes_range(minutes: Quantiles) -> str:
    """`7 to 12`; without an end, `from 7`."""
    if minutes.p10 is None:
        return ""
    return f"from {minutes.p10:.0f}" if minutes.p90 is None else f"{minutes.p10:.0f} to {minutes.p90:.0f}"


def goal_word(goal: Goal) -> str:
    """What stands on the line that the water has to reach."""
    return _REACHED[goal]
