"""The cook's own tables written to the data folder: what stands there holds at once, everywhere."""

from collections.abc import Mapping

from cookstove_gui.desk.desk import Desk
from cookstove_gui.errors import SurroundingsProblem
from cookstove_gui.logbook.whole_file import write_whole
from cookstove_gui.resource_files import own_place, use_own_tables


def write_own_tables(desk: Desk, texts: Mapping[str, str]) -> None:
    """Write these tables, TOML by their names; SurroundingsProblem without a folder, or where the disk refuses."""
    for name, text in texts.items():
        place = own_place(name)
        if place is None:
            raise SurroundingsProblem("There is no data folder to keep it in; open a logbook first.")
        try:
            place.parent.mkdir(parents=True, exist_ok=True)
        except OSError as error:
            raise SurroundingsProblem(f"{place.parent} cannot be created ({error.strerror}).") from error
        write_whole(place, text.encode("utf-8"))
        use_own_tables(place.parent)
    desk.read_tables_again()
