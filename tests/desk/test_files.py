"""Importing asks before it leaves anything out, keeps nothing twice, and what goes out comes back the same."""

import zipfile
from datetime import UTC, datetime
from functools import partial
from pathlib import Path

import pandas
import pytest
from frictionless import Package

from cookstove_gui.desk import Changed, Desk
from cookstove_gui.desk.files import (
    accept_import,
    export_log,
    is_other_table,
    offer_import,
    write_table,
)
from cookstove_gui.desk.logbook.moving import write_everything
from cookstove_gui.desk.logbook.reporting import About, Wanted, write_report
from cookstove_gui.desk.my_stove.checks import add_instrument, record_check
from cookstove_gui.desk.my_stove.describing import add_stove
from cookstove_gui.errors import InputProblem
from cookstove_gui.logbook.log_file import log_text
from cookstove_gui.logbook.logbook import Logbook
from cookstove_gui.stove.checks import CheckPoint
from cookstove_gui.stove.entries import Kind

HEADER = "clock,kind,spot,value,unit,note\n"
GOOD = HEADER + "2026-01-05T07:02:00-05:00,lit,,,,\n2026-01-05T07:12:00-05:00,reading,oven_centre,140,F,\n"


@pytest.fixture
def desk() -> Desk:
    return Desk(Logbook.in_memory(), lambda: datetime(2026, 2, 1, tzinfo=UTC))


def written(folder: Path, text: str, name: str = "morning.csv") -> Path:
    path = folder / name
    path.write_text(text, encoding="utf-8")
    return path


def test_good_log_needs_no_answer_and_becomes_a_session(desk: Desk, tmp_path: Path) -> None:
    offer = offer_import(desk, [written(tmp_path, GOOD)])
    assert not offer.needs_answer
    assert accept_import(desk, offer) == 1
    assert [(row.title, row.entry_count) for row in desk.sessions] == [("morning", 2)]


def test_bad_row_is_named_and_nothing_is_kept_until_the_answer(desk: Desk, tmp_path: Path) -> None:
    text = GOOD + "2026-01-05T07:20:00-05:00,reading,oven_centre,abc,F,\n"
    offer = offer_import(desk, [written(tmp_path, text)])
    assert offer.needs_answer
    assert "4" in offer.problems[0]
    assert desk.sessions == ()
    accept_import(desk, offer)
    assert desk.sessions[0].entry_count == 2


def test_same_log_is_not_kept_twice(desk: Desk, tmp_path: Path) -> None:
    path = written(tmp_path, GOOD)
    accept_import(desk, offer_import(desk, [path]))
    offer = offer_import(desk, [path])
    assert (len(offer.files), "already" in offer.problems[0]) == (0, True)


def test_folder_brings_its_stove(desk: Desk, tmp_path: Path) -> None:
    written(tmp_path, GOOD)
    written(tmp_path, 'name = "Invented range"\nfirebox = "right"\n', "stove.toml")
    heard: list[Changed] = []
    desk.subscribe(heard.append)
    accept_import(desk, offer_import(desk, [tmp_path]))
    assert heard == [Changed(session=True, stove=True, study=True)]
    brought = desk.logbook.stove("Invented range")
    assert (brought.firebox, len(desk.logbook.sessions(brought.name))) == ("right", 1)


def test_what_is_brought_in_never_changes_the_stove_in_use_or_the_session_on_the_table(
    desk: Desk, tmp_path: Path
) -> None:
    desk.do(Kind.LIT)
    before = (desk.stove, desk.session)
    written(tmp_path, GOOD)
    written(tmp_path, 'name = "Invented range"\n', "stove.toml")
    accept_import(desk, offer_import(desk, [tmp_path]))
    assert (desk.stove, desk.session) == before


def test_spots_that_only_the_log_names_come_with_a_new_stove(desk: Desk, tmp_path: Path) -> None:
    shelf = "2026-01-05T07:15:00-05:00,reading,top_shelf,200,F,\n"
    written(tmp_path, GOOD + shelf)
    written(tmp_path, GOOD.replace("140", "150") + shelf.replace("shelf", "rack"), "noon.csv")
    written(tmp_path, 'name = "Invented range"\n', "stove.toml")
    accept_import(desk, offer_import(desk, [tmp_path]))
    brought = desk.logbook.stove("Invented range")
    assert brought.spot("top_shelf") is not None
    assert brought.spot("top_rack") is not None


@pytest.mark.parametrize(
    ("name", "text", "is_other"),
    [
        ("log.csv", GOOD, False),
        ("log.csv", "clock;kind;spot;value\n", False),  # a log with something missing, which is told
        ("log.csv", "time,oven\n7:05,140\n", True),
        ("log.csv", "", True),
        ("log.xlsx", "PK", True),
    ],
)
def test_what_is_no_log_of_this_program_is_another_table(tmp_path: Path, name: str, text: str, is_other: bool) -> None:
    path = written(tmp_path, text, name)
    assert is_other_table([path]) is is_other
    assert not is_other_table([tmp_path])
    assert not is_other_table([path, path])
    assert not is_other_table([tmp_path / "none.csv"])


def test_empty_folder_is_said_in_a_sentence(desk: Desk, tmp_path: Path) -> None:
    with pytest.raises(InputProblem, match="no CSV file"):
        offer_import(desk, [tmp_path])


def test_exported_log_comes_back_row_for_row(desk: Desk, tmp_path: Path) -> None:
    accept_import(desk, offer_import(desk, [written(tmp_path, GOOD)]))
    out = tmp_path / "out"
    out.mkdir()
    export_log(desk, desk.sessions[0].number, out / "again.csv")
    assert (out / "again.csv").read_text(encoding="utf-8").replace("\r\n", "\n") == GOOD


def test_empty_session_is_not_exported(desk: Desk, tmp_path: Path) -> None:
    desk.start_session("nothing yet")
    assert desk.session is not None
    with pytest.raises(InputProblem, match="no entries"):
        export_log(desk, desk.session.number, tmp_path / "nothing.csv")


@pytest.fixture
def two_sessions(desk: Desk, tmp_path: Path) -> Desk:
    morning, noon = written(tmp_path, GOOD), written(tmp_path, GOOD.replace("T07", "T12"), "noon.csv")
    accept_import(desk, offer_import(desk, [morning, noon]))
    return desk


def test_a_table_is_of_one_session_or_of_all(two_sessions: Desk, tmp_path: Path) -> None:
    latest = two_sessions.sessions[0].number
    for number, titles in ((latest, {"noon"}), (0, {"morning", "noon"})):
        write_table(two_sessions, number, tmp_path / "table.parquet")
        table = pandas.read_parquet(tmp_path / "table.parquet")
        assert set(table["title"]) == titles
        assert len(table) == 2 * len(titles)


def test_a_report_is_of_the_session_at_its_end(two_sessions: Desk, tmp_path: Path) -> None:
    about = About(session=two_sessions.sessions[0].number)
    write_report(two_sessions, Wanted(about=about, one_page=False), tmp_path / "noon.html")
    page = (tmp_path / "noon.html").read_text(encoding="utf-8")
    assert "noon" in page
    assert "140" in page


def test_where_nothing_was_entered_nothing_is_written(desk: Desk, tmp_path: Path) -> None:
    desk.start_session("nothing yet")
    assert desk.session is not None
    number, out = desk.session.number, tmp_path / "out"
    about = Wanted(about=About(session=number), one_page=False)
    for write, sentence in (
        (partial(write_report, desk, about), "“nothing yet” has no entries yet; there is nothing to report."),
        (partial(write_table, desk, number), "There are no entries yet; there is nothing to write."),
        (partial(write_everything, desk), "There are no entries yet; there is nothing to write."),
    ):
        with pytest.raises(InputProblem) as refused:
            write(out)
        assert refused.value.sentence == sentence
    assert not out.exists()


# --- everything as a data package, read and checked by the frictionless library


@pytest.fixture
def unpacked(two_sessions: Desk, tmp_path: Path) -> Path:
    desk = two_sessions
    add_instrument(desk, "oven dial", "oven thermometer")
    record_check(desk, "oven dial", CheckPoint.ICE, "36")
    add_stove(desk, "Summer kitchen")
    desk.logbook.add_session("Summer kitchen", "Sunday bread", desk.logbook.session(1).entries)
    desk.logbook.add_session("Summer kitchen", "Sunday bread", desk.logbook.session(2).entries[:1])
    desk.logbook.add_session("Summer kitchen", "sunday BREAD!", desk.logbook.session(1).entries)
    desk.logbook.keeping.set_tags(1, ["windy", "dry ash"])
    write_everything(desk, tmp_path / "all.zip")
    out = tmp_path / "unpacked"
    with zipfile.ZipFile(tmp_path / "all.zip") as archive:
        archive.extractall(out)
    return out


def test_the_package_is_valid_and_holds_every_row(unpacked: Path) -> None:
    package = Package(str(unpacked / "datapackage.json"))
    report = package.validate()
    assert report.valid, report.flatten(["message"])
    rows = {resource.path: len(resource.read_rows()) for resource in package.resources}
    assert rows == {
        "my_stove/2026-01-05_morning.csv": 2,
        "my_stove/2026-01-05_noon.csv": 2,
        "my_stove/thermometers/checks.csv": 1,
        "summer_kitchen/2026-01-05_sunday_bread.csv": 2,
        "summer_kitchen/2026-01-05_sunday_bread_2.csv": 2,
        "summer_kitchen/2026-01-05_sunday_bread_3.csv": 1,
        "sessions.csv": 5,
    }
    listed = package.get_resource("sessions").read_rows()
    assert [(row["stove"], row["title"], row["tags"] or "") for row in listed[:2]] == [
        ("My stove", "morning", "dry ash; windy"), ("My stove", "noon", ""),
    ]  # fmt: skip
    assert {row["path"] for row in listed} == {path for path in rows if "2026" in path}
    (check,) = package.get_resource("my-stove-thermometers-checks").read_rows()
    assert (check["thermometer"], check["point"]) == ("oven dial", "ice")
    assert float(check["shown_kelvin"]) == pytest.approx(275.37, abs=0.005)  # 36 °F


def test_each_folder_of_the_package_comes_back_as_a_stove_with_its_logs(unpacked: Path, two_sessions: Desk) -> None:
    other = Desk(Logbook.in_memory(), two_sessions.clock)
    for folder in ("my_stove", "summer_kitchen"):
        offer = offer_import(other, [unpacked / folder])
        assert not offer.problems
        accept_import(other, offer)
    for stove in two_sessions.stoves:
        if stove.name != "My stove":  # which every logbook begins with, and which stays as it is
            assert other.logbook.stove(stove.name) == stove
        there, here = (book.past_sessions(stove.name) for book in (other.logbook, two_sessions.logbook))
        assert {log_text(one.entries) for one in there} == {log_text(one.entries) for one in here}
