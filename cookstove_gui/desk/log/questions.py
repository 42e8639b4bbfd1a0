"""The entries in question: unlikely by rule or by the belief, and neither kept nor corrected yet."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from datetime import datetime

from cookstove_gui.phrases.edge import Edge
from cookstove_gui.phrases.heading import question_about
from cookstove_gui.situation import Standing
from cookstove_gui.stove.checking import MUCH_NEARER, Doubt, doubt
from cookstove_gui.stove.entries import Entry, Kind, numbers_kept, reading_kelvin
from cookstove_gui.stove.stove import Stove
from cookstove_gui.units import kelvin, parse_number


@dataclass(frozen=True, slots=True, kw_only=True)
class Question:
    """What is asked about an entry; it is in the log in any case."""

    number: int  # of the entry
    sentence: str
    other_unit: str = ""  # the unit in which the number would be likely, if there is one


class Questions:
    """The open questions, worked out once for each state of the log and of what is believed."""

    def __init__(self) -> None:
        self._asked: tuple[object, ...] = ()
        self._found: tuple[Question, ...] = ()

    def of(
        self, stove: Stove, rows: tuple[Entry, ...], entries: Sequence[Entry], standing: Standing | None, edge: Edge
    ) -> tuple[Question, ...]:
        """The open questions about a session at the edge's now, in the order in which its rows were entered."""
        asked = (stove, rows, standing, edge.unit)
        if len(self._asked) != len(asked) or any(a is not b for a, b in zip(self._asked, asked, strict=True)):
            self._asked = asked
            self._found = tuple(_open(stove, rows, entries, standing, edge))
        return self._found


def _open(
    stove: Stove, rows: Sequence[Entry], entries: Sequence[Entry], standing: Standing | None, edge: Edge
) -> Iterator[Question]:
    kept = numbers_kept(rows)
    by_rule = dict(_doubts(stove, entries, edge.now))
    by_belief = {row.number: row for row in standing.doubted} if standing else {}
    for row in sorted(entries, key=lambda row: row.number):
        if row.number in kept:
            continue
        asked = by_rule.get(row.number)
        slip = by_belief.get(row.number)
        if asked is not None:
            other = _other(row.unit) if asked.field == "unit" else ""
            yield Question(number=row.number, sentence=asked.sentence, other_unit=other)
        elif standing is not None and slip is not None:
            typed = reading_kelvin(row)
            meant = kelvin(parse_number(row.value), _other(row.unit)) + slip.typed - typed
            fits = abs(meant - slip.expected_p50) < abs(slip.typed - slip.expected_p50) / MUCH_NEARER
            sentence = question_about(standing, row.number, edge)
            yield Question(number=row.number, sentence=sentence, other_unit=_other(row.unit) if fits else "")


def _doubts(stove: Stove, entries: Sequence[Entry], now: datetime) -> Iterator[tuple[int, Doubt]]:
    """What is unlikely by rule, each row against those entered before it."""
    at_spot: dict[str, list[Entry]] = {}
    first: Entry | None = None
    for row in sorted(entries, key=lambda row: row.number):
        before = at_spot.setdefault(row.spot, [])
        asked = doubt(row, stove, before if first is None else (first, *before), now)
        if asked is not None:
            yield row.number, asked
        first = row if first is None or row.at < first.at else first
        if row.kind is Kind.READING:
            before.append(row)


def _other(unit: str) -> str:
    return "C" if unit == "F" else "F"
