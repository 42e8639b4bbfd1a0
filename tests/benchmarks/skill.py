"""The skill study: how good the outlook is on invented stoves that it was not made with.

    python -m tests.benchmarks.skill [--quick] [--stoves N] [--sessions N] [--past 0 1 3 8] [--world main|other]

Asked at every oven reading after the second, knowing only the rows up to then, and scored against the true air
temperature in the middle of the oven. Design seeds are 0 to 999; judging seeds are 10000 and up and are not looked at
while the forecast is made. Prints a table; losses are compared with the best baseline's in the same run.
"""

import argparse
import time
from collections.abc import Callable, Sequence
from datetime import UTC, datetime

import numpy as np

from cookstove_gui.forecast.model.character import Character
from tests.benchmarks import skill_forecaster
from tests.benchmarks.skill_baselines import BASELINES, Baseline, fit
from tests.benchmarks.skill_outside import outside_lines
from tests.benchmarks.skill_questions import (
    Answer,
    Firing,
    FloatArray,
    Question,
    answer_from_paths,
    cached,
    questions_of,
)
from tests.benchmarks.skill_shaping import shaping_lines
from tests.benchmarks.skill_table import by_part, now_lines, scores_of, table
from tests.benchmarks.skill_worlds import WORLDS, World
from tests.benchmarks.skill_zones import zone_lines
from tests.world.log_observer import observed_by_log
from tests.world.observer import observed
from tests.world.other import OtherSession
from tests.world.sessions import WorldSession
from tests.world.third import ThirdSession

JUDGING, DESIGN, TRAINING = 10_000, 500, 700  # first seeds of the stoves
MOST_PAST = 8


def main(arguments: Sequence[str] | None = None) -> None:
    """Run the study and print it."""
    options = _options(arguments)
    began = time.perf_counter()
    world = WORLDS[options.world]
    first = options.seed if options.seed is not None else DESIGN if options.design else JUDGING
    seeds = range(first, first + options.stoves)
    judged, past = cached(
        "sessions",
        [options.world, seeds, options.sessions],
        lambda: _sessions(world, seeds, options.sessions),
    )
    questions = [question for session in judged for question in questions_of(session)][:: options.every]
    print(
        f"Skill study of {datetime.now(UTC):%Y-%m-%d}, world {options.world}, stoves {seeds[0]} to {seeds[-1]}, "
        f"{len(judged)} sessions, {len(questions)} questions, every {options.every}"
    )
    simple = _baselines(options, world, questions, seeds)
    baselines = {name: scores_of(questions, answers) for name, answers in simple.items()}
    others = {}
    if not options.no_ceiling:
        others["ceiling: true physics"] = scores_of(questions, _ceiling(options, questions, seeds))
    if options.observer:
        others["all but the plan known"] = scores_of(questions, _observer(options, questions, seeds))
    said: dict[str, list[Answer]] = {}
    characters: dict[tuple[int, int], Character | None] = {}
    for count in options.past:
        name = f"forecast, {count} past"
        answers: list[Answer] = []
        for session in judged:
            key = (session.stove_seed, count)
            if key not in characters:
                characters[key] = skill_forecaster.character_of(session.stove, past[session.stove_seed][:count])
            follower = skill_forecaster.Follower(session.stove, characters[key])
            answers += [follower.answer(question) for question in questions if question.session is session]
        others[name] = scores_of(questions, answers)
        said[name] = answers
        print(f"  {name}: {time.perf_counter() - began:.0f} s since the start", flush=True)
    print("\n".join(["", *table(questions, baselines, others), ""]))
    print("\n".join([*now_lines(questions, said), ""]))
    print("\n".join([*shaping_lines(questions, {**simple, **said}), ""]))
    print("\n".join([*by_part(questions, baselines, others), ""]))
    print("\n".join([*outside_lines(questions, baselines, {name: others[name] for name in said}), ""]))
    if not options.no_zones:
        print("Cooktop spots at random moments, against the truth")
        estimators = {
            f"forecast, {count} past": skill_forecaster.Estimator(characters, count) for count in options.past
        }
        print("\n".join(zone_lines(judged, estimators)))
    print(f"\n{time.perf_counter() - began:.0f} s")


def _options(arguments: Sequence[str] | None) -> argparse.Namespace:
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("--world", choices=sorted(WORLDS), default="main")
    parser.add_argument("--stoves", type=int, default=27)
    parser.add_argument("--sessions", type=int, default=1, help="judged sessions of each stove")
    parser.add_argument("--past", type=int, nargs="*", default=[0, 1, 3, MOST_PAST])
    parser.add_argument("--every", type=int, default=1, help="ask at every n-th of the questions only")
    parser.add_argument("--futures", type=int, default=64, help="futures of the ceiling")
    parser.add_argument(
        "--observer", type=int, default=0, metavar="MEMBERS",
        help="ask someone too who knows stove, cook and instruments exactly but only the log",
    )  # fmt: skip
    parser.add_argument("--design", action="store_true", help="stoves that the forecast may be tuned on")
    parser.add_argument("--seed", type=int, help="first stove, instead of the usual one")
    parser.add_argument("--no-ceiling", action="store_true")
    parser.add_argument("--no-zones", action="store_true")
    parser.add_argument("--quick", action="store_true", help="nine stoves, every third question, no and three past")
    options = parser.parse_args(arguments)
    if options.quick:
        options.stoves, options.every, options.past, options.futures = 9, 3, [0, 3], 32
    return options


def _sessions(world: World, seeds: range, count: int) -> tuple[list[Firing], dict[int, list[Firing]]]:
    """Judged sessions, and every stove's past."""
    judged: list[Firing] = []
    past: dict[int, list[Firing]] = {}
    for seed in seeds:
        sessions = world(seed, [*range(1, MOST_PAST + 1), *range(101, 101 + count)])
        past[seed] = [session.without_moments() for session in sessions[:MOST_PAST]]
        judged += sessions[MOST_PAST:]
    return judged, past


def _baselines(
    options: argparse.Namespace, world: World, questions: list[Question], seeds: range
) -> dict[str, list[Answer]]:
    def fits() -> list[Baseline]:
        training = [
            question
            for seed in range(TRAINING, TRAINING + 100)
            for session in world(seed, [101])
            for question in questions_of(session)[::3]
        ]
        return [fit(name, training) for name in BASELINES]

    def make() -> dict[str, list[Answer]]:
        fitted: list[Baseline] = cached("fits", [options.world], fits)
        return {baseline.name: [baseline.answer(question) for question in questions] for baseline in fitted}

    made: dict[str, list[Answer]] = cached("baselines", [options.world, seeds, options.sessions, options.every], make)
    return made


def _ceiling(options: argparse.Namespace, questions: list[Question], seeds: range) -> list[Answer]:
    def make() -> list[Answer]:
        return _drawn(questions, lambda firing, minutes: firing.ceiling(minutes, options.futures))

    key = [options.world, seeds, options.sessions, options.every, options.futures]
    made: list[Answer] = cached("ceiling", key, make)
    return made


def _observer(options: argparse.Namespace, questions: list[Question], seeds: range) -> list[Answer]:
    def futures(firing: Firing, minutes: list[float]) -> FloatArray:
        if isinstance(firing, WorldSession):
            return observed(firing, minutes, options.observer)
        if isinstance(firing, OtherSession | ThirdSession):
            return observed_by_log(firing, minutes, options.observer)
        raise SystemExit("The observer does not know this world.")

    key = [options.world, seeds, options.sessions, options.every, options.observer]
    made: list[Answer] = cached("observer", key, lambda: _drawn(questions, futures))
    return made


def _drawn(questions: list[Question], futures: Callable[[Firing, list[float]], FloatArray]) -> list[Answer]:
    """Answers, session by session, from futures (minutes, futures, minutes ahead) of the oven."""
    answers: list[Answer] = []
    for session in dict.fromkeys(id(question.session) for question in questions):
        own = [question for question in questions if id(question.session) == session]
        paths = futures(own[0].session, [question.minute for question in own])
        answers += [answer_from_paths(path, own[0].band, np.arange(path.shape[1]) * 1.0) for path in paths]
    return answers


if __name__ == "__main__":
    main()
