"""The committed sample sessions: readable, described by an open standard, and said to be invented."""

import json
from pathlib import Path

import pytest
from frictionless import Package

from cookstove_gui.logbook.folder import read_folder
from cookstove_gui.logbook.log_file import read_log
from cookstove_gui.stove.entries import Kind, fold, reading_kelvin
from cookstove_gui.stove.stove import Firebox
from tests.world.make_samples import FIRINGS, SAMPLES, sample_sessions

SAMPLES_FOLDER = Path(__file__).resolve().parents[2] / "sample_sessions"
STOVES = [SAMPLES_FOLDER / sample.folder for sample in SAMPLES]


@pytest.mark.parametrize("folder", STOVES, ids=lambda path: path.name)
def test_a_stove_folder_reads_cleanly(folder: Path) -> None:
    past = read_folder(folder)
    assert past.problems == ()
    assert past.stove is not None
    assert len(past.sessions) == FIRINGS
    for session in past.sessions:
        rows = fold(session.entries)
        readings = [reading_kelvin(row) for row in rows if row.kind is Kind.READING]
        assert len(readings) >= 15
        unlikely = [kelvin for kelvin in readings if not 240 < kelvin < 850]  # slips of the hand
        assert len(unlikely) <= 2


def test_the_usual_places_of_the_firebox_are_there_and_one_stove_is_new() -> None:
    stoves = [read_folder(folder).stove for folder in STOVES]
    assert {stove.firebox for stove in stoves if stove} == {Firebox.LEFT, Firebox.RIGHT, Firebox.ABOVE}
    assert sum(stove.is_new for stove in stoves if stove) == 1


def test_nothing_is_cooked_on_the_new_stove_before_its_first_fires_are_done() -> None:
    first = read_folder(SAMPLES_FOLDER / "grey_stone_stove").sessions[:3]
    assert not [row for session in first for row in session.entries if row.kind is Kind.PAN]


def test_some_pans_of_water_are_noted_until_they_boil() -> None:
    # the wording that the pans' own memory reads: how much water, and what it did
    rows = [row for folder in STOVES for session in read_folder(folder).sessions for row in session.entries]
    pans = [row for row in rows if row.kind is Kind.PAN]
    assert sum("litres" in row.note for row in pans) >= 10
    assert sum(row.note == "boiled" for row in pans) >= 5


def test_one_stove_is_read_in_celsius_and_its_wood_weighed_in_kilograms() -> None:
    units = {row.unit for path in (SAMPLES_FOLDER / "grey_stone_stove").glob("*.csv") for row in read_log(path).entries}
    assert units == {"", "C", "kg"}


def test_the_data_package_is_valid_by_frictionless() -> None:
    # Frictionless Data Package, checked by the frictionless library, which also reads every row
    report = Package(str(SAMPLES_FOLDER / "datapackage.json")).validate()
    assert report.valid, report.flatten(["path", "note"])


def test_the_data_package_lists_every_log_and_nothing_else() -> None:
    package = json.loads((SAMPLES_FOLDER / "datapackage.json").read_text(encoding="utf-8"))
    listed = {resource["path"] for resource in package["resources"]}
    assert listed == {path.relative_to(SAMPLES_FOLDER).as_posix() for path in SAMPLES_FOLDER.glob("*/*.csv")}


def test_everything_says_that_it_is_invented() -> None:
    package = json.loads((SAMPLES_FOLDER / "datapackage.json").read_text(encoding="utf-8"))
    assert "invented" in package["description"]
    assert all("Invented" in resource["description"] for resource in package["resources"])
    assert "Everything in this folder is invented" in (SAMPLES_FOLDER / "README.md").read_text(encoding="utf-8")
    for folder in STOVES:
        assert "Invented" in (folder / "stove.toml").read_text(encoding="utf-8")
        for path in folder.glob("*.csv"):
            assert "invented" in path.read_text(encoding="utf-8").splitlines()[1]


def test_a_committed_log_is_what_the_generator_makes() -> None:
    name, _, rows = next(iter(sample_sessions(SAMPLES[0])))
    committed = read_log(SAMPLES_FOLDER / SAMPLES[0].folder / name).entries
    made = {(row.at, row.kind, row.spot) for row in rows}
    assert {(row.at, row.kind, row.spot) for row in committed} == made
