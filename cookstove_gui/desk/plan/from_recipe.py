"""A dish from a recipe: the text is read, the cook confirms, and only what was confirmed is kept."""

from collections.abc import Sequence
from dataclasses import dataclass
from pathlib import Path

from cookstove_gui.cooking.fit.bands import DEFAULT_TABLE, band_from_text
from cookstove_gui.cooking.supper.dishes import Dish
from cookstove_gui.cooking.supper.recipe.acts import ActKind
from cookstove_gui.cooking.supper.recipe.confirmed import Confirmed, dish_of, offered_band, offered_minutes
from cookstove_gui.cooking.supper.recipe.draft import DraftPart, draft_of, title_of
from cookstove_gui.cooking.supper.recipe.json_ld import RecipeFile, read_recipe_file
from cookstove_gui.cooking.supper.recipe.minutes import LONGEST, find_minutes
from cookstove_gui.cooking.supper.recipe.sentences import LONGEST_TEXT, read_sentences
from cookstove_gui.desk.desk import Desk
from cookstove_gui.errors import InputProblem
from cookstove_gui.logbook.log_text import decoded
from cookstove_gui.phrases.plan.from_recipe import part_note, part_words
from cookstove_gui.units import degrees, tidy

_WHOLE_FROM = 5.0  # min; longer times are offered in whole minutes
_IN_FILES = (".json", ".jsonld", ".html", ".htm")


@dataclass(frozen=True, slots=True, kw_only=True)
class RecipeLine:
    """One part as it stands in the form before the cook looks at it."""

    part: DraftPart
    words: str
    note: str
    minutes: str
    heat: str  # of the oven, in the unit on the screen; empty for the others


@dataclass(frozen=True, slots=True, kw_only=True)
class Ticked:
    """A line that the cook confirmed, with what stands in its fields."""

    part: DraftPart
    minutes: str
    heat: str


def recipe_lines(desk: Desk, text: str) -> tuple[RecipeLine, ...]:
    """What a recipe seems to ask for. Raises InputProblem where nothing is found."""
    parts = draft_of(read_sentences(text, desk.setting("band_table", DEFAULT_TABLE)))
    if not parts:
        raise InputProblem(
            "No step is found in this text; paste the part that says what to do, or make the dish by hand."
        )
    return tuple(_line(desk, part) for part in parts)


def recipe_title(text: str) -> str:
    """What the dish is called, as far as the text's first line says so; empty else."""
    return title_of(text, read_sentences(text)) if text.strip() else ""


def recipes_in(path: Path) -> tuple[RecipeFile, ...]:
    """The recipes of a file: schema.org/Recipe, or any other text as one recipe."""
    if path.suffix.lower() in _IN_FILES:
        return read_recipe_file(path)
    try:
        with path.open("rb") as stream:
            content = stream.read(4 * LONGEST_TEXT + 1)
    except OSError as error:
        reason = "there is no such file" if isinstance(error, FileNotFoundError) else error.strerror
        raise InputProblem(f"{path} cannot be read: {reason}.") from error
    text = decoded(content, str(path))
    return (RecipeFile(name=path.stem.replace("_", " "), makes="", steps=tuple(text.splitlines())),)


def dish_confirmed(desk: Desk, name: str, ticked: Sequence[Ticked]) -> Dish:
    """Keep the dish made of the confirmed lines as the cook's own, and return it.

    Raises InputProblem for a field that cannot be understood, or that is empty where something is needed.
    """
    parts = [_confirmed(desk, one) for one in ticked]
    dish = dish_of(name, parts, [one.key for one in desk.supper.dishes])
    desk.supper.keep_dish(dish)
    return dish


def _line(desk: Desk, part: DraftPart) -> RecipeLine:
    minutes, band = offered_minutes(part), offered_band(part)
    unit = desk.unit
    ends = "" if band is None else f"{degrees(band.low, unit):.0f}-{degrees(band.high, unit):.0f}"
    return RecipeLine(
        part=part,
        words=part_words(part),
        note=part_note(part, unit),
        minutes="" if minutes is None else tidy(minutes, 0 if minutes >= _WHOLE_FROM else 1),
        heat=ends,
    )


def _confirmed(desk: Desk, one: Ticked) -> Confirmed:
    band = None
    if one.part.kind is ActKind.OVEN and one.heat.strip():
        band = band_from_text(one.heat, desk.unit, desk.setting("band_table", DEFAULT_TABLE))
    return Confirmed(draft=one.part, minutes=_minutes(one), band=band)


def _minutes(one: Ticked) -> float | None:
    """Minutes of a field: `45`, or a length such as `1 h 15`."""
    text = one.minutes.strip()
    if not text:
        return None
    found = find_minutes(text if any(letter.isalpha() for letter in text) else f"{text} min")
    if len(found) != 1 or found[0].shortest != found[0].longest or found[0].longest > LONGEST:
        raise InputProblem(f"“{text}” is not how long “{one.part.act}” takes; type minutes, such as 45, or 1 h 15.")
    return found[0].longest
