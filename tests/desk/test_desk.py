"""The desk is the only door to the log: what is typed is saved, taken back by rows, and told in kinds of change."""

from dataclasses import replace
from datetime import UTC, datetime, timedelta, timezone
from pathlib import Path

import pytest

from cookstove_gui.desk import Changed, Desk
from cookstove_gui.desk.desk import utc_now
from cookstove_gui.errors import InputProblem
from cookstove_gui.logbook.logbook import Logbook
from cookstove_gui.one_road import Memory, work_out
from cookstove_gui.phrases.heading import headline
from cookstove_gui.stove.checking import check_entry
from cookstove_gui.stove.entries import Kind, reading_kelvin
from cookstove_gui.stove.stove import Chimney, Firebox, stove_with_default_spots
from cookstove_gui.units import kelvin, local_offset_minutes
from tests.desk.conftest import stand
from tests.held_clock import HeldClock
from tests.once import stood

START = datetime(2026, 1, 10, 12, 0, tzinfo=UTC)


@pytest.fixture
def clock() -> HeldClock:
    return HeldClock(START)


@pytest.fixture
def desk(clock: HeldClock) -> Desk:
    return Desk(Logbook.in_memory(), clock)


@pytest.fixture
def stood_desk(burning_desk: Desk) -> Desk:
    return stand(burning_desk)


def values(desk: Desk) -> list[str]:
    return [row.value for row in desk.entries]


def test_a_fresh_logbook_has_a_stove_and_bread_heat_chosen(desk: Desk) -> None:
    assert (len(desk.stoves), desk.band.name, desk.unit) == (1, "bread", "F")


def test_first_number_starts_a_session_and_is_on_disk(tmp_path: Path, clock: HeldClock) -> None:
    desk = Desk(Logbook.open(tmp_path / "logbook.sqlite"), clock)
    receipt = desk.read("212")
    other = Logbook.open(tmp_path / "logbook.sqlite")
    saved = other.session(other.sessions()[0].number).entries
    assert saved == (receipt.entry,)
    other.close()
    desk.logbook.close()


def test_a_walk_begun_at_any_spot_goes_on_from_there(desk: Desk) -> None:
    spots = desk.walk.spots
    desk.light(desk.walk.at(spots[4].name))
    desk.read("300")
    desk.read("310")
    assert [row.spot for row in desk.entries] == [spots[4].name, spots[5].name]


def test_walk_lights_the_next_spot_after_each_number(desk: Desk) -> None:
    first, second = desk.stove.spots[:2]
    desk.read("180")
    assert (desk.entries[0].spot, desk.walk.spot) == (first.name, second)


def test_walk_goes_round(desk: Desk) -> None:
    for _ in desk.stove.spots:
        desk.read("180")
    assert desk.walk.spot == desk.stove.spots[0]


def test_a_reading_at_another_spot_leaves_the_walk_alone(desk: Desk) -> None:
    desk.read("70", spot="room")
    assert desk.walk.spot == desk.stove.spots[0]


def test_unit_behind_the_number_wins(desk: Desk) -> None:
    desk.read("100C")
    assert reading_kelvin(desk.entries[0]) == pytest.approx(373.15)


def test_celsius_switch_reads_plain_numbers_as_celsius(desk: Desk) -> None:
    desk.set_unit("C")
    desk.read("100")
    assert desk.entries[0].unit == "C"


def test_the_switch_of_units_takes_masses_along(desk: Desk) -> None:
    before = desk.mass_unit
    desk.set_unit("C")
    assert (before, desk.mass_unit) == ("lb", "kg")


@pytest.mark.parametrize("text", ["abc", "", "38x", "4 5", "1e3"])
def test_letters_for_a_number_are_refused_in_a_sentence_and_nothing_is_lost(desk: Desk, text: str) -> None:
    desk.read("180")
    with pytest.raises(InputProblem) as problem:
        desk.read(text)
    assert problem.value.sentence.endswith((".", "?"))
    assert values(desk) == ["180"]


def test_unlikely_number_is_kept_and_questioned(desk: Desk) -> None:
    receipt = desk.read("1400")
    assert values(desk) == ["1400"]
    assert "?" in receipt.question


def test_fahrenheit_number_with_celsius_on_is_questioned(desk: Desk) -> None:
    desk.set_unit("C")
    assert "?" in desk.read("415").question


def test_undo_takes_back_the_latest_and_keeps_the_row(desk: Desk) -> None:
    desk.read("180")
    desk.read("240")
    desk.undo()
    assert values(desk) == ["180"]
    assert [row.kind for row in desk.rows] == [Kind.READING, Kind.READING, Kind.VOID]


def test_undo_goes_on_backwards_to_an_empty_log_and_then_says_so(desk: Desk) -> None:
    desk.read("180")
    desk.read("240")
    desk.undo()
    desk.undo()
    assert values(desk) == []
    with pytest.raises(InputProblem, match="nothing to undo"):
        desk.undo()


def test_redo_brings_back_what_undo_took(desk: Desk) -> None:
    desk.read("180")
    desk.read("240")
    desk.undo()
    desk.undo()
    desk.redo()
    desk.redo()
    assert values(desk) == ["180", "240"]


def test_redo_is_over_once_something_was_entered(desk: Desk) -> None:
    desk.read("180")
    desk.undo()
    desk.read("240")
    with pytest.raises(InputProblem):
        desk.redo()


def test_correction_puts_a_new_row_in_the_old_ones_place(desk: Desk, clock: HeldClock) -> None:
    desk.read("820")
    clock.pass_minutes(5)
    desk.correct(1, "280")
    assert [(row.value, row.at) for row in desk.entries] == [("280", START)]


def test_a_correction_is_kept_whole_or_not_at_all(desk: Desk) -> None:
    first = desk.read("385")
    with desk.logbook._database.transaction() as connection:
        connection.execute(
            "CREATE TRIGGER full_disk BEFORE INSERT ON entry WHEN NEW.kind = 'void' "
            "BEGIN SELECT RAISE(ABORT, 'no room'); END"
        )
    told: list[Changed] = []
    desk.subscribe(told.append)
    with pytest.raises(InputProblem, match="no room"):
        desk.correct(first.entry.number, "358")
    assert (values(desk), told) == (["385"], [])
    assert desk.session is not None
    assert desk.logbook.session(desk.session.number).entries == (first.entry,)


def test_undo_of_a_correction_restores_what_stood_before(desk: Desk) -> None:
    desk.read("820")
    desk.correct(1, "280")
    desk.undo()
    assert values(desk) == ["820"]


def test_redo_of_an_undone_correction_restores_the_correction(desk: Desk) -> None:
    desk.read("820")
    desk.correct(1, "280")
    desk.undo()
    desk.redo()
    assert values(desk) == ["280"]


def test_undo_after_an_undone_correction_takes_back_the_row_itself(desk: Desk) -> None:
    desk.read("820")
    desk.correct(1, "280")
    desk.undo()
    desk.undo()
    assert values(desk) == []


def test_undo_of_a_taking_back_restores_the_row(desk: Desk) -> None:
    desk.read("180")
    desk.read("240")
    desk.take_back(1)
    desk.undo()
    assert values(desk) == ["180", "240"]


def test_value_spot_and_clock_are_corrected_as_one_row(desk: Desk) -> None:
    desk.read("820")
    desk.correct(1, "280", spot="flue", at_text="-6")
    (row,) = desk.entries
    assert (row.value, row.spot, row.at) == ("280", "flue", START - timedelta(minutes=6))
    assert len(desk.rows) == 3
    desk.undo()
    assert values(desk) == ["820"]


def test_a_correction_that_changes_nothing_writes_nothing(desk: Desk) -> None:
    desk.read("280")
    desk.correct(1, "280", spot=desk.entries[0].spot)
    assert len(desk.rows) == 1


@pytest.mark.parametrize("spot", ["room", "flue", "oven_centre", "side_left", "wall_behind"])
def test_a_pan_stands_on_the_cooktop_only(desk: Desk, spot: str) -> None:
    with pytest.raises(InputProblem, match=r"No pan stands on the .*; choose a spot of the cooktop"):
        desk.do(Kind.PAN, value="on", spot=spot)
    desk.do(Kind.PAN, value="on", spot="top_back_left")
    with pytest.raises(InputProblem, match="No pan stands on"):
        desk.correct(1, spot=spot)
    assert [row.spot for row in desk.entries] == ["top_back_left"]


def test_a_walk_from_paper_goes_on_in_its_order(stood_desk: Desk) -> None:
    spots = [spot.name for spot in stood_desk.walk.spots]
    stood_desk.light(stood_desk.walk.at(spots[2]))
    stood_desk.read("300", at_text="-10")
    stand(stood_desk)
    assert stood_desk.walk.spot.name == spots[3]


def test_correction_of_a_voided_row_is_refused(desk: Desk) -> None:
    desk.read("820")
    desk.undo()
    with pytest.raises(InputProblem, match="taken back"):
        desk.correct(1, "280")


def test_back_dating_moves_a_row_before_another(desk: Desk, clock: HeldClock) -> None:
    desk.read("180")
    clock.pass_minutes(30)
    desk.read("240")
    desk.correct(2, at_text="-40")
    assert values(desk) == ["240", "180"]


def test_at_time_back_dates_while_typing(desk: Desk) -> None:
    desk.read("180", at_text="-10")
    assert desk.entries[0].at == START - timedelta(minutes=10)


def test_time_still_to_come_is_refused_in_a_sentence(desk: Desk, clock: HeldClock) -> None:
    ahead = (clock().astimezone() + timedelta(hours=2)).strftime("%H:%M")
    with pytest.raises(InputProblem, match="still to come"):
        desk.read("180", at_text=ahead)


def test_six_hours_of_silence_begin_a_new_session(desk: Desk, clock: HeldClock) -> None:
    desk.read("180")
    clock.pass_minutes(6 * 60 + 1)
    desk.read("90")
    assert [desk.logbook.session(row.number).entries[-1].value for row in desk.sessions] == ["90", "180"]


def test_a_warm_session_is_taken_up_again_after_a_restart(tmp_path: Path, clock: HeldClock) -> None:
    logbook = Logbook.open(tmp_path / "logbook.sqlite")
    Desk(logbook, clock).read("180")
    again = Desk(logbook, clock)
    assert values(again) == ["180"]
    logbook.close()


def test_listeners_are_told_what_kind_of_thing_changed(desk: Desk) -> None:
    told: list[Changed] = []
    stop = desk.subscribe(told.append)
    desk.choose_band("pie")
    stop()
    desk.choose_band("bread")
    assert told == [Changed(band=True)]


def test_a_chimney_described_leaves_what_was_worked_out_and_the_lit_spot(desk: Desk) -> None:
    desk.read("300")
    assert desk.show(stood(desk.inputs()))
    lit = desk.walk.spot
    desk.save_stove(replace(desk.stove, chimney=Chimney(height=7.0), sides="soapstone"))
    assert desk.standing is not None
    assert desk.walk.spot == lit != desk.stove.spots[0]
    desk.save_stove(replace(desk.stove, firebox=Firebox.RIGHT))
    assert desk.standing is None
    desk.save_stove(replace(desk.stove, spots=tuple(spot for spot in desk.stove.spots if spot != lit)))
    assert desk.walk.spot == desk.stove.spots[0]


def test_the_clock_is_the_sessions_own_or_this_computers(desk: Desk) -> None:
    assert desk.offset_minutes == local_offset_minutes(START)
    row = check_entry(at=START, offset_minutes=345, kind="lit")
    desk.open_session(desk.logbook.add_session(desk.stove.name, "Elsewhere", [row]).number)
    assert desk.offset_minutes == 345
    desk.undo()
    assert desk.rows[-1].offset_minutes == 345


def test_band_is_remembered(clock: HeldClock) -> None:
    logbook = Logbook.in_memory()
    Desk(logbook, clock).choose_band("300-350")
    band = Desk(logbook, clock).band
    assert (band.low, band.high) == (pytest.approx(kelvin(300.0, "F")), pytest.approx(kelvin(350.0, "F")))


def test_stale_standing_is_dropped(desk: Desk) -> None:
    memory = Memory()
    older = work_out(desk.inputs(), memory)
    newer = work_out(desk.inputs(), memory)
    assert (desk.show(older), desk.show(newer), desk.standing) == (False, True, newer)


def test_own_spots_join_the_walk(desk: Desk) -> None:
    desk.save_stove(stove_with_default_spots("Another stove"))
    assert (desk.stove.name, len(desk.stoves)) == ("Another stove", 2)


def test_food_is_refused_before_a_new_stoves_first_fires(desk: Desk) -> None:
    from dataclasses import replace

    desk.save_stove(replace(desk.stove, is_new=True))
    standing = stood(desk.inputs())
    assert headline(standing, desk.edge).startswith("First fire 1")
    assert {str(fit.state) for fit in standing.fits if fit.task.is_food} == {"first fires not done"}


ZONE = timezone(timedelta(hours=-5))


def test_instants_are_utc_whatever_this_computers_zone(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("TZ", "America/New_York")
    assert utc_now().utcoffset() == timedelta(0)


@pytest.mark.parametrize(
    ("typed", "meant"), [("", ""), ("  ", ""), ("Now ", ""), ("7:00", "7:00"), ("-10", "6:50"), ("702", "7:02")]
)
def test_the_clock_that_is_meant_is_shown_as_it_is_typed(clock: HeldClock, typed: str, meant: str) -> None:
    desk = Desk(Logbook.in_memory(), clock, ZONE)  # 7:00 there
    assert desk.clock_meant(typed) == meant


def test_a_clock_that_cannot_be_right_is_told(desk: Desk, clock: HeldClock) -> None:
    assert desk.clock_trouble() == ""
    desk.do(Kind.LIT)
    assert desk.clock_trouble() == ""
    clock.pass_minutes(-30)
    assert "the latest entry is from" in desk.clock_trouble()
    clock.pass_minutes(-3 * 24 * 60)
    assert "the logbook has entries up to" in desk.clock_trouble()
    clock.pass_minutes(-3 * 365 * 24 * 60)
    assert "Entries are dated by it" in desk.clock_trouble()


def test_what_another_window_wrote_is_taken_up_and_told(tmp_path: Path, clock: HeldClock) -> None:
    path = tmp_path / "logbook.sqlite"
    desk = Desk(Logbook.open(path), clock)
    desk.do(Kind.LIT)
    other = Desk(Logbook.open(path), clock)
    desk.catch_up()  # that it is open there too
    heard: list[Changed] = []
    desk.subscribe(heard.append)
    desk.catch_up()
    assert heard == []
    other.do(Kind.OUT)
    desk.catch_up()
    assert [row.kind for row in desk.rows] == [Kind.LIT, Kind.OUT]
    other.set_unit("C")
    desk.catch_up()
    assert heard == [
        Changed(log=True, session=True, settings=True),
        Changed(log=False, session=True, settings=True),
    ]
    for one in (desk, other):
        one.logbook.close()
