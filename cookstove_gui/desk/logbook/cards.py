"""The list of sessions: a card for each, with its day, what came of it and the oven's curve.

Summaries are read at once; what the logs say is worked out off the screen's thread and kept for each session until
that grows.
"""

from dataclasses import dataclass, replace
from datetime import date, timedelta

from cookstove_gui.cooking.fires.firing_facts import FiringFacts, firing_facts
from cookstove_gui.desk.desk import Desk
from cookstove_gui.desk.plan.supper import suppers_between
from cookstove_gui.logbook.keeping import Binned
from cookstove_gui.logbook.logbook import Logbook, SessionSummary
from cookstove_gui.phrases.logbook.sessions import ON_TABLE, binned_words, came_of_it, list_day, searched_words
from cookstove_gui.stove.entries import HeatBand, Kind, Session, fold
from cookstove_gui.stove.stove import Stove

_SPEAKING = (Kind.NOTE, Kind.WOOD, Kind.OVEN_IN, Kind.OVEN_OUT)  # rows whose notes are searched


@dataclass(frozen=True, slots=True, kw_only=True)
class Card:
    """One session in the list."""

    summary: SessionSummary
    day: str
    line: str  # what came of it
    tags: tuple[str, ...]
    words: str  # what it is found by, in small letters
    is_live: bool  # on the table and still being written
    facts: FiringFacts | None = None  # none until worked out, or where nothing was entered
    is_binned: bool = False

    @property
    def number(self) -> int:
        """Of the session."""
        return self.summary.number


@dataclass(frozen=True, slots=True, kw_only=True)
class CardInputs:
    """What the cards are made from."""

    stove: Stove
    band: HeatBand
    unit: str
    summaries: tuple[SessionSummary, ...]
    binned: tuple[Binned, ...]
    tags: dict[int, tuple[str, ...]]
    live: int  # number of the session that is being written; 0 for none
    today: date


def card_inputs(desk: Desk) -> CardInputs:
    """As the logbook stands now; quick."""
    return CardInputs(
        stove=desk.stove,
        band=desk.band,
        unit=desk.unit,
        summaries=desk.sessions,
        binned=desk.logbook.keeping.binned(desk.stove.name),
        tags=desk.logbook.keeping.tags(),
        live=desk.session.number if desk.session is not None and desk.is_live else 0,
        today=(desk.clock() + timedelta(minutes=desk.offset_minutes)).date(),
    )


class Cards:
    """Makes the cards; what a log says is kept, so that a lifetime of sessions is read once. May run in a thread."""

    def __init__(self, logbook: Logbook) -> None:
        self._logbook = logbook
        self._kept: dict[tuple[object, ...], tuple[FiringFacts | None, str]] = {}

    def plain(self, asked: CardInputs) -> tuple[Card, ...]:
        """The cards of the sessions as far as they are known without reading a log."""
        return tuple(self._card(asked, one, self._kept.get(_key(asked, one))) for one in asked.summaries)

    def worked_out(self, asked: CardInputs) -> tuple[Card, ...]:
        """The cards with what their logs say."""
        return tuple(self._card(asked, one, self._facts(asked, one)) for one in asked.summaries)

    def in_bin(self, asked: CardInputs) -> tuple[Card, ...]:
        """The cards of what lies in the bin, the latest first."""
        cards = []
        for one in asked.binned:
            card = self._card(asked, one.summary, self._facts(asked, one.summary))
            line = binned_words(one.at, one.summary.offset_minutes)
            cards.append(replace(card, line=line, is_binned=True))
        return tuple(cards)

    def _facts(self, asked: CardInputs, one: SessionSummary) -> tuple[FiringFacts | None, str]:
        key = _key(asked, one)
        if key not in self._kept:
            session = self._logbook.session(one.number)
            self._kept[key] = (firing_facts(asked.stove, session, asked.band), self._words_of(session))
        return self._kept[key]

    def _words_of(self, session: Session) -> str:
        """Everything written in words in a session, and the dishes of the suppers planned for it."""
        rows = fold(session.entries)
        if not rows:
            return ""
        suppers = suppers_between(self._logbook, session.stove, rows[0].at, rows[-1].at)
        dishes = [dish.name for supper in suppers for dish in supper.dishes]
        return " ".join([*(row.note for row in rows if row.note and row.kind in _SPEAKING), *dishes])

    @staticmethod
    def _card(asked: CardInputs, one: SessionSummary, known: tuple[FiringFacts | None, str] | None) -> Card:
        tags = asked.tags.get(one.number, ())
        facts, notes = known or (None, "")
        searched = searched_words(one.title, tags, one.first_at, one.offset_minutes)
        line = came_of_it(facts, asked.band, asked.unit) if known or not one.entry_count else ""
        return Card(
            summary=one,
            day=list_day(one.first_at, one.offset_minutes, asked.today),
            line=ON_TABLE if one.number == asked.live else line,
            tags=tags,
            words=f"{searched} {notes}".casefold(),
            is_live=one.number == asked.live,
            facts=facts,
        )


def _key(asked: CardInputs, one: SessionSummary) -> tuple[object, ...]:
    return (asked.stove, asked.band, one.number, one.entry_count)
