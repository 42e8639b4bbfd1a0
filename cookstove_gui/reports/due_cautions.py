"""The cautions that were due during a session, for the report of it."""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import datetime

from cookstove_gui.cooking.safety.caution import Caution
from cookstove_gui.one_road import cautions_by_moment
from cookstove_gui.phrases.edge import spot_label
from cookstove_gui.phrases.report import ReportClock, caution_span
from cookstove_gui.situation import Inputs
from cookstove_gui.stove.stove import Stove


@dataclass(frozen=True, slots=True, kw_only=True)
class DueCaution:
    """A caution that was due, and from when to when; its text ends with who decides."""

    title: str
    span: str
    text: str
    decides: str


def due_cautions(asked: Inputs, clock: ReportClock) -> tuple[DueCaution, ...]:
    """Each that was due at any row, told once, whatever number of spots it was about.

    The urgent ones come first, then those about a part of the stove.
    """
    found: dict[str, dict[str, Caution]] = {}
    moments: dict[str, list[datetime]] = {}
    for moment, cautions in cautions_by_moment(asked):
        for caution in cautions:
            found.setdefault(caution.key, {}).setdefault(caution.spot, caution)
            moments.setdefault(caution.key, []).append(moment)
    alike = sorted(
        (tuple(spots.values()) for spots in found.values()), key=lambda same: (not same[0].urgent, not same[0].spot)
    )
    return tuple(
        DueCaution(
            title=same[0].title,
            span=caution_span(moments[same[0].key][0], moments[same[0].key][-1], clock),
            text=_told_once(same, asked.stove),
            decides=same[0].decides,
        )
        for same in alike
    )


def _told_once(alike: Sequence[Caution], stove: Stove) -> str:
    others = [spot_label(stove, caution.spot) for caution in alike[1:]]
    return f"{alike[0].text} The same goes for {', '.join(others)}." if others else alike[0].text
