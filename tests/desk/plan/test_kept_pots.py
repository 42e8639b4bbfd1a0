"""The pots and their places outlive a restart; another session begins with the same pots and no places."""

from dataclasses import replace

import pytest

from cookstove_gui.cooking.fit.placement import Pot
from cookstove_gui.desk import Desk
from cookstove_gui.desk.plan.kept_pots import KeptPots, keep_pots, kept_pots, moved, put_on, with_pot, without_pot
from cookstove_gui.stove.entries import Kind
from tests.held_clock import HeldClock


def test_what_is_kept_is_there_after_a_restart(burning_desk: Desk) -> None:
    kept = with_pot(with_pot(kept_pots(burning_desk), "boil"), "boil")
    kept = replace(put_on(kept, 1, "top_front_left"), decided_at=burning_desk.clock(), of_rows="3 3", gain=0.2)
    keep_pots(burning_desk, kept)
    assert kept_pots(Desk(burning_desk.logbook, burning_desk.clock)) == kept


def test_another_session_begins_with_the_pots_and_without_their_places(
    burning_desk: Desk, held_clock: HeldClock
) -> None:
    keep_pots(burning_desk, put_on(with_pot(kept_pots(burning_desk), "boil"), 0, "top_front_left"))
    held_clock.pass_minutes(30 * 60)
    burning_desk.do(Kind.LIT)
    assert kept_pots(burning_desk).pots == (Pot(task="boil"),)


@pytest.mark.parametrize(
    ("text", "tasks"), [("fry_eggs bread", ["fry_eggs", "bread"]), ("", []), ("{broken", []), ('{"session": 1}', [])]
)
def test_what_an_older_version_kept_is_read_and_what_is_broken_is_nothing(
    burning_desk: Desk, text: str, tasks: list[str]
) -> None:
    burning_desk.set_setting("pots", text)
    assert [pot.task for pot in kept_pots(burning_desk).pots] == tasks


def test_a_pot_taken_off_leaves_the_others_where_they_stand(burning_desk: Desk) -> None:
    kept = put_on(with_pot(with_pot(kept_pots(burning_desk), "boil"), "simmer"), 1, "top_front_left")
    assert without_pot(kept, 0).pots == (Pot(task="simmer", spot="top_front_left", is_own=True),)


def test_a_spot_is_given_to_one_pot_only(burning_desk: Desk) -> None:
    kept = with_pot(with_pot(kept_pots(burning_desk), "boil"), "simmer")
    kept = put_on(put_on(kept, 0, "top_front_left"), 1, "top_front_left")
    assert kept.pots == (Pot(task="boil"), Pot(task="simmer", spot="top_front_left", is_own=True))
    assert put_on(kept, 1, "").pots[1] == Pot(task="simmer")


def test_a_pot_put_elsewhere_has_all_places_decided_again(burning_desk: Desk) -> None:
    kept = replace(with_pot(kept_pots(burning_desk), "boil"), decided_at=burning_desk.clock())
    assert put_on(kept, 0, "top_front_left").decided_at is None
    assert with_pot(kept, "simmer").decided_at is None


def test_a_move_done_leaves_the_pot_where_it_was_to_go() -> None:
    kept = KeptPots(pots=(Pot(task="boil", spot="top_front_left", to="flue"), Pot(task="simmer", spot="a")), gain=0.3)
    assert moved(kept) == KeptPots(pots=(Pot(task="boil", spot="flue"), Pot(task="simmer", spot="a")))


def test_pots_may_be_chosen_before_a_session_is_begun(held_desk: Desk, held_clock: HeldClock) -> None:
    keep_pots(held_desk, with_pot(kept_pots(held_desk), "boil"))
    assert kept_pots(held_desk).pots == (Pot(task="boil"),)
    held_desk.do(Kind.LIT)
    assert kept_pots(held_desk).pots == (Pot(task="boil"),)
    assert kept_pots(held_desk).session == (held_desk.session.number if held_desk.session else -1)
