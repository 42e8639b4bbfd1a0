"""A log file comes back to the letter, and reading one never loses a row without saying which and why."""

import csv
from dataclasses import replace
from datetime import UTC, datetime, timedelta
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from cookstove_gui.errors import InputProblem, SurroundingsProblem
from cookstove_gui.logbook import log_file
from cookstove_gui.logbook.log_file import LogReading, in_one_sentence, log_text, read_log, read_log_text, write_log
from cookstove_gui.stove.entries import Entry, Kind, fold
from cookstove_gui.stove.stove import stove_with_default_spots

from .strategies import logs, reading, texts

HEADER = "clock,kind,spot,value,unit,note"
GOOD = "2026-01-05T07:02:00-05:00,reading,oven_centre,385,F,"


def _read(*rows: str, header: str = HEADER) -> LogReading:
    return read_log_text("\n".join((header, *rows)) + "\n", "bread.csv", stove_with_default_spots("Kitchen"))


# --- there and back ---------------------------------------------------------------------------------------------


@given(log=logs())
@settings(max_examples=60)
def test_any_log_comes_back_from_its_file(log: tuple[Entry, ...]) -> None:
    back = read_log_text(log_text(log), "x.csv")
    assert back.entries == log
    assert back.unreadable == ()


@given(log=logs())
@settings(max_examples=40)
def test_text_written_from_what_was_read_is_the_same_text(log: tuple[Entry, ...]) -> None:
    text = log_text(log)
    assert log_text(read_log_text(text, "x.csv").entries) == text


@given(note=texts)
@settings(max_examples=80)
def test_any_note_comes_back_to_the_letter_from_the_disk(note: str, tmp_path_factory: pytest.TempPathFactory) -> None:
    path = tmp_path_factory.getbasetemp() / "note.csv"
    write_log(path, [replace(reading(1), note=note)])
    assert read_log(path).entries[0].note == note


@given(rows=st.permutations([reading(number, minute) for number, minute in enumerate((0, 5, 9, 30), start=1)]))
def test_order_of_rows_does_not_matter_to_what_holds(rows: list[Entry]) -> None:
    renamed = [replace(row, number=place) for place, row in enumerate(rows, start=1)]
    assert [row.at for row in fold(read_log_text(log_text(renamed), "x.csv").entries)] == sorted(row.at for row in rows)


def test_file_is_utf_8_with_the_agreed_header_and_line_ends(tmp_path: Path) -> None:
    write_log(tmp_path / "x.csv", [replace(reading(1), note="crême, “hot”\nvery")])
    assert (tmp_path / "x.csv").read_bytes() == (
        "clock,kind,spot,value,unit,note\r\n"
        '2026-01-05T07:00:00-05:00,reading,oven_centre,385,F,"crême, “hot”\nvery"\r\n'
    ).encode()


def test_writing_closes_gaps_in_the_numbers_and_voids_follow() -> None:
    void = Entry(number=9, at=reading(1).at, offset_minutes=0, kind=Kind.VOID, value="7")
    back = read_log_text(log_text([reading(3), reading(7, 1), void]), "x.csv").entries
    assert [(row.number, row.value) for row in back] == [(1, "385"), (2, "385"), (3, "2")]


def test_void_of_a_row_that_stayed_behind_is_kept_as_a_note() -> None:
    void = Entry(number=9, at=reading(1).at, offset_minutes=0, kind=Kind.VOID, value="7", note="slip")
    back = read_log_text(log_text([reading(3), void]), "x.csv").entries
    assert (back[1].kind, back[1].note) == (Kind.NOTE, "took back row 7 of another log; slip")


def test_log_that_cannot_be_written_is_told_and_the_old_one_stays(tmp_path: Path) -> None:
    with pytest.raises(SurroundingsProblem, match="cannot be written"):
        write_log(tmp_path / "no such folder" / "x.csv", [reading(1)])


# --- forms that are accepted ------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    "content",
    [
        pytest.param(f"{HEADER}\n{GOOD}\n".encode(), id="line feeds"),
        pytest.param(f"{HEADER}\r\n{GOOD}\r\n".encode(), id="carriage returns and line feeds"),
        pytest.param(f"{HEADER}\r{GOOD}\r".encode(), id="carriage returns"),
        pytest.param(f"{HEADER}\n{GOOD}".encode(), id="no last line end"),
        pytest.param(f"\ufeff{HEADER}\n{GOOD}\n".encode(), id="byte-order mark"),
        pytest.param(f"\n\n{HEADER}\n\n{GOOD}\n\n\n".encode(), id="blank lines"),
        pytest.param(f"{HEADER.upper()}\n{GOOD}\n".encode(), id="capitals"),
        pytest.param(f"{HEADER}\n{GOOD},,\n,,,,,\n".encode(), id="empty cells of a spreadsheet"),
        pytest.param(f"{HEADER}\n{GOOD[:-1]}\n".encode(), id="last fields left off"),
        pytest.param(
            f"{HEADER}\n{GOOD.replace(',F,', ',f,').replace('reading', ' Reading')}\n".encode(), id="spelling"
        ),
        pytest.param(
            b"unit,clock,value,note,kind,spot\nF,2026-01-05T07:02:00-05:00,385,,reading,oven_centre\n", id="other order"
        ),
    ],
)
def test_usual_forms_of_csv_are_read_without_a_word(tmp_path: Path, content: bytes) -> None:
    (tmp_path / "x.csv").write_bytes(content)
    assert read_log(tmp_path / "x.csv") == LogReading(entries=(reading(1, 2),), problems=())


@pytest.mark.parametrize(("separator", "name"), [(";", "semicolons"), ("\t", "tabs")])
def test_other_separators_are_read_with_a_word(separator: str, name: str) -> None:
    back = _read(GOOD.replace(",", separator).replace("385", "385,5"), header=HEADER.replace(",", separator))
    assert back.entries[0].value == "385,5"
    (problem,) = back.problems
    assert problem.kept
    assert name in problem.sentence


def test_unknown_column_is_told_and_the_rest_is_read() -> None:
    back = _read(GOOD + ",mine", header=HEADER + ",cook")
    assert len(back.entries) == 1
    assert back.problems[0].kept
    assert "“cook”" in back.problems[0].sentence


# --- the file as a whole ----------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("content", "words"),
    [
        pytest.param(b"", "empty", id="empty"),
        pytest.param(b" \n\r\n ", "empty", id="blank"),
        pytest.param(b"\xef\xbb\xbf", "empty", id="nothing but a byte-order mark"),
        pytest.param(b"clock,kind,spot,value,note\n", "line 1: the column “unit” is missing", id="one column missing"),
        pytest.param(b"clock,kind\n", "columns “spot”, “value”, “unit”, “note” are missing", id="columns missing"),
        pytest.param(GOOD.encode(), "header is missing", id="no header"),
        pytest.param(f"{HEADER},clock\n".encode(), "twice", id="column twice"),
        pytest.param(f"{HEADER}\n{GOOD}\n".encode("utf-16"), "UTF-16", id="UTF-16"),
        pytest.param(f"{HEADER}\n{GOOD}\n".encode("utf-16-le"), "UTF-16", id="UTF-16 without a mark"),
        pytest.param(f"{HEADER}\n{GOOD}crême\n".encode("latin-1"), "line 2: .* not UTF-8 .*Latin-1", id="Latin-1"),
        pytest.param(bytes(range(256)) * 4, "UTF", id="no text at all"),
    ],
)
def test_file_that_is_no_log_is_told_in_one_sentence(tmp_path: Path, content: bytes, words: str) -> None:
    (tmp_path / "bread.csv").write_bytes(content)
    with pytest.raises(InputProblem, match=words) as told:
        read_log(tmp_path / "bread.csv")
    assert "bread.csv" in told.value.sentence
    assert "\n" not in told.value.sentence


def test_huge_file_is_refused_without_reading_it_all(tmp_path: Path) -> None:
    path = tmp_path / "huge.csv"
    with path.open("wb") as stream:
        stream.write(f"{HEADER}\n".encode())
        stream.truncate(50_000_000)
    with pytest.raises(InputProblem, match="larger than 20 MB"):
        read_log(path)


def test_too_many_rows_are_refused(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(log_file, "MOST_ROWS", 3)
    with pytest.raises(InputProblem, match="more than 3 rows"):
        _read(*[GOOD] * 4)


def test_file_that_is_not_there_is_told(tmp_path: Path) -> None:
    with pytest.raises(InputProblem, match="no such file"):
        read_log(tmp_path / "bread.csv")


def test_folder_in_the_place_of_a_file_is_told(tmp_path: Path) -> None:
    with pytest.raises(InputProblem, match="cannot be read"):
        read_log(tmp_path)


# --- single rows ------------------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("row", "field", "words"),
    [
        (GOOD.replace("385", "38x"), "value", "“38x” is not a temperature"),
        (GOOD.replace("385", ""), "value", "number"),
        (GOOD.replace("385", "9" * 400), "value", "too long"),
        (GOOD.replace("385", "-500"), "value", "colder than anything"),
        (GOOD.replace("385", "38500"), "value", "hotter than any wood fire"),
        (GOOD.replace(",F,", ",K,"), "unit", "“K” is not a temperature unit"),
        (GOOD.replace(",F,", ",,"), "unit", "unit"),
        (GOOD.replace("oven_centre", ""), "spot", "spot"),
        (GOOD.replace("reading", "measured"), "kind", "“measured” is not a kind"),
        ("2026-01-05 7:02 PM,lit,,,,", "clock", "12-hour clock"),
        ("2026-01-05T07:02:00,lit,,,,", "clock", "no UTC offset"),
        ("yesterday,lit,,,,", "clock", "not a date and time"),
        (",lit,,,,", "clock", "not a date and time"),
        ("0001-01-01T00:00:00+14:00,lit,,,,", "clock", "outside the calendar"),
        ("2026-01-05T07:02:00-05:00,air,,30,,", "value", "0 \\(shut\\) to 1"),
        ("2026-01-05T07:02:00-05:00,bypass,,-0.1,,", "value", "0 \\(shut\\) to 1"),
        ("2026-01-05T07:02:00-05:00,air,,30%,,", "value", "0 \\(shut\\) to 1"),
        ("2026-01-05T07:02:00-05:00,air,,,,", "value", "how far it is open"),
        ("2026-01-05T07:02:00-05:00,wood,,two,,", "value", "not a mass"),
        ("2026-01-05T07:02:00-05:00,wood,,0,kg,", "value", "more than 0"),
        ("2026-01-05T07:02:00-05:00,wood,,2,,", "unit", "kg or lb"),
        ("2026-01-05T07:02:00-05:00,wood,,2,stone,", "unit", "kg or lb"),
        ("2026-01-05T07:02:00-05:00,oven_door,,ajar,,", "value", "open or closed"),
        ("2026-01-05T07:02:00-05:00,pan,,on,,", "spot", "spot"),
        ("2026-01-05T07:02:00-05:00,pan,flue,there,,", "value", "on or off"),
        ("2026-01-05T07:02:00-05:00,void,,,,", "value", "number of the row"),
        ("2026-01-05T07:02:00-05:00,void,,1.5,,", "value", "not a row number"),
        ("2026-01-05T07:02:00-05:00,void,,2,,", "value", "names itself"),
        ("2026-01-05T07:02:00-05:00,void,,9,,", "value", "no row 9"),
        (GOOD + "so hot, it smoked", "row", "7 fields where the header names 6"),
        (GOOD + '"two" splits', "row", "quotation mark"),
        (GOOD + '"' + "x" * 200_000 + '"', "row", "longer than any note"),
    ],
)
def test_row_that_cannot_be_read_is_listed_and_the_others_are_kept(row: str, field: str, words: str) -> None:
    later = GOOD.replace("07:02", "07:09")
    back = _read(GOOD, row, later)
    assert [entry.number for entry in back.entries] == [1, 3]
    (problem,) = back.problems
    assert (problem.line, problem.field, problem.kept) == (3, field, False)
    assert problem.sentence.startswith(f"bread.csv line 3, {field}: ")
    with pytest.raises(AssertionError, match=words):
        raise AssertionError(problem.sentence)


def test_quotation_mark_that_is_never_closed_takes_only_its_own_row() -> None:
    back = _read(GOOD + '"oh', GOOD.replace("07:02", "07:05"), GOOD.replace("07:02", "07:09"))
    assert [entry.number for entry in back.entries] == [2, 3]
    assert [problem.line for problem in back.problems] == [2]


def test_lines_are_counted_through_notes_of_several_lines() -> None:
    back = _read(GOOD + '"a\nb\nc"', GOOD.replace("385", "x"))
    assert back.problems[0].line == 5
    assert back.entries[0].note == "a\nb\nc"


def test_void_counts_rows_under_the_header_even_those_that_cannot_be_read() -> None:
    back = _read(
        GOOD.replace("385", "x"), GOOD, GOOD.replace("07:02", "07:09"), "2026-01-05T07:10:00-05:00,void,,2.0,,"
    )
    assert [row.number for row in fold(back.entries)] == [3]


def test_repeated_row_is_told_counted_once_and_not_lost() -> None:
    back = _read(GOOD, GOOD.replace("07:02:00-05:00", "12:02:00Z"))
    assert [row.number for row in back.entries] == [1]
    assert [row.number for row in back.repeats] == [2]
    (problem,) = back.problems
    assert (problem.line, problem.kept) == (3, True)
    assert "line 2" in problem.sentence
    everything = back.with_repeats()
    assert [(row.number, row.kind) for row in everything] == [(1, "reading"), (2, "reading"), (3, "void")]
    assert fold(everything) == back.entries


def test_repeats_stay_taken_back_whatever_other_voids_name() -> None:
    back = _read("2026-01-05T07:10:00-05:00,void,,4,,", GOOD, GOOD, GOOD.replace("385", "x"))
    assert fold(back.with_repeats()) == fold(back.entries)


def test_log_of_many_days_is_not_questioned_for_its_dates() -> None:
    days = [
        GOOD.replace("01-05", f"01-{day:02d}").replace("07:02", clock)
        for day in (1, 5, 9)
        for clock in ("07:02", "09:00")
    ]
    assert _read(*days).problems == ()


def test_row_typed_again_after_it_was_taken_back_is_no_repeat() -> None:
    back = _read(GOOD, "2026-01-05T07:10:00-05:00,void,,1,,", GOOD)
    assert back.problems == ()
    assert [row.number for row in fold(back.entries)] == [3]


@pytest.mark.parametrize(
    ("row", "field", "words"),
    [
        ("2026-01-05T07:09:00-05:00,reading,oven_centre,415,C,", "unit", "was 415 °F meant"),
        ("2026-01-05T07:09:00-05:00,reading,oven_centre,3850,F,", "value", "more than a stove reaches"),
        ("2026-01-05T07:09:00-05:00,reading,oven_centre,390,C,", "unit", "was 390 °F meant"),
        ("2026-01-05T07:09:00-05:00,reading,oven_centre,196,F,", "unit", "was 196 °C meant"),
        ("2026-02-05T07:09:00-05:00,reading,oven_centre,385,F,", "clock", "More than a day"),
    ],
)
def test_unlikely_row_is_questioned_and_kept(row: str, field: str, words: str) -> None:
    back = _read(GOOD, GOOD.replace("07:02", "07:04"), row)
    assert len(back.entries) == 3
    (problem,) = back.problems
    assert (problem.line, problem.field, problem.kept) == (4, field, True)
    assert words in problem.sentence


def test_many_problems_are_told_in_one_sentence() -> None:
    back = _read(*["2026-01-05 7:02 PM,lit,,,,"] * 30)
    assert in_one_sentence(back.unreadable).startswith(
        "bread.csv line 2, clock: Clock “2026-01-05 7:02 PM” is a 12-hour"
    )
    assert in_one_sentence(back.unreadable).endswith("(and 29 more like this)")
    assert in_one_sentence(back.unreadable[:1]) == back.unreadable[0].sentence


@given(junk=st.text(st.characters(exclude_categories=("Cs",)), max_size=300))
@settings(max_examples=200)
def test_no_text_under_the_header_makes_reading_fail(junk: str) -> None:
    back = read_log_text(f"{HEADER}\n{junk}", "x.csv", stove_with_default_spots("Kitchen"))
    assert len(back.unreadable) + len(back.entries) + len(back.repeats) <= junk.count("\n") + junk.count("\r") + 1


@given(junk=st.binary(max_size=400))
@settings(max_examples=200)
def test_no_bytes_make_reading_fail_but_with_a_sentence(junk: bytes, tmp_path_factory: pytest.TempPathFactory) -> None:
    path = tmp_path_factory.getbasetemp() / "junk.csv"
    path.write_bytes(junk)
    with pytest.raises(InputProblem):
        read_log(path)


def test_reading_again_after_a_day_of_many_rows_is_the_same() -> None:
    at = datetime(2026, 1, 5, tzinfo=UTC)
    rows = [replace(reading(n), at=at + timedelta(seconds=20 * n)) for n in range(1, 3000)]
    assert read_log_text(log_text(rows), "x.csv").entries == tuple(rows)


def test_a_field_too_long_is_told_even_where_another_library_lifted_the_limit() -> None:
    usual = csv.field_size_limit(10**9)
    try:
        back = _read(GOOD, GOOD + '"' + "x" * 200_000 + '"', GOOD.replace("07:02", "07:09"))
    finally:
        csv.field_size_limit(usual)
    assert [entry.number for entry in back.entries] == [1, 3]
