"""A recipe's text cut into sentences, and what each says."""

import re

from cookstove_gui.cooking.fit.bands import DEFAULT_TABLE
from cookstove_gui.cooking.supper.recipe.acts import find_acts
from cookstove_gui.cooking.supper.recipe.finds import Place, SentenceFound
from cookstove_gui.cooking.supper.recipe.heats import find_heats
from cookstove_gui.cooking.supper.recipe.minutes import find_minutes
from cookstove_gui.cooking.supper.recipe.vessels import find_vessels
from cookstove_gui.errors import InputProblem

LONGEST_TEXT = 50_000  # letters; a long recipe has about 5 000
# An end: . ! ? before a capital letter or a digit, unless an abbreviation stands before it; or a new line.
_END = re.compile(
    r"(?<!\bmin)(?<!\bmins)(?<!\bhr)(?<!\bhrs)(?<!\bsec)(?<!\bdeg)(?<!\babout)[.!?][)”\"]?\s+(?=[A-Z0-9“(])|\n+"
)


def read_sentences(text: str, table_key: str = DEFAULT_TABLE) -> tuple[SentenceFound, ...]:
    """What every sentence of a recipe says, each find with its place in `text`.

    Raises InputProblem for no text and for far too much.
    """
    if not text.strip():
        raise InputProblem("There is no text; paste the recipe here.")
    if len(text) > LONGEST_TEXT:
        raise InputProblem(
            f"This text is longer than {LONGEST_TEXT} letters; a recipe is far shorter, so paste only its own part."
        )
    return tuple(_read(text, place, table_key) for place in _places(text))


def _places(text: str) -> list[Place]:
    places, start = [], 0
    for match in _END.finditer(text):
        places.append(Place(start, match.start() + len(match[0].rstrip())))
        start = match.end()
    places.append(Place(start, len(text.rstrip())))
    return [one for one in places if text[one.start : one.end].strip()]


def _read(text: str, place: Place, table_key: str) -> SentenceFound:
    words = text[place.start : place.end]
    heats = find_heats(words, place.start, table_key)
    return SentenceFound(
        place=place,
        heats=heats,
        minutes=find_minutes(words, place.start),
        vessels=find_vessels(words, place.start),
        acts=find_acts(words, place.start),
    )
