"""Everything out in one file and into another logbook gives the same logbook; nothing comes in twice or unasked."""

import csv
import zipfile
from dataclasses import replace
from datetime import UTC, date, datetime, timedelta
from pathlib import Path

import pytest
from frictionless import Package

from cookstove_gui.cooking.fit.tasks import catalogue, task_of
from cookstove_gui.desk import Desk
from cookstove_gui.desk.logbook.moving import accept_package, is_package, offer_package, write_everything
from cookstove_gui.desk.logbook.photos import add_photo, photos
from cookstove_gui.desk.own_tables import write_own_tables
from cookstove_gui.errors import InputProblem
from cookstove_gui.logbook.logbook import Logbook
from cookstove_gui.resource_files import own_texts, use_own_tables
from cookstove_gui.stove.checks import Check, CheckPoint
from cookstove_gui.stove.entries import Entry, Kind
from cookstove_gui.stove.stove import Stove, stove_with_default_spots, unchecked
from cookstove_gui.stove.weather import WeatherKind, WeatherReading
from tests.held_clock import HeldClock

from .made import keep

AT = datetime(2025, 11, 8, 18, 10, tzinfo=UTC)
OTHER = replace(stove_with_default_spots("Cabin “=1+1” stove"), instruments=(unchecked("dial", "oven thermometer"),))


def desk_in(folder: Path) -> Desk:
    folder.mkdir()
    return Desk(Logbook.open(folder / "logbook.sqlite"), HeldClock(AT + timedelta(days=90)))


@pytest.fixture
def full(tmp_path: Path) -> Desk:
    """Two stoves, sessions with corrections, tags, the bin, photos, checks, weather, suppers, dishes, settings."""
    desk = desk_in(tmp_path / "here")
    first = keep(desk, "Bread; with, “signs”", AT, note="=SUM(A1) and a\nsecond line")
    keep(desk, "Thrown away", AT + timedelta(days=3))
    book = desk.logbook
    last = book.session(first).entries[-1]
    voided = replace(last, number=0, kind=Kind.VOID, spot="", value="3", unit="", note="")
    book.append(first, [voided, replace(voided, kind=Kind.AIR, value="0.25")])
    book.keeping.set_tags(first, ("rye", "guests"))
    book.keeping.put_in_bin([first + 1], AT + timedelta(days=4))
    book.save_stove(OTHER)
    odd = Entry(
        number=1, at=AT.replace(microsecond=123456), offset_minutes=330, kind=Kind.READING, spot="oven_centre",
        value="201.5", unit="C", note="-2 off",
    )  # fmt: skip
    book.add_session(OTHER.name, "Elsewhere", [odd])
    check = Check(instrument="dial", point=CheckPoint.BOIL, shown=373.1234, on=date(2025, 11, 7), pressure=98765.4)
    book.facts.add_check(OTHER, check)
    for kind, value in ((WeatherKind.OUTDOORS, 271.15), (WeatherKind.PRESSURE, 99012.5), (WeatherKind.OUTDOORS, None)):
        book.facts.add_weather(OTHER, WeatherReading(kind=kind, value=value, at=AT, offset_minutes=-300))
    book.suppers.add(OTHER.name, AT, '{"dishes": ["stew"]}')
    book.suppers.keep_dish("gran", 'name = "Gran\'s pie"\n')
    desk.set_setting("unit", "C")
    for name, content in (("loaf.jpg", b"\xff\xd8 one"), ("loaf two.PNG", b"\x89PNG two")):
        (tmp_path / name).write_bytes(content)
        add_photo(book, first, tmp_path / name)
    return desk


def told(desk: Desk) -> dict[str, object]:
    """All that a logbook says, without the numbers that it gives to sessions itself."""
    book = desk.logbook
    names = [stove.name for stove in book.stoves()]
    kept = {number: book.session(number) for number in _numbers(desk)}
    tags = book.keeping.tags()
    return {
        "stoves": book.stoves(),
        "sessions": sorted(
            (
                one.stove,
                one.title,
                one.entries,
                tags.get(number, ()),
                [(at.name, at.read_bytes()) for at in photos(book, number)],
            )
            for number, one in kept.items()
        ),
        "bin": [(one.summary.title, one.at) for name in names for one in book.keeping.binned(name)],
        "checks": [tuple(book.facts.checks(name).values()) for name in names],
        "weather": [book.facts.all_weather(name) for name in names],
        "suppers": [[(one.table_at, one.content) for one in book.suppers.of(name)] for name in names],
        "dishes": book.suppers.dishes(),
        "settings": book.moving.settings(),
    }


def _numbers(desk: Desk) -> list[int]:
    book = desk.logbook
    binned = [one.summary.number for stove in book.stoves() for one in book.keeping.binned(stove.name)]
    return [*(row.number for row in book.sessions()), *binned]


def moved(full: Desk, tmp_path: Path) -> Desk:
    write_everything(full, tmp_path / "all.zip")
    there = desk_in(tmp_path / "there")
    accept_package(there, offer_package(there, tmp_path / "all.zip"))
    return there


def test_everything_out_and_in_gives_the_same_logbook(full: Desk, tmp_path: Path) -> None:
    before = told(full)
    there = moved(full, tmp_path)
    after = told(there)
    for what, told_before in before.items():
        assert after[what] == told_before, what
    write_everything(there, tmp_path / "again.zip")
    assert (tmp_path / "again.zip").read_bytes() == (tmp_path / "all.zip").read_bytes()


def test_a_second_time_brings_nothing(full: Desk, tmp_path: Path) -> None:
    there = moved(full, tmp_path)
    before = told(there)
    offer = offer_package(there, tmp_path / "all.zip")
    assert (offer.sessions, offer.question) == (
        0, "all.zip brings no session that is new. 3 sessions are in this logbook already.",
    )  # fmt: skip
    accept_package(there, offer)
    assert told(there) == before


def test_it_is_looked_at_before_anything_is_kept(full: Desk, tmp_path: Path) -> None:
    write_everything(full, tmp_path / "all.zip")
    there = desk_in(tmp_path / "there")
    before = told(there)
    offer = offer_package(there, tmp_path / "all.zip")
    assert offer.needs_answer
    assert offer.question == "all.zip brings 3 sessions of 2 stoves and 2 photos."
    assert told(there) == before


def test_the_stove_on_the_table_stays_and_a_stove_here_keeps_its_description(full: Desk, tmp_path: Path) -> None:
    write_everything(full, tmp_path / "all.zip")
    there = desk_in(tmp_path / "there")
    mine = replace(OTHER, note="as it is here")
    there.save_stove(mine)
    there.save_stove(Stove(name="Mine", spots=OTHER.spots))
    accept_package(there, offer_package(there, tmp_path / "all.zip"))
    assert there.stove.name == "Mine"
    assert there.logbook.stove(OTHER.name).note == "as it is here"
    assert there.logbook.setting("stove") == "Mine"


def test_what_belongs_to_the_other_computer_stays_there(full: Desk, tmp_path: Path) -> None:
    full.choose_stove(OTHER.name)
    full.set_setting("window", "10 10 1280 750")
    there = moved(full, tmp_path)
    assert there.logbook.setting("stove") != OTHER.name
    assert there.logbook.setting("window") == ""
    assert there.setting("unit") == "C"


def test_the_package_is_valid_by_frictionless_and_lists_each_table(full: Desk, tmp_path: Path) -> None:
    write_everything(full, tmp_path / "all.zip")
    with zipfile.ZipFile(tmp_path / "all.zip") as archive:
        archive.extractall(tmp_path / "out")
    package = Package(str(tmp_path / "out" / "datapackage.json"))
    report = package.validate()
    assert report.valid, report.flatten(["note"])
    listed = {resource.path for resource in package.resources}
    there = {str(path.relative_to(tmp_path / "out")) for path in (tmp_path / "out").rglob("*.csv")}
    assert listed == there


@pytest.mark.parametrize(
    ("content", "why"),
    [(b"no archive", "isn't a logbook written by this program"), (b"", "isn't a logbook written by this program")],
)
def test_another_file_is_told_in_one_sentence(tmp_path: Path, content: bytes, why: str) -> None:
    (tmp_path / "odd.zip").write_bytes(content)
    with pytest.raises(InputProblem, match=why):
        offer_package(desk_in(tmp_path / "there"), tmp_path / "odd.zip")


def test_an_archive_of_something_else_is_told(tmp_path: Path) -> None:
    with zipfile.ZipFile(tmp_path / "odd.zip", "w") as archive:
        archive.writestr("readme.txt", "hello")
    with pytest.raises(InputProblem, match=r"holds no sessions\.csv"):
        offer_package(desk_in(tmp_path / "there"), tmp_path / "odd.zip")
    assert is_package(tmp_path / "odd.ZIP")


def test_a_table_inside_that_is_none_is_told(tmp_path: Path) -> None:
    with zipfile.ZipFile(tmp_path / "odd.zip", "w") as archive:
        archive.writestr("sessions.csv", "path\n" + "x" * 200_000 + "\n")
    usual = csv.field_size_limit(131_072)  # Python's own, which the library that validates packages lifts
    try:
        with pytest.raises(InputProblem, match=r"sessions\.csv in odd\.zip isn't a table"):
            offer_package(desk_in(tmp_path / "there"), tmp_path / "odd.zip")
    finally:
        csv.field_size_limit(usual)


def test_bytes_that_are_damaged_inside_are_told(full: Desk, tmp_path: Path) -> None:
    write_everything(full, tmp_path / "all.zip")
    with zipfile.ZipFile(tmp_path / "all.zip") as whole:
        begins = whole.getinfo("sessions.csv").header_offset + 30 + len("sessions.csv") + 8
    content = bytearray((tmp_path / "all.zip").read_bytes())
    content[begins : begins + 40] = bytes(40)
    (tmp_path / "all.zip").write_bytes(content)
    with pytest.raises(InputProblem, match="is damaged"):
        offer_package(desk_in(tmp_path / "there"), tmp_path / "all.zip")


def test_a_fault_of_our_own_is_not_blamed_on_the_file(
    full: Desk, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    write_everything(full, tmp_path / "all.zip")

    def broken(*_: object) -> None:
        raise KeyError("ours")

    monkeypatch.setattr("cookstove_gui.logbook.package_reading.stove_from_text", broken)
    with pytest.raises(KeyError, match="ours"):
        offer_package(desk_in(tmp_path / "there"), tmp_path / "all.zip")


def test_what_is_broken_inside_is_left_out_and_told(full: Desk, tmp_path: Path) -> None:
    write_everything(full, tmp_path / "all.zip")
    with zipfile.ZipFile(tmp_path / "all.zip") as whole, zipfile.ZipFile(tmp_path / "part.zip", "w") as part:
        for name in whole.namelist():
            text = whole.read(name)
            if name.endswith("checks.csv"):
                text = text.replace(b"boil", b"melt")
            if "elsewhere" not in name and not name.endswith(".jpg"):
                part.writestr(name, text)
    offer = offer_package(desk_in(tmp_path / "there"), tmp_path / "part.zip")
    assert offer.sessions == 2
    said = " ".join(offer.problems)
    assert "checks.csv line 2 can't be read" in said
    assert "is missing; its session was left out" in said
    assert ".jpg is missing or too large" in said


def test_a_place_that_climbs_out_is_never_followed(full: Desk, tmp_path: Path) -> None:
    write_everything(full, tmp_path / "all.zip")
    with zipfile.ZipFile(tmp_path / "all.zip") as whole, zipfile.ZipFile(tmp_path / "evil.zip", "w") as evil:
        for name in whole.namelist():
            text = whole.read(name)
            if name == "photos.csv":
                log = text.decode().splitlines()[1].partition(",")[0]
                text += f"{log},../../../evil.png\r\n".encode()
            evil.writestr(name, text)
        evil.writestr("../../../evil.png", b"\x89PNG")
    there = desk_in(tmp_path / "there")
    accept_package(there, offer_package(there, tmp_path / "evil.zip"))
    assert [path.parent.parent.parent for path in tmp_path.rglob("evil*.png")] == [tmp_path / "there"]


OWN_TASKS = """# mine
[[task]]
key = "render_lard"
name = "render lard"
place = "top"
band = [240, 300]
minutes = 90
evenness = 150
source = "my own"
"""


def with_own(desk: Desk, folder: Path, tasks: str = OWN_TASKS, words: str = "") -> Desk:
    """The desk of a computer whose cook has these tables in the folder of the logbook."""
    folder.mkdir(exist_ok=True)
    use_own_tables(folder)
    write_own_tables(desk, {"tasks.toml": tasks} | ({"phrases.toml": words} if words else {}))
    return desk


def test_the_cooks_own_tables_go_along_and_come_in(full: Desk, tmp_path: Path) -> None:
    with_own(full, tmp_path / "data_here", words='session_over = "All done."\n')
    write_everything(full, tmp_path / "all.zip")
    there = desk_in(tmp_path / "there")
    use_own_tables(tmp_path / "data_there")
    assert task_of("render_lard") is None
    offer = offer_package(there, tmp_path / "all.zip")
    assert offer.question.endswith("It also brings 2 rows of own tasks, bakes, foods and words.")
    assert own_texts() == {}  # nothing unasked
    accept_package(there, offer)
    assert own_texts() == {"tasks.toml": OWN_TASKS, "phrases.toml": 'session_over = "All done."\n'}
    assert task_of("render_lard") is not None
    write_everything(there, tmp_path / "again.zip")
    assert (tmp_path / "again.zip").read_bytes() == (tmp_path / "all.zip").read_bytes()


def test_an_own_row_of_this_computer_stays_and_is_told(full: Desk, tmp_path: Path) -> None:
    with_own(full, tmp_path / "data_here")
    write_everything(full, tmp_path / "all.zip")
    mine = OWN_TASKS.replace("[240, 300]", "[250, 280]") + OWN_TASKS.replace("render", "melt")
    there = with_own(desk_in(tmp_path / "there"), tmp_path / "data_there", mine)
    offer = offer_package(there, tmp_path / "all.zip")
    assert offer.own_rows == 0
    assert "“render_lard” of tasks.toml stays as you have it here." in offer.problems
    accept_package(there, offer)
    assert own_texts() == {"tasks.toml": mine}


def test_a_task_added_between_the_look_and_the_answer_is_not_lost(full: Desk, tmp_path: Path) -> None:
    with_own(full, tmp_path / "data_here")
    write_everything(full, tmp_path / "all.zip")
    there = desk_in(tmp_path / "there")
    use_own_tables(tmp_path / "data_there")
    offer = offer_package(there, tmp_path / "all.zip")
    with_own(there, tmp_path / "data_there", OWN_TASKS.replace("render", "melt"))
    accept_package(there, offer)
    assert {task.key for task in catalogue()} >= {"render_lard", "melt_lard"}


def test_an_own_table_that_is_none_is_left_out_and_told(full: Desk, tmp_path: Path) -> None:
    with_own(full, tmp_path / "data_here", "[[task")
    write_everything(full, tmp_path / "all.zip")
    there = desk_in(tmp_path / "there")
    use_own_tables(tmp_path / "data_there")
    offer = offer_package(there, tmp_path / "all.zip")
    assert offer.sessions == 3
    assert any("Own tasks.toml: it isn't a TOML file" in told for told in offer.problems)
    accept_package(there, offer)
    assert own_texts() == {}
