"""In how many sessions of a season each caution was due; every log is followed once, so it takes a while."""

from collections import Counter
from collections.abc import Iterable

from cookstove_gui.one_road import cautions_over
from cookstove_gui.situation import Inputs

CautionCount = tuple[str, int]  # title, sessions


def caution_titles(asked: Inputs) -> tuple[str, ...]:
    """What was due at any entry of one session, each once."""
    return tuple(caution.title for caution in cautions_over(asked))


def commonest(sessions: Iterable[tuple[str, ...]]) -> tuple[CautionCount, ...]:
    """In how many sessions each title stands, the commonest first, equally common ones as they were met."""
    found: Counter[str] = Counter()
    for titles in sessions:
        found.update(titles)
    return tuple(found.most_common())
