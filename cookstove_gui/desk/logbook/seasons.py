"""The seasons of the stove in use: what is asked, and their figures."""

from collections.abc import Sequence
from dataclasses import dataclass

from cookstove_gui.desk.desk import Desk
from cookstove_gui.desk.logbook.cards import Card, CardInputs, card_inputs
from cookstove_gui.desk.my_stove.checks import drift_rings
from cookstove_gui.forecast.answers import RecordRow
from cookstove_gui.logbook.seasons import season_of
from cookstove_gui.phrases.edge import local_day
from cookstove_gui.reports.season_figures import Drift, Season, season_figures


@dataclass(frozen=True, slots=True, kw_only=True)
class SeasonAsked:
    """What a season is worked out from."""

    cards: CardInputs
    first_year: int  # ALL_YEARS for all
    record: tuple[RecordRow, ...]
    drifts: tuple[Drift, ...]


def season_asked(desk: Desk, first_year: int | None) -> SeasonAsked:
    """What is asked of a season; of the latest for none."""
    asked, study = card_inputs(desk), desk.study
    days = [local_day(one.first_at, one.offset_minutes) for one in asked.summaries if one.first_at is not None]
    latest = season_of(max(days)) if days else season_of(asked.today)
    drifts = tuple(
        (one.name, tuple((ring.on, ring.error) for ring in drift_rings(desk, one.name)))
        for one in desk.stove.instruments
    )
    return SeasonAsked(
        cards=asked,
        first_year=latest if first_year is None else first_year,
        record=study.record.rows if study is not None and study.stove_name == desk.stove.name else (),
        drifts=tuple((name, checks) for name, checks in drifts if len(checks) > 1),
    )


def season(asked: SeasonAsked, cards: Sequence[Card]) -> Season:
    """The season; loads pandas, so it is worked out off the screen's thread."""
    facts = [card.facts for card in cards if card.facts is not None]
    return season_figures(facts, asked.first_year, asked.cards.band, asked.record, asked.drifts)
