"""Turns the answers of a skill study into the figures that it prints."""

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from tests.benchmarks.skill_questions import AHEAD, HORIZON, Answer, FloatArray, Question
from tests.benchmarks.skill_scores import binomial_limits, brier_score, covered, over_stoves, pinball_loss

Rows = NDArray[np.intp]
KELVIN_TO_F = 1.8


@dataclass(frozen=True, slots=True, kw_only=True)
class Scores:
    """Scores of one forecaster, question by question; a row without an arrival question holds NaN there."""

    pinball: FloatArray  # (questions, 3) °F
    inside: FloatArray  # (questions, 3) 1 where the 80 % interval held
    arrival_error: FloatArray  # (questions,) min
    arrival_if_came: FloatArray  # (questions,) min; NaN where the oven was not in the band within three hours
    arrival_inside: FloatArray  # (questions,)
    brier: FloatArray  # (questions,)
    width: FloatArray  # (questions, 3) °F between p10 and p90
    too_high: FloatArray  # (questions, 3) °F that the median lies above the truth


def scores_of(questions: Sequence[Question], answers: Sequence[Answer]) -> Scores:
    """Score answers against the true air temperature in the middle of the oven.

    Arrival: questions with the oven outside the band. An oven that is not in the band within three hours counts as
    arriving at 180 min, and so does a median that says later or never; the interval holds a "never" if its p90 says
    later or never.
    """
    truth = np.array([question.ahead for question in questions])
    quantiles = np.array([answer.quantiles for answer in answers])
    arrival = np.array([np.nan if question.arrival is None else question.arrival for question in questions])
    enters = np.array([answer.enters for answer in answers])
    never = arrival >= HORIZON
    held = np.where(never, enters[:, 2] >= HORIZON, covered(arrival, enters[:, 0], enters[:, 2]))
    return Scores(
        pinball=pinball_loss(truth, quantiles) * KELVIN_TO_F,
        inside=covered(truth, quantiles[..., 0], quantiles[..., 2]).astype(float),
        arrival_error=np.abs(enters[:, 1] - arrival),
        arrival_if_came=np.where(never, np.nan, np.abs(enters[:, 1] - arrival)),
        arrival_inside=np.where(np.isnan(arrival), np.nan, held.astype(float)),
        brier=brier_score(
            np.array([answer.chance_30 for answer in answers]),
            np.array([question.in_band_30 for question in questions]),
        ),
        width=(quantiles[..., 2] - quantiles[..., 0]) * KELVIN_TO_F,
        too_high=(quantiles[..., 1] - truth) * KELVIN_TO_F,
    )


LOSSES: dict[str, Callable[[Scores], FloatArray]] = {
    "pinball +15": lambda scores: scores.pinball[:, 0],
    "pinball +30": lambda scores: scores.pinball[:, 1],
    "pinball +60": lambda scores: scores.pinball[:, 2],
    "arrival": lambda scores: scores.arrival_error,
    "arrival that came": lambda scores: scores.arrival_if_came,
    "Brier 30": lambda scores: scores.brier,
}


def table(questions: Sequence[Question], baselines: Mapping[str, Scores], others: Mapping[str, Scores]) -> list[str]:
    """Lines of the main table: every forecaster, its losses, and their ratio to the best baseline's."""
    stoves = [question.session.stove_seed for question in questions]
    best = _best(baselines)
    lines = [
        f"{'':26}{'pinball loss [°F]':^24}{'arrival [min]':>20}{'Brier':>7}   {'coverage of 80 % intervals':^30}",
        f"{'':26}{'+15':>8}{'+30':>8}{'+60':>8}{'all':>10}{'that came':>10}{'+30':>7}   {'+15':>7}{'+30':>7}{'+60':>7}"
        f"{'arrival':>9}",
    ]
    for name, scores in {**baselines, **others}.items():
        losses = [float(np.nanmean(loss(scores))) for loss in LOSSES.values()]
        lines.append(
            f"{name:26}{losses[0]:8.2f}{losses[1]:8.2f}{losses[2]:8.2f}{losses[3]:10.1f}{losses[4]:10.1f}"
            f"{losses[5]:7.3f}   "
            + "".join(f"{share:7.1%}" for share in scores.inside.mean(0))
            + f"{np.nanmean(scores.arrival_inside):9.1%}"
        )
    lines += ["", "Share of the best baseline's loss (80 % interval over stoves, whole stoves drawn again)"]
    lines.append(f"{'best baseline':26}" + "".join(f"{best[name]:>24}" for name in LOSSES))
    lines.append(f"{'':26}" + "".join(f"{name:>24}" for name in LOSSES))
    for name, scores in others.items():
        cells = []
        for loss_name, loss in LOSSES.items():
            ours, theirs = loss(scores), loss(baselines[best[loss_name]])

            def ratio(rows: Rows, ours: FloatArray = ours, theirs: FloatArray = theirs) -> float:
                return float(np.nanmean(ours[rows]) / np.nanmean(theirs[rows]))

            low, high = over_stoves(ratio, stoves)
            cells.append(f"{ratio(np.arange(len(ours))):.2f} ({low:.2f} to {high:.2f})")
        lines.append(f"{name:26}" + "".join(f"{cell:>24}" for cell in cells))
    return lines


def by_part(questions: Sequence[Question], baselines: Mapping[str, Scores], others: Mapping[str, Scores]) -> list[str]:
    """Lines with coverage, shares of the best baseline's loss and bias, by stove family and by phase.

    The best baseline is that of all questions, not of the part.
    """
    best = _best(baselines)
    shown = ("pinball +15", "pinball +30", "pinball +60", "arrival")
    low, high = binomial_limits(len(questions))
    lines = [
        f"By part: coverage of the 80 % interval (of {len(questions)} independent questions {low:.1%} to {high:.1%} "
        "would be chance), and share of the best baseline's loss"
    ]
    for name, scores in others.items():
        horizons = "".join(f"{f'+{ahead}':>8}" for ahead in AHEAD) + f"{'arrival':>9}"
        lines.append(f"{'':40}{'coverage':^33}  {'share of the loss':^33}  {'median too high by [°F]':^24}")
        lines.append(f"{name:30}{'questions':>10}{horizons}  {horizons}  {horizons[:24]}")
        for part, rows in parts_of(questions).items():
            arrivals = scores.arrival_inside[rows]
            asked = arrivals[~np.isnan(arrivals)]
            shares = "".join(f"{share:8.1%}" for share in scores.inside[rows].mean(0))
            shares += f"{asked.mean():9.1%}  " if len(asked) else f"{'':11}"
            losses = [
                np.nanmean(LOSSES[loss](scores)[rows]) / np.nanmean(LOSSES[loss](baselines[best[loss]])[rows])
                if loss != "arrival" or len(asked)
                else np.nan
                for loss in shown
            ]
            lines.append(f"  {part:28}{int(rows.sum()):>10}{shares}" + "".join(f"{loss:8.2f}" for loss in losses))
            lines[-1] += "   " + "".join(f"{high:8.1f}" for high in scores.too_high[rows].mean(0))
    return lines


_PACES = (("falling fast", -99.0, -1.0), ("nearly steady", -1.0, 1.0), ("rising", 1.0, 3.0), ("rising fast", 3.0, 99.0))


def now_lines(questions: Sequence[Question], answers: Mapping[str, Sequence[Answer]]) -> list[str]:
    """Lines on the oven at the moment of asking, just after it was read: is the belief better than the reading?"""
    true = np.array([question.path[0] for question in questions])
    shown = np.array([question.readings[-1, 1] for question in questions])
    last_two = np.array([question.readings[-2:] for question in questions])
    pace = np.diff(last_two[:, :, 1])[:, 0] / np.maximum(np.diff(last_two[:, :, 0])[:, 0], 1.0) * KELVIN_TO_F
    lines = [
        f"{'The oven now, just after it was read':40}{'questions':>10}{'error [°F]':>12}{'its reading':>14}{'held':>8}"
    ]
    for name, given in answers.items():
        said = np.array([answer.now for answer in given])
        held = covered(true, said[:, 0], said[:, 2])
        for part, low, high in (("", -99.0, 99.0), *_PACES):
            rows = (pace >= low) & (pace < high)
            error = np.abs(said[rows, 1] - true[rows]).mean() * KELVIN_TO_F
            reading = np.abs(shown[rows] - true[rows]).mean() * KELVIN_TO_F
            label = f"  {part}" if part else name
            lines.append(f"{label:40}{rows.sum():>10}{error:12.1f}{reading:14.1f}{held[rows].mean():8.0%}")
    return lines


def _best(baselines: Mapping[str, Scores]) -> dict[str, str]:
    return {
        name: min(baselines, key=lambda baseline: float(np.nanmean(loss(baselines[baseline]))))
        for name, loss in LOSSES.items()
    }


def parts_of(questions: Sequence[Question]) -> dict[str, NDArray[np.bool_]]:
    families = np.array([question.session.family for question in questions])
    reached = np.array([question.reached_before for question in questions])
    rising = np.array([question.path[15] > question.path[0] for question in questions])
    parts = {family: families == family for family in sorted(set(families.tolist()))}
    for word in sorted({family.split()[0] for family in families.tolist()}):
        parts[f"all {word}"] = np.array([family.startswith(word) for family in families])
    parts |= {"before the band": ~reached, "after it was reached": reached, "rising": rising, "falling": ~rising}
    return {part: rows for part, rows in parts.items() if rows.any()}
