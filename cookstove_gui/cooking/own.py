"""What is wrong with the tables of tasks, foods and words that a cook added or changed."""

from typing import Any

from cookstove_gui.cooking.baking.catalogue import bakes, foods
from cookstove_gui.cooking.fit.tasks import catalogue
from cookstove_gui.resource_files import own_problems, own_table, own_words


def own_sentences() -> tuple[str, ...]:
    """A sentence a file, of the first that is wrong in it; reads them all."""
    foods(), catalogue(), bakes()
    _read_words(own_table("phrases.toml"), ())
    return own_problems()


def _read_words(found: Any, path: tuple[str, ...]) -> None:
    if not isinstance(found, dict):
        own_words(*path)
        return
    for name, inside in found.items():
        _read_words(inside, (*path, name))
