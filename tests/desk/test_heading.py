"""What stands over the pages is live only while the session is, and says what a new stove waits for."""

from dataclasses import replace

from cookstove_gui.desk import Desk
from cookstove_gui.desk.heading import first_fires_words, shown_cautions, shown_detail, shown_headline
from tests.desk.conftest import stand
from tests.held_clock import HeldClock


def test_a_session_that_is_over_gives_no_orders_and_no_cautions(burning_desk: Desk, held_clock: HeldClock) -> None:
    burning_desk.read("620", spot="flue")
    live = stand(burning_desk)
    assert shown_cautions(live)
    assert "over" not in shown_headline(live)
    number = burning_desk.session.number if burning_desk.session else 0
    held_clock.pass_minutes(7 * 60)
    burning_desk.open_session(number)
    stand(burning_desk)
    assert not burning_desk.is_live
    assert shown_headline(burning_desk).startswith("This session is over.")
    assert shown_detail(burning_desk) == ""
    assert shown_cautions(burning_desk) == ()


def test_a_new_stove_waits_for_its_first_fires_and_then_for_the_cold(burning_desk: Desk) -> None:
    assert first_fires_words(burning_desk) == ""
    burning_desk.save_stove(replace(burning_desk.stove, is_new=True))
    assert first_fires_words(burning_desk).startswith("First fire 1")
    stand(burning_desk)
    assert first_fires_words(burning_desk) == shown_headline(burning_desk)
