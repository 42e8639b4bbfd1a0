"""What of a skill study lies outside its goals, and whether chance alone could have put it there.

The goals: no part (kind of stove, phase) in which the loss is more than WORST of that of the plain forecaster that is
best in that part, with hindsight; windows that hold within HELD. The doubt is that of the stoves drawn.
"""

from collections.abc import Iterator, Mapping, Sequence

import numpy as np

from tests.benchmarks.skill_questions import AHEAD, FloatArray, Question
from tests.benchmarks.skill_scores import over_stoves
from tests.benchmarks.skill_table import LOSSES, Rows, Scores, parts_of

WORST = 1.03
HELD = (0.70, 0.90)
LEAST_STOVES = 3  # of a part, to say anything of its doubt
SHOWN = ("pinball +15", "pinball +30", "pinball +60", "arrival")


def outside_lines(
    questions: Sequence[Question], baselines: Mapping[str, Scores], others: Mapping[str, Scores]
) -> list[str]:
    """Lines: what is outside, by how much, with its 80 % interval over stoves, and whether that shuts the goal out."""
    lines = [f"Outside the goals (losses to {WORST} of the best plain forecaster of the part, windows {HELD[0]:.0%} to "
             f"{HELD[1]:.0%}); 80 % interval over stoves"]  # fmt: skip
    stoves = np.array([question.session.stove_seed for question in questions])
    kinds = {question.session.family.split()[0] for question in questions}
    parts = {
        name: rows
        for name, rows in {"all": np.ones(len(questions), dtype=bool), **parts_of(questions)}.items()
        if name.split()[0] not in kinds and len(set(stoves[rows])) >= LEAST_STOVES
    }
    for name, scores in others.items():
        for part, rows in parts.items():
            place = np.flatnonzero(rows)
            for what, ours, theirs, goal in (*_losses(scores, baselines, place), *_held(scores, place)):
                found = ours.mean() / max(theirs.mean(), 1e-9)
                if goal[0] <= found <= goal[1]:
                    continue
                asked = place if len(ours) == len(place) else place[np.isfinite(scores.arrival_error[place])]
                low, high = _doubt(ours, theirs, stoves[asked])
                real = "beyond chance" if high < goal[0] or low > goal[1] else "may be chance"
                lines.append(
                    f"  {name:20}{part:22}{len(ours):5d} questions {len(set(stoves[asked])):3d} stoves  "
                    f"{what:42} {found:.2f} ({low:.2f} to {high:.2f})  {real}"
                )
    return lines


_Found = tuple[str, FloatArray, FloatArray, tuple[float, float]]  # what, of whom, against what, goal


def _losses(scores: Scores, baselines: Mapping[str, Scores], place: Rows) -> Iterator[_Found]:
    for shown in SHOWN:
        loss = LOSSES[shown]
        asked = place[np.isfinite(loss(scores)[place])]
        if len(asked):
            best = min(baselines, key=lambda name: float(loss(baselines[name])[asked].mean()))
            yield f"{shown} against {best}", loss(scores)[asked], loss(baselines[best])[asked], (0.0, WORST)


def _held(scores: Scores, place: Rows) -> Iterator[_Found]:
    windows = {f"held at +{ahead}": scores.inside[:, column] for column, ahead in enumerate(AHEAD)}
    for what, inside in (*windows.items(), ("held, arrival", scores.arrival_inside)):
        asked = place[np.isfinite(inside[place])]
        if len(asked):
            yield what, inside[asked], np.ones(len(asked)), HELD


def _doubt(ours: FloatArray, theirs: FloatArray, stoves: FloatArray) -> tuple[float, float]:
    """80 % interval over stoves of the ratio of the means."""
    return over_stoves(
        lambda rows: float(ours[rows].mean() / max(theirs[rows].mean(), 1e-9)), stoves.tolist(), draws=200
    )
