"""Lengths of time in a recipe: `25–30 min`, `an hour and a half`, `1 hr 15`, `20 minutes per pound`."""

import re

from cookstove_gui.cooking.supper.recipe.finds import MinutesFound, Place
from cookstove_gui.cooking.supper.recipe.numbers import ANY, PLAIN, TO, number

LONGEST = 7 * 24 * 60.0  # min; what a recipe says beyond a week is no step of a supper

_MINUTES_OF = {"h": 60.0, "m": 1.0, "s": 1.0 / 60.0, "d": 1440.0}
_PARTS = {"half": 0.5, "quarter": 0.25, "three quarters": 0.75, "three-quarters": 0.75}


def _length(which: int) -> str:
    """One length, its groups numbered: `1½ hours`, `an hour and a half`, `1 hour and 10 minutes`, `1 hr 15`."""
    return (
        rf"(?P<n{which}>{ANY})\s*-?\s*"
        rf"(?P<u{which}>(?P<h{which}>hours?|hrs?|h)|minutes?|mins?|seconds?|secs?|days?)\b\.?"
        rf"(?:\s+and\s+(?:a\s+)?(?P<p{which}>half|quarter|three[ -]quarters)\b(?!\s+(?:an|of)\b))?"
        # Minutes go on from hours only: “10 min and 20 min” are two lengths.
        rf"(?(h{which})(?:\s*,?\s*(?:and\s+)?(?P<m{which}>{PLAIN})\s*-?(?:minutes?|mins?|m)\b\.?"
        rf"|\s+(?P<bare{which}>\d{{1,2}})(?![\d°/.]|\s*[-–°]))?)"
    )


_LENGTH = re.compile(rf"(?:(?P<low>{ANY})(?P<to>{TO}))?{_length(1)}(?:{TO}{_length(2)})?", re.IGNORECASE)
_EACH = re.compile(
    r"\s*(?:,\s*)?(?:more\s+)?(?:(?:per|to the|for each|for every|on each|on every|each|every|a|on a|the)\s+"
    r"(?:pound|lb|kilo|kg|kilogram|side|batch|inch|500\s?g)\b|on both sides)",
    re.IGNORECASE,
)


_MORE_OR_LESS = re.compile(r"\bgive or take\s+(?:about\s+)?$", re.IGNORECASE)
_WITHOUT_UNIT = re.compile(rf"\bfor\s+(?P<n>{PLAIN})(?=\s*(?:[.,;]|$))", re.IGNORECASE)


def find_minutes(text: str, offset: int = 0) -> tuple[MinutesFound, ...]:
    """Every length of time in a text, `offset` letters into the recipe."""
    found = []
    for match in _LENGTH.finditer(text):
        if _MORE_OR_LESS.search(text[: match.start()]):
            continue
        longest = _one(match, "1")
        shortest = longest
        if match["low"]:
            shortest = number(match["low"]) * _MINUTES_OF[match["u1"][0].casefold()]
            if match["to"].strip().casefold() == "or" and shortest > longest:
                continue
        if match["n2"]:
            shortest, longest = longest, _one(match, "2")
        if not 0 < shortest <= LONGEST or not 0 < longest <= LONGEST:
            continue
        each = _EACH.match(text, match.end())
        end = each.end() if each else match.end()
        found.append(
            MinutesFound(
                place=Place(offset + match.start(), offset + end),
                shortest=min(shortest, longest),
                longest=max(shortest, longest),
                each=each[0].strip(" ,") if each else "",
            )
        )
    for match in _WITHOUT_UNIT.finditer(text) if found else ():  # “… for five minutes, then in a cooler one for forty”
        if offset + match.start() > found[-1].place.end:
            place, minutes = Place(offset + match.start("n"), offset + match.end()), number(match["n"])
            found.append(MinutesFound(place=place, shortest=minutes, longest=minutes))
    return tuple(found)


def _one(match: re.Match[str], which: str) -> float:
    unit = _MINUTES_OF[match[f"u{which}"][0].casefold()]
    minutes = number(match[f"n{which}"]) * unit
    if match[f"p{which}"]:
        minutes += _PARTS[match[f"p{which}"].casefold()] * unit
    rest = match[f"m{which}"] or match[f"bare{which}"]
    return minutes + (number(rest) if rest else 0.0)
