"""Recipes of a file in the schema.org/Recipe vocabulary, written as JSON-LD (schema.org; ISO 8601-1 for durations)."""

import json
import re
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from cookstove_gui.errors import InputProblem

LARGEST_FILE = 5_000_000  # bytes; one recipe takes about 10 000, with its page around it a few hundred thousand
DEEPEST = 40  # objects and lists within each other
MOST_STEPS = 300
_LONGEST_WORDS = 20_000  # letters of one step
_TAG = re.compile(r"<[^<>]{1,500}>")
_SCRIPT = re.compile(r"<script[^>]{0,300}application/ld\+json[^>]{0,300}>(.*?)</script\s*>", re.IGNORECASE | re.DOTALL)
_DURATION = re.compile(
    r"P(?:(?P<d>\d+(?:[.,]\d+)?)D)?(?:T(?:(?P<h>\d+(?:[.,]\d+)?)H)?(?:(?P<m>\d+(?:[.,]\d+)?)M)?"
    r"(?:(?P<s>\d+(?:[.,]\d+)?)S)?)?",
    re.IGNORECASE,
)
_WEEKS = re.compile(r"P(?P<w>\d+)W", re.IGNORECASE)


@dataclass(frozen=True, slots=True, kw_only=True)
class RecipeFile:
    """One recipe of a file."""

    name: str
    makes: str
    steps: tuple[str, ...]  # each as the file words it, in order
    hands_min: float | None = None  # prepTime
    heat_min: float | None = None  # cookTime
    total_min: float | None = None  # totalTime

    @property
    def text(self) -> str:
        """The steps as one text, a line each."""
        return "\n".join(self.steps)


def read_recipe_file(path: Path) -> tuple[RecipeFile, ...]:
    """Every recipe of a file: JSON-LD alone, or a saved page with JSON-LD in it.

    Raises InputProblem where the file cannot be read, is too large or too deep, or holds no recipe.
    """
    try:
        with path.open("rb") as stream:
            content = stream.read(LARGEST_FILE + 1)
    except OSError as error:
        reason = "there is no such file" if isinstance(error, FileNotFoundError) else error.strerror
        raise InputProblem(f"{path} cannot be read: {reason}.") from error
    if len(content) > LARGEST_FILE:
        raise InputProblem(f"{path} is larger than {LARGEST_FILE // 1_000_000} MB; a recipe is far smaller.")
    try:
        return read_recipes(content.decode("utf-8-sig"), str(path))
    except UnicodeDecodeError:
        raise InputProblem(f"{path} is not UTF-8 text; save it as UTF-8 and open it again.") from None


def read_recipes(text: str, where: str) -> tuple[RecipeFile, ...]:
    """Every recipe in the text of such a file; `where` names it in a sentence."""
    scripts = [match[1] for match in _SCRIPT.finditer(text)] if text.lstrip().startswith("<") else [text]
    found = []
    for script in scripts:
        document = _parsed(script, where, many=len(scripts) > 1)
        found += [_recipe(one, where) for one in _recipes(document, where)]
    if not found:
        raise InputProblem(f"{where} holds no schema.org/Recipe; open another file, or paste the recipe's text.")
    return tuple(found)


def minutes_of(duration: str) -> float | None:
    """Minutes of an ISO 8601 duration, such as `PT1H30M`; none for a text that is none, and for no time at all."""
    weeks = _WEEKS.fullmatch(duration.strip())
    if weeks:
        return float(weeks["w"]) * 7 * 1440.0
    match = _DURATION.fullmatch(duration.strip())
    if match is None or not any(match.groups()):
        return None
    days, hours, minutes, seconds = (float((match[key] or "0").replace(",", ".")) for key in "dhms")
    return days * 1440.0 + hours * 60.0 + minutes + seconds / 60.0 or None


def _parsed(script: str, where: str, *, many: bool) -> Any:
    if _depth(script) > DEEPEST:
        raise InputProblem(f"{where} has more than {DEEPEST} layers within each other; it is no recipe file.")
    try:
        return json.loads(script)
    except (ValueError, RecursionError) as error:
        if many:  # of several scripts on a page one may be broken
            return None
        raise InputProblem(f"{where} is not JSON ({error}); export the recipe again.") from None


def _depth(script: str) -> int:
    """How deep brackets nest, outside of strings."""
    deepest = depth = 0
    for part in re.finditer(r'"(?:[^"\\]|\\.)*"|[\[{]|[\]}]', script):
        if part[0] in "[{":
            depth += 1
            deepest = max(deepest, depth)
        elif part[0] in "]}":
            depth -= 1
    return deepest


def _recipes(document: Any, where: str) -> list[dict[str, Any]]:
    """The objects of the type Recipe, wherever they stand."""
    if isinstance(document, list):
        return [one for part in document for one in _recipes(part, where)]
    if not isinstance(document, dict):
        return []
    if _is_a(document, "Recipe"):
        return [document]
    return [
        one for key in ("@graph", "mainEntity", "itemListElement", "item") for one in _recipes(document.get(key), where)
    ]


def _is_a(row: dict[str, Any], name: str) -> bool:
    kinds = row.get("@type", row.get("type", ""))
    return any(
        isinstance(kind, str) and kind.rsplit("/", 1)[-1].rsplit(":", 1)[-1] == name
        for kind in (kinds if isinstance(kinds, list) else [kinds])
    )


def _recipe(row: dict[str, Any], where: str) -> RecipeFile:
    name = _words(row.get("name")) or "Recipe"
    steps = tuple(_steps(row.get("recipeInstructions", row.get("step"))))
    if not steps:
        raise InputProblem(f"{where}: “{name}” has no recipeInstructions; paste the recipe's text instead.")
    if len(steps) > MOST_STEPS:
        raise InputProblem(f"{where}: “{name}” has more than {MOST_STEPS} steps; it is no recipe for one dish.")
    return RecipeFile(
        name=name,
        makes=_words(row.get("recipeYield")),
        steps=steps,
        hands_min=minutes_of(_words(row.get("prepTime"))),
        heat_min=minutes_of(_words(row.get("cookTime"))),
        total_min=minutes_of(_words(row.get("totalTime"))),
    )


def _steps(found: Any) -> list[str]:
    """The words of the steps: one text, a list of texts, or of HowToStep and HowToSection."""
    if isinstance(found, str):
        return [one for line in re.split(r"<br\s*/?>|</p>|</li>|\n", found) if (one := _plain(line))]
    if isinstance(found, list):
        return [step for one in found for step in _steps(one)]
    if isinstance(found, dict):
        inside = found.get("itemListElement", found.get("steps"))
        if inside is not None:
            return _steps(inside)
        return _steps(found.get("text") or found.get("description") or found.get("name") or found.get("item"))
    return []


def _words(found: Any) -> str:
    if isinstance(found, list):
        return next((words for one in found if (words := _words(one))), "")
    if isinstance(found, dict):
        return _words(found.get("@value", found.get("value")))
    if isinstance(found, int | float) and not isinstance(found, bool):
        return f"{found:g}"
    return _plain(found) if isinstance(found, str) else ""


def _plain(text: str) -> str:
    """Words without tags, entities and odd spaces."""
    import html

    return " ".join(html.unescape(_TAG.sub(" ", text[:_LONGEST_WORDS])).split())
