"""Heats in a recipe: degrees, gas marks and names; of the oven, of the food's inside, or of something else."""

import re
from dataclasses import dataclass, replace
from typing import Literal

from cookstove_gui.cooking.fit.bands import DEFAULT_TABLE, OVEN_HIGHEST
from cookstove_gui.cooking.supper.recipe.finds import HeatFound, HeatOf, Place
from cookstove_gui.cooking.supper.recipe.numbers import TO
from cookstove_gui.cooking.supper.recipe.oven_names import oven_named
from cookstove_gui.units import kelvin

# A gas mark: 25 °F a mark above 250 °F from 1 up, ½ is 250 and ¼ is 225.
_MARK_ZERO, _MARK_STEP = 250.0, 25.0
_SMALL_MARKS = {"½": 250.0, "1/2": 250.0, "¼": 225.0, "1/4": 225.0}
_HOTTEST_CORE = kelvin(212.0, "F")  # food that holds water gets no hotter inside
_COOLEST_OVEN = kelvin(150.0, "F")  # below it is proofing or keeping warm unless “oven” stands beside it; no source

_SIGN = r"(?:°|º|˚|\bdegrees?\b|\bdegs?\b\.?)"
_LETTER = r"(?:fahrenheit|celsius|centigrade|[FC](?![a-z']))"
_DEGREES = re.compile(
    rf"(?<![\d.,])(?<!\d/)(?P<low>\d{{2,3}})(?:\s*{_SIGN})?(?:\s*(?P<low_unit>{_LETTER}))?(?:{TO}(?P<high>\d{{2,3}}))?\s*"
    rf"(?:(?P<sign>{_SIGN})\s*(?P<unit>{_LETTER})?|(?P<only>{_LETTER}))(?:\s*\(?(?P<fan>fan)\b\)?)?",
    re.IGNORECASE,
)
_BARE = re.compile(
    rf"(?:(?:\bat|@|\bto)\s+(?:about\s+)?)(?P<low>\d{{3}})(?:{TO}(?P<high>\d{{3}}))?"
    rf"(?!\d|[.,]\d|\s*(?:{_SIGN}|[FC]\b|g\b|gm|grams?|ml|kg|oz|cups?|minutes?|mins?|hours?|calories|people|-inch))",
    re.IGNORECASE,
)
_FAN_ONLY = re.compile(r"\bfan\s+(?:oven\s+)?(?:at\s+)?(?P<low>\d{3})\b", re.IGNORECASE)
_MARK = re.compile(r"\bgas\s*(?:mark|no\.?|regulo)?\s*(?P<mark>\d(?!\d|/)|½|¼|1/[24])", re.IGNORECASE)

_DEGREE_WORDS = r"(?:(?:very|moderately|extremely|fairly|rather|medium)[\s-]+)?"
_NAME_WORDS = r"(?:slow|moderate|medium|hot|quick|fast|cool|brisk|gentle|low|high|warm|steady|sharp|good)"
_NAMED = re.compile(
    rf"\b(?P<name>{_DEGREE_WORDS}{_NAME_WORDS})(?:,?\s+(?:or|to)\s+{_DEGREE_WORDS}{_NAME_WORDS})?\s+oven\b"
    rf"|\boven\s+(?:should\s+be\s+|must\s+be\s+|is\s+|be\s+)(?P<name_after>{_DEGREE_WORDS}(?:slow|moderate|hot|quick|brisk))\b"
    rf"|\b(?P<name_one>{_DEGREE_WORDS}(?:slow|moderate|hot|quick|cool))\s+one\b"
    rf"|\b(?:reduce|lower|slacken|turn)[^.;]{{0,25}}?\bto\s+(?:a\s+)?(?P<name_to>{_DEGREE_WORDS}(?:slow|moderate|medium|hot))\b(?:\s+oven\b)?",
    re.IGNORECASE,
)

_CUES = (
    (
        HeatOf.OVEN,
        r"\boven\b(?!proof)|\bbak(?:e|ed|es|ing)\b|\broast(?:ed|ing)?\b(?=[^.;]{0,25}\b(?:at|in)\b)|\brack\b",
    ),
    (
        HeatOf.CORE,
        r"\binternal|\bthermometer|\binside\b|\bcent(?:er|re)\b|\bcore\b|\bthickest|\bprobe\b|\breads\b|\bregisters\b",
    ),
    (
        HeatOf.OTHER,
        r"\bwater\b|\bmilk\b|\boil\b|\bfat\b|\blard\b|\bsyrup\b|\bsugar\b|\bliquid|\blukewarm\b|\broom\b|\byeast\b"
        r"|\bplace\b|\bris(?:e|ing)\b|\bproof|\bprov(?:e|ing)\b|\bfry|\bkitchen\b|\bwarm the\b|\bscald",
    ),
)
_CUE = [(of, re.compile(pattern, re.IGNORECASE)) for of, pattern in _CUES]
_AS_CHANGE = re.compile(r"\bby\s*(?:about\s*)?$", re.IGNORECASE)  # “lower by 50°” is no heat
_SAME_AGAIN = re.compile(r"\s*(?:[(/,=]|or|about|which is|equals)*\s*[(]?\s*", re.IGNORECASE)


@dataclass(frozen=True, slots=True)
class _Raw:
    start: int
    end: int
    low: float | None
    high: float | None
    unit: Literal["F", "C", ""]
    name: str = ""
    source: str = ""
    is_oven: bool = False
    is_equivalent: bool = False  # a fan oven's heat or a gas mark, which after another heat says the same again


def find_heats(text: str, offset: int = 0, table_key: str = DEFAULT_TABLE) -> tuple[HeatFound, ...]:
    """Every heat in a sentence, `offset` letters into the recipe; one said in several units is found once."""
    raw = sorted((*_degrees(text), *_bare(text), *_marks(text), *_named(text, table_key)), key=lambda one: one.start)
    found: list[HeatFound] = []
    end = -1
    for one in raw:
        again = bool(found) and _SAME_AGAIN.fullmatch(text[end : one.start]) is not None and end <= one.start
        if one.start < end:
            continue
        if again and (found[-1].name or one.unit != found[-1].unit or one.is_equivalent):
            found[-1] = _joined(found[-1], one, offset)
        else:
            found.append(
                HeatFound(
                    place=Place(offset + one.start, offset + one.end),
                    of=HeatOf.OVEN if one.is_oven else _of(text, one),
                    low=one.low,
                    high=one.high,
                    name=one.name,
                    source=one.source,
                    unit=one.unit,
                )
            )
        end = one.end
    return tuple(found)


def gas_mark(mark: str) -> float:
    """Oven heat [K] of a gas mark, `¼` to `9`; reference rows gas-mark-*."""
    return kelvin(_SMALL_MARKS.get(mark) or _MARK_ZERO + _MARK_STEP * float(mark), "F")


def _joined(first: HeatFound, second: _Raw, offset: int) -> HeatFound:
    """A heat said twice: degrees count before a name, what comes first before its equivalents."""
    place = Place(first.place.start, offset + second.end)
    if first.name and second.low is not None and not second.name:
        return replace(first, place=place, low=second.low, high=second.high, name="", source="", unit=second.unit)
    return replace(first, place=place)


def _degrees(text: str) -> list[_Raw]:
    found = []
    for match in _DEGREES.finditer(text):
        if _AS_CHANGE.search(text[: match.start()]):
            continue
        unit = _unit(match["unit"] or match["only"] or match["low_unit"])
        low, high = float(match["low"]), float(match["high"] or match["low"])
        if low > high or (not match["sign"] and match["only"] is None):
            continue
        found.append(_raw(match, low, high, unit, is_equivalent=match["fan"] is not None))
    return found


def _bare(text: str) -> list[_Raw]:
    found = []
    for match in _BARE.finditer(text):
        low, high = float(match["low"]), float(match["high"] or match["low"])
        if 200 <= low <= high <= 600:
            at = match.start("low")
            found.append(_Raw(at, match.end(), kelvin(low, "F"), kelvin(high, "F"), "", is_oven=_of_oven(text)))
    for match in _FAN_ONLY.finditer(text):
        low = kelvin(float(match["low"]), "C")
        found.append(_Raw(match.start(), match.end(), low, low, "C", is_oven=True, is_equivalent=True))
    return found


def _of_oven(text: str) -> bool:
    """Whether a bare number is likely of the oven: nothing else with a heat is named."""
    return not any(pattern.search(text) for of, pattern in _CUE if of is not HeatOf.OVEN)


def _marks(text: str) -> list[_Raw]:
    found = []
    for match in _MARK.finditer(text):
        low = gas_mark(match["mark"])
        found.append(_Raw(match.start(), match.end(), low, low, "", is_oven=True, is_equivalent=True))
    return found


def _named(text: str, table_key: str) -> list[_Raw]:
    found = []
    for match in _NAMED.finditer(text):
        group = next(key for key, value in match.groupdict().items() if value)
        if group == "name_one" and "oven" not in text[: match.start()].casefold():
            continue
        name = " ".join(match[group].casefold().replace("-", " ").split())
        band = oven_named(name, table_key)
        found.append(
            _Raw(
                match.start(group) if group == "name_to" else match.start(),
                match.end(),
                band[0].low if band else None,
                band[0].high if band else None,
                "",
                name=name,
                source=band[1] if band else "",
                is_oven=True,
            )
        )
    return found


def _raw(match: re.Match[str], low: float, high: float, unit: Literal["F", "C", ""], *, is_equivalent: bool) -> _Raw:
    shown: Literal["F", "C"] = "C" if unit == "C" else "F"
    return _Raw(match.start(), match.end(), kelvin(low, shown), kelvin(high, shown), unit, is_equivalent=is_equivalent)


def _unit(written: str | None) -> Literal["F", "C", ""]:
    if not written:
        return ""
    return "F" if written[0].upper() == "F" else "C"


def _of(text: str, one: _Raw) -> HeatOf:
    """What a heat is of: the nearest word that tells, unless the number cannot be."""
    nearest, best = HeatOf.OVEN, 10_000.0
    for of, pattern in _CUE:
        for match in pattern.finditer(text):
            before = match.end() <= one.start
            apart = one.start - match.end() if before else 1.5 * (match.start() - one.end) + 5
            between = text[match.end() : one.start] if before else text[one.end : match.start()]
            apart += 40 * len(re.findall(r"[;:]|\bthen\b|,\s", between))
            if _possible(of, one) and apart < best:
                nearest, best = of, apart
    if nearest is HeatOf.OVEN and best > 20 and one.high is not None and one.high < _COOLEST_OVEN:
        return HeatOf.OTHER
    return nearest


def _possible(of: HeatOf, one: _Raw) -> bool:
    if one.low is None or one.high is None:
        return True
    if of is HeatOf.CORE:
        return one.high <= _HOTTEST_CORE
    return of is HeatOf.OTHER or one.high <= OVEN_HIGHEST
