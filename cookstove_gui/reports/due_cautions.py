"""The cautions that were due during a session, for the report of it."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from datetime import datetime

from cookstove_gui.cooking.safety.caution import Caution
from cookstove_gui.one_road import Memory, at_moment, present
from cookstove_gui.phrases.edge import spot_label
from cookstove_gui.reports.stages import Stage
from cookstove_gui.situation import Inputs
from cookstove_gui.stove.entries import Entry, Kind, reading_kelvin
from cookstove_gui.stove.stove import SpotKind, Stove


@dataclass(frozen=True, slots=True, kw_only=True)
class DueCaution:
    """A caution that was due; its text ends with who decides."""

    title: str
    text: str
    decides: str


def due_cautions(
    asked: Inputs, sound: Iterable[Entry], stages: Iterable[Stage], memory: Memory | None = None
) -> tuple[DueCaution, ...]:
    """Each that was due, the urgent ones first; told once, whatever number of spots it was about.

    Asked at the end of each stage and when each part of the stove was at its hottest; `sound` are the rows in
    force without slips.
    """
    stove, memory = asked.stove, memory or Memory()
    found: dict[str, dict[str, Caution]] = {}
    for moment in sorted({stage.ends_at for stage in stages} | _hottest_moments(stove, sound)):
        for caution in present(at_moment(asked, moment), memory).cautions:
            found.setdefault(caution.key, {}).setdefault(caution.spot, caution)
    alike = sorted((tuple(spots.values()) for spots in found.values()), key=lambda same: not same[0].urgent)
    return tuple(
        DueCaution(title=same[0].title, text=_told_once(same, stove), decides=same[0].decides) for same in alike
    )


def _hottest_moments(stove: Stove, sound: Iterable[Entry]) -> set[datetime]:
    hottest: dict[SpotKind, Entry] = {}
    for row in sound:
        if row.kind is Kind.READING:
            kind = stove.kind_of(row.spot)
            if kind not in hottest or reading_kelvin(row) > reading_kelvin(hottest[kind]):
                hottest[kind] = row
    return {row.at for row in hottest.values()}


def _told_once(alike: Sequence[Caution], stove: Stove) -> str:
    others = [spot_label(stove, caution.spot) for caution in alike[1:]]
    return f"{alike[0].text} The same goes for {', '.join(others)}." if others else alike[0].text
