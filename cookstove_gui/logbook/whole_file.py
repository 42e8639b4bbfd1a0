"""Files are written whole or not at all: beside their place first, then moved there."""

import os
from pathlib import Path

from cookstove_gui.errors import SurroundingsProblem


def write_whole(path: Path, content: bytes) -> None:
    """Write a file; nothing half-written stays behind. Raises SurroundingsProblem where the disk refuses."""
    side = path.with_name(path.name + ".part")
    try:
        try:
            side.write_bytes(content)
            os.replace(side, path)
        finally:
            side.unlink(missing_ok=True)
    except OSError as error:
        raise SurroundingsProblem(f"{path} cannot be written ({error.strerror}); choose another place.") from error
