"""Counting: how many moments each rule looked at, how often it was broken, and the first example."""

from collections.abc import Iterable
from dataclasses import dataclass

from tests.voice.old_session import old_session_is_over
from tests.voice.replay import Case, follow, make_case
from tests.voice.rules import RULES

OLD_SESSION = old_session_is_over.__name__
NAMES = (*(rule.name for rule in RULES), OLD_SESSION)


@dataclass(slots=True, kw_only=True)
class Count:
    """One rule's score."""

    checked: int = 0  # moments, pairs of moments or sessions
    failed: int = 0  # of those
    example: str = ""

    def take(self, where: str, breaches: Iterable[str]) -> None:
        """Count one more."""
        self.checked += 1
        first = next(iter(breaches), None)
        if first is not None:
            self.failed += 1
            self.example = self.example or f"{where}: {first}"

    def add(self, other: "Count") -> None:
        """Count another's too."""
        self.checked += other.checked
        self.failed += other.failed
        self.example = self.example or other.example


Tally = dict[str, Count]


def tally_of(case: Case, every: float) -> Tally:
    """Every rule over one firing."""
    tally = {name: Count() for name in NAMES}
    for pair in follow(case, every):
        for rule in RULES:
            if rule.of_pair is not None and pair.step in rule.steps:
                tally[rule.name].take(pair.after.where, rule.of_pair(pair))
            elif rule.of_moment is not None:
                tally[rule.name].take(pair.after.where, rule.of_moment(pair.after))
    tally[OLD_SESSION].take(case.name, old_session_is_over(case))
    return tally


def tally_of_number(number: int, every: float) -> Tally:
    """The same for the firing of a number."""
    return tally_of(make_case(number), every)


def added(tallies: Iterable[Tally]) -> Tally:
    """All of them together."""
    whole = {name: Count() for name in NAMES}
    for tally in tallies:
        for name, count in tally.items():
            whole[name].add(count)
    return whole


def table_of(tally: Tally) -> str:
    """The table as Markdown."""
    lines = ["| rule | checked | failures | share | first example |", "|---|---|---|---|---|"]
    for name in NAMES:
        count = tally[name]
        share = f"{100 * count.failed / count.checked:.1f} %" if count.checked else ""
        example = count.example.replace("|", "/").replace("\n", " ")
        lines.append(f"| {name} | {count.checked} | {count.failed} | {share} | {example} |")
    return "\n".join(lines)
