"""A whole logbook as one file: written with all there is, and brought into another logbook after a look at it."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from pathlib import Path

from cookstove_gui.desk.changes import Changed
from cookstove_gui.desk.desk import Desk
from cookstove_gui.desk.files import is_known
from cookstove_gui.desk.logbook.photos import add_photo_bytes, photos
from cookstove_gui.desk.own_tables import write_own_tables
from cookstove_gui.errors import InputProblem
from cookstove_gui.logbook.data_package import Aside, StoveRecord, write_package
from cookstove_gui.logbook.own_tables import Merged, merged
from cookstove_gui.logbook.package_reading import Packed, PackedSession, read_package
from cookstove_gui.logbook.package_tables import ENDING
from cookstove_gui.phrases.logbook.imports import package_question
from cookstove_gui.resource_files import has_own_folder, own_texts
from cookstove_gui.stove.stove import Stove
from cookstove_gui.units import iso_clock


@dataclass(frozen=True, slots=True, kw_only=True)
class PackageOffer:
    """What a package would bring; `problems` are sentences about what it would not."""

    packed: Packed
    new: tuple[PackedSession, ...]  # sessions that are not here yet
    question: str
    problems: tuple[str, ...]
    tables: Mapping[str, Merged] = field(default_factory=dict)  # the cook's own tables as they would be, by name

    @property
    def own_rows(self) -> int:
        """How many of the cook's own tasks, bakes, foods and words would be added."""
        return sum(one.added for one in self.tables.values())

    @property
    def sessions(self) -> int:
        """How many would be added."""
        return len(self.new)

    @property
    def rows(self) -> int:
        """How many entries would be added."""
        return sum(len(one.entries) for one in self.new)

    @property
    def stoves(self) -> tuple[str, ...]:
        """Names of the stoves that the sessions are of."""
        return tuple(dict.fromkeys(one.stove for one in self.new))

    needs_answer = True  # nobody brings in a whole logbook unasked


def is_package(path: Path) -> bool:
    """Whether a file is to be read as a whole logbook."""
    return path.suffix.lower() == ENDING


def write_everything(desk: Desk, path: Path) -> None:
    """Write all stoves, sessions, photos and all that is known beside them as one data package; may run in a thread."""
    records = [_record(desk, stove) for stove in desk.stoves]
    if not any(record.sessions for record in records):
        raise InputProblem("There are no entries yet; there is nothing to write.")
    book = desk.logbook
    aside = Aside(dishes=book.suppers.dishes(), settings=book.moving.settings(), tables=own_texts())
    write_package(path, "cookstove-logbook", "Logbook of wood cookstoves", records, aside)


def _record(desk: Desk, stove: Stove) -> StoveRecord:
    logbook, name = desk.logbook, stove.name
    binned = logbook.keeping.binned(name)
    sessions = (*logbook.past_sessions(name), *(logbook.session(one.summary.number) for one in binned))
    return StoveRecord(
        stove=stove,
        sessions=tuple(one for one in sessions if one.entries),
        checks=tuple(logbook.facts.checks(name).values()),
        tags=logbook.keeping.tags(),
        binned={one.summary.number: iso_clock(one.at, 0) for one in binned},
        photos={one.number: photos(logbook, one.number) for one in sessions},
        weather=logbook.facts.all_weather(name),
        suppers=tuple(reversed(logbook.suppers.of(name))),
    )


def offer_package(desk: Desk, path: Path) -> PackageOffer:
    """Read a package and say what it would bring. Nothing is kept yet."""
    packed = read_package(path)
    new = tuple(one for one in packed.sessions if not is_known(desk, one.stove, one.entries, with_bin=True))
    known = len(packed.sessions) - len(new)
    here = {stove.name for stove in desk.stoves}
    named = {one.stove.name for one in packed.stoves}
    strays = sorted({one.stove for one in packed.sessions} - named - here)
    undescribed = (f"{name} is not described in {path.name}; its sessions are left out." for name in strays)
    new = tuple(one for one in new if one.stove not in strays)
    pictures = sum(len(one.photos) for one in new)
    tables, told = _own_tables(packed.tables)
    own = sum(one.added for one in tables.values())
    question = package_question(path.name, len(new), len({one.stove for one in new}), pictures, known, own)
    problems = (*packed.problems, *undescribed, *told)
    return PackageOffer(packed=packed, new=new, question=question, problems=problems, tables=tables)


def _own_tables(texts: Mapping[str, str]) -> tuple[dict[str, Merged], list[str]]:
    """The cook's own tables with what they lack of these, and sentences about what stays out."""
    found: dict[str, Merged] = {}
    told: list[str] = []
    here = own_texts()
    for name, theirs in texts.items():
        try:
            table = merged(here.get(name, ""), theirs)
        except InputProblem as problem:
            told.append(f"Own {name}: {problem.sentence.rstrip('.')}. Nothing of it comes in.")
            continue
        found[name] = table
        told += [f"“{one}” of {name} stays as you have it here." for one in table.staying]
    return found, told


def accept_package(desk: Desk, offer: PackageOffer) -> int:
    """Keep all that an offer holds; returns how many sessions were added. The stove in use stays."""
    numbers = desk.logbook.moving.take_in(offer.packed, offer.new)
    for number, one in zip(numbers, offer.new, strict=True):
        for place, name in one.photos:
            add_photo_bytes(desk.logbook, number, name, offer.packed.photo(place))
    gaining = {name: table.text for name, table in _own_tables(offer.packed.tables)[0].items() if table.added}
    if gaining and has_own_folder():
        write_own_tables(desk, gaining)
    desk.announce(Changed(session=True, stove=True, study=True, settings=True))
    return len(numbers)
