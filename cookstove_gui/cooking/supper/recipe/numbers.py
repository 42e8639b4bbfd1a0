"""Numbers as recipes write them: `1 1/2`, `2½`, `twenty-five`, `half a`, `a couple of`."""

import re
from fractions import Fraction

_FRACTIONS = {
    "¼": Fraction(1, 4), "½": Fraction(1, 2), "¾": Fraction(3, 4), "⅓": Fraction(1, 3), "⅔": Fraction(2, 3),
    "⅛": Fraction(1, 8),
}  # fmt: skip
_ONES = {
    "one": 1, "two": 2, "three": 3, "four": 4, "five": 5, "six": 6, "seven": 7, "eight": 8, "nine": 9, "ten": 10,
    "eleven": 11, "twelve": 12, "thirteen": 13, "fourteen": 14, "fifteen": 15, "sixteen": 16, "seventeen": 17,
    "eighteen": 18, "nineteen": 19,
}  # fmt: skip
_TENS = {"twenty": 20, "thirty": 30, "forty": 40, "fifty": 50, "sixty": 60, "seventy": 70, "eighty": 80, "ninety": 90}
_PARTS = {
    "three quarters of": 0.75, "three-quarters of": 0.75, "a quarter of": 0.25, "one quarter of": 0.25,
    "a quarter": 0.25, "quarter": 0.25, "half of": 0.5, "half": 0.5, "one half": 0.5, "a half": 0.5,
    "a couple of": 2.0, "a few": 3.0,
}  # fmt: skip

_DIGITS = r"\d+[\s-]+\d/\d\b|\d+\s?[¼½¾⅓⅔⅛]|\d/\d\b|\d+(?:[.,]\d+)?|[¼½¾⅓⅔⅛]"
_TENS_WORD = "|".join(_TENS)
_ONES_WORD = "|".join(sorted(_ONES, key=len, reverse=True))
_WORDS = rf"(?:{_TENS_WORD})(?:[\s-](?:{_ONES_WORD}))?|{_ONES_WORD}"
_PART = "|".join(sorted(map(re.escape, _PARTS), key=len, reverse=True))

PLAIN = rf"(?:{_DIGITS}|\b(?:{_WORDS})\b)"  # a number that counts
ANY = rf"(?:{_DIGITS}|\b(?:{_PART})(?:\s+an?)?\b|\b(?:{_WORDS})\b|\ban?\b)"  # also a part of one: “half an”
TO = r"\s*(?:-|–|—|\bto\b|\bor\b)\s*"  # between the ends of a range


def number(text: str) -> float:
    """The number that a text matched by `ANY` or `PLAIN` stands for."""
    text = re.sub(r"\s+", " ", text.strip().casefold())
    if text in ("a", "an"):
        return 1.0
    part = text.removesuffix(" an").removesuffix(" a")
    if part in _PARTS:
        return _PARTS[part]
    if text[0].isdigit() or text[0] in _FRACTIONS:
        return float(_digits(text))
    return float(sum(_TENS.get(word) or _ONES[word] for word in re.split(r"[ -]", text)))


def _digits(text: str) -> Fraction:
    whole = re.fullmatch(r"(\d+)[ -]*([¼½¾⅓⅔⅛])", text)
    if whole:
        return int(whole[1]) + _FRACTIONS[whole[2]]
    if text in _FRACTIONS:
        return _FRACTIONS[text]
    mixed = re.fullmatch(r"(?:(\d+)[ -]+)?(\d)/(\d)", text)
    if mixed:
        below = int(mixed[3]) or 1
        return int(mixed[1] or 0) + Fraction(int(mixed[2]), below)
    return Fraction(text.replace(",", "."))
