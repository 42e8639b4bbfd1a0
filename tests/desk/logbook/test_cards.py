"""The list of sessions: quick at first, then with what each log says; kept until a session grows."""

from datetime import timedelta

from cookstove_gui.cooking.supper.dish_text import usual_dishes
from cookstove_gui.desk import Desk
from cookstove_gui.desk.logbook.cards import Cards, card_inputs
from cookstove_gui.desk.logbook.changing import put_in_bin, set_tags
from cookstove_gui.stove.entries import Entry, Kind
from tests.held_clock import HeldClock

from .made import keep


def test_a_card_says_what_came_of_its_session(held_desk: Desk, held_clock: HeldClock) -> None:
    keep(held_desk, "Rye", held_clock() - timedelta(days=9), (90, 250, 350, 380, 400))
    keep(held_desk, "Stew", held_clock() - timedelta(days=8), (90, 180, 260, 250))
    held_desk.logbook.start_session(held_desk.stove.name, "Empty")
    cards = Cards(held_desk.logbook).worked_out(card_inputs(held_desk))
    # Rye passes 365 °F midway between 350 at 53 min and 380 at 78 min after it was lit.
    assert [(card.day, card.line) for card in cards] == [
        ("", "nothing entered yet"),
        ("Fri 6 Mar", "260 °F after 53 min"),
        ("Thu 5 Mar", "bread heat after 1 h 06"),
    ]


def test_a_session_of_last_year_says_its_year(held_desk: Desk, held_clock: HeldClock) -> None:
    keep(held_desk, "Old", held_clock() - timedelta(days=320))
    (card,) = Cards(held_desk.logbook).plain(card_inputs(held_desk))
    assert card.day == "28 Apr 2025"


def test_before_a_log_is_read_its_card_stands_without_it(held_desk: Desk, held_clock: HeldClock) -> None:
    keep(held_desk, "Rye", held_clock() - timedelta(days=9))
    cards = Cards(held_desk.logbook)
    (plain,) = cards.plain(card_inputs(held_desk))
    assert (plain.facts, plain.line) == (None, "")
    (worked_out,) = cards.worked_out(card_inputs(held_desk))
    assert cards.plain(card_inputs(held_desk)) == (worked_out,)


def test_the_session_being_written_is_on_the_stove_and_its_card_grows(burning_desk: Desk) -> None:
    cards = Cards(burning_desk.logbook)
    (before,) = cards.worked_out(card_inputs(burning_desk))
    assert (before.is_live, before.line) == (True, "on the stove now")
    burning_desk.do(Kind.NOTE, note="juniper")
    (after,) = cards.worked_out(card_inputs(burning_desk))
    assert "juniper" in after.words
    assert "juniper" not in before.words


def test_what_lies_in_the_bin_is_a_list_of_its_own(held_desk: Desk, held_clock: HeldClock) -> None:
    number = keep(held_desk, "Rye", held_clock() - timedelta(days=9))
    put_in_bin(held_desk, [number])
    cards, asked = Cards(held_desk.logbook), card_inputs(held_desk)
    assert cards.worked_out(asked) == ()
    (binned,) = cards.in_bin(asked)
    assert (binned.number, binned.is_binned, binned.line) == (number, True, "in the bin since 14 Mar")


def test_a_card_is_found_by_what_was_written_but_not_by_how_a_reading_was_taken(
    held_desk: Desk, held_clock: HeldClock
) -> None:
    def row(number: int, kind: Kind, note: str = "", spot: str = "", value: str = "") -> Entry:
        at = held_clock() + timedelta(minutes=number)
        unit = "F" if value else ""
        return Entry(
            number=number, at=at, offset_minutes=0, kind=kind, note=note, spot=spot, value=value, unit=unit,
        )  # fmt: skip

    rows = [
        row(1, Kind.LIT, "newspaper"),
        row(2, Kind.WOOD, "two splits Birch"),
        row(3, Kind.READING, "shaky", "oven_centre", "200"),
        row(4, Kind.OVEN_IN, "rye"),
        row(5, Kind.OVEN_OUT, "brown"),
        row(6, Kind.NOTE, "wind"),
    ]
    session = held_desk.logbook.add_session(held_desk.stove.name, "Sunday", rows)
    set_tags(held_desk, session.number, "Christmas")
    (card,) = Cards(held_desk.logbook).worked_out(card_inputs(held_desk))
    assert card.tags == ("christmas",)
    assert all(word in card.words for word in ("sunday", "christmas", "two splits birch rye brown wind", "march"))
    assert not any(word in card.words for word in ("newspaper", "shaky"))  # no words of a cook about the session
    assert card.words == card.words.casefold()


def test_only_a_session_that_is_still_written_is_on_the_stove(burning_desk: Desk, held_clock: HeldClock) -> None:
    keep(burning_desk, "Rye", held_clock() - timedelta(days=9))
    assert [card.is_live for card in Cards(burning_desk.logbook).plain(card_inputs(burning_desk))] == [True, False]
    held_clock.pass_minutes(24 * 60)
    assert card_inputs(burning_desk).live == 0
    assert not any(card.is_live for card in Cards(burning_desk.logbook).worked_out(card_inputs(burning_desk)))


def test_another_heat_wanted_works_the_cards_out_again(held_desk: Desk, held_clock: HeldClock) -> None:
    keep(held_desk, "Rye", held_clock() - timedelta(days=9), (90, 250, 350, 380, 400))
    cards = Cards(held_desk.logbook)
    (bread,) = cards.worked_out(card_inputs(held_desk))
    held_desk.choose_band("500-550")
    (hotter,) = cards.worked_out(card_inputs(held_desk))
    assert bread.facts is not None
    assert hotter.facts is not None
    assert (bread.facts.rise_min is None, hotter.facts.rise_min is None) == (False, True)


def test_the_bin_shows_the_latest_first_and_what_lies_there_is_not_in_the_list(
    held_desk: Desk, held_clock: HeldClock
) -> None:
    old, new = (keep(held_desk, title, held_clock() - timedelta(days=9)) for title in ("Rye", "Stew"))
    put_in_bin(held_desk, [new])
    held_clock.pass_minutes(60)
    put_in_bin(held_desk, [old])
    found = Cards(held_desk.logbook).in_bin(card_inputs(held_desk))
    assert [card.number for card in found] == [old, new]
    assert all(card.facts is not None for card in found)


def test_a_session_is_found_by_the_dishes_of_the_supper_planned_for_it(held_desk: Desk, held_clock: HeldClock) -> None:
    number = keep(held_desk, "Sunday", held_clock() - timedelta(minutes=70))
    dish = next(one for one in usual_dishes() if one.key == "greens")
    held_desk.supper.set_table(held_clock() + timedelta(minutes=10))
    held_desk.supper.add(dish)
    cards = {card.number: card for card in Cards(held_desk.logbook).worked_out(card_inputs(held_desk))}
    assert dish.name.casefold() in cards[number].words
