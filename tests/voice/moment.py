"""One moment of a firing: everything the program says then, in one plain record, beside the facts it is said of."""

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import datetime
from pathlib import Path
from unittest.mock import patch

from cookstove_gui.commands import lines as command_lines
from cookstove_gui.commands.parsing import Request
from cookstove_gui.commands.question import Asked
from cookstove_gui.desk.cook.oven_lines import oven_fan
from cookstove_gui.desk.plan.kept_pots import KeptPots
from cookstove_gui.forecast.answers import LEAVE, FloatArray
from cookstove_gui.forecast.futures.arrival import arrival_of
from cookstove_gui.phrases.advice import likely_words
from cookstove_gui.phrases.edge import Edge
from cookstove_gui.phrases.entries import entry_words
from cookstove_gui.phrases.heading import arrival_figure, detail, headline, question_about, rungs
from cookstove_gui.situation import Inputs, Standing
from cookstove_gui.stove.entries import Kind, Session
from cookstove_gui.stove.stove import SpotKind
from tests.voice.plan_answers import NO_POTS, PlanAnswers, plan_answers
from tests.voice.said import Said
from tests.voice.supper_answers import SupperAnswers, supper_answers

_FIRE_KINDS = frozenset({Kind.LIT, Kind.WOOD, Kind.AIR, Kind.BYPASS, Kind.OVEN_DOOR})


@dataclass(frozen=True, slots=True, kw_only=True)
class Moment:
    """What is said at one moment, and the standing that it is said of."""

    where: str  # the firing, its settings and the minute, so that a failure can be looked at again
    now: datetime
    edge: Edge
    standing: Standing
    said: tuple[Said, ...]
    plan: PlanAnswers
    supper: SupperAnswers | None = None  # at some minutes

    def at(self, *places: str) -> tuple[str, ...]:
        """The sentences of some places."""
        return tuple(one.text for one in self.said if one.place in places)

    @property
    def line(self) -> tuple[FloatArray, FloatArray]:
        """Minutes from now and kelvin of the oven's middle line as it is drawn."""
        fan = oven_fan(self.standing.projection, "oven_centre")
        return fan.minutes, fan.p50

    @property
    def hottest_top(self) -> float:
        """The hottest part of the cooktop as believed [K]."""
        stove, zones = self.standing.stove, self.standing.zones.values()
        return max((zone.p50 for zone in zones if stove.kind_of(zone.spot) is SpotKind.TOP), default=0.0)


def moment_of(
    where: str, asked: Inputs, standing: Standing, past: tuple[Session, ...] = (), kept: KeptPots = NO_POTS
) -> Moment:
    """Collect what every page, the plot and the commands say; `past` are the stove's sessions before.

    `kept` are the pots as the moment before left them.
    """
    offset = asked.rows[-1].offset_minutes if asked.rows else 0
    edge = Edge(unit="F", now=standing.now, offset_minutes=offset)
    plan = plan_answers(asked, standing, edge, past, kept)
    supper = supper_answers(asked, standing, edge, past)
    said = (
        Said(place="headline", text=headline(standing, edge)),
        *(Said(place="rung", text=text) for text in rungs(standing, edge)[1:]),
        Said(place="detail", text=detail(standing, edge)),
        Said(place="question", text=question_about(standing, standing.rows[-1].number if standing.rows else 0, edge)),
        *_plot_words(standing, edge),
        *(Said(place="caution", text=f"{one.title}: {one.text}") for one in standing.cautions),
        *_command_words(asked, standing, offset),
        *plan.said,
        *(supper.said if supper is not None else ()),
    )
    kept = tuple(one for one in said if one.text)
    return Moment(where=where, now=standing.now, edge=edge, standing=standing, said=kept, plan=plan, supper=supper)


def _plot_words(standing: Standing, edge: Edge) -> Iterable[Said]:
    """The arrival mark, the large view's arrival and the fire lane, as the widgets put them together."""
    if not standing.rows:
        return
    arrival = arrival_of(standing.outlook) if standing.first_fires.next is None else None
    if arrival is not None and arrival.likely > standing.now:
        yield Said(place="plot", text=likely_words(arrival, edge))
    yield Said(place="large", text=arrival_figure(standing, edge))
    for row in standing.rows:
        if row.kind in _FIRE_KINDS:
            yield Said(place="lane", text=entry_words(row, standing.stove))


def _command_words(asked: Inputs, standing: Standing, offset: int) -> Iterable[Said]:
    """What the commands print of this standing; that they work out the same one is another test's business."""
    found = Asked(log=Path("a.csv"), inputs=asked, offset_minutes=offset, is_whole=True)
    with patch.object(command_lines, "work_out", lambda *_: standing):
        for command in ("outlook", "fit"):
            request = Request(command=command, logs=(), actions=(("", LEAVE),))
            for line in command_lines.lines_of(request, found)[1:]:
                yield Said(place=command, text=line.strip())
