"""Files are written whole or not at all: beside their place first, on the disk, then moved there."""

import os
import tempfile
from pathlib import Path

from cookstove_gui.errors import SurroundingsProblem

_READABLE = 0o644  # what is exported is meant for others


def write_whole(path: Path, content: bytes) -> None:
    """Write a file; nothing half-written stays behind. Raises SurroundingsProblem where the disk refuses.

    The side file has a name that nobody can foresee, so that no link laid in its place leads the content elsewhere.
    """
    try:
        handle, name = tempfile.mkstemp(prefix=".", suffix=".part", dir=path.parent)
        side = Path(name)
        try:
            with os.fdopen(handle, "wb") as stream:
                stream.write(content)
                stream.flush()
                os.fsync(stream.fileno())
            side.chmod(path.stat().st_mode & 0o777 if path.exists() else _READABLE)
            os.replace(side, path)
        finally:
            side.unlink(missing_ok=True)
    except OSError as error:
        raise SurroundingsProblem(f"{path} cannot be written ({error.strerror}); choose another place.") from error
