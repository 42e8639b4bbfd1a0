"""Photos of a session: files in a folder of its own beside the logbook, copied there, never changed."""

import shutil
from pathlib import Path

from cookstove_gui.errors import InputProblem, SurroundingsProblem
from cookstove_gui.logbook.logbook import Logbook

ENDINGS = (".jpg", ".jpeg", ".png", ".webp", ".gif", ".bmp")


def photos(logbook: Logbook, number: int) -> tuple[Path, ...]:
    """The photos of a session by name; none for a logbook in memory."""
    folder = _folder(logbook, number)
    if folder is None or not folder.is_dir():
        return ()
    return tuple(sorted(path for path in folder.iterdir() if path.suffix.lower() in ENDINGS))


def add_photo(logbook: Logbook, number: int, photo: Path) -> Path:
    """Copy a photo to the session's folder; where its name is taken it gets a number."""
    return copied_photo(_folder(logbook, number), photo)


def copied_photo(folder: Path | None, photo: Path) -> Path:
    """Copy a photo to a folder for photos; where its name is taken it gets a number."""
    if folder is None:
        raise SurroundingsProblem("A logbook in memory has no folder for photos; open one in a file.")
    if photo.suffix.lower() not in ENDINGS:
        raise InputProblem(f"{photo.name} isn't a picture; choose a file that ends in {', '.join(ENDINGS)}.")
    try:
        return _keep(folder, photo.name, photo.read_bytes())
    except OSError as error:
        raise SurroundingsProblem(
            f"{photo.name} can't be copied to {folder} ({error.strerror}); check permissions and free space."
        ) from error


def add_photo_bytes(logbook: Logbook, number: int, name: str, content: bytes) -> None:
    """Keep a picture that comes with another logbook; one of an unknown kind, or without a folder, is left out."""
    folder = _folder(logbook, number)
    if folder is None or Path(name).suffix.lower() not in ENDINGS:
        return
    try:
        _keep(folder, Path(name).name, content)
    except OSError as error:
        raise SurroundingsProblem(
            f"{name} can't be written to {folder} ({error.strerror}); check permissions and free space."
        ) from error


def _keep(folder: Path, name: str, content: bytes) -> Path:
    folder.mkdir(parents=True, exist_ok=True)
    target, count = folder / name, 2
    while target.exists():
        target, count = folder / f"{Path(name).stem} {count}{Path(name).suffix}", count + 1
    target.write_bytes(content)
    return target


def remove_photo(photo: Path) -> None:
    """Delete the copy of a photo."""
    try:
        photo.unlink(missing_ok=True)
    except OSError as error:
        raise SurroundingsProblem(f"{photo} can't be deleted ({error.strerror}).") from error


def forget_photos(logbook: Logbook, number: int) -> None:
    """Delete the photos of a session that was deleted for good."""
    folder = _folder(logbook, number)
    if folder is not None:
        shutil.rmtree(folder, ignore_errors=True)


def _folder(logbook: Logbook, number: int) -> Path | None:
    return None if logbook.path is None else logbook.path.parent / "photos" / str(number)
