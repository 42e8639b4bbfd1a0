"""A photo of each stove: a file beside the logbook, copied there and never changed."""

from pathlib import Path

from cookstove_gui.desk.desk import Desk
from cookstove_gui.desk.logbook.photos import copied_photo, remove_photo

PHOTO = "photo of "  # and the stove's name


def stove_photo(desk: Desk) -> Path | None:
    """The photo of the stove in use; none without one, or where its file is gone."""
    name, folder = desk.setting(PHOTO + desk.stove.name), _folder(desk)
    path = folder / name if folder is not None and name else None
    return path if path is not None and path.is_file() else None


def keep_stove_photo(desk: Desk, photo: Path) -> None:
    """Copy a photo beside the logbook and show it with this stove, in the place of the one before."""
    before = stove_photo(desk)
    kept = copied_photo(_folder(desk), photo)
    desk.set_setting(PHOTO + desk.stove.name, kept.name)
    if before is not None:
        remove_photo(before)


def drop_stove_photo(desk: Desk) -> None:
    """Show none any more, and delete the copy."""
    before = stove_photo(desk)
    desk.set_setting(PHOTO + desk.stove.name, "")
    if before is not None:
        remove_photo(before)


def _folder(desk: Desk) -> Path | None:
    path = desk.logbook.path
    return None if path is None else path.parent / "photos" / "stoves"
