"""A sentence of the screen as a voice reads it well: signs, units and fractions as words.

What engines make of them otherwise was heard: “425–475” as one number after the other, “lb” and “h” as letters, “/” as
“slash”.
"""

import re

_FRACTIONS = {"½": "half", "¼": "quarter", "¾": "three quarters", "⅓": "third", "⅔": "two thirds"}
_UNITS = {
    "lb": ("pound", "pounds"),
    "oz": ("ounce", "ounces"),
    "kg": ("kilogram", "kilograms"),
    "g": ("gram", "grams"),
    "h": ("hour", "hours"),
    "min": ("minute", "minutes"),
}
_FRACTION = f"[{''.join(_FRACTIONS)}]"
_NUMBER = r"\d+(?:[.,]\d+)?"


def spoken(sentence: str) -> str:
    """The same sentence in words that need no reading of signs."""
    said = re.sub(r"\b1/([24])\b", lambda found: {"2": "½", "4": "¼"}[found[1]], sentence)
    said = re.sub(rf"({_NUMBER})\s*[-–—]\s*(?={_NUMBER})", r"\1 to ", said)
    said = re.sub(rf"({_NUMBER}\s*{_FRACTION}?|{_FRACTION}) ?({'|'.join(_UNITS)})\b", _unit, said)
    said = re.sub(r"\s*°\s*[FC]?\b", " degrees", said)
    said = re.sub(r"(?<=\d)\s*%", " percent", said)
    said = re.sub(rf"(?<=\d)\s*({_FRACTION})", lambda found: f" and {_with_article(found[1])}", said)
    said = re.sub(_FRACTION, lambda found: _FRACTIONS[found[0]], said)
    said = re.sub(r"\s*/\s*", " or ", said)
    return re.sub(r"\s*&\s*", " and ", said)


def _unit(found: re.Match[str]) -> str:
    count = found[1].rstrip()
    one, more = _UNITS[found[2]]
    return f"{count} {one if count in ('1', *_FRACTIONS) else more}"


def _with_article(sign: str) -> str:
    words = _FRACTIONS[sign]
    return words if " " in words else f"a {words}"
