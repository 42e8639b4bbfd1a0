"""The plain question of a baker: shall I shape now? What each forecaster's answer costs, in minutes of waiting.

Loaves shaped now want PROOF minutes before they go in. The cook looks at every oven reading, shapes when the foretold
arrival lies PROOF away, and looks again if a reading comes first. Then the dough waits for the oven, or the oven for
the dough.
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

import numpy as np

from tests.benchmarks.skill_questions import HORIZON, Answer, FloatArray, Question

PROOF = 45.0  # min from shaping to going in; common practice, no source


@dataclass(frozen=True, slots=True)
class Look:
    """One look at the outlook: when, and the arrival foretold then; minutes from lighting, infinite for never."""

    minute: float
    foretold: float


def shaped_at(looks: Sequence[Look]) -> float:
    """When the loaves are shaped; infinite if it never was time."""
    for place, look in enumerate(looks):
        at = max(look.minute, look.foretold - PROOF)
        following = looks[place + 1].minute if place + 1 < len(looks) else np.inf
        if at < following or (at == look.minute and np.isfinite(look.foretold)):
            return at
    return float("inf")


def waits(questions: Sequence[Question], answers: Sequence[Answer], instant: str = "") -> FloatArray:
    """Minutes (firings, 2) that the dough and the oven wait, of the firings whose oven came to its heat.

    The loaves are shaped for the median arrival, or for one of the answers' other `instants`.

    A firing counts if it was asked about longer than PROOF before; loaves never shaped make the oven wait as long as
    dough would, PROOF.
    """
    rows = []
    for session in dict.fromkeys(id(question.session) for question in questions):
        own = [
            (question, answer)
            for question, answer in zip(questions, answers, strict=True)
            if id(question.session) == session and not question.reached_before and question.arrival is not None
        ]
        came = [q.minute + q.arrival for q, _ in own if q.arrival is not None and q.arrival < HORIZON]
        if not came or own[0][0].minute > came[0] - PROOF:
            continue
        foretold = [a.instants[instant] if instant else float(a.enters[1]) for _, a in own]
        looks = [
            Look(q.minute, q.minute + x if x < HORIZON else np.inf) for (q, _), x in zip(own, foretold, strict=True)
        ]
        ready = min(shaped_at(looks), came[0]) + PROOF
        rows.append((max(came[0] - ready, 0.0), max(ready - came[0], 0.0)))
    return np.array(rows, dtype=np.float64).reshape(-1, 2)


def shaping_lines(questions: Sequence[Question], said: Mapping[str, Sequence[Answer]]) -> list[str]:
    """A table: by forecaster, what waits, on average and at worst but for one in ten."""
    lines = [
        f"Shaping {PROOF:.0f} min before the foretold arrival  firings  dough waits  oven waits  together  9 in 10"
    ]
    ways = [(name, answers, way) for name, answers in said.items() for way in ("", *answers[0].instants)]
    for name, answers, way in ways:
        found = waits(questions, answers, way)
        if not len(found):
            continue
        both = found.sum(axis=1)
        lines.append(
            f"{f'{name} {way}':44s} {len(found):7d} {found[:, 0].mean():9.1f}   {found[:, 1].mean():9.1f} "
            f"{both.mean():9.1f} {np.quantile(both, 0.9):8.1f}"
        )
    return lines
