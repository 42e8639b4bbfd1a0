"""Counting: how many moments each rule looked at, how often it was broken, and the first examples."""

from collections.abc import Iterable
from dataclasses import dataclass, field

from tests.voice.old_session import old_session_is_over
from tests.voice.replay import Case, follow, make_case
from tests.voice.rules import RULES

OLD_SESSION = old_session_is_over.__name__
NAMES = (*(rule.name for rule in RULES), OLD_SESSION)
_KEPT = 5  # examples of each rule


@dataclass(slots=True, kw_only=True)
class Count:
    """One rule's score."""

    checked: int = 0  # moments, pairs of moments or sessions
    failed: int = 0  # of those
    examples: list[str] = field(default_factory=list)

    def take(self, where: str, breaches: Iterable[str]) -> None:
        """Count one more."""
        self.checked += 1
        first = next(iter(breaches), None)
        if first is not None:
            self.failed += 1
            self._keep([f"{where}: {first}"])

    def add(self, other: "Count") -> None:
        """Count another's too."""
        self.checked += other.checked
        self.failed += other.failed
        self._keep(other.examples)

    def _keep(self, examples: list[str]) -> None:
        self.examples = [*self.examples, *examples][:_KEPT]


Tally = dict[str, Count]


def tally_of(case: Case, stretches: int) -> Tally:
    """Every rule over one firing."""
    tally = {name: Count() for name in NAMES}
    for pair in follow(case, stretches):
        for rule in RULES:
            if rule.of_pair is not None and pair.step in rule.steps:
                tally[rule.name].take(pair.after.where, rule.of_pair(pair))
            elif rule.of_moment is not None:
                tally[rule.name].take(pair.after.where, rule.of_moment(pair.after))
    tally[OLD_SESSION].take(case.name, old_session_is_over(case))
    return tally


def tally_of_number(number: int, stretches: int) -> Tally:
    """The same for the firing of a number."""
    return tally_of(make_case(number), stretches)


def added(tallies: Iterable[Tally]) -> Tally:
    """All of them together."""
    whole = {name: Count() for name in NAMES}
    for tally in tallies:
        for name, count in tally.items():
            whole[name].add(count)
    return whole


def table_of(tally: Tally) -> str:
    """The table as Markdown."""
    lines = ["| rule | checked | failures | share |", "| --- | --- | --- | --- |"]
    for name in NAMES:
        count = tally[name]
        share = f"{100 * count.failed / count.checked:.1f} %" if count.checked else ""
        lines.append(f"| {name} | {count.checked} | {count.failed} | {share} |")
    return "\n".join(lines)


def examples_of(tally: Tally) -> str:
    """What was broken where, a few of each rule."""
    return "\n".join(f"{name}: {example}" for name in NAMES for example in tally[name].examples)
