"""Where the files beside the program lie: in a wheel inside the package, in a checkout beside it."""

import tomllib
from functools import cache
from pathlib import Path
from typing import Any

from cookstove_gui.errors import SurroundingsProblem

_PACKAGE = Path(__file__).resolve().parent


@cache
def folder(name: str) -> Path:
    """The folder `resources` or `sample_sessions`."""
    for place in (_PACKAGE / name, _PACKAGE.parent / name):
        if place.is_dir():
            return place
    raise SurroundingsProblem(
        f"The program's own folder “{name}” is missing beside {_PACKAGE}; install the program again."
    )


def resource(*parts: str) -> Path:
    """Path of one file in `resources`."""
    path = folder("resources").joinpath(*parts)
    if not path.exists():
        raise SurroundingsProblem(f"The program's own file {path} is missing; install the program again.")
    return path


@cache
def table(name: str) -> dict[str, Any]:
    """One TOML table in `resources`, such as `tasks.toml`; do not change what is returned."""
    with resource(name).open("rb") as stream:
        return tomllib.load(stream)
