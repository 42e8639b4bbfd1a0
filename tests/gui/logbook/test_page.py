"""The page Logbook lists, opens, renames, brings in and writes out sessions, and tells the record and the backups."""

import itertools
from dataclasses import replace
from datetime import timedelta
from io import BytesIO

import pandas
import pytest
from pypdf import PdfReader
from PySide6.QtCore import QPoint, QRect, QRectF, Qt
from PySide6.QtGui import QPainter, QPixmap
from PySide6.QtPrintSupport import QPrintDialog
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QComboBox, QDialog, QFileDialog, QLineEdit, QPushButton, QWidget

from cookstove_gui.desk import Desk
from cookstove_gui.desk.logbook.moving import write_everything
from cookstove_gui.forecast.learning.record_by_session import record_by_session
from cookstove_gui.forecast.learning.track_record import track_record
from cookstove_gui.gui.background.past_study import PastStudy
from cookstove_gui.gui.logbook import learning_picture, record_picture
from cookstove_gui.gui.logbook.opened_session import OpenedSession
from cookstove_gui.gui.logbook.page import LogbookPage
from cookstove_gui.gui.logbook.record_picture import RecordPicture
from cookstove_gui.gui.logbook.session_list import ROW, SessionList
from cookstove_gui.gui.widgets import printing
from cookstove_gui.gui.widgets.steps import px
from cookstove_gui.logbook.log_file import read_log
from cookstove_gui.logbook.logbook import Logbook
from cookstove_gui.phrases.edge import local_day, short_date
from cookstove_gui.study import StudyInputs, study
from tests.forecast.learning.made_records import record_rows
from tests.gui.clipping import settle
from tests.gui.hands import control, lines, push, seen, type_in
from tests.gui.pages import NOW, held_desk, keep_session, shown, the_look

pytestmark = [pytest.mark.gui, pytest.mark.usefixtures("worked_out_once")]

GOOD = (
    "clock,kind,spot,value,unit,note\r\n"
    "2026-01-05T07:00:00-05:00,lit,,,,\r\n"
    "2026-01-05T07:02:00-05:00,reading,oven_centre,85,F,\r\n"
)
BAD_ROW = "2026-01-05T07:12:00-05:00,reading,oven_centre,3x5,F,\r\n"


@pytest.fixture
def desk() -> Desk:
    return held_desk()


@pytest.fixture
def studies() -> None:
    """The page begins a study of its own when it is shown, as in the program."""


@pytest.fixture(autouse=True)
def _no_study_but_where_asked_for(request: pytest.FixtureRequest, monkeypatch: pytest.MonkeyPatch) -> None:
    if "studies" not in request.fixturenames:
        monkeypatch.setattr(PastStudy, "start_if_due", lambda _self: None)


def test_sessions_stand_there_the_latest_first(qtbot, desk):
    keep_session(desk, "Old", NOW - timedelta(days=9))
    keep_session(desk, "New", NOW - timedelta(days=2))
    page, _ = shown(qtbot, desk, LogbookPage)
    assert [text.split("\n")[0] for text in lines(page, "session_list")] == ["New", "Old"]


def test_two_hundred_sessions_are_listed(qtbot, desk):
    for place in range(200):
        desk.logbook.start_session(desk.stove.name, f"Firing {place}")
    page, _ = shown(qtbot, desk, LogbookPage)
    assert len(lines(page, "session_list")) == 200
    assert seen(page, "session_count") == "200 sessions of My stove"


def test_the_list_shows_whole_rows_alone_however_high_it_is(qtbot, desk):
    for place in range(9):
        keep_session(desk, f"Firing {place}", NOW - timedelta(days=place))
    page = shown(qtbot, desk, LogbookPage, (1000, 600))[0]
    rows = control(page, "session_list", SessionList)
    for height in (600, 633, 700, 590):
        page.resize(1000, height)
        settle()
        assert rows.viewport().height() % px(ROW) == 0, height
        assert rows.contentsRect().height() - rows.viewport().height() < px(ROW)
        rows.verticalScrollBar().setValue(1)
        assert rows.visualRect(rows.model().index(1, 0)).top() == 0


def test_finding_shows_only_what_matches(qtbot, desk):
    keep_session(desk, "Sunday bread", NOW - timedelta(days=9))
    keep_session(desk, "Jam", NOW - timedelta(days=2))
    page, _ = shown(qtbot, desk, LogbookPage)
    QTest.keyClicks(control(page, "session_find", QLineEdit), "bread")
    assert len(lines(page, "session_list")) == 1


def test_enter_opens_the_chosen_session(qtbot, desk):
    number = keep_session(desk, "Sunday bread", NOW - timedelta(days=9))
    page, _ = shown(qtbot, desk, LogbookPage)
    sessions = control(page, "session_list", SessionList)
    sessions.setFocus()
    with qtbot.waitSignal(page.session_opened, timeout=2000):
        QTest.keyClick(sessions, Qt.Key.Key_Return)
    assert desk.session is not None
    assert desk.session.number == number


def test_a_session_is_renamed_in_the_logbook(qtbot, desk):
    number = keep_session(desk, "Sunday", NOW - timedelta(days=9))
    page, _ = shown(qtbot, desk, LogbookPage)
    push(page, "session_rename")
    type_in(page, "session_title", "Rye for the week")
    assert desk.logbook.session(number).title == "Rye for the week"


def test_an_empty_title_gets_a_sentence_and_changes_nothing(qtbot, desk):
    number = keep_session(desk, "Sunday", NOW - timedelta(days=9))
    page, _ = shown(qtbot, desk, LogbookPage)
    push(page, "session_rename")
    type_in(page, "session_title", "")
    assert "no title" in seen(page, "session_title_problem")
    assert desk.logbook.session(number).title == "Sunday"


def test_new_session_pressed_twice_leaves_one_empty_session(qtbot, desk):
    page, _ = shown(qtbot, desk, LogbookPage)
    push(page, "session_new")
    push(page, "session_new")
    assert len(desk.sessions) == 1


def test_a_written_log_reads_back_the_same(qtbot, desk, tmp_path, monkeypatch):
    number = keep_session(desk, "Sunday bread", NOW - timedelta(days=9))
    target = tmp_path / "out.csv"
    monkeypatch.setattr(QFileDialog, "getSaveFileName", lambda *_args, **_named: (str(target), ""))
    page, _ = shown(qtbot, desk, LogbookPage)
    push(page, "session_export")
    assert read_log(target).entries == desk.logbook.session(number).entries
    assert "Written" in seen(page, "session_told")


def test_a_clean_file_comes_in_without_a_question(qtbot, desk, tmp_path, monkeypatch):
    bring(monkeypatch, tmp_path, GOOD)
    page, _ = shown(qtbot, desk, LogbookPage)
    push(page, "part_files")
    push(page, "import_files")
    qtbot.waitUntil(lambda: seen(page, "import_told").startswith("Kept"), timeout=5000)
    assert [row.entry_count for row in desk.sessions] == [2]


def test_a_bad_row_is_named_by_line_and_field_before_anything_is_kept(qtbot, desk, tmp_path, monkeypatch):
    bring(monkeypatch, tmp_path, GOOD + BAD_ROW)
    page, _ = shown(qtbot, desk, LogbookPage)
    push(page, "part_files")
    push(page, "import_files")
    qtbot.waitUntil(lambda: len(lines(page, "import_problems")) == 1, timeout=5000)
    assert "line 4, value" in lines(page, "import_problems")[0]
    assert desk.sessions == ()


def test_the_good_rows_are_kept_when_the_cook_says_so(qtbot, desk, tmp_path, monkeypatch):
    bring(monkeypatch, tmp_path, GOOD + BAD_ROW)
    page, _ = shown(qtbot, desk, LogbookPage)
    push(page, "part_files")
    push(page, "import_files")
    qtbot.waitUntil(lambda: seen(page, "import_question") != "", timeout=5000)
    push(page, "import_keep")
    assert [row.entry_count for row in desk.sessions] == [2]


def test_nothing_is_kept_when_the_cook_says_so(qtbot, desk, tmp_path, monkeypatch):
    bring(monkeypatch, tmp_path, GOOD + BAD_ROW)
    page, _ = shown(qtbot, desk, LogbookPage)
    push(page, "part_files")
    push(page, "import_files")
    qtbot.waitUntil(lambda: seen(page, "import_question") != "", timeout=5000)
    push(page, "import_nothing")
    assert desk.sessions == ()
    assert "has not changed" in seen(page, "import_told")


def test_a_file_that_is_no_log_gets_one_sentence(qtbot, desk, tmp_path, monkeypatch):
    bring(monkeypatch, tmp_path, "")
    page, _ = shown(qtbot, desk, LogbookPage)
    push(page, "part_files")
    push(page, "import_files")
    qtbot.waitUntil(lambda: "holds no rows" in seen(page, "sheet_problem"), timeout=5000)


def test_with_too_few_windows_the_track_record_says_so_and_draws_nothing(qtbot, desk, studies):
    for day in (9, 6, 3):
        keep_session(desk, f"Day {day}", NOW - timedelta(days=day))
    page, link = shown(qtbot, desk, LogbookPage)
    push(page, "part_record")
    studying = PastStudy.of(link)
    qtbot.waitUntil(lambda: desk.study is not None and not studying.is_running, timeout=20000)
    assert desk.study is not None
    assert str(desk.study.record.projections) in seen(page, "record_behind")
    assert not control(page, "record_picture", RecordPicture).isVisibleTo(page)


def with_a_record(qtbot, desk) -> LogbookPage:
    keep_session(desk, "Day", NOW - timedelta(days=9))
    page, link = shown(qtbot, desk, LogbookPage)
    PastStudy.of(link).cancel()
    push(page, "part_record")
    rows = record_rows(sessions=6, held=(True, True, True, False, True, True))
    found = study(StudyInputs(stove=desk.stove, sessions=(), fingerprint=""))
    assert found is not None
    desk.show_study(replace(found, record=track_record(desk.stove.name, 6, rows)))
    qtbot.waitUntil(lambda: control(page, "record_picture", RecordPicture).isVisibleTo(page), timeout=5000)
    return page


@pytest.mark.parametrize(("text", "beside"), [(1.0, True), (1.5, False)])
def test_no_picture_of_the_record_is_cut_at_the_right(qtbot, qapp, desk, text, beside):
    page, look = with_a_record(qtbot, desk), the_look(qapp)
    try:
        look.set_text_size(text)
        page.resize(994, 640)
        settle()
        windows, learning = (control(page, f"{name}_picture", QWidget) for name in ("record", "learning"))
        left, right = windows.mapTo(page, QPoint()).x(), learning.mapTo(page, QPoint()).x()
        assert (right > left) == beside
        assert max(left + windows.width(), right + learning.width()) <= page.width()
    finally:
        look.set_text_size(1.0)


def test_the_minutes_over_the_windows_keep_apart(qtbot, desk, monkeypatch):
    page = with_a_record(qtbot, desk)
    picture, drawn = control(page, "record_picture", RecordPicture), []
    monkeypatch.setattr(record_picture, "draw_words", lambda _painter, _box, words, *_a, **_k: drawn.append(words))
    for wide, has_all in ((500, False), (800, True)):
        drawn.clear()
        picture.resize(wide, picture.height())
        picture.grab(QRect(0, 0, wide, 200))
        assert ("20" in drawn) == has_all
        assert "40 min sooner" in drawn


def test_the_track_record_is_told_and_drawn(qtbot, desk):
    page = with_a_record(qtbot, desk)
    assert seen(page, "record_sentence").startswith("Of 12 windows said about an hour ahead 10 held")
    control(page, "record_picture", RecordPicture).copy_values()
    assert len(QApplication.clipboard().text().splitlines()) == 13


def test_backing_up_tells_the_age_of_the_last_good_one(qtbot, tmp_path):
    logbook = Logbook.open(tmp_path / "logbook.sqlite")
    desk = Desk(logbook, clock=lambda: NOW)
    page, _ = shown(qtbot, desk, LogbookPage)
    push(page, "part_files")
    assert seen(page, "backup_age") == "There is no backup yet."
    push(page, "backup_now")
    assert seen(page, "backup_age") == "The last good backup was made just now."
    assert len(logbook.backups()) == 1
    logbook.close()


def test_a_logbook_in_memory_says_why_it_cannot_be_backed_up(qtbot, desk):
    page, _ = shown(qtbot, desk, LogbookPage)
    push(page, "part_files")
    push(page, "backup_now")
    assert "no folder for backups" in seen(page, "backup_problem")


def bring(monkeypatch, tmp_path, text: str) -> None:
    """Make the file dialog answer with a file that holds this text."""
    path = tmp_path / "morning.csv"
    path.write_bytes(text.encode())
    monkeypatch.setattr(QFileDialog, "getOpenFileNames", lambda *_args, **_named: ([str(path)], ""))


@pytest.fixture
def quick(monkeypatch):
    """No cautions are looked for, which takes most of a report's time."""
    monkeypatch.setattr("cookstove_gui.reports.session_report.due_cautions", lambda *_asked: ())


@pytest.mark.usefixtures("quick")
@pytest.mark.parametrize(("key", "ending", "begins"), [("html", ".html", b"<!"), ("pdf", ".pdf", b"%PDF")])
def test_a_report_is_written(qtbot, desk, tmp_path, monkeypatch, key, ending, begins):
    keep_session(desk, "Sunday bread", NOW - timedelta(days=9))
    target = tmp_path / f"report{ending}"
    monkeypatch.setattr(QFileDialog, "getSaveFileName", lambda *_args, **_named: (str(target), ""))
    page, _ = shown(qtbot, desk, LogbookPage)
    push(page, "session_report")
    push(page, f"session_report_{key}")
    qtbot.waitUntil(lambda: seen(page, "session_report_told").startswith("Written"), timeout=20000)
    assert target.read_bytes().lstrip().startswith(begins)


@pytest.mark.usefixtures("quick")
@pytest.mark.parametrize(("whom", "whole"), [("visitor", False), ("record", True)])
def test_a_visitor_gets_the_first_page_alone(qtbot, desk, tmp_path, monkeypatch, whom, whole):
    keep_session(desk, "Sunday bread", NOW - timedelta(days=9))
    target = tmp_path / "report.html"
    monkeypatch.setattr(QFileDialog, "getSaveFileName", lambda *_args, **_named: (str(target), ""))
    page, _ = shown(qtbot, desk, LogbookPage)
    push(page, "session_report")
    push(page, f"session_report_whom_{whom}")
    push(page, "session_report_clock_12")
    push(page, "session_report_html")
    qtbot.waitUntil(lambda: seen(page, "session_report_told").startswith("Written"), timeout=20000)
    written = target.read_text("utf-8")
    assert "Highest of each spot" in written
    assert ("What was done" in written) is whole
    assert " am" in written or " pm" in written


@pytest.mark.usefixtures("quick")
def test_a_report_goes_to_the_printer(qtbot, desk, monkeypatch):
    keep_session(desk, "Sunday bread", NOW - timedelta(days=9))
    on_paper: list[bytes] = []
    monkeypatch.setattr(QPrintDialog, "exec", lambda _dialog: QDialog.DialogCode.Accepted)
    monkeypatch.setattr(printing, "print_pages", lambda pdf, _printer: on_paper.append(pdf))
    page, _ = shown(qtbot, desk, LogbookPage)
    push(page, "session_report")
    push(page, "session_report_print")
    qtbot.waitUntil(lambda: seen(page, "session_report_told") == "Sent to the printer.", timeout=20000)
    pages = PdfReader(BytesIO(on_paper[0])).pages
    assert len(pages) == 1
    assert "Sunday bread" in pages[0].extract_text()


def test_a_season_and_the_stove_are_reported_too(qtbot, desk, tmp_path, monkeypatch):
    keep_session(desk, "Sunday bread", NOW - timedelta(days=9))
    target = tmp_path / "report.html"
    monkeypatch.setattr(QFileDialog, "getSaveFileName", lambda *_args, **_named: (str(target), ""))
    page, _ = shown(qtbot, desk, LogbookPage)
    push(page, "part_seasons")
    qtbot.waitUntil(lambda: control(page, "season_report", QPushButton).isVisibleTo(page), timeout=20000)
    push(page, "season_report")
    for place, title in ((0, "Winter 2025–26"), (1, desk.stove.name)):
        target.unlink(missing_ok=True)
        which = control(page, "season_report_about", QComboBox)
        which.setCurrentIndex(place)
        which.activated.emit(place)
        push(page, "season_report_html")
        qtbot.waitUntil(target.exists, timeout=20000)
        assert f"<h1>{title}</h1>" in target.read_text("utf-8")


@pytest.mark.usefixtures("quick")
def test_a_report_that_cannot_be_written_gets_one_sentence(qtbot, desk, tmp_path, monkeypatch):
    keep_session(desk, "Sunday bread", NOW - timedelta(days=9))
    target = tmp_path / "no such folder" / "report.html"
    monkeypatch.setattr(QFileDialog, "getSaveFileName", lambda *_args, **_named: (str(target), ""))
    page, _ = shown(qtbot, desk, LogbookPage)
    push(page, "session_report")
    push(page, "session_report_pdf")
    qtbot.waitUntil(lambda: "choose another place" in seen(page, "session_report_problem"), timeout=20000)


def test_a_whole_logbook_is_looked_at_and_then_comes_in(qtbot, desk, tmp_path, monkeypatch):
    other = held_desk()
    other.save_stove(replace(other.stove, name="Cabin stove"))
    keep_session(other, "Cabin bread", NOW - timedelta(days=9))
    write_everything(other, tmp_path / "all.zip")
    monkeypatch.setattr(QFileDialog, "getOpenFileNames", lambda *_args, **_named: ([str(tmp_path / "all.zip")], ""))
    mine = desk.stove.name
    page, _ = shown(qtbot, desk, LogbookPage)
    push(page, "part_files")
    push(page, "import_files")
    qtbot.waitUntil(lambda: seen(page, "import_question").startswith("all.zip brings 1 session"), timeout=20000)
    assert len(desk.logbook.sessions()) == 0
    push(page, "import_keep")
    qtbot.waitUntil(lambda: seen(page, "import_told").startswith("Kept: 1 session"), timeout=20000)
    assert "Cabin stove can be chosen" in seen(page, "import_told")
    assert desk.stove.name == mine


def test_without_a_past_session_none_waits_for_a_study(qtbot, stood_desk):
    assert stood_desk.sessions  # the live one
    page, _ = shown(qtbot, stood_desk, LogbookPage)
    push(page, "part_record")
    assert seen(page, "record_sentence").startswith("No past session yet")


def test_a_study_that_is_stopped_is_offered_again(qtbot, desk, studies):
    for day in range(1, 4):
        keep_session(desk, f"Day {day}", NOW - timedelta(days=day))
    page, link = shown(qtbot, desk, LogbookPage)
    push(page, "part_record")
    studying = PastStudy.of(link)
    push(page, "record_study_press")
    qtbot.waitUntil(lambda: not studying.is_running, timeout=20000)
    assert desk.study is None
    assert "stopped" in seen(page, "record_study_words")
    push(page, "record_study_press")
    assert studying.is_running


@pytest.mark.parametrize("ending", [".csv", ".xlsx", ".parquet"])
@pytest.mark.parametrize(("of_all", "titles"), [(False, {"Monday"}), (True, {"Sunday", "Monday"})])
def test_a_table_of_one_session_or_of_all_is_written(qtbot, desk, tmp_path, monkeypatch, ending, of_all, titles):
    keep_session(desk, "Sunday", NOW - timedelta(days=9))
    keep_session(desk, "Monday", NOW - timedelta(days=8))
    filters = {".csv": "CSV table (*.csv)", ".xlsx": "Spreadsheet (*.xlsx)", ".parquet": "Parquet (*.parquet)"}
    given = (str(tmp_path / "table"), filters[ending])
    monkeypatch.setattr(QFileDialog, "getSaveFileName", lambda *_args, **_named: given)
    page, _ = shown(qtbot, desk, LogbookPage)
    if of_all:
        push(page, "part_files")
        push(page, "sessions_table")
    else:
        choose(page, "Write as a table …")
    told = "files_told" if of_all else "session_told"
    qtbot.waitUntil(lambda: seen(page, told).startswith("Written: "), timeout=60000)
    read = {".csv": pandas.read_csv, ".xlsx": pandas.read_excel, ".parquet": pandas.read_parquet}[ending]
    assert set(read(tmp_path / f"table{ending}")["title"]) == titles


def test_a_table_that_cannot_be_written_gets_one_sentence(qtbot, desk, tmp_path, monkeypatch):
    keep_session(desk, "Sunday", NOW - timedelta(days=9))
    monkeypatch.setattr(QFileDialog, "getSaveFileName", lambda *_args, **_named: (str(tmp_path / "no" / "t.csv"), ""))
    page, _ = shown(qtbot, desk, LogbookPage)
    choose(page, "Write as a table …")
    qtbot.waitUntil(lambda: "choose another place" in seen(page, "session_problem"), timeout=60000)


def choose(page, words: str) -> None:
    """Choose from the menu of the opened session."""
    session = control(page, "opened_session", OpenedSession)
    card = control(page, "session_list", SessionList).card
    dict(session.ways(card))[words]()
    QApplication.processEvents()


def test_every_sign_of_the_record_is_named_however_narrow_it_is(qtbot, desk):
    picture = RecordPicture(the_look(QApplication.instance()))
    qtbot.addWidget(picture)
    with pytest.MonkeyPatch.context() as patch:
        told = []
        module = "cookstove_gui.gui.logbook.record_picture"
        patch.setattr(f"{module}.draw_words", lambda _painter, box, words, *_, **_more: told.append((box, words)))
        canvas = QPixmap(px(500), 100)
        painter = QPainter(canvas)
        record_picture._Drawing(painter, picture.look, QRectF(0, 0, px(500), 100))._draw_signs(10.0)
        painter.end()
    assert [words for _, words in told] == ["window, and when it came", "came outside", "still to come"]
    assert told[0][0].left() > 0
    assert told[-1][0].right() <= px(500)
    assert all(one.right() < other.left() for (one, _), (other, _) in itertools.pairwise(told))


def test_the_highest_number_of_a_small_plot_stands_below_its_heading(qtbot, monkeypatch, look):
    written = {}
    monkeypatch.setattr(
        learning_picture, "draw_words", lambda _painter, box, words, *_, **__: written.update({words: box})
    )
    picture, paper = learning_picture.LearningPicture(look), QPixmap(330, 120)
    qtbot.addWidget(picture)
    painter = QPainter(paper)
    picture._plot(painter, QRectF(0, 0, 330, 120), "Length of a window", (164.0, 90.0, 60.0))
    assert written["164"].top() >= written["Length of a window"].bottom()
    found = record_by_session(record_rows(sessions=6, held=(True,) * 6))
    picture.show_record(found, "")
    picture.draw(painter, QRectF(0, 0, 330, 400))
    painter.end()
    for one in (found.sessions[0], found.sessions[-1]):  # from when to when
        assert short_date(local_day(one.at, one.offset_minutes)) in written
